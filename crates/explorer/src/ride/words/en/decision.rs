//! The climb on the board.

use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::figures::seconds;
use crate::ride::words::terms::verb;
use crate::units;
use gear_math::rider::Advice;

/// What to do, and how long that takes.
pub(crate) fn advised(side: &RideSide) -> String {
    let ascent = &side.ascent;
    let time = match (ascent.advice, ascent.bike) {
        (Advice::Run, _) | (_, None) => ascent.foot,
        (_, Some((_, bike))) => bike,
    };
    format!("{}, {}", verb(ascent.advice), seconds(time))
}

/// Below which speed the bike has no gear.
pub(crate) fn gear_limit(below: &str) -> String {
    format!("no gear low enough below {below}")
}

/// How long running takes, and below which speed it wins; of A where the bikes differ by nothing that shows.
pub(crate) fn running(report: &RideSection) -> String {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(|side| seconds(side.ascent.foot));
    let foot = if a == b { format!("running {a}") } else { format!("running {a} with A, {b} with B") };
    let below = report.ride.running_wins_below().map(|below| units::speed(below.best));
    match below {
        [a, b] if a == b => format!("{foot}; it wins below {a}"),
        [a, b] => format!("{foot}; it wins below {a} with A, {b} with B"),
    }
}
