//! One bike of the comparison, worked out.

use crate::bench::bench::Bench;
use crate::bench::link;
use crate::page::scenario::{ReadBench, Scenario};
use crate::rack::row::{EndGear, Row, Whose};
use crate::side::Side;
use gear_math::{Cadence, Gear, Setup};

/// The bike that is on both sides of a bench, by itself; the link is that of the bench.
pub(crate) fn of(whose: Whose, link: String, bench: &Bench, good: &Scenario) -> Row {
    let ReadBench { scenario, complaints } = Scenario::read(bench, good);
    let (rings, ride, cage) = (&scenario.rings, &scenario.ride, scenario.cages.answer(Side::A));
    let setup = rings.set_up(Side::A, cage);
    let summary = setup.summary(rings.tolerance);
    let flip = ride.question(Side::A).flip(ride.ground(Side::A));
    Row {
        whose,
        link,
        errand: link::write(scenario.texts()),
        is_sure: complaints.is_empty(),
        lowest: end(&setup, summary.lowest.gear, rings.window.low),
        highest: end(&setup, summary.highest.gear, rings.window.high),
        steps: summary.riding_order.step_spread(),
        useful: summary.useful(),
        cage: cage.outcome.clone(),
        links: cage.links.map(gear_math::ChainLinks::count),
        ends: flip.map(|flip| (flip.gradient, flip.reason)),
        pressures: scenario.tyres[0].starting_pressures(rings.wheel(Side::A).tyre),
        gears: gears(&setup),
        rides: scenario.basis().on_reserve(Side::A),
        lap_s: None,
        drawn_s: Vec::new(),
    }
}

fn end(setup: &Setup, gear: Gear, cadence: Cadence) -> EndGear {
    let row = setup.row(gear);
    EndGear { gear, development: row.development, speed: row.speed_at(cadence) }
}

/// Developments and ranks of the gears that may be used.
fn gears(setup: &Setup) -> Vec<(f64, usize)> {
    let (drivetrain, avoid) = (&setup.drivetrain, setup.avoid.unless_all(&setup.drivetrain));
    let rings = drivetrain.chainset.rings();
    let rank = |gear: Gear| rings.iter().rev().position(|ring| *ring == gear.ring).unwrap_or(0);
    let used = setup.rows().filter(|row| !avoid.holds(drivetrain, row.gear));
    used.map(|row| (row.development.m(), rank(row.gear))).collect()
}
