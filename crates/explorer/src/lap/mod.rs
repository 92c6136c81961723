//! “Round the lap”: the course, the laps of A and B, and the search for quicker rings.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod basis;
pub mod body;
pub mod course_fault;
pub mod drawn;
pub mod errand;
pub mod even_errand;
pub mod forced_place;
pub mod form;
pub mod found;
pub mod from_scripts;
pub mod inputs;
pub(crate) mod kept_course;
pub mod notes;
pub mod own_course;
pub mod pictures;
pub mod question;
pub mod refusal;
pub mod report;
pub mod room;
pub mod search;
pub mod section;
pub mod sent_track;
pub mod settled;
pub mod sketched;
pub mod stem_note;
pub mod stroke;
pub mod turning;
pub mod view;
pub(crate) mod words;
