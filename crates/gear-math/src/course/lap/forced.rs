//! Where a lap at even power goes on foot, and a rider would force the gear instead.

use crate::course::course::Course;
use crate::course::lap::lap::{Lap, PlanPart, WhyOnFoot};
use crate::course::lap::modes::Mode;
use crate::course::lap::setup::LapSetup;
use crate::course::segment::Segment;
use crate::gears::Gear;
use crate::order::ascending;
use crate::rider::{
    Air, ClimbLength, CriticalPower, Ground, Headwind, PowerBelowStanding, PowerDemand, Reason, ReserveShare,
    RideOrRun, Surface,
};
use crate::wheel::MountedWidth;

/// A part of a lap gone on foot for want of power at the slowest speed, ridden above the power that is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ForcedPlace {
    /// The part as the lap has it.
    pub part: PlanPart,
    /// The gear to force.
    pub gear: Gear,
    /// The power that takes.
    pub power: PowerDemand,
    /// Time over it, in seconds.
    pub time_s: f64,
    /// How much of the reserve's share it spends.
    spent: f64,
}

impl ForcedPlace {
    /// Seconds it saves against going on foot, getting off and on included.
    #[must_use]
    pub fn saved_s(&self) -> f64 {
        self.part.time_s - self.time_s
    }
}

impl Lap {
    /// The parts on foot that are quicker forced, by the advice on a single climb ([`RideOrRun::over_gear`]) for their ground
    /// and mean gradient, as many as one share of the reserve pays for: those that save most for what they spend come first.
    ///
    /// A lap is ridden at even power and knows none of this. Parts with an obstacle in them, or steeper somewhere than the rear
    /// wheel grips, are left out.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    pub fn forced(
        &self,
        course: &Course,
        setup: &LapSetup,
        effort: &CriticalPower,
        share: ReserveShare,
    ) -> Result<Vec<ForcedPlace>, PowerBelowStanding> {
        let air = Air { headwind: Headwind::NONE, ..setup.air };
        let question = RideOrRun::new(setup.rider, setup.bike, air, setup.limits)?;
        let lacking =
            [Reason::Gear, Reason::Force, Reason::Balance].map(|reason| Some(WhyOnFoot::Because(reason)));
        let parts = self.plan.iter().filter(|part| part.mode == Mode::Foot && lacking.contains(&part.why));
        let forcing = Forcing { course, question, tyre: setup.bike.tyre, effort, share };
        let places = parts.filter_map(|part| forcing.place(part));
        Ok(within_reserve(places.filter(|place| place.saved_s() > 0.0).collect()))
    }
}

/// The places that one share of the reserve pays for.
fn within_reserve(mut places: Vec<ForcedPlace>) -> Vec<ForcedPlace> {
    ascending(&mut places, |place| place.spent / place.saved_s());
    let mut left = 1.0;
    places.retain(|place| {
        let pays = place.spent <= left;
        left -= if pays { place.spent } else { 0.0 };
        pays
    });
    places
}

/// What forcing is asked about.
struct Forcing<'a> {
    course: &'a Course,
    question: RideOrRun,
    tyre: MountedWidth,
    effort: &'a CriticalPower,
    share: ReserveShare,
}

