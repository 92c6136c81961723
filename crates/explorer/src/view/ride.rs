//! “Ride or run?”: the answer in sentences.

use super::ride_words::{doubtful, grade, grade_or_never, judged, moved, reason, verdict};
use super::sheet::Block;
use super::words::name;
use crate::number::{listed, percent, plain, with_unit};
use crate::report::{Ascent, Report, RideSide, Side};
use gear_math::{ClimbPlan, Crossover, Flip, LimitsHeld, MarkKind, Reason, Slope, Time, TotalMass, Verdict};
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
        p { (beyond(report)) " " (change(report)) " " (doubt(report)) }
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
    let ends: Vec<Flip> = sides.iter().filter_map(RideSide::flip).collect();
    let geared: Vec<Flip> =
        ends.iter().copied().filter(|end| matches!(end.reason, Reason::Gear | Reason::Force)).collect();
    let close = sides[0].crossover.too_close_from;
    match (geared.as_slice(), ends.first()) {
        ([], None) => String::new(),
        ([], Some(end)) => without_gears(end, close) + &close_call(sides),
        (geared, _) => with_lower_gears(sides, geared, close),
    }
}

fn without_gears(end: &Flip, close: Option<Slope>) -> String {
    let close = close.map(Slope::percent);
    if close.is_some_and(|close| close <= end.gradient.percent()) {
        return String::new();
    }
    let far = close
        .map_or("all the way to 45\u{a0}%".to_owned(), |close| format!("to about {}", percent(close, 0)));
    format!("If that did not stop you, riding would stay ahead {far}. ")
}

fn with_lower_gears(sides: &[RideSide; 2], geared: &[Flip], close: Option<Slope>) -> String {
    let limit = sides[0].next_limit().filter(|(_, at)| close.is_none_or(|close| *at < close));
    let until = limit.map(|(_, at)| at).or(close);
    let Some(until) = until.map(Slope::percent) else {
        return "A lower gear would still beat your feet all the way to 45\u{a0}%.".to_owned();
    };
    let helped = geared.iter().filter(|end| end.gradient.percent() < until).count();
    let about = percent(until, 0);
    let stretch = match (helped, geared.len()) {
        (0, _) => return format!("A lower gear would change little. {}", close_call(sides)),
        (helped, all) if helped == all => format!("From there to about {about}"),
        _ => format!("For the taller of the two, up to about {about}"),
    };
    let then = match limit {
        Some((Reason::Grip, _)) => "; there the rear wheel slips whatever the gear.".to_owned(),
        Some(_) => "; there you are too slow to balance whatever the gear.".to_owned(),
        None => format!("; beyond, it is too close to call{}.", decide(sides)),
    };
    format!("{stretch} a lower gear would still beat your feet{then}")
}

/// Where it is too close to call, as a sentence of its own.
fn close_call(sides: &[RideSide; 2]) -> String {
    match sides[0].crossover.too_close_from.map(Slope::percent) {
        None => String::new(),
        Some(from) if from < 0.5 => format!("It is too close to call from the level on{}.", decide(sides)),
        Some(from) => format!("From about {} it is too close to call{}.", percent(from, 0), decide(sides)),
    }
}

fn decide(sides: &[RideSide; 2]) -> String {
    match sides[0].crossover.foot_from.map(Slope::percent) {
        None => ": let grip and balance decide".to_owned(),
        Some(from) => format!(", until your feet are surely quicker from about {} on", percent(from, 0)),
    }
}

/// What changing the rings changes.
fn change(report: &Report) -> Markup {
    let ride = &report.ride;
    if ride.alike() {
        return html! { "Between A and B that makes no difference." };
    }
    let [Some(a), Some(b)] = [&ride.sides[0], &ride.sides[1]].map(RideSide::flip) else { return html! {} };
    let Some(change) = ride.change else { return html! {} };
    let lower = if change.gradient_points >= 0.0 { Side::B } else { Side::A };
    let slower = (report.unit.value(a.speed) - report.unit.value(b.speed)).abs();
    html! {
        (name(lower)) " instead of " (name(lower.other())) " keeps you riding on slopes up to "
        b { (plain(change.gradient_points.abs(), 1)) " points of gradient" } " steeper, at speeds down to "
        b { (with_unit(slower, 1, report.unit.symbol())) } " lower."
    }
}

