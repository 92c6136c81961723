//! A course sketched by hand as a small table of text.

use crate::course::course::{Course, CourseError};
use crate::course::patch::Coat;
use crate::course::quantity::{CornerSpeed, ObstacleTime, StretchLength};
use crate::course::segment::Segment;
use crate::decimal::decimal;
use crate::rider::{Gradient, Surface};
use core::fmt::{self, Write as _};
use core::str::FromStr;

/// Most lines looked at.
const MOST_LINES: usize = 2 * Course::MOST_SEGMENTS;
/// Kilometres per hour in a metre per second.
const KM_PER_H: f64 = 3.6;
/// Speeds are written to a millionth, so that a factor leaves no tail of digits.
const MILLIONTHS: f64 = 1e6;

impl FromStr for Course {
    type Err = SketchError;

    /// Reads one stretch per line: length in metres; gradient in per cent; ground; and, where they apply, `foot`
    /// with the seconds an obstacle costs and `corner` with its speed in km/h.
    ///
    /// Cells are separated by `;`, `|` or a tab. Empty lines and what follows a `#` are skipped, units may be written or
    /// not, and a decimal comma is as good as a point.
    ///
    /// # Errors
    /// - [`SketchError::Line`] with the number of the line and what is wrong with it.
    /// - [`SketchError::Course`] when the stretches together are no course.
    ///
    /// # Example
    /// ```
    /// use gear_math::Course;
    /// let course: Course = "
    ///     ## length; gradient; ground; what else
    ///     120; 1.5; firm grass
    ///     1; 0; firm grass; foot 0.6
    ///     40 m | -3 % | mud | corner 14
    /// ".parse()?;
    /// assert_eq!(course.length_m(), 161.0);
    /// assert!("120; steep; mud".parse::<Course>().is_err());
    /// # Ok::<(), gear_math::course::SketchError>(())
    /// ```
    fn from_str(text: &str) -> Result<Self, SketchError> {
        let mut segments = Vec::new();
        for (index, line) in text.lines().enumerate().take(MOST_LINES) {
            let line = line.split('#').next().unwrap_or_default().trim();
            if !line.is_empty() {
                let segment = stretch(line).map_err(|fault| SketchError::Line { line: index + 1, fault })?;
                segments.push(segment);
            }
        }
        Self::new(segments).map_err(SketchError::Course)
    }
}

impl Course {
    /// The course as a table that [`str::parse`] reads again.
    #[must_use]
    pub fn sketch(&self) -> String {
        let mut text = String::new();
        for segment in self.segments() {
            let (length, percent) = (segment.length.m(), segment.gradient.percent());
            let _ = write!(text, "{length}; {percent}; {}", segment.surface.name());
            if let Some(obstacle) = segment.obstacle {
                let _ = write!(text, "; foot {}", obstacle.time.s());
            }
            if let Some(corner) = segment.corner {
                let _ = write!(
                    text,
                    "; corner {}",
                    (MILLIONTHS * corner.m_per_s() * KM_PER_H).round() / MILLIONTHS
                );
            }
            text.push('\n');
        }
        text
    }
}

/// Why a table does not make a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum SketchError {
    /// A line cannot be read.
    Line {
        /// Line, counted from 1.
        line: usize,
        /// What is wrong with it.
        fault: SketchFault,
    },
    /// The stretches together are no course.
    Course(CourseError),
}

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
    /// A cell after the ground is neither an obstacle nor a corner.
    Extra,
}

impl fmt::Display for SketchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line { line, fault } => write!(f, "line {line}: {fault}"),
            Self::Course(error) => error.fmt(f),
        }
    }
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
            Self::Extra => f.write_str(
                "after the ground only \u{201c}foot\u{201d} and \u{201c}corner\u{201d} may follow",
            ),
        }
    }
}

impl core::error::Error for SketchError {}

fn stretch(line: &str) -> Result<Segment, SketchFault> {
    let mut cells = line.split([';', '|', '\t']).map(str::trim);
    let length = cells.next().and_then(|cell| number(cell, "m")).and_then(|m| StretchLength::new(m).ok());
    let gradient = cells.next().and_then(|cell| number(cell, "%")).and_then(|p| Gradient::new(p).ok());
    let surface = cells.next().and_then(Surface::named);
    let mut segment = Segment::open(
        length.ok_or(SketchFault::Length)?,
        gradient.ok_or(SketchFault::Gradient)?,
        surface.ok_or(SketchFault::Ground)?,
    );
    for cell in cells.filter(|cell| !cell.is_empty()) {
        extra(cell)?.lay(&mut segment, 1.0);
    }
    Ok(segment)
}

