//! The search for the quickest lap on a budget.

use crate::course::course::Course;
use crate::course::reserve::back::Pass;
use crate::course::reserve::field::Field;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::gearing::Gearing;
use crate::course::reserve::hunt::{Hunt, Tried};
use crate::course::reserve::moment::{Ridden, State};
use crate::course::reserve::planner::Planner;
use crate::course::reserve::rule::Rule;
use crate::course::reserve::setup::ReserveSetup;
use crate::course::reserve::way::{SLOWEST, Way};
use crate::rider::EffectiveMass;

/// The price that is tried first, over 1/CP: 0.64 to 0.75 came out on six courses.
const FIRST_PRICE: f64 = 0.68;
/// The highest price, over that at which standing still would pay.
const HIGHEST: f64 = 0.98;
/// What shifts that are not for nothing add to the price. Estimate, to begin with: 1 to 6 % came out.
const WITH_SHIFTS: f64 = 1.03;
/// Speed of the very first lap, m/s, where nothing is known.
const SOME_SPEED: f64 = 5.0;
/// Speeds looked at where a dismount is near, m/s.
const ABOUT_FEET: [f64; 2] = [SLOWEST, 4.5];
/// The lowest of the speeds looked at is no higher than this share of the highest that is allowed.
const ROOM_BELOW: f64 = 0.9;

/// Costs that differ by less are one, s: rounding.
const TIE_S: f64 = 1e-6;

/// The search for the quickest lap on a budget.
#[derive(Debug)]
pub(super) struct Search<'a> {
    pub(super) setup: &'a ReserveSetup,
    fineness: Fineness,
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
        let mut field = Field::new(self.fineness.speeds, 1, &self.way.ranges());
        let price = FIRST_PRICE / self.setup.account.sustainable_w();
        self.look_ahead(&mut field, price);
        let begin = State::Riding(SOME_SPEED, 0);
        let free = self.hunted(&mut field, price, begin, self.fineness.prices[0]);
        let begin = self.in_gear(free.end);
        let mut geared = Field::new(self.fineness.near_speeds, self.gearing.gears.len(), &self.near(&free));
        geared.continue_from(&field);
        self.hunted(&mut geared, free.price * WITH_SHIFTS, begin, self.fineness.prices[1])
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
        let more = (self.fineness.ahead_m / self.way.length()) as usize;
        for _ in 0..more {
            pass.back(field, field.end());
            field.repeat();
        }
    }

    /// Tries prices, each from what the last one found.
    fn hunted(&self, field: &mut Field, first: f64, begin: State, most: usize) -> Ridden {
        let mut laps = vec![self.lap(field, first, begin)];
        let scale = self.setup.account.sustainable_w() * laps[0].time();
        let mut hunt = Hunt::new(HIGHEST / self.setup.account.repaid_w(), self.fineness.near * scale, scale);
        while let Some(last) = laps.last() {
            let (next, begin) = (hunt.next(self.tried(last)), last.end);
            let Some(price) = next.filter(|_| laps.len() < most) else { break };
            laps.push(self.lap(field, price, begin));
        }
        self.nearest(laps, &hunt)
    }

    /// Of the laps that are best at the price found, the one nearest to the budget.
    fn nearest(&self, laps: Vec<Ridden>, hunt: &Hunt) -> Ridden {
        let last = laps.last().map_or(0.0, |lap| lap.price);
        let price = hunt.even().unwrap_or(last);
        let least = hunt.cost(price) + TIE_S;
        let among = laps.into_iter().filter(|lap| self.tried(lap).cost(price) <= least);
        let beyond = |lap: &Ridden| self.tried(lap).beyond.abs();
        let nearest = among.min_by(|a, b| beyond(a).total_cmp(&beyond(b)));
        nearest.map_or(Ridden::NONE, |lap| Ridden { price, ..lap })
    }

    fn tried(&self, lap: &Ridden) -> Tried {
        let beyond = lap.net_charge() - self.setup.budget.j();
        Tried { price: lap.price, time: lap.time() + lap.unclosed, beyond }
    }

    fn lap(&self, field: &mut Field, price: f64, begin: State) -> Ridden {
        let planner = self.planner(price, field.gears > 1 || self.gearing.gears.len() == 1);
        Pass::new(&planner, field.nodes).back(field, field.end());
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

    /// Speeds looked at about a lap that was found.
    fn near(&self, ridden: &Ridden) -> Vec<[f64; 2]> {
        let Some(reach) = self.fineness.reach else { return self.way.ranges() };
        let count = ridden.moments.len();
        let speed = |at: usize| ridden.moments[at % count].gear.map(|_| ridden.moments[at % count].entry);
        let range = |(at, &ceiling): (usize, &f64)| {
            let riding = speed(at + count - 1).and(speed(at));
            let [low, high] =
                riding.map_or(ABOUT_FEET, |speed| [speed / (1.0 + reach), speed * (1.0 + reach)]);
            [low.min(ROOM_BELOW * ceiling).max(SLOWEST), high.min(ceiling)]
        };
        self.way.ceilings.iter().enumerate().map(range).collect()
    }
}
