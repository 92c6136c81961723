//! What the scenario comes to: plain data, worked out by gear-math, read by every view and picture.

use crate::bench::owner::Owners;
use crate::chain::report::ChainReport;
use crate::lap::inputs::LapInputs;
use crate::lap::report::LapRoom;
use crate::number::{plain, rpm, trimmed};
use crate::page::scenario::{CadenceWindow, Probe, Scenario};
use crate::position::report::PositionReport;
use crate::ride::report::RideReport;
use crate::rings::setup::{GearLine, SetupReport};
use crate::side::Side;
use crate::speed_unit::SpeedUnit;
use crate::tyre::report::TyreReport;
use gear_math::chain::PathError;
use gear_math::gears::{DevelopmentSpan, GearStep, RollOutLimit};
use gear_math::{Comparison, Derailleur, Setup, Wheel};
use std::rc::Rc;

/// Least ratio of the ends of a picture's development scale.
pub(crate) const SMALLEST_SPAN: f64 = 1.5;

/// Everything the page says, before it is put in words.
#[derive(Debug)]
pub struct Report {
    /// The wheel both set-ups run on.
    pub wheel: Wheel,
    /// The rider's cadences.
    pub window: CadenceWindow,
    /// The cadence and the speed being looked at.
    pub probe: Probe,
    /// Unit of all speeds.
    pub unit: SpeedUnit,
    /// Whether gear inches are those of the nominal 27 in wheel.
    pub nominal_inches: bool,
    /// Gears closer than this count as one.
    pub tolerance: gear_math::DuplicateTolerance,
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
    /// The derailleur, as its maker states it.
    pub derailleur: Derailleur,
    /// The roll-out limit of the race, if it has one.
    pub limit: Option<RollOutLimit>,
    /// The chains of A and B; an error where wheels would run into each other.
    pub chains: [Result<ChainReport, PathError>; 2],
    /// Riding against going on foot.
    pub ride: Rc<RideReport>,
    /// How the lap is to be ridden.
    pub lap_inputs: LapInputs,
    /// The lap itself, which is worked out apart from the rest because it takes longer.
    pub lap: LapRoom,
    /// Tyre, rim and pressure.
    pub tyre: TyreReport,
    /// The road position on the cross bike.
    pub position: PositionReport,
    /// The set-ups that the workshop sheet is for.
    pub sheet_for: Option<Side>,
    /// Whose value every field holds.
    pub owners: Owners,
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

impl Default for Report {
    fn default() -> Self {
        Self::of(&Scenario::default())
    }
}

impl Report {
    /// Works a scenario out.
    #[must_use]
    pub fn of(scenario: &Scenario) -> Self {
        Self::around(scenario, Rc::new(RideReport::of(scenario)))
    }

    /// The same as [`of`](Self::of), with what takes longest from `before` where it was worked out from the same.
    #[must_use]
    pub fn after(scenario: &Scenario, before: &Self) -> Self {
        if before.ride.inputs == scenario.ride {
            Self::around(scenario, Rc::clone(&before.ride))
        } else {
            Self::of(scenario)
        }
    }

    fn around(scenario: &Scenario, ride: Rc<RideReport>) -> Self {
        let wheel = scenario.wheel.roll_out();
        let set_up = |side: Side| Setup {
            drivetrain: scenario.drivetrain(side),
            avoid: scenario.cage(side).avoid,
            wheel,
        };
        let comparison = set_up(Side::A).compare(&set_up(Side::B), scenario.tolerance);
        let setups = [
            SetupReport::new(Side::A, &set_up(Side::A), &comparison.a, scenario),
            SetupReport::new(Side::B, &set_up(Side::B), &comparison.b, scenario),
        ];
        Self {
            common: ties(&setups, &comparison),
            reach: reach(&comparison),
            near: near(&setups, scenario.tolerance),
            wheel: scenario.wheel,
            window: scenario.window,
            probe: scenario.probe,
            unit: scenario.unit,
            nominal_inches: scenario.nominal_inches,
            tolerance: scenario.tolerance,
            derailleur: scenario.derailleur,
            limit: scenario.limit,
            chains: [ChainReport::new(Side::A, scenario), ChainReport::new(Side::B, scenario)],
            ride,
            lap_inputs: scenario.lap.clone(),
            lap: LapRoom::default(),
            tyre: TyreReport::new(scenario),
            position: PositionReport::new(scenario),
            sheet_for: scenario.sheet_for,
            owners: scenario.owners.clone(),
            setups,
            comparison,
        }
    }

