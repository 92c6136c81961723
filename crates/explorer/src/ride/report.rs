//! Riding against going on foot, for both set-ups.

use crate::ride::inputs::RideInputs;
use crate::side::Side;
use gear_math::ascending;
use gear_math::rider::{
    Advice, Answer, Ascent, Carry, Cell, Climb, ClimbLength, ClimbPlan, CriticalPower, Crossover, Distance,
    Flip, LimitsHeld, Mark, MarkKind, OverGear, Reason, RunningWins, Slope, SlopeBand, TornadoBar, Uncertain,
    Verdict, Watched, WheelInertia, verdict_map,
};
use gear_math::{Gear, Ground, RideOrRun, Speed, Surface};

/// Gradients of curves, tables and map: every half per cent.
const STEPS: u32 = 90;
/// How many verdicts there are.
const VERDICTS: u8 = 4;
/// What a rider might change about the lowest gear: teeth off the smallest ring, teeth on to the largest sprocket.
pub(crate) const OTHER_GEARS: [(u16, u16); 5] = [(0, 0), (2, 0), (0, 2), (0, 4), (2, 4)];
/// Round lengths at which the picture of a climb may end, metres.
const LENGTHS: [f64; 14] =
    [10.0, 20.0, 40.0, 60.0, 80.0, 100.0, 150.0, 200.0, 300.0, 500.0, 1000.0, 2000.0, 3000.0, 5000.0];

/// Slopes below this are called the level, per cent.
const LEVEL: f64 = 0.5;
/// Ends of riding closer than this are the same, points of gradient; so are speeds, km/h.
const STILL: f64 = 0.05;
/// A lower gear is worth a word where it helps over this many points of gradient.
const WORTH: f64 = 1.0;

/// The question of riding or running, worked out.
#[derive(Debug)]
pub struct RideReport {
    /// What it was worked out from.
    pub inputs: RideInputs,
    /// A and B.
    pub sides: [RideSide; 2],
    /// Where running this climb wins, whatever the gears.
    pub running: RunningWins,
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
    /// That gradient with all its doubts.
    pub end: SlopeBand,
    /// Everything to mark on the axis of gradients, from the flattest.
    pub marks: Vec<Mark>,
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
    /// What there is to do about it.
    pub ascent: Ascent,
    /// Where the legs cannot spin fast enough, and running is no longer surely slower for that.
    pub spun_out: Option<SpunOut>,
    /// What another lowest gear would do.
    pub others: Vec<OtherGear>,
}

/// A gear too low for what the legs could give.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpunOut {
    /// The tallest gear there is.
    pub gear: Gear,
    /// As fast as it can be turned.
    pub speed: Speed,
    /// The steepest slope on which riding a taller gear would surely be quicker than running the climb, and this is not.
    pub up_to: Climb,
}

impl SpunOut {
    fn of(
        question: &RideOrRun,
        inputs: &RideInputs,
        answers: &[Answer],
        running: &RunningWins,
    ) -> Option<Self> {
        let until = running.earliest.map_or(f64::INFINITY, Slope::percent);
        let plan = |slope: Climb| question.climb(&inputs.ground, slope, inputs.length, inputs.lost);
        let is_lost = |it: &&Answer| {
            let counts = it.spins_out() && !it.limits.any() && it.gradient.percent() < until;
            counts && plan(it.gradient).verdict != Verdict::Ride
        };
        let last = answers.iter().rev().find(is_lost)?;
        Some(Self { gear: last.riding.gear, speed: last.riding.held?, up_to: last.gradient })
    }
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
    /// Which one; `None` for one with values of the rider's own.
    pub surface: Option<Surface>,
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

impl Swing {
    /// Whether it moves the end of riding of a side at all.
    #[must_use]
    pub fn moves(&self, side: Side) -> bool {
        self.bars[side as usize].swing_points >= STILL
    }
}

impl RideReport {
    /// Works it out, with the lowest gears of A and B that may be used.
    pub(crate) fn of(inputs: &RideInputs, lowest: [Gear; 2]) -> Self {
        let inputs = inputs.clone();
        let gradients = gradients();
        let far = extent(&inputs);
        let running = inputs.questions[0].running_wins(&inputs.ground, inputs.length, inputs.lost);
        let tornados = [&inputs.questions[0], &inputs.questions[1]].map(|question| {
            let flip = question.crossover(&inputs.ground).flip;
            question.tornado(&inputs.ground, Watched::behind(flip.as_ref()))
        });
        let sides = Side::BOTH.map(|side| {
            RideSide::new(
                side,
                lowest[side as usize],
                &inputs,
                far,
                &gradients,
                (&running, &tornados[side as usize]),
            )
        });
        Self { running, map: map(&inputs, &gradients), swings: swings(&tornados), sides, far, inputs }
    }

