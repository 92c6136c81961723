//! The section’s pictures.

pub mod found;
pub mod gain;
pub mod gear_times;
pub mod profile;

use crate::drawing::drawing::Drawing;
use crate::lap::section::LapSection;

/// The pictures in the order of the page.
pub(crate) static PICTURES: &[Drawing<LapSection>] =
    &[profile::PROFILE.hung(), gain::GAIN.hung(), gear_times::GEAR_TIMES.hung(), found::FOUND.hung()];
