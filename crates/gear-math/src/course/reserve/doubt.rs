//! The dismounts that gears may turn.

use crate::course::reserve::field::Field;
use crate::course::reserve::laps::Laps;
use crate::course::reserve::moment::{Moment, Ridden};
use crate::course::reserve::planner::Planner;
use crate::course::reserve::search::Search;

/// What gears may make of a dismount that was looked at without them, s. Estimate: a few shifts and the strength of a low gear.
const DOUBT_S: f64 = 0.8;

impl Search<'_> {
    /// The laps at the price found if getting off took longer or less long, where that may make another lap.
    pub(super) fn doubted(&self, free: &Field, laps: &Laps) -> Vec<Ridden> {
        let nearest = laps.nearest();
        let lap = |doubt: f64| {
            let planner = self.planner(laps.price(), false).doubting(doubt);
            self.lap(&mut free.clone(), &planner, nearest.end)
        };
        let dearer = self.goes_on_foot_at_will(&nearest).then_some(DOUBT_S);
        let cheaper = self.nearly_gets_off(free, &nearest).then_some(-DOUBT_S);
        dearer.into_iter().chain(cheaper).map(lap).collect()
    }

    fn goes_on_foot_at_will(&self, lap: &Ridden) -> bool {
        let steps: Vec<(&Moment, bool)> =
            lap.moments.iter().zip(self.way.cells.iter().map(|cell| cell.blocked)).collect();
        let mut parts = steps.chunk_by(|one, next| one.0.gear.is_some() == next.0.gear.is_some());
        parts.any(|part| part[0].0.gear.is_none() && part.iter().all(|step| !step.1))
    }

    fn nearly_gets_off(&self, free: &Field, lap: &Ridden) -> bool {
        let nearly = |(at, moment): (usize, &Moment)| {
            let off = self.way.off + free.foot[at] + Planner::fall(moment.entry);
            moment.gear.is_some() && off - free.line(at, 0).nearest(moment.entry) < DOUBT_S
        };
        lap.moments.iter().enumerate().any(nearly)
    }
}
