//! Where riding ends, and why.

use crate::order::ascending;
use crate::quantity::Speed;
use crate::rider::ground::Ground;
use crate::rider::limits::Reason;
use crate::rider::on_foot::Incline;
use crate::rider::pedalling::body_weight_gradient;
use crate::rider::quantity::{BalanceSpeed, Climb, Slope};
use crate::rider::ride_or_run::RideOrRun;
use crate::rider::road_load::RoadLoad;
use crate::rider::traction::Stance;
use crate::solve::first_at_or_above_zero;

/// The search walks the gradients in steps of 0.5 %, up to 45 %.
pub(super) const STEP: f64 = 0.005;
pub(super) const STEPS: u16 = 90;
/// Steepest gradient of the model, rise over run.
pub(super) const STEEPEST: f64 = 0.45;

/// Where and why a rider gets off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flip {
    /// The gradient; zero when riding is already lost on the level.
    pub gradient: Slope,
    /// What decides.
    pub reason: Reason,
    /// Riding speed there. Where a limit ends riding, running is not yet quicker below it. On the level, where full power may be slower
    /// still, it is the speed that the limit asks for, or that of full power where the legs give it at no cadence.
    pub speed: Speed,
    /// Speed on foot there.
    pub foot: Speed,
}

/// A named place on the axis of gradients.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum MarkKind {
    /// From here a limit or the energy puts the rider on foot.
    Ends(Reason),
    /// From here riding is no longer likely faster.
    TooCloseFrom,
    /// From here being on foot is likely faster.
    FootFrom,
    /// From here holding speed in the lowest gear takes more than full body weight on every pedal stroke.
    BodyWeight,
    /// From here the rear wheel slips under a heavy pedal stroke.
    SlipsInJerks,
    /// From here the front wheel lifts under a heavy pedal stroke.
    FrontLifts,
}

/// A mark on the axis of gradients.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mark {
    /// What it marks.
    pub kind: MarkKind,
    /// Where: 0 to 45 %, zero also for what holds on the level already.
    pub gradient: Slope,
    /// Riding speed there with full power.
    pub speed: Speed,
}

/// Where riding ends on one ground. `None` stands for "not up to 45 %".
#[derive(Debug, Clone, PartialEq)]
pub struct Crossover {
    /// Speed of the lowest gear at the lowest cadence.
    pub lowest_gear_speed: Speed,
    /// Where the lowest gear runs out.
    pub gear: Option<Slope>,
    /// Where going on foot becomes as fast for the same energy, gears and limits left aside.
    pub energy: Option<Slope>,
    /// The first of everything that ends riding.
    pub flip: Option<Flip>,
    /// Where it becomes too close to call, gears and limits left aside.
    pub too_close_from: Option<Slope>,
    /// Where going on foot becomes likely faster, gears and limits left aside.
    pub foot_from: Option<Slope>,
    /// Everything to mark on the axis of gradients, from the flattest.
    pub marks: Vec<Mark>,
}

impl RideOrRun {
    /// Where riding ends on `ground`, why, and what else to mark.
    #[must_use]
    pub fn crossover(&self, ground: &Ground) -> Crossover {
        let ends = self.ends(ground);
        let (too_close_from, foot_from) = self.close_zone(ground);
        let find = |reason: Reason| ends.iter().find(|end| end.0 == reason).and_then(|end| end.1);
        Crossover {
            lowest_gear_speed: Speed::new(self.gearing.speed_without_cadence()),
            gear: find(Reason::Gear),
            energy: find(Reason::Energy),
            flip: self.first_of(&ends, ground),
            too_close_from,
            foot_from,
            marks: self.marks(&ends, too_close_from, foot_from, ground),
        }
    }

    /// The gradient on which full power holds `speed`: the curve of speed read the other way round. `None` for
    /// speeds not met between the level and 45 %.
    #[must_use]
    pub fn gradient_at(&self, ground: &Ground, speed: Speed) -> Option<Slope> {
        self.load(ground)
            .gradient_for(self.rider.power, speed)
            .filter(|slope| (0.0..=STEEPEST).contains(&slope.rise_over_run()))
    }

