//! The page with nothing worked out yet, put together when it is built.

use crate::layout::decision::Standing;
use crate::layout::fold;
use crate::layout::folded::Folded;
use crate::page::words::{board as board_words, sheet, skeleton as words, units};
use crate::page::{board, questions};
use crate::side::Side;
use crate::units::Units;
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

/// The way past the bikes for the keyboard, and the head with its navigation, in which every decision has its signs.
#[must_use]
pub fn masthead() -> Markup {
    html! {
        a class="skip" href="#rings" { (words::SKIP) }
        header class="masthead" {
            h1 { "Remount" }
            p { (words::TAGLINE) }
            p id="newer" role="status" data-says=(words::NEWER) {}
        }
        div class="strip" {
            p id="board-change" {}
            nav aria-label=(words::SECTIONS) data-roving {
                a href="#bench" { (words::SETUPS) }
                @for question in questions::all() {
                    a.decides[question.decides()] href={ "#" (question.id()) } tabindex="-1" {
                        (question.name())
                        span id=(board::marks_id(question.id())) class="marks" {}
                    }
                }
                a href="#sheet" tabindex="-1" { (words::SHEET) }
            }
        }
        p class="unseen" id="board-spoken" role="status" {}
    }
}

/// The first screen: both bikes, every decision, the rider, the bank and the lap.
#[must_use]
pub fn bench() -> Markup {
    html! {
        h2 id="bench-title" class="unseen" { (words::YOUR_SETUPS) }
        div id="notices" role="status" {}
        p id="board-says" class="answer" {}
        div class="ledger" {
            div class="bikes" {
                div class="part heads" aria-hidden="true" {
                    span {}
                    span class="head a" { b { "A" } " " (words::FILLED) }
                    span class="head b" { b { "B" } " " (words::OUTLINED) }
                }
                div class="beside-acts" {
                    form id="bench" data-form="bench" autocomplete="off" novalidate {}
                    div { (acts()) p id="differences" class="quiet" {} }
                }
                (teeth())
                (decisions())
            }
            div class="sides" {
                form data-form="first" aria-label=(words::RIDER_AND_GROUND) autocomplete="off" novalidate {}
                div id="board-settle" {}
                details id="yours" { summary { (words::NOT_YOURS) } div id="scenario" class="scenario" {} div data-form="claims" class="claims" {} }
            }
        }
        details id="more" { summary { (words::MORE) } div data-form="more" class="groups" {} }
        (crate::rack::body::body())
    }
}

/// Buttons that follow the field of rings or sprockets that has the focus.
fn teeth() -> Markup {
    html! {
        div id="teeth" hidden {
            button type="button" tabindex="-1" data-along="-1" aria-label=(words::NUMBER_BEFORE) { "‹" }
            button type="button" tabindex="-1" data-by="-1" aria-label=(words::TOOTH_LESS) { "−" }
            button type="button" tabindex="-1" data-by="1" aria-label=(words::TOOTH_MORE) { "+" }
            button type="button" tabindex="-1" data-along="1" aria-label=(words::NUMBER_AFTER) { "›" }
        }
    }
}

fn acts() -> Markup {
    html! {
        div class="acts" role="toolbar" aria-label=(words::ACTS) {
            button type="button" data-act="copy" { (words::COPY_A_TO_B) }
            button type="button" data-act="swap" tabindex="-1" { (words::SWAP) }
            button type="button" data-act="undo" tabindex="-1" disabled { (words::UNDO) }
            button type="button" data-act="reset" tabindex="-1" { (words::RESET) }
            button type="button" data-act="share" tabindex="-1" { (words::SHARE) }
            button type="button" data-save popovertarget="take" tabindex="-1" { (words::BOARD) }
            button type="button" id="units-chosen" popovertarget="units" tabindex="-1" { (units::units(Units::METRIC)) }
        }
        (choice_of_units())
        p class="quiet" id="shared" role="status" data-copied=(words::SHARED) data-refused=(words::SHARE_BY_HAND) data-file=(words::SHARED_FROM_FILE) data-share=(words::SHARE_BY_SYSTEM) {}
        details id="code" hidden { summary { (words::CODE) } div id="link-code" {} }
    }
}

