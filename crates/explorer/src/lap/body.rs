//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::bench::offered::{GROUNDS, OWN_COURSE, SKETCH_COURSE};
use crate::lap::pictures::{found, gain, gear_times, profile};
use crate::lap::words::body as words;
use crate::lap::words::{course, stroke};
use crate::layout::figure::{figure, figure_holding};
use crate::layout::folded::Folded;
use gear_math::Surface;
use gear_math::course::{Demo, GpxError};
use maud::{Markup, html};

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        div id="lap-drop" class="files" {
            p id="lap-loaded" {}
            div id="lap-chooser" role="toolbar" aria-label=(words::CHOOSER) {
                @for (key, name, stop) in [
                    ("meadow", course::demo(Demo::Meadow), "0"),
                    ("sand-pit", course::demo(Demo::SandPit), "-1"),
                    (SKETCH_COURSE, words::SKETCH, "-1"),
                    (OWN_COURSE, words::OWN, "-1"),
                ] {
                    button type="button" data-write={ "course=" (key) } tabindex=(stop) { (name) }
                }
                button type="button" id="lap-open" tabindex="-1" { (words::OPEN_FILE) }
            }
            input type="file" id="lap-file" accept=".gpx,.json" data-largest=(GpxError::LARGEST_BYTES) hidden;
            p id="kept-row" hidden {
                label for="kept" { (words::KEPT) }
                " "
                select id="kept" {}
                " "
                button type="button" id="forget" { (words::FORGET) }
            }
            p id="chosen-says" class="quiet" role="status" {}
            p class="quiet" { (words::FILE_STAYS) }
            div id="lap-course" role="status" {}
        }
        (figure_holding(&profile::PROFILE, &brush()))
    }
}

/// What a stretch that is marked on the picture becomes; there only while one is.
fn brush() -> Markup {
    html! {
        form id="brush" aria-label=(stroke::FORM) autocomplete="off" novalidate hidden {
            span { label for="brush-from" { (stroke::FROM) } input id="brush-from" inputmode="decimal" size="5"; "m" }
            span { label for="brush-to" { (stroke::TO) } input id="brush-to" inputmode="decimal" size="5"; "m" }
            span {
                label for="brush-coat" { (stroke::BECOMES) }
                select id="brush-coat" {
                    @for (surface, (_, name)) in Surface::ALL.iter().zip(GROUNDS) { option value=(surface.name()) { (name) } }
                    @for [cell, name, number, unit, usual] in stroke::OTHERS {
                        option value=(cell) data-number=(number) data-unit=(unit) data-usual=(usual) { (name) }
                    }
                    option value="" { (stroke::AS_BEFORE) }
                }
            }
            span id="brush-more" hidden {
                label for="brush-number" {}
                input id="brush-number" inputmode="decimal" size="4";
                span {}
            }
            span {
                button type="submit" { (stroke::PAINT) }
                button type="button" data-act="undo" disabled { (stroke::UNDO) }
                button type="button" id="brush-done" { (stroke::DONE) }
            }
            p id="brush-says" role="status" {}
        }
    }
}

/// What stands in the folds that hold more than text.
pub(crate) fn panel(fold: Folded) -> Option<Markup> {
    Some(match fold {
        Folded::Course => html! {
            form data-form="lap" class="room" aria-label=(words::FORM) autocomplete="off" novalidate {}
            div class="files" {
                p {
                    label for="keep-name" { (words::KEEP_AS) }
                    " "
                    input id="keep-name" type="text" maxlength="60";
                    button type="button" id="keep" { (words::KEEP) }
                    " "
                    button type="button" id="save-course" { (words::SAVE) }
                    " "
                    button type="button" data-act="sketch-it" { (words::SKETCH_IT) }
                }
                p id="kept-says" class="quiet" role="status" {}
                p class="quiet" { (words::travels()) }
            }
        },
        Folded::Pictures => html! {
            (figure(&gain::GAIN))
            (figure(&gear_times::GEAR_TIMES))
        },
        Folded::Search => html! {
            h3 id="search" { (words::SEARCH) }
            p class="quiet lead" { (words::TRIES) }
            div data-form="search" class="room trio" {}
            div class="seek" {
                button type="button" id="search-start" { (words::START) }
                button type="button" id="search-stop" aria-disabled="true" { (words::STOP) }
                progress id="search-bar" aria-labelledby="search" value="0" hidden {}
                span id="search-left" class="quiet" {}
            }
            div id="lap-found" {}
            (figure(&found::FOUND))
        },
        _ => return None,
    })
}
