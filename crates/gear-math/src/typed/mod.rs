//! Numbers as people type them: with a unit, a comma too few, a slope as a ratio.
//!
//! # Example
//! ```
//! use gear_math::typed::decimal_in;
//! assert_eq!(decimal_in("72.8 cm", "mm"), Some(728.0));
//! ```

mod decimal;
mod meant;
mod told;
mod unit;

pub use decimal::decimal;
pub use meant::meant;
pub use told::Unit;
pub use unit::{decimal_in, slope_percent};
