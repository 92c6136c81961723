//! What a rider, the bike under them, the ground and the air are described by. Limits are estimates of what can
//! plausibly be met, unless a quantity names a source.

pub use crate::quantity::{BikeMass, BodyMass, KitMass, TotalMass};
use crate::quantity::{Limits, OutOfLimits, derived, known, measured, nearest};
use crate::wheel::FrontShare;

measured! {
    /// Mechanical power at the crank, in watts.
    ///
    /// # Example
    /// ```
    /// use gear_math::Power;
    /// assert_eq!(Power::new(250.0)?.watts(), 250.0);
    /// assert!(Power::new(0.0).is_err());
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Power(watts): "power", "W", 20.0 ..= 2000.0;
    /// Highest power of one pedal turn in a short sprint, in watts. No rider comes near the upper limit; it holds the
    /// [estimate](PeakPower::estimated) from any [`Power`].
    PeakPower(watts): "peak power", "W", 200.0 ..= 8000.0;
    /// Work a rider has in store above the power they can sustain, in kilojoules; often written W′.
    WorkReserve(kj): "work in reserve", "kJ", 1.0 ..= 50.0;
    /// Part of the work reserve spent in one effort. A pure number.
    ReserveShare(value): "share of the reserve", "", 0.01 ..= 1.0;
    /// Part of what the power falls short of the sustainable one by that is repaid to the reserve. A pure number.
    RepaidShare(value): "repaid share", "", 0.0 ..= 1.0;
    /// Work above the sustainable power that an effort, or a whole lap, may cost in the end, in joules, by the
    /// [charge](crate::rider::EffortAccount::charge).
    EffortBudget(j): "budget of the effort", "J", 0.0 ..= 50000.0;
    /// What a joule of the reserve is worth in time, in seconds per joule. Nobody pays more than standing still would earn.
    EffortPrice(s_per_j): "price of a joule", "s/J", 0.0 ..= 0.1;
    /// What leaving the preferred cadence costs: this part of the power, times the square of the cadence's relative distance
    /// from it. A pure number.
    CadenceCost(value): "cost of cadence", "", 0.0 ..= 2.0;
    /// Length of an effort, in seconds.
    EffortTime(s): "length of the effort", "s", 1.0 ..= 3600.0;
    /// Mechanical power over total metabolic power. A pure number.
    GrossEfficiency(share): "gross efficiency", "", 0.15 ..= 0.3;
    /// Metabolic power of standing still, in watts per kilogram of body mass. Zero leaves it in the foot's power.
    StandingMetabolism(w_per_kg): "standing metabolism", "W/kg", 0.0 ..= 2.5;
    /// Power at the rear wheel over power at the crank. A pure number.
    DrivetrainEfficiency(share): "drivetrain efficiency", "", 0.8 ..= 1.0;
    /// What a kilogram of carried bike costs on foot, over a kilogram of body. Zero leaves the bike behind.
    LoadFactor(value): "carried load factor", "", 0.0 ..= 2.0;
    /// One person's energy cost on foot over the published mean. A pure number.
    FootCostFactor(value): "foot cost factor", "", 0.8 ..= 1.25;
    /// Drag area: drag coefficient × frontal area, in square metres. Zero for a treadmill.
    DragArea(m2): "drag area", "m²", 0.0 ..= 1.0;
    /// Mass of a cubic metre of air, in kilograms.
    AirDensity(kg_per_m3): "air density", "kg/m³", 0.6 ..= 1.6;
    /// Wind against the rider along the course, in metres per second; negative is from behind.
    Headwind(m_per_s): "headwind", "m/s", -10.0 ..= 10.0;
    /// Wind over the ground, in metres per second.
    WindSpeed(m_per_s): "wind", "m/s", 0.0 ..= 10.0;
    /// Direction clockwise from north, in degrees.
    Compass(degrees): "direction", "degrees", 0.0 ..= 360.0;
    /// Extra energy cost of moving through air on foot, per kilogram of body: J per metre per (m/s)² of air speed.
    FootDrag(j_s2_per_kg_m3): "air drag on foot", "J·s²/(kg·m³)", 0.0 ..= 0.015;
    /// Air temperature, in degrees Celsius.
    AirTemperature(celsius): "temperature", "°C", -30.0 ..= 45.0;
    /// Relative humidity, in per cent.
    Humidity(percent): "humidity", "%", 0.0 ..= 100.0;
    /// Air pressure at the place, not reduced to sea level, in hectopascals.
    AirPressure(hpa): "air pressure", "hPa", 600.0 ..= 1100.0;
    /// Height above the sea, in metres.
    Altitude(m): "altitude", "m", -400.0 ..= 4000.0;
    /// Rolling resistance over the load on the wheels. A pure number.
    RollingCoefficient(value): "rolling coefficient", "", 0.001 ..= 0.4;
    /// Energy cost on this ground over hard ground, on foot and on the level. A pure number.
    FootFactor(value): "foot factor", "", 1.0 ..= 2.5;
    /// How far the ground's extra cost on foot grows with the slope: 0 a fixed extra per metre, 1 in proportion
    /// to the whole cost.
    SlopeShare(value): "slope share", "", 0.0 ..= 1.0;
    /// Usable friction between driven tyre and ground. A pure number.
    Friction(mu): "friction", "", 0.05 ..= 1.2;
    /// Rise over run, in per cent; negative is downhill. Limits: what Minetti et al. (2002) measured.
    ///
    /// # Example
    /// ```
    /// use gear_math::Gradient;
    /// let bank = Gradient::new(30.0)?;
    /// assert_eq!((bank.rise_over_run(), bank.reversed().percent()), (0.3, -30.0));
    /// assert!((bank.sine() - 0.287).abs() < 0.001);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Gradient(percent): "gradient", "%", -45.0 ..= 45.0;
    /// An uphill gradient, in per cent. Neither downhill nor steeper ground was measured for the comparison of
    /// riding with going on foot.
    Climb(percent): "slope", "%", 0.0 ..= 45.0;
    /// Length of a climb along the slope, in metres.
    ClimbLength(m): "length of the climb", "m", 1.0 ..= 5000.0;
    /// Time lost in getting off and on again, in seconds.
    SecondsLost(s): "time for dismount and remount", "s", 0.0 ..= 30.0;
    /// Slowest speed at which the rider keeps the bike upright and pointed uphill, in metres per second.
    BalanceSpeed(m_per_s): "slowest speed in balance", "m/s", 0.5 ..= 3.0;
    /// Bottom bracket centre to pedal axle, in millimetres.
    CrankLength(mm): "crank length", "mm", 130.0 ..= 200.0;
    /// Distance between the axles, in millimetres.
    Wheelbase(mm): "wheelbase", "mm", 850.0 ..= 1300.0;
    /// Height of the common centre of mass of rider and bike above the ground, in millimetres.
    MassHeight(mm): "height of the centre of mass", "mm", 600.0 ..= 1500.0;
    /// Part of the weight on the rear wheel, on the level. A pure number.
    RearShare(value): "weight on the rear wheel", "", 0.3 ..= 0.8;
    /// Peak drive force over mean drive force within a pedal turn. A pure number.
    PeakFactor(value): "peak of the pedal stroke over its mean", "", 1.0 ..= 2.0;
    /// Part of the strength of one all-out pedal turn that lasts through the effort. A pure number.
    StrengthShare(share): "usable share of the leg strength", "", 0.3 ..= 1.0;
    /// Moment of inertia of both wheels together, in kg·m².
    WheelInertia(kg_m2): "inertia of both wheels", "kg·m²", 0.0 ..= 1.0;
}

