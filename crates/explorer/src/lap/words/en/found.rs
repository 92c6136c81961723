//! What a search found.

use crate::lap::found::{self, Found, Standing, TESTED_S, Tested};
use crate::lap::search::LeftOut;
use crate::layout::line::{Line, name};
use crate::number::{clock, seconds_in, signed};
use crate::side::Side;
use crate::units;
use crate::words::{counted, listed};
use gear_math::cage::{CageFinding, DerailleurFigure};
use gear_math::course::{Precision, TimeBand};
use gear_math::{CageCheck, Cassette, Chainring, Drivetrain, Search};

/// Over the table of those that stand out, and beneath that.
pub(crate) const SHOWN: [&str; 2] =
    ["What was found", "The best, A and B, and ●: no other is both quicker and lower geared."];

/// Over the table of all that are listed, and beneath that.
pub(crate) const LISTED: [&str; 2] =
    ["The best in order", "The first forty, and of the next sixty those that no other beats on every count."];

// Said in words there.
const _: () = assert!(found::LISTED == 40 && found::LOOKED_AT == 40 + 60);

/// Over the columns of both.
pub(crate) const HEADS: [&str; 8] = [
    "Rings and cassette",
    "Put on the bench",
    "Lap",
    "Behind the best",
    "Shifts, rear + front",
    "Lowest gear",
    "Largest step",
    "Spare teeth",
];

/// How the order came about.
pub(crate) fn order() -> String {
    let step = units::distances().print(Search::STEP.m(), 0);
    format!(
        "Put in order by time and what the rest is worth, for rider, course and derailleur as they were when the search began. Times are in steps of {step}: they may be a second or so off those above."
    )
}

/// Whose parts the search goes by, where B has some of its own.
pub(crate) fn with_parts_of_a() -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!(
        "Every set-up, {b} too, is tried with {a}’s derailleur, chain, wheel and mass; for those of {b}, swap {a} and {b} and search again."
    )
    .into()
}

/// What the mark of the front means.
pub(crate) const ON_FRONT: &str = "on the front";

/// Where nothing has to be changed.
pub(crate) const NOTHING_TO_BUY: &str = "Nothing to buy for this lap.";

/// That not all were ridden once more.
pub(crate) const REST_NOT_TESTED: &str = "The rest were not tested.";

/// What stands for a number that is not known.
pub(crate) const NOT_KNOWN: &str = "–";

/// That something else would be asked now.
pub(crate) fn stale(course: &str) -> String {
    format!("Searched for {course} as it was, with the rider, bike and derailleur of then: search again.")
}

/// How far it is, or what came of it.
pub(crate) fn said(found: &Found) -> String {
    let (count, all) = (found.count(), found.all.len());
    let Some(best) = found.order.first() else {
        return match (all, found.done) {
            (0, _) => "No set-up of these rings and cassettes fits frame, derailleur and chain.".to_owned(),
            (_, true) => "Cancelled before any was tried.".to_owned(),
            (_, false) => "Searching.".to_owned(),
        };
    };
    let (first, time) =
        (set_up(&best.candidate.drivetrain), clock(best.candidate.time_s, Precision::WITHOUT_BAND));
    if !found.done {
        format!("Ahead so far: {first}.")
    } else if count < all {
        format!("First of {count}: {first}, {time} a lap. Stopped after {count} of {all}.")
    } else {
        format!("First of {count}: {first}, {time} a lap.")
    }
}

/// How many of those tested tie with the first by time.
pub(crate) fn ties(ties: usize, tested: usize) -> String {
    let all = format!("of {tested} listed within {TESTED_S:.0}\u{a0}s of it or on the bench");
    match ties {
        0 => format!("None ties with it, {all}."),
        1 => format!("1 more ties with it by time, {all}: what tells it apart is within the uncertainty."),
        ties => format!(
            "{ties} more tie with it by time, {all}: what tells them apart is within the uncertainty."
        ),
    }
}

/// How a set-up of the bench stands; nothing of one that was not tried.
pub(crate) fn standing(side: Side, standing: &Standing) -> Option<Line> {
    let side = name(side);
    Some(match standing {
        Standing::NotTried => return None,
        Standing::First => format!("Your {side} is the first.").into(),
        Standing::Tie(band) => format!("Your {side} is one of the ties, {}.", lag(band)).into(),
        Standing::Apart(band) => format!("Your {side} is {}.", lag(band)).into(),
    })
}

/// How far one is behind the first, by the best guess and likely.
fn lag(band: &TimeBand) -> String {
    let seconds = |s: f64| seconds_in(s, band.precision());
    let (best, low, high) = (seconds(band.time_s.abs()), seconds(-band.high_s), seconds(-band.low_s));
    let which = if band.time_s > 0.0 { "ahead" } else { "behind" };
    format!("{best}\u{a0}s {which} by the best guess (likely {low} to {high}\u{a0}s behind)")
}