    /// The ground that was asked about; `None` for one with values of the rider's own.
    #[must_use]
    pub fn ground(&self) -> Option<Surface> {
        (!self.inputs.own.any()).then_some(self.inputs.surface)
    }

    /// Whether running this climb wins only at speeds at which no gear is low enough any more.
    #[must_use]
    pub fn running_wins_below_the_gears(&self) -> bool {
        let wins = self.sides[0].plan.running_wins_below().best;
        self.sides.iter().all(|side| wins < side.crossover.lowest_gear_speed)
    }

    /// Where the legs cannot spin fast enough, told once where it is the same with both.
    pub fn spun_out(&self) -> impl Iterator<Item = SpunOut> + use<> {
        let [a, b] = [&self.sides[0], &self.sides[1]].map(|side| side.spun_out);
        a.into_iter().chain(b.filter(|_| a != b))
    }

    /// The input that moves the end of riding most.
    #[must_use]
    pub fn most_in_doubt(&self) -> Option<Uncertain> {
        let most = self.swings.first()?;
        Side::BOTH.iter().any(|&side| most.moves(side)).then_some(most.input)
    }

    /// What B changes against A.
    #[must_use]
    pub fn difference(&self) -> Difference {
        let [a, b] = &self.sides;
        let [of_a, of_b] = [a, b].map(|side| side.limited_to().unwrap_or(f64::INFINITY));
        let points = of_b - of_a;
        // With no limit on either side the difference is no number.
        if points.is_nan() || points.abs() < STILL {
            return self.beside_the_end();
        }
        let lower = if points > 0.0 { Side::B } else { Side::A };
        match points.abs() {
            points if points.is_finite() => Difference::Further { lower, points },
            _ if self.running.earliest.is_some() => Difference::UntilRunning(lower),
            _ => Difference::AllTheWay(lower),
        }
    }

    /// What differs where no end of riding tells the two apart.
    fn beside_the_end(&self) -> Difference {
        let [a, b] = &self.sides;
        let gears = [a, b].map(|side| side.crossover.lowest_gear_speed.km_per_h());
        if a.ascent == b.ascent && (gears[0] - gears[1]).abs() < STILL {
            Difference::Nothing
        } else if a.limited_to().is_some() {
            Difference::SameEnd
        } else {
            Difference::Elsewhere
        }
    }

    /// Whether riding ends at the same slope for the same reason with both.
    #[must_use]
    pub fn ends_alike(&self) -> bool {
        let reasons = [&self.sides[0], &self.sides[1]].map(RideSide::reason);
        let apart = matches!(self.difference(), Difference::Further { .. });
        reasons[0] == reasons[1] && !apart
    }

    /// Where running this climb wins, as far as can be told.
    #[must_use]
    pub fn running_from(&self) -> RunningFrom {
        let RunningWins { earliest, gradient, latest } = self.running;
        match (earliest.map(Slope::percent), gradient.zip(latest)) {
            (None, _) => RunningFrom::Nowhere,
            (_, Some((_, latest))) if latest.percent() < LEVEL => RunningFrom::TheLevel,
            (Some(low), Some((best, high))) => {
                RunningFrom::Slope { low, best: best.percent(), high: high.percent() }
            }
            (Some(from), None) => RunningFrom::TooClose { from },
        }
    }

