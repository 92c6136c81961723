//! A lap of the course on both set-ups.

use crate::lap::basis::Basis;
use crate::lap::drawn::Drawn;
use crate::lap::inputs::{CourseChoice, LapInputs, LapModel};
use crate::lap::own_course::OwnCourse;
use crate::lap::settled::Settled;
use crate::lap::words;
use crate::side::Side;
use gear_math::course::{
    Demo, DrawnBand, Draws, Fineness, ForcedPlace, LapComparison, LapDraw, LapGains, LapSettling, OpenSpan,
    Precision, ProfilePoint, ReserveForcing, ReserveSetup, ReserveUse, Segment, Span, Step, Turner,
};
use gear_math::rider::{
    CriticalPower, EffortAccount, EffortBudget, EffortPrice, PowerBelowStanding, ReserveShare, Wind,
};
use gear_math::{Course, Gear, Lap, LapSetup};
use std::rc::Rc;

/// What a lap is worked out from.
#[derive(Debug, Clone, PartialEq)]
pub struct LapQuestion {
    /// The course, painted.
    pub course: Course,
    /// A and B.
    pub setups: [LapSetup; 2],
    /// How effort is spread over it.
    pub spread: Spread,
}

/// How effort is spread over a lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Spread {
    /// At an even power. Beside it what the rider has in store above that, and how much of it a lap may spend; none where that
    /// power is one of seconds.
    Even(Option<(CriticalPower, ReserveShare)>),
    /// On a reserve.
    Reserve {
        /// What power and cadence take from it.
        account: EffortAccount,
        /// What one lap may take in the end.
        budget: EffortBudget,
        /// Wind over the ground.
        wind: Wind,
    },
}

impl Spread {
    /// A power of seconds leaves no reserve, so that a lap at it is even.
    fn of(basis: &Basis<'_>) -> Self {
        let (ride, inputs) = (basis.ride, basis.lap);
        let account = ride.account();
        match inputs.model {
            LapModel::Reserve if ride.power_lasts() => {
                Self::Reserve { account, budget: inputs.budget, wind: inputs.wind }
            }
            _ => Self::Even(ride.power_lasts().then_some((account.effort, ride.share))),
        }
    }

    fn on_reserve(&self, lap: LapSetup) -> Option<ReserveSetup> {
        let Self::Reserve { account, budget, wind } = *self else { return None };
        Some(ReserveSetup { budget, wind: Some(wind), ..ReserveSetup::new(lap, account) })
    }
}

impl Basis<'_> {
    /// Rider and bike of one set-up on a reserve; none at an even power.
    #[must_use]
    pub fn on_reserve(&self, side: Side) -> Option<ReserveSetup> {
        Spread::of(self).on_reserve(self.setup(side))
    }
}

impl LapQuestion {
    /// The question that a bench asks. Where the course is still to be chosen, an invented one stands in, with nothing
    /// painted over it.
    #[must_use]
    pub fn of(basis: &Basis<'_>, own: Option<&OwnCourse>) -> Self {
        let inputs = basis.lap;
        let course =
            inputs.course(own).map_or_else(|| Demo::Meadow.course(), |course| inputs.painted(course));
        Self { course, setups: Side::BOTH.map(|side| basis.setup(side)), spread: Spread::of(basis) }
    }

    /// A and B on a reserve; none at an even power.
    #[must_use]
    pub fn on_reserve(&self) -> Option<[ReserveSetup; 2]> {
        let [a, b] = self.setups.map(|setup| self.spread.on_reserve(setup));
        Some([a?, b?])
    }

    /// Whether wind is to count round a course of which some stretch does not say which way it leads.
    #[must_use]
    pub fn lacks_headings(&self) -> bool {
        let windy = matches!(self.spread, Spread::Reserve { wind, .. } if wind.speed.m_per_s() > 0.0);
        windy && self.course.segments().iter().any(|segment| segment.heading.is_none())
    }

    /// The places of one set-up's lap on foot that are quicker forced.
    fn forced(&self, side: Side, lap: &Lap) -> Result<Vec<ForcedPlace>, PowerBelowStanding> {
        let Spread::Even(Some((effort, share))) = &self.spread else { return Ok(Vec::new()) };
        lap.forced(&self.course, &self.setups[side as usize], effort, *share)
    }
}

/// The lap, worked out.
#[derive(Debug, Clone)]
pub struct LapReport {
    /// What it was worked out from.
    pub question: LapQuestion,
    /// Heights along the course.
    pub profile: Vec<ProfilePoint>,
    /// A and B.
    pub laps: [Lap; 2],
    /// How they compare, once that is worked out.
    pub settled: Option<Settled>,
    /// The laps with all that is doubtful moved, on a reserve, as far as they are worked out.
    pub draws: Vec<Drawn>,
    /// Where A and B draw on the reserve, and what that is worth there.
    pub forcings: [Vec<ReserveForcing>; 2],
}

