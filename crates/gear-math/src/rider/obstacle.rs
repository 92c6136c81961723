//! Short climbs: what getting off costs, and how far speed carries.

use crate::quantity::Speed;
use crate::rider::quantity::{ClimbLength, Distance, EffectiveMass, Power, SecondsLost, Time, WheelInertia};
use crate::rider::resistance::Resistance;
use crate::solve::{Near, rising_root};

/// Panels of the momentum integral; each is at most about one natural logarithm of the excess speed wide.
const PANELS: u16 = 40;
/// Nodes and weights of the five-point Gauss–Legendre rule on −1..1.
const GAUSS: [(f64, f64); 5] = [
    (0.0, 0.568_888_888_888_888_9),
    (-0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (-0.906_179_845_938_664, 0.236_926_885_056_189_1),
    (0.906_179_845_938_664, 0.236_926_885_056_189_1),
];

/// A speed that is counted as the one the power holds, over it.
const NEARLY_HELD: f64 = 1.0 + 1e-6;

impl SecondsLost {
    /// 3 s: a practised rider. Skilled riders lose 1 to 2 s, beginners 6 to 10 s (common practice).
    pub const PRACTISED: Self = Self::known(3.0);
    /// Nothing.
    pub const NONE: Self = Self::known(0.0);
}

impl ClimbLength {
    /// The longest climb there is here, 5 km.
    pub const LONGEST: Self = Self::nearest(f64::INFINITY);

    /// Whether it is so short that the speed brought to it decides, not the gears: below 10 m. Estimate.
    #[must_use]
    pub fn is_ramp(self) -> bool {
        self.m() < 10.0
    }

    /// Mean speed over it in a time.
    #[must_use]
    pub fn speed_in(self, time: Time) -> Speed {
        Speed::new(self.m() / time.s())
    }
}

impl WheelInertia {
    /// 0.14 kg·m², both wheels. Martin et al. (1998, *J Appl Biomech* 14:276–291).
    pub const USUAL: Self = Self::known(0.14);
}

/// The length above which getting off pays; `None` when being on foot is not the faster of the two.
///
/// # Formula
/// L = t₀ v_ride v_foot/(v_foot − v_ride).
///
/// # Example
/// ```
/// use gear_math::Speed;
/// use gear_math::rider::{SecondsLost, break_even_length};
/// let (slow, fast) = (Speed::from_km_per_h(5.4)?, Speed::from_km_per_h(7.2)?);
/// let length = break_even_length(slow, fast, SecondsLost::new(5.0)?);
/// assert!(length.is_some_and(|l| (l.m() - 30.0).abs() < 1e-9));
/// assert!(break_even_length(fast, slow, SecondsLost::PRACTISED).is_none());
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[must_use]
pub fn break_even_length(ride: Speed, foot: Speed, lost: SecondsLost) -> Option<Distance> {
    let gain = foot.m_per_s() - ride.m_per_s();
    (gain > 0.0).then(|| Distance::new(lost.s() * ride.m_per_s() * foot.m_per_s() / gain))
}

/// A rider who comes in faster than their power holds, and slows down; made by [`Resistance::slowing`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slowing {
    resistance: Resistance,
    mass: EffectiveMass,
    /// Speed that the power holds, in m/s.
    held: f64,
    /// Speed to begin with, in m/s.
    from: f64,
}

impl Resistance {
    /// What becomes of a speed while `power` goes on.
    #[must_use]
    pub fn slowing(&self, power: Power, mass: EffectiveMass, from: Speed) -> Slowing {
        let held = self.steady_speed(power).m_per_s();
        Slowing { resistance: *self, mass, held, from: from.m_per_s() }
    }
}

impl Slowing {
    /// Way and time until a lower speed is reached; `None` when the power holds a higher one than `to`, zero when the
    /// rider is no faster than `to` to begin with.
    ///
    /// # Formula
    /// dx = m_e v dv/(η P/v − F(v)), dt = dx/v. With r the speed that the power holds and v = r + eᵘ the integrand of the
    /// way, m_e v²/((v F(v) − η P)/(v − r)), stays smooth however near `to` comes to r.
    #[must_use]
    pub fn down_to(&self, to: Speed) -> Option<(Distance, Time)> {
        let to = to.m_per_s();
        (to > self.held).then(|| (Distance::new(self.way(to)), Time::new(self.time(to))))
    }

    /// Time over a length; `None` when the speed falls to `slowest` before its end. Who comes in no faster than the
    /// power holds is taken to ride at that speed.
    #[must_use]
    pub fn over(&self, length: ClimbLength, slowest: Speed) -> Option<Time> {
        let slowest = slowest.m_per_s();
        let low = slowest.max(self.held * NEARLY_HELD);
        let left = length.m() - self.way(low);
        if left > 0.0 {
            return (slowest < self.held).then(|| Time::new(self.time(low) + left / self.held));
        }
        let last = rising_root((low, self.from), self.from, Near::ROUNDING, |v| {
            (length.m() - self.way(v), self.mass.kg() * v * v / self.braking(v) / (v - self.held))
        });
        Some(Time::new(self.time(last)))
    }

    fn way(&self, to: f64) -> f64 {
        self.integral(to, false)
    }

    fn time(&self, to: f64) -> f64 {
        self.integral(to, true)
    }

    /// Way until a speed is reached, or the time of it. One loop for both keeps the compiled code small.
    fn integral(&self, to: f64, of_time: bool) -> f64 {
        if self.from <= to {
            return 0.0;
        }
        let (low, high) = (to - self.held, self.from - self.held);
        let sum = gauss_legendre(low.ln(), high.ln(), |u| {
            let v = self.held + u.exp();
            if of_time { v / self.braking(v) } else { v * v / self.braking(v) }
        });
        self.mass.kg() * sum
    }

    /// (v F(v) − η P)/(v − r), in newtons.
    fn braking(&self, v: f64) -> f64 {
        self.resistance.force(v) + self.held * self.resistance.force_chord(v, self.held)
    }
}

fn gauss_legendre(low: f64, high: f64, f: impl Fn(f64) -> f64) -> f64 {
    let half = 0.5 * (high - low) / f64::from(PANELS);
    let panel = |k: u16| {
        let middle = low + half * f64::from(2 * k + 1);
        GAUSS.iter().map(|(node, weight)| weight * f(middle + half * node)).sum::<f64>()
    };
    half * (0..PANELS).map(panel).sum::<f64>()
}
