//! A lap on a reserve: its time, where to get off and on, and what the reserve does on the way.

use crate::course::lap::lap::{EnergyBook, GearUse, PlanPart, on_foot_round};
use crate::course::lap::modes::Mode;
use crate::gears::Gear;

/// The quickest lap of many that a rider can make of a budget of effort: when to spend, when to rest, which gear, and where to go
/// on foot.
///
/// # Formula
/// T + λ N least over power, brakes, gear and feet, with N = ∫ h dt the [charge](crate::rider::EffortAccount::charge) of the lap
/// and one price λ of a charged joule, at which N = B. Where N jumps because getting off begins to pay, the nearer side is kept.
/// One price for a whole lap leaves the order of efforts aside; it is good while a lap moves the reserve by less than a third.
/// Solved from the line backwards over place, speed and gear; the time is that of the lap ridden forward by what was found.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Course, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::{Fineness, ReserveLap, ReserveSetup};
/// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, EffortBudget, KitMass, PeakPower, WorkReserve};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
/// let for_ever = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
///
/// let course: Course = "150; 0; firm grass\n40; 12; firm grass\n60; -8; firm grass".parse()?;
/// let lap = |setup| ReserveLap::of(&course, setup, Fineness::QUICK);
/// let steady = lap(&for_ever);
/// let spent = lap(&ReserveSetup { budget: EffortBudget::new(1500.0)?, ..for_ever });
/// assert!(steady.highest_power_w > 250.0, "the bank is forced and paid back on the way down");
/// assert!(spent.time_s < steady.time_s && spent.price_s_per_j < steady.price_s_per_j);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct ReserveLap {
    /// Time of the lap on the budget, in seconds: that of the lap as ridden, with the price of what it took beyond the budget or
    /// left of it. Where the quickest laps differ by turns, as one that is begun on foot and one that is not, it is their mean.
    pub time_s: f64,
    /// Time of the lap as ridden, in seconds.
    pub ridden_s: f64,
    /// What it takes from the reserve above the sustainable power, in joules.
    pub charged_j: f64,
    /// What it repays below, in joules.
    pub repaid_j: f64,
    /// Work above the sustainable power, at the crank and as much on foot, in joules.
    pub above_j: f64,
    /// What one more joule would gain, in seconds.
    pub price_s_per_j: f64,
    /// Highest power at the crank, in W.
    pub highest_power_w: f64,
    /// Time riding without pedalling, in seconds.
    pub coasting_s: f64,
    /// Where to ride and where to go on foot, in order. Their times add up to the lap as ridden.
    pub plan: Vec<PlanPart>,
    /// Each gear used, from the lowest.
    pub gears: Vec<GearUse>,
    /// Shifts from sprocket to sprocket.
    pub shifts_rear: u32,
    /// Shifts from ring to ring, whether or not the sprocket changes with it.
    pub shifts_front: u32,
    /// Where the work of riding went.
    pub energy: EnergyBook,
    /// Length of the longest step, in metres.
    pub step_m: f64,
    /// How far off the time of this plan may be because of the steps, in seconds: halving them moves it so far.
    pub step_error_s: f64,
    /// The lap step by step.
    pub trace: Vec<ReservePoint>,
}

/// The lap at the end of one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReservePoint {
    /// Distance from the line, in metres.
    pub at_m: f64,
    /// Time since the line, in seconds.
    pub time_s: f64,
    /// Speed, in metres per second.
    pub speed_m_per_s: f64,
    /// Riding or on foot, over this step.
    pub mode: Mode,
    /// Power at the crank over this step, or the power that would cost the muscles as much, in W.
    pub power_w: f64,
    /// Gear, when riding.
    pub gear: Option<Gear>,
    /// Cadence the gear turns at over this step, pedalled or not, in rpm; none on foot.
    pub cadence_rpm: Option<f64>,
    /// What the reserve has been drawn down by since the line, in joules.
    pub spent_j: f64,
}

impl ReserveLap {
    /// What the lap takes from the reserve in the end, in joules.
    #[must_use]
    pub fn net_j(&self) -> f64 {
        self.charged_j - self.repaid_j
    }

    /// Parts on foot of one lap of many, in order: one on both sides of the line is one part, which begins farther from the
    /// line than it ends.
    #[must_use]
    pub fn on_foot_round(&self) -> Vec<PlanPart> {
        on_foot_round(&self.plan)
    }

    /// How much of the lap is gone on foot, in metres.
    #[must_use]
    pub fn on_foot_m(&self) -> f64 {
        self.plan.iter().filter(|part| part.mode == Mode::Foot).map(|part| part.to_m - part.from_m).sum()
    }
}
