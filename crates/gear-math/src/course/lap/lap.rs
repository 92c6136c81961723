//! A lap of a course on one bike: its time, where to get off and on, and what the gears do on the way.

use crate::course::lap::modes::Mode;
use crate::course::lap::reserve_use::ReserveUse;
use crate::gears::Gear;
use crate::rider::Reason;

/// What is gone on foot for less than this is no place to dismount, m. Estimate: a step or two.
const LEAST_ON_FOOT_M: f64 = 1.0;
/// A lap as it went.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Drivetrain, Lap, LapSetup, Power, Rider};
/// use gear_math::course::{Demo, Mode};
/// use gear_math::rider::{Air, BikeMass, BodyMass, KitMass};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2150.0)?);
/// let lap = Lap::of(&Demo::Meadow.course(), &LapSetup::new(rider, bike, Air::STILL))?;
/// assert!(lap.time_s > 300.0 && lap.time_s < 900.0);
/// assert!(lap.plan.iter().any(|part| part.mode == Mode::Foot));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Lap {
    /// Time of the lap, in seconds. On a reserve it is that of the lap found, with the price of what it took beyond the budget or
    /// left of it, a few thousandths; all other times are longer or shorter by as much. Where the quickest laps differ by turns, as
    /// one that is begun on foot and one that is not, it is their mean.
    pub time_s: f64,
    /// Length of the steps it was worked out in, in metres.
    pub step_m: f64,
    /// How far off the time may be because of the steps, in seconds; none where no second step was tried. A place that
    /// can be ridden by a hair, or cannot by a hair, may come out the other way in finer steps: that is another getting
    /// off and on.
    pub step_error_s: Option<f64>,
    /// Where to ride and where to go on foot, in order.
    pub plan: Vec<PlanPart>,
    /// Each gear used, from the lowest.
    pub gears: Vec<GearUse>,
    /// Shifts from sprocket to sprocket.
    pub shifts_rear: u32,
    /// Shifts from ring to ring, whether or not the sprocket changes with it.
    pub shifts_front: u32,
    /// Lowest cadence once the rider has got going, in rpm; none when they never ride.
    pub lowest_cadence_rpm: Option<f64>,
    /// Time pedalled slower than the cadence window, in seconds.
    pub below_window_s: f64,
    /// Where the work went.
    pub energy: EnergyBook,
    /// The lap step by step.
    pub trace: Vec<TracePoint>,
    /// What it makes of a reserve; none where it is ridden at a steady power.
    pub reserve: Option<ReserveUse>,
}

/// A part of the lap in one mode.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanPart {
    /// From here, in metres from the line.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
    /// Riding or on foot.
    pub mode: Mode,
    /// Why on foot: what holds over most of it, or what it leads to; none when riding.
    pub why: Option<WhyOnFoot>,
    /// How long it takes, in seconds. Getting off at the start and getting on at the end of a part on foot belong to that
    /// part.
    pub time_s: f64,
}

impl PlanPart {
    /// Whether a part on foot is a place: a step or two where nothing stands is none.
    fn is_place(&self) -> bool {
        let is_step = (0.0..LEAST_ON_FOOT_M).contains(&(self.to_m - self.from_m));
        !is_step || self.why == Some(WhyOnFoot::Obstacle)
    }
}

/// Why a part is gone on foot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhyOnFoot {
    /// An obstacle stands there.
    Obstacle,
    /// A limit holds, or it is quicker.
    Because(Reason),
}

/// Use of one gear over the lap, without the time it takes to get off and on: that is part of the way on foot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GearUse {
    /// The gear.
    pub gear: Gear,
    /// Time in it, in seconds.
    pub time_s: f64,
    /// Way in it, in metres.
    pub distance_m: f64,
}

/// Where the work of riding went, in joules. Work on foot is not counted.
///
/// `crank_j` is the sum of all the others.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct EnergyBook {
    /// Work at the crank.
    pub crank_j: f64,
    /// Lost between crank and wheel.
    pub drivetrain_j: f64,
    /// Into height; negative where the course falls.
    pub climbing_j: f64,
    /// Into tyres and ground.
    pub rolling_j: f64,
    /// Into wheel bearings.
    pub bearings_j: f64,
    /// Against the air.
    pub air_j: f64,
    /// Into brakes.
    pub brakes_j: f64,
    /// Gained in kinetic energy between getting on and getting off, or the line.
    pub kinetic_j: f64,
}

/// The lap at the end of one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TracePoint {
    /// Distance from the line, in metres.
    pub at_m: f64,
    /// Time since the line, in seconds.
    pub time_s: f64,
    /// Speed, in metres per second.
    pub speed_m_per_s: f64,
    /// Riding or on foot, over this step.
    pub mode: Mode,
    /// Gear, when riding.
    pub gear: Option<Gear>,
    /// Cadence the gear turns at, pedalled or not, in rpm: there, on a reserve over this step; none on foot.
    pub cadence_rpm: Option<f64>,
}