/// An obstacle or a corner as it stands in a cell.
pub(super) fn extra(cell: &str) -> Result<Coat, SketchFault> {
    let cell = cell.to_ascii_lowercase();
    if let Some(time) = cell.strip_prefix("foot") {
        let seconds = if time.trim().is_empty() { Some(0.0) } else { number(time, "s") };
        let time = seconds.and_then(|s| ObstacleTime::new(s).ok()).ok_or(SketchFault::Obstacle)?;
        Ok(Coat::Obstacle(time))
    } else if let Some(speed) = cell.strip_prefix("corner") {
        let speed = number(speed, "km/h").and_then(|speed| CornerSpeed::new(speed / KM_PER_H).ok());
        speed.map(Coat::Corner).ok_or(SketchFault::Corner)
    } else {
        Err(SketchFault::Extra)
    }
}

pub(super) fn number(text: &str, unit: &str) -> Option<f64> {
    let text = text.trim();
    let bare = text.strip_suffix(unit).unwrap_or(text);
    decimal(&bare.trim().replace(',', ".").replace('\u{2212}', "-"))
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
    use crate::course::demo::Demo;

    #[test]
    fn a_sketch_is_read_again() {
        for demo in Demo::ALL {
            let course = demo.course();
            let again: Course = course.sketch().parse().unwrap();
            assert_eq!(again.segments().len(), course.segments().len());
            assert!((again.length_m() - course.length_m()).abs() < 1e-9);
        }
    }

    #[test]
    fn each_fault_is_told_apart() {
        let cases = [
            ("wide; 0; mud", SketchFault::Length),
            ("10; 0.5.1; mud", SketchFault::Gradient),
            ("10; 60; mud", SketchFault::Gradient),
            ("10; 0; lava", SketchFault::Ground),
            ("10; 0", SketchFault::Ground),
            ("10; 0; mud; foot long", SketchFault::Obstacle),
            ("10; 0; mud; corner", SketchFault::Corner),
            ("10; 0; mud; puddle", SketchFault::Extra),
        ];
        for (text, fault) in cases {
            let error = format!("# a course\n{text}").parse::<Course>().unwrap_err();
            assert_eq!(error, SketchError::Line { line: 2, fault }, "{text}");
        }
        assert_eq!("".parse::<Course>(), Err(SketchError::Course(CourseError::Empty)));
    }

    #[test]
    fn a_lap_has_its_least_length() {
        let course = |text: &str| text.parse::<Course>().unwrap();
        assert_eq!(course("49.9; 0; mud").as_lap(), Err(CourseError::TooShort));
        assert!(course("50; 0; mud").as_lap().is_ok());
    }

    #[test]
    fn a_remark_may_stand_behind_a_stretch() {
        let course: Course =
            "# all of it\n120; 1; mud # the long drag\n60; 0; tarmac; corner 15 #; foot".parse().unwrap();
        assert_eq!(course.sketch(), "120; 1; mud\n60; 0; tarmac; corner 15\n");
    }

    #[test]
    fn grounds_go_by_longer_names_too() {
        for (name, surface) in [
            ("Wet, soft grass", Surface::WetSoftGrass),
            ("deep, sticky mud", Surface::DeepMud),
            ("wet,packed-sand", Surface::WetPackedSand),
            ("loose, dry sand", Surface::LooseSand),
        ] {
            assert_eq!(Surface::named(name), Some(surface), "{name}");
        }
        assert_eq!(["sticky", "dry mud", ""].map(Surface::named), [None; 3]);
    }

    #[test]
    fn a_decimal_comma_and_a_true_minus_are_read() {
        let course: Course = "12,5 m\t\u{2212}3,5 %\tFirm-Grass".parse().unwrap();
        assert_eq!((course.segments()[0].length.m(), course.segments()[0].gradient.percent()), (12.5, -3.5));
    }
}