    /// One of the two set-ups.
    #[must_use]
    pub const fn setup(&self, side: Side) -> &SetupReport {
        &self.setups[side as usize]
    }

    /// The chains that there are: those whose wheels clear one another.
    pub fn solved_chains(&self) -> impl Iterator<Item = &ChainReport> {
        self.chains.iter().filter_map(|chain| chain.as_ref().ok())
    }

    /// Smallest and largest development of both, metres; at least half an octave, so that a small difference looks small.
    #[must_use]
    pub fn development_span(&self) -> (f64, f64) {
        let (low, high) = self.span(|line| line.development.m(), |line| line.development.m());
        let widen = (SMALLEST_SPAN / (high / low)).sqrt().max(1.0);
        (low / widen, high * widen)
    }

    /// Lowest and highest speed of both within the cadence window, in the unit of the page.
    #[must_use]
    pub fn speed_span(&self) -> (f64, f64) {
        self.span(|line| self.unit.value(line.speed_low), |line| self.unit.value(line.speed_high))
    }

    fn span(&self, low: impl Fn(&GearLine) -> f64, high: impl Fn(&GearLine) -> f64) -> (f64, f64) {
        let [a, b] = &self.setups;
        let last = |setup: &SetupReport| high(&setup.gears[setup.gears.len() - 1]);
        (low(&a.gears[0]).min(low(&b.gears[0])), last(a).max(last(b)))
    }

    /// A gear's speeds at the three cadences, in words.
    #[must_use]
    pub fn speeds_in_words(&self, line: &GearLine) -> String {
        let at = |speed, cadence: gear_math::Cadence| {
            format!("{} at {}", plain(self.unit.value(speed), 1), trimmed(cadence.rpm()))
        };
        format!(
            "{} at {}, {} and {}",
            self.unit.print(line.speed_low),
            rpm(self.window.low),
            at(line.speed_usual, self.window.usual),
            at(line.speed_high, self.window.high)
        )
    }
}

pub(crate) fn ties(setups: &[SetupReport; 2], comparison: &Comparison) -> Vec<Tie> {
    let tie = |shared: &gear_math::gears::SharedGear| {
        Some(Tie { a: setups[0].index_of(shared.a)?, b: setups[1].index_of(shared.b)?, step: shared.step })
    };
    comparison.shared.iter().filter_map(tie).collect()
}

pub(crate) fn reach(comparison: &Comparison) -> [Option<Reach>; 2] {
    let either = |a: Option<DevelopmentSpan>, b: Option<DevelopmentSpan>| {
        let of = |side, span: Option<DevelopmentSpan>| span.map(|span| Reach { side, span });
        of(Side::A, a).or(of(Side::B, b))
    };
    let (a, b) = (&comparison.only_a, &comparison.only_b);
    [either(a.below, b.below), either(a.above, b.above)]
}

pub(crate) fn near(setups: &[SetupReport; 2], tolerance: gear_math::DuplicateTolerance) -> Vec<Tie> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::{Field, Kind};

    /// Another text that the field understands, as far as one can be made up.
    fn another(field: Field) -> String {
        let start = field.spec().start;
        match field.spec().kind {
            Kind::Choice(choices) => choices[choices.len() - 1].0.to_owned(),
            _ => start.parse::<f64>().map_or("28".to_owned(), |number| (number * 1.05 + 0.01).to_string()),
        }
    }

    #[test]
    fn what_is_kept_is_what_would_be_worked_out() {
        let before = Report::default();
        for &field in Field::ALL {
            let mut bench = Bench::default();
            bench.write(field, &another(field));
            let scenario = Scenario::read(&bench, &Scenario::default()).scenario;
            let (kept, fresh) = (Report::after(&scenario, &before), Report::of(&scenario));
            assert_eq!(format!("{:?}", kept.ride), format!("{:?}", fresh.ride), "{field:?}");
        }
    }
}
