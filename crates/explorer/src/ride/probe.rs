//! The slope that belongs to a speed.

use crate::ride::section::RideSection;
use gear_math::rider::{Answer, Climb, Slope};

/// How far full power holds the speed of the probe.
#[derive(Debug)]
pub(crate) enum AtSpeed {
    /// Up to a slope, with the answers of A and B there.
    Holds { slope: Slope, answers: [Answer; 2] },
    /// Not even on the level.
    TooFast,
    /// It is faster than that all the way to 45 %.
    TooSlow,
}

impl AtSpeed {
    /// Of the speed that the page's reader has chosen.
    pub(crate) fn of(report: &RideSection) -> Self {
        let (inputs, speed) = (&report.ride.inputs, report.rings.probe.uphill);
        let [a, b] = &inputs.questions;
        let slope = a.gradient_at(&inputs.ground, speed);
        if let Some(climb) = slope.and_then(|slope| Climb::new(slope.percent()).ok()) {
            let answers = [a.answer(&inputs.ground, climb), b.answer(&inputs.ground, climb)];
            return Self::Holds { slope: climb.into(), answers };
        }
        match report.ride.sides[0].answers.first() {
            Some(level) if speed > level.ride => Self::TooFast,
            _ => Self::TooSlow,
        }
    }
}