impl Lap {
    /// Before the first step.
    pub(in crate::course) fn begun(steps: usize) -> Self {
        Self {
            time_s: 0.0,
            step_m: 0.0,
            step_error_s: None,
            plan: Vec::new(),
            gears: Vec::new(),
            shifts_rear: 0,
            shifts_front: 0,
            lowest_cadence_rpm: None,
            below_window_s: 0.0,
            energy: EnergyBook::default(),
            trace: Vec::with_capacity(steps),
            reserve: None,
        }
    }

    /// Parts on foot of one lap of many, in order: one on both sides of the line is one part, which begins farther from the
    /// line than it ends.
    #[must_use]
    pub fn on_foot_round(&self) -> Vec<PlanPart> {
        on_foot_round(&self.plan)
    }

    /// The places to dismount: parts on foot of one lap of many, without those of less than a metre on which nothing stands.
    /// How often one dismounts is how many there are.
    #[must_use]
    pub fn dismounts(&self) -> Vec<PlanPart> {
        let mut parts = self.on_foot_round();
        parts.retain(PlanPart::is_place);
        parts
    }

    /// Whether the rider never rides.
    #[must_use]
    pub fn is_all_on_foot(&self) -> bool {
        self.plan.iter().all(|part| part.mode == Mode::Foot)
    }

    /// How much of the lap is gone on foot, in metres.
    #[must_use]
    pub fn on_foot_m(&self) -> f64 {
        self.plan.iter().filter(|part| part.mode == Mode::Foot).map(|part| part.to_m - part.from_m).sum()
    }

    /// Time on foot with getting off and on, in seconds: all of the lap that is not spent in a gear.
    #[must_use]
    pub fn on_foot_s(&self) -> f64 {
        self.time_s - self.gears.iter().map(|used| used.time_s).sum::<f64>()
    }
}

/// [`Lap::on_foot_round`] of a plan.
pub(in crate::course) fn on_foot_round(plan: &[PlanPart]) -> Vec<PlanPart> {
    let mut parts: Vec<PlanPart> = plan.iter().filter(|it| it.mode == Mode::Foot).copied().collect();
    let ends_on_foot = |part: Option<&PlanPart>| part.is_some_and(|part| part.mode == Mode::Foot);
    let crosses = plan.len() > 1 && ends_on_foot(plan.first()) && ends_on_foot(plan.last());
    if crosses {
        let start = parts.remove(0);
        if let Some(end) = parts.last_mut() {
            if start.to_m > end.to_m - end.from_m {
                end.why = start.why;
            }
            end.to_m = start.to_m;
            end.time_s += start.time_s;
        }
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    fn part(from_m: f64, to_m: f64, mode: Mode, why: Option<WhyOnFoot>) -> PlanPart {
        PlanPart { from_m, to_m, mode, why, time_s: 5.0 }
    }

    fn lap(time_s: f64, plan: Vec<PlanPart>) -> Lap {
        Lap { time_s, plan, ..Lap::begun(0) }
    }

    #[test]
    fn a_step_or_two_on_foot_is_no_place_to_dismount_unless_something_stands_there() {
        let gear = Some(WhyOnFoot::Because(Reason::Gear));
        let dismounts = |to_m, why| lap(9.0, vec![part(10.0, to_m, Mode::Foot, why)]).dismounts().len();
        assert_eq!([dismounts(10.99, gear), dismounts(11.0, gear), dismounts(40.0, gear)], [0, 1, 1]);
        assert_eq!(dismounts(10.4, Some(WhyOnFoot::Obstacle)), 1);
        let across = vec![
            part(0.0, 0.4, Mode::Foot, gear),
            part(0.4, 99.0, Mode::Ride, None),
            part(99.0, 99.2, Mode::Foot, gear),
        ];
        assert_eq!(lap(9.0, across).dismounts().len(), 1, "one on both sides of the line is one");
    }

    /// The part across the line takes the time of both its ends and the reason of the longer one.
    #[test]
    fn a_part_across_the_line_is_one() {
        let [gear, quicker] = [Reason::Gear, Reason::Energy].map(|why| Some(WhyOnFoot::Because(why)));
        let across = |start: f64, end: f64| {
            let plan = vec![
                part(0.0, start, Mode::Foot, gear),
                part(start, 50.0, Mode::Ride, None),
                part(50.0, 60.0, Mode::Foot, Some(WhyOnFoot::Obstacle)),
                part(60.0, 100.0 - end, Mode::Ride, None),
                PlanPart { time_s: 7.0, ..part(100.0 - end, 100.0, Mode::Foot, quicker) },
            ];
            lap(99.0, plan).on_foot_round()
        };
        for (start, end, why) in [(8.0, 5.0, gear), (5.0, 8.0, quicker)] {
            let parts = across(start, end);
            assert_eq!((parts.len(), parts[0].why), (2, Some(WhyOnFoot::Obstacle)));
            let whole = parts[1];
            assert_eq!((whole.from_m, whole.to_m, whole.time_s, whole.why), (100.0 - end, start, 12.0, why));
        }
    }

    #[test]
    fn a_lap_is_all_on_foot_only_without_any_riding() {
        let on_foot = part(0.0, 9.0, Mode::Foot, None);
        assert!(lap(9.0, vec![on_foot]).is_all_on_foot());
        assert!(!lap(9.0, vec![on_foot, part(9.0, 20.0, Mode::Ride, None)]).is_all_on_foot());
    }
}