derived! {
    /// A computed gradient, rise over run. Unlike a typed [`Gradient`] it may be steeper than anyone measured.
    Slope(rise_over_run);
    /// Mean torque at the crank over a pedal turn, in newton metres.
    Torque(n_m);
    /// Energy to move one kilogram of body mass one metre along the slope, above standing, in joules.
    FootCost(j_per_kg_m);
    /// Mass that resists a change of speed: everything moved plus what the turning wheels add, in kilograms.
    EffectiveMass(kg);
    /// A computed length along the slope, in metres.
    Distance(m);
    /// A computed time, in seconds.
    Time(s);
    /// Metabolic power, in watts.
    MetabolicPower(watts);
    /// Power that a computation asks for at the crank, in watts. Unlike a typed [`Power`] it has no limits.
    PowerDemand(watts);
    /// What a second takes from the reserve, in watts; negative while it is repaid.
    ChargeRate(watts);
    /// What the reserve has been drawn down by, in joules.
    Deficit(j);
}

known! {
    GrossEfficiency, StandingMetabolism, DrivetrainEfficiency, LoadFactor, FootCostFactor, DragArea, AirDensity,
    Headwind, FootDrag, RollingCoefficient, FootFactor, SlopeShare, Friction, SecondsLost, BalanceSpeed,
    CrankLength, Wheelbase, MassHeight, RearShare, PeakFactor, PeakPower, StrengthShare, WheelInertia,
    WorkReserve, ReserveShare, RepaidShare, CadenceCost, EffortBudget, EffortPrice,
}

