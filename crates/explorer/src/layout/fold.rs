//! The buttons and panels of what unfolds in place, as the page is put together.

use crate::layout::folded::Folded;
use crate::layout::words::fold as words;
use maud::{Markup, html};

/// The buttons that unfold panels, in a row that is one stop of the Tab key, after others of the section and one that reads its
/// picture.
pub(crate) fn bar(section: &str, name: &str, picture: &str, acts: &Markup, folds: &[Folded]) -> Markup {
    let is_first = acts.0.is_empty();
    html! {
        div class="folds" role="toolbar" aria-label=(words::more_on(name)) {
            (acts)
            button type="button" data-read=(picture) tabindex=[(!is_first).then_some("-1")] { (words::READ) }
            @for fold in folds { (button(section, *fold)) }
            button type="button" data-save=(picture) popovertarget="take" tabindex="-1" { (words::SAVE) }
        }
    }
}

/// A button that unfolds a panel, which is never the first of its row.
pub(crate) fn button(section: &str, fold: Folded) -> Markup {
    html! {
        button type="button" data-unfolds=(fold.id(section)) aria-controls=(fold.id(section)) aria-expanded="false"
            tabindex="-1" { (words::title(fold)) }
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
