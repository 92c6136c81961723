//! A lap of the course on both set-ups.

use crate::lap::basis::Basis;
use crate::lap::course_fault::{CourseFault, lap_of};
use crate::lap::inputs::{CourseChoice, LapInputs};
use crate::lap::settled::Settled;
use crate::lap::words;
use crate::side::Side;
use gear_math::course::{
    Demo, ForcedPlace, LapComparison, Precision, ProfilePoint, Segment, SmoothingLength, Step,
    TrackElevation, TrackFault, TrackOptions, TrackReport,
};
use gear_math::rider::{CriticalPower, PowerBelowStanding, ReserveShare};
use gear_math::{Course, Gear, Lap, LapSetup};
use std::rc::Rc;

/// What is not done about the course, which stays as it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// A file or a kept course of this name is not taken, and why.
    File(String, CourseFault),
    /// That part of the track is not used, and why.
    Part(CourseFault),
    /// The course has more stretches than the sketch holds.
    Sketch,
}

/// A course from a file, or one that was kept.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnCourse {
    /// Name of the file or of the course.
    pub name: String,
    /// The course.
    pub course: Course,
    /// The length that its elevations were smoothed over, where that is known, m.
    pub smoothing_m: Option<f64>,
    /// The track it was read from and what was found in it.
    pub track: Option<(Rc<str>, TrackOptions, TrackReport)>,
}

impl OwnCourse {
    /// Reads a recorded track.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn from_gpx(name: &str, text: Rc<str>, options: TrackOptions) -> Result<Self, CourseFault> {
        let mut read = Course::from_gpx(&text, &options).map_err(CourseFault::Gpx)?;
        read.course = read.course.as_lap().map_err(CourseFault::Course)?;
        let smoothing_m = Some(options.smoothing.m());
        let track = Some((text, options, read.report));
        Ok(Self { name: shortened(name), course: read.course, smoothing_m, track })
    }

    /// Reads the rows of a course that was kept.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn from_rows(name: &str, rows: &str, smoothing_m: Option<f64>) -> Result<Self, CourseFault> {
        let course = lap_of(rows)?;
        let smoothing_m = smoothing_m.filter(|&m| SmoothingLength::new(m).is_ok());
        Ok(Self { name: shortened(name), course, smoothing_m, track: None })
    }

    /// The first lap of the same track, or the whole of it; none where it is no recorded track, or that is no course.
    #[must_use]
    pub fn cut(&self, first_lap: bool) -> Option<Self> {
        let (text, options, _) = self.track.as_ref()?;
        Self::from_gpx(&self.name, Rc::clone(text), TrackOptions { first_lap, ..*options }).ok()
    }

    /// How much higher the end of a loop was recorded than its start, m; none where they meet.
    #[must_use]
    pub fn gap_m(&self) -> Option<f64> {
        let (_, _, found) = self.track.as_ref()?;
        Some(found.elevation.mismatch_m).filter(|gap| gap.abs() >= TrackElevation::CLOSED_M)
    }

    /// Why no lap of it may be timed; none where one may.
    #[must_use]
    pub fn fault(&self) -> Option<TrackFault> {
        self.track.as_ref().and_then(|(_, _, report)| report.track_use.fault())
    }

    /// The same track with other smoothing, another ground or another part of it, where that changes anything.
    #[must_use]
    pub fn read_again(&self, inputs: &LapInputs) -> Option<Result<Self, CourseFault>> {
        let (text, options, _) = self.track.as_ref()?;
        let wanted = inputs.track_options(options.first_lap);
        (*options != wanted).then(|| Self::from_gpx(&self.name, Rc::clone(text), wanted))
    }
}

fn shortened(name: &str) -> String {
    name.chars().take(60).collect()
}

/// What a lap is worked out from.
#[derive(Debug, Clone, PartialEq)]
pub struct LapQuestion {
    /// The course, painted.
    pub course: Course,
    /// A and B.
    pub setups: [LapSetup; 2],
    /// What the rider has in store above the power, and how much of it a lap may spend; none where that power is one of
    /// seconds.
    pub effort: Option<(CriticalPower, ReserveShare)>,
}

impl LapQuestion {
    /// The question that a bench asks. Where the course is still to be chosen, an invented one stands in, with nothing
    /// painted over it.
    #[must_use]
    pub fn of(basis: &Basis<'_>, own: Option<&OwnCourse>) -> Self {
        let inputs = basis.lap;
        let course =
            inputs.course(own).map_or_else(|| Demo::Meadow.course(), |course| inputs.painted(course));
        let ride = basis.ride;
        let effort = CriticalPower::new(ride.rider.power, ride.reserve, ride.peak).ok();
        Self {
            course,
            setups: Side::BOTH.map(|side| basis.setup(side)),
            effort: effort.filter(|_| ride.power_lasts()).map(|effort| (effort, ride.share)),
        }
    }

