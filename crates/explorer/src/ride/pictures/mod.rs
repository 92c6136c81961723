//! The section’s pictures.

pub mod climb;
pub mod slopes;
pub mod tornado;
pub mod verdicts;

use crate::drawing::drawing::Drawing;
use crate::ride::section::RideSection;

/// The pictures in the order of the page.
pub(crate) static PICTURES: &[Drawing<RideSection>] =
    &[slopes::SLOPES.hung(), verdicts::VERDICTS.hung(), climb::CLIMB.hung(), tornado::TORNADO.hung()];
