//! Room for a picture, with its caption.

use crate::drawing::drawing::Drawing;
use maud::{Markup, html};

/// A picture's place on the page.
pub(crate) fn figure<S>(drawing: &Drawing<S>) -> Markup {
    html! {
        figure data-picture=(drawing.name) {
            figcaption { b { (drawing.title) } " " (drawing.caption) }
            div class="plot" {}
        }
    }
}
