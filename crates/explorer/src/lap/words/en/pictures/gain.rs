//! Time gained along the lap.

use crate::lap::settled::{Settled, Verdict};
use crate::number::{is_level, seconds_in, with_unit};
use crate::side::Side;
use gear_math::course::Precision;

/// Title of the picture.
pub(crate) const TITLE: &str = "Time gained along the lap";

/// How it is to be read.
pub(crate) const CAPTION: &str = "Above the line B is ahead, below it A.";

/// Above the line.
pub(crate) const B_AHEAD: &str = "B ahead ↑";

/// Below the line.
pub(crate) const A_AHEAD: &str = "A ahead ↓";

/// What it shows: who is ahead at the end by what B gains there.
pub(crate) fn label(gained_s: f64, precision: Precision) -> String {
    format!("Time gained along the lap: {} at the line.", ahead(gained_s, precision))
}

/// Who is ahead at a place by what B gains up to there.
pub(crate) fn place(at_m: f64, gained_s: f64, precision: Precision) -> String {
    format!("{}: {}.", with_unit(at_m, 0, "m"), ahead(gained_s, precision))
}

fn ahead(gained_s: f64, precision: Precision) -> String {
    if is_level(gained_s, precision) {
        return "A and B level".to_owned();
    }
    let (first, gained) =
        (if gained_s > 0.0 { Side::B } else { Side::A }, seconds_in(gained_s.abs(), precision));
    format!("{first} {gained}\u{a0}s ahead")
}

/// Who is ahead at the end, if that is decided.
pub(crate) fn says(settled: &Settled) -> String {
    let ahead = ahead(settled.gained.time_s, settled.gained.precision());
    match settled.verdict() {
        Verdict::Alike => "A and B are alike round this lap.".to_owned(),
        Verdict::HardlyApart | Verdict::Level | Verdict::TooClose | Verdict::OpenToForcing => {
            format!("Too close to call: {ahead} at the line by the best guess.")
        }
        Verdict::OnlyJust => format!("{ahead} at the line, hardly more than the uncertainty."),
        Verdict::Quicker => format!("{ahead} at the line, more than the uncertainty."),
    }
}
