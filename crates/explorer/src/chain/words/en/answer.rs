//! What is said beside the verdict: gears to avoid, what it rests on, what to do by hand.

use crate::chain::section::ChainSection;
use crate::chain::words::names::named;
use crate::chain::words::names::{figure, measures};
use crate::number::{percent, with_unit};
use crate::rings::setup::SetupReport;
use crate::side::Side;
use crate::words::listed;
use gear_math::ChainLinks;
use gear_math::chain::CageLength;

/// What can break first: chain, cage and spokes.
pub(crate) const TURNED_BY_HAND: [&str; 4] = [
    "Bike in a stand, turn the crank by hand, fingers clear of chain and sprockets.",
    "Turn slowly into the largest ring with the largest sprocket and never force it; the pulleys must not be pulled into line.",
    "Then the smallest with the smallest: the lower run must neither sag nor touch the guide pulley.",
    "Look at the gap under the largest sprocket, at the hanger, and with rear suspension at every height of its travel.",
];

/// What other parts ask for, and the chain itself.
pub(crate) fn set_and_joined() -> [String; 2] {
    let worn = percent(ChainLinks::WORN_PERCENT, 1);
    [
        "After other rings or another cassette set limit screws, guide-pulley gap and front-derailleur height anew: derailleur or chain in the spokes stops the wheel.".to_owned(),
        format!("Replace a chain worn by {worn}. Close it with its maker’s own pin or link, and bend it there to see that it holds."),
    ]
}

/// Over what to do by hand.
pub(crate) const BY_HAND: &str = "By hand, before riding. The makers’ figures come before ours.";

/// The maker's figures that are not given.
pub(crate) fn unknown(report: &ChainSection) -> String {
    let figures = |side: Side| {
        let unknown = &report.rings.setup(side).cage.check.unknown;
        listed(&unknown.iter().map(|&it| figure(it)).collect::<Vec<_>>())
    };
    let [a, b] = Side::BOTH.map(figures);
    let told = match (a.is_empty(), b.is_empty()) {
        _ if a == b => a,
        (_, true) => format!("{a} of A’s derailleur"),
        (true, _) => format!("{b} of B’s derailleur"),
        _ => format!("{a} of A’s derailleur, {b} of B’s"),
    };
    format!("Not given, so not checked: {told}.")
}

/// What links and drawing were worked out with, where the length of the cage was not measured.
pub(crate) fn basis(report: &ChainSection) -> String {
    let [a, b] = Side::BOTH.map(|side| basis_of(report, side));
    if a == b { a } else { format!("With A: {a} With B: {b}") }
}

fn basis_of(report: &ChainSection, side: Side) -> String {
    let cage = &report.rings.setup(side).cage;
    let centres = with_unit(cage.length.centres().mm(), 0, "mm");
    match (cage.length, report.chain.derailleur(side).total_capacity) {
        (CageLength::Measured(_), _) => String::new(),
        (CageLength::ByCapacity(_), Some(capacity)) => format!(
            "A capacity of {capacity} teeth is a cage of about {centres} between the pulley centres: links and drawing are for that. Measured pulley centres win."
        ),
        _ => format!("Links and drawing are for a medium cage, {centres} between the pulley centres."),
    }
}

/// Gears that are left out everywhere, and why when none could be.
pub(crate) fn avoided(report: &ChainSection) -> String {
    let told: Vec<String> = report.rings.setups.iter().filter_map(avoided_on).collect();
    if told.is_empty() {
        return String::new();
    }
    format!("Gears to avoid, counted as not there: {}.", told.join("; "))
}

fn avoided_on(setup: &SetupReport) -> Option<String> {
    let (side, cage) = (setup.side, &setup.cage);
    if cage.avoid.is_empty() {
        return None;
    }
    if cage.avoid.holds_all(&setup.drivetrain) {
        return Some(format!("every gear of {side}, so that its numbers go on as if they ran"));
    }
    let avoid = named(setup, cage.avoid);
    let own = named(setup, cage.switched_off);
    Some(if own.is_empty() {
        format!("{side} {avoid}")
    } else {
        format!("{side} {avoid} ({own} by your choice)")
    })
}

/// What was left empty, and whether that leaves the answers open.
pub(crate) fn certainty(report: &ChainSection) -> String {
    let deciding = listed(&measures(&report.chain.deciding()));
    if !deciding.is_empty() {
        return format!(
            "You left these empty. Usual values were taken; they can change the link count: {deciding}. Measure before cutting; the table below says what each may do."
        );
    }
    if report.chain.has_doubts() {
        return "Within the usual range of what you left empty, the same number of links is right."
            .to_owned();
    }
    String::new()
}
