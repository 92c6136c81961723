//! How often a track comes round to where its laps begin.

use crate::course::track::median::median;
use crate::order::ascending;

/// A lap is no shorter, m. Estimate.
const SHORTEST_LAP_M: f64 = 300.0;
/// Nearer than this to the start the track passes it, m: two recordings of one line differ by a few metres. Estimate.
const AT_THE_START_M: f64 = 15.0;
/// Way over which the direction at a place is taken, m. Estimate.
const DIRECTION_M: f64 = 10.0;
/// Cosine of the angle by which the direction may differ, 60°. Estimate.
const SAME_DIRECTION: f64 = 0.5;

/// A place of a track: distance along it and where it lies on a plane about the start, all in metres.
pub(in crate::course) type Place = (f64, [f64; 2]);

/// Laps may begin so far into a track, m: nobody warms up longer before a race. Estimate.
const LONGEST_WARM_UP_M: f64 = 10_000.0;
/// Places tried for their beginning lie so far apart, m.
const TRIED_EVERY_M: f64 = 50.0;
/// Laps of one course differ by no more than this, as a share. Estimate.
const SAME_LENGTH: f64 = 0.1;

/// The laps of a track.
#[derive(Debug)]
pub(in crate::course) struct Laps {
    /// Where they begin, m.
    pub(in crate::course) from_m: f64,
    /// Distances from there at which that place is passed again, the end included.
    pub(in crate::course) passes: Vec<f64>,
}

impl Laps {
    /// Counted from the start of the track, or from a place farther on if that makes more of them, all of one length.
    pub(in crate::course) fn of(track: &[Place]) -> Self {
        let mut laps = Self { from_m: 0.0, passes: Vec::new() };
        for (start, legs) in nearby(track, tried(track)) {
            let passes = passes(track, start, &legs);
            if start == 0 || passes.len() > laps.passes.len().max(1) && are_even(&passes) {
                laps = Self { from_m: track[start].0, passes };
            }
        }
        laps
    }
}

/// Numbers of the places where laps may begin.
fn tried(track: &[Place]) -> Vec<usize> {
    let mut next_m = 0.0;
    let mut tried = Vec::new();
    for (index, (at_m, _)) in track.iter().enumerate().take_while(|(_, it)| it.0 < LONGEST_WARM_UP_M) {
        if *at_m >= next_m {
            next_m = at_m + TRIED_EVERY_M;
            tried.push(index);
        }
    }
    tried
}

/// The same places, each with the numbers of the legs behind it that come near it.
fn nearby(track: &[Place], starts: Vec<usize>) -> Vec<(usize, Vec<usize>)> {
    let mut eastward: Vec<(f64, f64, usize)> = starts
        .iter()
        .enumerate()
        .map(|(number, start)| (track[*start].1[0], track[*start].1[1], number))
        .collect();
    ascending(&mut eastward, |it| it.0);
    let mut found: Vec<(usize, Vec<usize>)> = starts.into_iter().map(|start| (start, Vec::new())).collect();
    for (leg, pair) in track.windows(2).enumerate() {
        let [[west, east], [south, north]] = [0, 1].map(|axis| around(pair[0].1[axis], pair[1].1[axis]));
        let first = eastward.partition_point(|it| it.0 < west);
        for &(_, y, number) in eastward[first..].iter().take_while(|it| it.0 <= east) {
            if (south..=north).contains(&y) && found[number].0 <= leg {
                found[number].1.push(leg);
            }
        }
    }
    found
}

/// From where to where a place is near what lies between two others.
fn around(a: f64, b: f64) -> [f64; 2] {
    [a.min(b) - AT_THE_START_M, a.max(b) + AT_THE_START_M]
}

impl Laps {
    /// Median length of a lap, m; zero where there are none.
    fn median_m(&self) -> f64 {
        let starts = core::iter::once(&0.0).chain(&self.passes);
        let lengths: Vec<f64> = self.passes.iter().zip(starts).map(|(end, start)| end - start).collect();
        median(&lengths)
    }
}

