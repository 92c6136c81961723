//! A tyre against the width that a race allows.

use crate::wheel::mounted_width::{TyreWidth, WidthAccuracy};
use crate::wheel::quantity::{MountedWidth, RaceLimit};
use core::fmt;

/// What to expect of the gauge. It never says that a tyre is allowed: only the gauge does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WidthVerdict {
    /// The tyre will probably pass.
    LikelyWithin,
    /// Too close to tell from figures.
    Measure,
    /// The tyre will probably fail.
    LikelyOver,
}

impl fmt::Display for WidthVerdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::LikelyWithin => "likely within the limit",
            Self::Measure => "too close to tell: measure it",
            Self::LikelyOver => "likely over the limit",
        })
    }
}

impl TyreWidth {
    /// What to expect when this tyre is measured against `limit`.
    ///
    /// A wired tyre is likely within from 1.5 mm below the limit, a tubular from 0.5 mm below; either is likely over
    /// from 0.5 mm above. The steps follow from [`WidthAccuracy`] (estimate).
    #[must_use]
    pub fn verdict(&self, limit: RaceLimit) -> WidthVerdict {
        let over = self.mounted.mm() - limit.mm();
        if over <= -self.accuracy.safe_margin_mm() {
            WidthVerdict::LikelyWithin
        } else if over < OVER_MM {
            WidthVerdict::Measure
        } else {
            WidthVerdict::LikelyOver
        }
    }
}

/// What a tyre's width by calliper says of the gauge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CalliperVerdict {
    /// Within the limit by more than a calliper can be off.
    Within,
    /// At the limit: within it by no more than a calliper can be off.
    AtLimit,
    /// Over it.
    Over,
}

impl fmt::Display for CalliperVerdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Within => "within it by your calliper",
            Self::AtLimit => "at the limit: measure again",
            Self::Over => "over it by your calliper",
        })
    }
}

impl RaceLimit {
    /// What to expect of a tyre that a calliper finds `width` wide. At the limit means up to 0.5 mm below it (estimate).
    ///
    /// # Example
    /// ```
    /// use gear_math::wheel::{CalliperVerdict, MountedWidth, RaceLimit};
    /// assert_eq!(RaceLimit::MM_35.by_calliper(MountedWidth::new(34.6)?), CalliperVerdict::AtLimit);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn by_calliper(self, width: MountedWidth) -> CalliperVerdict {
        match width.mm() - self.mm() {
            over if over > 0.0 => CalliperVerdict::Over,
            over if over < -CALLIPER_MM => CalliperVerdict::Within,
            _ => CalliperVerdict::AtLimit,
        }
    }
}

/// How far a calliper on a supple sidewall may be off, in millimetres (estimate).
const CALLIPER_MM: f64 = 0.5;

/// Computed width above the limit from which a tyre is likely over (estimate).
const OVER_MM: f64 = 0.5;

impl WidthAccuracy {
    /// Computed width below the limit from which a tyre is likely within (estimate).
    const fn safe_margin_mm(self) -> f64 {
        match self {
            Self::Wired => 1.5,
            Self::Tubular => 0.5,
        }
    }
}

/// One published rule on tyre width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RaceRule {
    /// Who made it.
    pub body: &'static str,
    /// Whom it binds.
    pub who: &'static str,
    /// Widest tyre.
    pub limit: RaceLimit,
    /// Edition or year in which it was seen.
    pub seen: &'static str,
}

const fn rule(body: &'static str, who: &'static str, limit: RaceLimit, seen: &'static str) -> RaceRule {
    RaceRule { body, who, limit, seen }
}

/// The rules found in print that may hold today. They change: the organiser has the last word.
pub const RACE_RULES: [RaceRule; 6] = [
    rule(
        "UCI",
        "elite, under 23 and junior, international; masters world championship",
        RaceLimit::UCI,
        "1.3.018, since 2010",
    ),
    rule(
        "British Cycling",
        "elite, under 23 and junior in national series and championship",
        RaceLimit::UCI,
        "notice of 2010",
    ),
    rule("USA Cycling", "elite, under 23 and junior 17 to 18 at nationals", RaceLimit::UCI, "guide of 2024"),
    rule("USA Cycling", "other categories at nationals", RaceLimit::MM_38, "guide of 2024, since 2020"),
    rule(
        "Australia and New Zealand",
        "outside elite, national series and championships",
        RaceLimit::MM_35,
        "press, 2024",
    ),
    rule("Manitoba, Canada", "category A", RaceLimit::MM_35, "rules of 2010"),
];

/// How to measure so that the commissaire's gauge gives no surprise (workshop practice).
pub const HOW_TO_MEASURE: &str = "Measure at the widest point, knobs included, at the highest pressure you will race, \
    after a day inflated. Close the calliper in small steps until it only just stops rattling: a supple sidewall gives way \
    by millimetres.";
