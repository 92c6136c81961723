//! Which gear holds a speed, and when none does.

use crate::gears::{Gear, PedalRate};
use crate::order::ascending;
use crate::quantity::{Cadence, Speed};
use crate::rider::pedalling::LegStrength;
use crate::rider::rider::{Bike, Rider};

/// The gears of a bike from the lowest up, with the cadences its rider can use.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Gearing {
    /// Gear and development in metres, from the lowest up.
    gears: Vec<(Gear, f64)>,
    /// Cadence below which the rider cannot keep the crank turning, in rpm.
    slowest: f64,
    /// Cadence below which the legs are too weak for the power, in rpm; infinite when they always are.
    strong_enough: f64,
    /// Fastest usable cadence, in rpm.
    fastest: f64,
}

/// The gear a rider takes at a speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Riding {
    /// The gear: of those that can be turned the one nearest to 80 rpm, or the lowest when none can.
    pub gear: Gear,
    /// Cadence that the speed of the full power asks for in it.
    pub cadence: PedalRate,
    /// Speed that is kept up: that of the full power, or less where the legs cannot spin fast enough.
    /// `None` where no gear is low enough.
    pub held: Option<Speed>,
}

impl Gearing {
    pub(super) fn new(rider: &Rider, bike: &Bike, legs: Option<&LegStrength>) -> Self {
        let mut gears: Vec<_> = bike.gears().map(|gear| (gear, gear.development(bike.wheel).m())).collect();
        ascending(&mut gears, |gear| gear.1);
        let (strong_enough, tiring) = match legs {
            Some(legs) => legs.cadences_for(rider.power).unwrap_or((f64::INFINITY, f64::INFINITY)),
            None => (0.0, f64::INFINITY),
        };
        let (slowest, spinning) = (rider.lowest_cadence.rpm(), rider.highest_cadence.rpm());
        Self { gears, slowest, strong_enough, fastest: spinning.min(tiring) }
    }

    fn lowest(&self) -> (Gear, f64) {
        self.gears[0]
    }

    /// Speed in the lowest gear at a cadence, in m/s.
    fn lowest_speed(&self, rpm: f64) -> f64 {
        self.lowest().1 * rpm / 60.0
    }

    /// Speed at which the lowest gear runs out.
    pub(super) fn speed_without_cadence(&self) -> f64 {
        self.lowest_speed(self.slowest)
    }

    /// Speed below which the legs are too weak, even in the lowest gear.
    pub(super) fn speed_without_strength(&self) -> f64 {
        self.lowest_speed(self.strong_enough)
    }

    pub(super) fn riding(&self, v: f64) -> Riding {
        let (gear, cadence, held) = self.turnable(v).unwrap_or_else(|| self.too_tall(v));
        Riding { gear, cadence: PedalRate::new(cadence), held: held.map(Speed::new) }
    }

    /// Of the gears that can be turned at `v` the one nearest to 80 rpm; if all spin too fast, the tallest of them.
    fn turnable(&self, v: f64) -> Option<(Gear, f64, Option<f64>)> {
        let floor = self.slowest.max(self.strong_enough);
        let rates = self.gears.iter().map(|&(gear, metres)| (gear, metres, v * 60.0 / metres));
        let turning = rates.take_while(|&(_, _, rpm)| rpm >= floor);
        let off = |rpm: f64| (rpm - Cadence::PREFERRED.rpm()).abs();
        let mut best: Option<(Gear, f64, f64)> = None;
        for (gear, metres, rpm) in turning {
            let nearer = best.is_none_or(|(_, _, before)| before > self.fastest || off(rpm) < off(before));
            if nearer {
                best = Some((gear, metres, rpm));
            }
        }
        best.map(|(gear, metres, rpm)| (gear, rpm, Some(v.min(self.fastest * metres / 60.0))))
    }

    fn too_tall(&self, v: f64) -> (Gear, f64, Option<f64>) {
        let (gear, metres) = self.lowest();
        (gear, v * 60.0 / metres, None)
    }
}
