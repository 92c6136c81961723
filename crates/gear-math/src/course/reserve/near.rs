//! Which speeds are worth looking at once laps are known.

use crate::course::reserve::laps::Laps;
use crate::course::reserve::moment::Ridden;
use crate::course::reserve::range::Range;
use crate::course::reserve::search::Search;
use crate::course::reserve::way::SLOWEST;

/// Speeds looked at where a dismount is near, m/s.
const ABOUT_FEET: [f64; 2] = [SLOWEST, 4.5];
/// Laps whose speeds are apart by less than this factor are looked at together.
const BEYOND: f64 = 1.1;
/// The lowest of the speeds looked at is no higher than this share of the highest that is allowed.
const ROOM_BELOW: f64 = 0.9;

impl Search<'_> {
    /// Speeds looked at about laps that were found.
    pub(super) fn near(&self, laps: &Laps) -> Vec<Range> {
        let Some(reach) = self.fineness.reach else { return self.way.ranges() };
        let nearest = laps.nearest();
        let range = |(at, &ceiling): (usize, &f64)| {
            let all = laps.laps.iter().chain(&laps.doubted).map(|lap| about(lap, at, reach));
            let likely = within(about(&nearest, at, reach), ceiling);
            let possible =
                all.map(|one| within(one, ceiling)).filter(|one| is_beyond(*one, likely)).fold(likely, wider);
            Range { possible, likely }
        };
        self.way.ceilings.iter().enumerate().map(range).collect()
    }
}

fn about(lap: &Ridden, at: usize, reach: f64) -> [f64; 2] {
    let count = lap.moments.len();
    let speed = |at: usize| lap.moments[at % count].gear.map(|_| lap.moments[at % count].entry);
    let riding = speed(at + count - 1).and(speed(at));
    riding.map_or(ABOUT_FEET, |speed| [speed / (1.0 + reach), speed * (1.0 + reach)])
}

fn within([low, high]: [f64; 2], ceiling: f64) -> [f64; 2] {
    [low.min(ROOM_BELOW * ceiling).max(SLOWEST), high.min(ceiling)]
}

fn is_beyond(one: [f64; 2], other: [f64; 2]) -> bool {
    one[0] * BEYOND < other[0] || one[1] > other[1] * BEYOND
}

fn wider(one: [f64; 2], other: [f64; 2]) -> [f64; 2] {
    [one[0].min(other[0]), one[1].max(other[1])]
}
