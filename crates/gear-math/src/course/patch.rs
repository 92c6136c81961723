//! What is laid over a part of a course.

use crate::course::cell::number;
use crate::course::coat::Coat;
use crate::course::quantity::StretchLength;
use crate::rider::Surface;
use core::fmt;
use core::str::FromStr;

/// A coat, and the part of a course that it covers.
///
/// Read from text as metres from the line where it begins and ends, then a ground, `foot` with the seconds an obstacle
/// costs or `none` for no obstacle, `corner` with its speed in km/h, or `heading` with the way it leads, in cells as those of a sketched course.
///
/// # Example
/// ```
/// use gear_math::{Course, Surface};
/// use gear_math::course::{Coat, Patch};
/// let patch: Patch = "310 m; 355 m; deep mud".parse()?;
/// assert_eq!((patch.from_m, patch.coat), (310.0, Coat::Ground(Surface::DeepMud)));
/// let course: Course = "900; 0; firm grass".parse()?;
/// assert_eq!(course.patched(&patch)?.segments().len(), 3);
/// assert!("355; 310; mud".parse::<Patch>().is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// From here, in metres from the line.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
    /// What it brings.
    pub coat: Coat,
}

impl Patch {
    /// What is left of it before and behind a part of the course, without what is shorter than a stretch may be. Of an
    /// obstacle's time each piece keeps its share.
    ///
    /// # Example
    /// ```
    /// use gear_math::course::Patch;
    /// let steps: Patch = "100; 150; foot 10".parse()?;
    /// let left: Vec<String> = steps.outside(120.0, 140.0).map(|piece| piece.to_string()).collect();
    /// assert_eq!(left, ["100; 120; foot 4", "140; 150; foot 2"]);
    /// # Ok::<(), gear_math::course::PatchError>(())
    /// ```
    pub fn outside(&self, from_m: f64, to_m: f64) -> impl Iterator<Item = Self> {
        let whole = *self;
        let ends = [(whole.from_m, whole.to_m.min(from_m)), (whole.from_m.max(to_m), whole.to_m)];
        let long_enough = |(from, to): &(f64, f64)| to - from >= StretchLength::LIMITS.min;
        ends.into_iter().filter(long_enough).map(move |(from_m, to_m)| {
            let share = (to_m - from_m) / (whole.to_m - whole.from_m);
            Self { from_m, to_m, coat: whole.coat.shared(share) }
        })
    }

    /// Whether a part of the course lies under it.
    #[must_use]
    pub fn meets(&self, from_m: f64, to_m: f64) -> bool {
        self.from_m < to_m && from_m < self.to_m
    }
}

impl fmt::Display for Patch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}; {}", self.from_m, self.to_m, self.coat)
    }
}

impl FromStr for Patch {
    type Err = PatchError;

    fn from_str(text: &str) -> Result<Self, PatchError> {
        read(text).filter(|patch| 0.0 <= patch.from_m && patch.from_m < patch.to_m).ok_or(PatchError)
    }
}

fn read(text: &str) -> Option<Patch> {
    let mut cells = text.split([';', '|', '\t']).map(str::trim);
    let mut metres = || cells.next().and_then(|cell| number(cell, "m")).filter(|metres| metres.is_finite());
    let (from_m, to_m) = (metres()?, metres()?);
    let coat = cells.next()?.parse().ok()?;
    cells.next().is_none().then_some(Patch { from_m, to_m, coat })
}

/// Text is no [`Patch`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PatchError;

impl fmt::Display for PatchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let names = Surface::ALL.map(Surface::name).join(", ");
        write!(
            f,
            "type from m; to m; and \u{201c}foot 2\u{201d}, \u{201c}corner 15\u{201d}, \u{201c}heading 90\u{201d} or a ground: {names}"
        )
    }
}

impl core::error::Error for PatchError {}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::quantity::{CornerSpeed, ObstacleTime};

    #[test]
    fn what_may_be_laid_is_read_and_the_rest_refused() {
        let read = |text: &str| text.parse::<Patch>().ok();
        let mud = Some(Patch { from_m: 310.0, to_m: 355.0, coat: Coat::Ground(Surface::DeepMud) });
        for line in ["310; 355; deep mud", "310 m|355 m|Deep-Mud", "310;355;deep, sticky mud"] {
            assert_eq!(read(line), mud, "{line}");
        }
        let obstacle = Coat::Obstacle(Some(ObstacleTime::new(2.0).unwrap()));
        let corner = Coat::Corner(CornerSpeed::new(4.0).unwrap());
        for (line, coat) in [
            ("4; 5,5; foot 2 s", obstacle),
            ("4;5.5;FOOT 2", obstacle),
            ("4; 5.5; corner 14.4", corner),
            ("4; 5.5; Corner 14,4 km/h", corner),
        ] {
            assert_eq!(read(line), Some(Patch { from_m: 4.0, to_m: 5.5, coat }), "{line}");
        }
        for line in ["310; 355; deep mud", "4; 5.5; foot 2", "4; 5.5; corner 14.4", "4.25; 5.5; heading 90"] {
            assert_eq!(read(line).map(|patch| patch.to_string()).as_deref(), Some(line), "as it is written");
        }
        for line in [
            "",
            "310",
            "355; 310; mud",
            "-1; 2; mud",
            "1; 2; lava",
            "1; 2; mud; 3",
            "nan; 2; mud",
            "1; inf; mud",
            "1; 2; foot 99",
            "1; 2; corner",
            "1; 2; corner 1",
        ] {
            assert_eq!(read(line), None, "{line}");
        }
        assert!(PatchError.to_string().contains("wet packed sand"));
    }
}
