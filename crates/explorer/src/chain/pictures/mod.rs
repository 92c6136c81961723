//! The section’s pictures.

pub mod capacity;
pub mod drivetrain;
pub mod gear_map;
pub mod side_view;
pub mod wrap;

use crate::chain::section::ChainSection;
use crate::drawing::drawing::Drawing;

/// The pictures in the order of the page.
pub(crate) static PICTURES: &[Drawing<ChainSection>] =
    &[wrap::WRAP.hung(), drivetrain::DRIVETRAIN.hung(), capacity::CAPACITY.hung()];
