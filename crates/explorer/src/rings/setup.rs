//! One set-up, gear by gear.

use crate::rings::cassettes::TypedCassette;
use crate::rings::inputs::RingsInputs;
use crate::side::Side;
use gear_math::chain::CageAnswer;
use gear_math::gears::{CrossedRule, GearStep, PedalRate, SetupSummary, ShiftKind, StepSpread};
use gear_math::order::ascending;
use gear_math::{Derailleur, Development, Drivetrain, Gear, GearInches, Setup, Speed};

/// One set-up.
#[derive(Debug)]
pub struct SetupReport {
    /// Which one.
    pub side: Side,
    /// Its rings and sprockets.
    pub drivetrain: Drivetrain,
    /// Its cassette as it was typed.
    pub typed: TypedCassette,
    /// Its gears, lowest first.
    pub gears: Vec<GearLine>,
    /// Its shifts, riding up ring by ring.
    pub riding: Vec<RideStep>,
    /// Mean, largest and equal step of those shifts; a single gear has none.
    pub steps: Option<StepSpread>,
    /// The set-up summed up by gear-math.
    pub summary: SetupSummary,
    /// Which gears count as crossed.
    pub crossed: CrossedRule,
    /// Whether the cage takes it, and which gears are not to be used.
    pub cage: CageAnswer,
}

/// One gear with all its numbers.
#[derive(Debug, Clone)]
pub struct GearLine {
    /// Ring and sprocket.
    pub gear: Gear,
    /// 0 on the largest ring, 1 on the next.
    pub rank: usize,
    /// Metres for a turn of the crank.
    pub development: Development,
    /// Gear inches, on the wheel the page is set to.
    pub inches: GearInches,
    /// Speed at the lowest cadence.
    pub speed_low: Speed,
    /// Speed at the usual cadence.
    pub speed_usual: Speed,
    /// Speed at the highest cadence.
    pub speed_high: Speed,
    /// Speed at the cadence being looked at.
    pub speed_probe: Speed,
    /// Cadence at the speed being looked at.
    pub cadence_probe: PedalRate,
    /// Whether the chain runs at its steepest.
    pub crossed: bool,
    /// Whether another gear of the set-up is counted in its place.
    pub duplicate: bool,
    /// Slack the cage has to take up, in teeth.
    pub slack: u16,
    /// Teeth of it beyond the maker's capacity: there the chain hangs.
    pub beyond_cage: u16,
    /// Whether it is not to be used.
    pub avoid: bool,
}

/// One shift on the way up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RideStep {
    /// Index of the gear left.
    pub from: usize,
    /// Index of the gear taken.
    pub to: usize,
    /// Which derailleurs move.
    pub kind: ShiftKind,
    /// How large it is.
    pub step: GearStep,
}

impl SetupReport {
    pub(crate) fn new(
        side: Side,
        summary: &SetupSummary,
        inputs: &RingsInputs,
        cage: &CageAnswer,
        derailleur: &Derailleur,
    ) -> Self {
        let set_up = &inputs.set_up(side, cage);
        let drivetrain = set_up.drivetrain;
        let mut report = Self {
            side,
            drivetrain,
            typed: inputs.typed_cassette(side),
            gears: gear_lines(set_up, summary, inputs, derailleur),
            riding: Vec::new(),
            steps: summary.riding_order.step_spread(),
            crossed: drivetrain.crossed_rule(),
            cage: cage.clone(),
            summary: summary.clone(),
        };
        report.riding = report.ride_steps(summary);
        report
    }

    /// The lowest gear that may be used.
    #[must_use]
    pub fn lowest(&self) -> &GearLine {
        &self.gears[self.index_of(self.summary.lowest.gear).unwrap_or(0)]
    }

    /// The highest gear that may be used.
    #[must_use]
    pub fn highest(&self) -> &GearLine {
        let last = self.gears.len() - 1;
        &self.gears[self.index_of(self.summary.highest.gear).unwrap_or(last)]
    }

    /// How many gears may be used; all where none may, since the numbers then go on as if they ran.
    #[must_use]
    pub fn usable(&self) -> usize {
        self.gears.len() - self.cage.avoid.unless_all(&self.drivetrain).count()
    }

    /// Names of the gears that are not to be used, lowest first.
    #[must_use]
    pub fn avoided(&self) -> Vec<String> {
        self.gears.iter().filter(|line| line.avoid).map(|line| line.gear.to_string()).collect()
    }

    /// Where a gear stands among the gears, lowest first.
    #[must_use]
    pub fn index_of(&self, gear: Gear) -> Option<usize> {
        self.gears.iter().position(|line| line.gear == gear)
    }

    fn ride_steps(&self, summary: &SetupSummary) -> Vec<RideStep> {
        let step = |shift: &gear_math::gears::Shift| {
            Some(RideStep {
                from: self.index_of(shift.from)?,
                to: self.index_of(shift.to)?,
                kind: shift.kind,
                step: shift.step,
            })
        };
        summary.riding_order.shifts.iter().filter_map(step).collect()
    }
}

fn gear_lines(
    set_up: &Setup,
    summary: &SetupSummary,
    inputs: &RingsInputs,
    derailleur: &Derailleur,
) -> Vec<GearLine> {
    let drivetrain = &set_up.drivetrain;
    let crossed = drivetrain.crossed_rule();
    let useful: Vec<Gear> = summary.useful_order.gears().collect();
    let mut lines: Vec<GearLine> = set_up
        .rows()
        .map(|row| {
            let rank =
                drivetrain.chainset.rings().iter().position(|&ring| ring == row.gear.ring).unwrap_or(0);
            let is_crossed = crossed.covers(row.gear);
            let avoid = set_up.avoid.holds(drivetrain, row.gear);
            GearLine {
                gear: row.gear,
                rank,
                development: row.development,
                inches: if inputs.nominal_inches { row.gear.nominal_gear_inches() } else { row.gear_inches },
                speed_low: row.speed_at(inputs.window.low),
                speed_usual: row.speed_at(inputs.window.usual),
                speed_high: row.speed_at(inputs.window.high),
                speed_probe: row.speed_at(inputs.probe.cadence),
                cadence_probe: row.development.cadence_at(inputs.probe.speed),
                crossed: is_crossed,
                duplicate: !is_crossed && !avoid && !useful.contains(&row.gear),
                avoid,
                slack: drivetrain.slack(row.gear),
                beyond_cage: derailleur.slack_beyond(drivetrain, row.gear),
            }
        })
        .collect();
    lines.reverse();
    ascending(&mut lines, |line| line.development.m());
    lines
}
