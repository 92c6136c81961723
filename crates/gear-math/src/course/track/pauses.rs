//! Where a recorder stood still.

use crate::course::track::recorded_point::{RecordedPoint, distance_m, elapsed_s};

/// A standstill this long is a pause, and it is judged over this long, so that the wandering of a position does not hide it,
/// s. Estimate.
const PAUSE_S: f64 = 10.0;
/// Slower than this over the whole of it is standing still. Estimate.
const STANDSTILL_M_PER_S: f64 = 0.3;
/// As far as a position wanders while standing, m; whoever rides round a hairpin goes farther. Estimate.
const WANDERING_M: f64 = 6.0;
/// Places looked at within a standstill, so that a file with many points a second takes no longer.
const LOOKED_AT: usize = 20;

/// The standstills of one segment.
#[derive(Debug, Default)]
pub(in crate::course) struct Pauses {
    /// For each point, whether the recorder stood still before and after it.
    pub(in crate::course) inside: Vec<bool>,
    /// Length of each pause, s.
    pub(in crate::course) lengths_s: Vec<f64>,
}

impl Pauses {
    pub(in crate::course) fn of(segment: &[RecordedPoint]) -> Self {
        let still = still_legs(segment);
        let leg = |at: Option<usize>| at.and_then(|at| still.get(at)).copied().unwrap_or(false);
        let inside = (0..segment.len()).map(|at| leg(at.checked_sub(1)) && leg(Some(at))).collect();
        let mut lengths_s = Vec::new();
        let mut length = 0.0;
        for (pair, still) in segment.windows(2).zip(&still) {
            if *still {
                length += elapsed_s(&pair[0], &pair[1]);
            } else {
                lengths_s.push(core::mem::take(&mut length));
            }
        }
        lengths_s.push(length);
        lengths_s.retain(|&length| length >= PAUSE_S);
        Self { inside, lengths_s }
    }
}

/// Whether each leg between two points lies within a standstill.
fn still_legs(segment: &[RecordedPoint]) -> Vec<bool> {
    let mut still = vec![false; segment.len().saturating_sub(1)];
    let (mut end, mut marked) = (0, 0);
    for start in 0..segment.len() {
        while end < segment.len() && elapsed_s(&segment[start], &segment[end]) < PAUSE_S {
            end += 1;
        }
        if end == segment.len() {
            break;
        }
        let start = if is_gap(segment, end) { end - 1 } else { start };
        if stands(&segment[start..=end]) {
            still[marked.max(start)..end].fill(true);
            marked = end;
        }
    }
    still
}

/// Whether the recorder wrote nothing for as long as a pause before this point. Such a gap is judged by itself: together with
/// what was ridden before it, it would make that look slow.
fn is_gap(segment: &[RecordedPoint], end: usize) -> bool {
    end > 0 && elapsed_s(&segment[end - 1], &segment[end]) >= PAUSE_S
}

fn stands(window: &[RecordedPoint]) -> bool {
    let (first, last) = (&window[0], &window[window.len() - 1]);
    let limit = STANDSTILL_M_PER_S * elapsed_s(first, last);
    let mut between = window[..window.len() - 1].iter().step_by(window.len() / LOOKED_AT + 1);
    distance_m(first, last) < limit && between.all(|point| distance_m(first, point) < WANDERING_M)
}

/// Times of standing still for 10 s or longer. They play no part in the course.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrackPauses {
    /// How many there are.
    pub count: usize,
    /// How long all of them are together, in seconds.
    pub total_s: f64,
}

impl TrackPauses {
    pub(in crate::course) fn of(segments: &[Pauses]) -> Self {
        let lengths = || segments.iter().flat_map(|pauses| &pauses.lengths_s);
        Self { count: lengths().count(), total_s: lengths().sum() }
    }
}
