//! Following a given plan step by step.

use super::gearbox::Gearbox;
use super::modes::{AtLine, Mode};
use super::ride::{Ride, Rolling};

/// One step of a lap as it went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moment<S> {
    pub(super) mode: Mode,
    /// Time of the step, getting on or off before it included, s.
    pub(super) time: f64,
    /// Speed at the start of the step, m/s.
    pub(super) entry: f64,
    /// Speed at its end, m/s.
    pub(super) exit: f64,
    /// The gear, when riding.
    pub(super) gear: Option<S>,
}

/// The lap by a plan: each step, or none where the plan asks for riding that is not possible.
pub(super) fn follow<G: Gearbox>(
    ride: &Ride<'_, G>,
    modes: &[Mode],
    start: AtLine<G::State>,
) -> Option<Vec<Moment<G::State>>> {
    let mut state = start;
    modes.iter().enumerate().map(|(at, &mode)| follow_step(ride, at, mode, &mut state)).collect()
}

fn follow_step<G: Gearbox>(
    ride: &Ride<'_, G>,
    at: usize,
    mode: Mode,
    state: &mut AtLine<G::State>,
) -> Option<Moment<G::State>> {
    match mode {
        Mode::Foot => Some(step_on_foot(ride, at, state)),
        Mode::Ride => {
            let (lost, rolling) = mounted(ride, at, *state)?;
            let ridden = ride.step(at, &rolling)?;
            *state = AtLine::Rolling(ridden.end);
            let (entry, exit) = (rolling.speed, ridden.end.speed);
            Some(Moment { mode, time: lost + ridden.time, entry, exit, gear: Some(ridden.end.gear) })
        }
    }
}

fn step_on_foot<G: Gearbox>(ride: &Ride<'_, G>, at: usize, state: &mut AtLine<G::State>) -> Moment<G::State> {
    let cell = &ride.terrain.cells[at];
    let lost = if matches!(state, AtLine::Rolling(_)) { ride.terrain.off } else { 0.0 };
    *state = AtLine::OnFoot;
    let speed = cell.foot_speed;
    Moment { mode: Mode::Foot, time: lost + cell.foot_time, entry: speed, exit: speed, gear: None }
}

/// Time lost in getting on before step `at`, and how the rider rolls then.
fn mounted<G: Gearbox>(
    ride: &Ride<'_, G>,
    at: usize,
    state: AtLine<G::State>,
) -> Option<(f64, Rolling<G::State>)> {
    match state {
        AtLine::Rolling(rolling) => Some((0.0, rolling)),
        AtLine::OnFoot => {
            let cells = &ride.terrain.cells;
            let walked = at.checked_sub(1).unwrap_or(cells.len() - 1);
            let rolling = ride.mounted(cells[walked].foot_speed);
            ride.can_set_off(at, rolling.speed).then_some((ride.terrain.on, rolling))
        }
    }
}
