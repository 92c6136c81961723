//! Riding against going on foot with one set-up.

use crate::ride::inputs::RideInputs;
use crate::ride::marks::marks;
use crate::ride::other_gear::OtherGear;
use crate::ride::spun_out::SpunOut;
use crate::side::Side;
use gear_math::Gear;
use gear_math::rider::{
    Advice, Answer, Ascent, Carry, Climb, ClimbLength, ClimbPlan, Crossover, Flip, Mark, MarkKind,
    PacedClimb, Reason, RunningWins, SecondsLost, Slope, SlopeBand, Spending, TornadoBar, WheelInertia,
};

/// Slopes below this are called the level, per cent.
pub(crate) const LEVEL: f64 = 0.5;

/// What both set-ups are looked at with.
pub(crate) struct Common<'r> {
    /// Rider, climb and ground.
    pub(crate) inputs: &'r RideInputs,
    /// How far the picture of the climb goes.
    pub(crate) far: ClimbLength,
    /// The gradients that are answered.
    pub(crate) gradients: &'r [Climb],
}

/// One set-up.
#[derive(Debug, Clone)]
pub struct RideSide {
    /// Which one.
    pub side: Side,
    /// Its lowest gear.
    pub lowest: Gear,
    /// Where riding ends.
    pub crossover: Crossover,
    /// That gradient with all its doubts.
    pub end: SlopeBand,
    /// Everything to mark on the axis of gradients, from the flattest.
    pub marks: Vec<Mark>,
    /// The answer from the level to 45 %, every half per cent.
    pub answers: Vec<Answer>,
    /// The climb that was asked about, at a steady power.
    pub plan: ClimbPlan,
    /// The same slope as far as the picture goes.
    pub far: ClimbPlan,
    /// The climb on what it may take from the reserve, as in a lap.
    pub paced: PacedClimb,
    /// How far speed carries up it.
    pub carry: Carry,
    /// What there is to do about it.
    pub ascent: Ascent,
    /// Whether that may still turn with the price that the lap on its way will have.
    pub may_turn: bool,
    /// Where the legs cannot spin fast enough, and running is no longer surely slower for that.
    pub spun_out: Option<SpunOut>,
    /// What another lowest gear would do.
    pub others: Vec<OtherGear>,
    /// Where running wins on a slope so long that nothing can be drawn from the reserve, whatever the gears.
    pub running: RunningWins,
}

/// All of a side that the price of a joule has a part in.
struct AtPrice {
    paced: PacedClimb,
    ascent: Ascent,
    may_turn: bool,
}

impl AtPrice {
    fn of(side: Side, inputs: &RideInputs, plan: &ClimbPlan, carry: &Carry) -> Self {
        let (question, ground) = (inputs.question(side), inputs.ground(side));
        let (length, lost) = (inputs.length, inputs.lost);
        let (account, spending, carried) = (inputs.account(), inputs.spending(side), plan.carried(carry));
        let paced = |spending: &Spending| question.paced_at(&account, ground, inputs.climb, length, spending);
        let ascent = |paced: &PacedClimb| paced.ascent(lost, carried);
        let now = paced(&spending);
        let turns = |other: &Spending| ascent(&paced(other)).advice != ascent(&now).advice;
        Self {
            paced: now,
            ascent: ascent(&now),
            may_turn: inputs.awaited().is_some_and(|others| others.iter().any(turns)),
        }
    }
}

impl RideSide {
    /// Works it out, with its lowest gear and what moves the end of riding.
    pub(crate) fn new(side: Side, lowest: Gear, common: &Common<'_>, bars: &[TornadoBar]) -> Self {
        let &Common { inputs, far, gradients } = common;
        let (question, ground) = (inputs.question(side), inputs.ground(side));
        let climb = inputs.climb;
        let running = question.running_wins(ground, ClimbLength::LONGEST, SecondsLost::NONE);
        let plan = question.climb(ground, climb, inputs.length, inputs.lost);
        let carry = question.carry(ground, climb, inputs.entry, WheelInertia::USUAL);
        let crossover = question.crossover(ground);
        let answers = question.answers(ground, gradients);
        let AtPrice { paced, ascent, may_turn } = AtPrice::of(side, inputs, &plan, &carry);
        Self {
            side,
            lowest,
            end: SlopeBand::of(crossover.flip.map(|flip| flip.gradient), bars),
            marks: marks(&crossover, &running, |slope| question.answer(ground, slope).ride),
            crossover,
            spun_out: SpunOut::of(&answers, &running),
            answers,
            running,
            ascent,
            may_turn,
            plan,
            far: question.climb(ground, climb, far, inputs.lost),
            paced,
            carry,
            others: OtherGear::beside(lowest, side, inputs),
        }
    }

    /// The same where nothing but the price of a joule is another.
    pub(crate) fn at_price_of(self, inputs: &RideInputs) -> Self {
        let AtPrice { paced, ascent, may_turn } = AtPrice::of(self.side, inputs, &self.plan, &self.carry);
        Self { paced, ascent, may_turn, ..self }
    }

    /// Where riding ends.
    #[must_use]
    pub const fn flip(&self) -> Option<Flip> {
        self.crossover.flip
    }

    /// Why it ends.
    #[must_use]
    pub fn reason(&self) -> Option<Reason> {
        self.flip().map(|flip| flip.reason)
    }

    /// The slope from which the lowest gear, or the legs in it, put the rider on foot, per cent.
    #[must_use]
    pub fn geared_to(&self) -> Option<f64> {
        let end = self.flip().filter(|end| matches!(end.reason, Reason::Gear | Reason::Force))?;
        Some(end.gradient.percent())
    }

    /// The slope from which a limit puts the rider on foot, before running wins, per cent.
    #[must_use]
    pub fn limited_to(&self) -> Option<f64> {
        let end = self.flip().filter(|end| end.reason != Reason::Energy)?;
        Some(end.gradient.percent())
    }

    /// Whether riding is lost on the level already.
    #[must_use]
    pub fn fails_on_the_level(&self) -> bool {
        self.flip().is_some_and(|end| end.gradient.percent() < LEVEL)
    }

    /// Whether the climb is done on the bike.
    #[must_use]
    pub fn stays_on(&self) -> bool {
        matches!(self.ascent.advice, Advice::Ride | Advice::Force | Advice::TooClose)
    }

    /// The first limit that a lower gear would not move.
    #[must_use]
    pub fn next_limit(&self) -> Option<(Reason, Slope)> {
        self.marks.iter().find_map(|mark| match mark.kind {
            MarkKind::Ends(reason @ (Reason::Balance | Reason::Grip)) => Some((reason, mark.gradient)),
            _ => None,
        })
    }
}
