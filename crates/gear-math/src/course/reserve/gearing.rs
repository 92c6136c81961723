//! The gears of a bike as a plan sees them.

use crate::course::reserve::charge::Charge;
use crate::course::reserve::setup::ReserveSetup;
use crate::gears::Gear;

/// Width of a bin of the table of best gears, in m/s and W.
const SPEED_BIN: f64 = 0.15;
const SPEEDS: usize = 100;
const POWER_BIN: f64 = 60.0;
const POWERS: usize = 10;

/// The gears of a bike.
#[derive(Debug, Clone)]
pub(super) struct Gearing {
    pub(super) gears: Vec<Gear>,
    /// rpm of the crank at 1 m/s.
    pub(super) rpm: Vec<f64>,
    /// Best gear by speed and power.
    best: Vec<u8>,
    /// Speed squared that a shift at the rear and one at the front take, m²/s².
    pub(super) rear: f64,
    pub(super) front: f64,
}

/// Which gear is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum In {
    /// The best for speed and power, changed for nothing.
    Best,
    /// This one.
    One(usize),
}

impl Gearing {
    pub(super) fn new(setup: &ReserveSetup, mass: f64) -> Self {
        let bike = &setup.lap.bike;
        let gears: Vec<Gear> = bike.gears().collect();
        let rpm: Vec<f64> = gears.iter().map(|gear| 60.0 / gear.development(bike.wheel).m()).collect();
        let lost = |seconds: f64| 2.0 * bike.efficiency.share() * setup.charge.cp * seconds / mass;
        let best = table(&rpm, &setup.charge);
        let shifting = &setup.lap.shifting;
        Self { gears, rpm, best, rear: lost(shifting.rear.s()), front: lost(shifting.front.s()) }
    }

    #[inline(always)]
    pub(super) fn best(&self, speed: f64, power: f64) -> usize {
        let speed = ((speed * (1.0 / SPEED_BIN)) as usize).min(SPEEDS - 1);
        let power = ((power * (1.0 / POWER_BIN)) as usize).min(POWERS - 1);
        usize::from(self.best[speed * POWERS + power])
    }

    #[inline(always)]
    pub(super) fn used(&self, gear: In, speed: f64, power: f64) -> usize {
        match gear {
            In::One(gear) => gear,
            In::Best => self.best(speed, power),
        }
    }

    #[inline(always)]
    pub(super) fn shift_loss(&self, from: usize, to: usize) -> f64 {
        if self.gears[from].ring == self.gears[to].ring { self.rear } else { self.front }
    }
}

fn table(rpm: &[f64], charge: &Charge) -> Vec<u8> {
    let mut best = Vec::with_capacity(SPEEDS * POWERS);
    for speed in 0..SPEEDS {
        for power in 0..POWERS {
            let speed = (speed as f64 + 0.5) * SPEED_BIN;
            let power = (power as f64 + 0.5) * POWER_BIN;
            let cost = |at: &f64| charge.charge_w(power, at * speed);
            let found = rpm.iter().map(cost).enumerate().min_by(|a, b| a.1.total_cmp(&b.1));
            let fallback = rpm.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1));
            let gear = match found {
                Some((gear, cost)) if cost.is_finite() => gear,
                _ => fallback.map_or(0, |it| it.0),
            };
            best.push(gear as u8);
        }
    }
    best
}
