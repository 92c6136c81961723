//! Short climbs: what getting off costs, and how far speed carries.

use crate::{Distance, EffectiveMass, Power, Resistance, SecondsLost, Speed, WheelInertia};

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

impl SecondsLost {
    /// 3 s: a practised rider. Skilled riders lose 1 to 2 s, beginners 6 to 10 s (common practice).
    pub const PRACTISED: Self = Self::known(3.0);
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
/// use gear_math::{SecondsLost, Speed, break_even_length};
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

impl Resistance {
    /// The way on which a speed decays to a lower one while `power` goes on; `None` when the power holds a higher
    /// speed than `to`, zero when `from` is not above `to`.
    ///
    /// # Formula
    /// dx = m_e v dv/(η P/v − F(v)). With r the speed that the power holds and v = r + eᵘ the integrand
    /// m_e v²/((v F(v) − η P)/(v − r)) stays smooth however near `to` comes to r.
    #[must_use]
    pub fn distance_slowing(
        &self,
        power: Power,
        mass: EffectiveMass,
        from: Speed,
        to: Speed,
    ) -> Option<Distance> {
        let held = self.steady_speed(power).m_per_s();
        let (low, high) = (to.m_per_s() - held, from.m_per_s() - held);
        if low <= 0.0 {
            return None;
        }
        if high <= low {
            return Some(Distance::new(0.0));
        }
        let way = gauss_legendre(low.ln(), high.ln(), |u| {
            let v = held + u.exp();
            v * v / (self.force(v) + held * self.force_chord(v, held))
        });
        Some(Distance::new(mass.kg() * way))
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
