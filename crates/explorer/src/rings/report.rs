//! The gears of A and B, each with all its numbers, and side by side.

use crate::bench::cadence_window::CadenceWindow;
use crate::rings::inputs::{Probe, RingsInputs};
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::step_verdict::{StepVerdict, WholeSteps, more};
use crate::side::Side;
use crate::units;
use gear_math::chain::CageAnswer;
use gear_math::gears::{DevelopmentSpan, GearStep, RollOutLimit};
use gear_math::{Comparison, Derailleur, Development, DuplicateTolerance, Speed, Wheel};

/// Least ratio of the ends of a picture's development scale.
const SMALLEST_SPAN: f64 = 1.5;

/// Everything that is said of the gears.
#[derive(Debug)]
pub struct RingsReport {
    /// The wheels of A and B.
    pub wheels: [Wheel; 2],
    /// The rider's cadences.
    pub window: CadenceWindow,
    /// The cadence and the speed being looked at.
    pub probe: Probe,
    /// Whether gear inches are those of the nominal 27 in wheel.
    pub nominal_inches: bool,
    /// Gears closer than this count as one.
    pub tolerance: DuplicateTolerance,
    /// A and B.
    pub setups: [SetupReport; 2],
    /// A against B, by gear-math.
    pub comparison: Comparison,
    /// Gears that A and B have in common.
    pub common: Vec<Tie>,
    /// What only one set-up reaches, below and above.
    pub reach: [Option<Reach>; 2],
    /// Every pair of a gear of A and one of B within twice the tolerance.
    pub near: Vec<Tie>,
    /// The roll-out limit of the race, if it has one.
    pub limit: Option<RollOutLimit>,
}

/// A gear that A and B share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tie {
    /// Index among A's gears.
    pub a: usize,
    /// Index among B's gears.
    pub b: usize,
    /// How far apart the two are.
    pub step: GearStep,
}

impl Tie {
    /// Index among the gears of `side`.
    #[must_use]
    pub const fn index(&self, side: Side) -> usize {
        match side {
            Side::A => self.a,
            Side::B => self.b,
        }
    }
}

/// A stretch of development that only one set-up reaches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Who reaches it.
    pub side: Side,
    /// From where to where.
    pub span: DevelopmentSpan,
}

impl RingsReport {
    /// Works it out, given what the cage says to A and to B.
    pub(crate) fn of(inputs: &RingsInputs, cages: [&CageAnswer; 2], derailleurs: &[Derailleur; 2]) -> Self {
        let [a, b] = Side::BOTH.map(|side| inputs.set_up(side, cages[side as usize]));
        let comparison = a.compare(&b, inputs.tolerance);
        let new = |side: Side, summary| {
            let place = side as usize;
            SetupReport::new(side, summary, inputs, cages[place], &derailleurs[place])
        };
        let setups = [new(Side::A, &comparison.a), new(Side::B, &comparison.b)];
        Self {
            common: ties(&setups, &comparison),
            reach: reach(&comparison),
            near: near(&setups, inputs.tolerance),
            wheels: inputs.wheels,
            window: inputs.window,
            probe: inputs.probe,
            nominal_inches: inputs.nominal_inches,
            tolerance: inputs.tolerance,
            limit: inputs.limit,
            setups,
            comparison,
        }
    }

    /// One of the two set-ups.
    #[must_use]
    pub const fn setup(&self, side: Side) -> &SetupReport {
        &self.setups[side as usize]
    }

    /// The wheel of one set-up.
    #[must_use]
    pub const fn wheel(&self, side: Side) -> &Wheel {
        &self.wheels[side as usize]
    }

    /// Whether A and B run on the same wheel.
    #[must_use]
    pub fn has_one_wheel(&self) -> bool {
        self.wheels[0] == self.wheels[1]
    }

    /// Whether A and B have the same rings, sprockets and wheel, and the same of their gears may be used.
    #[must_use]
    pub fn has_one_set_up(&self) -> bool {
        let [a, b] = &self.setups;
        a.drivetrain == b.drivetrain && a.cage.avoid == b.cage.avoid && self.has_one_wheel()
    }

