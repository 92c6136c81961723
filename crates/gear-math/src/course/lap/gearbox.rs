//! Which gear is used at which speed, and when it is changed.

use crate::course::lap::costs::Shifting;
use crate::gears::Gear;
use crate::order::ascending;
use crate::rider::Bike;

/// Preferring the ring in use to another, expressed as a difference of cadence: 15 %. Estimate.
const RING_LOYALTY: f64 = 0.15;
/// Speed that may be lost while shifting up before the rider would shift down again, as a share. Estimate: a fifth
/// of a second in deep mud costs about half of it.
const ROOM_AFTER_SHIFT: f64 = 0.15;
/// A shift must bring the cadence this much nearer to the preferred one, so that two gears do not alternate.
/// Estimate.
const LEAST_GAIN: f64 = 0.03;

/// The gears of a bicycle with the rider's habit of shifting.
///
/// The gear is kept while the cadence stays within the window about the preferred one. Outside it the gear nearest
/// to the preferred cadence is taken, by the ratio of cadences. So that the choice does not hunt, another ring must be
/// better by 15 % and any other gear by 3 %, and where steps are wide the rider waits with shifting up until the speed
/// would have to fall by 15 % before shifting down again.
#[derive(Debug, Clone)]
pub(in crate::course) struct Gears {
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
    /// Those of a bike that are not to be avoided.
    pub(in crate::course) fn new(bike: &Bike, shifting: &Shifting) -> Self {
        let preferred = shifting.preferred.rpm() / 60.0;
        let window = shifting.window.share();
        let rung = |gear: Gear| {
            let development = gear.development(bike.wheel).m();
            let kept = (preferred * (1.0 - window) * development, preferred * (1.0 + window) * development);
            Rung { gear, development, logarithm: development.ln(), kept }
        };
        let mut gears: Vec<Rung> = bike.gears().map(rung).collect();
        ascending(&mut gears, |rung| rung.development);
        wait_before_wide_steps(&mut gears);
        let range = gears
            .first()
            .zip(gears.last())
            .map_or((1.0, 1.0), |(low, high)| (low.development, high.development));
        if let Some(low) = gears.first_mut() {
            low.kept.0 = 0.0;
        }
        if let Some(high) = gears.last_mut() {
            high.kept.1 = f64::INFINITY;
        }
        Self { gears, shifting: *shifting, range, preferred }
    }

    pub(in crate::course) fn gear(&self, index: u8) -> Gear {
        self.gears[usize::from(index)].gear
    }

    /// Shifts at the rear and at the front from one gear to another; changing the ring counts at the front only.
    pub(in crate::course) fn shifts(&self, from: u8, to: u8) -> (u32, u32) {
        let same_ring = self.gear(from).ring == self.gear(to).ring;
        (u32::from(from != to && same_ring), u32::from(!same_ring))
    }

    /// Shortest and longest way per crank turn, m.
    pub(in crate::course) fn range(&self) -> (f64, f64) {
        self.range
    }

    /// Way per crank turn, m.
    #[inline]
    pub(in crate::course) fn development(&self, gear: u8) -> f64 {
        self.gears[usize::from(gear)].development
    }

    /// The gear to set off with at a speed.
    pub(in crate::course) fn first(&self, speed: f64) -> u8 {
        let wanted = (speed / self.preferred).ln();
        let misfit = |rung: &Rung| (wanted - rung.logarithm).abs();
        let best = self.gears.iter().enumerate().min_by(|(_, a), (_, b)| misfit(a).total_cmp(&misfit(b)));
        best.map_or(0, |(index, _)| index as u8)
    }

    /// The gear to change to at a speed and the time without drive that takes, when there is a better one.
    #[inline]
    pub(in crate::course) fn shift(&self, speed: f64, now: u8) -> Option<(u8, f64)> {
        let rung = &self.gears[usize::from(now)];
        if speed >= rung.kept.0 && speed <= rung.kept.1 {
            return None;
        }
        let best = self.best(speed, usize::from(now));
        let other_ring = self.gears[best].gear.ring != rung.gear.ring;
        let time = if other_ring { self.shifting.front } else { self.shifting.rear };
        (best != usize::from(now)).then(|| (best as u8, time.s()))
    }

    /// Every gear, from the lowest.
    pub(in crate::course) fn all(&self) -> impl Iterator<Item = Gear> + '_ {
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

fn wait_before_wide_steps(gears: &mut [Rung]) {
    for index in 0..gears.len() {
        let (now, above) = gears.split_at_mut(index + 1);
        let now = &mut now[index];
        if let Some(next) = above.iter().find(|next| next.gear.ring == now.gear.ring) {
            now.kept.1 = now.kept.1.max(next.kept.0 * (1.0 + ROOM_AFTER_SHIFT));
        }
    }
}
