//! “Will the cage take it?”: the answer by the makers' figures, what was found, and how it was worked out.

use crate::chain::section::ChainSection;
use crate::chain::view::cage_verdict;
use crate::layout::pieces::column;
use crate::layout::pieces::{name, table, worked};
use crate::layout::sheet_block::Block;
use crate::layout::sheet_checks::Concern;
use crate::number::{counted, listed, trimmed};
use crate::rings::setup::SetupReport;
use crate::side::Side;
use gear_math::cage::CageClass;
use maud::{Markup, html};

/// What can break first: chain, cage and spokes.
const BY_HAND: [&str; 6] = [
    "Bike in a stand, turn the crank by hand, fingers clear of chain and sprockets.",
    "Turn slowly into the largest ring with the largest sprocket and never force it; the pulleys must not be pulled into line.",
    "Then the smallest with the smallest: the lower run must neither sag nor touch the guide pulley.",
    "Look at the gap under the largest sprocket, at the hanger, and with rear suspension at every height of its travel.",
    "After other rings or another cassette set limit screws, guide-pulley gap and front-derailleur height anew: derailleur or chain in the spokes stops the wheel.",
    "Close the chain with its maker’s own pin or link, and bend it there to see that it holds.",
];
/// The sentence that answers for both set-ups, and what to check by hand.
#[must_use]
pub(crate) fn answer(report: &ChainSection) -> Markup {
    html! {
        @for side in Side::BOTH { p.verdict { (cage_verdict::said(report, side).marked(side)) } }
        p.more { (cage_verdict::avoided(report)) (cage_verdict::basis(report)) (crate::chain::view::path::certainty(report)) }
        @if report.rings.setups.iter().any(|setup| !setup.cage.check.unknown.is_empty()) { p.more { (unknown(report)) } }
        p.more.care { "By hand, before riding. " (BY_HAND.join(" ")) " The makers’ figures come before ours." }
    }
}

/// What the workshop has to know.
#[must_use]
pub(crate) fn block(report: &ChainSection) -> Block {
    let mut block = Block::new("Derailleur, cage and chain");
    for side in Side::BOTH {
        let said = cage_verdict::said(report, side);
        block.row_of(side, "Derailleur", said.plain_verdict());
        block.row_of(side, "Next", said.step().to_owned());
        let avoided = report.rings.setup(side).avoided();
        if !avoided.is_empty() {
            block.row_of(side, "Gears to avoid", avoided.join(", "));
        }
    }
    crate::chain::view::path::links_fitted(report, &mut block);
    block.check(Concern::Drivetrain, BY_HAND.join(" "));
    if let Some(measure) = crate::chain::view::path::before_cutting(report) {
        block.check(Concern::Drivetrain, measure);
    }
    block
}

/// “an 11”, “a 34”.
pub(crate) fn with_article(count: u16) -> String {
    let vowel = matches!(count, 8 | 11 | 18 | 80..=89);
    format!("{} {count}", if vowel { "an" } else { "a" })
}

pub(crate) fn teeth(count: u16) -> String {
    counted(usize::from(count), "tooth", "teeth")
}

fn unknown(report: &ChainSection) -> Markup {
    html! { "Not given, so not checked: " (listed(&report.rings.setups[0].cage.check.unknown)) "." }
}

/// What each set-up asks for against what the derailleur has, and what cages usually have.
#[must_use]
pub(crate) fn tables(report: &ChainSection) -> Markup {
    html! { (asked(report)) (classes()) }
}

