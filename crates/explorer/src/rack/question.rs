//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::bench::rests::is_ridden;
use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use crate::layout::question::{Question, no_acts};
use crate::rack::section::BikesSection;
use crate::rack::words::compared as words;
use crate::rack::{picture, table};
use maud::{Markup, html};

/// “Which of all the bikes?”
pub(crate) const QUESTION: Question<BikesSection> = Question {
    id: "bikes",
    name: words::NAME,
    title: words::TITLE,
    rests_on,
    asks: |field| field.spec().group.on_bench() || rests_on(field),
    decision: |_| None,
    answer: ("bikes-answer", table::answer),
    decided_by: &[],
    marks_itself: false,
    nobodys: |_| None,
    fragments: &[],
    acts: no_acts,
    folds: &[
        (Folded::Why, &[("bikes-why", |_| html! {})]),
        (Folded::Numbers, &[("bikes-table", table::table)]),
        (Folded::Working, &[("bikes-working", table::working)]),
    ],
    block: |_, _| None,
    pictures: &[picture::UPRIGHTS.hung()],
    leads: "uprights",
    body,
    panel,
    forms: &[],
};

fn rests_on(field: Field) -> bool {
    let is_climb = matches!(field, Field::Slope | Field::ClimbLength);
    is_ridden(field)
        || match field.spec().group {
            Group::Ride => !is_climb,
            group => matches!(group, Group::Derailleur | Group::Lap | Group::LapSketch | Group::Tyre),
        }
}

fn body() -> Markup {
    figure(&picture::UPRIGHTS)
}

fn panel(fold: Folded) -> Option<Markup> {
    (fold == Folded::Numbers).then(|| {
        html! {
            div id="bikes-table" {}
            p { button type="button" id="save-bikes" { (words::SAVE) } }
        }
    })
}