    /// The places of one set-up's lap on foot that are quicker forced.
    fn forced(&self, side: Side, lap: &Lap) -> Result<Vec<ForcedPlace>, PowerBelowStanding> {
        let Some((effort, share)) = &self.effort else { return Ok(Vec::new()) };
        lap.forced(&self.course, &self.setups[side as usize], effort, *share)
    }
}

/// The lap, worked out.
#[derive(Debug)]
pub struct LapReport {
    /// What it was worked out from.
    pub question: LapQuestion,
    /// Heights along the course.
    pub profile: Vec<ProfilePoint>,
    /// A and B.
    pub laps: [Lap; 2],
    /// How they compare, once that is worked out.
    pub settled: Option<Settled>,
}

impl LapReport {
    /// How finely the times of the lap are told.
    #[must_use]
    pub fn precision(&self) -> Precision {
        self.settled.as_ref().map_or(Precision::WITHOUT_BAND, Settled::precision)
    }

    /// Rides the lap: once in coarse steps, or until it has settled and with every doubt moved.
    ///
    /// # Errors
    /// When the rider does not even move on foot.
    pub fn of(question: LapQuestion, settled: bool) -> Result<Self, PowerBelowStanding> {
        let [a, b] = &question.setups;
        let profile = question.course.profile();
        if settled {
            let compared = LapComparison::of(&question.course, a, b)?;
            let LapComparison { first, second, gained, parts, main, curve, .. } = compared;
            let settled = Settled {
                bands: [first.band, second.band],
                too_close: [first.too_close, second.too_close],
                gained,
                forced: [question.forced(Side::A, &first.lap)?, question.forced(Side::B, &second.lap)?],
                parts,
                main,
                curve,
            };
            return Ok(Self { profile, laps: [first.lap, second.lap], settled: Some(settled), question });
        }
        let step = Step::new(1.0).map_err(|_| PowerBelowStanding)?;
        let ridden = |setup| Lap::in_steps(&question.course, setup, step);
        let laps = [ridden(a)?, ridden(b)?];
        Ok(Self { profile, laps, settled: None, question })
    }

    /// Whether A and B are the same bike.
    #[must_use]
    pub fn is_of_one_bike(&self) -> bool {
        self.question.setups[0] == self.question.setups[1]
    }

    /// Name of a gear of one side, in brackets when it runs cross-chained there.
    #[must_use]
    pub fn gear_name(&self, side: Side, gear: Gear) -> String {
        if self.is_crossed(side, gear) { format!("({gear})") } else { gear.to_string() }
    }

    fn is_crossed(&self, side: Side, gear: Gear) -> bool {
        self.question.setups[side as usize].bike.drivetrain.is_crossed(gear)
    }

    /// Time in cross-chained gears, in seconds.
    #[must_use]
    pub fn crossed_s(&self, side: Side) -> f64 {
        let used = self.laps[side as usize].gears.iter();
        used.filter(|used| self.is_crossed(side, used.gear)).map(|used| used.time_s).sum()
    }

    /// Length of the lap, metres.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.profile.last().map_or(0.0, |point| point.at_m)
    }

    /// The stretch under a place.
    #[must_use]
    pub fn segment_at(&self, at_m: f64) -> (&Segment, f64) {
        let (segments, profile) = (self.question.course.segments(), &self.profile);
        let index = profile[1..].partition_point(|point| point.at_m < at_m).min(segments.len() - 1);
        let (from, segment) = (profile[index], &segments[index]);
        let share = (at_m - from.at_m) / segment.length.m();
        (segment, from.height_m + share * segment.rise_m())
    }
}

impl LapInputs {
    /// How a track is read.
    #[must_use]
    pub const fn track_options(&self, first_lap: bool) -> TrackOptions {
        let [from, to] = self.part;
        TrackOptions { smoothing: self.smoothing, surface: self.track_ground, from, to, first_lap }
    }

    /// Why the track that is to be ridden is no course; none where it is one.
    #[must_use]
    pub fn fault(&self, own: Option<&OwnCourse>) -> Option<TrackFault> {
        own.filter(|_| self.choice == CourseChoice::Own).and_then(OwnCourse::fault)
    }

    /// The course before anything is painted over it; none while its file is still to be chosen.
    #[must_use]
    pub fn course(&self, own: Option<&OwnCourse>) -> Option<Course> {
        match self.choice {
            CourseChoice::Own => own.map(|own| own.course.clone()),
            CourseChoice::Demo(demo) => Some(demo.course()),
            CourseChoice::Sketch => Some((*self.sketch).clone()),
        }
    }

    /// What the course that is ridden is called.
    #[must_use]
    pub fn course_name(&self, own: Option<&OwnCourse>) -> String {
        match (self.choice, own) {
            (CourseChoice::Demo(demo), _) => words::course::demo(demo).to_owned(),
            (CourseChoice::Sketch, _) => words::course::SKETCH.to_owned(),
            (CourseChoice::Own, Some(own)) => own.name.clone(),
            (CourseChoice::Own, None) => words::course::demo(Demo::Meadow).to_owned(),
        }
    }
}
