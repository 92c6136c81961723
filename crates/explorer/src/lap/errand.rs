//! What a worker does for the lap: it rides the plans of A and B, and then its share of the draws.

use crate::lap::drawn::Drawn;
use crate::lap::report::{FINENESS, LapQuestion};
use crate::side::Side;
use gear_math::Course;
use gear_math::course::{Draws, LapDraw, ReservePlan, ReserveSetup};

/// A lap that is to be ridden on a reserve.
#[derive(Debug, Clone)]
pub struct Errand {
    course: Course,
    setups: [ReserveSetup; 2],
}

impl Errand {
    /// The errand of a question, round a course of these rows, whatever course the bench names: a link does not carry one from a
    /// file. None where the lap is ridden at an even power.
    #[must_use]
    pub fn of(question: &LapQuestion, rows: &str) -> Option<Self> {
        let setups = question.on_reserve()?;
        Some(Self { course: rows.parse().ok()?, setups })
    }

    /// The plan of one side, as numbers.
    #[must_use]
    pub fn plan(&self, side: Side) -> Vec<f64> {
        ReservePlan::of(&self.course, &self.setups[side as usize], FINENESS).numbers()
    }

    /// Time of one side's lap, in seconds.
    #[must_use]
    pub fn lap_s(&self, side: Side) -> Option<f64> {
        let setup = &self.setups[side as usize];
        Some(ReservePlan::of(&self.course, setup, FINENESS).lap(&self.course, setup, FINENESS)?.time_s)
    }

    /// Time of A's lap by itself in the draw of this number, in seconds.
    #[must_use]
    pub fn drawn_s(&self, number: usize) -> f64 {
        LapDraw::alone_s(&self.course, &self.setups[0], &Draws::usual().draw(number))
    }

    /// The draw of this number, as numbers.
    #[must_use]
    pub fn draw(&self, number: usize) -> Vec<f64> {
        Drawn::of(&self.course, &self.setups, number).numbers()
    }
}