impl Forcing<'_> {
    /// One part forced; none where that cannot be done.
    fn place(&self, part: &PlanPart) -> Option<ForcedPlace> {
        let grips = |segment: &Segment| {
            let answer = self.question.answer(&self.ground(segment.surface), segment.gradient.uphill());
            segment.obstacle.is_none() && !answer.limits.grip
        };
        if !self.course.stretches_between(part.from_m, part.to_m).all(grips) {
            return None;
        }
        let (surface, gradient) = self.course.mostly(part.from_m, part.to_m);
        let (ground, climb) = (self.ground(surface), gradient.uphill());
        let over = self.question.over_gear(&ground, climb, self.effort, self.share);
        let time = over.over(ClimbLength::new(part.to_m - part.from_m).ok()?).ok()?;
        let spent = over.lasts.map_or(0.0, |(lasts, _)| time.s() / lasts.s());
        Some(ForcedPlace { part: *part, gear: over.gear, power: over.power, time_s: time.s(), spent })
    }

    fn ground(&self, surface: Surface) -> Ground {
        surface.ground_under(self.tyre)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gears::Drivetrain;
    use crate::quantity::Circumference;
    use crate::rider::{Bike, BikeMass, BodyMass, KitMass, PeakPower, Power, Rider, WorkReserve};

    fn setup(rings: &str) -> LapSetup {
        let power = Power::new(215.0).unwrap();
        let rider = Rider::new(BodyMass::new(63.0).unwrap(), KitMass::new(2.0).unwrap(), power);
        let drivetrain = Drivetrain {
            chainset: rings.parse().unwrap(),
            cassette: "11-13-15-18-21-24-28-32".parse().unwrap(),
        };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
        LapSetup::new(rider, bike, Air::STILL)
    }

    fn effort(setup: &LapSetup) -> CriticalPower {
        let peak = PeakPower::new(900.0).unwrap();
        CriticalPower::new(setup.rider.power, WorkReserve::USUAL, peak).unwrap()
    }

    fn forced_on(rows: &str, rings: &str, share: f64) -> Vec<ForcedPlace> {
        let (course, setup): (Course, _) = (rows.parse().unwrap(), setup(rings));
        let lap = Lap::in_steps(&course, &setup, crate::course::quantity::Step::known(1.0)).unwrap();
        let share = ReserveShare::new(share).unwrap();
        lap.forced(&course, &setup, &effort(&setup), share).unwrap()
    }

    const BANK: &str = "400; 0; firm grass\n60; 13; packed gravel\n400; -1; firm grass";

    /// The climb's own advice for the same stretch, asked apart.
    #[test]
    fn a_bank_gone_on_foot_for_want_of_a_gear_is_forced_as_the_climb_says() {
        let places = forced_on(BANK, "44", 0.2);
        let [place] = places[..] else { panic!("{places:?}") };
        let setup = setup("44");
        let question = RideOrRun::new(setup.rider, setup.bike, setup.air, setup.limits).unwrap();
        let ground = Surface::PackedGravel.ground_under(setup.bike.tyre);
        let climb = crate::rider::Climb::new(13.0).unwrap();
        let over = question.over_gear(&ground, climb, &effort(&setup), ReserveShare::EACH_LAP);
        let way = place.part.to_m - place.part.from_m;
        assert!((place.time_s - way / over.speed.m_per_s()).abs() < 1e-9 && place.gear == over.gear);
        assert!((place.power.watts() - over.power.watts()).abs() < 1e-6);
        assert!(place.saved_s() > 1.0 && (place.saved_s() - place.part.time_s + place.time_s).abs() < 1e-12);
    }

    #[test]
    fn what_is_ridden_blocked_or_slips_is_not_forced() {
        assert_eq!(forced_on(BANK, "28", 0.2), []);
        let plank = BANK.replace(
            "60; 13; packed gravel",
            "30; 13; packed gravel\n1; 13; packed gravel; foot 1\n29; 13; packed gravel",
        );
        assert_eq!(forced_on(&plank, "44", 0.2), []);
        assert_eq!(
            forced_on(&BANK.replace("60; 13; packed gravel", "60; 25; wet soft grass"), "44", 0.2),
            []
        );
    }

    #[test]
    fn one_share_of_the_reserve_pays_for_all_places() {
        let twice = BANK.to_owned() + "\n" + BANK;
        let spent = |places: &[ForcedPlace]| places.iter().map(|place| place.spent).sum::<f64>();
        let ample = forced_on(&twice, "44", 1.0);
        assert_eq!(ample.len(), 2);
        let enough_for_one = 0.75 * spent(&ample);
        let places = forced_on(&twice, "44", enough_for_one);
        assert!(places.len() == 1 && spent(&places) <= 1.0, "{places:?}");
    }

    /// A place that takes 10 s on foot, forced.
    fn place(time_s: f64, spent: f64) -> ForcedPlace {
        ForcedPlace {
            part: PlanPart { from_m: 0.0, to_m: 1.0, mode: Mode::Foot, why: None, time_s: 10.0 },
            gear: Gear::new(44, 32).unwrap(),
            power: PowerDemand::new(300.0),
            time_s,
            spent,
        }
    }

    #[test]
    fn what_saves_most_for_what_it_spends_comes_first() {
        let (dear, cheap, rest) = (place(4.0, 0.7), place(8.0, 0.1), place(6.0, 0.3));
        assert_eq!(within_reserve(vec![dear, cheap, rest]), [cheap, rest]);
        assert_eq!(within_reserve(vec![place(4.0, 1.0)]).len(), 1);
    }

    /// Saved for what is spent: 12, 9 and 5 s for each reserve, though the last spends least.
    #[test]
    fn not_what_spends_least_but_what_saves_most_for_it_comes_first() {
        let (best, next, least) = (place(4.0, 0.5), place(6.0, 0.45), place(9.0, 0.2));
        assert_eq!(within_reserve(vec![least, next, best]), [best, next]);
    }

    #[test]
    fn wind_that_is_set_reaches_no_lap() {
        let (course, setup): (Course, _) = (BANK.parse().unwrap(), setup("44"));
        let lap = Lap::in_steps(&course, &setup, crate::course::Step::known(1.0)).unwrap();
        let forced = |setup: &LapSetup| lap.forced(&course, setup, &effort(setup), ReserveShare::EACH_LAP);
        let headwind = Headwind::new(6.0).unwrap();
        let windy = LapSetup { air: Air { headwind, ..setup.air }, ..setup };
        assert_eq!(forced(&windy), forced(&setup));
    }
}
