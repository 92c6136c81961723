//! How uncertain a lap is, and whether one set-up beats another by more than that.

use crate::course::course::Course;
use crate::course::lap::follow::Moment;
use crate::course::lap::gearbox::Gears;
use crate::course::lap::lap::{Lap, TracePoint};
use crate::course::lap::modes::Mode;
use crate::course::lap::ride::Ride;
use crate::course::lap::settled::ridden;
use crate::course::lap::setup::LapSetup;
use crate::course::lap::terrain::Terrain;
use crate::course::lap::time_band::in_quadrature;
use crate::course::lap::time_band::{Quicker, TimeBand};
use crate::course::lap::uncertainty::{MOUNTING_S, Moved};
use crate::course::quantity::Step;
use crate::rider::CADENCE_RPM;
use crate::rider::PowerBelowStanding;

/// A stretch of the course, in metres from the line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// From here.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
}

/// A lap and how far it may be trusted.
#[derive(Debug, Clone, PartialEq)]
pub struct BandedLap {
    /// The lap with every input as given.
    pub lap: Lap,
    /// Its time with edges.
    pub band: TimeBand,
    /// Where the choice between riding and going on foot turns within the uncertainty: too close to call.
    pub too_close: Vec<Span>,
}

impl BandedLap {
    /// How far the lowest cadence may be off, in rpm.
    pub const CADENCE_RPM: f64 = CADENCE_RPM;
    /// How far the time lost by getting off and on may be off, both together, in seconds.
    pub const MOUNTING_S: f64 = MOUNTING_S;

    /// The quickest lap, with each uncertain input of ride or run moved alone, up and down, and so the lowest cadence by
    /// 5 rpm and the time lost by getting off and on by 1 s (estimates). Power stays as given: it is the rider's choice.
    ///
    /// Changes of the time in one direction are added in quadrature, as in [`Band`](crate::rider::Band). Every lap
    /// is ridden by its own quickest plan.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    pub fn of(course: &Course, setup: &LapSetup) -> Result<Self, PowerBelowStanding> {
        let lap = Lap::of(course, setup)?;
        let variants = Variants::of(course, setup)?;
        Ok(variants.around(lap))
    }
}

/// Time gained on a stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GainPart {
    /// Where.
    pub span: Span,
    /// Seconds the second set-up gains there; negative when it loses.
    pub gained_s: f64,
}

/// Two set-ups on one course.
#[derive(Debug, Clone, PartialEq)]
pub struct LapComparison {
    /// The first set-up.
    pub first: BandedLap,
    /// The second set-up, in steps of the same length.
    pub second: BandedLap,
    /// Seconds the second set-up gains over the lap, with likely edges. Both laps have the same errors, so the edges
    /// are much closer than those of either time.
    pub gained: TimeBand,
    /// Which is quicker.
    pub quicker: Quicker,
    /// Where the difference arises, in order: stretches on which it runs one way, without what runs level at either end.
    pub parts: Vec<GainPart>,
    /// The one of them that makes nearly all of the difference, if one does: more than 80 % of all that is gained and lost
    /// on the way. Differences below half a second are not placed.
    pub main: Option<GainPart>,
    /// Distance from the line and seconds the second has gained up to there. Places where the two get off or on within a
    /// few metres of one another are left out.
    pub curve: Vec<(f64, f64)>,
}

/// Differences smaller than this are not told apart by place, s. Estimate: less than one shift.
const SMALL_PART_S: f64 = 0.3;

impl LapComparison {
    /// Rides the course on both.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when either power leaves nothing to move on foot with.
    pub fn of(course: &Course, first: &LapSetup, second: &LapSetup) -> Result<Self, PowerBelowStanding> {
        if first == second {
            return BandedLap::of(course, first).map(Self::with_itself);
        }
        let (one, other) = same_steps(course, first, second)?;
        let (one_moved, other_moved) = (Variants::of(course, first)?, Variants::of(course, second)?);
        let curve = gain_curve(&one.trace, &other.trace);
        let gained = gained(&one, &other, &one_moved, &other_moved);
        let parts: Vec<_> = parts(&curve).into_iter().map(|part| tightened(&curve, part)).collect();
        Ok(Self {
            quicker: gained.quicker(),
            gained,
            main: main_part(&parts, gained.time_s),
            parts,
            curve,
            first: one_moved.around(one),
            second: other_moved.around(other),
        })
    }
}

