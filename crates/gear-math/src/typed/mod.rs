//! Numbers as people type them: with a unit, a comma too few, a slope as a ratio.

mod decimal;
mod meant;
mod unit;

pub use decimal::decimal;
pub use meant::meant;
pub use unit::{decimal_in, slope_percent};
