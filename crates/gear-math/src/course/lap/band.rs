//! How uncertain a lap is, and whether one set-up beats another by more than that.

use crate::course::course::Course;
use crate::course::lap::follow::Moment;
use crate::course::lap::gains::{LapGains, Span};
use crate::course::lap::lap::Lap;
use crate::course::lap::modes::Mode;
use crate::course::lap::settled::{Halved, on_ride, ridden};
use crate::course::lap::setup::LapSetup;
use crate::course::lap::time_band::in_quadrature;
use crate::course::lap::time_band::{Quicker, TimeBand};
use crate::course::lap::uncertainty::{MOUNTING_S, Moved};
use crate::course::quantity::Step;
use crate::rider::CADENCE_RPM;
use crate::rider::PowerBelowStanding;

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
        let mut variants = Variants::default();
        while variants.go_on(course, setup)? {}
        Ok(variants.around(lap))
    }
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
    /// Where the second gains.
    pub gains: LapGains,
}

impl LapComparison {
    /// Rides the course on both.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when either power leaves nothing to move on foot with.
    pub fn of(course: &Course, first: &LapSetup, second: &LapSetup) -> Result<Self, PowerBelowStanding> {
        let mut settling = LapSettling::new(course.clone(), [*first, *second]);
        while settling.go_on()? {}
        settling.comparison()
    }
}

/// Two set-ups being compared, one ride after another.
///
/// # Example
/// ```
/// # use gear_math::{Course, LapSetup};
/// # use gear_math::course::{LapComparison, LapSettling};
/// # fn compared(course: Course, setups: [LapSetup; 2]) -> Result<(), Box<dyn std::error::Error>> {
/// let at_once = LapComparison::of(&course, &setups[0], &setups[1])?;
/// let mut settling = LapSettling::new(course, setups);
/// while settling.go_on()? {
///     // Time for something else.
/// }
/// assert_eq!(settling.comparison()?, at_once);
/// # Ok(())
/// # }
/// ```
#[derive(Debug)]
pub struct LapSettling {
    course: Course,
    setups: [LapSetup; 2],
    laps: Vec<Halved>,
    moved: [Variants; 2],
}

impl LapSettling {
    /// Nothing is ridden yet.
    #[must_use]
    pub fn new(course: Course, setups: [LapSetup; 2]) -> Self {
        Self { course, setups, laps: Vec::new(), moved: Default::default() }
    }

    /// Rides one lap more; whether any was still to be ridden.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when either power leaves nothing to move on foot with.
    pub fn go_on(&mut self) -> Result<bool, PowerBelowStanding> {
        let Self { course, setups, laps, moved } = self;
        // A bike beside itself is ridden once.
        let setups = if setups[0] == setups[1] { &setups[..1] } else { &setups[..] };
        if let Some(setup) = setups.get(laps.len()) {
            laps.push(Halved::begin(course, setup)?);
            return Ok(true);
        }
        for (lap, setup) in laps.iter_mut().zip(setups) {
            if lap.go_on(course, setup)? {
                return Ok(true);
            }
        }
        let finest_m = laps.iter().map(|it| it.lap.step_m).fold(f64::INFINITY, f64::min);
        for (lap, setup) in laps.iter_mut().zip(setups) {
            if lap.refine(course, setup, finest_m)? {
                return Ok(true);
            }
        }
        for (variants, setup) in moved.iter_mut().zip(setups) {
            if variants.go_on(course, setup)? {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// The comparison; what is still to be ridden for it is.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when either power leaves nothing to move on foot with.
    pub fn comparison(mut self) -> Result<LapComparison, PowerBelowStanding> {
        while self.go_on()? {}
        let [one_moved, other_moved] = self.moved;
        let mut laps = self.laps.into_iter().map(|it| it.lap);
        let one = laps.next().ok_or(PowerBelowStanding)?;
        let Some(other) = laps.next() else {
            return Ok(LapComparison::with_itself(one_moved.around(one)));
        };
        let gained = gained(&one, &other, &one_moved, &other_moved);
        Ok(LapComparison {
            quicker: gained.quicker(),
            gained,
            gains: LapGains::between(&one, &other),
            first: one_moved.around(one),
            second: other_moved.around(other),
        })
    }
}

impl LapComparison {
    /// A lap beside itself: whatever is off, is off for both.
    fn with_itself(banded: BandedLap) -> Self {
        Self {
            gained: TimeBand { low_s: 0.0, time_s: 0.0, high_s: 0.0 },
            quicker: Quicker::TooClose,
            gains: LapGains::between(&banded.lap, &banded.lap),
            second: banded.clone(),
            first: banded,
        }
    }
}

fn gained(one: &Lap, other: &Lap, one_moved: &Variants, other_moved: &Variants) -> TimeBand {
    let given = one.time_s - other.time_s;
    let mut differences = one_moved.ridden.iter().zip(&other_moved.ridden).map(|(a, b)| a.time - b.time);
    let unmoved = differences.next().unwrap_or_default();
    let moved = differences.map(|it| it - unmoved);
    let error = one.step_error_s.unwrap_or(0.0).hypot(other.step_error_s.unwrap_or(0.0));
    TimeBand::around(given, moved.chain([error, -error]))
}

/// A lap as far as bands go.
#[derive(Debug)]
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

/// The lap as given and then with each uncertain input moved, all in the same coarse steps.
#[derive(Debug, Default)]
struct Variants {
    ridden: Vec<Outcome>,
    /// Ends of the steps, m.
    ends: Vec<f64>,
}

/// Steps in which the moved laps are ridden, m: the changes matter, not the times.
const VARIANT_STEP_M: f64 = 1.0;

impl Variants {
    /// Rides the next; whether there was one.
    fn go_on(&mut self, course: &Course, setup: &LapSetup) -> Result<bool, PowerBelowStanding> {
        let moved = core::iter::once(&Moved::NOT).chain(&Moved::EACH).nth(self.ridden.len());
        let Some(moved) = moved else { return Ok(false) };
        on_ride(course, setup, Step::known(VARIANT_STEP_M), moved, |ride| {
            self.ridden.push(Outcome::of(&ridden(ride, setup.begin)));
            self.ends = ride.terrain.ends();
        })?;
        Ok(true)
    }

    fn around(&self, lap: Lap) -> BandedLap {
        let given = self.ridden.first().map_or(1.0, |it| it.time);
        let logarithms = self.ridden.iter().skip(1).map(|plan| (plan.time / given).ln());
        let (down, up) = in_quadrature(logarithms);
        let time_s = lap.time_s;
        let band = TimeBand { low_s: time_s * (-down).exp(), time_s, high_s: time_s * up.exp() };
        BandedLap { lap, band, too_close: self.too_close() }
    }

    fn too_close(&self) -> Vec<Span> {
        let Some((given, each)) = self.ridden.split_first() else { return Vec::new() };
        let turns = |at: usize| each.iter().any(|plan| plan.modes[at] != given.modes[at]);
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
            let compared = LapComparison::of(&course, &setups[0], &setups[1]).unwrap();
            let [one, other] = [compared.first.lap, compared.second.lap];
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
            ridden: [[Ride, Ride, Foot, Foot, Ride]]
                .iter()
                .chain(each)
                .map(|&modes| outcome(modes))
                .collect(),
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
