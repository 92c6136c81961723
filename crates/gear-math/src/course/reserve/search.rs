//! The search for the quickest lap on a budget.

use crate::course::course::Course;
use crate::course::reserve::back::Pass;
use crate::course::reserve::field::Field;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::gearing::Gearing;
use crate::course::reserve::hunt::{Hunt, USUAL_SLOPE};
use crate::course::reserve::laps::Laps;
use crate::course::reserve::moment::{Ridden, State};
use crate::course::reserve::planner::Planner;
use crate::course::reserve::range::Range;
use crate::course::reserve::rule::Rule;
use crate::course::reserve::setup::ReserveSetup;
use crate::course::reserve::way::Way;
use crate::rider::EffectiveMass;

/// The highest price, over that at which standing still would pay.
const HIGHEST: f64 = 0.98;
/// What shifts that are not for nothing add to the price. Estimate, to begin with: −1 to 3 % came out.
const WITH_SHIFTS: f64 = 1.01;
/// How far from the budget, as a share of time times sustainable power, a lap may stay without one more price. Estimate.
const OPEN: f64 = 0.02;
/// Speed of the very first lap, m/s, where nothing is known.
const SOME_SPEED: f64 = 5.0;

/// The search for the quickest lap on a budget.
#[derive(Debug)]
pub(super) struct Search<'a> {
    pub(super) setup: &'a ReserveSetup,
    pub(super) fineness: Fineness,
    pub(super) way: Way,
    pub(super) gearing: Gearing,
}

impl<'a> Search<'a> {
    pub(super) fn new(course: &Course, setup: &'a ReserveSetup, fineness: Fineness) -> Self {
        let way = Way::new(course, setup, fineness.step_m);
        let gearing = Gearing::new(setup, EffectiveMass::new(way.mass));
        Self { setup, fineness, way, gearing }
    }

    /// The lap whose charge comes nearest to the budget.
    pub(super) fn quickest(&self) -> Ridden {
        let mut free = Field::new(self.fineness.speeds, 1, &self.way.ranges());
        let price = self.setup.account.usual_price().s_per_j();
        self.look_ahead(&mut free, price);
        let begin = State::Riding(SOME_SPEED, 0);
        let mut laps = self.hunted(&mut free, [price, USUAL_SLOPE], begin, self.fineness.prices[0]);
        laps.doubted = self.doubted(&free, &laps);
        let first = [laps.price() * WITH_SHIFTS, laps.slope()];
        self.geared(&self.near(&laps), &free, first, laps.nearest().end)
    }

    /// The quickest lap within ranges of speeds, before values at the line and from a price with its slope.
    fn geared(&self, ranges: &[Range], line: &Field, first: [f64; 2], begin: State) -> Ridden {
        let mut field = Field::new(self.fineness.near_speeds, self.gearing.gears.len(), ranges);
        field.continue_from(line);
        let planner = self.planner_in(&field, first[0]);
        let mut pass = Pass::new(&planner, field.nodes);
        self.go_round(&mut field, &mut pass);
        let mut laps = self.hunted(&mut field, first, self.in_gear(begin), self.fineness.prices[1]);
        if let Some(price) = laps.once_more(OPEN * self.setup.account.sustainable_w()) {
            let planner = self.planner_in(&field, price);
            laps.take(self.lap(&mut field, &planner, laps.end()));
        }
        laps.nearest()
    }

    pub(super) fn planner(&self, price: f64, geared: bool) -> Planner<'_> {
        let rule = Rule { way: &self.way, account: &self.setup.account, gearing: &self.gearing, price };
        Planner::new(rule, geared, self.fineness.cranks)
    }

    /// What lies behind the line, from the beginning of the next lap, or of the next laps where they are short.
    fn look_ahead(&self, field: &mut Field, price: f64) {
        let planner = self.planner(price, false);
        let mut pass = Pass::new(&planner, field.nodes);
        let steps = self.way.steps_in(self.fineness.ahead_m);
        field.begin(steps, price, self.way.mass / self.way.efficiency);
        pass.back(field, steps);
        field.repeat();
        self.go_round(field, &mut pass);
    }

    /// Goes back over laps that are short until the way ahead is covered.
    fn go_round(&self, field: &mut Field, pass: &mut Pass<'_>) {
        let more = (self.fineness.ahead_m / self.way.length()) as usize;
        for _ in 0..more {
            pass.back(field, field.end());
            field.repeat();
        }
    }

    /// Tries prices, each from what the last one found.
    fn hunted(&self, field: &mut Field, [first, slope]: [f64; 2], begin: State, most: usize) -> Laps {
        let lap = self.lap(field, &self.planner_in(field, first), begin);
        let scale = self.setup.account.sustainable_w() * lap.time();
        let highest = HIGHEST / self.setup.account.repaid_w();
        let hunt = Hunt::new(highest, self.fineness.near * scale, scale, slope);
        let mut laps = Laps::new(hunt, self.setup.budget.j());
        let (mut begin, mut next) = (lap.end, laps.take(lap));
        for _ in 1..most {
            let Some(price) = next else { break };
            let lap = self.lap(field, &self.planner_in(field, price), begin);
            (begin, next) = (lap.end, laps.take(lap));
        }
        laps
    }

    fn planner_in(&self, field: &Field, price: f64) -> Planner<'_> {
        self.planner(price, field.gears > 1 || self.gearing.gears.len() == 1)
    }

    pub(super) fn lap(&self, field: &mut Field, planner: &Planner<'_>, begin: State) -> Ridden {
        Pass::new(planner, field.nodes).back(field, field.end());
        let ridden = planner.flying(field, begin);
        field.repeat();
        ridden
    }

    fn in_gear(&self, state: State) -> State {
        match state {
            State::Riding(speed, _) => {
                State::Riding(speed, self.gearing.best(speed, self.setup.account.sustainable_w()))
            }
            State::OnFoot => State::OnFoot,
        }
    }
}