/// How many draws are done where nobody but the page itself can do them, as before it is printed: fewer than workers do, because
/// everything waits for them.
const DRAWN_AT_ONCE: usize = 16;
/// How finely a lap on a reserve is looked for.
pub const FINENESS: Fineness = Fineness::QUICK;

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
        if let Some(setups) = question.on_reserve() {
            let laps = setups.each_ref().map(|setup| Lap::on_reserve(&question.course, setup, FINENESS));
            let draws = if settled { drawn_at_once(&question.course, &setups) } else { Vec::new() };
            let mut report = Self::ridden(question, laps).with(draws);
            report.settled.iter_mut().for_each(|it| it.is_final = true);
            return Ok(report);
        }
        if settled {
            let settling = LapSettling::new(question.course.clone(), question.setups);
            return Self::settled(question, settling);
        }
        let [a, b] = &question.setups;
        let step = Step::new(1.0).map_err(|_| PowerBelowStanding)?;
        let ridden = |setup| Lap::in_steps(&question.course, setup, step);
        let laps = [ridden(a)?, ridden(b)?];
        Ok(Self::even(question, laps))
    }

    /// Laps at an even power, compared as far as they are ridden and to the end.
    ///
    /// # Errors
    /// When the rider does not even move on foot.
    pub fn settled(question: LapQuestion, settling: LapSettling) -> Result<Self, PowerBelowStanding> {
        Self::compared(question, settling.comparison()?)
    }

    /// Laps at an even power that were ridden and compared elsewhere.
    ///
    /// # Errors
    /// When the rider does not even move on foot.
    pub fn compared(question: LapQuestion, found: LapComparison) -> Result<Self, PowerBelowStanding> {
        let LapComparison { first, second, gained, gains, .. } = found;
        let settled = Settled {
            bands: [first.band, second.band],
            too_close: [first.too_close, second.too_close],
            gained,
            forced: [question.forced(Side::A, &first.lap)?, question.forced(Side::B, &second.lap)?],
            gains: Rc::new(gains),
            drawn: None,
            turners: None,
            is_final: true,
        };
        let laps = [first.lap, second.lap];
        Ok(Self { settled: Some(settled), ..Self::even(question, laps) })
    }

    fn even(question: LapQuestion, laps: [Lap; 2]) -> Self {
        let profile = question.course.profile();
        Self { profile, laps, settled: None, question, draws: Vec::new(), forcings: [Vec::new(), Vec::new()] }
    }

    /// Laps that were ridden elsewhere.
    #[must_use]
    pub fn ridden(question: LapQuestion, laps: [Lap; 2]) -> Self {
        let forcings = question.on_reserve().map(|setups| {
            let forced = |at: usize| laps[at].forced_on_reserve(&question.course, &setups[at], FINENESS);
            [forced(0), forced(1)]
        });
        Self { forcings: forcings.unwrap_or_default(), ..Self::even(question, laps) }
    }

    /// The same with more draws, which settle it once there are enough.
    #[must_use]
    pub fn with(mut self, draws: Vec<Drawn>) -> Self {
        for drawn in draws {
            if self.draws.iter().all(|it| it.number != drawn.number) {
                self.draws.push(drawn);
            }
        }
        let draws: Vec<LapDraw> = self.draws.iter().map(|it| it.draw.clone()).collect();
        let [a, b] = &self.laps;
        let error_s = a.step_error_s.unwrap_or(0.0).hypot(b.step_error_s.unwrap_or(0.0));
        let known = self.settled.take().map(|it| it.gains);
        self.settled = DrawnBand::of(&draws, error_s).map(|drawn| Settled {
            bands: [drawn.laps[0].with_best(a.time_s), drawn.laps[1].with_best(b.time_s)],
            too_close: [0, 1].map(|side| OpenSpan::all(&draws, side).iter().map(span).collect()),
            gained: drawn.gained.with_best(a.time_s - b.time_s),
            forced: [Vec::new(), Vec::new()],
            gains: known.unwrap_or_else(|| Rc::new(LapGains::between(a, b))),
            drawn: Some(drawn),
            turners: self.turners(error_s),
            is_final: draws.len() >= Draws::COUNT,
        });
        self
    }

    /// By what of all that is doubtful it turns who is quicker; none as long as not every draw is in.
    fn turners(&self, step_error_s: f64) -> Option<Vec<Turner>> {
        let [given, _] = self.question.on_reserve().filter(|_| self.draws.len() >= Draws::COUNT)?;
        let draws = Draws::usual();
        let done = self.draws.iter().map(|it| (draws.draw(it.number), it.draw.gained_s()));
        Some(Turner::all(&given, &done.collect::<Vec<_>>(), step_error_s))
    }

    /// What a joule of the reserve is worth on these laps; nothing at an even power.
    #[must_use]
    pub fn prices(&self) -> Option<[EffortPrice; 2]> {
        let [a, b] = self.laps.each_ref().map(|lap| lap.reserve.as_ref().map(ReserveUse::price));
        Some([a?, b?])
    }

    /// Whether it is of what stood on the bench before, and the lap of this question takes so long that workers ride it.
    #[must_use]
    pub fn is_before(&self, question: &LapQuestion) -> bool {
        matches!(question.spread, Spread::Reserve { .. }) && self.question != *question
    }

    /// Whether nothing is left to be worked out.
    #[must_use]
    pub fn is_done(&self) -> bool {
        match self.question.spread {
            Spread::Even(_) => self.settled.is_some(),
            Spread::Reserve { .. } => self.draws.len() >= Draws::COUNT,
        }
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

fn span(open: &OpenSpan) -> Span {
    Span { from_m: open.from_m, to_m: open.to_m }
}

fn drawn_at_once(course: &Course, setups: &[ReserveSetup; 2]) -> Vec<Drawn> {
    let numbers = (0..Draws::COUNT).step_by(Draws::COUNT / DRAWN_AT_ONCE);
    numbers.map(|number| Drawn::of(course, setups, number)).collect()
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