/// What is folded away.
pub(crate) fn in_order(listed: usize, tried: usize) -> String {
    format!("The best in order: {listed} of {tried}")
}

/// Why a set-up of the bench was not tried.
pub(crate) fn not_tried(side: Side, (check, frame): &(CageCheck, Option<Chainring>)) -> Line {
    let mut reasons: Vec<String> = check.findings.iter().map(|finding| reason(check, finding)).collect();
    reasons.extend(
        frame.map(|most| format!("its largest ring is larger than the frame clears, {most}\u{a0}teeth")),
    );
    if reasons.is_empty() {
        reasons.push("its chain does not suit, see “Will the cage take it?”".to_owned());
    }
    format!("{}, as it was then, was not tried: {}.", name(side), listed(&reasons)).into()
}

fn reason(check: &CageCheck, finding: &CageFinding) -> String {
    match finding {
        CageFinding::SprocketTooLarge { sprocket, limit } => {
            format!("its largest sprocket has {sprocket} teeth, the derailleur takes {limit}")
        }
        CageFinding::SprocketTooSmall { sprocket, limit } => {
            format!("its smallest sprocket has {sprocket} teeth, the derailleur takes no less than {limit}")
        }
        CageFinding::RingDifferenceTooLarge { difference, limit } => {
            format!("its rings differ by {difference} teeth, the front derailleur spans {}", limit.teeth())
        }
        CageFinding::AvoidGears { short_by, .. } | CageFinding::LongerCage { short_by, .. } => {
            format!("it asks for {} teeth, the derailleur takes {}", check.needed, check.needed - short_by)
        }
    }
}

/// Makers' figures that nothing was held against.
pub(crate) fn unchecked(figures: &[DerailleurFigure]) -> String {
    let figures = listed(figures);
    format!(
        "Not checked, since not given: {figures}. A set-up may need other parts: put it on the bench to see."
    )
}

/// Typed cassettes that go with no rings.
pub(crate) fn unfit(cassettes: &[Cassette]) -> String {
    let cassettes = listed(cassettes);
    format!("Not tried, since no rings tried go with them by derailleur, frame and chain: {cassettes}.")
}

/// What was left out, counted by reason; empty where nothing was.
pub(crate) fn left_out(left: &LeftOut) -> String {
    let reasons = [
        (
            left.cassettes,
            "usual cassette with another number of sprockets",
            "usual cassettes with another number of sprockets",
        ),
        (
            left.derailleur,
            "set-up that the derailleur does not take",
            "set-ups that the derailleur does not take",
        ),
        (
            left.avoid,
            "set-up that it takes only with gears to avoid",
            "set-ups that it takes only with gears to avoid",
        ),
        (left.frame, "set-up that the frame does not clear", "set-ups that the frame does not clear"),
        (left.chain, "set-up that no chain suits", "set-ups that no chain suits"),
    ];
    let told = reasons.iter().filter(|(count, ..)| *count > 0);
    let told: Vec<String> = told.map(|(count, one, many)| counted(*count, one, many)).collect();
    if told.is_empty() { String::new() } else { format!("Left out: {}.", listed(&told)) }
}

/// Rings and cassette.
pub(crate) fn set_up(drivetrain: &Drivetrain) -> String {
    format!("{} with {}", drivetrain.chainset, cassette(&drivetrain.cassette))
}

/// A cassette by its ends: “11-32, 11 sprockets”.
fn cassette(cassette: &Cassette) -> String {
    let count = counted(cassette.sprockets().len(), "sprocket", "sprockets");
    format!("{}-{}, {count}", cassette.smallest(), cassette.largest())
}

/// On the button that makes a set-up that of one side.
pub(crate) fn as_side(side: Side) -> String {
    format!("as {side}")
}

/// What that button does, for who does not see its row.
pub(crate) fn put_on_bench(drivetrain: &Drivetrain, side: Side) -> String {
    let Drivetrain { chainset, cassette } = drivetrain;
    let (smallest, largest) = (cassette.smallest(), cassette.largest());
    format!("Put {chainset} with {smallest}-{largest} on the bench as {side}")
}

/// The set-ups of the bench that stand at a place, as “A: ”, empty for none.
pub(crate) fn marks(sides: &[Side]) -> String {
    if sides.is_empty() { String::new() } else { format!("{}: ", listed(sides)) }
}

/// How much slower than the best, and whether that is known to be.
pub(crate) fn behind(behind_s: f64, tested: Tested) -> String {
    let behind = signed(behind_s, 1);
    match tested {
        Tested::Best => "the best".to_owned(),
        Tested::Tie => format!("{behind}\u{a0}s, a tie"),
        Tested::No => format!("{behind}\u{a0}s, not tested"),
        Tested::Apart => format!("{behind}\u{a0}s"),
    }
}
