//! What the browser has to tell of files, kept courses and a search, which are in its hands.

use crate::lap::from_scripts::{CourseNote, SearchNote};
use crate::lap::words::notes as words;

impl CourseNote {
    /// In words, of a course of this name.
    #[must_use]
    pub fn said(self, name: &str) -> String {
        words::course(self, name)
    }
}

impl SearchNote {
    /// In words.
    #[must_use]
    pub const fn said(self) -> &'static str {
        words::search(self)
    }
}

/// How far a search is, and for how many seconds it will go on.
#[must_use]
pub fn search_left(tried: usize, total: usize, seconds: f64) -> String {
    words::search_left(tried, total, seconds)
}
