//! Titles, remarks, heads and cells of the tables; a title stands with its remark.

use crate::bench::field::Field;
use crate::layout::line::{Line, link_to, strong};
use crate::number::{percent, plain, trimmed};
use crate::ride::ground_row::Stretch;
use crate::ride::other_gear::OTHER_GEARS;
use crate::ride::probe::AtSpeed;
use crate::ride::section::RideSection;
use crate::ride::words::climb::saved;
use crate::ride::words::figures::{feet_and_gears, steepest, whole};
use crate::ride::words::terms::{limit, mark, off_road, verb, verdict};
use crate::units;
use crate::words::capital;
use gear_math::rider::{Advice, ClimbPlan, CrankLength, LowerGear, MarkKind, PeakFactor, Verdict};

/// Every mark on the axis of gradients.
pub(crate) const ENDS: &str = "Where riding ends, and what else to know of the slope";

/// What those gradients are.
pub(crate) fn ends_remark() -> String {
    let peak = plain(PeakFactor::JERKY.value(), 2);
    format!(
        "Gradients on this ground, for this power, to a whole per cent: none is surer. All of it for a slope so long that you hold it at that power, and that dismount and remount do not count. Over body weight: holding the speed in the lowest gear takes more than your full weight on the pedal at every stroke. Choppy: a heavy, uneven stroke, with {peak} of its mean at the peak."
    )
}
/// Its rows before the marks.
pub(crate) const ENDS_ROWS: [&str; 5] =
    ["Lowest gear", "No gear low enough below", "Riding ends from", "Why", "Speed on foot there"];
/// The row of a mark.
pub(crate) fn mark_row(kind: MarkKind) -> String {
    capital(mark(kind))
}

/// A mark whose limit does not count.
pub(crate) const NOT_LOOKED_AT: &str = "not looked at";
/// A mark, or a length, whose band reaches both sides.
pub(crate) const TOO_CLOSE: &str = "too close to call";

/// Which crank it is.
pub(crate) fn over_body_weight(crank: CrankLength) -> Line {
    let crank = link_to(Field::CrossCrank, &format!("crank of {} mm", trimmed(crank.mm())));
    format!("Over body weight is for the cross bike’s {crank}, as in its position.").into()
}

/// Other lowest gears.
pub(crate) const OTHERS: [&str; 2] = [
    "What another lowest gear would do",
    "Two teeth off the smallest ring, two or four on to the largest sprocket. The other limits stay where they are.",
];
// Said in words there: teeth off the ring, teeth on to the sprocket.
const _: () = assert!(matches!(OTHER_GEARS, [(0, 0), (2, 0), (0, 2), (0, 4), (2, 4)]));

/// Its columns.
pub(crate) const OTHERS_HEADS: [&str; 4] =
    ["Lowest gear", "Slowest at your lowest cadence", "Too tall from", "Points steeper"];

/// The slope that belongs to a speed.
pub(crate) fn at_speed(report: &RideSection, at: &AtSpeed) -> Line {
    let speed = strong(&units::speed(report.rings.probe.uphill));
    match at {
        AtSpeed::Holds { slope, answers: [a, b] } => {
            let slope = strong(&percent(slope.percent(), 1));
            let feet = feet_and_gears(report, a, b);
            format!(
                "At {speed}: full power holds it on slopes up to {slope} by the best guess. On foot there: {feet}"
            )
        }
        AtSpeed::TooFast => format!("At {speed}: full power does not even hold it on the level."),
        AtSpeed::TooSlow => {
            format!("At {speed}: full power is faster than that all the way to {}.", steepest())
        }
    }
    .into()
}

/// What unfolds the table of speeds.
pub(crate) const SPEEDS_FOLDED: &str = "Speeds on every slope in numbers";
/// Speeds from the level to 45 %.
pub(crate) const SPEEDS: [&str; 2] = [
    "Speed against gradient",
    "Riding is what the power would give in an ideal gear; a cadence in brackets is one you cannot turn, spun out one that is too fast for you. Verdicts are for a slope so long that you hold it at that power, without dismount and remount; in the row of this climb stands its own, which counts all.",
];

/// Its columns of figures, speeds in this unit.
pub(crate) fn speeds_heads(unit: &str) -> [String; 7] {
    [
        "Slope".to_owned(),
        format!("Riding, {unit}"),
        "A, rpm".to_owned(),
        "B, rpm".to_owned(),
        format!("On foot, {unit}"),
        format!("Running, {unit}"),
        "Foot over ride, likely from – best – to".to_owned(),
    ]
}

/// Its columns of verdicts.
pub(crate) const SPEEDS_WITH: [&str; 2] = ["With A", "With B"];

