//! How the lap and the order of a search came about.

use crate::layout::line::{Line, name};
use crate::number::{percent, trimmed, with_unit};
use crate::side::Side;
use crate::units;
use gear_math::course::Weighting;
use gear_math::{Lap, LapSetup};

/// What is worked out, by what formula, and with what numbers.
pub(crate) type Worked = (&'static str, &'static str, String);

/// How speeds come about.
pub(crate) fn motion(setup: &LapSetup, [a, b]: &[Lap; 2]) -> Worked {
    let power = with_unit(setup.rider.power.watts(), 0, "W");
    let [step_a, step_b] = [a, b].map(|lap| units::distances().print(lap.step_m, 1));
    let (error_a, error_b) = (error(a), error(b));
    (
        "From metre to metre",
        "½ m (v₂² − v₁²) = (η P ∕ v̄ − F) Δx, with the wheels’ turning in m; F is rolling, slope, bearings and air",
        format!(
            "P {power}, steps of {step_a} (A) and {step_b} (B); finer ones may change the lap by {error_a} and {error_b}"
        ),
    )
}

fn error(lap: &Lap) -> String {
    lap.step_error_s.map_or("not yet known".to_owned(), |s| with_unit(s, 1, "s"))
}

/// How gears are chosen.
pub(crate) fn gears(setup: &LapSetup) -> Worked {
    let shifting = &setup.shifting;
    let (cadence, spread) =
        (with_unit(shifting.preferred.rpm(), 0, "rpm"), percent(100.0 * shifting.window.share(), 0));
    let [rear, front] = [shifting.rear, shifting.front].map(|it| trimmed(it.s()));
    (
        "Gears",
        "A shift comes when the cadence leaves its window, and costs its time without drive",
        format!("{cadence} ± {spread}, {rear} s at the rear, {front} s at the front"),
    )
}

/// How riding and running are chosen, by what a dismount takes.
pub(crate) fn ride_or_run(lost_s: f64) -> Worked {
    (
        "Ride or run",
        "Of all ways to change between the two, the quickest (dynamic programming); on foot at obstacles and where riding falls below what gear, balance, grip or legs allow",
        format!("{lost_s} s to dismount and remount, and the speed above that on foot is lost"),
    )
}

/// How a search puts in order.
pub(crate) fn order(weights: &Weighting) -> Worked {
    let Weighting { front_shift_s, rear_shift_s, step_percent_s, spare_tooth_s, .. } = weights;
    let enough = Weighting::ENOUGH_SPARE;
    (
        "Order of a search",
        "Time, plus what the rest is worth in seconds (matters of taste)",
        format!(
            "front shift {front_shift_s} s, rear shift {rear_shift_s} s, a per cent of the largest step {step_percent_s} s, a tooth of spare capacity −{spare_tooth_s} s up to {enough}"
        ),
    )
}

/// What all of it rests on.
pub(crate) fn basis() -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!(
        "Rider, bike, air and limits are those of “Ride or run?”, each ground that of its table. Wind is left out: a lap goes round. The power is even all the way round. {a} and {b} share all but rings and sprockets."
    )
    .into()
}
