//! The climb with one set-up, by gear-math.

use crate::facts::Facts;
use gear_math::rider::{
    Advice, Ascent, Carry, ClimbPlan, Flip, OverGear, Reason, SlopeBand, Watched, WheelInertia,
};

pub(crate) const SIDES: [&str; 2] = ["A", "B"];

/// One side of the climb by gear-math.
pub(crate) struct Side {
    pub(crate) plan: ClimbPlan,
    pub(crate) ascent: Ascent,
    pub(crate) flip: Option<Flip>,
    pub(crate) end: SlopeBand,
    pub(crate) over: Option<OverGear>,
    pub(crate) carry: Carry,
}

impl Side {
    pub(crate) fn of(facts: &Facts, side: usize) -> Self {
        let question = &facts.questions[side];
        let (ground, climb) = (&facts.ground, facts.climb);
        let plan = question.climb(ground, climb, facts.length, facts.lost);
        let over = facts.effort.as_ref().map(|effort| question.over_gear(ground, climb, effort, facts.share));
        let carry = question.carry(ground, climb, facts.entry, WheelInertia::USUAL);
        let flip = question.crossover(ground).flip;
        let bars = question.tornado(ground, Watched::behind(flip.as_ref()));
        Self {
            ascent: plan.ascent(&carry, over.as_ref()),
            end: SlopeBand::of(flip.map(|it| it.gradient), &bars),
            flip,
            plan,
            over,
            carry,
        }
    }

    pub(crate) fn verb(&self) -> &'static str {
        match self.ascent.advice {
            Advice::Ride => "ride",
            Advice::Carry => "carry your speed",
            Advice::Force => "force it",
            Advice::TooClose => "too close to call",
            Advice::Run => "run",
        }
    }

    /// The slope from which a limit ends riding, per cent.
    pub(crate) fn limited_to(&self) -> Option<f64> {
        self.flip.filter(|it| it.reason != Reason::Energy).map(|it| it.gradient.percent())
    }
}
