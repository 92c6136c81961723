//! “Ride or run?”: the answer in sentences.

use super::ride_words::{
    doubtful, foot_span, grade, grade_or_never, judged, moved, reason, seconds, verdict,
};
use super::sheet::Block;
use super::words::name;
use crate::number::{listed, percent, plain, with_unit};
use crate::report::{Ascent, Report, RideSide, Side};
use gear_math::{
    Answer, Climb, ClimbPlan, Crossover, Gear, LimitsHeld, MarkKind, Reason, Slope, Speed, Time, TotalMass,
    Verdict,
};
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
        p { (this_climb(report)) }
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

/// The climb that was asked about.
fn this_climb(report: &Report) -> Markup {
    let ride = &report.ride;
    let [a, b] = &ride.sides;
    let length = ride.inputs.length;
    let same = a.ascent(length) == b.ascent(length)
        && (a.plan.verdict, a.plan.break_even, a.plan.answer.limits)
            == (b.plan.verdict, b.plan.break_even, b.plan.answer.limits);
    html! {
        "This climb, " (percent(ride.inputs.climb.percent(), 1)) " for "
        (with_unit(length.m(), 0, "m")) ": "
        @if same {
            "with both " (climb_with(report, a)) ". "
        } @else {
            "with " (name(Side::A)) " " (climb_with(report, a)) "; with " (name(Side::B)) " " (climb_with(report, b)) ". "
        }
        "On foot it takes " b { (seconds(a.plan.foot)) } " (" (foot_span(&a.plan)) "), getting off and on included."
        @if length.is_ramp() && ride.sides.iter().any(|side| !side.plan.answer.limits.grip) {
            " A ramp this short is a matter of the speed you bring to it, not of gears."
        }
        (in_jerks(report))
    }
}

/// What a heavy, uneven stroke would do on this climb, where someone rides it.
fn in_jerks(report: &Report) -> Markup {
    let ridden = |side: &RideSide| {
        matches!(side.ascent(report.ride.inputs.length), Ascent::Ridden(_) | Ascent::Forced(..))
    };
    let Some(side) = report.ride.sides.iter().find(|side| ridden(side)) else { return html! {} };
    let answer = &side.plan.answer;
    let from = |kind: MarkKind| {
        side.crossover
            .marks
            .iter()
            .find(|mark| mark.kind == kind)
            .map_or(String::new(), |mark| grade(mark.gradient))
    };
    html! {
        @if answer.slips_in_jerks {
            " Pedal smoothly: under jerky strokes the rear wheel slips from " (from(MarkKind::SlipsInJerks)) " on, and a lower gear turns more smoothly."
        }
        @if answer.front_lifts {
            " Keep your weight forward: under jerky strokes the front wheel lifts from " (from(MarkKind::FrontLifts)) " on."
        }
    }
}

/// Advice and riding time of one set-up.
fn climb_with(report: &Report, side: &RideSide) -> Markup {
    let plan = &side.plan;
    html! {
        @match side.ascent(report.ride.inputs.length) {
            Ascent::Ridden(time) => {
                b { (advice(plan.verdict)) } ", riding takes " b { (seconds(time)) }
                (brought(side, time))
                @if plan.answer.spins_out() { ", spun out in " (plan.answer.riding.gear) }
                (pays(plan))
            }
            Ascent::Carried(time) => {
                b { "carry your speed" } ": coming in at " (report.unit.print(report.ride.inputs.entry))
                " you are over it in " b { (seconds(time)) } ", before " (limits_in_words(plan.answer.limits))
            }
            Ascent::Forced(power, time) => {
                @let watts = with_unit(power.watts(), 0, "W");
                // The legs that do not last for minutes were found to last for this.
                @let limits = limits_in_words(LimitsHeld { force: false, ..plan.answer.limits });
                @if plan.judged(time) == Verdict::Ride {
                    b { "force it" } " at " b { (watts) } ", which you have in reserve for this length, in "
                    b { (seconds(time)) } ", or get off, because " (limits)
                } @else {
                    b { "force it or get off as you like, it is too close to call" } ": at " b { (watts) }
                    ", which you have in reserve for this length, it takes " b { (seconds(time)) } "; with less, " (limits)
                }
            }
            Ascent::OnFoot => {
                b { "get off" } ", because " (limits_in_words(plan.answer.limits))
            }
        }
    }
}

