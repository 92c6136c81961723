//! What a lap's gears lose in the chain.

use crate::chain::PinFriction;
use crate::course::lap::lap::{Lap, TracePoint};
use crate::course::lap::reserve_use::ReserveUse;
use crate::course::reserve::setup::ReserveSetup;

/// A power is moved by this share, up and down, to see what the charge makes of it.
const NUDGE: f64 = 1e-4;

/// What it costs, in seconds, that the chain bends round the rings and sprockets of a lap.
///
/// # Formula
/// λ ∫ P h′(P) ℓ dt, with ℓ the [loss](PinFriction::loss) of the gear: what a little more power would be charged at every place,
/// at the price of a joule. A best plan that is changed a little costs the same to first order, so none is looked for anew.
/// Where the plan keeps to the sustainable power the charge has a corner, of which h′ is the mean slope: that makes the whole good to
/// a fifth, for what is tenths of a second.
pub(super) fn bending_s(setup: &ReserveSetup, lap: &Lap, pins: PinFriction) -> f64 {
    lap.reserve.as_ref().map_or(0.0, |reserve| reserve.price_s_per_j * charged_j(setup, lap, reserve, pins))
}

/// λ left aside.
fn charged_j(setup: &ReserveSetup, lap: &Lap, reserve: &ReserveUse, pins: PinFriction) -> f64 {
    let mut from = 0.0;
    let steps = lap.trace.iter().zip(&reserve.trace);
    let charged = steps.map(|(point, reserve)| {
        let way = point.at_m - from;
        from = point.at_m;
        step_charged_j(setup, point, reserve.power_w, way, pins)
    });
    charged.sum()
}

fn step_charged_j(setup: &ReserveSetup, point: &TracePoint, power: f64, way: f64, pins: PinFriction) -> f64 {
    let (Some(gear), Some(rpm)) = (point.gear, point.cadence_rpm) else { return 0.0 };
    let charge = |power: f64| setup.account.charge_w(power, rpm);
    let growth = (charge((1.0 + NUDGE) * power) - charge(power)) / NUDGE;
    let time = way * 60.0 / (rpm * gear.development(setup.lap.bike.wheel).m());
    if growth.is_finite() { pins.loss(gear) * growth * time } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    use crate::course::lap::setup::LapSetup;
    use crate::course::reserve::fineness::Fineness;
    use crate::rider::{
        Air, Bike, BikeMass, BodyMass, CriticalPower, DrivetrainEfficiency, EffortAccount, KitMass,
        PeakPower, Power, Rider, WorkReserve,
    };
    use crate::{Circumference, Course, Drivetrain, Gear};

    /// On one gear the loss is one of efficiency, with which the lap can be planned anew.
    #[test]
    fn a_little_loss_costs_what_a_new_plan_would() {
        let rider =
            Rider::new(BodyMass::new(66.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(240.0).unwrap());
        let drivetrain = Drivetrain { chainset: "40".parse().unwrap(), cassette: "20".parse().unwrap() };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2100.0).unwrap());
        let peak = PeakPower::of_body(rider.body);
        let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, peak).unwrap();
        let setup = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
        let course: Course = "200; 0; firm grass\n60; 4; firm grass\n80; -3; firm grass".parse().unwrap();
        let pins = PinFriction::new(1.0).unwrap();
        let loss = pins.loss(Gear::new(40, 20).unwrap());
        let mut lossy = setup;
        lossy.lap.bike.efficiency = DrivetrainEfficiency::new(0.96 * (1.0 - loss)).unwrap();
        let [whole, poorer] = [setup, lossy].map(|it| Lap::on_reserve(&course, &it, Fineness::FINE));
        let (found, expected) = (bending_s(&setup, &whole, pins), poorer.time_s - whole.time_s);
        assert!(expected > 0.5 && (found - expected).abs() < 0.2 * expected, "{found} for {expected}");
    }
}
