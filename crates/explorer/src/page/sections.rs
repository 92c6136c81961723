//! The page's text: every fragment of HTML that changes, as a function of the report.

use crate::bench::complaint::Complaint;
use crate::bench::field::{Field, Group};
use crate::page::report::Report;
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
        crate::page::notices::doubts(report, complaints, &|field| {
            let group = field.spec().group;
            group.on_bench() || groups.contains(&group) || borrowed.contains(&field)
        })
    };
    let position_doubts = crate::page::notices::doubts(report, complaints, &|field| {
        Group::POSITION.contains(&field.spec().group)
            || [Field::BottomBracketDrop, Field::Tyre].contains(&field)
    });
    let sections: [(&str, Markup); 39] = [
        ("scenario", crate::page::notices::scenario(report, is_demo)),
        ("notices", crate::page::notices::list(notices)),
        ("rings-answer", answered(&doubts(&[], &[]), &crate::rings::view::answer::answer(report))),
        ("rings-summary", crate::rings::view::answer::summary(report)),
        ("rings-working", crate::rings::view::answer::working(report)),
        ("probes-answer", crate::rings::view::probes::answer(report)),
        ("rings-steps", crate::rings::view::steps::tables(report)),
        ("rings-overlap", crate::rings::view::overlap::tables(report)),
        ("rings-limit", crate::rings::view::limit::table_of(report)),
        ("rings-gears", crate::rings::view::gears::tables(report)),
        ("cage-answer", answered(&doubts(&Group::CHAIN, &[]), &crate::chain::view::cage::answer(report))),
        ("cage-tables", crate::chain::view::cage::tables(report)),
        ("cage-working", crate::chain::view::cage::working(report)),
        ("cage-loose", crate::chain::view::cage::loose_gears(report)),
        ("chain-bench", crate::chain::view::path::bench(report)),
        ("chain-remedies", crate::chain::view::remedies::remedies(report)),
        ("chain-lengths", crate::chain::view::path::lengths(report)),
        (
            "ride-answer",
            answered(&doubts(&Group::RIDE, &[Field::CrossCrank]), &crate::ride::view::answer::answer(report)),
        ),
        ("ride-ends", crate::ride::view::tables::ends(report)),
        ("ride-at-speed", crate::ride::view::tables::at_speed(report)),
        ("ride-speeds", crate::ride::view::tables::speeds(report)),
        ("ride-map", crate::ride::view::tables::map(report)),
        ("ride-climb", crate::ride::view::tables::climb(report)),
        ("ride-swings", crate::ride::view::tables::swings(report)),
        ("ride-working", crate::ride::view::notes::working(report)),
        (
            "lap-answer",
            answered(
                &doubts(&[&Group::RIDE[..], &Group::LAP].concat(), &[Field::CrossCrank]),
                &crate::lap::view::answer::answer(report),
            ),
        ),
        ("lap-course", crate::lap::view::course::course(report)),
        ("lap-places", crate::lap::view::places::places(report)),
        ("lap-numbers", crate::lap::view::tables::numbers(report)),
        ("lap-gears", crate::lap::view::tables::gears(report)),
        ("lap-found", crate::lap::view::found::found(report)),
        ("lap-working", crate::lap::view::tables::working(report)),
        (
            "tyre-answer",
            answered(&doubts(&Group::TYRE, &WEIGHING), &crate::tyre::view::answer::answer(report)),
        ),
        ("tyre-tables", crate::tyre::view::tables::tables(report)),
        ("tyre-working", crate::tyre::view::answer::working(report)),
        ("position-answer", answered(&position_doubts, &crate::position::view::answer(report))),
        ("position-tables", crate::position::view::tables(report)),
        ("position-working", crate::position::view::working(report)),
        (
            "sheet-page",
            crate::page::sheet::page(
                report,
                link,
                &crate::page::notices::doubts(report, complaints, &|_| true),
            ),
        ),
    ];
    let sections = sections
        .into_iter()
        .map(|(id, html)| (id.to_owned(), crate::page::yours::marked(report, id, html.into_string())));
    sections
        .chain(crate::page::yours::claims(report))
        .chain(crate::page::notices::beside_fields(report, complaints))
        .collect()
}

/// An answer under what it leaves out.
pub(crate) fn answered(doubts: &Markup, answer: &Markup) -> Markup {
    html! { (doubts) (answer) }
}
