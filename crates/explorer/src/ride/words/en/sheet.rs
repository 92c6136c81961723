//! What stands on the workshop sheet.

use crate::number::{percent, with_unit};
use crate::ride::report::RunningFrom;
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::figures::{end_band, running_from, speeds_from_to, steepest};
use crate::ride::words::terms::{ground_name, limit};
use crate::side::Side;
use crate::units;
use crate::words::alike_or_each;
use gear_math::rider::{Reason, TotalMass};

/// The head of the block.
pub(crate) const TITLE: &str = "Ride or run";
/// The row on rider and ground.
pub(crate) const FOR: &str = "For";
/// The row on each lowest gear.
pub(crate) const LOWEST_GEAR: &str = "Lowest gear";
/// The row on running.
pub(crate) const RUNNING_WINS: &str = "Running wins";
/// The row on the climb, where it is only the demo's.
pub(crate) const THE_CLIMB: &str = "The climb";
/// What the numbers of the sheet cannot know.
pub(crate) const ON_STEEP_GROUND: &str = "On steep, wet ground the front wheel can lift and the rear one slip: do not ride or run beyond what you control.";

/// Power, mass and ground.
pub(crate) fn whom(report: &RideSection) -> String {
    let rider = &report.ride.inputs.rider;
    let power = with_unit(rider.power.watts(), 0, "W");
    let mass = |side: Side| {
        let bike = report.ride.inputs.bike(side);
        units::masses().print(TotalMass::of(rider.body, rider.kit, bike.mass).kg(), 1)
    };
    let mass = alike_or_each(&mass(Side::A), &mass(Side::B));
    format!("{power} and {mass} in all on {}", ground_name(report.ride.ground()))
}

/// What a lowest gear asks for, and where it ends.
pub(crate) fn lowest_gear(side: &RideSide) -> String {
    let (gear, speed) = (side.lowest, units::speed(side.crossover.lowest_gear_speed));
    format!("{gear}, needs at least {speed}; riding ends {}", ends(side))
}

fn ends(side: &RideSide) -> String {
    match side.flip() {
        None => format!("nowhere up to {}", steepest()),
        Some(flip) if flip.reason == Reason::Energy => "not before running wins".to_owned(),
        Some(flip) if side.fails_on_the_level() => format!("on the level already: {}", limit(flip.reason)),
        Some(flip) => format!("from {}: {}", end_band(&side.end), limit(flip.reason)),
    }
}

/// Below which speed and from which slope running wins.
pub(crate) fn running_wins(report: &RideSection) -> String {
    let below = report.ride.running_wins_below().map(|below| {
        format!("{} on this climb, likely {}", units::speed(below.best), speeds_from_to(&below))
    });
    let below = match below {
        [a, b] if a == b => a,
        [a, b] => format!("{a}, with A; {b}, with B"),
    };
    let slopes = |side: Side| slopes(report.ride.running_from(side));
    let slopes = alike_or_each(&slopes(Side::A), &slopes(Side::B));
    format!("below {below}; on a slope held for long {slopes}")
}

fn slopes(from: RunningFrom) -> String {
    match from {
        RunningFrom::Nowhere => format!("on no slope up to {}", steepest()),
        RunningFrom::TooClose { .. } => running_from(from),
        RunningFrom::Slope { .. } => format!("from {}", running_from(from)),
        RunningFrom::TheLevel => "from the level on".to_owned(),
    }
}

/// “9.0 %, 60 m”
pub(crate) fn climb(report: &RideSection) -> String {
    let inputs = &report.ride.inputs;
    format!("{}, {}", percent(inputs.climb.percent(), 1), units::distances().print(inputs.length.m(), 0))
}
