//! “Ride or run?”: the answer in sentences.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::layout::pieces::name;
use crate::layout::sheet_block::Block;
use crate::layout::sheet_checks::Concern;
use crate::number::{likely_share, listed, percent, plain, with_unit};
use crate::ride::report::{Difference, RideSide, RunningFrom};
use crate::ride::section::RideSection;
use crate::ride::view::words::{about, advised, end_band, limit, running_from, speeds_from_to, whole};
use crate::side::Side;
use gear_math::rider::{Answer, Climb, Reason, Slope, TotalMass, Verdict};
use gear_math::{Gear, Speed};
use maud::{Markup, html};

/// Below which speed no gear is low enough, below which running wins, this climb, and by which slopes.
#[must_use]
pub(crate) fn answer(report: &RideSection) -> Markup {
    html! {
        p { "On " (report.ride.ground_name()) " " (gear_limit(report)) " " (running_limit(report)) }
        p { (crate::ride::view::climb::answer(report)) }
        p { (by_slope(report)) }
        (crate::ride::view::width::counts(&report.ride))
    }
}

/// The speed of each lowest gear at the lowest cadence: a matter of the bike and of how slowly a rider turns the crank.
fn gear_limit(report: &RideSection) -> Markup {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]]
        .map(|side| report.rings.unit.print(side.crossover.lowest_gear_speed));
    html! {
        @if a == b {
            "with " (name(Side::A)) " and " (name(Side::B)) " alike no gear is low enough below " b { (a) } "."
        } @else {
            "with " (name(Side::A)) " no gear is low enough below " b { (a) } ", with " (name(Side::B)) " below " b { (b) } "."
        }
    }
}

/// The speed below which running this climb is quicker whatever the gears.
fn running_limit(report: &RideSection) -> Markup {
    let [a, b] = &report.ride.sides;
    let wins = a.plan.running_wins_below();
    let slower = [a, b].iter().all(|side| wins.best < side.crossover.lowest_gear_speed);
    html! {
        "Running itself " @if slower { "only " } "wins below " b { (report.rings.unit.print(wins.best)) }
        " on this bank (likely " (speeds_from_to(report, &wins)) ")."
    }
}

/// The same by slopes, at the sustained power.
fn by_slope(report: &RideSection) -> Markup {
    let ride = &report.ride;
    let [a, b] = &ride.sides;
    html! {
        "At a steady " (with_unit(ride.inputs.rider.power.watts(), 0, "W")) ", with "
        @if ride.ends_alike() {
            (name(Side::A)) " and " (name(Side::B)) " " (end(report, a))
        } @else {
            (name(Side::A)) " " (end(report, a)) " With " (name(Side::B)) " " (end(report, b))
        }
        " " (spinning(report)) (lower_gear(report)) (running(report)) " " (difference(report)) " " (doubt(report))
    }
}

/// Where a side's riding ends, and why.
fn end(report: &RideSection, side: &RideSide) -> Markup {
    let Some(flip) = side.flip() else {
        return html! { "nothing ends riding up to 45\u{a0}%." };
    };
    if flip.reason == Reason::Energy {
        return html! { "nothing ends riding before running wins." };
    }
    html! {
        "riding ends "
        @if side.fails_on_the_level() { b { "on the level already" } }
        @else { "from " b { (end_band(&side.end)) } }
        ": " (why(report, side, flip.reason)) "."
    }
}

fn why(report: &RideSection, side: &RideSide, reason: Reason) -> String {
    let gear = lowest_gear(report, side);
    match reason {
        Reason::Gear => {
            format!("{gear} at {} is too tall", with_unit(report.rings.window.low.rpm(), 0, "rpm"))
        }
        Reason::Force => format!("{gear} asks for more strength than lasts"),
        Reason::Balance => "slower than that the bike does not stay upright, whatever the gear".to_owned(),
        Reason::Grip => "the rear wheel slips, whatever the gear".to_owned(),
        Reason::Energy => "running is as quick".to_owned(),
    }
}

/// The lowest gear, or both where one sentence stands for both set-ups.
fn lowest_gear(report: &RideSection, side: &RideSide) -> String {
    let [a, b] = [report.ride.sides[0].lowest, report.ride.sides[1].lowest];
    if report.ride.ends_alike() && a != b { format!("{a} or {b}") } else { side.lowest.to_string() }
}

/// Up to where a lower gear would be quicker than running.
fn lower_gear(report: &RideSection) -> String {
    let ride = &report.ride;
    let Some((sides, until)) = ride.lower_gear_helps() else { return String::new() };
    let whose = if sides.len() == 1 { format!("With {} a", listed(&sides)) } else { "A".to_owned() };
    let next = ride.sides[0].next_limit().filter(|(_, at)| at.percent() <= until);
    let then = match next {
        Some((Reason::Grip, _)) => ", where the rear wheel slips in any gear",
        Some(_) => ", where it is too slow to balance in any gear",
        None => "",
    };
    let far = if until < Climb::LIMITS.max { about(until.floor()) } else { percent(until, 0) };
    format!("{whose} lower gear would be quicker than running up to {far}{then}. ")
}

fn running(report: &RideSection) -> String {
    match report.ride.running_from() {
        RunningFrom::Nowhere => {
            "In a gear low enough riding stays quicker than running this climb up to 45\u{a0}%.".to_owned()
        }
        RunningFrom::TooClose { .. } => format!(
            "Between running this climb and a gear low enough it is {}: let grip and balance decide.",
            running_from(report)
        ),
        RunningFrom::Slope { .. } => {
            format!("Running this climb wins from {}, whatever the gear.", running_from(report))
        }
        RunningFrom::TheLevel => "Running is quicker from the level on, whatever the gear.".to_owned(),
    }
}

