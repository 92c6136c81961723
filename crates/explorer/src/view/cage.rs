//! “Will the cage take it?”: the answer by the makers' figures, what was found, and how it was worked out.

use super::gears::column;
use super::sheet::Block;
use super::sheet_checks::Concern;
use super::words::{name, table, worked};
use super::{chain, chain_working};
use crate::number::{counted, listed, trimmed};
use crate::report::{GearLine, Report, SetupReport};
use gear_math::{CageClass, CageFinding, CageVerdict, Drivetrain, Gear};
use maud::{Markup, html};

/// What to try before riding.
const BY_HAND: [&str; 3] = [
    "Turn slowly into the largest ring with the largest sprocket and never force it; the pulleys must not be pulled into line.",
    "Then the smallest with the smallest: the lower run must neither sag nor touch the guide pulley.",
    "Look at the gap under the largest sprocket, at the hanger, and with rear suspension at every height of its travel.",
];
/// Spare teeth from which some whole, even number of links surely suits every gear.
const SURE_SPARE: usize = 4;
/// Most gears named in a sentence; more are counted.
const NAMED: usize = 4;

/// The sentence that answers for both set-ups, and what to check by hand.
#[must_use]
pub(super) fn answer(report: &Report) -> Markup {
    html! {
        (chain::dangers(report))
        @for setup in &report.setups { p.verdict { (verdict(setup)) " " (chain::verdict(report, setup.side)) } }
        p.more { (chain::harmless(report)) (chain::certainty(report)) }
        @if report.setups.iter().any(|setup| !setup.cage.unknown.is_empty()) { p.more { (unknown(report)) } }
        p.more.care { "By hand, before riding. " (BY_HAND.join(" ")) " The makers’ figures come before ours." }
    }
}

/// What the workshop has to know.
#[must_use]
pub(super) fn block(report: &Report) -> Block {
    let mut block = Block::new("Cage, by the makers’ figures");
    for setup in &report.setups {
        let words = match setup.cage.verdict {
            CageVerdict::Fits => format!("fits{}", spare(setup)),
            CageVerdict::FitsAsFarAsKnown => format!("fits as far as is known{}", spare(setup)),
            CageVerdict::Unknown => {
                format!("asks for {} of total capacity; not checked", teeth(setup.cage.needed))
            }
            CageVerdict::FitsIfGearsAvoided => {
                format!("fits if some gears are never used: {}", findings(setup))
            }
            CageVerdict::DoesNotFit => format!("does not fit: {}", findings(setup)),
        };
        block.row_of(setup.side, "Derailleur", words.replace("named below", "marked ×"));
        if setup.cage.verdict == CageVerdict::FitsIfGearsAvoided {
            let loose = setup.gears.iter().filter(|line| line.is_loose()).map(|line| line.gear.to_string());
            block.row_of(setup.side, "Gears to avoid", loose.collect::<Vec<_>>().join(", "));
        }
    }
    block.check(Concern::Drivetrain, BY_HAND.join(" "));
    block
}

fn verdict(setup: &SetupReport) -> Markup {
    let cage = &setup.cage;
    html! {
        (name(setup.side))
        @match cage.verdict {
            CageVerdict::Fits => { " " b.good { "fits" } (spare(setup)) "." }
            CageVerdict::FitsAsFarAsKnown => { " " b.care { "fits as far as is known" } (spare(setup)) "." }
            CageVerdict::Unknown => { " asks for " b { (teeth(cage.needed)) } " of total capacity; type in the derailleur’s figures to get a verdict." }
            CageVerdict::FitsIfGearsAvoided => { " " b.care { "fits if some gears are never used" } ": " (findings(setup)) }
            CageVerdict::DoesNotFit => { " " b.stop { "does not fit" } ": " (findings(setup)) }
        }
    }
}

/// Teeth to spare, and the doubt that whole links leave below four of them.
fn spare(setup: &SetupReport) -> String {
    match setup.cage.spare.and_then(|spare| usize::try_from(spare).ok()) {
        Some(spare) if spare < SURE_SPARE => format!(
            " on paper, with {} of capacity to spare; whole links can cost up to {SURE_SPARE}, so look hard at smallest with smallest",
            if spare == 0 { "no tooth".to_owned() } else { counted(spare, "tooth", "teeth") }
        ),
        Some(spare) => format!(", with {} of capacity to spare", counted(spare, "tooth", "teeth")),
        None => " in every figure you gave".to_owned(),
    }
}

fn findings(setup: &SetupReport) -> String {
    let drivetrain = &setup.drivetrain;
    let found: Vec<String> = setup.cage.findings.iter().map(|found| finding(found, drivetrain)).collect();
    found.join("; ") + "."
}

/// One finding as part of a sentence.
#[must_use]
pub(crate) fn finding(finding: &CageFinding, drivetrain: &Drivetrain) -> String {
    match finding {
        CageFinding::SprocketTooLarge { sprocket, limit } => format!(
            "{} sprocket is larger than the {limit} it may take, and a longer cage does not help that",
            with_article(sprocket.teeth())
        ),
        CageFinding::SprocketTooSmall { sprocket, limit } => {
            format!("{} sprocket is smaller than the {limit} it may take", with_article(sprocket.teeth()))
        }
        CageFinding::RingDifferenceTooLarge { difference, limit } => {
            format!("rings {difference} teeth apart are more than the {} it spans", limit.teeth())
        }
        CageFinding::AvoidGears { short_by, gears } => {
            format!(
                "{}; leave {} out",
                short(*short_by, gears),
                if gears.len() == 1 { "that" } else { "those" }
            )
        }
        CageFinding::LongerCage { short_by, ask_for, slack_gears } => format!(
            "{}; ask for a cage of at least {}{}",
            short(*short_by, slack_gears),
            teeth(*ask_for),
            cage_class(*ask_for, drivetrain)
        ),
    }
}