    /// The flattest gradient on which full power is slower than `speed`, zero when it is on the level already; `None`
    /// for not up to 45 %.
    #[must_use]
    pub fn runs_out_at(&self, ground: &Ground, speed: Speed) -> Option<Slope> {
        self.slower_than(ground, speed.m_per_s())
    }

    /// The road load of this rider and bike on `ground`.
    #[must_use]
    pub fn load(&self, ground: &Ground) -> RoadLoad {
        RoadLoad::new(self.rider.with(&self.bike), ground.rolling, &self.air, self.bike.efficiency)
    }

    /// Only the first end of riding, that of [`crossover`](Self::crossover) without the marks: energy is looked at no further than the first limit.
    #[must_use]
    pub fn flip(&self, ground: &Ground) -> Option<Flip> {
        let limits = self.limit_ends(ground);
        let first = limits.iter().filter_map(|end| Some(end.1?.rise_over_run())).fold(STEEPEST, f64::min);
        let energy = self.energy_gradient_within(ground, (first / STEP).ceil() as u16);
        let [gear, force, balance, grip] = limits;
        self.first_of(&[gear, force, balance, grip, (Reason::Energy, energy)], ground)
    }

    /// The flattest gradient on which a limit ends riding.
    pub(super) fn first_limit(&self, ground: &Ground) -> Option<Slope> {
        let ends = self.limit_ends(ground).into_iter().filter_map(|(_, end)| end);
        ends.min_by(|a, b| a.rise_over_run().total_cmp(&b.rise_over_run()))
    }

    /// Where riding ends whatever the gear: feet are as fast for the same energy, the bike tips or the rear wheel slips.
    /// `None` for not up to 45 %.
    #[must_use]
    pub fn ends_in_any_gear(&self, ground: &Ground) -> Option<Slope> {
        let [.., balance, grip] = self.limit_ends(ground);
        let ends = [balance.1, grip.1, self.energy_gradient(ground)];
        ends.into_iter().flatten().min_by(|a, b| a.rise_over_run().total_cmp(&b.rise_over_run()))
    }

    /// Where going on foot becomes as fast for the same energy.
    pub(super) fn energy_gradient(&self, ground: &Ground) -> Option<Slope> {
        self.energy_gradient_within(ground, STEPS)
    }

    fn energy_gradient_within(&self, ground: &Ground, steps: u16) -> Option<Slope> {
        first_slope(steps, |incline| {
            let speeds = self.energy.speeds(ground, incline);
            speeds.foot - speeds.ride
        })
    }

    /// Every end of riding, in the order in which they win a tie.
    fn ends(&self, ground: &Ground) -> [(Reason, Option<Slope>); 5] {
        let [gear, force, balance, grip] = self.limit_ends(ground);
        [gear, force, balance, grip, (Reason::Energy, self.energy_gradient(ground))]
    }

    fn limit_ends(&self, ground: &Ground) -> [(Reason, Option<Slope>); 4] {
        let slower_than = |v: f64| self.slower_than(ground, v);
        let balance = self.limits.balance.and_then(|slowest| slower_than(slowest.m_per_s()));
        let slip = self.limits.grip.and_then(|stance| stance.slip(ground.friction, ground.rolling));
        [
            (Reason::Gear, slower_than(self.gearing.speed_without_cadence())),
            (Reason::Force, slower_than(self.gearing.speed_without_strength())),
            (Reason::Balance, balance),
            (Reason::Grip, slip.and_then(within)),
        ]
    }

