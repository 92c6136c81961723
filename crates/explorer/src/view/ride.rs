//! “Ride or run?”: the answer in sentences.

use super::ride_climb;
use super::ride_words::{doubtful, grade, grade_or_never, judged, moved, reason, seconds, verdict};
use super::sheet::Block;
use super::sheet_checks::Concern;
use super::tyre;
use super::words::name;
use crate::field::Field;
use crate::number::{percent, plain, with_unit};
use crate::owner::Owner;
use crate::report::{Ascent, Report, RideSide, Side};
use gear_math::{Answer, Climb, Crossover, Gear, MarkKind, Reason, Slope, Speed, TotalMass, Verdict};
use maud::{Markup, html};

/// Swings below this move nothing, points of gradient.
pub(super) const STILL: f64 = 0.05;

/// Where riding ends with A and with B, what lies beyond, what the rings change, and this climb.
#[must_use]
pub(super) fn answer(report: &Report) -> Markup {
    let ride = &report.ride;
    let [a, b] = &ride.sides;
    html! {
        @if ride.alike() {
            p { (on_ground(report)) (end(report, a, &html! { (name(Side::A)) " and " (name(Side::B)) " alike" })) }
        } @else {
            p { (on_ground(report)) (end(report, a, &name(Side::A))) " With " (end(report, b, &name(Side::B))) }
        }
        p { (spinning(report)) (beyond(report)) " " (change(report)) " " (doubt(report)) }
        p { (ride_climb::answer(report)) }
        (tyre::width_counts(report))
    }
}

fn on_ground(report: &Report) -> String {
    format!("On {} with ", report.ride.ground_name())
}

/// A set-up's end of riding. `with` names the set-up.
fn end(report: &Report, side: &RideSide, with: &Markup) -> Markup {
    let Some(flip) = side.flip() else {
        return html! { (with) " you can ride all that was measured, up to 45\u{a0}%." };
    };
    if flip.reason == Reason::Energy && flip.gradient.percent() > 0.0 {
        return html! {
            (with) " your feet are as quick from about " b { (percent(flip.gradient.percent(), 1)) } " up, below "
            b { (report.unit.print(flip.speed)) } ", for the same effort and by the best guess"
            "."
        };
    }
    html! {
        (with) " you are on foot "
        @if flip.gradient.percent() > 0.0 {
            "below " b { (report.unit.print(flip.speed)) } ", which is from "
            b { (percent(flip.gradient.percent(), 1)) } " up"
        } @else {
            b { "on the level already" }
        }
        ": " (why(report, side, flip.reason)) "."
    }
}

fn why(report: &Report, side: &RideSide, reason: Reason) -> String {
    let gear = lowest_gear(report, side);
    match reason {
        Reason::Gear => {
            let cadence = with_unit(report.window.low.rpm(), 0, "rpm");
            format!("the lowest gear, {gear}, turns slower there than your {cadence}")
        }
        Reason::Force => format!("even the lowest gear, {gear}, asks for more strength than lasts that long"),
        Reason::Balance => "slower than that the bike does not stay upright, whatever the gear".to_owned(),
        Reason::Grip => "the rear wheel slips there, whatever the gear".to_owned(),
        Reason::Energy => "your feet are as quick there for the same effort, by the best guess".to_owned(),
    }
}

/// The lowest gear, or both where one sentence stands for both set-ups.
fn lowest_gear(report: &Report, side: &RideSide) -> String {
    let [a, b] = [report.ride.sides[0].lowest, report.ride.sides[1].lowest];
    if report.ride.alike() && a != b { format!("{a} or {b}") } else { side.lowest.to_string() }
}

/// What lies past the ends: up to where a lower gear would help, and where nobody can tell.
fn beyond(report: &Report) -> String {
    let sides = &report.ride.sides;
    let geared: Vec<(Side, f64)> = sides
        .iter()
        .filter_map(|side| Some((side.side, side.flip()?)))
        .filter(|(_, end)| matches!(end.reason, Reason::Gear | Reason::Force))
        .map(|(side, end)| (side, end.gradient.percent()))
        .collect();
    if geared.is_empty() {
        without_gears(sides) + &close_call(sides)
    } else {
        with_lower_gears(sides, &geared)
    }
}

fn without_gears(sides: &[RideSide; 2]) -> String {
    let Some(end) = sides.iter().find_map(RideSide::flip) else { return String::new() };
    let close = sides[0].crossover.too_close_from.map(Slope::percent);
    if close.is_some_and(|close| close <= end.gradient.percent()) {
        return String::new();
    }
    let far = close
        .map_or("all the way to 45\u{a0}%".to_owned(), |close| format!("to about {}", percent(close, 0)));
    format!("If that did not stop you, riding would stay ahead {far}. ")
}

