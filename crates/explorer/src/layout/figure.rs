//! Room for a picture, with its caption.

use crate::drawing::drawing::Drawing;
use crate::layout::words::figure as words;
use maud::{Markup, html};

/// The id of the element that holds the statement of what a picture shows.
pub(crate) fn shows_id(name: &str) -> String {
    format!("shows-{name}")
}

/// A picture's place on the page, with what reads and saves it below.
pub(crate) fn figure<S>(drawing: &Drawing<S>) -> Markup {
    figure_holding(drawing, &html! {})
}

/// The same with something more beneath the picture, above what is read in it.
pub(crate) fn figure_holding<S>(drawing: &Drawing<S>, more: &Markup) -> Markup {
    html! {
        figure data-picture=(drawing.name) {
            figcaption {
                strong id=(shows_id(drawing.name)) {}
                b { (drawing.title) } " · " (drawing.caption)
            }
            div class="plot" {}
            (more)
            div class="figure-foot" {
                output class="reading" {}
                button type="button" data-save=(drawing.name) popovertarget="take" aria-label=(words::save_picture(drawing.title)) { (words::SAVE_PICTURE) }
            }
        }
    }
}
