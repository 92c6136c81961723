//! One climb on a budget, on the bike and on foot, against two solvers that share nothing with gear-math.

use gear_math::rider::{
    Air, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, EffortAccount, EffortBudget, KitMass,
    PacedClimb, PacedRide, PeakPower, RidingLimits, SecondsLost, Slope, Stance, WorkReserve,
};
use gear_math::{Bike, Chainset, Circumference, Drivetrain, Ground, Power, RideOrRun, Rider, Surface};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use std::error::Error;

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct Row {
    body_kg: f64,
    kit_kg: f64,
    bike_kg: f64,
    CP_W: f64,
    Pmax_W: f64,
    ring: u16,
    sprockets: String,
    length_m: f64,
    gradient: f64,
    ground: String,
    B_J: f64,
    ride_m_per_s: f64,
    ride_W: f64,
    ride_rpm: f64,
    sprocket_used: Option<u16>,
    ride_s: Option<f64>,
    foot_m_per_s: f64,
    foot_W: f64,
    foot_s: f64,
}

/// `Ok` when `found` is within a thousandth of `expected`.
fn within_a_thousandth(what: &str, found: f64, expected: f64) -> Result<(), String> {
    close(what, found, expected, 1e-3 * expected)
}

impl Row {
    fn question(&self) -> Result<RideOrRun, Box<dyn Error>> {
        let (body, kit) = (BodyMass::new(self.body_kg)?, KitMass::new(self.kit_kg)?);
        let rider = Rider::new(body, kit, Power::new(self.CP_W)?);
        let drivetrain =
            Drivetrain { chainset: Chainset::new([self.ring])?, cassette: self.sprockets.parse()? };
        let bike = Bike::new(BikeMass::new(self.bike_kg)?, drivetrain, Circumference::new(2100.0)?);
        let limits = RidingLimits { grip: Some(Stance::SEATED), ..RidingLimits::GEAR_ONLY };
        Ok(RideOrRun::new(rider, bike, Air::STILL, limits)?)
    }

    fn account(&self) -> Result<EffortAccount, Box<dyn Error>> {
        let peak = PeakPower::new(self.Pmax_W)?;
        Ok(EffortAccount::new(CriticalPower::new(Power::new(self.CP_W)?, WorkReserve::USUAL, peak)?))
    }

    fn ground(&self) -> Result<Ground, Box<dyn Error>> {
        Ok(Surface::named(&self.ground.replace('_', "-")).ok_or("no such ground")?.ground())
    }

    fn paced(&self) -> Result<PacedClimb, Box<dyn Error>> {
        Ok(self.question()?.paced(
            &self.account()?,
            &self.ground()?,
            Climb::new(100.0 * self.gradient)?,
            ClimbLength::new(self.length_m)?,
            EffortBudget::new(self.B_J)?,
        ))
    }

    /// Up to where riding pays when getting off and on takes so long, per cent; 45 for all the way.
    fn crossover(&self, lost_s: f64) -> Result<f64, Box<dyn Error>> {
        let crossover = self.question()?.paced_crossover(
            &self.account()?,
            &self.ground()?,
            ClimbLength::new(self.length_m)?,
            EffortBudget::new(self.B_J)?,
            SecondsLost::new(lost_s)?,
        );
        Ok(crossover.map_or(45.0, Slope::percent))
    }

    /// Both solvers' times make the crossover: it is this very slope for who loses just what riding takes longer.
    fn check_crossover(&self) -> Result<(), String> {
        let here = 100.0 * self.gradient;
        let longer = self.ride_s.map_or(f64::INFINITY, |ride| ride - self.foot_s);
        let is_lost = (0.0..=30.0).contains(&longer);
        let found = self.crossover(if is_lost { longer } else { 0.0 }).map_err(|error| error.to_string())?;
        match (longer < 0.0) == (found > here) {
            _ if is_lost => close("crossover", found, here, 0.15),
            true => Ok(()),
            false => Err(format!("riding takes {longer} s longer on {here} %, and pays up to {found} %")),
        }
    }

    fn check(&self) -> Result<(), String> {
        let paced = self.paced().map_err(|error| error.to_string())?;
        within_a_thousandth("speed on foot", paced.foot.speed.m_per_s(), self.foot_m_per_s)?;
        within_a_thousandth("power on foot", paced.foot.power.watts(), self.foot_W)?;
        within_a_thousandth("time on foot", paced.foot.time.s(), self.foot_s)?;
        match (paced.ride, self.ride_s, self.sprocket_used) {
            (Some(ride), Some(time), Some(sprocket)) => self.check_ride(&ride, time, sprocket),
            (None, None, None) => Ok(()),
            (found, expected, _) => Err(format!("riding: found {found:?}, expected {expected:?} s")),
        }
    }

    fn check_ride(&self, ride: &PacedRide, time: f64, sprocket: u16) -> Result<(), String> {
        within_a_thousandth("speed", ride.speed.m_per_s(), self.ride_m_per_s)?;
        within_a_thousandth("power", ride.power.watts(), self.ride_W)?;
        within_a_thousandth("cadence", ride.cadence.rpm(), self.ride_rpm)?;
        within_a_thousandth("time", ride.time.s(), time)?;
        close("sprocket", f64::from(ride.gear.sprocket.teeth()), f64::from(sprocket), 0.0)
    }
}

#[test]
fn one_climb_on_a_budget() {
    let file = "lap-model/single-climb.csv";
    check_all(file, &rows(file), 72, Row::check);
}

#[test]
fn where_riding_it_pays() {
    let file = "lap-model/single-climb.csv";
    check_all(file, &rows(file), 72, Row::check_crossover);
}
