//! Following a given plan step by step.

use crate::course::lap::modes::Mode;
use crate::course::lap::ride::{Ride, Rolling};

/// One step of a lap as it went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Moment {
    pub(in crate::course) mode: Mode,
    /// Time of the step, getting on or off before it included, s.
    pub(in crate::course) time: f64,
    /// Speed at the start of the step, m/s.
    pub(in crate::course) entry: f64,
    /// Speed at its end, m/s.
    pub(in crate::course) exit: f64,
    /// The gear, when riding.
    pub(in crate::course) gear: Option<u8>,
}

/// Every step of a course by a plan, begun riding as `start`; none where the plan asks for riding that is not possible.
pub(in crate::course) fn follow(ride: &Ride<'_>, modes: &[Mode], start: Rolling) -> Option<Vec<Moment>> {
    let mut rolling = Some(start);
    modes.iter().enumerate().map(|(at, &mode)| moment(ride, at, mode, &mut rolling)).collect()
}

/// Step `at`, for a rider who is rolling or on foot.
fn moment(ride: &Ride<'_>, at: usize, mode: Mode, rolling: &mut Option<Rolling>) -> Option<Moment> {
    match mode {
        Mode::Foot => Some(on_foot(ride, at, rolling)),
        Mode::Ride => {
            let on = if rolling.is_some() { 0.0 } else { ride.terrain.on };
            let start = rolling.or_else(|| mounted(ride, at))?;
            let ridden = ride.step(at, &start)?;
            *rolling = Some(ridden.end);
            let gear = Some(ridden.end.gear);
            Some(Moment { mode, time: on + ridden.time, entry: start.speed, exit: ridden.end.speed, gear })
        }
    }
}

fn on_foot(ride: &Ride<'_>, at: usize, rolling: &mut Option<Rolling>) -> Moment {
    let cell = &ride.terrain.cells[at];
    let off = if rolling.take().is_some() { ride.terrain.off } else { 0.0 };
    let speed = cell.foot_speed;
    Moment { mode: Mode::Foot, time: off + cell.foot_time, entry: speed, exit: speed, gear: None }
}

fn mounted(ride: &Ride<'_>, at: usize) -> Option<Rolling> {
    let speed = ride.mounting_speed(at);
    ride.can_set_off(at, speed).then(|| ride.rolling(speed))
}
