//! The section’s pictures.

pub mod gear_looks;
pub mod ladder;
pub mod overlap;
pub mod speeds;
pub mod steps;

use crate::drawing::drawing::Drawing;
use crate::rings::section::RingsSection;

/// The pictures in the order of the page.
pub(crate) static PICTURES: &[Drawing<RingsSection>] =
    &[ladder::LADDER.hung(), speeds::SPEEDS.hung(), steps::STEPS.hung(), overlap::OVERLAP.hung()];
