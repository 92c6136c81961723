//! What the page’s scripts hand over by number, because only they know it of the browser.
#![allow(
    clippy::float_cmp,
    reason = "the bindings compare the number that JavaScript hands over for a variant"
)]

#[cfg(all(feature = "page", target_arch = "wasm32"))]
use wasm_bindgen::prelude::wasm_bindgen;

/// What became of a course that was to be kept or saved.
#[cfg_attr(all(feature = "page", target_arch = "wasm32"), wasm_bindgen)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CourseNote {
    /// There is none to ride.
    None,
    /// It was saved under this name.
    Saved,
    /// It is kept under this name.
    Kept,
    /// What is painted over it is part of what was kept or saved.
    Painted,
    /// Another one is kept under this name.
    OfAnother,
    /// The one of this name is no longer kept.
    Lost,
    /// The one of this name is forgotten.
    Forgotten,
    /// The browser keeps nothing.
    Forbidden,
    /// The file of this name is being read.
    Reading,
}

/// Why a file or a kept course is not taken.
#[cfg_attr(all(feature = "page", target_arch = "wasm32"), wasm_bindgen)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileFault {
    /// It is larger than any lap.
    TooLarge,
    /// The browser cannot read it.
    Unreadable,
    /// It is no course at all.
    Foreign,
    /// It is JSON, but none of our courses, or of a later version.
    OtherVersion,
}

/// How it stands with a search.
#[cfg_attr(all(feature = "page", target_arch = "wasm32"), wasm_bindgen)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SearchNote {
    /// Fields that could not be understood come first.
    FieldsWrong,
    /// There is no course to ride.
    NoCourse,
    /// The best by a first look are planned in full.
    PlanningBest,
    /// The best are ridden once more.
    RidingBest,
    /// The browser has no workers to give.
    NoWorkers,
    /// The lap cannot be worked out.
    NoLap,
}