/// Laps of the part of a track that is used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrackLaps {
    /// How often it passes the place where they begin, within 15 m and in the direction in which it set off from there; zero
    /// when it never does.
    pub count: usize,
    /// Where they begin, in metres from the start of the part used: behind a warm-up, where that makes more laps of one
    /// length.
    pub from_m: f64,
    /// Median length of one, in metres; zero when there are none.
    pub median_m: f64,
    /// Whether the course is only the first of them.
    pub is_first_alone: bool,
}

impl TrackLaps {
    pub(in crate::course) fn of(laps: &Laps, is_first_alone: bool) -> Self {
        Self { count: laps.passes.len(), from_m: laps.from_m, median_m: laps.median_m(), is_first_alone }
    }
}

fn are_even(passes: &[f64]) -> bool {
    let mean = passes[passes.len() - 1] / passes.len() as f64;
    let mut last = 0.0;
    passes.iter().all(|at| {
        let length = at - core::mem::replace(&mut last, *at);
        (length - mean).abs() < SAME_LENGTH * mean
    })
}

/// Distances from a start at which a track passes it in the direction in which it set off from there, the end included; of
/// the legs only those need be looked at that come near it.
fn passes(track: &[Place], start: usize, legs: &[usize]) -> Vec<f64> {
    if legs.is_empty() {
        return Vec::new();
    }
    let (from_m, [x, y]) = track[start];
    let moved = |at: usize| (track[at].0 - from_m, [track[at].1[0] - x, track[at].1[1] - y]);
    let set_off = direction(track, start, from_m, from_m + 2.0 * DIRECTION_M);
    let mut passes = Vec::new();
    let mut nearest: Option<(f64, f64)> = None;
    let mut last = 0.0;
    let mut leave = |nearest: &mut Option<(f64, f64)>, last: &mut f64, gone_m: f64| {
        if let Some((at, _)) = nearest.take_if(|nearest| gone_m - nearest.0 > 2.0 * AT_THE_START_M) {
            passes.push(at);
            *last = at;
        }
    };
    for &leg in legs {
        let pair = [moved(leg), moved(leg + 1)];
        leave(&mut nearest, &mut last, pair[0].0);
        let (at, distance) = closest_to_start(&pair);
        let near = at - last >= SHORTEST_LAP_M
            && distance < AT_THE_START_M
            && nearest.is_none_or(|nearest| distance < nearest.1);
        if near
            && cosine(set_off, direction(track, leg, from_m + at - DIRECTION_M, from_m + at + DIRECTION_M))
                > SAME_DIRECTION
        {
            nearest = Some((at, distance));
        }
    }
    leave(&mut nearest, &mut last, f64::INFINITY);
    passes
}

/// Where a leg comes closest to the start: distance along the track, and from the start.
fn closest_to_start(leg: &[Place]) -> (f64, f64) {
    let ((from_m, [x, y]), (to_m, to)) = (leg[0], leg[1]);
    let (dx, dy) = (to[0] - x, to[1] - y);
    let square = dx * dx + dy * dy;
    let share = if square > 0.0 { (-(x * dx + y * dy) / square).clamp(0.0, 1.0) } else { 0.0 };
    let ([x, y], at_m) = ([x + share * dx, y + share * dy], from_m + share * (to_m - from_m));
    (at_m, (x * x + y * y).sqrt())
}

/// The direction between two places near the point of this number.
fn direction(track: &[Place], near: usize, from_m: f64, to_m: f64) -> [f64; 2] {
    let (from, to) = (place_at(track, near, from_m), place_at(track, near, to_m));
    [to[0] - from[0], to[1] - from[1]]
}

