//! The page's text: every fragment of HTML that changes, as a function of the report.

use crate::field::{Field, Group};
use crate::report::Report;
use crate::scenario::Complaint;
use maud::{Markup, html};

/// What loads the tyres stands in the section on riding or running; a power that cannot be takes its rider along.
pub(crate) const WEIGHING: [Field; 5] =
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
        super::notices::doubts(report, complaints, &|field| {
            let group = field.spec().group;
            group.on_bench() || groups.contains(&group) || borrowed.contains(&field)
        })
    };
    let position_doubts = super::notices::doubts(report, complaints, &|field| {
        Group::POSITION.contains(&field.spec().group)
            || [Field::BottomBracketDrop, Field::Tyre].contains(&field)
    });
    let sections: [(&str, Markup); 39] = [
        ("scenario", super::notices::scenario(report, is_demo)),
        ("notices", super::notices::list(notices)),
        ("rings-answer", answered(&doubts(&[], &[]), &super::rings::answer(report))),
        ("rings-summary", super::rings::summary(report)),
        ("rings-working", super::rings::working(report)),
        ("probes-answer", super::probes::answer(report)),
        ("rings-steps", super::steps::tables(report)),
        ("rings-overlap", super::overlap::tables(report)),
        ("rings-limit", super::limit::table_of(report)),
        ("rings-gears", super::gears::tables(report)),
        ("cage-answer", answered(&doubts(&Group::CHAIN, &[]), &super::cage::answer(report))),
        ("cage-tables", super::cage::tables(report)),
        ("cage-working", super::cage::working(report)),
        ("cage-loose", super::cage::loose_gears(report)),
        ("chain-bench", super::chain::bench(report)),
        ("chain-remedies", super::chain_remedies::remedies(report)),
        ("chain-lengths", super::chain::lengths(report)),
        ("ride-answer", answered(&doubts(&Group::RIDE, &[Field::CrossCrank]), &super::ride::answer(report))),
        ("ride-ends", super::ride_tables::ends(report)),
        ("ride-at-speed", super::ride_tables::at_speed(report)),
        ("ride-speeds", super::ride_tables::speeds(report)),
        ("ride-map", super::ride_tables::map(report)),
        ("ride-climb", super::ride_tables::climb(report)),
        ("ride-swings", super::ride_tables::swings(report)),
        ("ride-working", super::ride_notes::working(report)),
        (
            "lap-answer",
            answered(
                &doubts(&[&Group::RIDE[..], &Group::LAP].concat(), &[Field::CrossCrank]),
                &super::lap::answer(report),
            ),
        ),
        ("lap-course", super::lap_course::course(report)),
        ("lap-places", super::lap_places::places(report)),
        ("lap-numbers", super::lap_tables::numbers(report)),
        ("lap-gears", super::lap_tables::gears(report)),
        ("lap-found", super::lap_found::found(report)),
        ("lap-working", super::lap_tables::working(report)),
        ("tyre-answer", answered(&doubts(&Group::TYRE, &WEIGHING), &super::tyre::answer(report))),
        ("tyre-tables", super::tyre_tables::tables(report)),
        ("tyre-working", super::tyre::working(report)),
        ("position-answer", answered(&position_doubts, &super::position::answer(report))),
        ("position-tables", super::position::tables(report)),
        ("position-working", super::position::working(report)),
        (
            "sheet-page",
            super::sheet::page(report, link, &super::notices::doubts(report, complaints, &|_| true)),
        ),
    ];
    let sections = sections
        .into_iter()
        .map(|(id, html)| (id.to_owned(), super::yours::marked(report, id, html.into_string())));
    sections
        .chain(super::yours::claims(report))
        .chain(super::notices::beside_fields(report, complaints))
        .collect()
}

/// An answer under what it leaves out.
pub(crate) fn answered(doubts: &Markup, answer: &Markup) -> Markup {
    html! { (doubts) (answer) }
}
