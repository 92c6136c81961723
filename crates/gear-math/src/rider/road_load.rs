//! What holds a bicycle back, and the power that overcomes it.

use crate::physics::GRAVITY;
use crate::quantity::{Circumference, Speed};
use crate::rider::air::Air;
use crate::rider::quantity::{
    AirDensity, DragArea, DrivetrainEfficiency, EffectiveMass, Gradient, Headwind, Power, RollingCoefficient,
    Slope, TotalMass, WheelInertia,
};
use crate::rider::resistance::PowerTerms;
use crate::rider::resistance::Resistance;
use core::f64::consts::TAU;

/// Wheel bearings of both wheels: a force in N and its growth in N per m/s. Martin et al. (1998).
const BEARINGS: (f64, f64) = (0.091, 0.0087);
/// Drag area of the turning spokes in m². Martin et al. (1998).
const SPOKES: f64 = 0.0044;

/// Rider and bike on one kind of ground in still or moving air: the road-load equation.
///
/// # Formula
/// P = \[½ρ(C_dA + F_w) v_a|v_a| + C_rr M g cos θ + M g sin θ + bearings + m_e dv/dt\] v / η, with v_a the speed
/// against the air along the course. Martin, Milliken, Cobb, McFadden & Coggan (1998), *J Appl Biomech*
/// 14:276–291. Bearings and spokes come to less than 1 W below 4 m/s; [`RoadLoad::new`] leaves them out and
/// [`RoadLoad::with_wheels`] puts them in.
///
/// # Example
/// ```
/// use gear_math::{Gradient, Power};
/// use gear_math::rider::{Air, DrivetrainEfficiency, RoadLoad, RollingCoefficient, TotalMass};
/// let load = RoadLoad::new(
///     TotalMass::new(75.0)?,
///     RollingCoefficient::new(0.03)?,
///     &Air::STILL,
///     DrivetrainEfficiency::OFF_ROAD,
/// );
/// let speed = load.steady_speed(Power::new(220.0)?, Gradient::new(10.0)?);
/// assert!((speed.km_per_h() - 7.9).abs() < 0.05);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoadLoad {
    /// Everything that is moved.
    pub mass: TotalMass,
    /// Rolling resistance of the tyres on this ground.
    pub rolling: RollingCoefficient,
    /// Drag area of rider and bike.
    pub drag_area: DragArea,
    /// Density of the air.
    pub density: AirDensity,
    /// Wind against the rider along the course.
    pub headwind: Headwind,
    /// What reaches the rear wheel.
    pub efficiency: DrivetrainEfficiency,
    /// Whether wheel bearings and spoke drag count.
    pub wheels: bool,
}

impl RoadLoad {
    /// Rider and bike without the small losses of the turning wheels.
    #[must_use]
    pub const fn new(
        mass: TotalMass,
        rolling: RollingCoefficient,
        air: &Air,
        efficiency: DrivetrainEfficiency,
    ) -> Self {
        let Air { drag_area, density, headwind, .. } = *air;
        Self { mass, rolling, drag_area, density, headwind, efficiency, wheels: false }
    }

    /// The same with wheel bearings and spoke drag.
    #[must_use]
    pub const fn with_wheels(self) -> Self {
        Self { wheels: true, ..self }
    }

    /// The forces on a gradient, ready for many speeds.
    #[must_use]
    pub fn resistance(&self, gradient: Gradient) -> Resistance {
        let (sine, cosine) = sine_cosine(gradient.rise_over_run());
        let weight = self.mass.kg() * GRAVITY;
        let (bearing, bearing_growth, spokes) =
            if self.wheels { (BEARINGS.0, BEARINGS.1, SPOKES) } else { (0.0, 0.0, 0.0) };
        Resistance {
            gravity: weight * sine,
            rolling: self.rolling.value() * weight * cosine,
            bearing,
            bearing_growth,
            air: 0.5 * self.density.kg_per_m3() * (self.drag_area.m2() + spokes),
            headwind: self.headwind.m_per_s(),
            efficiency: self.efficiency.share(),
        }
    }

    /// Speed that a power holds, without end; 40 m/s when nothing bounds it.
    #[must_use]
    pub fn steady_speed(&self, power: Power, gradient: Gradient) -> Speed {
        self.resistance(gradient).steady_speed(power)
    }

    /// Where the power goes at a steady speed.
    #[must_use]
    pub fn power(&self, speed: Speed, gradient: Gradient) -> PowerTerms {
        self.resistance(gradient).power(speed)
    }

    /// The gradient on which `power` holds exactly `speed`; steeper ground is slower. `None` when the power
    /// exceeds what even a wall would take at that speed, or the speed is zero.
    ///
    /// # Formula
    /// i = tan(asin(F_a cos φ/(M g)) − φ), F_a = η P/v − air and bearings, tan φ = C_rr.
    #[must_use]
    pub fn gradient_for(&self, power: Power, speed: Speed) -> Option<Slope> {
        let level = self.resistance(Gradient::LEVEL);
        let v = speed.m_per_s();
        let left = level.efficiency * power.watts() / v - level.growing_force(v);
        gradient_overcome(left, self.mass, self.rolling)
    }

    /// The mass that resists a change of speed.
    ///
    /// # Formula
    /// m_e = M + I/r², r the rolling radius. Martin et al. (1998).
    #[must_use]
    pub fn effective_mass(&self, inertia: WheelInertia, wheel: Circumference) -> EffectiveMass {
        let radius = wheel.mm() / 1000.0 / TAU;
        EffectiveMass::new(self.mass.kg() + inertia.kg_m2() / (radius * radius))
    }
}

/// Sine and cosine of the angle of a gradient.
pub(super) fn sine_cosine(rise_over_run: f64) -> (f64, f64) {
    let cosine = 1.0 / (1.0 + rise_over_run * rise_over_run).sqrt();
    (rise_over_run * cosine, cosine)
}

/// The gradient that gravity and rolling resistance of `force` newtons belong to.
pub(super) fn gradient_overcome(force: f64, mass: TotalMass, rolling: RollingCoefficient) -> Option<Slope> {
    let phi = rolling.value().atan();
    let sine = force * phi.cos() / (mass.kg() * GRAVITY);
    (-1.0..=1.0).contains(&sine).then(|| Slope::new((sine.asin() - phi).tan()))
}