fn place_at(track: &[Place], near: usize, at_m: f64) -> [f64; 2] {
    let mut end = near.clamp(1, track.len() - 1);
    while end > 1 && track[end - 1].0 >= at_m {
        end -= 1;
    }
    while end < track.len() - 1 && track[end].0 < at_m {
        end += 1;
    }
    let ((from_m, from), (to_m, to)) = (track[end - 1], track[end]);
    let share = ((at_m - from_m) / (to_m - from_m)).clamp(0.0, 1.0);
    [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
}

fn cosine(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] * b[0] + a[1] * b[1]) / (a[0].hypot(a[1]) * b[0].hypot(b[1])).max(f64::MIN_POSITIVE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::f64::consts::TAU;

    fn passes(track: &[Place]) -> Vec<f64> {
        nearby(track, vec![0])
            .first()
            .map_or_else(Vec::new, |(start, legs)| super::passes(track, *start, legs))
    }

    /// Rounds of a circle, each a little aside, in points so far apart.
    fn circle(rounds: f64, around_m: f64, spacing_m: f64) -> Vec<Place> {
        let radius = around_m / TAU;
        let count = (rounds * around_m / spacing_m).round() as usize;
        let place = |index: usize| {
            let at = index as f64 * spacing_m;
            let (angle, aside) = (at / radius, 3.0 * (at / around_m).floor());
            (at, [radius - (radius + aside) * angle.cos(), (radius + aside) * angle.sin()])
        };
        (0..=count).map(place).collect()
    }

    /// Rounds of a park that cross themselves, a long way off and back.
    #[test]
    fn legs_that_come_nowhere_near_need_not_be_looked_at() {
        let place = |at: f64| {
            let (angle, wide) = (at / 130.0, 60.0 + 0.01 * at);
            [wide * angle.sin() + 9.0 * (at / 17.0).cos(), wide * (2.0 * angle).sin()]
        };
        let rounds = (0..1500).map(|it| (5.0 * f64::from(it), place(5.0 * f64::from(it))));
        let far = [(9000.0, [900.0, -700.0]), (11_000.0, [0.0, 0.0])];
        let track: Vec<Place> = rounds.chain(far).collect();
        let found = nearby(&track, tried(&track));
        assert!(
            found.len() > 100
                && found.iter().any(|(start, legs)| super::passes(&track, *start, legs).len() > 3)
        );
        for (start, legs) in found {
            let all: Vec<usize> = (start..track.len() - 1).collect();
            assert!(legs.len() < all.len().max(2), "{start}");
            assert_eq!(super::passes(&track, start, &legs), super::passes(&track, start, &all), "{start}");
        }
    }

    #[test]
    fn every_round_is_counted_however_far_apart_the_points() {
        for spacing in [1.0, 7.0, 40.0] {
            let found = passes(&circle(4.0, 1000.0, spacing));
            assert_eq!(found.len(), 4, "{spacing} m: {found:?}");
            assert!((found[0] - 1000.0).abs() < 25.0 && (found[2] - 3000.0).abs() < 25.0, "{found:?}");
        }
    }

    #[test]
    fn a_lap_broken_off_is_none() {
        assert_eq!(passes(&circle(2.5, 1000.0, 5.0)).len(), 2);
        assert!(passes(&circle(0.9, 1000.0, 5.0)).is_empty());
    }

    #[test]
    fn laps_begin_behind_a_warm_up() {
        let warm_up = (0..120).map(|it| (5.0 * f64::from(it), [-600.0 + 5.0 * f64::from(it), -40.0]));
        let rounds = circle(3.0, 1000.0, 5.0).into_iter().map(|(at, place)| (at + 641.0, place));
        let home = (1..80).map(|it| (3641.0 + 5.0 * f64::from(it), [-5.0 * f64::from(it), -60.0]));
        let aside = |(at, [x, y]): Place| (at, [x + 170.0, y - 90.0]);
        let laps = Laps::of(&warm_up.chain(rounds).chain(home).map(aside).collect::<Vec<_>>());
        assert!(laps.from_m > 600.0 && laps.from_m < 700.0, "{laps:?}");
        assert!(laps.passes.len() == 3 && (laps.passes[0] - 1000.0).abs() < 25.0, "{laps:?}");
    }

    #[test]
    fn riding_back_past_the_start_is_no_lap() {
        let out_and_back =
            [(0.0, [0.0, 0.0]), (400.0, [400.0, 0.0]), (800.0, [0.0, 0.0]), (900.0, [-100.0, 0.0])];
        assert!(passes(&out_and_back).is_empty());
        assert!(Laps::of(&[]).passes.is_empty() && passes(&[(0.0, [0.0, 0.0])]).is_empty());
    }

    fn is_close(found: f64, expected: f64) -> bool {
        (found - expected).abs() < 1e-12
    }

    /// Legs of 3-4-5 triangles about the start, and one that begins or ends nearest.
    #[test]
    fn a_leg_is_closest_at_the_foot_of_its_perpendicular() {
        let cases = [
            ([-3.0, 4.0], [5.0, 4.0], 13.0, 4.0),
            ([4.0, 0.0], [0.0, 3.0], 15.12, 2.4),
            ([1.0, 8.0], [-3.0, 0.0], 16.8, 7.2_f64.sqrt()),
            ([3.0, 4.0], [6.0, 9.0], 10.0, 5.0),
            ([-9.0, -8.0], [-4.0, -3.0], 18.0, 5.0),
            ([6.0, 8.0], [6.0, 8.0], 10.0, 10.0),
        ];
        for (from, to, at, distance) in cases {
            let found = closest_to_start(&[(10.0, from), (18.0, to)]);
            assert!(is_close(found.0, at) && is_close(found.1, distance), "{from:?} {to:?}: {found:?}");
        }
    }

    #[test]
    fn places_and_directions_lie_straight_between_points() {
        let track = [(0.0, [1.0, 2.0]), (10.0, [4.0, 7.0]), (12.0, [5.0, 5.0])];
        for (at, place) in [
            (-1.0, [1.0, 2.0]),
            (5.0, [2.5, 4.5]),
            (10.0, [4.0, 7.0]),
            (11.0, [4.5, 6.0]),
            (13.0, [5.0, 5.0]),
        ] {
            for near in 0..3 {
                let [x, y] = place_at(&track, near, at);
                assert!(is_close(x, place[0]) && is_close(y, place[1]), "{at}: {x} {y}");
            }
        }
        let [x, y] = direction(&track, 2, 5.0, 11.0);
        assert!(is_close(x, 2.0) && is_close(y, 1.5), "{x} {y}");
    }

    #[test]
    fn a_cosine_is_that_of_the_angle_between() {
        for (a, b, cosine_between) in [
            ([3.0, 4.0], [4.0, -3.0], 0.0),
            ([2.0, 0.0], [3.0, 4.0], 0.6),
            ([0.0, 5.0], [3.0, 4.0], 0.8),
            ([3.0, 4.0], [-6.0, -8.0], -1.0),
            ([0.0, 0.0], [1.0, 1.0], 0.0),
        ] {
            assert!(is_close(cosine(a, b), cosine_between), "{a:?} {b:?}");
        }
    }

    #[test]
    fn laps_of_one_course_differ_by_less_than_a_tenth() {
        assert!(are_even(&[1000.0, 2080.0, 2990.0]) && are_even(&[700.0]));
        assert!(!are_even(&[1000.0, 2300.0]) && !are_even(&[1300.0, 2300.0]));
    }

    /// A figure of eight whose loops of 400 and 800 m share a start.
    #[test]
    fn passes_in_the_direction_of_setting_off_are_laps_however_long() {
        let loops = [400.0, 800.0, 200.0, 400.0];
        let mut track: Vec<Place> = Vec::new();
        for around in loops {
            let at = track.last().map_or(0.0, |it| it.0);
            let more = circle(1.0, around, 4.0);
            track.extend(more.into_iter().skip(usize::from(at > 0.0)).map(|it| (it.0 + at, it.1)));
        }
        let found = passes(&track);
        let expected = [400.0, 1200.0, 1800.0];
        assert_eq!(found.len(), 3, "200 m are no lap: {found:?}");
        assert!(found.iter().zip(expected).all(|(a, b)| (a - b).abs() < 10.0), "{found:?}");
    }

    /// Past the start 20 m aside, then 10 m aside.
    #[test]
    fn only_what_comes_near_the_start_passes_it() {
        let aside = |metres: f64| -> Vec<Place> {
            vec![
                (0.0, [0.0, 0.0]),
                (100.0, [0.0, 100.0]),
                (250.0, [150.0, 0.0]),
                (400.0, [metres, -100.0]),
                (600.0, [metres, 100.0]),
            ]
        };
        assert!(passes(&aside(20.0)).is_empty());
        let found = passes(&aside(10.0));
        assert!(found.len() == 1 && is_close(found[0], 500.0), "{found:?}");
    }
}
