//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use crate::position::picture::POSITION;
use maud::{Markup, html};

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        (figure(&POSITION))
    }
}

/// What stands in each fold.
pub(crate) fn panel(fold: Folded) -> Markup {
    match fold {
        Folded::Why => html! { div id="position-why" class="answer why" {} },
        Folded::Settings => html! {
            div data-form="position" class="fields" {}
        },
        Folded::Numbers => html! {
            div id="position-tables" {}
        },
        Folded::Working => html! {
            div id="position-working" {}
        },
        _ => html! {},
    }
}
