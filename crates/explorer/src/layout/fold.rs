//! What of a section unfolds in place.

use crate::layout::question::Fragment;
#[cfg(not(target_arch = "wasm32"))]
use crate::layout::words::fold as words;
#[cfg(not(target_arch = "wasm32"))]
use maud::{Markup, html};

/// A part of a section that is folded away until it is asked for: what is in it, and its text that changes, which is not
/// written before it is opened.
pub(crate) type Fold<S> = (Folded, &'static [Fragment<S>]);

/// What a fold holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Folded {
    /// What is behind the answer, and how sure it is.
    Why,
    /// Further pictures.
    Pictures,
    /// Tables.
    Numbers,
    /// Fields that few answers need.
    Settings,
    /// Everything about the course of the lap.
    Course,
    /// The search for what would be quicker.
    Search,
    /// How it was worked out.
    Working,
    /// The workshop sheet.
    Sheet,
}

impl Folded {
    const fn name(self) -> &'static str {
        match self {
            Self::Why => "why",
            Self::Pictures => "pictures",
            Self::Numbers => "numbers",
            Self::Settings => "settings",
            Self::Course => "course",
            Self::Search => "search",
            Self::Working => "working",
            Self::Sheet => "sheet",
        }
    }

    /// The id of its panel in a section.
    pub(crate) fn id(self, section: &str) -> String {
        format!("fold-{section}-{}", self.name())
    }
}

/// The buttons that unfold panels, in a row that is one stop of the Tab key, after one that reads the section's picture.
#[cfg(not(target_arch = "wasm32"))]
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
#[cfg(not(target_arch = "wasm32"))]
pub(crate) fn panel(section: &str, fold: Folded, body: &Markup) -> Markup {
    html! {
        div id=(fold.id(section)) class="panel" data-panel hidden="until-found" {
            h3 { (words::title(fold)) }
            (body)
        }
    }
}
