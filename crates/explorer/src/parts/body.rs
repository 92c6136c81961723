//! What of the section never changes: the box, its buttons and room for what is found.

use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use crate::parts::picture::RIDDEN;
use crate::parts::words::body as words;
use maud::{Markup, html};

/// How much a kept course may count beside the one that is ridden.
const WEIGHTS: [&str; 6] = ["0.25", "0.5", "1", "2", "3", "5"];

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        div data-form="box" class="room" {}
        div class="seek" {
            progress id="box-bar" aria-label=(words::TITLE) value="0" hidden {}
            span id="box-left" class="quiet" {}
        }
        p.quiet id="box-mechanic" {}
        (figure(&RIDDEN))
    }
}

/// What begins and ends the riding.
pub(crate) fn acts() -> Markup {
    html! {
        button type="button" id="box-start" { (words::START) }
        button type="button" id="box-stop" tabindex="-1" hidden { (words::STOP) }
    }
}

/// What stands in the folds that hold more than text.
pub(crate) fn panel(fold: Folded) -> Option<Markup> {
    Some(match fold {
        Folded::Numbers => html! {
            div id="box-table" {}
            p { button type="button" id="save-box" { (words::SAVE) } }
        },
        Folded::Parts => html! {
            div data-form="box-finer" class="measures" {}
            div id="box-courses" hidden {
                p { (words::COURSES) }
                template { (course()) }
            }
            div id="box-put" class="files" {}
        },
        _ => return None,
    })
}

/// A kept course that counts beside the one that is ridden.
fn course() -> Markup {
    html! {
        p {
            label { input type="checkbox"; " " span {} }
            " "
            label { (words::WEIGHT) " " select { @for weight in WEIGHTS { option selected[weight == "1"] { (weight) } } } }
        }
    }
}
