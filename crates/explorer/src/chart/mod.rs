//! Pictures: each is one file with its height, its drawing and the spots that can be looked at.

mod all;
mod capacity;
mod climb;
mod cross_section;
mod drivetrain;
mod found;
mod gain;
mod gear_map;
mod gear_times;
mod ladder;
mod overlap;
pub mod palette;
mod pen;
mod plate;
mod position;
mod profile;
mod scale;
mod side;
mod side_view;
mod slopes;
mod speeds;
mod spot;
mod steps;
mod tornado;
mod verdicts;
mod wrap;

pub use all::{Picture, Size, as_svg, on_canvas};
pub use spot::{Spot, by_key, nearest};
