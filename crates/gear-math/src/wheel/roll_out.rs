//! How far the wheel rolls in one turn.

use crate::gears::{Gear, RollOutLimit};
use crate::quantity::Circumference;
use crate::wheel::quantity::{EstimateError, RollOutDeviation};
use crate::wheel::tyre_size::TyreSize;

/// A wheel by its tyre, with its roll-out when somebody has measured it.
///
/// # Example
/// ```
/// use gear_math::{Circumference, Wheel};
/// use gear_math::wheel::TyreKind;
/// let mut wheel = Wheel::by_size("33-622".parse()?, None);
/// assert_eq!(wheel.kind, TyreKind::CycloCross);
/// assert_eq!(wheel.roll_out().mm().round(), 2161.0);
/// assert_eq!(wheel.estimate().error.percent(), 1.5);
/// wheel.measured = Some(Circumference::new(2138.0)?);
/// assert_eq!(wheel.roll_out().mm(), 2138.0);
/// assert!(wheel.check_measured().is_some_and(|measured| measured.is_likely));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wheel {
    /// The tyre's size.
    pub tyre: TyreSize,
    /// How the tyre is ridden, which decides how far the estimate may be off.
    pub kind: TyreKind,
    /// Roll-out measured with the rider aboard at riding pressure. It wins over the estimate.
    pub measured: Option<Circumference>,
}

/// How a tyre is ridden.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TyreKind {
    /// Smooth and at road pressure.
    Road,
    /// Knobbed and at cyclo-cross race pressure.
    CycloCross,
}

/// Narrower tyres than this are road tyres, in millimetres (estimate; the narrowest that the starting pressures for cross
/// were made for).
const ROAD_BELOW_MM: f64 = 28.0;

impl TyreKind {
    /// The kind that a tyre of this size usually is: a road tyre below 28 mm (estimate).
    #[must_use]
    pub fn usual(tyre: TyreSize) -> Self {
        if tyre.width.mm() < ROAD_BELOW_MM { Self::Road } else { Self::CycloCross }
    }

    /// How far the estimate from the size may be off.
    ///
    /// Road: 0.6 %, the widest gap to the setting tables of cycle computers for 18 to 45 mm on 622 mm. Cyclo-cross:
    /// 1.5 %, an estimate: at race pressure the load takes 17 to 60 mm off the roll-out, knobs add 10 to 20.
    #[must_use]
    pub const fn estimate_error(self) -> EstimateError {
        EstimateError::new(match self {
            Self::Road => 0.6,
            Self::CycloCross => 1.5,
        })
    }
}

/// The roll-out as the tyre's size gives it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RollOutEstimate {
    /// Best guess.
    pub circumference: Circumference,
    /// How far it may be off.
    pub error: EstimateError,
    /// Shortest likely roll-out.
    pub shortest: Circumference,
    /// Longest likely roll-out.
    pub longest: Circumference,
}

/// A measured roll-out beside the estimate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeasuredRollOut {
    /// By how much it exceeds the estimate.
    pub deviation: RollOutDeviation,
    /// Whether the estimate may be that far off. If not, either was probably mistyped.
    pub is_likely: bool,
}

impl RollOutEstimate {
    /// How far the estimate may be off either way, in millimetres.
    #[must_use]
    pub fn give_or_take_mm(&self) -> f64 {
        self.longest.mm() - self.circumference.mm()
    }
}

impl Wheel {
    /// A wheel with a tyre of the kind that its size usually is.
    #[must_use]
    pub fn by_size(tyre: TyreSize, measured: Option<Circumference>) -> Self {
        Self { tyre, kind: TyreKind::usual(tyre), measured }
    }

    /// The roll-out to reckon with: measured if it has been, estimated otherwise.
    #[must_use]
    pub fn roll_out(&self) -> Circumference {
        self.measured.unwrap_or_else(|| self.tyre.circumference())
    }

    /// The estimate from the tyre's size, measured or not.
    #[must_use]
    pub fn estimate(&self) -> RollOutEstimate {
        let error = self.kind.estimate_error();
        let scaled = |percent: f64| Circumference::around(self.tyre.diameter_mm() * (1.0 + percent / 100.0));
        RollOutEstimate {
            circumference: scaled(0.0),
            error,
            shortest: scaled(-error.percent()),
            longest: scaled(error.percent()),
        }
    }

    /// The measured roll-out against the estimate, if it has been measured.
    #[must_use]
    pub fn check_measured(&self) -> Option<MeasuredRollOut> {
        let percent = (self.measured?.mm() / self.tyre.circumference().mm() - 1.0) * 100.0;
        let is_likely = percent.abs() <= self.kind.estimate_error().percent();
        Some(MeasuredRollOut { deviation: RollOutDeviation::new(percent), is_likely })
    }
}

impl RollOutLimit {
    /// Whether a wheel whose roll-out may be `error` off leaves it open if `gear` passes: only a measured roll-out tells.
    #[must_use]
    pub fn is_undecided(self, gear: Gear, estimate: &RollOutEstimate) -> bool {
        self.allows(gear.development(estimate.shortest)) && !self.allows(gear.development(estimate.longest))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_road_tyre_rolls_closer_to_its_size() {
        let kind = |size: &str| TyreKind::usual(size.parse().unwrap());
        assert_eq!(kind("25-622"), TyreKind::Road);
        assert_eq!([kind("28-622"), kind("45-584")], [TyreKind::CycloCross; 2]);
    }

    #[test]
    fn a_mistyped_roll_out_is_unlikely() {
        let measured = Circumference::new(2318.0).ok();
        let wheel = Wheel { tyre: "33-622".parse().unwrap(), kind: TyreKind::CycloCross, measured };
        assert!(!wheel.check_measured().unwrap().is_likely);
    }
}
