//! “Round the lap”: the numbers, and how they were worked out.

use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::layout::pieces::{name, plain_table, worked};
use crate::number::{about_clock, brief, clock, duration, listed, percent, plain, signed, with_unit};
use crate::side::Side;
use gear_math::Lap;
use gear_math::ascending;
use gear_math::course::{Precision, TimeBand, Weighting};
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
    let mut rows = vec![of("Lap", &|lap| about_clock(lap.time_s, precision))];
    if let Some(settled) = &laps.settled {
        let likely = |band: &TimeBand| {
            format!("{} to {}", clock(band.low_s, precision), clock(band.high_s, precision))
        };
        rows.push(vec!["Likely".to_owned(), likely(&settled.bands[0]), likely(&settled.bands[1])]);
    }
    rows.extend([
        of("On foot, dismount and remount included", &|lap| {
            format!("{}, {}", with_unit(lap.on_foot_m(), 0, "m"), brief(lap.on_foot_s()))
        }),
        of("Shifts, rear", &|lap| lap.shifts_rear.to_string()),
        of("Shifts, front", &|lap| lap.shifts_front.to_string()),
        of("Lowest cadence", &|lap| {
            lap.lowest_cadence_rpm.map_or("–".to_owned(), |rpm| with_unit(rpm, 0, "rpm"))
        }),
        of("Below your cadence window", &|lap| duration(lap.below_window_s, 0)),
        of("Work at the crank", &|lap| with_unit(lap.energy.crank / KILO, 0, "kJ")),
        of("Rolling", &|lap| with_unit(lap.energy.rolling / KILO, 0, "kJ")),
        of("Air resistance", &|lap| with_unit(lap.energy.air / KILO, 0, "kJ")),
        of("Braking", &|lap| with_unit(lap.energy.brakes / KILO, 0, "kJ")),
    ]);
    html! {
        @if let Some(slowest) = slowest_crank(laps) { p { (slowest) } }
        (plain_table("The lap in numbers", "A flying lap, begun as it was ended. Time in every gear and time on foot make up the lap.", &["", "A", "B"], &rows))
        (differences(report))
    }
}

/// Why the lowest cadence of a lap may be lower than the lowest the rider turns, where it is.
fn slowest_crank(laps: &LapReport) -> Option<String> {
    let least = laps.question.setups[0].rider.lowest_cadence.rpm();
    let is_below = |lap: &Lap| lap.lowest_cadence_rpm.is_some_and(|rpm| rpm < least - 0.5);
    laps.laps.iter().any(is_below).then(|| {
        format!(
            "The lowest cadence is below your own of {} for moments only: while a shift is under way, or while getting going again.",
            with_unit(least, 0, "rpm")
        )
    })
}

fn differences(report: &LapSection) -> Markup {
    let Some(settled) = report.lap.laps.as_ref().and_then(|laps| laps.settled.as_ref()) else {
        return html! {};
    };
    let mut parts: Vec<_> = settled.parts.iter().collect();
    ascending(&mut parts, |part| -part.gained_s.abs());
    parts.truncate(PARTS);
    ascending(&mut parts, |part| part.span.from_m);
    let decimals = usize::from(settled.gained.precision() == Precision::Tenth);
    let rows: Vec<Vec<String>> = parts
        .iter()
        .map(|part| {
            vec![
                format!("{} to {}", plain(part.span.from_m, 0), with_unit(part.span.to_m, 0, "m")),
                format!("{}\u{a0}s", signed(part.gained_s, decimals)),
            ]
        })
        .collect();
    html! {
        @if !rows.is_empty() {
            (plain_table("Where the difference arises", "Plus where B gains, minus where A does; the largest only.", &["From the line", "B gains"], &rows))
        }
    }
}

/// Time and distance in every gear.
#[must_use]
pub(crate) fn gears(report: &LapSection) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let rows: Vec<Vec<String>> = Side::BOTH
        .iter()
        .flat_map(|&side| {
            let lap = &laps.laps[side as usize];
            let of = move |what: &str, time_s: f64, way_m: f64| {
                vec![format!("{side} {what}"), brief(time_s), with_unit(way_m, 0, "m")]
            };
            let gears = lap.gears.iter();
            let gears =
                gears.map(move |used| of(&laps.gear_name(side, used.gear), used.time_s, used.distance_m));
            gears.chain([of("on foot", lap.on_foot_s(), lap.on_foot_m())])
        })
        .collect();
    let crossed: Vec<String> = Side::BOTH
        .into_iter()
        .map(|side| (side, laps.crossed_s(side)))
        .filter(|(_, time_s)| *time_s > 0.0)
        .map(|(side, time_s)| format!("{} with {side}", duration(time_s, 0)))
        .collect();
    html! {
        @if !crossed.is_empty() {
            p { "Gears in brackets run cross-chained: they are ridden for " (listed(&crossed)) ". The lap takes whichever gear suits the cadence; shift to the other ring there if you can." }
        }
        details {
            summary { "How long in each gear, in numbers" }
            (plain_table("How long in each gear", "Lowest first, cross-chained ones in brackets; gears that are not used are left out. Dismount and remount are part of the time on foot.", &["Gear", "Time", "Distance"], &rows))
        }
    }
}

/// How the lap and the order came about.
#[must_use]
pub(crate) fn working(report: &LapSection) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let [a, b] = &laps.laps;
    let setup = &laps.question.setups[0];
    let error = |lap: &Lap| lap.step_error_s.map_or("not yet known".to_owned(), |s| with_unit(s, 1, "s"));
    let weights = Weighting::USUAL;
    html! {
        (worked(
            "From metre to metre",
            "½ m (v₂² − v₁²) = (η P ∕ v̄ − F) Δx, with the wheels’ turning in m; F is rolling, slope, bearings and air",
            &format!("P {}, steps of {} m (A) and {} m (B); finer ones may change the lap by {} and {}", with_unit(setup.rider.power.watts(), 0, "W"), a.step_m, b.step_m, error(a), error(b)),
        ))
        (worked(
            "Gears",
            "A shift comes when the cadence leaves its window, and costs its time without drive",
            &format!("{} ± {}, {} s at the rear, {} s at the front", with_unit(setup.shifting.preferred.rpm(), 0, "rpm"), percent(100.0 * setup.shifting.window.share(), 0), setup.shifting.rear.s(), setup.shifting.front.s()),
        ))
        (worked(
            "Ride or run",
            "Of all ways to change between the two, the quickest (dynamic programming); on foot at obstacles and where riding falls below what gear, balance, grip or legs allow",
            &format!("{} s to dismount and remount, and the speed above that on foot is lost", report.ride.inputs.lost.s()),
        ))
        (worked(
            "Order of a search",
            "Time, plus what the rest is worth in seconds (matters of taste)",
            &format!("front shift {} s, rear shift {} s, a per cent of the largest step {} s, a tooth of spare capacity −{} s up to {}", weights.front_shift_s, weights.rear_shift_s, weights.step_percent_s, weights.spare_tooth_s, Weighting::ENOUGH_SPARE),
        ))
        p {
            "Rider, bike, air and limits are those of “Ride or run?”, each ground that of its table. Wind is left out: a lap goes round. The power is even all the way round. "
            (name(Side::A)) " and " (name(Side::B)) " share all but rings and sprockets."
        }
    }
}
