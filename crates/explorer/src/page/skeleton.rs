//! The sections of the page with nothing worked out yet, put into it when it is built.

use crate::page::questions;
use crate::page::words::{sheet, skeleton as words};
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
        (sheet_section())
    }
}

fn sheet_section() -> Markup {
    html! {
            section id="sheet" aria-labelledby="sheet-title" hidden {
                h2 id="sheet-title" { (words::HEAD) }
                div class="body" {
    div class="sheet-acts" {
    div data-form="sheet" class="fields" { }
    button type="button" data-act="print" { (words::PRINT) }
    button type="button" data-act="copy-sheet" { (words::COPY) }
    }
    p class="quiet" id="sheet-copied" role="status" { (words::ABOUT) }
    textarea id="sheet-text" aria-label=(words::AS_TEXT) rows="12" readonly hidden { }
    article id="sheet-page" class="paper" aria-label=(sheet::PAPER) { }
                }
            }
        }
}