impl LapComparison {
    /// A lap beside itself: whatever is off, is off for both.
    fn with_itself(banded: BandedLap) -> Self {
        let curve = gain_curve(&banded.lap.trace, &banded.lap.trace);
        Self {
            gained: TimeBand { low_s: 0.0, time_s: 0.0, high_s: 0.0 },
            quicker: Quicker::TooClose,
            parts: Vec::new(),
            main: None,
            curve,
            second: banded.clone(),
            first: banded,
        }
    }
}

/// Both laps in the finer of the steps at which each settles.
fn same_steps(
    course: &Course,
    first: &LapSetup,
    second: &LapSetup,
) -> Result<(Lap, Lap), PowerBelowStanding> {
    let (mut one, mut other) = (Lap::of(course, first)?, Lap::of(course, second)?);
    let finest = one.step_m.min(other.step_m);
    for (lap, setup) in [(&mut one, first), (&mut other, second)] {
        if lap.step_m > finest {
            let error = lap.step_error_s;
            *lap = Lap::in_steps(course, setup, Step::known(finest))?;
            lap.step_error_s = error;
        }
    }
    Ok((one, other))
}

fn gained(one: &Lap, other: &Lap, one_moved: &Variants, other_moved: &Variants) -> TimeBand {
    let given = one.time_s - other.time_s;
    let unmoved = one_moved.given.time - other_moved.given.time;
    let moved = one_moved.each.iter().zip(&other_moved.each).map(|(a, b)| a.time - b.time - unmoved);
    let error = one.step_error_s.unwrap_or(0.0).hypot(other.step_error_s.unwrap_or(0.0));
    TimeBand::around(given, moved.chain([error, -error]))
}

/// Where one is on foot for less than this before or after the other, it has only paid for getting off or on sooner, m.
/// Estimate.
const TOGETHER_M: f64 = 10.0;

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

/// A lap as far as bands go.
struct Outcome {
    time: f64,
    modes: Vec<Mode>,
}

impl Outcome {
    fn of(moments: &[Moment]) -> Self {
        let time = moments.iter().map(|moment| moment.time).sum();
        Self { time, modes: moments.iter().map(|moment| moment.mode).collect() }
    }
}

/// The lap with each uncertain input moved, all in the same coarse steps.
struct Variants {
    given: Outcome,
    each: Vec<Outcome>,
    /// Ends of the steps, m.
    ends: Vec<f64>,
}

/// Steps in which the moved laps are ridden, m: the changes matter, not the times.
const VARIANT_STEP_M: f64 = 1.0;

impl Variants {
    fn of(course: &Course, setup: &LapSetup) -> Result<Self, PowerBelowStanding> {
        let gears = Gears::new(&setup.bike, &setup.shifting);
        let mut ends = Vec::new();
        let mut outcome = |moved: &Moved| {
            let terrain = Terrain::new(course, setup, Step::known(VARIANT_STEP_M), moved)?;
            ends = terrain.ends();
            Ok(Outcome::of(&ridden(&Ride::new(&terrain, &gears), setup.begin)))
        };
        let given = outcome(&Moved::NOT)?;
        let each = Moved::EACH.iter().map(outcome).collect::<Result<Vec<_>, _>>()?;
        Ok(Self { given, each, ends })
    }

    fn around(&self, lap: Lap) -> BandedLap {
        let logarithms = self.each.iter().map(|plan| (plan.time / self.given.time).ln());
        let (down, up) = in_quadrature(logarithms);
        let time_s = lap.time_s;
        let band = TimeBand { low_s: time_s * (-down).exp(), time_s, high_s: time_s * up.exp() };
        BandedLap { lap, band, too_close: self.too_close() }
    }

    fn too_close(&self) -> Vec<Span> {
        let given = &self.given.modes;
        let turns = |at: usize| self.each.iter().any(|plan| plan.modes[at] != given[at]);
        let mut spans: Vec<Span> = Vec::new();
        let (mut from_m, mut turned) = (0.0, false);
        for (at, &to_m) in self.ends.iter().enumerate() {
            match spans.last_mut().filter(|_| turned) {
                Some(span) if turns(at) => span.to_m = to_m,
                _ if turns(at) => spans.push(Span { from_m, to_m }),
                _ => {}
            }
            (from_m, turned) = (to_m, turns(at));
        }
        spans
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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

    use crate::course::demo::Demo;
    use crate::course::search::search::Finals;
    use crate::gears::Drivetrain;
    use crate::quantity::Circumference;
    use crate::rider::{Air, Bike, BikeMass, BodyMass, KitMass, Power, Rider};

    fn setup(rings: &str) -> LapSetup {
        let rider =
            Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(230.0).unwrap());
        let drivetrain = Drivetrain {
            chainset: rings.parse().unwrap(),
            cassette: "11-13-15-18-21-24-28-32".parse().unwrap(),
        };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
        LapSetup::new(rider, bike, Air::STILL)
    }