fn asked(report: &ChainSection) -> Markup {
    let [a, b] = &report.rings.setups;
    let derailleur = &report.chain.derailleur;
    let given = |teeth: Option<u16>| teeth.map_or("not given".to_owned(), |teeth| teeth.to_string());
    let head = html! { tr { td {} (column(Side::A)) (column(Side::B)) th scope="col" { "Derailleur" } } };
    let row = |what: &str, value: fn(&SetupReport) -> u16, limit: Option<u16>| {
        html! { tr { th scope="row" { (what) } td { (value(a)) } td { (value(b)) } td { (given(limit)) } } }
    };
    let body = html! {
        (row("Total capacity, teeth", |setup| setup.cage.check.needed, derailleur.total_capacity.map(gear_math::TotalCapacity::teeth)))
        (row("Largest sprocket", |setup| setup.drivetrain.cassette.largest().teeth(), derailleur.largest_sprocket.map(gear_math::Sprocket::teeth)))
        (row("Smallest sprocket", |setup| setup.drivetrain.cassette.smallest().teeth(), derailleur.smallest_sprocket.map(gear_math::Sprocket::teeth)))
        (row("Chainring difference", |setup| setup.drivetrain.chainset.difference(), derailleur.ring_difference.map(gear_math::gears::RingDifference::teeth)))
    };
    table("Needed and available", "", &head, &body)
}

/// The gears in which the chain hangs by the makers' sum, so that the picture's crosses can be read too.
#[must_use]
pub(crate) fn loose_gears(report: &ChainSection) -> Markup {
    let head = html! { tr { th scope="col" { "Gear" } th scope="col" { "Slack to take up" } th scope="col" { "Beyond the cage" } } };
    let body = html! {
        @for setup in &report.rings.setups {
            @for line in setup.gears.iter().filter(|line| line.beyond_cage > 0) {
                tr {
                    th scope="row" { (name(setup.side)) " " (line.gear) }
                    td { (teeth(line.slack)) }
                    td { (teeth(line.beyond_cage)) }
                }
            }
        }
    };
    let any = report.rings.setups.iter().any(|setup| setup.gears.iter().any(|line| line.beyond_cage > 0));
    html! { @if any { (table("Gears beyond the maker’s capacity: the chain hangs", "", &head, &body)) } }
}

fn classes() -> Markup {
    let head = html! {
        tr { th scope="col" { "Cage" } th scope="col" { "Pulley centres" } th scope="col" { "Total capacity" } th scope="col" { "Largest sprocket" } }
    };
    let body = html! {
        @for class in CageClass::ALL {
            tr {
                th scope="row" { (class.name) }
                td { (trimmed(class.pulley_centres_mm.0)) "–" (trimmed(class.pulley_centres_mm.1)) " mm" }
                td { (class.total_capacity.0) "–" (class.total_capacity.1) }
                td { (class.largest_sprocket.0) @match class.largest_sprocket.1 { Some(most) => { "–" (most) } None => " and up" } }
            }
        }
    };
    html! {
        details #cage-classes {
            summary { "What cages usually take" }
            (table("Usual figures by cage length", "Common practice, of mixed years; the maker’s own figures decide.", &head, &body))
        }
    }
}

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &ChainSection) -> Markup {
    html! {
        @for setup in &report.rings.setups { (needed(setup)) }
        p { b { "Why a sum? " } "The chain runs half-way round each wheel, so a tooth more or fewer, in front or behind, asks for half a link: 6.35 mm of chain that the cage must take up or pay out." }
        p { b { "Why largest with largest is never given away. " } "The chain’s length is set there. Too short for that gear, it locks and can tear off the derailleur or the hanger; too long for smallest with smallest, it only hangs and rattles. So a shortage of capacity is always taken at the loose end." }
        p { b { "Largest sprocket " } "is a limit of its own: the guide pulley must clear it, which depends on the derailleur’s body and the hanger, not on the cage’s length." }
        p { "The sum is right to about half a tooth; whole links can cost up to four teeth more." }
        (crate::chain::view::working::working(report))
    }
}

fn needed(setup: &SetupReport) -> Markup {
    let (chainset, cassette) = (&setup.drivetrain.chainset, &setup.drivetrain.cassette);
    worked(
        &format!("Capacity {} needs", setup.side),
        "(largest − smallest ring) + (largest − smallest sprocket)",
        &format!(
            "({} − {}) + ({} − {}) = {}",
            chainset.largest(),
            chainset.smallest(),
            cassette.largest(),
            cassette.smallest(),
            setup.cage.check.needed
        ),
    )
}
