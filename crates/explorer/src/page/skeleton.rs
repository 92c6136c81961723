//! The sections of the page with nothing worked out yet, put into it when it is built.

use crate::page::questions;
use maud::{Markup, html};

/// The entries of the navigation between the set-ups and the sheet.
#[must_use]
pub fn navigation() -> Markup {
    html! { @for question in questions::all() { a href={ "#" (question.id()) } { (question.name()) } } }
}

/// All sections, the sheet last.
#[must_use]
pub fn sections() -> Markup {
    html! {
        @for question in questions::all() { (question.skeleton()) }
        (sheet())
    }
}

fn sheet() -> Markup {
    html! {
            section id="sheet" aria-labelledby="sheet-title" hidden {
                h2 id="sheet-title" { "The workshop sheet" }
                div class="body" {
    div class="sheet-acts" {
    div data-form="sheet" class="fields" { }
    button type="button" data-act="print" { "Print the sheet" }
    button type="button" data-act="copy-sheet" { "Copy it as text" }
    }
    p class="quiet" id="sheet-copied" role="status" { "Everything decided above on one page; the browser’s own printing prints the same." }
    textarea id="sheet-text" aria-label="The workshop sheet as text" rows="12" readonly hidden { }
    article id="sheet-page" class="paper" aria-label="Workshop sheet" { }
                }
            }
        }
}
