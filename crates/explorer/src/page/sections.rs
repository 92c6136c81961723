//! The page's text: every fragment of HTML that changes, as a function of the report.

use crate::bench::bench::Bench;
use crate::bench::complaint::Complaint;
use crate::layout::folded::Folded;
use crate::page::questions::{self, Asked, Place, Text};
use crate::page::report::Report;
use crate::page::was::Was;
use crate::page::words::{differences, units};
use crate::page::{board, decided_by, notices, sheet, yours};
use maud::{Markup, html};

/// What the fragments are written from.
pub(crate) struct Written<'d> {
    /// Everything that was worked out.
    pub(crate) report: &'d Report,
    /// What the link or a button left to say.
    pub(crate) notices: &'d [String],
    /// What is wrong with fields.
    pub(crate) complaints: &'d [Complaint],
    /// What was typed.
    pub(crate) bench: &'d Bench,
    /// Writes the part of the address that holds it.
    pub(crate) link: &'d dyn Fn() -> String,
    /// What the board said before.
    pub(crate) was: &'d Was,
    /// Whether the panel with this id is open.
    pub(crate) is_open: &'d dyn Fn(&str) -> bool,
}

/// All fragments, as pairs of element id and content. `link` is the part of the address that holds the bench.
#[must_use]
pub fn fragments(
    report: &Report,
    notices: &[String],
    complaints: &[Complaint],
    bench: &Bench,
    link: &str,
) -> Vec<(String, String)> {
    let (was, link) = (&Was::default(), &|| link.to_owned());
    unfolded(&Written { report, notices, complaints, bench, link, was, is_open: &|_| true }, &|_| true)
}

/// All fragments of what is open, in sections that are in sight.
#[must_use]
pub(crate) fn unfolded(page: &Written<'_>, is_seen: &dyn Fn(&str) -> bool) -> Vec<(String, String)> {
    let &Written { report, notices, complaints, bench, .. } = page;
    let _in_force = report.units.enter();
    let named = |(id, html): (&str, Markup)| (id.to_owned(), html.into_string());
    let seen = || questions::all().filter(|question| is_seen(question.id()));
    let above = [
        ("scenario", notices::scenario(report, bench)),
        ("units-chosen", html! { (units::units(report.units)) }),
        ("differences", html! { (differences::between(report, bench)) }),
        ("notices", notices::list(notices)),
    ];
    above
        .into_iter()
        .map(named)
        .chain(board::fragments(report, page.was))
        .chain(seen().flat_map(|question| written(page, question)))
        .chain(seen().filter_map(|question| decided_by::row(report, bench, question)))
        .chain(is_seen("sheet").then(|| sheet(page)).flatten())
        .chain(yours::claims(report))
        .chain(notices::beside_fields(report, complaints))
        .collect()
}

/// The sheet, where it is open.
fn sheet(page: &Written<'_>) -> Option<(String, String)> {
    (page.is_open)(&Folded::Sheet.id("sheet")).then(|| {
        let doubts = notices::doubts(page.report, page.complaints, &|_| true);
        ("sheet-page".to_owned(), sheet::page(page.report, &(page.link)(), &doubts).into_string())
    })
}

/// The fragments of all bikes side by side alone.
pub(crate) fn of_bikes(page: &Written<'_>) -> Vec<(String, String)> {
    written(page, questions::bikes())
}

/// The fragments of the box of parts alone.
pub(crate) fn of_box(page: &Written<'_>) -> Vec<(String, String)> {
    written(page, questions::of_box())
}

/// The text of a section: the answer under what it leaves out, all of it marked where it rests on the demo's values.
fn written(page: &Written<'_>, question: &dyn Asked) -> Vec<(String, String)> {
    let &Written { report, complaints, .. } = page;
    let _in_force = report.units.enter();
    let is_wanted = |fold: Folded| (page.is_open)(&fold.id(question.id()));
    let doubts = notices::doubts(report, complaints, &|field| question.asks(field));
    let written = question.fragments(report, &is_wanted).into_iter().map(|Text { place, id, html }| {
        let html = match place {
            Place::Answer => yours::marked(report, question, &html! { (doubts) (html) }),
            Place::Why => yours::explained(report, question, &html),
            Place::Elsewhere => html,
        };
        (id.to_owned(), html.into_string())
    });
    let said = question.said(report, &is_wanted).into_iter().map(|(id, html)| (id, html.into_string()));
    written.chain(said).collect()
}
