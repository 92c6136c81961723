//! What unfolds in a section.

use crate::layout::folded::Folded;

/// On the button that leads into the section's picture.
pub(crate) const READ: &str = "Read the picture";

/// On the button that saves or copies the section's picture.
pub(crate) const SAVE: &str = "Save or copy it";

/// What a row of such buttons is called.
pub(crate) fn more_on(name: &str) -> String {
    format!("More on: {name}")
}

/// What the row of fields that decide a section is called.
pub(crate) fn decided_by(name: &str) -> String {
    format!("What decides: {name}")
}

/// On the button of a fold, and over what it holds.
pub(crate) const fn title(fold: Folded) -> &'static str {
    match fold {
        Folded::Why => "Why, and how sure",
        Folded::Pictures => "More pictures",
        Folded::Numbers => "Numbers",
        Folded::Settings => "Finer settings",
        Folded::Parts => "Parts to put in",
        Folded::Course => "Course",
        Folded::Search => "Search",
        Folded::Working => "How this was worked out",
        Folded::Sheet => "Show the sheet",
    }
}
