//! Stems and spacers that bring the bar to its place.

use crate::position::point::BikePoint;
use crate::position::quantity::{BarTolerance, Spacers, StemAngle, StemLength};
use crate::position::stem::{ExactStem, FrontEnd, StemSetup};
use core::cmp::Ordering;
use core::fmt;

/// What a stem search may use.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StemSearchLimits {
    /// How far the bar may miss the target, forward and upward each.
    pub tolerance: BarTolerance,
    /// Most spacers under the stem.
    pub max_spacers: Spacers,
}

impl Default for StemSearchLimits {
    /// 5 mm either way, and the 30 mm of spacers that are usual on a carbon steerer.
    fn default() -> Self {
        Self { tolerance: BarTolerance::USUAL, max_spacers: Spacers::CARBON_STEERER }
    }
}

/// A stem with spacers that can be bought and built, and how near it brings the bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StemFit {
    /// Stem and spacers.
    pub setup: StemSetup,
    /// Where they put the bar.
    pub bar: BikePoint,
    /// Bar ahead of the target, in millimetres; negative is short of it.
    pub dx_mm: f64,
    /// Bar above the target, in millimetres; negative is below it.
    pub dy_mm: f64,
    /// Distance from the target, in millimetres.
    pub miss_mm: f64,
}

/// What a stem search came to.
///
/// # Example
/// ```
/// use gear_math::StemSearch;
/// use gear_math::position::{BikePoint, ClampHeight, FrameReach, FrameStack, FrontEnd, HeadAngle, StemSearchLimits, TopCap};
/// let front = FrontEnd {
///     stack: FrameStack::new(558.0)?,
///     reach: FrameReach::new(379.0)?,
///     head_angle: HeadAngle::new(72.0)?,
///     top_cap: TopCap::new(12.0)?,
///     clamp_height: ClampHeight::new(40.0)?,
/// };
/// let target = BikePoint { x_mm: 453.0, y_mm: 621.0 };
/// let StemSearch::Found(fits) = front.search_stems(target, &StemSearchLimits::default()) else {
///     unreachable!("a 90 mm stem reaches this target")
/// };
/// assert_eq!(fits[0].setup.length.mm(), 90.0);
/// assert_eq!(fits[0].setup.spacers.mm(), 15.0);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub enum StemSearch {
    /// Set-ups within the tolerance, nearest first, then fewer spacers; never empty.
    Found(Vec<StemFit>),
    /// No set-up comes near enough.
    NoneFits(StemShortfall),
}

/// How near a stem can come when none fits, and what is in the way.
#[derive(Debug, Clone, PartialEq)]
pub struct StemShortfall {
    /// The set-up that comes nearest to the target all the same.
    pub nearest: StemFit,
    /// What is in the way with a stem of its angle; with another angle if only the steps between sizes are in the way there.
    pub lack: StemLack,
    /// Where angles of one kind need too many spacers and those of the other sit too high without any: the best of the
    /// other kind.
    pub other: Option<StemLack>,
}

impl StemSearch {
    /// Whether nothing but a stem that is rarely seen, or none at all, brings the bar to its place. A measure that was typed
    /// or read wrongly is then likelier than such a bike (estimate), so it is worth asking.
    #[must_use]
    pub fn is_doubtful(&self) -> bool {
        match self {
            Self::Found(fits) => fits.iter().all(|fit| fit.setup.is_rare()),
            Self::NoneFits(_) => true,
        }
    }
}

/// What one stem angle lacks.
#[derive(Debug, Clone, PartialEq)]
pub struct StemLack {
    /// The exact solution with this angle.
    pub exact: ExactStem,
    /// What that solution lacks; never empty. That the length is wrong tells all, unless the nearest set-up uses every
    /// spacer too, or none.
    pub missing: Vec<MissingPiece>,
}

/// Why an exact stem cannot be built.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum MissingPiece {
    /// The stem would be shorter than any sold: the frame is too long.
    ShorterStem {
        /// Millimetres short of the shortest stem.
        by_mm: f64,
    },
    /// The stem would be longer than any sold: the frame is too short.
    LongerStem {
        /// Millimetres over the longest stem.
        by_mm: f64,
    },
    /// The bar would sit too high even without spacers: the front of the frame is too high.
    LowerFront {
        /// Millimetres along the steerer.
        by_mm: f64,
    },
    /// More spacers than allowed: the front of the frame is too low.
    HigherFront {
        /// Millimetres along the steerer.
        by_mm: f64,
    },
    /// The solution lies within the sizes that exist, but between their steps.
    FinerSteps,
}

