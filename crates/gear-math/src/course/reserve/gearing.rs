//! The gears of a bike as a plan sees them.

use crate::course::reserve::setup::ReserveSetup;
use crate::gears::Gear;
use crate::rider::{EffectiveMass, EffortAccount};

/// Width of a bin of the table of best gears, in m/s and in W.
const BIN: (f64, f64) = (0.15, 60.0);
/// How many bins there are; what lies beyond the last belongs to it.
const BINS: (usize, usize) = (100, 10);

/// The gears of a bike as a plan sees them.
#[derive(Debug, Clone)]
pub(super) struct Gearing {
    pub(super) gears: Vec<Gear>,
    /// Turns of the crank a minute at 1 m/s.
    pub(super) rpm: Vec<f64>,
    /// What pedalling in it counts for beside its charge where gears are chosen, W.
    pub(super) reluctance: Vec<f64>,
    /// Place of the ring among the rings.
    pub(super) rings: Vec<usize>,
    /// Gear that takes least from the reserve, by speed and power.
    best: Vec<u8>,
    /// Speed squared that a shift at the rear takes, and one at the front, m²/s².
    pub(super) rear: f64,
    pub(super) front: f64,
}

/// How the gear is settled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum In {
    /// The best for speed and power, changed for nothing.
    Best,
    /// This one.
    One(usize),
}

impl Gearing {
    pub(super) fn new(setup: &ReserveSetup, mass: EffectiveMass) -> Self {
        let bike = &setup.lap.bike;
        let gears: Vec<Gear> = bike.gears().collect();
        let rpm: Vec<f64> = gears.iter().map(|gear| 60.0 / gear.development(bike.wheel).m()).collect();
        let sustained = setup.account.effort.sustainable();
        let reluctance: Vec<f64> = gears.iter().map(|gear| bike.reluctance_w(*gear, sustained)).collect();
        let [rear, front] = [setup.lap.shifting.rear, setup.lap.shifting.front]
            .map(|shift| shift.square_lost(sustained, bike.efficiency, mass));
        let all = bike.drivetrain.chainset.rings();
        let place = |gear: &Gear| all.iter().position(|ring| *ring == gear.ring).unwrap_or(0);
        let rings = gears.iter().map(place).collect();
        Self { best: table(&rpm, &reluctance, &setup.account), gears, rpm, reluctance, rings, rear, front }
    }

    /// The gear used at a speed and a power.
    #[inline]
    pub(super) fn used(&self, gear: In, speed: f64, power: f64) -> usize {
        match gear {
            In::One(gear) => gear,
            In::Best => self.best(speed, power),
        }
    }

    #[inline]
    pub(super) fn best(&self, speed: f64, power: f64) -> usize {
        let speed = ((speed * (1.0 / BIN.0)) as usize).min(BINS.0 - 1);
        let power = ((power * (1.0 / BIN.1)) as usize).min(BINS.1 - 1);
        usize::from(self.best[speed * BINS.1 + power])
    }

    pub(super) fn same_ring(&self, one: usize, other: usize) -> bool {
        self.rings[one] == self.rings[other]
    }

    /// Speed squared that is lost from one gear to another.
    pub(super) fn loss(&self, from: usize, to: usize) -> f64 {
        match () {
            () if from == to => 0.0,
            () if self.same_ring(from, to) => self.rear,
            () => self.front,
        }
    }
}

fn table(rpm: &[f64], reluctance: &[f64], account: &EffortAccount) -> Vec<u8> {
    let middle = |bin: usize, width: f64| (bin as f64 + 0.5) * width;
    let bins = (0..BINS.0).flat_map(|speed| (0..BINS.1).map(move |power| (speed, power)));
    let counted =
        |gear: usize, speed: f64, power: f64| account.charge_w(power, rpm[gear] * speed) + reluctance[gear];
    let best = |speed: f64, power: f64| best(rpm, |gear| counted(gear, speed, power));
    bins.map(|(speed, power)| best(middle(speed, BIN.0), middle(power, BIN.1))).collect()
}

/// The gear that counts for least; the lowest where none can turn so much.
fn best(rpm: &[f64], counted: impl Fn(usize) -> f64) -> u8 {
    let better = |a: usize, b: usize| match counted(a).total_cmp(&counted(b)) {
        core::cmp::Ordering::Equal => {
            if rpm[b] > rpm[a] {
                b
            } else {
                a
            }
        }
        core::cmp::Ordering::Less => a,
        core::cmp::Ordering::Greater => b,
    };
    (0..rpm.len()).reduce(better).unwrap_or(0) as u8
}
