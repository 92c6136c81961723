//! The page with nothing worked out yet, put together when it is built.

use crate::page::questions;
use crate::page::words::{sheet, skeleton as words};
use maud::{Markup, html};

/// What the page is called, and what search engines are told of it.
#[must_use]
pub fn title() -> Markup {
    html! {
        title { "Remount: " (words::TAGLINE) }
        meta name="description" content=(words::DESCRIPTION);
    }
}

/// Words that the styles put where they mark something.
#[must_use]
pub fn words_of_styles() -> String {
    format!(":root{{--demo-values:\"{}\"}}", words::DEMO_VALUES)
}

/// The way past the bench for the keyboard, and the head with its navigation.
#[must_use]
pub fn masthead() -> Markup {
    html! {
        a class="skip" href="#rings" { (words::SKIP) }
        header class="masthead" {
            h1 { "Remount" }
            p { (words::TAGLINE) }
            nav aria-label=(words::SECTIONS) {
                a href="#bench" { (words::SETUPS) }
                @for question in questions::all() { a href={ "#" (question.id()) } { (question.name()) } }
                a href="#sheet" { (words::SHEET) }
            }
        }
    }
}

/// The bench and its buttons.
#[must_use]
pub fn bench() -> Markup {
    html! {
        h2 id="bench-title" class="unseen" { (words::YOUR_SETUPS) }
        div id="scenario" class="scenario" {}
        p id="differences" class="quiet" {}
        div id="notices" role="status" {}
        form id="bench" data-form="bench" autocomplete="off" novalidate {}
        (crate::rack::body::body())
        div class="acts" {
            button type="button" data-act="swap" { (words::SWAP) }
            button type="button" data-act="copy" { (words::COPY_A_TO_B) }
            button type="button" data-act="undo" disabled { (words::UNDO) }
            button type="button" data-act="reset" { (words::RESET) }
            button type="button" data-act="share" { (words::SHARE) }
        }
        p class="quiet" id="shared" role="status" data-copied=(words::SHARED) data-refused=(words::SHARE_BY_HAND) {
            (words::IN_THE_LINK)
        }
    }
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
                    div data-form="sheet" class="fields" {}
                    button type="button" data-act="print" { (words::PRINT) }
                    button type="button" data-act="copy-sheet" { (words::COPY) }
                }
                p class="quiet" id="sheet-copied" role="status" data-copied=(words::COPIED) data-refused=(words::COPY_BY_HAND) {
                    (words::ABOUT)
                }
                textarea id="sheet-text" aria-label=(words::AS_TEXT) rows="12" readonly hidden {}
                article id="sheet-page" class="paper" aria-label=(sheet::PAPER) {}
            }
        }
    }
}

/// What the keys do in a picture, and what holds for all numbers.
#[must_use]
pub fn foot() -> Markup {
    html! {
        p class="unseen" id="keys" { (words::KEYS) }
        footer class="quiet" { p { (words::STAYS_HERE) " " (sheet::LIMITS) } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::report::Report;

    fn count(page: &str, what: &str) -> usize {
        page.matches(what).count()
    }

    #[test]
    fn every_picture_and_every_text_has_one_place_in_its_section() {
        let report = Report::default();
        for question in questions::all() {
            let section = question.skeleton().into_string();
            for name in question.pictures() {
                assert_eq!(count(&section, &format!("data-picture=\"{name}\"")), 1, "{name}");
                assert_eq!(count(&section, &format!("id=\"shows-{name}\"")), 1, "{name}");
            }
            for (id, _) in question.fragments(&report) {
                assert_eq!(count(&section, &format!("id=\"{id}\"")), 1, "{id}");
            }
            let shown = question.pictures().len();
            assert_eq!(count(&section, "data-picture="), shown, "a picture of {} is no row", question.id());
        }
    }

    #[test]
    fn every_form_that_the_page_has_room_for_is_one() {
        let page = format!("{}{}", bench().into_string(), sections().into_string());
        let names: Vec<&str> =
            page.split("data-form=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        assert!(names.len() > 10, "{names:?}");
        for name in names {
            assert!(crate::page::form::by_name(name).is_some(), "{name}");
        }
    }
}
