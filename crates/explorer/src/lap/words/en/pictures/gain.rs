//! Time gained along the lap.

use crate::lap::settled::{Settled, Verdict};
use crate::layout::line::name;
use crate::number::{is_level, seconds_in};
use crate::side::Side;
use crate::units;
use gear_math::course::Precision;

/// Title of the picture.
pub(crate) const TITLE: &str = "Time gained along the lap";

/// How it is to be read.
pub(crate) const CAPTION: &str = "Above the line B is ahead, below it A. The bar: where most is gained.";

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
    format!("{}: {}.", units::distances().print(at_m, 0), ahead(gained_s, precision))
}

fn ahead(gained_s: f64, precision: Precision) -> String {
    if is_level(gained_s, precision) {
        return "A and B level".to_owned();
    }
    let (first, gained) =
        (if gained_s > 0.0 { Side::B } else { Side::A }, seconds_in(gained_s.abs(), precision));
    format!("{first} {gained}\u{a0}s ahead")
}

/// Where the one ahead gains what it gains; nothing where that is not told.
pub(crate) fn most(settled: &Settled) -> String {
    let Some(part) = settled.stretch() else { return String::new() };
    let (from, to) =
        (units::distances().number(part.span.from_m, 0), units::distances().print(part.span.to_m, 0));
    let (here, all, precision) = (part.gained_s.abs(), settled.lead().time_s, settled.gained.precision());
    let guess = match settled.verdict() {
        Verdict::Quicker | Verdict::OnlyJust => "",
        _ => "By the best guess ",
    };
    let [here_s, all_s] = [here, all].map(|s| seconds_in(s, precision));
    let (ahead, place) = (name(settled.ahead()), format!("at {from} to {to}"));
    if here > all {
        format!("{guess}{ahead} gains {here_s}\u{a0}s {place}, and keeps {all_s}\u{a0}s of it. ")
    } else {
        format!("{guess}{ahead} gains {here_s} of its {all_s}\u{a0}s {place}. ")
    }
}

/// Where the one ahead gains, and whether it is surely ahead at the end.
pub(crate) fn says(settled: &Settled) -> String {
    format!("{}{}", most(settled), at_the_line(settled))
}

fn at_the_line(settled: &Settled) -> String {
    let ahead = ahead(settled.gained.time_s, settled.gained.precision());
    match settled.verdict() {
        _ if !settled.is_final => format!("Being worked out: {ahead} at the line so far."),
        Verdict::Alike => "A and B are alike round this lap.".to_owned(),
        Verdict::HardlyApart | Verdict::Level | Verdict::TooClose | Verdict::OpenToForcing => {
            format!("Too close to call: {ahead} at the line by the best guess.")
        }
        Verdict::OnlyJust => format!("{ahead} at the line, hardly more than the uncertainty."),
        Verdict::Quicker => format!("{ahead} at the line, more than the uncertainty."),
    }
}