impl fmt::Display for MissingPiece {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::ShorterStem { by_mm } => {
                write!(f, "even the shortest stem sold is {by_mm:.0} mm too long")
            }
            Self::LongerStem { by_mm } => {
                write!(f, "even the longest stem sold is {by_mm:.0} mm too short")
            }
            Self::LowerFront { by_mm } => {
                write!(
                    f,
                    "even without spacers the bar is {by_mm:.0} mm too high, measured along the steerer"
                )
            }
            Self::HigherFront { by_mm } => {
                write!(f, "it would take {by_mm:.0} mm more spacers than you allow")
            }
            Self::FinerSteps => f.write_str(
                "the place lies between two sizes, so allow a larger tolerance or use thinner spacers",
            ),
        }
    }
}

impl FrontEnd {
    /// Searches the stems that are sold, with spacers in steps of 5 mm, for those that put the bar on `target`.
    ///
    /// Tries [`StemLength::SOLD`] × [`StemAngle::SOLD`] × spacers up to the limit: at most 1530 set-ups.
    #[must_use]
    pub fn search_stems(&self, target: BikePoint, limits: &StemSearchLimits) -> StemSearch {
        let mut fits: Vec<StemFit> = Vec::new();
        let mut nearest: Option<StemFit> = None;
        for fit in setups(limits.max_spacers).map(|setup| self.fit(setup, target)) {
            if nearest.is_none_or(|nearest| fit.nearer(&nearest).is_lt()) {
                nearest = Some(fit);
            }
            if fit.is_within(limits.tolerance) {
                fits.insert(fits.partition_point(|other| other.nearer(&fit).is_le()), fit);
            }
        }
        match nearest {
            Some(nearest) if fits.is_empty() => StemSearch::NoneFits(self.shortfall(target, limits, nearest)),
            _ => StemSearch::Found(fits),
        }
    }

    /// The exact solution for each stem angle that is sold, whether it can be built or not.
    #[must_use]
    pub fn exact_stems(&self, target: BikePoint) -> [ExactStem; 10] {
        StemAngle::SOLD.map(|angle| self.exact_stem(target, angle))
    }

    fn fit(&self, setup: StemSetup, target: BikePoint) -> StemFit {
        let bar = self.bar(&setup);
        let (dx_mm, dy_mm) = (bar.x_mm - target.x_mm, bar.y_mm - target.y_mm);
        StemFit { setup, bar, dx_mm, dy_mm, miss_mm: dx_mm.hypot(dy_mm) }
    }

    fn shortfall(&self, target: BikePoint, limits: &StemSearchLimits, nearest: StemFit) -> StemShortfall {
        let (most, exacts) = (limits.max_spacers, self.exact_stems(target));
        let own = self.exact_stem(target, nearest.setup.angle);
        let exact = if own.is_buildable(most) {
            &own
        } else {
            exacts.iter().find(|exact| exact.is_buildable(most)).unwrap_or(&own)
        };
        let lack = exact.lack(&nearest, most);
        let is_a_matter_of_height =
            matches!(lack.missing[..], [MissingPiece::LowerFront { .. } | MissingPiece::HigherFront { .. }]);
        let other = exacts
            .iter()
            .filter(|other| is_a_matter_of_height && other.is_too_high() != exact.is_too_high())
            .min_by(|a, b| a.outside_mm(most).total_cmp(&b.outside_mm(most)))
            .map(|other| other.lack(&nearest, most));
        StemShortfall { nearest, lack, other }
    }
}

impl StemFit {
    fn is_within(&self, tolerance: BarTolerance) -> bool {
        self.dx_mm.abs() <= tolerance.mm() && self.dy_mm.abs() <= tolerance.mm()
    }

    fn nearer(&self, other: &Self) -> Ordering {
        let by_spacers = || self.setup.spacers.mm().total_cmp(&other.setup.spacers.mm());
        self.miss_mm.total_cmp(&other.miss_mm).then_with(by_spacers)
    }
}

impl ExactStem {
    /// Whether stem length and spacers lie within what is sold and allowed.
    #[must_use]
    pub fn is_buildable(&self, max_spacers: Spacers) -> bool {
        self.outside_mm(max_spacers) <= 0.0
    }

