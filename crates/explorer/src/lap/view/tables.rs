//! “Round the lap”: the numbers, and how they were worked out.

use crate::lap::report::{LapReport, Spread};
use crate::lap::section::LapSection;
use crate::lap::words::{on_reserve, tables as words, working as formulas};
use crate::layout::head::Head;
use crate::layout::pieces::{plain_table, worked};
use crate::number::{brief, duration, with_unit};
use crate::side::Side;
use crate::units;
use crate::words::about_clock;
use gear_math::course::{Precision, ReserveUse, Weighting};
use gear_math::order::ascending;
use gear_math::{Cadence, Lap};
use maud::{Markup, html};

/// Places where the set-ups differ that are listed.
const PARTS: usize = 8;
/// Metres in a kilometre, and joules in a kilojoule.
const KILO: f64 = 1e3;

/// Both laps in numbers, and where they differ.
#[must_use]
pub(crate) fn numbers(report: &LapSection) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let of = |what: &str, value: &dyn Fn(&Lap) -> String| {
        vec![what.to_owned(), value(&laps.laps[0]), value(&laps.laps[1])]
    };
    let precision = laps.precision();
    let is_even = matches!(laps.question.spread, Spread::Even(_));
    let lap = if is_even { words::LAP } else { words::AS_ENTERED };
    let mut rows = vec![of(lap, &|lap| about_clock(lap.time_s, precision))];
    if let Some(settled) = &laps.settled {
        let [a, b] = settled.bands.each_ref().map(|band| words::likely(band, precision));
        rows.push(vec![words::LIKELY.to_owned(), a, b]);
    }
    rows.extend([
        of(words::ON_FOOT, &|lap| {
            format!("{}, {}", units::distances().print(lap.on_foot_m(), 0), brief(lap.on_foot_s()))
        }),
        of(words::SHIFTS_REAR, &|lap| lap.shifts_rear.to_string()),
        of(words::SHIFTS_FRONT, &|lap| lap.shifts_front.to_string()),
        of(words::LOWEST_CADENCE, &|lap| {
            lap.lowest_cadence_rpm.map_or(words::NONE.to_owned(), |rpm| with_unit(rpm, 0, "rpm"))
        }),
        of(words::BELOW_WINDOW, &|lap| duration(lap.below_window_s, 0)),
    ]);
    rows.extend(reserve(laps));
    rows.extend([
        of(words::WORK, &|lap| with_unit(lap.energy.crank_j / KILO, 0, "kJ")),
        of(words::ROLLING, &|lap| with_unit(lap.energy.rolling_j / KILO, 0, "kJ")),
        of(words::AIR, &|lap| with_unit(lap.energy.air_j / KILO, 0, "kJ")),
        of(words::BRAKING, &|lap| with_unit(lap.energy.brakes_j / KILO, 0, "kJ")),
    ]);
    let [title, remark] = words::NUMBERS;
    html! {
        @if let Some(least) = slowest_crank(laps) { p { (words::slowest_crank(least)) } }
        (plain_table(title, remark, &Head::SETUPS, &rows))
        (differences(report))
    }
}

/// What the laps make of the reserve; nothing at an even power.
fn reserve(laps: &LapReport) -> Vec<Vec<String>> {
    let [Some(a), Some(b)] = laps.laps.each_ref().map(|lap| lap.reserve.as_ref()) else { return Vec::new() };
    let of = |what: &str, value: fn(&ReserveUse) -> String| vec![what.to_owned(), value(a), value(b)];
    vec![
        of(words::HIGHEST_POWER, |it| with_unit(it.highest_power_w, 0, "W")),
        of(words::DRAWN, |it| with_unit(it.charged_j / KILO, 1, "kJ")),
        of(words::BACK, |it| with_unit(it.repaid_j / KILO, 1, "kJ")),
        of(words::COASTING, |it| duration(it.coasting_s, 0)),
    ]
}

/// The lowest cadence that the rider turns, where a lap has a lower one.
fn slowest_crank(laps: &LapReport) -> Option<Cadence> {
    let Spread::Even(_) = laps.question.spread else { return None };
    let least = laps.question.setups[0].rider.lowest_cadence;
    let is_below = |lap: &Lap| lap.lowest_cadence_rpm.is_some_and(|turned| turned < least.rpm() - 0.5);
    laps.laps.iter().any(is_below).then_some(least)
}

fn differences(report: &LapSection) -> Markup {
    let Some(settled) = report.lap.laps.as_ref().and_then(|laps| laps.settled.as_ref()) else {
        return html! {};
    };
    let mut parts: Vec<_> = settled.gains.parts.iter().collect();
    ascending(&mut parts, |part| -part.gained_s.abs());
    parts.truncate(PARTS);
    ascending(&mut parts, |part| part.span.from_m);
    let decimals = usize::from(settled.gained.precision() == Precision::Tenth);
    let rows: Vec<Vec<String>> =
        parts.iter().map(|part| vec![words::span(part), words::gain(part, decimals)]).collect();
    let [title, remark] = words::DIFFERENCES;
    html! { @if !rows.is_empty() { (plain_table(title, remark, &words::DIFFERENCES_HEADS.map(Head::Figures), &rows)) } }
}

/// Time and distance in every gear.
#[must_use]
pub(crate) fn gears(report: &LapSection) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let rows: Vec<Vec<String>> = Side::BOTH.iter().flat_map(|&side| gears_of(laps, side)).collect();
    let crossed: Vec<(Side, f64)> = Side::BOTH
        .into_iter()
        .map(|side| (side, laps.crossed_s(side)))
        .filter(|(_, time_s)| *time_s > 0.0)
        .collect();
    let [title, remark] = words::GEARS;
    html! {
        @if !crossed.is_empty() { p { (words::crossed(&crossed, laps.laps[0].reserve.is_some())) } }
        details {
            summary { (words::GEARS_FOLDED) }
            (plain_table(title, remark, &words::GEARS_HEADS.map(Head::Figures), &rows))
        }
    }
}

fn gears_of(laps: &LapReport, side: Side) -> impl Iterator<Item = Vec<String>> + '_ {
    let lap = &laps.laps[side as usize];
    let of = move |what: &str, time_s: f64, way_m: f64| {
        vec![format!("{side} {what}"), brief(time_s), units::distances().print(way_m, 0)]
    };
    let gears = lap.gears.iter();
    let gears = gears.map(move |used| of(&laps.gear_name(side, used.gear), used.time_s, used.distance_m));
    gears.chain([of(words::IN_NO_GEAR, lap.on_foot_s(), lap.on_foot_m())])
}

/// How the lap and the order came about.
#[must_use]
pub(crate) fn working(report: &LapSection) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let setup = &laps.question.setups[0];
    let lost_s = report.ride.inputs.lost.s();
    let (both, weights) = (&laps.laps, &Weighting::USUAL);
    let all = match laps.question.spread {
        Spread::Even(_) => vec![
            formulas::motion(setup, both),
            formulas::gears(setup),
            formulas::ride_or_run(lost_s),
            formulas::order(weights),
        ],
        Spread::Reserve { account, .. } => vec![
            on_reserve::account(&account),
            on_reserve::strength(&account),
            on_reserve::plan(both),
            on_reserve::gears(setup),
            on_reserve::mounting(lost_s),
            formulas::order(weights),
        ],
    };
    let basis = if laps.laps[0].reserve.is_some() { on_reserve::basis() } else { formulas::basis() };
    html! {
        @for (what, formula, numbers) in all { (worked(what, formula, &numbers)) }
        p { (basis) }
    }
}