nearest! {
    Power, PeakPower, WorkReserve, EffortBudget, EffortPrice, ClimbLength, EffortTime, GrossEfficiency, StandingMetabolism, DrivetrainEfficiency, LoadFactor, FootCostFactor,
    AirDensity, AirPressure, Climb, Compass, Headwind, RollingCoefficient, FootFactor, Friction, BalanceSpeed, Gradient, RepaidShare, CadenceCost,
    StrengthShare,
}

impl FrontShare {
    /// What the rear wheel leaves.
    #[must_use]
    pub fn beside(rear: RearShare) -> Self {
        Self::nearest(1.0 - rear.value())
    }
}

impl EffortBudget {
    /// Limits in kilojoules.
    pub const KJ_LIMITS: Limits = Limits { name: Self::LIMITS.name, unit: "kJ", min: 0.0, max: 50.0 };

    /// The budget of so many kilojoules, or the nearest within its limits.
    #[must_use]
    pub fn of_kj(kilojoules: f64) -> Self {
        Self::nearest(1e3 * kilojoules)
    }
}

impl WindSpeed {
    /// No wind.
    pub const NONE: Self = Self(0.0);
}

impl Compass {
    /// North.
    pub const NORTH: Self = Self(0.0);

    /// Which way leads so far east and so far north, to a degree; none where it leads nowhere.
    #[must_use]
    pub fn towards(east: f64, north: f64) -> Option<Self> {
        let degrees = east.atan2(north).to_degrees().round().rem_euclid(Self::LIMITS.max);
        (east != 0.0 || north != 0.0).then(|| Self::nearest(degrees))
    }
}

impl From<Power> for PowerDemand {
    fn from(power: Power) -> Self {
        Self(power.0)
    }
}

impl PowerDemand {
    /// No power: coasting.
    pub const NONE: Self = Self(0.0);
}

impl Gradient {
    /// Flat ground.
    pub const LEVEL: Self = Self(0.0);

    /// Rise over run.
    #[must_use]
    pub fn rise_over_run(self) -> f64 {
        self.0 / 100.0
    }
}

impl Climb {
    /// Flat ground.
    pub const LEVEL: Self = Self(0.0);

    /// Rise over run.
    #[must_use]
    pub fn rise_over_run(self) -> f64 {
        self.0 / 100.0
    }
}

impl From<Climb> for Gradient {
    fn from(climb: Climb) -> Self {
        Self(climb.0)
    }
}

impl From<Gradient> for Slope {
    fn from(gradient: Gradient) -> Self {
        Self(gradient.rise_over_run())
    }
}

impl From<Climb> for Slope {
    fn from(climb: Climb) -> Self {
        Self(climb.rise_over_run())
    }
}

impl Slope {
    /// The slope in per cent.
    #[must_use]
    pub fn percent(self) -> f64 {
        self.0 * 100.0
    }
}
