//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use crate::ride::pictures::{climb, slopes, tornado, verdicts};
use crate::ride::words::body as words;
use maud::{Markup, html};

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        (figure(&slopes::SLOPES))
        div class="prose care" { @for caution in words::CAUTIONS { p { (caution) } } }
    }
}

/// What stands in the folds that hold more than text.
pub(crate) fn panel(fold: Folded) -> Option<Markup> {
    Some(match fold {
        Folded::Settings => html! {
            form data-form="ride" class="fields" aria-label=(words::FORM) autocomplete="off" novalidate {}
        },
        Folded::Pictures => html! {
            div data-form="slope-speed" class="probes" {}
            div id="ride-at-speed" {}
            (figure(&verdicts::VERDICTS))
            (figure(&climb::CLIMB))
            (figure(&tornado::TORNADO))
        },
        Folded::Numbers => html! {
            p class="quiet lead" { (words::ESTIMATES) }
            div id="ride-ends" {}
            div id="ride-speeds" {}
            div id="ride-map" {}
            div id="ride-climb" {}
            div id="ride-swings" {}
        },
        Folded::Working => html! {
            div id="ride-working" {}
            p class="quiet" { (words::studied()) }
        },
        _ => return None,
    })
}