    /// Up to which slope a lower gear than a side's lowest would be quicker than running, where that is worth a word.
    #[must_use]
    pub fn lower_gear_helps(&self) -> Option<LowerGearHelps> {
        let most = Climb::LIMITS.max;
        let next = self.sides[0].next_limit();
        let until = self.running.earliest.map_or(most, Slope::percent);
        let until = next.map_or(most, |(_, at)| at.percent()).min(until);
        let helped: Vec<Side> = self
            .sides
            .iter()
            .filter(|side| side.geared_to().is_some_and(|end| end + WORTH < until))
            .map(|it| it.side)
            .collect();
        let then = next.filter(|(_, at)| at.percent() <= until).map(|(limit, _)| limit);
        (!helped.is_empty()).then_some(LowerGearHelps { sides: helped, until, then })
    }
}

/// Where a gear lower than the lowest would be quicker than running.
#[derive(Debug, Clone, PartialEq)]
pub struct LowerGearHelps {
    /// The sides it helps.
    pub sides: Vec<Side>,
    /// Up to this slope, per cent.
    pub until: f64,
    /// The limit that no gear moves, where it is that which ends it.
    pub then: Option<Reason>,
}

/// What B changes against A.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Difference {
    /// Nothing that is looked at here.
    Nothing,
    /// A limit ends riding at the same slope with both, but not all else is alike.
    SameEnd,
    /// No limit ends riding with either before running wins, but not all else is alike.
    Elsewhere,
    /// One is ridden on steeper slopes than the other.
    Further {
        /// Which one.
        lower: Side,
        /// By so many points of gradient.
        points: f64,
    },
    /// No limit ends riding with this one before running wins, but one does with the other.
    UntilRunning(Side),
    /// This one is ridden all the way to 45 %, the other is not.
    AllTheWay(Side),
}

/// Where running a climb wins; gradients in per cent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RunningFrom {
    /// Not up to 45 %.
    Nowhere,
    /// From here on it is too close to call.
    TooClose {
        /// The gradient.
        from: f64,
    },
    /// From here on, with the likely edges.
    Slope {
        /// Flat edge.
        low: f64,
        /// Best guess.
        best: f64,
        /// Steep edge.
        high: f64,
    },
    /// Everywhere.
    TheLevel,
}

