//! Which speeds are worth looking at once laps are known.

use crate::course::reserve::laps::Laps;
use crate::course::reserve::moment::Ridden;
use crate::course::reserve::search::Search;
use crate::course::reserve::way::SLOWEST;

/// Speeds looked at where a dismount is near, m/s.
const ABOUT_FEET: [f64; 2] = [SLOWEST, 4.5];
/// The lowest of the speeds looked at is no higher than this share of the highest that is allowed.
const ROOM_BELOW: f64 = 0.9;

impl Search<'_> {
    /// Speeds looked at about laps that were found.
    pub(super) fn near(&self, laps: &Laps) -> Vec<[f64; 2]> {
        let Some(reach) = self.fineness.reach else { return self.way.ranges() };
        let places = self.way.ceilings.iter().enumerate();
        let ranges = places.map(|(at, &ceiling)| {
            let about = laps.laps.iter().chain(&laps.doubted).map(|lap| about(lap, at, reach));
            let [low, high] = about.fold([ceiling, 0.0], |all, one| [all[0].min(one[0]), all[1].max(one[1])]);
            [low.min(ROOM_BELOW * ceiling).max(SLOWEST), high.min(ceiling)]
        });
        ranges.collect()
    }
}

fn about(lap: &Ridden, at: usize, reach: f64) -> [f64; 2] {
    let count = lap.moments.len();
    let speed = |at: usize| lap.moments[at % count].gear.map(|_| lap.moments[at % count].entry);
    let riding = speed(at + count - 1).and(speed(at));
    riding.map_or(ABOUT_FEET, |speed| [speed / (1.0 + reach), speed * (1.0 + reach)])
}