/// The gear in which a side spins out, its speed, and up to which slope that costs it a sure lead on running.
fn spun_out(side: &RideSide) -> Option<(Gear, Speed, Climb)> {
    let lost = |it: &&Answer| it.spins_out() && it.ratio.high < 1.0 && it.verdict != Verdict::Ride;
    let last = side.answers.iter().rev().find(lost)?;
    Some((last.riding.gear, last.riding.held?, last.gradient))
}

fn spinning(report: &RideSection) -> Markup {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(spun_out);
    html! {
        @for (gear, speed, slope) in [a, b.filter(|_| a != b)].into_iter().flatten() {
            "The " (gear) " spins out at " b { (report.rings.unit.print(speed)) }
            ", which running may better on slopes up to " (about(slope.percent())) ". "
        }
    }
}

/// What changing the rings changes.
fn difference(report: &RideSection) -> Markup {
    let further = |lower: Side, how: &Markup| html! { (name(lower)) " instead of " (name(lower.other())) " keeps you riding " (how) "." };
    match report.ride.difference() {
        Difference::Nothing => html! { "Between A and B that makes no difference." },
        Difference::SameEnd => html! { "Riding ends at the same slope with both." },
        Difference::Further { lower, points } => {
            let points = plain(points, 1);
            further(lower, &html! { "on slopes up to " b { (points) " points" } " steeper" })
        }
        Difference::Elsewhere => html! {},
        Difference::UntilRunning(lower) => further(lower, &html! { "until running wins" }),
        Difference::AllTheWay(lower) => further(lower, &html! { b { "all the way to 45\u{a0}%" } }),
    }
}

/// What “likely” means, and which input makes most of it.
fn doubt(report: &RideSection) -> String {
    let most = report.ride.swings.first().filter(|swing| Side::BOTH.iter().any(|&side| swing.moves(side)));
    let most = most.map_or(String::new(), |swing| {
        format!("What moves the end of riding most is {}. ", crate::ride::view::words::doubtful(swing.input))
    });
    format!("{most}Likely means {} cases.", likely_share())
}

/// What to take along to the course: where each lowest gear gives up, where running wins, and this climb.
#[must_use]
pub(crate) fn block(report: &RideSection) -> Block {
    let ride = &report.ride;
    let (rider, bike) = (&ride.inputs.rider, &ride.inputs.bike);
    let mut block = Block::new("Ride or run");
    let all_kg = TotalMass::of(rider.body, rider.kit, bike.mass).kg();
    let power = with_unit(rider.power.watts(), 0, "W");
    block.row(
        "Worked out for",
        format!("{power} and {} in all on {}", with_unit(all_kg, 1, "kg"), ride.ground_name()),
    );
    for side in &ride.sides {
        let speed = report.rings.unit.print(side.crossover.lowest_gear_speed);
        block.row_of(side.side, "Lowest gear", format!("{}, needs at least {speed}", side.lowest));
        block.row_of(side.side, "Riding ends", ends(side));
    }
    let wins = ride.sides[0].plan.running_wins_below();
    block.row(
        "Running wins",
        format!(
            "below {} here, likely {}; {}",
            report.rings.unit.print(wins.best),
            speeds_from_to(report, &wins),
            slopes(report)
        ),
    );
    let climb = climb_for_the_sheet(report);
    for side in &ride.sides {
        block.row_of(side.side, &climb, advised(report, side));
    }
    block.check(Concern::Course, ON_THE_COURSE.join(" "));
    block
}

fn ends(side: &RideSide) -> String {
    match side.flip() {
        None => "nowhere up to 45\u{a0}%".to_owned(),
        Some(flip) if flip.reason == Reason::Energy => "not before running wins".to_owned(),
        Some(flip) if side.fails_on_the_level() => format!("on the level already: {}", limit(flip.reason)),
        Some(flip) => format!("from {}: {}", end_band(&side.end), limit(flip.reason)),
    }
}

fn slopes(report: &RideSection) -> String {
    match report.ride.running_from() {
        RunningFrom::Nowhere => "on no slope up to 45\u{a0}%".to_owned(),
        RunningFrom::TooClose { .. } => running_from(report),
        RunningFrom::Slope { .. } => format!("from {}", running_from(report)),
        RunningFrom::TheLevel => "from the level on".to_owned(),
    }
}

/// “9.0 % for 60 m”, unless these are only the demo's.
fn climb_for_the_sheet(report: &RideSection) -> String {
    let inputs = &report.ride.inputs;
    if !report.owners.is_example && report.owners.least(&[Field::Slope, Field::ClimbLength]) == Owner::Demo {
        return "The climb".to_owned();
    }
    format!("{} for {}", percent(inputs.climb.percent(), 1), with_unit(inputs.length.m(), 0, "m"))
}

/// What the numbers of the sheet cannot know.
const ON_THE_COURSE: [&str; 2] = [
    "Gradients for riding or running are estimates: try the slope itself, and where it is too close to call let grip, balance and what comes next decide.",
    "On steep, wet ground the front wheel can lift and the rear one slip: do not ride or run beyond what you control.",
];

/// A gradient that may not be met up to 45 %, in whole per cent.
#[must_use]
pub(crate) fn whole_or_never(slope: Option<Slope>) -> String {
    slope.map_or("not up to 45\u{a0}%".to_owned(), |slope| whole(slope.percent()))
}