/// The input that moves the end of riding most, as the band of the number above.
fn doubt(report: &Report) -> Markup {
    let Some(swing) = report.ride.swings.first().filter(|swing| swing.bars[0].swing_points >= STILL) else {
        return html! {};
    };
    let bar = &swing.bars[0];
    let (low, high) = if bar.at_low.is_none() || bar.at_low > bar.at_high && bar.at_high.is_some() {
        (bar.at_high, bar.at_low)
    } else {
        (bar.at_low, bar.at_high)
    };
    html! {
        "The widest doubt: " (doubtful(swing.input)) " from " (moved(swing.input, bar.values)) " moves "
        (name(Side::A)) "’s end from " b { (grade_or_never(low)) } " to " b { (grade_or_never(high)) } "."
    }
}

/// The climb that was asked about.
fn this_climb(report: &Report) -> Markup {
    let ride = &report.ride;
    let [a, b] = &ride.sides;
    let same =
        a.plan.ride == b.plan.ride && a.plan.answer.limits == b.plan.answer.limits && !a.only_geared_out();
    html! {
        "This climb, " (percent(ride.inputs.climb.percent(), 1)) " for "
        (with_unit(ride.inputs.length.m(), 0, "m")) ": "
        @if same {
            "with both " (climb_with(report, a)) ". "
        } @else {
            "with " (name(Side::A)) " " (climb_with(report, a)) "; with " (name(Side::B)) " " (climb_with(report, b)) ". "
        }
        "On foot it takes " b { (seconds(a.plan.foot)) } " (" (plain(a.plan.foot_at_best.s(), 0)) " to "
        (plain(a.plan.foot_at_worst.s(), 0)) "), getting off and on included."
        (in_jerks(report))
    }
}

/// What a heavy, uneven stroke would do on this climb, where someone rides it.
fn in_jerks(report: &Report) -> Markup {
    let ridden =
        |side: &RideSide| side.plan.ride.is_some() || side.forced_at(report.ride.inputs.length).is_some();
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
                (pays(plan))
            }
            Ascent::Carried => {
                b { "carry your speed" } ": coming in at " (report.unit.print(report.ride.inputs.entry))
                " you are over it before " (limits_in_words(plan.answer.limits))
            }
            Ascent::Forced(power, time) => {
                b { "force it" } " at " b { (with_unit(power.watts(), 0, "W")) } ", which you have in reserve for this length, in "
                b { (seconds(time)) } ", or get off, because " (limits_in_words(plan.answer.limits))
            }
            Ascent::OnFoot => {
                b { "get off" } ", because " (limits_in_words(plan.answer.limits))
            }
        }
    }
}

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
            Ascent::Carried => "carry your speed over it".to_owned(),
            Ascent::Forced(power, time) => {
                let power = with_unit(power.watts(), 0, "W");
                format!("force it at {power} in {}, or {foot} on foot", seconds(time))
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
        (Some(from), Some(to)) => format!("{} to {}", grade(from), grade(to)),
    }
}

/// A time to the second.
#[must_use]
pub(super) fn seconds(time: Time) -> String {
    with_unit(time.s(), 0, "s")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Bench;
    use crate::field::Field;
    use crate::scenario::Scenario;

    /// The answer to the demo with some fields typed over, without tags.
    fn said(edits: &[(Field, &str)]) -> String {
        let mut bench = Bench::default();
        for (field, text) in edits {
            bench.write(*field, text);
        }
        let read = Scenario::read(&bench, &Scenario::default());
        assert_eq!(read.complaints, []);
        let html = answer(&Report::of(&read.scenario)).into_string().replace('\u{a0}', " ");
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
            "with A carry your speed: coming in at 20.0 km/h you are over it before",
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
    fn more_power_than_the_legs_give_is_refused_beside_the_power() {
        let mut bench = Bench::default();
        bench.write(Field::Power, "550");
        let read = Scenario::read(&bench, &Scenario::default());
        let [complaint] = read.complaints.as_slice() else { panic!("{:?}", read.complaints) };
        has(
            &complaint.message.replace('\u{a0}', " "),
            "more than the 500 W that your legs give for that long",
        );
    }

    #[test]
    fn grip_balance_and_strength_are_named() {
        has(&low_and(&[(Field::Friction, "0.2")]), "the rear wheel slips there, whatever the gear");
        has(&low_and(&[(Field::Balance, "2.5")]), "slower than that the bike does not stay upright");
        let strong = [(Field::Power, "490"), (Field::CadenceLow, "30"), (Field::Ground, "tarmac")];
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
