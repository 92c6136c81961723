//! Which gear is used at which speed: real gears with their shifts, or a gearbox without steps.

use super::costs::Shifting;
use crate::{Circumference, Drivetrain, Gear};

/// What a lap needs to know of the gears.
pub(super) trait Gearbox {
    /// Which gear is in.
    type State: Copy + PartialEq;

    /// Shortest and longest way per crank turn, m.
    fn range(&self) -> (f64, f64);
    /// The gear to set off with at a speed.
    fn first(&self, speed: f64) -> Self::State;
    /// The gear to change to at a speed and the time without drive that takes, when there is a better one.
    fn shift(&self, speed: f64, now: Self::State) -> Option<(Self::State, f64)>;
    /// Way per crank turn, m.
    fn development(&self, speed: f64, now: Self::State) -> f64;
}

/// Preferring the ring in use to another, expressed as a difference of cadence: 15 %. Estimate.
const RING_LOYALTY: f64 = 0.15;
/// A shift must bring the cadence this much nearer to the preferred one, so that two gears do not alternate.
/// Estimate.
const LEAST_GAIN: f64 = 0.03;

/// The gears of a bicycle with the rider's habit of shifting.
///
/// The gear is kept while the cadence stays within the window about the preferred one. Outside it the gear nearest
/// to the preferred cadence is taken, by the ratio of cadences; another ring must be better by 15 % and any other
/// gear by 3 %, so that the choice does not hunt.
#[derive(Debug, Clone)]
pub(super) struct Gears {
    gears: Vec<Rung>,
    shifting: Shifting,
    range: (f64, f64),
    /// Speed over development at the preferred cadence, 1/s.
    preferred: f64,
}

#[derive(Debug, Clone, Copy)]
struct Rung {
    gear: Gear,
    development: f64,
    logarithm: f64,
    /// Speeds between which the gear is kept without looking for another.
    kept: (f64, f64),
}

impl Gears {
    pub(super) fn new(drivetrain: &Drivetrain, wheel: Circumference, shifting: &Shifting) -> Self {
        let preferred = shifting.preferred.rpm() / 60.0;
        let window = shifting.window.share();
        let rung = |gear: Gear| {
            let development = gear.development(wheel).m();
            let kept = (preferred * (1.0 - window) * development, preferred * (1.0 + window) * development);
            Rung { gear, development, logarithm: development.ln(), kept }
        };
        let mut gears: Vec<Rung> = drivetrain.gears().map(rung).collect();
        gears.sort_by(|a, b| a.development.total_cmp(&b.development));
        let range = gears.first().zip(gears.last()).map_or((1.0, 1.0), |(low, high)| (low.development, high.development));
        if let Some(low) = gears.first_mut() {
            low.kept.0 = 0.0;
        }
        if let Some(high) = gears.last_mut() {
            high.kept.1 = f64::INFINITY;
        }
        Self { gears, shifting: *shifting, range, preferred }
    }

    pub(super) fn gear(&self, index: u8) -> Gear {
        self.gears[usize::from(index)].gear
    }

    /// Every gear, from the lowest.
    pub(super) fn all(&self) -> impl Iterator<Item = Gear> + '_ {
        self.gears.iter().map(|rung| rung.gear)
    }

    fn misfit(&self, wanted: f64, index: usize, now: usize) -> f64 {
        let other_ring = self.gears[index].gear.ring != self.gears[now].gear.ring;
        (wanted - self.gears[index].logarithm).abs() + if other_ring { RING_LOYALTY } else { 0.0 }
    }

    fn best(&self, speed: f64, now: usize) -> usize {
        let wanted = (speed / self.preferred).ln();
        let misfit = |index: usize| self.misfit(wanted, index, now);
        let best = (0..self.gears.len()).min_by(|&a, &b| misfit(a).total_cmp(&misfit(b))).unwrap_or(now);
        if misfit(best) + LEAST_GAIN < misfit(now) { best } else { now }
    }
}

impl Gearbox for Gears {
    type State = u8;

    fn range(&self) -> (f64, f64) {
        self.range
    }

    fn first(&self, speed: f64) -> u8 {
        let wanted = (speed / self.preferred).ln();
        let misfit = |rung: &Rung| (wanted - rung.logarithm).abs();
        let best = self.gears.iter().enumerate().min_by(|(_, a), (_, b)| misfit(a).total_cmp(&misfit(b)));
        best.map_or(0, |(index, _)| index as u8)
    }

    #[inline]
    fn shift(&self, speed: f64, now: u8) -> Option<(u8, f64)> {
        let rung = &self.gears[usize::from(now)];
        if speed >= rung.kept.0 && speed <= rung.kept.1 {
            return None;
        }
        let best = self.best(speed, usize::from(now));
        let other_ring = self.gears[best].gear.ring != rung.gear.ring;
        let time = if other_ring { self.shifting.front } else { self.shifting.rear };
        (best != usize::from(now)).then(|| (best as u8, time.s()))
    }

    #[inline]
    fn development(&self, _speed: f64, now: u8) -> f64 {
        self.gears[usize::from(now)].development
    }
}

/// A gearbox without steps between a lowest and a highest development, which costs nothing to shift.
///
/// It is what every set-up with these two extremes is compared with: the difference is what its steps and shifts
/// cost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stepless {
    pub(super) lowest: f64,
    pub(super) highest: f64,
    /// Speed over development at the preferred cadence, 1/s.
    pub(super) preferred: f64,
}

impl Gearbox for Stepless {
    type State = ();

    fn range(&self) -> (f64, f64) {
        (self.lowest, self.highest)
    }

    fn first(&self, _speed: f64) {}

    fn shift(&self, _speed: f64, (): ()) -> Option<((), f64)> {
        None
    }

    #[inline]
    fn development(&self, speed: f64, (): ()) -> f64 {
        (speed / self.preferred).clamp(self.lowest, self.highest)
    }
}
