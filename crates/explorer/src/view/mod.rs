//! The page's text: every fragment of HTML that changes, as a function of the report.

mod cage;
mod cage_verdict;
mod chain;
mod chain_remedies;
mod chain_working;
pub mod form;
mod gears;
mod lap;
mod lap_course;
mod lap_forcing;
pub(crate) mod lap_found;
mod lap_places;
mod lap_sheet;
mod lap_tables;
mod limit;
mod notices;
mod overlap;
pub(crate) mod position;
mod probes;
pub(crate) mod ride;
mod ride_climb;
mod ride_notes;
mod ride_tables;
pub(crate) mod ride_words;
mod rings;
mod sheet;
mod sheet_checks;
mod steps;
pub(crate) mod tyre;
mod tyre_sheet;
mod tyre_tables;
mod words;
mod yours;

use crate::field::{Field, Group};
use crate::report::Report;
use crate::scenario::Complaint;
#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub(crate) use cage_verdict::reason as finding;
use maud::{Markup, html};

/// What loads the tyres stands in the section on riding or running; a power that cannot be takes its rider along.
const WEIGHING: [Field; 5] =
    [Field::BodyMass, Field::KitMass, Field::BikeMass, Field::RearWeight, Field::Power];

/// All fragments, as pairs of element id and content. `link` is the part of the address that holds the bench.
#[must_use]
pub fn fragments(
    report: &Report,
    notices: &[String],
    complaints: &[Complaint],
    is_demo: bool,
    link: &str,
) -> Vec<(String, String)> {
    let doubts = |groups: &[Group], borrowed: &[Field]| {
        notices::doubts(report, complaints, &|field| {
            let group = field.spec().group;
            group.on_bench() || groups.contains(&group) || borrowed.contains(&field)
        })
    };
    let position_doubts = notices::doubts(report, complaints, &|field| {
        Group::POSITION.contains(&field.spec().group)
            || [Field::BottomBracketDrop, Field::Tyre].contains(&field)
    });
    let sections: [(&str, Markup); 39] = [
        ("scenario", notices::scenario(report, is_demo)),
        ("notices", notices::list(notices)),
        ("rings-answer", answered(&doubts(&[], &[]), &rings::answer(report))),
        ("rings-summary", rings::summary(report)),
        ("rings-working", rings::working(report)),
        ("probes-answer", probes::answer(report)),
        ("rings-steps", steps::tables(report)),
        ("rings-overlap", overlap::tables(report)),
        ("rings-limit", limit::table_of(report)),
        ("rings-gears", gears::tables(report)),
        ("cage-answer", answered(&doubts(&Group::CHAIN, &[]), &cage::answer(report))),
        ("cage-tables", cage::tables(report)),
        ("cage-working", cage::working(report)),
        ("cage-loose", cage::loose_gears(report)),
        ("chain-bench", chain::bench(report)),
        ("chain-remedies", chain_remedies::remedies(report)),
        ("chain-lengths", chain::lengths(report)),
        ("ride-answer", answered(&doubts(&Group::RIDE, &[Field::CrossCrank]), &ride::answer(report))),
        ("ride-ends", ride_tables::ends(report)),
        ("ride-at-speed", ride_tables::at_speed(report)),
        ("ride-speeds", ride_tables::speeds(report)),
        ("ride-map", ride_tables::map(report)),
        ("ride-climb", ride_tables::climb(report)),
        ("ride-swings", ride_tables::swings(report)),
        ("ride-working", ride_notes::working(report)),
        (
            "lap-answer",
            answered(
                &doubts(&[&Group::RIDE[..], &Group::LAP].concat(), &[Field::CrossCrank]),
                &lap::answer(report),
            ),
        ),
        ("lap-course", lap_course::course(report)),
        ("lap-places", lap_places::places(report)),
        ("lap-numbers", lap_tables::numbers(report)),
        ("lap-gears", lap_tables::gears(report)),
        ("lap-found", lap_found::found(report)),
        ("lap-working", lap_tables::working(report)),
        ("tyre-answer", answered(&doubts(&Group::TYRE, &WEIGHING), &tyre::answer(report))),
        ("tyre-tables", tyre_tables::tables(report)),
        ("tyre-working", tyre::working(report)),
        ("position-answer", answered(&position_doubts, &position::answer(report))),
        ("position-tables", position::tables(report)),
        ("position-working", position::working(report)),
        ("sheet-page", sheet::page(report, link, &notices::doubts(report, complaints, &|_| true))),
    ];
    let sections =
        sections.into_iter().map(|(id, html)| (id.to_owned(), yours::marked(report, id, html.into_string())));
    sections.chain(yours::claims(report)).chain(notices::beside_fields(report, complaints)).collect()
}

/// An answer under what it leaves out.
fn answered(doubts: &Markup, answer: &Markup) -> Markup {
    html! { (doubts) (answer) }
}
