//! Where one lap gains on another.

use crate::course::lap::lap::{Lap, TracePoint};

/// A stretch of the course, in metres from the line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// From here.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
}

/// Time gained on a stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GainPart {
    /// Where.
    pub span: Span,
    /// Seconds the second set-up gains there; negative when it loses.
    pub gained_s: f64,
}

/// Where one lap gains on another.
#[derive(Debug, Clone, PartialEq)]
pub struct LapGains {
    /// Where the difference arises, in order: stretches on which it runs one way, without what runs level at either end.
    pub parts: Vec<GainPart>,
    /// The one of them that makes nearly all of the difference, if one does: more than 80 % of all that is gained and lost
    /// on the way. Differences below half a second are not placed.
    pub main: Option<GainPart>,
    /// Distance from the line and seconds the other has gained up to there. Places where the two get off or on within a
    /// few metres of one another are left out.
    pub curve: Vec<(f64, f64)>,
}

/// Differences smaller than this are not told apart by place, s. Estimate: less than one shift.
const SMALL_PART_S: f64 = 0.3;

impl LapGains {
    /// Of two laps in the same steps: where the other gains on the one.
    #[must_use]
    pub fn between(one: &Lap, other: &Lap) -> Self {
        let curve = gain_curve(&one.trace, &other.trace);
        let parts: Vec<_> = parts(&curve).into_iter().map(|part| tightened(&curve, part)).collect();
        Self { main: main_part(&parts, one.time_s - other.time_s), parts, curve }
    }
}

/// Where one is on foot for less than this before or after the other, it has only paid for getting off or on sooner, m.
/// Estimate.
const TOGETHER_M: f64 = 10.0;

/// Distance from the line and seconds the other has gained up to there.
fn gain_curve(one: &[TracePoint], other: &[TracePoint]) -> Vec<(f64, f64)> {
    let pairs: Vec<_> = one.iter().zip(other).collect();
    let runs = pairs.chunk_by(|a, b| apart(a) == apart(b));
    let told = runs.filter(|run| !apart(&run[0]) || run[run.len() - 1].0.at_m - run[0].0.at_m > TOGETHER_M);
    let gain = told.flatten().map(|(a, b)| (a.at_m, a.time_s - b.time_s));
    core::iter::once((0.0, 0.0)).chain(gain).collect()
}

/// Whether one is on foot and the other is not.
fn apart((a, b): &(&TracePoint, &TracePoint)) -> bool {
    a.mode != b.mode
}

/// Cuts the curve where it turns by more than a small part.
fn parts(curve: &[(f64, f64)]) -> Vec<GainPart> {
    let mut turns = vec![curve[0]];
    let mut extreme = curve[0];
    for &point in curve {
        let last = turns[turns.len() - 1];
        let onwards = (extreme.1 - last.1) * (point.1 - extreme.1) >= 0.0;
        if onwards {
            extreme = if (point.1 - extreme.1).abs() > 0.0 { point } else { extreme };
        } else if (point.1 - extreme.1).abs() > SMALL_PART_S {
            turns.push(extreme);
            extreme = point;
        }
    }
    turns.push(extreme);
    let part = |pair: &[(f64, f64)]| GainPart {
        span: Span { from_m: pair[0].0, to_m: pair[1].0 },
        gained_s: pair[1].1 - pair[0].1,
    };
    turns.windows(2).map(part).filter(|part| part.gained_s.abs() > SMALL_PART_S).collect()
}

/// A part that makes more than this share of all that is gained and lost makes nearly all of it. Estimate.
const NEARLY_ALL: f64 = 0.8;

/// Smaller differences are not worth placing, s. Estimate.
const WORTH_PLACING_S: f64 = 0.5;

fn main_part(parts: &[GainPart], gained_s: f64) -> Option<GainPart> {
    let all: f64 = parts.iter().map(|part| part.gained_s.abs()).sum();
    let least = (NEARLY_ALL * all).max(WORTH_PLACING_S);
    parts.iter().copied().find(|part| part.gained_s * gained_s.signum() > least)
}

/// Shares of what is gained on a part that may lie before and after the place it is gained at. Estimate.
const BESIDE: [f64; 2] = [0.05, 0.95];

