//! The climb with one set-up, by gear-math.

use crate::facts::Facts;
use gear_math::rider::{
    Advice, Ascent, Carry, ClimbPlan, Flip, PacedClimb, Reason, Slope, SlopeBand, Watched, WheelInertia,
};

pub(crate) const SIDES: [&str; 2] = ["A", "B"];

/// One side of the climb by gear-math.
pub(crate) struct Side {
    pub(crate) plan: ClimbPlan,
    pub(crate) ascent: Ascent,
    pub(crate) flip: Option<Flip>,
    pub(crate) end: SlopeBand,
    pub(crate) paced: PacedClimb,
    pub(crate) pays_up_to: Option<Slope>,
    pub(crate) carry: Carry,
}

impl Side {
    pub(crate) fn of(facts: &Facts, side: usize, price: Option<f64>) -> Self {
        let question = &facts.questions[side];
        let (ground, climb) = (&facts.grounds[side], facts.climb);
        let plan = question.climb(ground, climb, facts.length, facts.lost);
        let (account, spending) = (&facts.account, &facts.spending(price));
        let paced = question.paced_at(account, ground, climb, facts.length, spending);
        let carry = question.carry(ground, climb, facts.entry, WheelInertia::USUAL);
        let flip = question.crossover(ground).flip;
        let bars = question.tornado(ground, Watched::behind(flip.as_ref()));
        Self {
            ascent: paced.ascent(facts.lost, plan.carried(&carry)),
            pays_up_to: question.paced_crossover_at(account, ground, facts.length, spending, facts.lost),
            end: SlopeBand::of(flip.map(|it| it.gradient), &bars),
            flip,
            plan,
            paced,
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