impl RideSide {
    fn new(
        side: Side,
        lowest: Gear,
        inputs: &RideInputs,
        far: ClimbLength,
        gradients: &[Climb],
        (running, bars): (&RunningWins, &[TornadoBar]),
    ) -> Self {
        let question = &inputs.questions[side as usize];
        let (ground, climb) = (&inputs.ground, inputs.climb);
        let effort = CriticalPower::new(inputs.rider.power, inputs.reserve, inputs.peak);
        let effort = effort.ok().filter(|_| inputs.power_lasts());
        let over_gear = effort.map(|effort| question.over_gear(ground, climb, &effort, inputs.share));
        let plan = question.climb(ground, climb, inputs.length, inputs.lost);
        let carry = question.carry(ground, climb, inputs.entry, WheelInertia::USUAL);
        let crossover = question.crossover(ground);
        let answers = question.answers(ground, gradients);
        Self {
            side,
            lowest,
            end: SlopeBand::of(crossover.flip.map(|flip| flip.gradient), bars),
            marks: marks(&crossover, running, |slope| question.answer(ground, slope).ride),
            crossover,
            spun_out: SpunOut::of(question, inputs, &answers, running),
            answers,
            ascent: plan.ascent(&carry, over_gear.as_ref()),
            plan,
            far: question.climb(ground, climb, far, inputs.lost),
            over_gear,
            carry,
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

    /// What it takes to keep riding this climb, where more power would do.
    #[must_use]
    pub fn forcing(&self) -> Option<&OverGear> {
        self.over_gear.as_ref().filter(|_| self.plan.is_forceable())
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

/// The marks of a side, those of running for a climb of this length.
fn marks(crossover: &Crossover, running: &RunningWins, ride: impl Fn(Climb) -> Speed) -> Vec<Mark> {
    let of_running = [
        (MarkKind::TooCloseFrom, running.earliest),
        (MarkKind::Ends(Reason::Energy), running.latest.and(running.gradient)),
        (MarkKind::FootFrom, running.latest),
    ];
    let mut marks = crossover.marks.clone();
    marks.retain(|mark| of_running.iter().all(|(kind, _)| *kind != mark.kind));
    marks.extend(of_running.iter().filter_map(|&(kind, gradient)| {
        let gradient = gradient?;
        Some(Mark { kind, gradient, speed: ride(Climb::new(gradient.percent()).ok()?) })
    }));
    ascending(&mut marks, |mark| mark.gradient.percent());
    marks
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
    let mut surfaces: Vec<Option<Surface>> = Surface::ALL.iter().copied().map(Some).collect();
    let mut here = inputs.surface as usize;
    if inputs.own.any() {
        here = grounds.len();
        grounds.push(inputs.ground);
        surfaces.push(None);
    }
    let maps = verdict_map(&inputs.questions, &grounds, gradients);
    let cells = |side: Side, row: usize| {
        let cells = &maps[side as usize][row * gradients.len()..][..gradients.len()];
        stretches(cells, gradients, &inputs.questions[side as usize], &grounds[row])
    };
    let row = |(row, surface)| GroundRow {
        surface,
        here: row == here,
        stretches: Side::BOTH.map(|side| cells(side, row)),
    };
    surfaces.into_iter().enumerate().map(row).collect()
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
fn swings([of_a, of_b]: &[Vec<TornadoBar>; 2]) -> Vec<Swing> {
    let swing = |a: &TornadoBar| {
        let b = of_b.iter().find(|b| b.input == a.input)?;
        Some(Swing { input: a.input, bars: [*a, *b] })
    };
    let mut swings: Vec<Swing> = of_a.iter().filter_map(swing).collect();
    let width = |swing: &Swing| swing.bars[0].swing_points.max(swing.bars[1].swing_points);
    ascending(&mut swings, |swing| -width(swing));
    swings
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;
    use crate::page::scenario::Scenario;

    fn report(scenario: &Scenario) -> RideReport {
        RideReport::of(&scenario.ride, scenario.cages.lowest())
    }

    #[test]
    fn stretches_cover_the_map_without_a_gap() {
        let report = report(&Scenario::default());
        for row in &report.map {
            for stretches in &row.stretches {
                assert_eq!((stretches[0].from, stretches[stretches.len() - 1].to), (0.0, 45.0));
                assert!(stretches.windows(2).all(|pair| (pair[0].to - pair[1].from).abs() < 1e-9));
            }
        }
    }

    #[test]
    fn a_lower_gear_runs_out_later() {
        let report = report(&Scenario::default());
        for side in &report.sides {
            let gradients: Vec<_> =
                side.others.iter().map(|other| other.gradient.unwrap().percent()).collect();
            assert!(gradients[1..].iter().all(|&gradient| gradient > gradients[0]), "{gradients:?}");
        }
    }

    #[test]
    fn a_gear_that_fails_on_the_level_runs_out_there_and_the_map_ends_where_the_answer_does() {
        let mut bench = crate::bench::bench::Bench::default();
        for (field, text) in [(Field::RingsA, "42"), (Field::CassetteA, "16")] {
            bench.write(field, text);
        }
        let read = Scenario::read(&bench, &Scenario::default());
        let report = report(&read.scenario);
        assert_eq!(report.sides[0].others[0].gradient.map(Slope::percent), Some(0.0));
        let here = report.map.iter().find(|row| row.here).unwrap();
        let end = report.sides[1].flip().unwrap().gradient.percent();
        let forced = here.stretches[1].iter().find(|it| it.verdict == Verdict::FootForced).unwrap().from;
        assert!((forced - end).abs() < 0.02, "{forced} for {end}");
    }
}