/// What the speed into the climb saves of a steady time, where it is much of it.
fn brought(side: &RideSide, steady: Time) -> String {
    let time = side.carried.filter(|time| time.s() < MUCH * steady.s());
    time.map_or(String::new(), |time| format!(", or {} with the speed you bring", seconds(time)))
}

/// A time of less than this share of another is told beside it.
const MUCH: f64 = 0.8;

/// From which length getting off pays.
fn pays(plan: &ClimbPlan) -> String {
    let guess = if plan.verdict == Verdict::TooClose { " by the best guess" } else { "" };
    match plan.break_even {
        Some(length) => {
            format!(", and{guess} getting off pays on more than {}", with_unit(length.m(), 0, "m"))
        }
        None => format!(", and{guess} getting off never pays, however long the climb"),
    }
}

const fn advice(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Ride => "ride",
        Verdict::Foot | Verdict::FootForced => "go on foot",
        Verdict::TooClose => "ride or run as you like, it is too close to call",
    }
}

/// The limits that hold, as reasons.
#[must_use]
pub(super) fn limits_in_words(limits: LimitsHeld) -> String {
    let words: Vec<&str> = limits
        .reasons()
        .map(|reason| match reason {
            Reason::Gear => "the lowest gear is too tall",
            Reason::Force => "your strength does not last",
            Reason::Balance => "it is too slow to balance",
            Reason::Grip => "the rear wheel slips",
            Reason::Energy => "your feet are quicker",
        })
        .collect();
    listed(&words)
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
    let climb = format!(
        "{} for {}",
        percent(ride.inputs.climb.percent(), 1),
        with_unit(ride.inputs.length.m(), 0, "m")
    );
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
    block.cautions.extend(ON_THE_COURSE.map(str::to_owned));
    block
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Bench;
    use crate::field::Field;
    use crate::scenario::Scenario;

    /// The answer to the demo with some fields typed over, without tags.
    fn said(edits: &[(Field, &str)]) -> String {
        fragment(edits, answer)
    }

    /// The same of the table of the climb.
    fn of_climb(edits: &[(Field, &str)]) -> String {
        fragment(edits, super::super::ride_tables::climb)
    }

    fn fragment(edits: &[(Field, &str)], view: fn(&Report) -> Markup) -> String {
        let mut bench = Bench::default();
        for (field, text) in edits {
            bench.write(*field, text);
        }
        let read = Scenario::read(&bench, &Scenario::default());
        assert_eq!(read.complaints, []);
        let html = view(&Report::of(&read.scenario)).into_string().replace('\u{a0}', " ");
        html.split('<').map(|part| part.split_once('>').map_or(part, |(_, text)| text)).collect()
    }

    fn has(answer: &str, words: &str) {
        assert!(answer.contains(words), "“{words}” is not in “{answer}”");
    }

    const LOW: [(Field, &str); 4] = [
        (Field::RingsA, "24"),
        (Field::CassetteA, "11-13-15-18-21-25-30-36-42-50"),
        (Field::RingsB, "24"),
        (Field::CassetteB, "11-13-15-18-21-25-30-36-42-50"),
    ];

    fn low_and(edits: &[(Field, &'static str)]) -> String {
        said(&[&LOW, edits].concat())
    }

    #[test]
    fn the_gear_runs_out_before_it_is_too_close() {
        let answer = said(&[(Field::Ground, "firm-grass")]);
        has(
            &answer,
            "On firm grass with A you are on foot below 8.1 km/h, which is from 10.0 % up: the lowest gear, 34×30, turns slower there than your 55 rpm.",
        );
        has(
            &answer,
            "From there to about 13 % a lower gear would still beat your feet; beyond, it is too close to call",
        );
        has(
            &answer,
            "B instead of A keeps you riding on slopes up to 1.8 points of gradient steeper, at speeds down to 1.0 km/h lower.",
        );
    }

    #[test]
    fn a_lower_gear_is_not_promised_where_it_is_too_close_already() {
        let answer = said(&[(Field::Ground, "mud")]);
        has(&answer, "A lower gear would change little. From about 4 % it is too close to call");
    }

    #[test]
    fn one_sentence_does_for_two_that_are_alike() {
        let answer = low_and(&[]);
        has(
            &answer,
            "On wet, soft grass with A and B alike your feet are as quick from about 14.7 % up, below 5.4 km/h, for the same effort and by the best guess.",
        );
        has(&answer, "your feet are as quick from about");
        has(&answer, "Between A and B that makes no difference.");
    }

    #[test]
    fn nothing_may_stop_a_rider() {
        let free = [
            (Field::Ground, "tarmac"),
            (Field::GripCounts, "off"),
            (Field::Balance, ""),
            (Field::CadenceLow, "25"),
        ];
        has(&low_and(&free), "On tarmac with A and B alike you can ride all that was measured, up to 45 %.");
    }

    #[test]
    fn the_level_may_be_too_much() {
        let answer = said(&[(Field::Ground, "loose-sand")]);
        has(
            &answer,
            "On loose, dry sand with A and B alike you are on foot on the level already: the lowest gear, 34×30 or 32×32,",
        );
        has(
            &answer,
            "too close to call from the level on, until your feet are surely quicker from about 6 % on",
        );
    }

    #[test]
    fn a_short_ramp_is_carried_and_jerks_are_warned_of() {
        has(
            &said(&[(Field::ClimbLength, "12")]),
            "with A carry your speed: coming in at 20.0 km/h you are over it in 2.7 s, before the lowest gear is too tall; with B ride, riding takes 5.7 s, or 2.",
        );
        has(&said(&[]), "Pedal smoothly: under jerky strokes the rear wheel slips from 8.8 % on");
        let steep = [
            (Field::Ground, "tarmac"),
            (Field::Slope, "30"),
            (Field::Power, "400"),
            (Field::CadenceLow, "30"),
        ];
        has(&low_and(&steep), "Keep your weight forward: under jerky strokes the front wheel lifts from");
    }

    #[test]
    fn a_peak_power_that_does_not_give_the_power_is_refused_beside_it_but_never_an_estimate() {
        let read = |edits: &[(Field, &str)]| {
            let mut bench = Bench::default();
            for (field, text) in edits {
                bench.write(*field, text);
            }
            Scenario::read(&bench, &Scenario::default())
        };
        let typed = read(&[(Field::Power, "550"), (Field::PeakPower, "1000")]);
        let [complaint] = typed.complaints.as_slice() else { panic!("{:?}", typed.complaints) };
        assert_eq!(
            (complaint.field, complaint.kept.as_str()),
            (Field::PeakPower, "an estimate of 2200\u{a0}W")
        );
        has(&complaint.message.replace('\u{a0}', " "), "give 500 W for that long, less than your 550 W");
        assert_eq!(read(&[(Field::Power, "2000")]).complaints, []);
        let heavy = [(Field::Power, ""), (Field::Level, "national"), (Field::BodyMass, "115")];
        assert_eq!(read(&heavy).complaints, []);
    }

    #[test]
    fn a_climb_is_not_forced_where_feet_are_quicker() {
        let sand = [
            (Field::RingsA, "34"),
            (Field::CassetteA, "50"),
            (Field::Ground, "loose-sand"),
            (Field::Slope, "8"),
            (Field::ClimbLength, "120"),
            (Field::Balance, "1"),
        ];
        has(
            &said(&sand),
            "with both get off, because the lowest gear is too tall. On foot it takes 73 s (60 to 92)",
        );
        has(&of_climb(&sand), "enough for this climb, but your feet are quicker");
    }

    #[test]
    fn no_more_is_asked_than_legs_and_reserve_give() {
        let tall = [
            (Field::RingsA, "50"),
            (Field::CassetteA, "11"),
            (Field::Slope, "20"),
            (Field::ClimbLength, "10"),
            (Field::Ground, "tarmac"),
            (Field::Balance, ""),
        ];
        has(
            &said(&tall),
            "with A get off, because the lowest gear is too tall and your strength does not last",
        );
        has(&of_climb(&tall), "takes 1551 W, more than you give at that cadence for so long");
        has(
            &of_climb(&[&tall[..], &[(Field::Legs, "off")]].concat()),
            "takes 1551 W, more than you give at that cadence for so long",
        );
        let grinding = [
            (Field::RingsA, "42"),
            (Field::CassetteA, "16"),
            (Field::CadenceLow, "25"),
            (Field::Slope, "25"),
            (Field::ClimbLength, "20"),
            (Field::Ground, "tarmac"),
            (Field::ReserveShare, "1"),
        ];
        has(&of_climb(&grinding), "takes 444 W, more than you give at that cadence for so long");
    }

    #[test]
    fn an_effort_of_seconds_leaves_no_reserve() {
        let minutes = [(Field::Slope, "10")];
        has(&said(&minutes), "with A force it at 252 W");
        has(
            &said(&[&minutes[..], &[(Field::Legs, "15s")]].concat()),
            "with both get off, because the lowest gear is too tall",
        );
    }

    #[test]
    fn a_ramp_is_carried_however_slow_the_steady_speed() {
        let ramp = [(Field::Ground, "firm-grass"), (Field::Slope, "30"), (Field::ClimbLength, "5")];
        has(
            &said(&ramp),
            "with both carry your speed: coming in at 20.0 km/h you are over it in 1.2 s, before",
        );
        has(&said(&ramp), "A ramp this short is a matter of the speed you bring to it, not of gears.");
        has(&of_climb(&ramp), "you get 5 m along and 1.6 m up in 1.4 s before you are down to 8.1 km/h");
        has(
            &said(&[(Field::Slope, "5"), (Field::ClimbLength, "8")]),
            "A ramp this short is a matter of the speed",
        );
    }

    #[test]
    fn a_slow_climb_is_forced_at_the_speed_of_balance() {
        let slow = [
            (Field::CadenceLow, "25"),
            (Field::Slope, "25"),
            (Field::ClimbLength, "20"),
            (Field::Ground, "tarmac"),
        ];
        has(
            &said(&slow),
            "with B force it at 224 W, which you have in reserve for this length, in 17 s, or get off, because it is too slow to balance",
        );
    }

    #[test]
    fn who_profits_from_a_lower_gear_is_named() {
        let b_is_low = said(&[(Field::RingsB, "24"), (Field::CassetteB, "11-13-15-18-21-25-30-36-42-50")]);
        has(&b_is_low, "With A a lower gear would still beat your feet up to about 10 %; beyond,");
        let b_is_tall = said(&[&LOW[..2], &[(Field::Ground, "mud"), (Field::CadenceLow, "60")]].concat());
        has(&b_is_tall, "a lower gear would");
        assert!(!b_is_tall.contains("From there"), "{b_is_tall}");
    }

    #[test]
    fn a_gear_that_spins_out_is_told_where_it_costs_the_lead() {
        let tiny = [
            (Field::RingsA, "24"),
            (Field::CassetteA, "50"),
            (Field::RingsB, "24"),
            (Field::CassetteB, "51"),
            (Field::Slope, "2"),
        ];
        has(
            &said(&tiny),
            "The 24×50 spins out at 6.8 km/h, which your feet may better on slopes up to about 10 %.",
        );
        has(&said(&tiny), "riding takes 32 s, spun out in 24×50");
        assert!(!said(&[(Field::Power, "2000")]).contains("spins out"));
    }

    const FREE: [(Field, &str); 5] = [
        (Field::Ground, "tarmac"),
        (Field::GripCounts, "off"),
        (Field::Balance, ""),
        (Field::Legs, "off"),
        (Field::CadenceLow, "30"),
    ];

    #[test]
    fn it_may_be_too_close_to_call_where_nothing_ends_riding() {
        let tiny = [
            (Field::RingsA, "22"),
            (Field::CassetteA, "50"),
            (Field::RingsB, "22"),
            (Field::CassetteB, "50"),
        ];
        let answer = said(&[&FREE[..], &tiny].concat());
        has(&answer, "you can ride all that was measured, up to 45 %.");
        has(&answer, "The 22×50 spins out at 6.3 km/h");
        has(&answer, "From about 18 % it is too close to call");
        has(&said(&[&FREE[..], &tiny[2..]].concat()), "B instead of A keeps you riding all the way to 45 %.");
    }

    #[test]
    fn a_difference_that_is_none_is_not_put_into_numbers() {
        let sand = [(Field::RingsA, "34"), (Field::CassetteA, "50"), (Field::Ground, "loose-sand")];
        has(&said(&sand), "Between A and B that end moves by less than 0.1 points of gradient.");
    }

    #[test]
    fn the_widest_doubt_may_be_about_b_alone() {
        let still = [
            (Field::RingsA, "42"),
            (Field::CassetteA, "16"),
            (Field::CadenceLow, "25"),
            (Field::Ground, "tarmac"),
        ];
        has(
            &said(&still),
            "The widest doubt: slowest speed in balance from 1.0 to 1.8 m/s moves B’s end from 28.6 % to",
        );
        has(
            &said(&[(Field::Power, "460"), (Field::Ground, "firm-grass")]),
            "from 0.21 to 0.25 moves A’s end from 12.",
        );
    }

    #[test]
    fn surely_on_foot_from_the_level_on_needs_no_zone() {
        let wading = [
            (Field::FootGround, "1"),
            (Field::Rolling, "0.3"),
            (Field::GripCounts, "off"),
            (Field::Balance, ""),
        ];
        has(&low_and(&wading), "Your feet are surely quicker from the level on.");
    }

    #[test]
    fn equal_bikes_get_one_piece_of_advice() {
        let twins = [
            (Field::RingsA, "38"),
            (Field::CassetteA, "18"),
            (Field::RingsB, "38"),
            (Field::CassetteB, "18"),
            (Field::Power, "300"),
            (Field::Ground, "tarmac"),
        ];
        has(
            &said(&twins),
            "with both force it at 322 W, which you have in reserve for this length, in 14 s, or get off",
        );
        has(&of_climb(&twins), "A and B: turning 38×18 at 55 rpm");
    }

    #[test]
    fn times_are_told_as_finely_as_they_matter() {
        let answer = said(&[(Field::ClimbLength, "5000")]);
        has(&answer, "riding takes 39:46 min");
        has(&answer, "On foot it takes 46:21 min (40:22 to 53:12)");
        has(&said(&[(Field::ClimbLength, "12")]), "you are over it in 2.7 s, before");
    }

    #[test]
    fn a_speed_leads_to_its_slope() {
        let at = |speed: &'static str| {
            fragment(&[(Field::SlopeSpeed, speed)], super::super::ride_tables::at_speed)
        };
        has(&at("9"), "At 9.0 km/h: full power holds it on slopes up to 6.");
        has(&at("40"), "full power does not even hold it on the level.");
        has(&at("1"), "full power is faster than that all the way to 45 %.");
    }

    #[test]
    fn grip_balance_and_strength_are_named() {
        has(&low_and(&[(Field::Friction, "0.2")]), "the rear wheel slips there, whatever the gear");
        has(&low_and(&[(Field::Balance, "2.5")]), "slower than that the bike does not stay upright");
        let strong = [
            (Field::Power, "490"),
            (Field::PeakPower, "1000"),
            (Field::CadenceLow, "30"),
            (Field::Ground, "tarmac"),
        ];
        has(&said(&strong), "even the lowest gear, 34×30, asks for more strength than lasts that long");
    }

    #[test]
    fn a_climb_is_ridden_run_or_left_to_taste() {
        let climb = |slope: &'static str| low_and(&[(Field::Slope, slope)]);
        has(&climb("4"), "with both ride, riding takes");
        has(&climb("4"), ", and getting off never pays, however long the climb");
        has(&climb("13"), "with both ride or run as you like, it is too close to call");
        has(&climb("16"), "and by the best guess getting off pays on more than");
        has(
            &said(&[]),
            "with A force it at 236 W, which you have in reserve for this length, in 27 s, or get off, because the lowest gear is too tall; with B ride, riding takes 29 s",
        );
    }
}