/// The choice of units: all together, or each by itself.
fn choice_of_units() -> Markup {
    html! {
        div id="units" class="menu" popover {
            p { (words::UNITS) }
            @for (name, words) in [("metric", units::METRIC), ("imperial", units::IMPERIAL)] {
                button type="button" popovertarget="units" popovertargetaction="hide" data-act={ "units:" (name) } { (words) }
            }
            div data-form="units" {}
        }
    }
}

fn decisions() -> Markup {
    html! {
        table class="board" aria-label=(board_words::DECISIONS) {
            (key())
            thead { tr {
                td {}
                th scope="col" { (crate::layout::pieces::name(Side::A)) }
                th scope="col" { (crate::layout::pieces::name(Side::B)) }
                th scope="col" { (board_words::BETWEEN) }
            } }
            tbody { @for question in questions::all() { @if question.decides() { tr id=(board::row_id(question.id())) {} } } }
        }
    }
}

/// What the hatching and the signs stand for.
fn key() -> Markup {
    html! {
        caption class="key quiet" {
            span class="demo" { (board_words::HATCHED) } " " (board_words::HATCHED_IS)
            @for standing in Standing::SIGNED { " · " b { (standing.sign()) } " " (board_words::meaning(standing)) }
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
    let page = html! {
        article id="sheet-page" class="paper" aria-label=(sheet::PAPER) {}
    };
    html! {
        section id="sheet" aria-labelledby="sheet-title" hidden {
            h2 id="sheet-title" { (words::HEAD) }
            div class="body" {
                div class="sheet-acts" role="toolbar" aria-label=(words::HEAD) {
                    div data-form="sheet" class="fields" {}
                    button type="button" data-act="print" { (words::PRINT) }
                    button type="button" data-act="copy-sheet" tabindex="-1" { (words::COPY) }
                    button type="button" data-act="copy-short" tabindex="-1" { (words::COPY_SHORT) }
                    (fold::button("sheet", Folded::Sheet))
                }
                p class="quiet" id="sheet-copied" role="status" data-copied=(words::COPIED) data-refused=(words::COPY_BY_HAND) {
                    (words::ABOUT)
                }
                textarea id="sheet-text" aria-label=(words::AS_TEXT) rows="12" readonly hidden {}
            }
            (fold::panel("sheet", Folded::Sheet, &page))
        }
    }
}

/// The menu in which a picture, or the board, is saved or copied; a browser that copies none has no such entry.
fn menu() -> Markup {
    html! {
        div id="take" class="menu" popover {
            p id="take-what" {}
            div role="menu" aria-labelledby="take-what" data-roving {
                @for (how, told) in words::TAKEN {
                    button type="button" role="menuitem" data-as=(how) tabindex="-1" { (told) }
                }
            }
            p class="quiet" id="taken" role="status" data-copied=(words::PICTURE_COPIED) data-refused=(words::PICTURE_REFUSED) data-lacking=(words::COPIES_NONE) {}
        }
    }
}

/// What the keys do in a picture, and what holds for all numbers.
#[must_use]
pub fn foot() -> Markup {
    html! {
        p class="unseen" id="keys" { (words::KEYS) }
        (menu())
        footer class="quiet" { p { (words::STAYS_HERE) " " (sheet::LIMITS) } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::questions::Text;
    use crate::page::report::Report;

    fn count(page: &str, what: &str) -> usize {
        page.matches(what).count()
    }

    #[test]
    fn what_unfolds_stands_in_one_order_in_every_section() {
        for question in questions::all() {
            let folds = question.folds();
            assert!(folds.is_sorted(), "{}: {folds:?}", question.id());
        }
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
            for Text { id, .. } in question.fragments(&report, &|_| true) {
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
