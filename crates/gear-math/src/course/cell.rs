//! A cell of a course as text: a number, an obstacle, a corner, a heading or a ground.

use crate::course::quantity::{ObstacleTime, StretchLength};
use crate::rider::{Compass, Gradient, Surface};
use crate::typed::{decimal_in, slope_percent};
use core::fmt;

/// Kilometres per hour in a metre per second.
pub(super) const KM_PER_H: f64 = 3.6;

/// What is wrong with a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum SketchFault {
    /// The length is missing or out of its limits.
    Length,
    /// The gradient is missing or out of its limits.
    Gradient,
    /// The ground is missing or not one of [`Surface::ALL`].
    Ground,
    /// The time of an obstacle is not a number or out of its limits.
    Obstacle,
    /// The speed of a corner is missing or out of its limits.
    Corner,
    /// A heading is missing or out of its limits.
    Heading,
    /// A cell after the ground is neither an obstacle nor a corner nor a heading.
    Extra,
}

impl fmt::Display for SketchFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Length => write!(f, "begin with a length, {}", StretchLength::LIMITS.range()),
            Self::Gradient => write!(f, "second comes the gradient, {}", Gradient::LIMITS.range()),
            Self::Ground => {
                let names: Vec<_> = Surface::ALL.iter().map(|surface| surface.name()).collect();
                write!(f, "third comes the ground: {}", names.join(", "))
            }
            Self::Obstacle => {
                write!(f, "write an obstacle as \u{201c}foot 2\u{201d}, {}", ObstacleTime::LIMITS.range())
            }
            Self::Corner => f.write_str("write a corner as \u{201c}corner 15\u{201d}, 3 to 90 km/h"),
            Self::Heading => write!(
                f,
                "write which way a stretch leads as \u{201c}heading 90\u{201d} for east, {}",
                Compass::LIMITS.range()
            ),
            Self::Extra => f.write_str(
                "after the ground only \u{201c}foot\u{201d}, \u{201c}corner\u{201d} and \u{201c}heading\u{201d} may follow",
            ),
        }
    }
}

pub(super) fn number(text: &str, unit: &str) -> Option<f64> {
    let text = text.replace(',', ".").replace('\u{2212}', "-");
    if unit == "%" { slope_percent(&text) } else { decimal_in(&text, unit) }
}

impl Surface {
    /// Its name in a sketched course.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Tarmac => "tarmac",
            Self::PackedGravel => "packed gravel",
            Self::FirmGrass => "firm grass",
            Self::WetSoftGrass => "wet soft grass",
            Self::Mud => "mud",
            Self::DeepMud => "deep mud",
            Self::WetPackedSand => "wet packed sand",
            Self::LooseSand => "loose sand",
        }
    }

    /// The surface of that name, in any case, words apart or joined by `-`, `_` or a comma. Deep mud may be called sticky
    /// too, and loose sand dry.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        let name = name.to_ascii_lowercase();
        let words: Vec<&str> = name.split(['-', '_', ',', ' ']).filter(|word| !word.is_empty()).collect();
        let plain = match words.join(" ") {
            it if it == "deep sticky mud" => Self::DeepMud.name().to_owned(),
            it if it == "loose dry sand" => Self::LooseSand.name().to_owned(),
            it => it,
        };
        Self::ALL.into_iter().find(|surface| surface.name() == plain)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_may_have_another_unit_of_its_kind_and_a_decimal_comma() {
        for (text, unit, read) in [
            ("12,5 m", "m", Some(12.5)),
            ("0,2 km", "m", Some(200.0)),
            ("1:8", "%", Some(12.5)),
            ("\u{2212}3 %", "%", Some(-3.0)),
            ("12 kg", "m", None),
        ] {
            assert_eq!(number(text, unit), read, "{text}");
        }
    }
}
