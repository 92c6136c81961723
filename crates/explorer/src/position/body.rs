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

/// What stands in the fold that holds more than text.
pub(crate) fn panel(fold: Folded) -> Option<Markup> {
    (fold == Folded::Settings).then(|| html! { div data-form="position" class="fields" {} })
}
