//! The page's text: every fragment of HTML that changes, as a function of the report.

mod cage;
pub mod form;
mod gears;
mod limit;
mod notices;
mod overlap;
mod position;
mod probes;
mod rings;
pub(crate) mod sheet;
mod steps;
mod tyre;
mod words;

use crate::report::Report;
use crate::scenario::Complaint;
#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub(crate) use cage::finding;
use maud::Markup;

/// All fragments, as pairs of element id and content.
#[must_use]
pub fn fragments(
    report: &Report,
    notices: &[String],
    complaints: &[Complaint],
    is_demo: bool,
) -> Vec<(String, String)> {
    let sections: [(&str, Markup); 19] = [
        ("scenario", notices::scenario(is_demo)),
        ("notices", notices::list(notices)),
        ("rings-answer", rings::answer(report)),
        ("rings-summary", rings::summary(report)),
        ("rings-working", rings::working(report)),
        ("probes-answer", probes::answer(report)),
        ("rings-steps", steps::tables(report)),
        ("rings-overlap", overlap::tables(report)),
        ("rings-limit", limit::table_of(report)),
        ("rings-gears", gears::tables(report)),
        ("cage-answer", cage::answer(report)),
        ("cage-tables", cage::tables(report)),
        ("cage-working", cage::working(report)),
        ("tyre-answer", tyre::answer(report)),
        ("tyre-tables", tyre::tables(report)),
        ("tyre-working", tyre::working(report)),
        ("position-answer", position::answer(report)),
        ("position-tables", position::tables(report)),
        ("position-working", position::working(report)),
    ];
    let sections = sections.into_iter().map(|(id, html)| (id.to_owned(), html.into_string()));
    sections.chain(notices::beside_fields(report, complaints)).collect()
}
