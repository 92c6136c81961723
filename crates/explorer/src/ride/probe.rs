//! The slope that belongs to a speed.

use crate::ride::section::RideSection;
use crate::side::Side;
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
        let slope = inputs.question(Side::A).gradient_at(inputs.ground(Side::A), speed);
        if let Some(climb) = slope.and_then(|slope| Climb::new(slope.percent()).ok()) {
            let answers = Side::BOTH.map(|side| inputs.question(side).answer(inputs.ground(side), climb));
            return Self::Holds { slope: climb.into(), answers };
        }
        match report.ride.sides[0].answers.first() {
            Some(level) if speed > level.ride => Self::TooFast,
            _ => Self::TooSlow,
        }
    }
}