/// A part drawn together to where most of it arises: what runs on level before and after is no place of it.
fn tightened(curve: &[(f64, f64)], part: GainPart) -> GainPart {
    let on_part = || curve.iter().filter(|(at, _)| (part.span.from_m..=part.span.to_m).contains(at));
    let start = on_part().next().map_or(0.0, |point| point.1);
    let share = |point: &(f64, f64)| (point.1 - start) / part.gained_s;
    let before = on_part().take_while(|point| share(point) <= BESIDE[0]).last();
    let after = on_part().find(|point| share(point) >= BESIDE[1]);
    let place = |point: Option<&(f64, f64)>, edge: f64| point.map_or(edge, |point| point.0);
    let span = Span { from_m: place(before, part.span.from_m), to_m: place(after, part.span.to_m) };
    GainPart { span, ..part }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::lap::modes::Mode;

    #[test]
    fn a_curve_is_cut_where_it_turns() {
        let curve =
            [(0.0, 0.0), (10.0, 0.0), (20.0, 2.0), (30.0, 1.9), (40.0, 2.5), (50.0, 1.0), (60.0, 1.0)];
        let found: Vec<_> =
            parts(&curve).iter().map(|part| (part.span.from_m, part.span.to_m, part.gained_s)).collect();
        assert_eq!(found, [(0.0, 40.0, 2.5), (40.0, 50.0, -1.5)]);
    }

    #[test]
    fn a_curve_turned_over_is_cut_at_the_same_places() {
        for sign in [1.0, -1.0] {
            let curve = [0.0, 5.0, 3.0, 2.9, 4.0].map(|gain| sign * gain);
            let curve: Vec<(f64, f64)> = [0.0, 10.0, 20.0, 30.0, 40.0].into_iter().zip(curve).collect();
            let cuts: Vec<_> = parts(&curve).iter().map(|part| (part.span.from_m, part.span.to_m)).collect();
            assert_eq!(cuts, [(0.0, 10.0), (10.0, 30.0), (30.0, 40.0)]);
        }
    }

    #[test]
    fn getting_off_a_few_metres_sooner_is_no_gain() {
        let trace = |off: [f64; 2]| -> Vec<TracePoint> {
            let on_foot = |at_m: f64| (off[0]..off[1]).contains(&at_m);
            let point = |metre: i32| {
                let at_m = f64::from(metre);
                let mode = if on_foot(at_m) { Mode::Foot } else { Mode::Ride };
                let time_s = at_m + if at_m < off[0] { 0.0 } else { 3.0 };
                TracePoint { at_m, time_s, speed_m_per_s: 1.0, mode, gear: None, cadence_rpm: None }
            };
            (1..100).map(point).collect()
        };
        let curve = gain_curve(&trace([20.0, 40.0]), &trace([28.0, 40.0]));
        assert!(curve.iter().all(|point| point.1 == 0.0) && curve.len() == 100 - 8);
        let late = gain_curve(&trace([20.0, 60.0]), &trace([50.0, 60.0]));
        assert_eq!((late.len(), late[30]), (100, (30.0, 3.0)));
    }

    #[test]
    fn a_part_is_drawn_together_to_where_it_arises() {
        let curve: Vec<(f64, f64)> =
            (0..=100).map(|at| (f64::from(at), (f64::from(at) - 60.0).clamp(0.0, 10.0) / 2.0)).collect();
        let part = GainPart { span: Span { from_m: 0.0, to_m: 100.0 }, gained_s: 5.0 };
        assert_eq!(tightened(&curve, part).span, Span { from_m: 60.0, to_m: 70.0 });
        let raised: Vec<(f64, f64)> = curve.iter().map(|&(at, gain)| (at, gain + 7.0)).collect();
        assert_eq!(tightened(&raised, part).span, Span { from_m: 60.0, to_m: 70.0 }, "gained before");
    }

    #[test]
    fn one_part_is_named_when_it_makes_nearly_all() {
        let part = |at: f64, gained_s: f64| GainPart { span: Span { from_m: at, to_m: at + 9.0 }, gained_s };
        assert_eq!(
            main_part(&[part(0.0, 0.5), part(40.0, -5.0), part(60.0, 0.4)], -4.1),
            Some(part(40.0, -5.0))
        );
        assert_eq!(main_part(&[part(0.0, 4.0), part(40.0, -2.0)], 2.0), None);
        assert_eq!(main_part(&[part(0.0, 4.0)], -0.1), None);
    }
}
