//! The laps of both bikes at one draw.

use crate::course::course::Course;
use crate::course::doubt::bending::bending_s;
use crate::course::doubt::draw::Draw;
use crate::course::lap::lap::Lap;
use crate::course::lap::modes::Mode;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::setup::ReserveSetup;

/// The laps of both bikes at one [`Draw`]: done one by one, in any order and by any number of workers.
///
/// # Formula
/// Each time is that of [`Lap::on_reserve`]. The friction in the chain's pins moves both apart by half the difference that the gears
/// of their laps make each, because the level of what is lost is already that of drivetrain efficiency.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Course, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::{Draws, LapDraw, ReserveSetup};
/// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
/// let setup = |cassette: &str| -> Result<_, Box<dyn std::error::Error>> {
///     let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: cassette.parse()? };
///     let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
///     Ok(ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort)))
/// };
/// let course: Course = "150; 0; firm grass\n40; 12; mud\n60; -8; firm grass".parse()?;
/// let pair = [setup("11-13-15-17-20-23-27-32")?, setup("11-13-15-17-20-23-26-28")?];
/// let done = LapDraw::of(&course, &pair, &Draws::usual().draw(0));
/// assert!((done.time_s[0] - done.time_s[1]).abs() < 5.0);
/// let alone = pair.map(|setup| LapDraw::alone_s(&course, &setup, &Draws::usual().draw(0)));
/// assert!((alone[0] - alone[1] - done.gained_s()).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct LapDraw {
    /// Time of the lap of each, in seconds.
    pub time_s: [f64; 2],
    /// Where each is gone on foot: from and to, in metres from the line, in order.
    pub on_foot_m: [Vec<[f64; 2]>; 2],
}

impl LapDraw {
    /// How far off what the second gains may be over all draws because laps are planned in quick steps, in seconds. Estimate: 22
    /// pairs were 0.04 s off those in fine steps in the mean, which a band does not show, and 0.1 s one from another, which it does.
    pub const STEP_ERROR_S: f64 = 0.1;

    /// Rides both laps at a draw, in the steps of [`Fineness::DRAWN`].
    #[must_use]
    pub fn of(course: &Course, given: &[ReserveSetup; 2], draw: &Draw) -> Self {
        let setups = given.map(|setup| draw.setup(&setup));
        let lap = |setup: &ReserveSetup| Lap::on_reserve(course, setup, Fineness::DRAWN);
        let first = lap(&setups[0]);
        if given[0] == given[1] {
            return Self { time_s: [first.time_s; 2], on_foot_m: [spans(&first), spans(&first)] };
        }
        let laps = [first, lap(&setups[1])];
        let [a, b] = [0, 1].map(|side| bending_s(&setups[side], &laps[side], draw.pins));
        let apart = 0.5 * (a - b);
        Self {
            time_s: [laps[0].time_s + apart, laps[1].time_s - apart],
            on_foot_m: laps.map(|lap| spans(&lap)),
        }
    }

    /// Time of one lap by itself at a draw, in seconds, to be held against those of others at the same draw: all that the chain's
    /// pins make is in it, so that two of them are as far apart as those of [`LapDraw::of`].
    #[must_use]
    pub fn alone_s(course: &Course, given: &ReserveSetup, draw: &Draw) -> f64 {
        let setup = draw.setup(given);
        let lap = Lap::on_reserve(course, &setup, Fineness::DRAWN);
        lap.time_s + bending_s(&setup, &lap, draw.pins)
    }

    /// What the second gains on the first, in seconds.
    #[must_use]
    pub fn gained_s(&self) -> f64 {
        self.time_s[0] - self.time_s[1]
    }
}

fn spans(lap: &Lap) -> Vec<[f64; 2]> {
    let on_foot = lap.plan.iter().filter(|part| part.mode == Mode::Foot);
    on_foot.map(|part| [part.from_m, part.to_m]).collect()
}
