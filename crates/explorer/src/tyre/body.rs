//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::tyre::picture::CROSS_SECTION;
use maud::{Markup, html};

/// What stands between the answer and how it was worked out.
pub(crate) fn body() -> Markup {
    html! {
    div data-form="tyre" class="fields" { }
    (figure(&CROSS_SECTION))
    div id="tyre-tables" { }
        }
}