    /// Whether somebody could make it: a length that stems can have, on spacers or none.
    #[must_use]
    pub fn is_a_stem(&self) -> bool {
        StemLength::new(self.length_mm).is_ok() && !self.is_too_high()
    }

    fn is_too_high(&self) -> bool {
        self.spacers_mm < 0.0
    }

    /// What stands in the way of building it; `FinerSteps` when only the steps between sizes do.
    fn lack(&self, nearest: &StemFit, max_spacers: Spacers) -> StemLack {
        let [shortest, .., longest] = StemLength::SOLD.map(StemLength::mm);
        let used = nearest.setup.spacers.mm();
        let mut missing = Vec::new();
        if self.length_mm < shortest {
            missing.push(MissingPiece::ShorterStem { by_mm: shortest - self.length_mm });
        } else if self.length_mm > longest {
            missing.push(MissingPiece::LongerStem { by_mm: self.length_mm - longest });
        }
        let length_fits = missing.is_empty();
        if self.is_too_high() && (length_fits || used <= 0.0) {
            missing.push(MissingPiece::LowerFront { by_mm: -self.spacers_mm });
        } else if self.spacers_mm > max_spacers.mm()
            && (length_fits || used + Spacers::STEP_MM > max_spacers.mm())
        {
            missing.push(MissingPiece::HigherFront { by_mm: self.spacers_mm - max_spacers.mm() });
        }
        if missing.is_empty() {
            missing.push(MissingPiece::FinerSteps);
        }
        StemLack { exact: *self, missing }
    }

    /// Distance from the range of stems and spacers that can be built, in millimetres.
    fn outside_mm(&self, max_spacers: Spacers) -> f64 {
        let [shortest, .., longest] = StemLength::SOLD.map(StemLength::mm);
        let length = self.length_mm - self.length_mm.clamp(shortest, longest);
        let spacers = self.spacers_mm - self.spacers_mm.clamp(0.0, max_spacers.mm());
        length.hypot(spacers)
    }
}

fn setups(max_spacers: Spacers) -> impl Iterator<Item = StemSetup> {
    StemLength::SOLD.into_iter().flat_map(move |length| {
        StemAngle::SOLD.into_iter().flat_map(move |angle| {
            Spacers::steps_up_to(max_spacers).map(move |spacers| StemSetup { length, angle, spacers })
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::quantity::{ClampHeight, FrameReach, FrameStack, HeadAngle, TopCap};

    fn search(stack_mm: f64, reach_mm: f64) -> StemSearch {
        let front = FrontEnd {
            stack: FrameStack::new(stack_mm).unwrap(),
            reach: FrameReach::new(reach_mm).unwrap(),
            head_angle: HeadAngle::new(72.0).unwrap(),
            top_cap: TopCap::new(12.0).unwrap(),
            clamp_height: ClampHeight::new(40.0).unwrap(),
        };
        front.search_stems(BikePoint { x_mm: 470.0, y_mm: 630.0 }, &StemSearchLimits::default())
    }

    fn missing_for(stack_mm: f64, reach_mm: f64) -> Vec<MissingPiece> {
        match search(stack_mm, reach_mm) {
            StemSearch::Found(_) => Vec::new(),
            StemSearch::NoneFits(shortfall) => shortfall.lack.missing,
        }
    }

    #[test]
    fn each_frame_that_does_not_fit_lacks_something_else() {
        assert_eq!(missing_for(570.0, 380.0), []);
        let lacks =
            |stack, reach, piece: fn(&MissingPiece) -> bool| missing_for(stack, reach).iter().any(piece);
        assert!(lacks(570.0, 300.0, |piece| matches!(piece, MissingPiece::LongerStem { .. })));
        assert!(lacks(570.0, 460.0, |piece| matches!(piece, MissingPiece::ShorterStem { .. })));
        assert!(lacks(660.0, 380.0, |piece| matches!(piece, MissingPiece::LowerFront { .. })));
        assert!(lacks(480.0, 380.0, |piece| matches!(piece, MissingPiece::HigherFront { .. })));
    }

    #[test]
    fn only_what_hardly_any_bike_has_is_doubtful() {
        assert!(!search(570.0, 380.0).is_doubtful());
        let far = search(570.0, 340.0);
        assert!(far.is_doubtful() && matches!(far, StemSearch::Found(_)), "{far:?}");
        assert!(search(570.0, 300.0).is_doubtful());
    }
}
