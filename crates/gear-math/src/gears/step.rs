//! How far apart two gears are.

use crate::gears::cassette::Cassette;
use crate::gears::gear::Gear;
use crate::gears::quantity::{DuplicateTolerance, GearRange, GearStep};
use crate::gears::toothed::Sprocket;
use crate::quantity::{Circumference, Development};
use core::cmp::Ordering;

impl GearStep {
    /// The step between two values of the same quantity, in either order.
    pub(super) fn between(a: f64, b: f64) -> Self {
        let (lower, higher) = if a <= b { (a, b) } else { (b, a) };
        Self::new(100.0 * (higher / lower - 1.0))
    }

    /// Whether gears this far apart count as the same. Those exactly as far apart as the tolerance may fall to either
    /// side by rounding, except that equal gears are always the same.
    #[must_use]
    pub fn is_within(self, tolerance: DuplicateTolerance) -> bool {
        self.percent() <= tolerance.percent()
    }

    /// The step that, taken `steps` times, leads evenly through `range`; none when there is no step to take.
    ///
    /// # Formula
    /// (b ÷ a)^(1 ÷ steps) − 1 for lowest gear a and highest gear b: a geometric series.
    #[must_use]
    pub fn equal(range: GearRange, steps: usize) -> Option<Self> {
        (steps > 0).then(|| Self::new(100.0 * ((range.percent() / 100.0).powf(1.0 / steps as f64) - 1.0)))
    }
}

impl GearRange {
    /// Quotient of the higher and the lower of two gears.
    pub(super) fn between(a: f64, b: f64) -> Self {
        Self::new(100.0 * a.max(b) / a.min(b))
    }
}

impl Development {
    /// How much the longer of two developments exceeds the shorter.
    #[must_use]
    pub fn step_to(self, other: Self) -> GearStep {
        GearStep::between(self.m(), other.m())
    }
}

impl Circumference {
    /// How much every gear is longer on the longer of two wheels.
    #[must_use]
    pub fn step_to(self, other: Self) -> GearStep {
        GearStep::between(self.mm(), other.mm())
    }
}

impl Gear {
    /// How much the higher of two gears on the same wheel exceeds the lower.
    ///
    /// # Example
    /// ```
    /// use gear_math::Gear;
    /// let step = Gear::new(40, 20)?.step_to(Gear::new(40, 16)?);
    /// assert_eq!(step.percent(), 25.0);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn step_to(self, other: Self) -> GearStep {
        GearStep::between(f64::from(self.against(other)), f64::from(other.against(self)))
    }

    /// Orders gears on the same wheel from low to high; different gears of the same ratio are equal here.
    #[must_use]
    pub fn cmp_ratio(self, other: Self) -> Ordering {
        self.against(other).cmp(&other.against(self))
    }

    /// This gear's ratio on the common denominator of both: whole numbers compare without rounding.
    pub(super) fn against(self, other: Self) -> u32 {
        u32::from(self.ring.teeth()) * u32::from(other.sprocket.teeth())
    }
}

/// Two neighbouring sprockets and the step between them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SprocketStep {
    /// The one with fewer teeth.
    pub smaller: Sprocket,
    /// The one with more teeth.
    pub larger: Sprocket,
    /// larger ÷ smaller − 1.
    pub step: GearStep,
}

impl Cassette {
    /// The steps from sprocket to sprocket, smallest first; none for a single sprocket.
    pub fn steps(&self) -> impl Iterator<Item = SprocketStep> + '_ {
        self.sprockets().windows(2).map(|pair| SprocketStep {
            smaller: pair[0],
            larger: pair[1],
            step: GearStep::between(f64::from(pair[0].teeth()), f64::from(pair[1].teeth())),
        })
    }

    /// The largest of its [`steps`](Self::steps), the smaller sprockets' one when two are equal.
    #[must_use]
    pub fn largest_step(&self) -> Option<SprocketStep> {
        self.steps().reduce(|largest, next| if next.step > largest.step { next } else { largest })
    }

    /// Largest sprocket ÷ smallest sprocket.
    #[must_use]
    pub fn range(&self) -> GearRange {
        GearRange::between(f64::from(self.smallest().teeth()), f64::from(self.largest().teeth()))
    }

    /// The step that all sprockets would be apart if they were spaced evenly over the same range.
    #[must_use]
    pub fn equal_step(&self) -> Option<GearStep> {
        GearStep::equal(self.range(), self.sprockets().len() - 1)
    }
}
