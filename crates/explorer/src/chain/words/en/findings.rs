//! What speaks against a set-up, and what it needs.

use crate::chain::fitting::Fitting;
use crate::chain::section::ChainSection;
use crate::chain::words::names::{chain, class, few, links, named, teeth, with_article};
use crate::rings::setup::SetupReport;
use gear_math::cage::{CageClass, CageFinding};
use gear_math::chain::{CageNeed, DerailleurNeed};

/// Everything that speaks against a set-up.
pub(crate) fn reasons(setup: &SetupReport) -> String {
    let mut reasons: Vec<String> = setup.cage.check.findings.iter().map(reason).collect();
    if reasons.is_empty() {
        reasons.push(format!("the chain hangs in {}", named(setup, setup.cage.avoid_by_cage())));
    }
    if !setup.cage.too_short.is_empty() {
        reasons.push(breaks(setup));
    }
    format!(": {}", reasons.join("; "))
}

/// One finding as part of a sentence.
pub(crate) fn reason(finding: &CageFinding) -> String {
    match finding {
        CageFinding::SprocketTooLarge { sprocket, limit } => {
            format!("{} sprocket is larger than the {limit} it may take", with_article(sprocket.teeth()))
        }
        CageFinding::SprocketTooSmall { sprocket, limit } => {
            format!("{} sprocket is smaller than the {limit} it may take", with_article(sprocket.teeth()))
        }
        CageFinding::RingDifferenceTooLarge { difference, limit } => {
            format!("rings {difference} teeth apart are more than the {} it spans", limit.teeth())
        }
        CageFinding::AvoidGears { short_by, gears }
        | CageFinding::LongerCage { short_by, slack_gears: gears, .. } => {
            format!("{} short of capacity, so the chain hangs in {}", teeth(*short_by), few(gears))
        }
    }
}

/// What a chain that is too short does.
pub(crate) fn breaks(setup: &SetupReport) -> String {
    let fitted = links(setup.cage.fitted.map_or(0, gear_math::ChainLinks::count));
    let too_short = named(setup, setup.cage.too_short);
    format!("the {fitted} fitted are too short for {too_short}: do not ride or force it, something breaks")
}

/// What has to be bought or chosen for the set-up to fit.
pub(crate) fn needed(report: &ChainSection, setup: &SetupReport, need: &CageNeed) -> String {
    let mut steps: Vec<String> = Vec::new();
    if let Some(derailleur) = &need.derailleur {
        let rear = rear(derailleur);
        steps.push(match Fitting::of(report, setup) {
            Some(fitting) => format!("Buy {rear}, and a chain of {}", chain(fitting)),
            None => format!("Buy {rear}"),
        });
    }
    if let Some(difference) = need.ring_difference {
        steps.push(format!("Choose rings closer together, or derailleurs that span {difference} teeth"));
    }
    steps.join(". ")
}

/// “a rear derailleur for a 34 and at least 37 teeth (by common practice a medium cage)”.
fn rear(need: &DerailleurNeed) -> String {
    let largest = with_article(need.largest.teeth());
    let capacity = teeth(need.capacity);
    let usual = usual_class(need);
    match need.smallest {
        None => format!("a rear derailleur for {largest} and at least {capacity} ({usual})"),
        Some(smallest) => {
            let smallest = with_article(smallest.teeth());
            format!("a rear derailleur for {largest} down to {smallest} and at least {capacity} ({usual})")
        }
    }
}

fn usual_class(need: &DerailleurNeed) -> String {
    match CageClass::for_needs(need.capacity, need.largest) {
        Some(usual) => format!("by common practice a {} cage", class(&usual)),
        None => "more than cages usually take: a smaller cassette or closer rings may be easier".to_owned(),
    }
}
