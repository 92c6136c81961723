//! Which tyre goes on which rim.

use crate::wheel::measuring_rim::LabelEdition;
use crate::wheel::quantity::{NominalWidth, RimInnerWidth};
use core::fmt;

/// Tyres foreseen for one rim.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RimRow {
    /// Inner width of the rim.
    pub rim: RimInnerWidth,
    /// Narrowest tyre, in millimetres.
    pub tyre_min_mm: f64,
    /// Widest tyre, in millimetres; `None` where the source names none.
    pub tyre_max_mm: Option<f64>,
}

impl RimRow {
    /// Whether this row foresees `tyre`.
    #[must_use]
    pub fn takes(&self, tyre: NominalWidth) -> bool {
        self.tyre_min_mm <= tyre.mm() && self.tyre_max_mm.is_none_or(|most| tyre.mm() <= most)
    }
}

const fn row(rim_mm: f64, tyre_min_mm: f64, tyre_max_mm: Option<f64>) -> RimRow {
    RimRow { rim: RimInnerWidth::tabled(rim_mm), tyre_min_mm, tyre_max_mm }
}

/// The older ETRTO table for hooked rims: 19 and 21 from an undated reprint, the others from memory of it. The edition
/// of 2020 made 21 the measuring rim of a 33, which this table does not foresee.
pub const HOOKED_RIMS: [RimRow; 6] = [
    row(13.0, 18.0, Some(25.0)),
    row(15.0, 23.0, Some(32.0)),
    row(17.0, 25.0, Some(50.0)),
    row(19.0, 28.0, Some(62.0)),
    row(21.0, 35.0, Some(62.0)),
    row(23.0, 40.0, Some(62.0)),
];

/// ETRTO 2023 for hookless rims, as a rim maker has it; a magazine asks for 5 mm more than the rim, hence 30.
pub const HOOKLESS_RIMS: [RimRow; 1] = [row(25.0, 29.0, None)];

/// Tyre over rim that is usual: 1.45 to 2.0 (rule of thumb of the trade).
const USUAL_RATIO: (f64, f64) = (1.45, 2.0);
/// Tyre over rim at the outside: 1.5 to 2.5 in the other form of that rule, whose upper end is the wider.
const HIGHEST_RATIO: f64 = 2.5;
/// Heavy riders keep to rims that hold the sidewall well: tyre over rim up to this (estimate).
const HEAVY_RATIO: f64 = 1.75;
/// A tyre for a hookless rim is at least this much wider than the rim, in millimetres (ETRTO 2023, as a magazine has it).
const HOOKLESS_MARGIN_MM: f64 = 5.0;

/// Inner widths of rims, from narrowest to widest, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RimRange {
    /// Narrowest.
    pub narrowest_mm: f64,
    /// Widest.
    pub widest_mm: f64,
}

impl RimRange {
    /// From this weight on a rider is a heavy one, in kilograms (common practice).
    pub const HEAVY_RIDER_KG: f64 = 85.0;

    /// The rims that suit a tyre: tyre over rim from 1.45 to 2.0 (rule of thumb of the trade).
    #[must_use]
    pub const fn usual(tyre: NominalWidth) -> Self {
        Self { narrowest_mm: tyre.mm() / USUAL_RATIO.1, widest_mm: tyre.mm() / USUAL_RATIO.0 }
    }

    /// The part of them that suits a rider of [`Self::HEAVY_RIDER_KG`] or more: the wider ones, which keep a soft tyre from squirming
    /// (common practice; where the part begins is an estimate).
    #[must_use]
    pub const fn for_heavy_riders(tyre: NominalWidth) -> Self {
        Self { narrowest_mm: tyre.mm() / HEAVY_RATIO, ..Self::usual(tyre) }
    }
}

/// What speaks against a tyre on a rim.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum RimCaution {
    /// The rim is narrower than usual.
    NarrowRim,
    /// The rim is narrower than any rule allows, and no table has the pair.
    TooNarrowRim,
    /// The rim is wider than usual.
    WideRim,
    /// Neither the older table nor the newer measuring rim foresees the pair.
    NotForeseen,
    /// The tyre is hardly wider than the hookless rim.
    CloseToHookless,
    /// A hookless rim needs a tyre made for it.
    HooklessTyre,
}

impl RimCaution {
    /// Whether the tyre may come off the rim: no pressure is to be told for such a pair.
    #[must_use]
    pub const fn is_danger(self) -> bool {
        matches!(self, Self::TooNarrowRim | Self::CloseToHookless)
    }

    /// Whether it is to be told before anything else: a danger, or a pair that no table foresees.
    #[must_use]
    pub const fn comes_first(self) -> bool {
        self.is_danger() || matches!(self, Self::NotForeseen)
    }
}

