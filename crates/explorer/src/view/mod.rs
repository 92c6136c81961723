//! The page's text: every fragment of HTML that changes, as a function of the report.

mod cage;
mod chain;
mod chain_working;
pub mod form;
mod gears;
mod limit;
mod notices;
mod overlap;
mod position;
mod probes;
mod rings;
mod sheet;
mod steps;
mod tyre;
mod words;

use crate::report::Report;
use crate::scenario::Complaint;
#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub(crate) use cage::finding;
use maud::{Markup, html};

/// All fragments, as pairs of element id and content. `link` is the part of the address that holds the bench.
#[must_use]
pub fn fragments(
    report: &Report,
    notices: &[String],
    complaints: &[Complaint],
    is_demo: bool,
    link: &str,
) -> Vec<(String, String)> {
    let doubts = notices::doubts(complaints);
    let sections: [(&str, Markup); 24] = [
        ("scenario", notices::scenario(is_demo)),
        ("notices", notices::list(notices)),
        ("rings-answer", answered(&doubts, &rings::answer(report))),
        ("rings-summary", rings::summary(report)),
        ("rings-working", rings::working(report)),
        ("probes-answer", probes::answer(report)),
        ("rings-steps", steps::tables(report)),
        ("rings-overlap", overlap::tables(report)),
        ("rings-limit", limit::table_of(report)),
        ("rings-gears", gears::tables(report)),
        ("cage-answer", answered(&doubts, &cage::answer(report))),
        ("cage-tables", cage::tables(report)),
        ("cage-working", cage::working(report)),
        ("cage-loose", cage::loose_gears(report)),
        ("chain-bench", chain::bench(report)),
        ("chain-remedies", chain::remedies(report)),
        ("chain-lengths", chain::lengths(report)),
        ("tyre-answer", answered(&doubts, &tyre::answer(report))),
        ("tyre-tables", tyre::tables(report)),
        ("tyre-working", tyre::working(report)),
        ("position-answer", answered(&doubts, &position::answer(report))),
        ("position-tables", position::tables(report)),
        ("position-working", position::working(report)),
        ("sheet-page", sheet::page(report, link, &doubts)),
    ];
    let sections = sections.into_iter().map(|(id, html)| (id.to_owned(), html.into_string()));
    sections.chain(notices::beside_fields(report, complaints)).collect()
}

/// An answer under what it leaves out.
fn answered(doubts: &Markup, answer: &Markup) -> Markup {
    html! { (doubts) (answer) }
}
