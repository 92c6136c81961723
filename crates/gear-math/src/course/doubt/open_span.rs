//! Where it is open whether to ride.

use crate::course::doubt::lap_draw::LapDraw;
use crate::course::doubt::percentile::{EDGES, sorted};

/// Shorter pieces, in metres, are where a dismount begins or ends, not whether there is one. Estimate: two steps of the plan.
const SHORTEST_M: f64 = 10.0;

/// A part of the course that is ridden in some draws and gone on foot in others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OpenSpan {
    /// From here, in metres from the line.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
    /// Share of the draws in which it is gone on foot, the mean over its length.
    pub share_on_foot: f64,
}

impl OpenSpan {
    /// Where one of the set-ups, 0 or 1, is on foot in more than 5 % of the draws and in less than 95 %, in order.
    ///
    /// # Example
    /// ```
    /// use gear_math::course::{LapDraw, OpenSpan};
    /// let done = |spans: &[[f64; 2]]| LapDraw { time_s: [100.0; 2], on_foot_m: [spans.to_vec(), vec![]] };
    /// let draws = [done(&[[50.0, 90.0]]), done(&[[50.0, 90.0], [300.0, 340.0]]), done(&[[55.0, 90.0]])];
    /// let open = OpenSpan::all(&draws, 0);
    /// assert_eq!((open.len(), open[0].from_m, open[0].to_m), (1, 300.0, 340.0));
    /// assert!(OpenSpan::all(&draws, 1).is_empty());
    /// ```
    #[must_use]
    pub fn all(draws: &[LapDraw], side: usize) -> Vec<Self> {
        let spans = || draws.iter().filter_map(|draw| draw.on_foot_m.get(side));
        let ends = sorted(spans().flatten().flatten().copied());
        let mut open: Vec<Self> = Vec::new();
        for pair in ends.windows(2).filter(|pair| pair[1] > pair[0]) {
            let middle = pair[0].midpoint(pair[1]);
            let holds = |spans: &&Vec<[f64; 2]>| spans.iter().any(|it| it[0] < middle && middle < it[1]);
            let share = spans().filter(holds).count() as f64 / draws.len() as f64;
            if share > EDGES[0] && share < EDGES[2] {
                add(&mut open, Self { from_m: pair[0], to_m: pair[1], share_on_foot: share });
            }
        }
        open.retain(|span| span.length_m() >= SHORTEST_M);
        open
    }

    fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }
}

/// Adds a piece to the span that it goes on from, or as one of its own.
fn add(open: &mut Vec<OpenSpan>, piece: OpenSpan) {
    match open.last_mut().filter(|span| span.to_m >= piece.from_m) {
        Some(span) => {
            let [before, more] = [*span, piece].map(|it| it.share_on_foot * it.length_m());
            span.to_m = piece.to_m;
            span.share_on_foot = (before + more) / span.length_m();
        }
        None => open.push(piece),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// On foot from 0 to 40 m in eight of ten draws, to 80 m in two of them.
    #[test]
    fn pieces_side_by_side_are_one_span() {
        let draw = |at: usize| {
            let spans = match at {
                0 | 1 => vec![[0.0, 80.0]],
                2..8 => vec![[0.0, 40.0]],
                _ => vec![],
            };
            LapDraw { time_s: [1.0; 2], on_foot_m: [spans, vec![[0.0, 40.0]]] }
        };
        let draws: Vec<LapDraw> = (0..10).map(draw).collect();
        let [span] = OpenSpan::all(&draws, 0)[..] else { panic!("one span") };
        assert_eq!((span.from_m, span.to_m), (0.0, 80.0));
        assert!((span.share_on_foot - 0.5).abs() < 1e-12);
        assert_eq!(OpenSpan::all(&draws, 1), [], "on foot in all draws");
        assert_eq!(OpenSpan::all(&[], 0), []);
    }
}
