//! Riding against going on foot, for both set-ups.

use super::Side;
use crate::field::{Field, Kind};
use crate::scenario::{RideInputs, Scenario};
use gear_math::ascending;
use gear_math::{
    Answer, Carry, Cell, Climb, ClimbLength, ClimbPlan, CriticalPower, Crossover, Distance, Flip, FlipChange,
    Gear, Ground, LimitsHeld, MarkKind, OverGear, PowerDemand, Reason, RideOrRun, Slope, Speed, Surface,
    Time, TornadoBar, Uncertain, Verdict, Watched, WheelInertia, verdict_map,
};

/// Gradients of curves, tables and map: every half per cent.
const STEPS: u32 = 90;
/// How many verdicts there are.
const VERDICTS: u8 = 4;
/// What a rider might change about the lowest gear: teeth off the smallest ring, teeth on to the largest sprocket.
const OTHER_GEARS: [(u16, u16); 5] = [(0, 0), (2, 0), (0, 2), (0, 4), (2, 4)];
/// Round lengths at which the picture of a climb may end, metres.
const LENGTHS: [f64; 14] =
    [10.0, 20.0, 40.0, 60.0, 80.0, 100.0, 150.0, 200.0, 300.0, 500.0, 1000.0, 2000.0, 3000.0, 5000.0];

/// The question of riding or running, worked out.
#[derive(Debug)]
pub struct RideReport {
    /// What it was worked out from.
    pub inputs: RideInputs,
    /// A and B.
    pub sides: [RideSide; 2],
    /// What changes from A to B, where both have an end of riding.
    pub change: Option<FlipChange>,
    /// Every ground on every slope.
    pub map: Vec<GroundRow>,
    /// What moves the end of riding, the widest first.
    pub swings: Vec<Swing>,
    /// How far the picture of the climb goes.
    pub far: ClimbLength,
}

/// One set-up.
#[derive(Debug)]
pub struct RideSide {
    /// Which one.
    pub side: Side,
    /// Its lowest gear.
    pub lowest: Gear,
    /// Where riding ends.
    pub crossover: Crossover,
    /// The answer from the level to 45 %, every half per cent.
    pub answers: Vec<Answer>,
    /// The climb that was asked about.
    pub plan: ClimbPlan,
    /// The same slope as far as the picture goes.
    pub far: ClimbPlan,
    /// What it takes to keep riding all the same; `None` where the power is one of seconds, which leaves nothing in
    /// reserve, or above the peak power.
    pub over_gear: Option<OverGear>,
    /// How far speed carries up it.
    pub carry: Carry,
    /// Time over it with the speed brought to it, where that and the power carry over it.
    pub carried: Option<Time>,
    /// What another lowest gear would do.
    pub others: Vec<OtherGear>,
}

/// A lowest gear that the rider might have instead.
#[derive(Debug, Clone, Copy)]
pub struct OtherGear {
    /// The gear.
    pub gear: Gear,
    /// Its speed at the lowest cadence.
    pub speed: Speed,
    /// Where it runs out, zero for on the level already; `None` for not up to 45 %.
    pub gradient: Option<Slope>,
}

/// One ground of the map.
#[derive(Debug)]
pub struct GroundRow {
    /// Its name.
    pub name: &'static str,
    /// Whether it is the ground that was asked about.
    pub here: bool,
    /// Stretches of one verdict for A and B, from the level up.
    pub stretches: [Vec<Stretch>; 2],
}

/// Gradients of one verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// The flattest, per cent.
    pub from: f64,
    /// The flattest that is no longer part of it, per cent; 45 % at the end.
    pub to: f64,
    /// The verdict.
    pub verdict: Verdict,
    /// The first limit that forces it, where one does.
    pub reason: Option<Reason>,
}

/// One input moved, and what it does to both set-ups.
#[derive(Debug, Clone, Copy)]
pub struct Swing {
    /// The input.
    pub input: Uncertain,
    /// A and B.
    pub bars: [TornadoBar; 2],
}

impl RideReport {
    pub(super) fn of(scenario: &Scenario) -> Self {
        let inputs = scenario.ride.clone();
        let gradients = gradients();
        let far = extent(&inputs);
        let sides = Side::BOTH
            .map(|side| RideSide::new(side, scenario.drivetrain(side).lowest(), &inputs, far, &gradients));
        let flips = [&sides[0], &sides[1]].map(|side| side.crossover.flip);
        Self {
            change: flips[0].zip(flips[1]).map(|(a, b)| a.change_to(&b)),
            map: map(&inputs, &gradients),
            swings: swings(&inputs),
            sides,
            far,
            inputs,
        }
    }

    /// The name of the ground that was asked about.
    #[must_use]
    pub fn ground_name(&self) -> &'static str {
        if self.inputs.own.any() { OWN_GROUND } else { surface_name(self.inputs.surface) }
    }

    /// Whether both set-ups end riding at the same place for the same reason.
    #[must_use]
    pub fn alike(&self) -> bool {
        let steep = |side: &RideSide| side.flip().is_some_and(|flip| flip.gradient.percent() > 0.0);
        let off_the_level = self.sides.iter().any(steep);
        let close = |change: FlipChange| {
            change.gradient_points.abs() < 0.05 && (!off_the_level || change.km_per_h.abs() < 0.05)
        };
        let reasons = [&self.sides[0], &self.sides[1]].map(RideSide::reason);
        reasons[0] == reasons[1] && self.change.is_none_or(close)
    }
}

