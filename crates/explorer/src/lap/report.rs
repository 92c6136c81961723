//! A lap of the course on both set-ups.

use crate::lap::basis::Basis;
use crate::lap::inputs::{CourseChoice, LapInputs};
use crate::lap::own_course::OwnCourse;
use crate::lap::settled::Settled;
use crate::lap::words;
use crate::side::Side;
use gear_math::course::{Demo, ForcedPlace, LapComparison, Precision, ProfilePoint, Segment, Step};
use gear_math::rider::{CriticalPower, PowerBelowStanding, ReserveShare};
use gear_math::{Course, Gear, Lap, LapSetup};

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
