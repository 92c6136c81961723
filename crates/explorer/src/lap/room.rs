//! The lap’s section as it stands.

use crate::lap::found::Found;
use crate::lap::own_course::OwnCourse;
use crate::lap::refusal::Refusal;
use crate::lap::report::{LapQuestion, LapReport};
use crate::lap::sketched::Sketched;
use crate::ride::inputs::LapPrice;
use std::rc::Rc;

/// Everything the section on the lap shows besides its fields.
#[derive(Debug, Clone, Default)]
pub struct LapRoom {
    /// The course from a file, where one was chosen.
    pub own: Option<Rc<OwnCourse>>,
    /// Why what was asked for last was not done.
    pub refused: Option<Refusal>,
    /// The course that was put into the sketch in fewer stretches.
    pub sketched: Option<Rc<Sketched>>,
    /// The lap, once it was asked for.
    pub laps: Option<Rc<LapReport>>,
    /// Whether that lap is of what stood on the bench before, and the one of now is still to come from workers.
    pub is_stale: bool,
    /// What a search has found.
    pub found: Option<Rc<Found>>,
}

impl LapRoom {
    /// What a lap of this question says that a joule is worth, or will say.
    #[must_use]
    pub fn price(&self, question: &LapQuestion) -> LapPrice {
        let of_this = self.laps.as_ref().filter(|laps| laps.question == *question);
        match of_this.and_then(|laps| laps.prices()) {
            Some(prices) => LapPrice::Found(prices),
            None if self.is_stale => LapPrice::Awaited,
            None => LapPrice::Usual,
        }
    }
}