impl RideSide {
    fn new(side: Side, lowest: Gear, inputs: &RideInputs, far: ClimbLength, gradients: &[Climb]) -> Self {
        let question = &inputs.questions[side as usize];
        let (ground, climb) = (&inputs.ground, inputs.climb);
        let effort = CriticalPower::new(inputs.rider.power, inputs.reserve, inputs.peak);
        let effort = effort.ok().filter(|_| inputs.power_lasts());
        let plan = question.climb(ground, climb, inputs.length, inputs.lost);
        let carry = question.carry(ground, climb, inputs.entry, WheelInertia::USUAL);
        let pedalled = !plan.answer.limits.grip && !plan.answer.spins_out();
        Self {
            side,
            lowest,
            crossover: question.crossover(ground),
            answers: question.answers(ground, gradients),
            plan,
            far: question.climb(ground, climb, far, inputs.lost),
            over_gear: effort.map(|effort| question.over_gear(ground, climb, &effort, inputs.share)),
            carry,
            carried: carry.over(inputs.length).filter(|_| pedalled),
            others: OTHER_GEARS
                .iter()
                .filter_map(|&(ring, sprocket)| {
                    let (ring, sprocket) =
                        (lowest.ring.teeth().checked_sub(ring)?, lowest.sprocket.teeth() + sprocket);
                    Gear::new(ring, sprocket).ok()
                })
                .map(|gear| OtherGear::new(gear, side, inputs))
                .collect(),
        }
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

    /// What it takes to keep riding this climb, where more power would do: too slow for the gear or for balance.
    #[must_use]
    pub fn forcing(&self) -> Option<&OverGear> {
        let limits = self.plan.answer.limits;
        self.over_gear.as_ref().filter(|_| (limits.gear || limits.balance) && !limits.grip)
    }

    /// What there is to do about the climb, which has this length. Carried or forced it is only where that is quicker than going
    /// on foot.
    #[must_use]
    pub fn ascent(&self, length: ClimbLength) -> Ascent {
        if let Some(time) = self.plan.ride {
            return Ascent::Ridden(time);
        }
        let quicker = |time: &Time| *time < self.plan.foot;
        if let Some(time) = self.carried.filter(quicker) {
            return Ascent::Carried(time);
        }
        let forced =
            self.forcing().and_then(|over| Some((over.power, over.over(length).ok().filter(quicker)?)));
        forced.map_or(Ascent::OnFoot, |(power, time)| Ascent::Forced(power, time))
    }

    /// The first limit that a lower gear would not move.
    #[must_use]
    pub fn next_limit(&self) -> Option<(Reason, Slope)> {
        self.crossover.marks.iter().find_map(|mark| match mark.kind {
            MarkKind::Ends(reason @ (Reason::Balance | Reason::Grip)) => Some((reason, mark.gradient)),
            _ => None,
        })
    }
}

/// What there is to do about a climb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ascent {
    /// Ride it, or go on foot as its plan has it; riding takes so long.
    Ridden(Time),
    /// The speed into it carries over it, in so much time.
    Carried(Time),
    /// Keep riding at so much power, in so much time.
    Forced(PowerDemand, Time),
    /// Get off.
    OnFoot,
}

impl OtherGear {
    fn new(gear: Gear, side: Side, inputs: &RideInputs) -> Self {
        let speed = gear.development(inputs.bike.wheel).speed_at(inputs.rider.lowest_cadence);
        let gradient = inputs.questions[side as usize].runs_out_at(&inputs.ground, speed);
        Self { gear, speed, gradient }
    }
}

fn gradients() -> Vec<Climb> {
    (0..=STEPS).filter_map(|step| Climb::new(f64::from(step) / 2.0).ok()).collect()
}

/// How far the picture of the climb goes: past the climb, and past every break-even that is not far off.
fn extent(inputs: &RideInputs) -> ClimbLength {
    let length = inputs.length.m();
    let break_even = |question: &RideOrRun| {
        question.climb(&inputs.ground, inputs.climb, inputs.length, inputs.lost).break_even.map(Distance::m)
    };
    let near = inputs.questions.iter().filter_map(break_even).filter(|&pays| pays < 5.0 * length);
    let wanted = near.fold(length, f64::max);
    let round = LENGTHS.into_iter().find(|&round| round >= 1.25 * wanted);
    ClimbLength::new(round.unwrap_or(ClimbLength::LIMITS.max)).unwrap_or(inputs.length)
}

