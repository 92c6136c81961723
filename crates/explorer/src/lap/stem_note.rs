//! Where to dismount and remount, and what to heed before riding there, before it is put in words.

use crate::lap::report::LapReport;
use crate::number::plain;
use gear_math::course::PlanPart;
use gear_math::{Lap, Surface};

/// Where a part on foot lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FootPart {
    /// At one metre.
    Spot,
    /// From the line on.
    FromLine,
    /// Up to the line.
    ToLine,
    /// On both sides of the line.
    AcrossLine,
    /// Within the lap.
    Within,
}

impl FootPart {
    /// Where this part lies, on a lap of this length.
    #[must_use]
    pub fn of(part: &PlanPart, length_m: f64) -> Self {
        match (part.from_m, part.to_m) {
            (from, to) if plain(from, 0) == plain(to, 0) => Self::Spot,
            (from, _) if from <= 0.0 => Self::FromLine,
            (_, to) if to > length_m - 0.01 => Self::ToLine,
            (from, to) if to < from => Self::AcrossLine,
            _ => Self::Within,
        }
    }
}

/// Places to dismount and remount, to the metre.
#[must_use]
pub fn to_the_metre(lap: &Lap) -> Vec<(i64, i64)> {
    lap.dismounts().iter().map(|part| (part.from_m.round() as i64, part.to_m.round() as i64)).collect()
}

impl LapReport {
    /// The ground of most of a part on foot, and its gradient in per cent, so that it is found again. Of one on both sides of
    /// the line that is the longer side.
    #[must_use]
    pub fn looks_of(&self, part: &PlanPart) -> (Surface, f64) {
        let (from, to) = match (part.from_m, part.to_m) {
            (from, to) if from <= to => (from, to),
            (from, to) if to > self.length_m() - from => (0.0, to),
            (from, _) => (from, self.length_m()),
        };
        let (surface, gradient) = self.question.course.mostly(from, to);
        (surface, gradient.percent())
    }

    /// The gradient of the steepest descent in per cent; none where the course has no descent.
    #[must_use]
    pub fn steepest_descent(&self) -> Option<f64> {
        let segments = self.question.course.segments().iter();
        let steepest = segments.map(|segment| segment.gradient.percent()).fold(0.0, f64::min);
        (steepest < 0.0).then_some(steepest)
    }

    /// Grounds of the course that may not give the grip which braking into bends takes.
    #[must_use]
    pub fn slippery_grounds(&self) -> Vec<Surface> {
        let needed = self.question.setups[0].mounting.braking.friction_needed();
        let segments = self.question.course.segments();
        Surface::ALL
            .into_iter()
            .filter(|it| it.friction().low.mu() < needed && segments.iter().any(|at| at.surface == *it))
            .collect()
    }
}