/// `geared` holds the sides that their gears put on foot, and from which slope.
fn with_lower_gears(sides: &[RideSide; 2], geared: &[(Side, f64)]) -> String {
    let close = sides[0].crossover.too_close_from;
    let limit = sides[0].next_limit().filter(|(_, at)| close.is_none_or(|close| *at < close));
    let until = limit.map(|(_, at)| at).or(close).map(Slope::percent);
    let helped: Vec<Side> =
        geared.iter().filter(|(_, end)| until.is_none_or(|until| *end < until)).map(|it| it.0).collect();
    let lower = |of: &[Side]| match of {
        [side] => format!("With {side} a lower gear would"),
        _ => "A lower gear would".to_owned(),
    };
    let Some(until) = until.map(|until| percent(until, 0)) else {
        return format!("{} still beat your feet all the way to 45\u{a0}%.", lower(&helped));
    };
    let stretch = match helped.as_slice() {
        [] => {
            let geared: Vec<Side> = geared.iter().map(|it| it.0).collect();
            return format!("{} change little. {}", lower(&geared), close_call(sides));
        }
        [_] => format!("{} still beat your feet up to about {until}", lower(&helped)),
        _ => format!("From there to about {until} a lower gear would still beat your feet"),
    };
    let then = match limit {
        Some((Reason::Grip, _)) => "; there the rear wheel slips whatever the gear.".to_owned(),
        Some(_) => "; there you are too slow to balance whatever the gear.".to_owned(),
        None => format!("; beyond, it is too close to call{}.", decide(sides)),
    };
    stretch + &then
}

/// Slopes below this are called the level, per cent.
const LEVEL: f64 = 0.5;

/// Where it is too close to call, as a sentence of its own.
fn close_call(sides: &[RideSide; 2]) -> String {
    let crossover = &sides[0].crossover;
    match (crossover.too_close_from.map(Slope::percent), crossover.foot_from.map(Slope::percent)) {
        (None, _) => String::new(),
        (_, Some(foot)) if foot < LEVEL => "Your feet are surely quicker from the level on.".to_owned(),
        (Some(from), _) if from < LEVEL => {
            format!("It is too close to call from the level on{}.", decide(sides))
        }
        (Some(from), _) => {
            format!("From about {} it is too close to call{}.", percent(from, 0), decide(sides))
        }
    }
}

fn decide(sides: &[RideSide; 2]) -> String {
    match sides[0].crossover.foot_from.map(Slope::percent) {
        None => ": let grip and balance decide".to_owned(),
        Some(from) => format!(", until your feet are surely quicker from about {} on", percent(from, 0)),
    }
}

/// The gear in which a side spins out, its speed, and up to which slope that costs it a sure lead on the feet.
fn spun_out(side: &RideSide) -> Option<(Gear, Speed, Climb)> {
    let lost = |it: &&Answer| it.spins_out() && it.ratio.high < 1.0 && it.verdict != Verdict::Ride;
    let last = side.answers.iter().rev().find(lost)?;
    Some((last.riding.gear, last.riding.held?, last.gradient))
}

fn spinning(report: &Report) -> Markup {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(spun_out);
    html! {
        @for (gear, speed, slope) in [a, b.filter(|_| a != b)].into_iter().flatten() {
            "The " (gear) " spins out at " b { (report.unit.print(speed)) }
            ", which your feet may better on slopes up to about " b { (percent(slope.percent(), 0)) } ". "
        }
    }
}

/// What changing the rings changes.
fn change(report: &Report) -> Markup {
    let ride = &report.ride;
    if ride.alike() {
        return html! { "Between A and B that makes no difference." };
    }
    let (lower, further) = match [&ride.sides[0], &ride.sides[1]].map(RideSide::flip) {
        [Some(a), Some(b)] => {
            let points = b.gradient.percent() - a.gradient.percent();
            if points.abs() < STILL {
                return html! { "Between A and B that end moves by less than 0.1 points of gradient." };
            }
            let lower = if points > 0.0 { Side::B } else { Side::A };
            let slower = (report.unit.value(a.speed) - report.unit.value(b.speed)).abs();
            let further = html! {
                "on slopes up to " b { (plain(points.abs(), 1)) " points of gradient" }
                " steeper, at speeds down to " b { (with_unit(slower, 1, report.unit.symbol())) } " lower"
            };
            (lower, further)
        }
        [a, _] => {
            let lower = if a.is_none() { Side::A } else { Side::B };
            (lower, html! { b { "all the way to 45\u{a0}%" } })
        }
    };
    html! { (name(lower)) " instead of " (name(lower.other())) " keeps you riding " (further) "." }
}

