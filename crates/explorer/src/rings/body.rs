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

/// What stands in the folds that hold more than text.
pub(crate) fn panel(fold: Folded) -> Option<Markup> {
    Some(match fold {
        Folded::Pictures => html! {
            (figure(&speeds::SPEEDS))
            div data-form="probes" class="probes" {}
            div id="probes-answer" {}
            (figure(&steps::STEPS))
            (figure(&overlap::OVERLAP))
        },
        Folded::Settings => html! {
            div data-form="reckoning" class="fields" {}
        },
        _ => return None,
    })
}
