//! Makers' figures: what each set-up asks for against what the derailleur has, and what cages usually have.

use crate::chain::section::ChainSection;
use crate::chain::words::names::{class as class_name, teeth};
use crate::chain::words::tables as words;
use crate::layout::head::Head;
use crate::layout::pieces::{column, for_every_bike, heads_row, name, table};
use crate::rings::setup::SetupReport;
use crate::side::Side;
use gear_math::Derailleur;
use gear_math::cage::CageClass;
use maud::{Markup, html};

/// Both tables.
#[must_use]
pub(crate) fn tables(report: &ChainSection) -> Markup {
    html! { (asked(report)) (classes()) }
}

fn asked(report: &ChainSection) -> Markup {
    let [a, b] = &report.rings.setups;
    let sides: &[Side] = if report.chain.has_one_derailleur() { &[Side::A] } else { &Side::BOTH };
    let given = |teeth: Option<u16>| teeth.map_or(words::NOT_GIVEN.to_owned(), |teeth| teeth.to_string());
    let head = html! {
        tr {
            td {} (column(Side::A)) (column(Side::B))
            @for &side in sides { th scope="col" { (words::derailleur((sides.len() > 1).then_some(side))) } }
        }
    };
    let row = |what: &str, value: fn(&SetupReport) -> u16, limit: fn(&Derailleur) -> Option<u16>| {
        html! {
            tr {
                th scope="row" { (what) } td { (value(a)) } td { (value(b)) }
                @for &side in sides { td { (given(limit(report.chain.derailleur(side)))) } }
            }
        }
    };
    let body = html! {
        (row(words::TOTAL_CAPACITY, |setup| setup.cage.check.needed, |it| it.total_capacity.map(gear_math::TotalCapacity::teeth)))
        (row(words::LARGEST_SPROCKET, |setup| setup.drivetrain.cassette.largest().teeth(), |it| it.largest_sprocket.map(gear_math::Sprocket::teeth)))
        (row(words::SMALLEST_SPROCKET, |setup| setup.drivetrain.cassette.smallest().teeth(), |it| it.smallest_sprocket.map(gear_math::Sprocket::teeth)))
        (row(words::RING_DIFFERENCE, |setup| setup.drivetrain.chainset.difference(), |it| it.ring_difference.map(gear_math::gears::RingDifference::teeth)))
    };
    table(words::NEEDED, "", &head, &body)
}

/// The gears in which the chain hangs by the makers' sum, so that the picture's crosses can be read too.
#[must_use]
pub(crate) fn loose_gears(report: &ChainSection) -> Markup {
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
    html! { @if any { (table(words::LOOSE, "", &heads_row(&words::LOOSE_HEADS.map(Head::Figures)), &body)) } }
}

fn classes() -> Markup {
    let body = html! {
        @for class in &CageClass::ALL {
            tr {
                th scope="row" { (class_name(class)) }
                td { (words::centres_of(class)) }
                td { (class.total_capacity.0) "–" (class.total_capacity.1) }
                td { (words::largest_of(class)) }
            }
        }
    };
    html! {
        details #cage-classes {
            summary { (words::CLASSES_OPEN) }
            (for_every_bike(&table(words::CLASSES, words::CLASSES_REMARK, &heads_row(&words::CLASSES_HEADS.map(Head::Figures)), &body)))
        }
    }
}
