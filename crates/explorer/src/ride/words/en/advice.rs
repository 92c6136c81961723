//! What there is to do on the climb that was asked about.

use crate::number::with_unit;
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::figures::seconds;
use crate::ride::words::terms::{because, verb};
use gear_math::rider::{Advice, OnBike};

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
        (Advice::Run, _) => format!("{run} ({way} takes {ride})"),
        (Advice::TooClose, _) if ascent.foot < bike => format!("running {run}, {way} {ride}"),
        (Advice::TooClose, _) => format!("{way} {ride}, running {run}"),
        (_, OnBike::Forced(power)) => {
            let watts = with_unit(power.watts(), 0, "W");
            format!("{watts} for {ride}{}, or run: {run}", allowed(side))
        }
        (_, OnBike::Carried) => format!("{ride} from {}, or run: {run}", entry(report)),
        (_, OnBike::Ridden) => format!("{ride}{}, or run: {run}", remarks(side)),
    }
}

/// Why there is no way up on the bike; that forcing a gear is more than this rider has, where that alone is in the way.
fn unable(side: &RideSide, run: &str) -> String {
    let limits = side.plan.answer.limits;
    let because = because(limits);
    if side.forcing().is_some() && !limits.is_force_alone() {
        format!("{run}, because {because}, and forcing one asks too much of legs or reserve")
    } else {
        format!("{run}, because {because}")
    }
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
    report.rings.unit.print(report.ride.inputs.entry)
}

/// How long a forced gear lasts.
fn allowed(side: &RideSide) -> String {
    let longest = side.over_gear.and_then(|over| over.longest());
    longest.map_or(String::new(), |(time, _)| format!(" (legs and reserve last {})", seconds(time)))
}

/// What else there is to know of a climb that is ridden.
fn remarks(side: &RideSide) -> String {
    let answer = &side.plan.answer;
    let spun = answer.spins_out().then(|| format!("spun out in {}", answer.riding.gear));
    let brought = side.ascent.brought.map(|time| format!("{} with the speed you bring", seconds(time)));
    let said: Vec<String> = [spun, brought].into_iter().flatten().collect();
    if said.is_empty() { String::new() } else { format!(" ({})", said.join(", ")) }
}

/// The advice of both set-ups in a few words, for pictures.
pub(crate) fn in_short(report: &RideSection) -> String {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(|side| verb(side.ascent.advice));
    if a == b { format!("A and B: {a}") } else { format!("A: {a}, B: {b}") }
}
