//! One step of a planned lap, as other gears would find it.

use crate::course::lap::lap::TracePoint;
use crate::course::reserve::setup::ReserveSetup;
use crate::rider::EffortAccount;

/// What a joule at the crank is worth where the plan keeps to the sustainable power, in charged joules: between the repaid share
/// and 1. Estimate, from laps planned with a little less drivetrain efficiency.
const AT_SUSTAINABLE: f64 = 0.83;
/// A power within this share of the sustainable one is that.
const NEAR: f64 = 0.03;
/// A power is moved by this share to see what the charge makes of it.
const NUDGE: f64 = 1e-4;
/// What speed that a shift takes is worth while coasting, over what is repaid there. Estimate, between nothing before a bend and
/// all of it.
const COASTING: f64 = 0.5;

/// One step of a planned lap, as other gears would find it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    /// s.
    time: f64,
    /// m/s; none on foot.
    speed: f64,
    /// W.
    power: f64,
    /// What a joule at the crank is worth, in charged joules.
    worth: f64,
}

impl Piece {
    /// The step that ends at a point of the trace, after so many metres.
    pub(super) fn new(setup: &ReserveSetup, point: &TracePoint, power: f64, way: f64) -> Self {
        let (Some(gear), Some(rpm)) = (point.gear, point.cadence_rpm) else {
            return Self { time: 0.0, speed: 0.0, power: 0.0, worth: 0.0 };
        };
        let speed = rpm * gear.development(setup.lap.bike.wheel).m() / 60.0;
        let worth = worth(&setup.account, power, rpm);
        Self { time: way / speed, speed, power, worth }
    }

    /// Time pedalled as planned, s.
    pub(super) fn pedalled_s(&self) -> f64 {
        if self.power > 0.0 { self.time } else { 0.0 }
    }

    fn is_on_foot(&self) -> bool {
        self.speed <= 0.0
    }

    /// What the step charges in a gear in which the crank turns so often a minute at 1 m/s, in J, less what its power is worth.
    ///
    /// # Formula
    /// t min (h(P, n) − w P): speed and time stay as planned, what the power differs by is valued at the worth w of a joule.
    pub(super) fn charged_j(&self, account: &EffortAccount, turns: f64) -> f64 {
        if self.is_on_foot() {
            return 0.0;
        }
        let rpm = turns * self.speed;
        let power = account.power_worth(self.worth, rpm, self.power).min(self.most(account));
        let pedalled = account.charge_w(power, rpm) - self.worth * power;
        self.time * pedalled.min(-account.repaid_w())
    }

    /// Who pedals with less than lasts is held back by a bend or by grip, whatever the gear.
    fn most(&self, account: &EffortAccount) -> f64 {
        let is_held = self.power > 0.0 && self.power < (1.0 - NEAR) * account.sustainable_w();
        if is_held { self.power } else { f64::INFINITY }
    }

    /// What a second of lost drive is worth before the step, in charged J; nothing on foot, where any gear may be put in.
    pub(super) fn drive_j(&self, account: &EffortAccount) -> f64 {
        let coasting = COASTING * account.repaid_w();
        if self.is_on_foot() { 0.0 } else { coasting.max(self.worth * account.sustainable_w()) }
    }
}

/// What one more joule at the crank is charged, at a power that a plan found best; nothing where it coasts.
fn worth(account: &EffortAccount, power: f64, rpm: f64) -> f64 {
    let charge = |power: f64| account.charge_w(power, rpm);
    match power / account.sustainable_w() {
        none if none <= 0.0 => 0.0,
        about if about <= 1.0 + NEAR => AT_SUSTAINABLE,
        _ => (charge((1.0 + NUDGE) * power) - charge(power)) / (NUDGE * power),
    }
}
