//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::rings::pictures::{ladder, overlap, speeds, steps};
use maud::{Markup, html};

/// What stands between the answer and how it was worked out.
pub(crate) fn body() -> Markup {
    html! {
    (figure(&ladder::LADDER))
    div id="rings-summary" { }
    (figure(&speeds::SPEEDS))
    div data-form="probes" class="probes" { }
    div id="probes-answer" { }
    (figure(&steps::STEPS))
    div id="rings-steps" { }
    (figure(&overlap::OVERLAP))
    div id="rings-overlap" { }
    div id="rings-limit" { }
    div id="rings-gears" { }
        }
}
