//! Whole bikes kept under names, on the page, in the browser and as a file.

pub mod behind;
pub mod bench_laps;
#[cfg(not(target_arch = "wasm32"))]
pub mod body;
pub mod column;
pub mod compared;
pub mod csv;
pub mod file;
mod picture;
pub(crate) mod question;

pub mod from_scripts;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
pub mod rack;
pub mod room;
pub mod row;
pub mod said;
pub mod section;
pub mod summary;
mod table;
pub mod view;
pub(crate) mod words;
