//! The buttons and panels of what unfolds in place, as the page is put together.

use crate::layout::folded::Folded;
use crate::layout::words::fold as words;
use maud::{Markup, html};

/// The buttons that unfold panels, in a row that is one stop of the Tab key, after one that reads the section's picture.
pub(crate) fn bar(section: &str, name: &str, picture: Option<&str>, folds: &[Folded]) -> Markup {
    html! {
        div class="folds" role="toolbar" aria-label=(words::more_on(name)) {
            @if let Some(picture) = picture {
                button type="button" data-read=(picture) { (words::READ) }
            }
            @for (place, fold) in folds.iter().enumerate() {
                button type="button" data-unfolds=(fold.id(section)) aria-controls=(fold.id(section)) aria-expanded="false"
                    tabindex=[(place > 0 || picture.is_some()).then_some("-1")] { (words::title(*fold)) }
            }
            @if let Some(picture) = picture {
                button type="button" data-save=(picture) tabindex="-1" { (words::SAVE) }
            }
        }
    }
}

/// A panel that is folded away; a browser that can finds text in it.
pub(crate) fn panel(section: &str, fold: Folded, body: &Markup) -> Markup {
    html! {
        div id=(fold.id(section)) class={ "panel" @if fold == Folded::Working { " note" } } data-panel hidden="until-found" {
            h3 { (words::title(fold)) }
            (body)
        }
    }
}
