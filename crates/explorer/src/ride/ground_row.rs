//! Every ground on every slope.

use crate::ride::inputs::RideInputs;
use crate::side::Side;
use gear_math::rider::{Cell, Climb, LimitsHeld, Reason, Slope, Verdict, verdict_map};
use gear_math::{Ground, RideOrRun, Surface};
use std::slice;

/// How many verdicts there are.
const VERDICTS: u8 = 4;

/// As far as the map goes, per cent.
const STEEPEST: f64 = 45.0;

/// One ground of the map.
#[derive(Debug, Clone)]
pub struct GroundRow {
    /// Which one; `None` for one with values of the rider's own.
    pub surface: Option<Surface>,
    /// Whether it is the ground that was asked about.
    pub here: bool,
    /// Stretches of one verdict for A and B, from the level up.
    pub stretches: [Vec<Stretch>; 2],
    /// Where riding A and B ends whatever the gear, per cent; 45 % where it does not.
    pub any_gear: [f64; 2],
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

/// Gradients of one verdict, and whether only a lower gear is missing there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// The gradients; where riding would end whatever the gear, the gear is not the reason.
    pub stretch: Stretch,
    /// Whether a lower gear would do.
    pub lower_gear_rides: bool,
}

impl GroundRow {
    /// The stretches of a side, parted where riding ends whatever the gear.
    #[must_use]
    pub fn parts(&self, side: Side) -> Vec<Part> {
        let end = self.any_gear[side as usize];
        self.stretches[side as usize].iter().flat_map(|it| parted(*it, end)).collect()
    }
}

fn parted(stretch: Stretch, end: f64) -> Vec<Part> {
    if !matches!(stretch.reason, Some(Reason::Gear | Reason::Force)) {
        return vec![Part { stretch, lower_gear_rides: false }];
    }
    let between = end.clamp(stretch.from, stretch.to);
    let below = Part { stretch: Stretch { to: between, ..stretch }, lower_gear_rides: true };
    let beyond =
        Part { stretch: Stretch { from: between, reason: None, ..stretch }, lower_gear_rides: false };
    [below, beyond].into_iter().filter(|it| it.stretch.to > it.stretch.from).collect()
}

/// The grounds of the table, and the rider's own last.
pub(crate) fn map(inputs: &RideInputs, gradients: &[Climb]) -> Vec<GroundRow> {
    let mut grounds: [Vec<Ground>; 2] = Side::BOTH.map(|side| usual(inputs, side));
    let mut surfaces: Vec<Option<Surface>> = Surface::ALL.iter().copied().map(Some).collect();
    let mut here = inputs.surface as usize;
    if inputs.own.any() {
        here = surfaces.len();
        Side::BOTH.iter().for_each(|&side| grounds[side as usize].push(*inputs.ground(side)));
        surfaces.push(None);
    }
    let maps = Side::BOTH.map(|side| {
        verdict_map(slice::from_ref(inputs.question(side)), &grounds[side as usize], gradients).remove(0)
    });
    let cells = |side: Side, row: usize| {
        let cells = &maps[side as usize][row * gradients.len()..][..gradients.len()];
        stretches(cells, gradients, inputs.question(side), &grounds[side as usize][row])
    };
    let row = |(row, surface)| GroundRow {
        surface,
        here: row == here,
        stretches: Side::BOTH.map(|side| cells(side, row)),
        any_gear: Side::BOTH.map(|side| in_any_gear(inputs.question(side), &grounds[side as usize][row])),
    };
    surfaces.into_iter().enumerate().map(row).collect()
}

fn in_any_gear(question: &RideOrRun, ground: &Ground) -> f64 {
    question.ends_in_any_gear(ground).map_or(STEEPEST, Slope::percent)
}

/// Every kind of ground under the tyre of a side.
fn usual(inputs: &RideInputs, side: Side) -> Vec<Ground> {
    let (slope_share, tyre) = (inputs.ground(side).slope_share, inputs.bike(side).tyre);
    Surface::ALL.iter().map(|surface| Ground { slope_share, ..surface.ground_under(tyre) }).collect()
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
