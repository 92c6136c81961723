//! What a worker does for a lap at an even power: it rides both bikes until their times have settled.

use crate::lap::report::LapQuestion;
use gear_math::course::{LapComparison, LapSettling};
use gear_math::{Course, LapSetup};

/// A lap that is to be ridden at an even power, ride by ride.
#[derive(Debug)]
pub struct EvenErrand {
    course: Course,
    setups: [LapSetup; 2],
    settling: LapSettling,
}

impl EvenErrand {
    /// The errand of a question, round a course of these rows; none where the lap is ridden on a reserve.
    #[must_use]
    pub fn of(question: &LapQuestion, rows: &str) -> Option<Self> {
        if question.on_reserve().is_some() {
            return None;
        }
        let (course, setups): (Course, _) = (rows.parse().ok()?, question.setups);
        Some(Self { settling: LapSettling::new(course.clone(), setups), course, setups })
    }

    /// Rides once more; whether there may be more to ride.
    pub fn go_on(&mut self) -> bool {
        self.settling.go_on().unwrap_or(false)
    }

    /// What came of it, as numbers; none where the rider does not even move on foot.
    #[must_use]
    pub fn numbers(self) -> Vec<f64> {
        let Self { course, setups, settling } = self;
        let numbers = |found: LapComparison| found.numbers(&course, setups.each_ref());
        settling.comparison().and_then(numbers).unwrap_or_default()
    }
}
