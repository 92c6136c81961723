//! The air a rider moves through.

use crate::quantity::Speed;
use crate::rider::quantity::{
    AirDensity, AirPressure, AirTemperature, Altitude, Compass, DragArea, FootDrag, Headwind, Humidity,
    WindSpeed,
};

/// Gas constants of dry air (ISO 2533:1975) and of water vapour (R ÷ 18.015 g/mol), in J/(kg·K).
const DRY_AIR: f64 = 287.05;
const VAPOUR: f64 = 461.5;

/// Air and how a rider meets it, on the bike and on foot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Drag area on the bike.
    pub drag_area: DragArea,
    /// Density of the air.
    pub density: AirDensity,
    /// Wind against the rider along the course.
    pub headwind: Headwind,
    /// Air drag on foot.
    pub foot_drag: FootDrag,
}

impl Air {
    /// No wind, hands on the hoods, an ordinary day: the model's reference.
    pub const STILL: Self = Self {
        drag_area: DragArea::HOODS,
        density: AirDensity::ORDINARY,
        headwind: Headwind::NONE,
        foot_drag: FootDrag::DI_PRAMPERO,
    };
}

impl DragArea {
    /// 0.40 m², hands on the hoods. Between Barry et al. (2015, *Proc IMechE P*) and an estimate for cyclo-cross.
    pub const HOODS: Self = Self::known(0.4);
}

impl FootDrag {
    /// 0.01 J·s²/(kg·m³). Di Prampero (1986); about what Pugh (1970, *J Physiol* 207:823–835) measured at 6 m/s.
    pub const DI_PRAMPERO: Self = Self::known(0.01);
}

impl Headwind {
    /// Still air.
    pub const NONE: Self = Self::known(0.0);
}

impl AirDensity {
    /// 1.20 kg/m³, about that of a cool day near sea level.
    pub const ORDINARY: Self = Self::known(1.2);

    /// Density of moist air.
    ///
    /// # Formula
    /// ρ = (p − p_v)/(287.05 T) + p_v/(461.5 T), with the vapour pressure p_v = RH · 611.2 exp(17.62 t/(243.12 + t))
    /// in the Magnus form with the constants of WMO-No. 8, annex 4.B (from memory); p in Pa, T in K, t in °C.
    ///
    /// # Example
    /// ```
    /// use gear_math::rider::{AirDensity, AirPressure, AirTemperature, Humidity};
    /// let cold = AirDensity::of(AirTemperature::new(5.0)?, Humidity::new(90.0)?, AirPressure::new(1013.25)?);
    /// assert!((cold.kg_per_m3() - 1.2653).abs() < 1e-4);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn of(temperature: AirTemperature, humidity: Humidity, pressure: AirPressure) -> Self {
        let t = temperature.celsius();
        let kelvin = t + 273.15;
        let vapour = humidity.percent() / 100.0 * 611.2 * (17.62 * t / (243.12 + t)).exp();
        let dry = pressure.hpa() * 100.0 - vapour;
        Self::nearest(dry / (DRY_AIR * kelvin) + vapour / (VAPOUR * kelvin))
    }
}

impl AirPressure {
    /// Pressure of the standard atmosphere.
    ///
    /// # Formula
    /// p = 1013.25 hPa · (1 − 2.25577·10⁻⁵ h)^5.25588, h in metres. ISO 2533:1975: 0.0065 K/m ÷ 288.15 K, and
    /// 9.80665 ÷ (287.05287 · 0.0065).
    #[must_use]
    pub fn at(altitude: Altitude) -> Self {
        Self::nearest(1013.25 * (1.0 - 2.25577e-5 * altitude.m()).powf(5.25588))
    }
}

/// Wind over the ground.
///
/// # Example
/// ```
/// use gear_math::rider::{Compass, Wind, WindSpeed};
/// let wind = Wind { speed: WindSpeed::new(3.0)?, from: Compass::new(270.0)? };
/// assert!((wind.against(Compass::new(270.0)?).m_per_s() - 3.0).abs() < 1e-12);
/// assert!((wind.against(Compass::new(90.0)?).m_per_s() + 3.0).abs() < 1e-12);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wind {
    /// How fast.
    pub speed: WindSpeed,
    /// Where it blows from.
    pub from: Compass,
}

impl Wind {
    /// Still air.
    pub const NONE: Self = Self { speed: WindSpeed::NONE, from: Compass::NORTH };

    /// The part against a rider who travels towards `travel`.
    #[must_use]
    pub fn against(self, travel: Compass) -> Headwind {
        Headwind::nearest(self.speed.m_per_s() * self.angle(travel).cos())
    }

    /// Angle between the air that the rider meets and the course, in degrees.
    #[must_use]
    pub fn yaw_degrees(self, travel: Compass, speed: Speed) -> f64 {
        let across = self.speed.m_per_s() * self.angle(travel).sin();
        let against = speed.m_per_s() + self.against(travel).m_per_s();
        across.abs().atan2(against).to_degrees()
    }

    fn angle(self, travel: Compass) -> f64 {
        (self.from.degrees() - travel.degrees()).to_radians()
    }
}
