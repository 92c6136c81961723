//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use crate::tyre::picture::CROSS_SECTION;
use maud::{Markup, html};

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        (figure(&CROSS_SECTION))
    }
}

/// What stands in each fold.
pub(crate) fn panel(fold: Folded) -> Markup {
    match fold {
        Folded::Why => html! { div id="tyre-why" class="answer why" {} },
        Folded::Settings => html! {
            div data-form="tyre" class="fields" {}
        },
        Folded::Numbers => html! {
            div id="tyre-tables" {}
        },
        Folded::Working => html! {
            div id="tyre-working" {}
        },
        _ => html! {},
    }
}