    /// The moved laps are ridden a second time by the search's finals.
    #[test]
    fn the_band_of_a_difference_is_that_of_the_pairs_moved_alike() {
        for course in [Demo::Meadow.course(), Demo::SandPit.course()] {
            let (first, second) = (setup("46"), setup("44/31"));
            let compared = LapComparison::of(&course, &first, &second).unwrap();
            let finals = Finals::new(&course, &first).unwrap();
            let [one, other] =
                [&first, &second].map(|setup| finals.ride(&setup.bike.drivetrain, setup.bike.avoid));
            let gained = other.gained_over(&one);
            let errors = [&compared.first, &compared.second].map(|it| it.lap.step_error_s.unwrap());
            let with_error =
                |edge: f64| (edge * edge - 1.0).max(0.0).sqrt().hypot(errors[0].hypot(errors[1]));
            let found = compared.gained;
            assert!((found.time_s - (compared.first.lap.time_s - compared.second.lap.time_s)).abs() < 1e-9);
            assert!((found.time_s - found.low_s - with_error(gained.time_s - gained.low_s)).abs() < 1e-6);
            assert!((found.high_s - found.time_s - with_error(gained.high_s - gained.time_s)).abs() < 1e-6);
            assert_eq!(compared.quicker, found.quicker());
            let logarithms = one.moved_s.iter().map(|moved| (moved / one.time_s).ln());
            let (down, up) = in_quadrature(logarithms);
            let BandedLap { band, .. } = compared.first;
            assert!(((band.low_s / band.time_s).ln() + down).abs() < 1e-9);
            assert!(((band.high_s / band.time_s).ln() - up).abs() < 1e-9);
        }
    }

    #[test]
    fn two_laps_are_compared_in_the_finer_of_their_steps() {
        let course: Course = "300; 0; firm grass\n30; 14; firm grass\n300; 0; mud".parse().unwrap();
        let mut unlike = 0;
        for (first, second) in [("44/31", "42"), ("42", "44/31"), ("36", "42"), ("44/31", "36")] {
            let setups = [setup(first), setup(second)];
            let alone = setups.map(|setup| Lap::of(&course, &setup).unwrap());
            unlike += usize::from((alone[0].step_m - alone[1].step_m).abs() > 0.0);
            let (one, other) = same_steps(&course, &setups[0], &setups[1]).unwrap();
            let finest = alone[0].step_m.min(alone[1].step_m);
            for (lap, (setup, alone)) in [one, other].iter().zip(setups.iter().zip(&alone)) {
                let ridden = Lap::in_steps(&course, setup, Step::known(finest)).unwrap();
                assert_eq!((lap.step_m, lap.time_s), (finest, ridden.time_s));
                assert_eq!(lap.step_error_s, alone.step_error_s);
            }
        }
        assert!(unlike > 0, "try a course on which one set-up settles later");
    }

    #[test]
    fn a_choice_that_turns_within_the_doubt_is_too_close() {
        use Mode::{Foot, Ride};
        let outcome = |modes: [Mode; 5]| Outcome { time: 9.0, modes: modes.to_vec() };
        let variants = |each: &[[Mode; 5]]| Variants {
            given: outcome([Ride, Ride, Foot, Foot, Ride]),
            each: each.iter().map(|&modes| outcome(modes)).collect(),
            ends: vec![1.0, 2.0, 3.5, 4.0, 5.0],
        };
        let spans = |each: &[[Mode; 5]]| -> Vec<(f64, f64)> {
            variants(each).too_close().iter().map(|span| (span.from_m, span.to_m)).collect()
        };
        assert_eq!(spans(&[[Ride, Ride, Foot, Foot, Ride]]), []);
        assert_eq!(
            spans(&[[Foot, Ride, Ride, Foot, Ride], [Ride, Ride, Foot, Ride, Foot]]),
            [(0.0, 1.0), (2.0, 5.0)]
        );
    }
}
