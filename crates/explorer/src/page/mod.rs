//! The sums of the rooms: scenario, report, sections, pictures, and the desk that they lie on.

pub mod acts;
mod bike_row;
pub mod bikes_desk;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod bikes_entry;
pub(crate) mod board;
mod board_poster;
pub mod box_desk;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod box_entry;
#[cfg(test)]
mod choices;
pub mod code;
mod comparing;
mod decided_by;
pub mod desk;
pub mod drawn;
mod empty;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod entry;
pub mod file_desk;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod file_entry;
pub mod form;
pub mod history;
pub mod lap_desk;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod lap_entry;
pub mod message;
pub mod notices;
mod overall;
pub mod pictures;
pub mod poster;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod poster_entry;
mod poster_text;
pub mod prerendered;
pub mod questions;
pub mod rack_desk;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod rack_entry;
pub mod report;
pub(crate) mod reported;
pub mod scenario;
pub mod sections;
mod settle;
pub mod sheet;
#[cfg(not(target_arch = "wasm32"))]
pub mod skeleton;
mod was;
pub(crate) mod words;
pub mod yours;
