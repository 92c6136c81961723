//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::ride::pictures::{climb, slopes, tornado, verdicts};
use crate::ride::words::body as words;
use maud::{Markup, html};

/// What stands between the answer and how it was worked out.
pub(crate) fn body() -> Markup {
    html! {
    form data-form="ride" class="fields" aria-label=(words::FORM) autocomplete="off" novalidate { }
    (figure(&slopes::SLOPES))
    div data-form="slope-speed" class="probes" { }
    div id="ride-at-speed" { }
    p class="quiet lead" { (words::ESTIMATES) }
    div id="ride-ends" { }
    div id="ride-speeds" { }
    (figure(&verdicts::VERDICTS))
    div id="ride-map" { }
    (figure(&climb::CLIMB))
    div id="ride-climb" { }
    (figure(&tornado::TORNADO))
    div id="ride-swings" { }
    div class="prose care" { @for caution in words::CAUTIONS { p { (caution) } } p { (words::studied()) } }
        }
}
