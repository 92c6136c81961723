//! The lap that is much like a known one.

use crate::course::reserve::moment::Ridden;
use crate::course::reserve::plan::Plan;
use crate::course::reserve::search::Search;
use crate::course::reserve::way::SLOWEST;

/// How far from the budget the charge may stay, over what the search itself leaves.
const NEAR: f64 = 2.0;
/// A speed that is within this factor of the slowest or fastest looked at might have been another.
const EDGE: f64 = 1.02;

impl Search<'_> {
    /// The quickest lap by the plan of one much like it. It is looked for anew where it is ridden and gone on foot in other parts,
    /// comes to the end of the speeds of the plan or stays off the budget, or the course is another.
    pub(super) fn by(&self, plan: &Plan) -> Ridden {
        let known = plan.ranges.len() == self.way.ceilings.len();
        let near = known.then(|| self.within(plan)).filter(|lap| self.is_like(lap, plan));
        near.unwrap_or_else(|| self.quickest())
    }

    fn within(&self, plan: &Plan) -> Ridden {
        let ceilings = plan.ranges.iter().zip(&self.way.ceilings);
        let ranges = ceilings.map(|(range, &ceiling)| range.wider(SLOWEST, ceiling)).collect();
        let price = plan.sustained_price / self.setup.account.sustainable_w();
        self.geared(ranges, &plan.line, price, plan.begin).0
    }

    fn is_like(&self, lap: &Ridden, plan: &Plan) -> bool {
        let sustained = self.setup.account.sustainable_w() * lap.time();
        let beyond = (lap.net_charge() - self.setup.budget.j()).abs();
        let places = lap.moments.iter().zip(&plan.ranges).zip(&self.way.ceilings);
        let mut ridden = places.filter(|((moment, _), _)| moment.gear.is_some());
        lap.parts() == plan.parts
            && beyond <= NEAR * self.fineness.near * sustained
            && ridden.all(|((moment, range), ceiling)| is_inside(moment.entry, range.possible, *ceiling))
    }
}

fn is_inside(speed: f64, [low, high]: [f64; 2], ceiling: f64) -> bool {
    let room_below = low <= SLOWEST || speed > EDGE * low;
    let room_above = high >= ceiling || EDGE * speed < high;
    room_below && room_above
}
