//! What every picture is drawn with.

pub mod looks;
pub mod palette;
pub mod pen;
pub mod plate;
pub mod scale;
pub mod spot;
