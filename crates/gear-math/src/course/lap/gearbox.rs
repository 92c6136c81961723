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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rider::BikeMass;
    use crate::{Circumference, Drivetrain};

    /// On a wheel of two metres, so that 40 × 20 makes four metres a turn.
    fn gears(rings: &str, cassette: &str) -> Gears {
        let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2000.0).unwrap());
        Gears::new(&bike, &Shifting::USUAL)
    }

    /// Speed that turns a way per crank turn at the preferred 80 rpm, m/s.
    fn at_80(development: f64) -> f64 {
        development * 80.0 / 60.0
    }

    fn shifted(gears: &Gears, speed: f64, now: u8) -> Option<(Gear, f64)> {
        gears.shift(speed, now).map(|(to, time)| (gears.gear(to), time))
    }

    #[test]
    fn gears_stand_from_the_lowest_up() {
        let gears = gears("40/30", "10-20-30");
        let developments: Vec<f64> = (0..6).map(|at| gears.development(at)).collect();
        let expected = [2.0, 80.0 / 30.0, 3.0, 4.0, 6.0, 8.0];
        assert!(developments.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-12), "{developments:?}");
        assert_eq!(gears.range(), (developments[0], developments[5]));
        assert_eq!(gears.all().count(), 6);
    }

    #[test]
    fn one_sets_off_in_the_gear_nearest_to_the_preferred_cadence() {
        let gears = gears("40", "10-14-20-28-40");
        for index in 0..5 {
            let development = gears.development(index);
            assert_eq!([0.88, 1.0, 1.13].map(|off| gears.first(off * at_80(development))), [index; 3]);
        }
        assert_eq!([gears.first(0.3), gears.first(25.0)], [0, 4]);
    }

    /// Steps of √2 about: the window of 15 % ends before the next gear is nearer.
    #[test]
    fn within_the_window_a_gear_is_kept_and_beyond_it_a_nearer_one_is_taken() {
        let gears = gears("40", "20-22-24-27-30");
        let middle = 2;
        let at = |share: f64| shifted(&gears, share * at_80(gears.development(middle)), middle);
        assert_eq!([at(0.851), at(1.0), at(1.149)], [None; 3]);
        let (up, down) = (Gear::new(40, 20).unwrap(), Gear::new(40, 30).unwrap());
        assert_eq!(at(1.2), Some((up, 0.2)));
        assert_eq!(at(0.8), Some((down, 0.2)));
        assert_eq!([gears.shift(30.0, 4), gears.shift(0.1, 0)], [None; 2], "there is no other");
    }

    /// From 2 to 4 m: the gear above is kept from 85 % of 80 rpm, and 15 % more are waited for.
    #[test]
    fn wide_steps_are_waited_for() {
        let gears = gears("40", "10-20-40");
        let first = 1.15 * 0.85 * at_80(4.0);
        assert_eq!(gears.shift(first - 0.01, 0), None);
        assert_eq!(gears.shift(first + 0.01, 0), Some((1, 0.2)));
        let second = 1.15 * 0.85 * at_80(8.0);
        assert_eq!([gears.shift(second - 0.01, 1), gears.shift(second + 0.01, 1)], [None, Some((2, 0.2))]);
        // Down where the lower gear is nearer by more than 3 %, half of that on either side of the middle.
        let middle = at_80(f64::sqrt(8.0)) * f64::exp(-0.015);
        assert_eq!([gears.shift(1.002 * middle, 1), gears.shift(0.998 * middle, 1)], [None, Some((0, 0.2))]);
    }

    /// 50 × 20 makes as much of a turn as 40 × 16.
    #[test]
    fn another_ring_must_be_better_by_15_per_cent() {
        let gear = |ring, sprocket| Gear::new(ring, sprocket).unwrap();
        let index = |gears: &Gears, wanted: Gear| gears.all().position(|it| it == wanted).unwrap() as u8;
        let close = gears("50/40", "16-20");
        let now = index(&close, gear(40, 20));
        assert_eq!(shifted(&close, at_80(5.0), now), Some((gear(40, 16), 0.2)));
        for (off, taken) in [(0.14, (gear(40, 16), 0.2)), (0.16, (gear(50, 16), 0.6))] {
            // As much farther from 40 × 16 than from 50 × 16.
            let speed = at_80((5.0 * 6.25_f64).sqrt() * f64::exp(0.5 * off));
            assert_eq!(shifted(&close, speed, now), Some(taken), "{off}");
        }
    }

    #[test]
    fn changing_the_ring_counts_at_the_front_only() {
        let gears = gears("50/40", "16-20");
        let index = |ring, sprocket| {
            gears.all().position(|it| it == Gear::new(ring, sprocket).unwrap()).unwrap() as u8
        };
        assert_eq!(gears.shifts(index(40, 20), index(40, 20)), (0, 0));
        assert_eq!(gears.shifts(index(40, 20), index(40, 16)), (1, 0));
        assert_eq!(gears.shifts(index(40, 20), index(50, 20)), (0, 1));
        assert_eq!(gears.shifts(index(40, 20), index(50, 16)), (0, 1));
    }
}
