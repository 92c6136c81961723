//! A course sketched by hand as a small table of text.

use crate::course::cell::{SketchFault, number};
use crate::course::coat::Coat;
use crate::course::coat::extra;
use crate::course::course::{Course, CourseError};
use crate::course::quantity::StretchLength;
use crate::course::segment::Segment;
use crate::rider::{Gradient, Surface};
use core::fmt::{self, Write as _};
use core::str::FromStr;

/// Most lines looked at.
const MOST_LINES: usize = 2 * Course::MOST_SEGMENTS;

impl FromStr for Course {
    type Err = SketchError;

    /// Reads one stretch per line: length in metres; gradient in per cent; ground; and, where they apply, `foot`
    /// with the seconds an obstacle costs, `corner` with its speed in km/h and `heading` with the way it leads in degrees east of
    /// north.
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
            let extras = [
                segment.obstacle.map(|obstacle| Coat::Obstacle(Some(obstacle.time))),
                segment.corner.map(Coat::Corner),
                segment.heading.map(Coat::Heading),
            ];
            for extra in extras.iter().flatten() {
                let _ = write!(text, "; {extra}");
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

impl fmt::Display for SketchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line { line, fault } => write!(f, "line {line}: {fault}"),
            Self::Course(error) => error.fmt(f),
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
            ("10; 0; mud; heading 361", SketchFault::Heading),
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
            "# all of it\n120; 1; mud # the long drag\n60; 0; tarmac; corner 15; heading 90° #; foot"
                .parse()
                .unwrap();
        assert_eq!(course.sketch(), "120; 1; mud\n60; 0; tarmac; corner 15; heading 90\n");
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
