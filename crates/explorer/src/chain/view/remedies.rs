//! “Will the cage take it?” by geometry: what would help, least change first.

use crate::chain::report::ChainReport;
use crate::chain::section::ChainSection;
use crate::chain::view::path::{few, in_state, links, tight};
use crate::layout::pieces::{name, table};
use crate::number::with_unit;
use gear_math::Chainset;
use gear_math::cage::{CageClass, FrontConcern, FrontLimits};
use gear_math::chain::{CageOutcome, Change, EffortPart, GearState, PulleyCentres, Remedy};
use maud::{Markup, html};

/// What would help where a gear does not run, least change first.
#[must_use]
pub(crate) fn remedies(report: &ChainSection) -> Markup {
    let chains = || {
        report.chain.solved().filter(|chain| report.rings.setup(chain.side).cage.outcome != CageOutcome::Fits)
    };
    let any = chains().any(|chain| !chain.advice.remedies.is_empty());
    let head = html! {
        tr {
            th scope="col" { "Set-up" } th.words scope="col" { "What would help" } th.words scope="col" { "What it changes" }
            th scope="col" { "Links then" } th.words scope="col" { "Gears then" }
        }
    };
    let body = html! {
        @for chain in chains() {
            @for remedy in &chain.advice.remedies { (remedy_row(chain, remedy)) }
        }
    };
    html! { @if any { (table("What would help, least change first", "Each solved again by geometry alone; what the maker states still has to hold.", &head, &body)) } }
}

fn remedy_row(chain: &ChainReport, remedy: &Remedy) -> Markup {
    html! {
        tr {
            th scope="row" { (name(chain.side)) }
            td.words { (change(chain, &remedy.change)) }
            td.words { (what_changes(chain, remedy)) }
            td { (remedy.fit.links.count()) }
            td.words { (gears_then(remedy)) }
        }
    }
}

fn change(chain: &ChainReport, change: &Change) -> String {
    match change {
        Change::AvoidGears(gears) => format!("Never use {}", few(gears)),
        Change::OtherLinks(count) => format!("A chain of {}", links(count.count())),
        Change::LongerHanger { extension_mm } => format!(
            "A hanger {} lower, so that the derailleur clears the {} sprocket",
            with_unit(*extension_mm, 0, "mm"),
            chain.setup.drivetrain.cassette.largest()
        ),
        Change::CloserRings(rings) => format!("Rings {rings}{}", too_close(rings)),
        Change::SmallerSprocket(sprocket) => format!("A cassette that ends at {sprocket}"),
        Change::LongerCage(centres) => format!(
            "A cage of at least {} between pulley centres{}",
            with_unit(centres.mm(), 0, "mm"),
            class_of(*centres)
        ),
    }
}

/// What a front derailleur would say to rings this close.
fn too_close(rings: &Chainset) -> &'static str {
    let concerns = FrontLimits::usual(rings.rings().len()).concerns(rings);
    let close = concerns.iter().any(|concern| matches!(concern, FrontConcern::DifferenceTooSmall { .. }));
    if close { ", closer than most front derailleurs shift" } else { "" }
}

fn class_of(centres: PulleyCentres) -> String {
    let mm = centres.mm();
    let long_enough = CageClass::ALL.iter().position(|class| class.pulley_centres_mm.1 >= mm);
    let Some(place) = long_enough else { return String::new() };
    let class = &CageClass::ALL[place];
    match CageClass::ALL[..place].last() {
        Some(shorter) if mm < class.pulley_centres_mm.0 => {
            format!(" (between {} and {}, by common practice)", shorter.name, class.name)
        }
        _ => format!(" ({}, by common practice)", class.name),
    }
}

fn what_changes(chain: &ChainReport, remedy: &Remedy) -> String {
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

fn gears_then(remedy: &Remedy) -> String {
    let slack = in_state(&remedy.fit, GearState::Slack);
    let short = in_state(&remedy.fit, GearState::TooTight);
    match (short.as_slice(), slack.as_slice()) {
        ([], []) => format!("every gear runs{}", tight(&remedy.fit)),
        ([], slack) => format!("hangs in {}{}", few(slack), tight(&remedy.fit)),
        (short, []) => format!("too tight in {}", few(short)),
        (short, slack) => format!("too tight in {}, hangs in {}", few(short), few(slack)),
    }
}
