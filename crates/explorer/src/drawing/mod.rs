//! What every picture is drawn with.

pub(crate) mod cloud;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
pub mod drawing;
pub mod letters;
pub mod looks;
pub mod palette;
pub mod pen;
pub mod plate;
pub mod scale;
pub mod spot;