    /// The steps of both and whose are wider; a set-up with a single gear has none.
    #[must_use]
    pub fn steps(&self) -> Option<([WholeSteps; 2], StepVerdict)> {
        let [a, b] = [self.setups[0].steps?.into(), self.setups[1].steps?.into()];
        Some(([a, b], StepVerdict::of([a, b])))
    }

    /// The side that is faster, unless both speeds are printed alike.
    #[must_use]
    pub fn faster(&self, [a, b]: [Speed; 2]) -> Option<Side> {
        let faster = more([a.m_per_s(), b.m_per_s()]);
        faster.filter(|_| units::speed(a) != units::speed(b))
    }

    /// What a development of one set-up is told by: its number.
    #[must_use]
    pub fn gear_value(&self, side: Side, development: Development) -> f64 {
        units::gear_value(development, self.wheel(side).roll_out())
    }

    /// The same in words, about as finely as a development with so many decimals.
    #[must_use]
    pub fn gear(&self, side: Side, development: Development, decimals: usize) -> String {
        units::gear(development, self.wheel(side).roll_out(), decimals)
    }

    /// The same without its unit.
    #[must_use]
    pub fn gear_number(&self, side: Side, development: Development, decimals: usize) -> String {
        units::gear_number(development, self.wheel(side).roll_out(), decimals)
    }

    /// Lowest and highest gear of both by what they are told by; at least half an octave apart, so that a small difference looks
    /// small.
    #[must_use]
    pub fn gear_span(&self) -> (f64, f64) {
        let ends = self.setups.each_ref().map(|setup| {
            let value = |line: &GearLine| self.gear_value(setup.side, line.development);
            (value(&setup.gears[0]), value(&setup.gears[setup.gears.len() - 1]))
        });
        let (low, high) = (ends[0].0.min(ends[1].0), ends[0].1.max(ends[1].1));
        let widen = (SMALLEST_SPAN / (high / low)).sqrt().max(1.0);
        (low / widen, high * widen)
    }

    /// Lowest and highest speed of both within the cadence window, in the unit of the page.
    #[must_use]
    pub fn speed_span(&self) -> (f64, f64) {
        self.span(|line| units::speed_value(line.speed_low), |line| units::speed_value(line.speed_high))
    }

    fn span(&self, low: impl Fn(&GearLine) -> f64, high: impl Fn(&GearLine) -> f64) -> (f64, f64) {
        let [a, b] = &self.setups;
        let last = |setup: &SetupReport| high(&setup.gears[setup.gears.len() - 1]);
        (low(&a.gears[0]).min(low(&b.gears[0])), last(a).max(last(b)))
    }
}

fn ties(setups: &[SetupReport; 2], comparison: &Comparison) -> Vec<Tie> {
    let tie = |shared: &gear_math::gears::SharedGear| {
        Some(Tie { a: setups[0].index_of(shared.a)?, b: setups[1].index_of(shared.b)?, step: shared.step })
    };
    comparison.shared.iter().filter_map(tie).collect()
}

fn reach(comparison: &Comparison) -> [Option<Reach>; 2] {
    let either = |a: Option<DevelopmentSpan>, b: Option<DevelopmentSpan>| {
        let of = |side, span: Option<DevelopmentSpan>| span.map(|span| Reach { side, span });
        of(Side::A, a).or(of(Side::B, b))
    };
    let (a, b) = (&comparison.only_a, &comparison.only_b);
    [either(a.below, b.below), either(a.above, b.above)]
}

fn near(setups: &[SetupReport; 2], tolerance: DuplicateTolerance) -> Vec<Tie> {
    let mut near = Vec::new();
    for (a, line_a) in setups[0].gears.iter().enumerate() {
        for (b, line_b) in setups[1].gears.iter().enumerate() {
            let step = line_a.development.step_to(line_b.development);
            if !line_a.avoid && !line_b.avoid && step.percent() <= 2.0 * tolerance.percent() {
                near.push(Tie { a, b, step });
            }
        }
    }
    near
}
