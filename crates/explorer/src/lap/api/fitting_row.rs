//! Parts of a box that go together.

use gear_math::Circumference;
use gear_math::parts::{Combined, Fit, FitVerdict};
use serde::Serialize;
use tsify::Tsify;

/// Parts that go together, with their lap.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct FittingRow {
    chainset: usize,
    cassette: usize,
    derailleur: Option<usize>,
    verdict: FitName,
    /// Capacity left over; null when the derailleur's is not given.
    spare_teeth: Option<i32>,
    /// The chain that goes on.
    links: u16,
    /// Which of the box's chains it is, or is cut from; null where none is long enough.
    chain: Option<usize>,
    /// Gears never to be used, each as its ring and its sprocket: the lap is ridden without them.
    gears_to_avoid: Vec<[u16; 2]>,
    lap_s: f64,
    /// Whether the lap was worked out in full, as `lap` does. On a reserve all get a first look by the plans of a few, which is
    /// mostly within half a second, and the best 60 are then planned in full.
    planned: bool,
    shifts_rear: u32,
    shifts_front: u32,
    lowest_development_m: f64,
}

impl FittingRow {
    pub(super) fn of(row: &Combined, wheel: Circumference) -> Self {
        let Combined { combination, fit, lap, .. } = row;
        Self {
            chainset: combination.chainset,
            cassette: combination.cassette,
            derailleur: combination.derailleur,
            verdict: fit.verdict.into(),
            spare_teeth: fit.spare,
            links: fit.links.count(),
            chain: fit.chain,
            gears_to_avoid: avoided(fit),
            lap_s: lap.time_s,
            planned: lap.planned,
            shifts_rear: lap.shifts[0],
            shifts_front: lap.shifts[1],
            lowest_development_m: fit.avoid.lowest(&fit.drivetrain).development(wheel).m(),
        }
    }
}

/// How sure it is that parts go together.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum FitName {
    /// They do.
    Fits,
    /// By the makers' figures; the smallest gears have to be tried by hand.
    OnPaper,
    /// As long as `gearsToAvoid` are never used.
    AvoidingGears,
    /// Something that was not given could turn it.
    NotKnown,
}

impl From<FitVerdict> for FitName {
    fn from(verdict: FitVerdict) -> Self {
        match verdict {
            FitVerdict::Fits => Self::Fits,
            FitVerdict::OnPaper => Self::OnPaper,
            FitVerdict::AvoidingGears => Self::AvoidingGears,
            FitVerdict::NotKnown => Self::NotKnown,
        }
    }
}

pub(super) fn avoided(fit: &Fit) -> Vec<[u16; 2]> {
    fit.avoid.gears(&fit.drivetrain).map(|gear| [gear.ring.teeth(), gear.sprocket.teeth()]).collect()
}