    fn first_of(&self, ends: &[(Reason, Option<Slope>)], ground: &Ground) -> Option<Flip> {
        let known = ends.iter().filter_map(|&(reason, gradient)| Some((reason, gradient?)));
        let (reason, gradient) = known.min_by(|a, b| a.1.rise_over_run().total_cmp(&b.1.rise_over_run()))?;
        let speeds = self.energy.speeds(ground, &Incline::new(Climb::nearest(gradient.percent())));
        let asked_for = self.least_speed(reason).filter(|speed| speed.is_finite());
        let speed = asked_for.unwrap_or(speeds.ride);
        Some(Flip { gradient, reason, speed: Speed::new(speed), foot: Speed::new(speeds.foot) })
    }

    /// The speed in m/s below which a limit holds, where it is one of speed; infinite where the legs never give the power.
    pub(super) fn least_speed(&self, reason: Reason) -> Option<f64> {
        match reason {
            Reason::Gear => Some(self.gearing.speed_without_cadence()),
            Reason::Force => Some(self.gearing.speed_without_strength()),
            Reason::Balance => self.limits.balance.map(BalanceSpeed::m_per_s),
            Reason::Grip | Reason::Energy => None,
        }
    }

    /// The flattest gradient on which full power is slower than `v`: zero when it is on the level already.
    fn slower_than(&self, ground: &Ground, v: f64) -> Option<Slope> {
        if self.ride_speed(ground, Climb::LEVEL) < v {
            Some(Slope::new(0.0))
        } else {
            self.gradient_at(ground, Speed::new(v))
        }
    }

    /// Where the high edge of the band reaches 1, and where the low edge does.
    fn close_zone(&self, ground: &Ground) -> (Option<Slope>, Option<Slope>) {
        let band =
            |incline: &Incline| self.energy.band(&self.energy.speeds(ground, incline), ground, incline);
        (
            first_slope(STEPS, |incline| band(incline).high - 1.0),
            first_slope(STEPS, |incline| band(incline).low - 1.0),
        )
    }

    fn marks(
        &self,
        ends: &[(Reason, Option<Slope>)],
        too_close_from: Option<Slope>,
        foot_from: Option<Slope>,
        ground: &Ground,
    ) -> Vec<Mark> {
        let jerky = self.limits.grip.map(Stance::jerky);
        let warnings = [
            (MarkKind::TooCloseFrom, too_close_from),
            (MarkKind::FootFrom, foot_from),
            (MarkKind::BodyWeight, body_weight_gradient(&self.rider, &self.bike, ground.rolling)),
            (MarkKind::SlipsInJerks, jerky.and_then(|stance| stance.slip(ground.friction, ground.rolling))),
            (MarkKind::FrontLifts, jerky.map(|stance| stance.lift(ground.rolling))),
        ];
        let ends = ends.iter().map(|&(reason, gradient)| (MarkKind::Ends(reason), gradient));
        let mut marks: Vec<Mark> =
            ends.chain(warnings).filter_map(|(kind, gradient)| self.mark(kind, gradient?, ground)).collect();
        ascending(&mut marks, |mark| mark.gradient.rise_over_run());
        marks
    }

    fn mark(&self, kind: MarkKind, gradient: Slope, ground: &Ground) -> Option<Mark> {
        let gradient = within(gradient)?;
        let speed = Speed::new(self.ride_speed(ground, Climb::nearest(gradient.percent())));
        Some(Mark { kind, gradient, speed })
    }

    fn ride_speed(&self, ground: &Ground, gradient: Climb) -> f64 {
        self.energy.ride(ground.rolling.value(), &Incline::new(gradient))
    }
}

/// A limit that holds on the level already counts from the level; one beyond the model does not count.
fn within(slope: Slope) -> Option<Slope> {
    (slope.rise_over_run() <= STEEPEST).then(|| Slope::new(slope.rise_over_run().max(0.0)))
}

/// The flattest gradient, among the first `steps`, at which `f` is not below zero.
pub(super) fn first_slope(steps: u16, f: impl Fn(&Incline) -> f64) -> Option<Slope> {
    let at = |rise: f64| f(&Incline::new(Climb::nearest(rise * 100.0)));
    first_at_or_above_zero(STEP, steps, at).map(Slope::new)
}
