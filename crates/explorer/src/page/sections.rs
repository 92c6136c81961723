//! The page's text: every fragment of HTML that changes, as a function of the report.

use crate::bench::bench::Bench;
use crate::bench::complaint::Complaint;
use crate::page::questions::{self, Asked};
use crate::page::report::Report;
use crate::page::words::differences;
use crate::page::{notices, sheet, yours};
use maud::{Markup, html};

/// All fragments, as pairs of element id and content. `link` is the part of the address that holds the bench.
#[must_use]
pub fn fragments(
    report: &Report,
    notices: &[String],
    complaints: &[Complaint],
    bench: &Bench,
    link: &str,
) -> Vec<(String, String)> {
    let named = |(id, html): (&str, Markup)| (id.to_owned(), html.into_string());
    let above = [
        ("scenario", notices::scenario(report, bench)),
        ("differences", html! { (differences::between(report, bench)) }),
        ("notices", notices::list(notices)),
    ];
    let written = questions::all().flat_map(|question| written(report, complaints, question));
    let doubts = notices::doubts(report, complaints, &|_| true);
    let sheet = ("sheet-page", sheet::page(report, link, &doubts));
    above
        .into_iter()
        .map(named)
        .chain(written)
        .chain([named(sheet)])
        .chain(yours::claims(report))
        .chain(notices::beside_fields(report, complaints))
        .collect()
}

/// The text of a section: the answer under what it leaves out, all of it marked where it rests on the demo's values.
fn written(report: &Report, complaints: &[Complaint], question: &dyn Asked) -> Vec<(String, String)> {
    let doubts = notices::doubts(report, complaints, &|field| question.asks(field));
    let answer = |answer: Markup| yours::marked(report, question, &html! { (doubts) (answer) });
    let fragments = question.fragments(report).into_iter().enumerate();
    let written = fragments.map(|(place, (id, html))| {
        let html = if place == 0 { answer(html) } else { html };
        (id.to_owned(), html.into_string())
    });
    let said = question.said(report).into_iter().map(|(id, html)| (id, html.into_string()));
    written.chain(said).collect()
}