/// The grounds of the table, and the rider's own last.
fn map(inputs: &RideInputs, gradients: &[Climb]) -> Vec<GroundRow> {
    let slope_share = inputs.ground.slope_share;
    let mut grounds: Vec<Ground> = Surface::ALL
        .iter()
        .map(|surface| Ground { slope_share, ..surface.ground_under(inputs.bike.tyre) })
        .collect();
    let mut names: Vec<&str> = Surface::ALL.iter().map(|&surface| surface_name(surface)).collect();
    let mut here = inputs.surface as usize;
    if inputs.own.any() {
        here = grounds.len();
        grounds.push(inputs.ground);
        names.push(OWN_GROUND);
    }
    let maps = verdict_map(&inputs.questions, &grounds, gradients);
    let cells = |side: Side, row: usize| {
        let cells = &maps[side as usize][row * gradients.len()..][..gradients.len()];
        stretches(cells, gradients, &inputs.questions[side as usize], &grounds[row])
    };
    let row = |(row, name)| GroundRow {
        name,
        here: row == here,
        stretches: Side::BOTH.map(|side| cells(side, row)),
    };
    names.into_iter().enumerate().map(row).collect()
}

fn stretches(cells: &[Cell], gradients: &[Climb], question: &RideOrRun, ground: &Ground) -> Vec<Stretch> {
    let starting = |from: Climb, verdict: Verdict, limits: LimitsHeld| {
        let from = from.percent();
        Stretch { from, to: from, verdict, reason: limits.reasons().next() }
    };
    let Some(level) = cells.first() else { return Vec::new() };
    let mut stretches = Vec::new();
    let (mut last, mut before) = (starting(Climb::LEVEL, level.verdict, level.limits), Climb::LEVEL);
    for (cell, &gradient) in cells.iter().zip(gradients) {
        // Between two gradients of the grid there may be a verdict that holds at neither.
        for _ in 0..VERDICTS {
            if last.verdict == cell.verdict {
                break;
            }
            before = question.verdict_end(ground, before, gradient);
            last.to = before.percent();
            stretches.push(last);
            let answer = question.answer(ground, before);
            last = starting(before, answer.verdict, answer.limits);
        }
        last.to = gradient.percent();
        before = gradient;
    }
    stretches.push(last);
    stretches
}

/// A's and B's tornado bars side by side, the widest first.
fn swings(inputs: &RideInputs) -> Vec<Swing> {
    let [of_a, of_b] = [&inputs.questions[0], &inputs.questions[1]]
        .map(|question| question.tornado(&inputs.ground, Watched::Flip));
    let swing = |a: &TornadoBar| {
        let b = of_b.iter().find(|b| b.input == a.input)?;
        Some(Swing { input: a.input, bars: [*a, *b] })
    };
    let mut swings: Vec<Swing> = of_a.iter().filter_map(swing).collect();
    let width = |swing: &Swing| swing.bars[0].swing_points.max(swing.bars[1].swing_points);
    ascending(&mut swings, |swing| -width(swing));
    swings
}

/// What a ground with values of the rider's own is called.
const OWN_GROUND: &str = "your own ground";

/// A surface as the form calls it; the choices stand in the order of [`Surface::ALL`].
#[must_use]
pub fn surface_name(surface: Surface) -> &'static str {
    match Field::Ground.spec().kind {
        Kind::Choice(choices) => choices[surface as usize].1,
        _ => "",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_form_names_the_surfaces_in_their_order() {
        assert_eq!(surface_name(Surface::Tarmac), "tarmac");
        assert_eq!(surface_name(Surface::Mud), "mud");
        assert_eq!(surface_name(Surface::LooseSand), "loose, dry sand");
    }

    #[test]
    fn stretches_cover_the_map_without_a_gap() {
        let report = RideReport::of(&Scenario::default());
        for row in &report.map {
            for stretches in &row.stretches {
                assert_eq!((stretches[0].from, stretches[stretches.len() - 1].to), (0.0, 45.0));
                assert!(stretches.windows(2).all(|pair| (pair[0].to - pair[1].from).abs() < 1e-9));
            }
        }
    }

    #[test]
    fn a_lower_gear_runs_out_later() {
        let report = RideReport::of(&Scenario::default());
        for side in &report.sides {
            let gradients: Vec<_> =
                side.others.iter().map(|other| other.gradient.unwrap().percent()).collect();
            assert!(gradients[1..].iter().all(|&gradient| gradient > gradients[0]), "{gradients:?}");
        }
    }

    #[test]
    fn a_gear_that_fails_on_the_level_runs_out_there_and_the_map_ends_where_the_answer_does() {
        let mut bench = crate::bench::Bench::default();
        for (field, text) in [(Field::RingsA, "42"), (Field::CassetteA, "16")] {
            bench.write(field, text);
        }
        let read = Scenario::read(&bench, &Scenario::default());
        let report = RideReport::of(&read.scenario);
        assert_eq!(report.sides[0].others[0].gradient.map(Slope::percent), Some(0.0));
        let here = report.map.iter().find(|row| row.here).unwrap();
        let end = report.sides[1].flip().unwrap().gradient.percent();
        let forced = here.stretches[1].iter().find(|it| it.verdict == Verdict::FootForced).unwrap().from;
        assert!((forced - end).abs() < 0.02, "{forced} for {end}");
    }
}
