//! What would help where a gear does not run.

use crate::chain::cages::UsualCage;
use crate::chain::report::{ChainReport, shift_badly};
use crate::chain::words::names::{class, few, links};
use crate::number::with_unit;
use gear_math::chain::{ChainFit, Change, EffortPart, GearState, PulleyCentres, Remedy};
use gear_math::{Cassette, Chainset, Gear};

/// Over the table.
pub(crate) const TITLE: &str = "What would help, least change first";
/// What it rests on.
pub(crate) const REMARK: &str =
    "Each solved again by geometry alone; what the maker states still has to hold.";
/// Over its columns.
pub(crate) const HEADS: [&str; 5] =
    ["Set-up", "What would help", "What it changes", "Links then", "Gears then"];

/// What to change.
pub(crate) fn change(cassette: &Cassette, change: &Change) -> String {
    match change {
        Change::AvoidGears(gears) => format!("Never use {}", few(gears)),
        Change::OtherLinks(count) => format!("A chain of {}", links(count.count())),
        Change::LongerHanger { extension_mm } => format!(
            "A hanger {} lower, so that the derailleur clears the {} sprocket",
            with_unit(*extension_mm, 0, "mm"),
            cassette.largest()
        ),
        Change::CloserRings(rings) => closer(rings),
        Change::SmallerSprocket(sprocket) => format!("A cassette that ends at {sprocket}"),
        Change::LongerCage(centres) => longer_cage(*centres),
    }
}

fn closer(rings: &Chainset) -> String {
    if shift_badly(rings) {
        format!("Rings {rings}, closer than most front derailleurs shift")
    } else {
        format!("Rings {rings}")
    }
}

fn longer_cage(centres: PulleyCentres) -> String {
    let mm = with_unit(centres.mm(), 0, "mm");
    match UsualCage::with(centres) {
        None => format!("A cage of at least {mm} between pulley centres"),
        Some(UsualCage::Of(of)) => {
            format!("A cage of at least {mm} between pulley centres ({}, by common practice)", class(of))
        }
        Some(UsualCage::Between(shorter, longer)) => format!(
            "A cage of at least {mm} between pulley centres (between {} and {}, by common practice)",
            class(shorter),
            class(longer)
        ),
    }
}

/// What that means for the parts.
pub(crate) fn what_changes(chain: &ChainReport, remedy: &Remedy) -> String {
    let [now, then] = [&chain.advice.fit, &remedy.fit].map(|fit| fit.links.count());
    match (remedy.effort.part, &remedy.change) {
        (EffortPart::Nothing, _) => "nothing to buy".to_owned(),
        (EffortPart::Chain, _) if then < now => format!("{} come off", links(now - then)),
        (EffortPart::Chain, _) => format!("a chain longer by {}", links(then - now)),
        (EffortPart::OnePart, Change::LongerHanger { .. }) => "the hanger".to_owned(),
        (EffortPart::OnePart, Change::CloserRings(_)) => "one ring".to_owned(),
        (EffortPart::OnePart, _) => "the cassette".to_owned(),
        (EffortPart::Derailleur, _) => "the rear derailleur or its cage".to_owned(),
    }
}

/// How the gears run then.
pub(crate) fn gears_then(fit: &ChainFit) -> String {
    let [slack, short, tight] = [GearState::Slack, GearState::TooTight, GearState::TightButUsual]
        .map(|state| few(&in_state(fit, state)));
    match (short.is_empty(), slack.is_empty(), tight.is_empty()) {
        (true, true, true) => "every gear runs".to_owned(),
        (true, true, false) => format!("every gear runs, tight but usual in {tight}"),
        (true, false, true) => format!("hangs in {slack}"),
        (true, false, false) => format!("hangs in {slack}, tight but usual in {tight}"),
        (false, true, _) => format!("too tight in {short}"),
        (false, false, _) => format!("too tight in {short}, hangs in {slack}"),
    }
}

fn in_state(fit: &ChainFit, state: GearState) -> Vec<Gear> {
    fit.in_state(state).collect()
}