fn short(by: u16, gears: &[Gear]) -> String {
    format!("{} short of capacity, so the chain hangs loose in {}", teeth(by), names(gears))
}

fn cage_class(capacity: u16, drivetrain: &Drivetrain) -> String {
    match CageClass::for_needs(capacity, drivetrain.cassette.largest()) {
        Some(class) => format!(" (by common practice a {} one)", class.name),
        None => ", more than cages usually take".to_owned(),
    }
}

fn names(gears: &[Gear]) -> String {
    if gears.len() > NAMED { format!("{} gears (named below)", gears.len()) } else { listed(gears) }
}

/// “an 11”, “a 34”.
fn with_article(count: u16) -> String {
    let vowel = matches!(count, 8 | 11 | 18 | 80..=89);
    format!("{} {count}", if vowel { "an" } else { "a" })
}

fn teeth(count: u16) -> String {
    counted(usize::from(count), "tooth", "teeth")
}

fn unknown(report: &Report) -> Markup {
    html! { "Not checked, because not given: " (listed(&report.setups[0].cage.unknown)) "." }
}

/// What each set-up asks for against what the derailleur has, and what cages usually have.
#[must_use]
pub(super) fn tables(report: &Report) -> Markup {
    html! { (asked(report)) (classes()) }
}

fn asked(report: &Report) -> Markup {
    let [a, b] = &report.setups;
    let derailleur = &report.derailleur;
    let given = |teeth: Option<u16>| teeth.map_or("not given".to_owned(), |teeth| teeth.to_string());
    let head = html! { tr { td {} (column(a)) (column(b)) th scope="col" { "Derailleur" } } };
    let row = |what: &str, value: fn(&SetupReport) -> u16, limit: Option<u16>| {
        html! { tr { th scope="row" { (what) } td { (value(a)) } td { (value(b)) } td { (given(limit)) } } }
    };
    let body = html! {
        (row("Total capacity, teeth", |setup| setup.cage.needed, derailleur.total_capacity.map(gear_math::TotalCapacity::teeth)))
        (row("Largest sprocket", |setup| setup.drivetrain.cassette.largest().teeth(), derailleur.largest_sprocket.map(gear_math::Sprocket::teeth)))
        (row("Smallest sprocket", |setup| setup.drivetrain.cassette.smallest().teeth(), derailleur.smallest_sprocket.map(gear_math::Sprocket::teeth)))
        (row("Chainring difference", |setup| setup.drivetrain.chainset.difference(), derailleur.ring_difference.map(gear_math::RingDifference::teeth)))
    };
    table("Asked for and given", "", &head, &body)
}

/// The gears in which the chain hangs by the makers' sum, so that the picture's crosses can be read too.
#[must_use]
pub(super) fn loose_gears(report: &Report) -> Markup {
    let head = html! { tr { th scope="col" { "Gear" } th scope="col" { "Slack to take up" } th scope="col" { "Beyond the cage" } } };
    let body = html! {
        @for setup in &report.setups {
            @for line in setup.gears.iter().filter(|line| line.is_loose()) {
                tr {
                    th scope="row" { (name(setup.side)) " " (line.gear) }
                    td { (teeth(line.slack)) }
                    td { (teeth(line.beyond_cage)) }
                }
            }
        }
    };
    let any = report.setups.iter().any(|setup| setup.gears.iter().any(GearLine::is_loose));
    html! { @if any { (table("Gears in which the chain hangs loose", "", &head, &body)) } }
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
pub(super) fn working(report: &Report) -> Markup {
    html! {
        @for setup in &report.setups { (needed(setup)) }
        p { b { "Why a sum? " } "The chain runs half-way round each wheel, so a tooth more or fewer, in front or behind, asks for half a link: 6.35 mm of chain that the cage must take up or pay out." }
        p { b { "Why largest with largest is never given away. " } "The chain’s length is set there. Too short for that gear, it locks and can tear off the derailleur or the hanger; too long for smallest with smallest, it only hangs and rattles. So a shortage of capacity is always taken at the loose end." }
        p { b { "Largest sprocket " } "is a limit of its own: the guide pulley must clear it, which depends on the derailleur’s body and the hanger, not on the cage’s length." }
        p { "The sum is right to about half a tooth; whole links can cost up to four teeth more." }
        (chain_working::working(report))
    }
}

fn needed(setup: &SetupReport) -> Markup {
    let (chainset, cassette) = (&setup.drivetrain.chainset, &setup.drivetrain.cassette);
    worked(
        &format!("Capacity {} asks for", setup.side),
        "(largest − smallest ring) + (largest − smallest sprocket)",
        &format!(
            "({} − {}) + ({} − {}) = {}",
            chainset.largest(),
            chainset.smallest(),
            cassette.largest(),
            cassette.smallest(),
            setup.cage.needed
        ),
    )
}
