//! What there is to do on the climb that was asked about.

use crate::number::{shows_nothing, with_unit};
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::figures::seconds;
use crate::ride::words::terms::{because, verb};
use crate::units;
use gear_math::rider::{Advice, OnBike, PacedRide};

/// The advice with its times: the quicker way first, the slower one as what is left.
pub(crate) fn advised(report: &RideSection, side: &RideSide) -> String {
    format!("{}: {}", verb(side.ascent.advice), facts(report, side))
}

/// What stands behind the verb.
pub(crate) fn facts(report: &RideSection, side: &RideSide) -> String {
    let ascent = &side.ascent;
    let run = seconds(ascent.foot);
    let Some((how, bike)) = ascent.bike else { return unable(side, &run) };
    let (way, ride) = (how_ridden(report, how), seconds(bike));
    match (ascent.advice, how) {
        (Advice::Run, _) => format!("{run} ({way} takes {ride}{})", dearer(side)),
        (Advice::TooClose, _) if ascent.foot < bike => format!("running {run}, {way} {ride}"),
        (Advice::TooClose, _) => format!("{way} {ride}, running {run}"),
        (_, OnBike::Carried) => format!("{ride} from {}, or run: {run}{}", entry(report), dearer(side)),
        (_, OnBike::Forced(_)) => {
            format!("{} for {ride}{}, or run: {run}{}", effort(side), spent(side), dearer(side))
        }
        (_, OnBike::Ridden) => {
            let (spent, brought, dearer) = (spent(side), brought(side), dearer(side));
            format!("{ride} at {}{spent}{brought}, or run: {run}{dearer}", effort(side))
        }
    }
}

/// Why there is no way up on the bike.
fn unable(side: &RideSide, run: &str) -> String {
    match side.paced.hindrance {
        Some(reason) => format!("{run}, because {}", because(reason)),
        None => run.to_owned(),
    }
}

/// Power, gear and cadence of the ride.
fn effort(side: &RideSide) -> String {
    side.paced.ride.as_ref().map_or(String::new(), ridden)
}

/// The same: “376 W in 34×30 at 88 rpm”
pub(crate) fn ridden(ride: &PacedRide) -> String {
    let (power, rpm) = (with_unit(ride.power.watts(), 0, "W"), with_unit(ride.cadence.rpm(), 0, "rpm"));
    format!("{power} in {} at {rpm}", ride.gear)
}

/// What the other way takes of the reserve beyond the advised one, where it would be the quicker.
fn dearer(side: &RideSide) -> String {
    if !side.is_spared() {
        return String::new();
    }
    let more = side.paced.spending.price.buys(side.ascent.dearer).j().abs() / 1000.0;
    format!(", and {} more of your reserve", with_unit(more, 1, "kJ"))
}

/// What of the reserve that takes, where it is anything that shows.
fn spent(side: &RideSide) -> String {
    let drawn = side.paced.ride.map_or(0.0, |ride| ride.drawn.j() / 1000.0);
    if drawn < 0.0 || shows_nothing(drawn, 1) {
        return String::new();
    }
    format!(", {} of your reserve", with_unit(drawn, 1, "kJ"))
}

fn how_ridden(report: &RideSection, how: OnBike) -> String {
    match how {
        OnBike::Ridden => "riding".to_owned(),
        OnBike::Carried => format!("riding in at {}", entry(report)),
        OnBike::Forced(power) => format!("forcing it at {}", with_unit(power.watts(), 0, "W")),
    }
}

/// The speed into the climb.
fn entry(report: &RideSection) -> String {
    units::speed(report.ride.inputs.entry)
}

/// What the speed that is brought makes of a climb that is ridden anyway.
fn brought(side: &RideSide) -> String {
    let brought = side.ascent.brought;
    brought.map_or(String::new(), |time| format!(" ({} with the speed you bring)", seconds(time)))
}

/// The advice of both set-ups in a few words, for pictures.
pub(crate) fn in_short(report: &RideSection) -> String {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(|side| verb(side.ascent.advice));
    if a == b { format!("A and B: {a}") } else { format!("A: {a}, B: {b}") }
}