impl fmt::Display for RimCaution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NarrowRim => "The rim is narrow for this tyre: at low pressure the tyre squirms in turns.",
            Self::TooNarrowRim => {
                "The rim is too narrow for this tyre, which can roll off it: take a wider rim or a narrower tyre."
            }
            Self::WideRim => {
                "The rim is wide for this tyre: little spring is left and the rim strikes sooner."
            }
            Self::NotForeseen => {
                "No table that we know of foresees this tyre on this rim: ask the makers of both."
            }
            Self::CloseToHookless => {
                "On a hookless rim the tyre should be at least 5 mm wider than the rim: take a wider tyre."
            }
            Self::HooklessTyre => "A hookless rim needs a tyre that its maker names for hookless rims.",
        })
    }
}

/// Everything that speaks against putting a tyre labelled `tyre` on `rim`; empty when nothing does.
///
/// # Example
/// ```
/// use gear_math::wheel::{NominalWidth, RimCaution, RimInnerWidth, rim_cautions};
/// let tyre = NominalWidth::new(32.0)?;
/// assert_eq!(rim_cautions(tyre, RimInnerWidth::new(19.0)?, false), []);
/// assert_eq!(rim_cautions(tyre, RimInnerWidth::new(12.0)?, false)[0], RimCaution::TooNarrowRim);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[must_use]
pub fn rim_cautions(tyre: NominalWidth, rim: RimInnerWidth, hookless: bool) -> Vec<RimCaution> {
    let foreseen = !hookless && is_foreseen(tyre, rim);
    let mut cautions: Vec<RimCaution> = ratio_caution(tyre.mm() / rim.mm(), foreseen).into_iter().collect();
    if hookless {
        if tyre.mm() - rim.mm() < HOOKLESS_MARGIN_MM {
            cautions.push(RimCaution::CloseToHookless);
        }
        cautions.push(RimCaution::HooklessTyre);
    } else if !foreseen {
        cautions.push(RimCaution::NotForeseen);
    }
    cautions
}

fn ratio_caution(tyre_over_rim: f64, foreseen: bool) -> Option<RimCaution> {
    match tyre_over_rim {
        ratio if ratio > HIGHEST_RATIO && !foreseen => Some(RimCaution::TooNarrowRim),
        ratio if ratio > USUAL_RATIO.1 => Some(RimCaution::NarrowRim),
        ratio if ratio < USUAL_RATIO.0 => Some(RimCaution::WideRim),
        _ => None,
    }
}

/// Whether the older table has the pair, or the rim is the one that newer labels are measured on. A rim is looked up in
/// the rows within 1 mm of its width.
fn is_foreseen(tyre: NominalWidth, rim: RimInnerWidth) -> bool {
    let is_near = |other: RimInnerWidth| (other.mm() - rim.mm()).abs() <= 1.0;
    let in_older_table = HOOKED_RIMS.iter().any(|row| is_near(row.rim) && row.takes(tyre));
    in_older_table || is_near(LabelEdition::Etrto2020.measuring_rim(tyre))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cautions(tyre_mm: f64, rim_mm: f64, hookless: bool) -> Vec<RimCaution> {
        rim_cautions(NominalWidth::new(tyre_mm).unwrap(), RimInnerWidth::new(rim_mm).unwrap(), hookless)
    }

    #[test]
    fn a_33_suits_rims_from_16_5_to_22_8() {
        let range = RimRange::usual(NominalWidth::new(33.0).unwrap());
        assert!((range.narrowest_mm - 16.5).abs() < 0.05 && (range.widest_mm - 22.8).abs() < 0.05);
    }

    #[test]
    fn the_newer_measuring_rim_counts_as_foreseen() {
        assert_eq!(cautions(33.0, 21.0, false), []);
        assert_eq!(cautions(33.0, 23.0, false), [RimCaution::WideRim, RimCaution::NotForeseen]);
    }

    #[test]
    fn what_the_older_table_has_is_narrow_but_not_too_narrow() {
        assert_eq!(cautions(45.0, 17.0, false), [RimCaution::NarrowRim]);
        assert_eq!(cautions(55.0, 17.0, false), [RimCaution::TooNarrowRim, RimCaution::NotForeseen]);
        assert_eq!(cautions(45.0, 17.0, true)[0], RimCaution::TooNarrowRim);
    }

    #[test]
    fn a_hookless_rim_asks_for_5_mm() {
        assert_eq!(cautions(40.0, 25.0, true), [RimCaution::HooklessTyre]);
        assert!(cautions(29.0, 25.0, true).contains(&RimCaution::CloseToHookless));
    }
}
