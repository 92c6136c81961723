//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::position::picture::POSITION;
use maud::{Markup, html};

/// What stands between the answer and how it was worked out.
pub(crate) fn body() -> Markup {
    html! {
    div data-form="position" class="fields" { }
    (figure(&POSITION))
    div id="position-tables" { }
        }
}
