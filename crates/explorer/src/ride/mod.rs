//! “Ride or run?”: where going on foot is quicker.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod body;
pub mod form;
pub mod ground_row;
pub mod inputs;
mod marks;
mod on_climb;
pub mod other_gear;
pub mod pictures;
mod probe;
pub mod question;
pub mod report;
pub mod section;
pub mod side;
pub mod spun_out;
pub mod swing;
pub mod view;
pub(crate) mod words;