/// The advice in its row of this climb.
pub(crate) fn this_climb(advice: Advice) -> String {
    format!("this climb: {}", verb(advice))
}

/// What unfolds the map in words.
pub(crate) const MAP_FOLDED: &str = "The map in numbers";
/// The map in words.
pub(crate) const MAP: [&str; 2] = [
    "Verdict by ground",
    "Each up to the gradient given, for a slope so long that you hold it at your power; a short climb may be forced or carried all the same.",
];
/// Its first column.
pub(crate) const GROUND: &str = "Ground";

/// The verdicts of one ground from the level up.
pub(crate) fn stretches(stretches: &[Stretch]) -> String {
    let words: Vec<String> = stretches.iter().map(stretch).collect();
    words.join("; ")
}

fn stretch(stretch: &Stretch) -> String {
    let (verdict, to) = (verdict(stretch.verdict), whole(stretch.to));
    match (stretch.verdict, stretch.reason) {
        (Verdict::FootForced, Some(why)) => format!("{verdict} ({}) to {to}", limit(why)),
        _ => format!("{verdict} to {to}"),
    }
}

/// The surfaces.
pub(crate) const GROUNDS: &str = "What each ground is taken to do";

/// What those numbers are worth.
pub(crate) fn grounds_remark() -> String {
    let off_by = off_road();
    format!(
        "Low – typical – high, and what that rests on. Off the road treat every number as {off_by} at best."
    )
}
/// Its columns.
pub(crate) const GROUNDS_HEADS: [&str; 4] =
    ["Ground", "Rolling resistance", "Cost on foot, × hard ground", "Friction"];

/// The climb that was asked about.
pub(crate) const CLIMB: [&str; 2] = [
    "This climb",
    "Running includes dismount and remount. Riding and running are as hard as pays on every lap, or as your share of the reserve allows where one lap is all that counts; the last three rows leave the reserve alone. Seconds of a lower gear are best guesses.",
];
/// A row of it.
pub(crate) const CLIMB_ADVICE: &str = "Advice";
/// A row of it.
pub(crate) const CLIMB_BETTER: &str = "Better of these";
/// A row of it.
pub(crate) const CLIMB_RIDING: &str = "Riding";
/// A row of it.
pub(crate) const CLIMB_SPENT: &str = "Of your reserve, riding";
/// A row of it.
pub(crate) const CLIMB_SPENT_RUNNING: &str = "Of your reserve, running";
/// A row of it.
pub(crate) const CLIMB_CARRIED: &str = "With the speed into it";
/// A row of it.
pub(crate) const CLIMB_EFFORT: &str = "At";
/// A row of it.
pub(crate) const CLIMB_RUNNING: &str = "Running";
/// A row of it.
pub(crate) const CLIMB_RUNNING_LIKELY: &str = "Running, likely";
/// A row of it.
pub(crate) const CLIMB_RUNNING_WINS: &str = "Running wins below";
/// A row of it.
pub(crate) const CLIMB_WINS_LIKELY: &str = "That speed, likely";
/// A row of it.
pub(crate) const CLIMB_PAYS_UP_TO: &str = "Riding as far pays up to";
/// A row of it.
pub(crate) const CLIMB_STEADY: &str = "Riding at your power alone";
/// A row of it.
pub(crate) const CLIMB_PAYS_FROM: &str = "So running pays from";
/// A row of it.
pub(crate) const CLIMB_LOWER_GEAR: &str = "A lower gear saves";
/// A row of it.
pub(crate) const CLIMB_GEAR: &str = "So gear and rpm";

/// The length from which running pays, by the best guess; never only where the whole band says so.
pub(crate) fn pays_from(plan: &ClimbPlan) -> String {
    match (plan.break_even, plan.answer.verdict) {
        (Some(length), _) => units::distances().print(length.m(), 0),
        (None, Verdict::Ride) => "never".to_owned(),
        (None, Verdict::TooClose) => TOO_CLOSE.to_owned(),
        _ => "–".to_owned(),
    }
}

/// What a lower gear saves.
pub(crate) fn lower_gear(lower: LowerGear) -> String {
    match lower {
        LowerGear::Saves(time) => format!("about {}", saved(time)),
        LowerGear::Spares => "no time, but effort".to_owned(),
        LowerGear::Needless | LowerGear::Useless(_) => "nothing".to_owned(),
    }
}

/// What moves the answer most.
pub(crate) const SWINGS: [&str; 2] = [
    "What moves the end of riding",
    "One input at a time, from its low to its high likely value; what moves nothing is left out.",
];
/// Its columns before those of A and B.
pub(crate) const SWINGS_HEADS: [&str; 2] = ["Input", "Moved"];