/// The input that moves the end of riding most, as the band of the number above.
fn doubt(report: &Report) -> Markup {
    let Some(swing) = report.ride.swings.first() else { return html! {} };
    let side = if swing.bars[0].swing_points >= STILL { Side::A } else { Side::B };
    let bar = &swing.bars[side as usize];
    html! {
        @if bar.swing_points >= STILL {
            "The widest doubt: " (doubtful(swing.input)) " from " (moved(swing.input, bar.values)) " moves "
            (name(side)) "’s end from " b { (grade_or_never(bar.at_low)) } " to " b { (grade_or_never(bar.at_high)) } "."
        }
    }
}

/// What to take along to the course: where each lowest gear gives up, where nobody can tell, and this climb.
#[must_use]
pub(super) fn block(report: &Report) -> Block {
    let ride = &report.ride;
    let (rider, bike) = (&ride.inputs.rider, &ride.inputs.bike);
    let mut block = Block::new("Ride or run");
    let all_kg = TotalMass::of(rider.body, rider.kit, bike.mass).kg();
    let power = with_unit(rider.power.watts(), 0, "W");
    block.row(
        "Reckoned for",
        format!("{power} and {} in all on {}", with_unit(all_kg, 1, "kg"), ride.ground_name()),
    );
    for side in &ride.sides {
        block.row_of(side.side, "Lowest gear", runs_out(report, side));
        let ends = side.flip().map_or("nowhere up to 45\u{a0}%".to_owned(), |flip| {
            format!("{}, by {}", grade(flip.gradient), reason(flip.reason))
        });
        block.row_of(side.side, "On foot from", ends);
    }
    block.row("Too close to call", undecided(&ride.sides[0].crossover));
    let climb = climb_for_the_sheet(report);
    for side in &ride.sides {
        let foot = seconds(side.plan.foot);
        let words = match side.ascent(ride.inputs.length) {
            Ascent::Ridden(time) => {
                format!("{}: riding {}, on foot {foot}", verdict(side.plan.verdict), seconds(time))
            }
            Ascent::Carried(time) => format!("carry your speed over it in {}", seconds(time)),
            Ascent::Forced(power, time) => {
                let power = with_unit(power.watts(), 0, "W");
                let close = if side.plan.judged(time) == Verdict::Ride { "" } else { "too close to call: " };
                format!("{close}force it at {power} in {}, or {foot} on foot", seconds(time))
            }
            Ascent::OnFoot => format!("{} ({foot})", judged(side.plan.verdict, side.plan.answer.limits)),
        };
        block.row_of(side.side, &climb, words);
    }
    block.check(Concern::Course, ON_THE_COURSE.join(" "));
    block
}

/// “9.0 % for 60 m”, unless these are only the demo's.
fn climb_for_the_sheet(report: &Report) -> String {
    let inputs = &report.ride.inputs;
    if !report.owners.is_example && report.owners.least(&[Field::Slope, Field::ClimbLength]) == Owner::Demo {
        return "The climb".to_owned();
    }
    format!("{} for {}", percent(inputs.climb.percent(), 1), with_unit(inputs.length.m(), 0, "m"))
}

/// What the numbers of the sheet cannot know.
const ON_THE_COURSE: [&str; 2] = [
    "Gradients for riding or running are estimates: try the slope itself, and where it is too close to call let grip, balance and what comes next decide.",
    "On steep, wet ground the front wheel can lift and the rear one slip: do not ride or run beyond what you control.",
];

fn runs_out(report: &Report, side: &RideSide) -> String {
    let marks = &side.crossover.marks;
    let at = marks.iter().find(|mark| mark.kind == MarkKind::Ends(Reason::Gear)).map(|mark| mark.gradient);
    let speed = report.unit.print(side.crossover.lowest_gear_speed);
    match at {
        Some(at) => format!("{}, down to {speed}, runs out at {}", side.lowest, grade(at)),
        None => format!("{}, down to {speed}, never runs out", side.lowest),
    }
}

fn undecided(crossover: &Crossover) -> String {
    match (crossover.too_close_from, crossover.foot_from) {
        (None, _) => "nowhere up to 45\u{a0}%".to_owned(),
        (Some(from), None) => format!("from {} on", grade(from)),
        (_, Some(to)) if to.percent() < STILL => "nowhere: on foot is surely quicker".to_owned(),
        (Some(from), Some(to)) => format!("{} to {}", grade(from), grade(to)),
    }
}
