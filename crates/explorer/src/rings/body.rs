//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use crate::rings::pictures::{ladder, overlap, speeds, steps};
use maud::{Markup, html};

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        (figure(&ladder::LADDER))
    }
}

/// What stands in each fold.
pub(crate) fn panel(fold: Folded) -> Markup {
    match fold {
        Folded::Why => html! { div id="rings-why" class="answer why" {} },
        Folded::Pictures => html! {
            (figure(&speeds::SPEEDS))
            div data-form="probes" class="probes" {}
            div id="probes-answer" {}
            (figure(&steps::STEPS))
            (figure(&overlap::OVERLAP))
        },
        Folded::Numbers => html! {
            div id="rings-summary" {}
            div id="rings-steps" {}
            div id="rings-overlap" {}
            div id="rings-limit" {}
            div id="rings-gears" {}
        },
        Folded::Settings => html! {
            div data-form="reckoning" class="fields" {}
        },
        Folded::Working => html! {
            div id="rings-working" {}
        },
        _ => html! {},
    }
}
