//! What may be otherwise than entered on the day.

use crate::course::{Course, Segment};
use crate::parts::rides::BoxRider;
use crate::quantity::Cadence;
use crate::rider::{CriticalPower, Power};

/// Something that may be otherwise than entered on the day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Condition {
    /// Nothing is.
    AsEntered,
    /// The ground is one step [wetter](crate::Surface::wetter) all round.
    WetterGround,
    /// The rider has a tenth less power.
    LessPower,
    /// A tenth more.
    MorePower,
    /// The lowest usable cadence is 5 rpm lower. On a reserve, where none stands, the cadence that the rider likes is.
    LowerCadence,
    /// 5 rpm higher.
    HigherCadence,
}

/// How far the power is moved, as a share: what a rider may be off on the day. Estimate.
const POWER: f64 = 0.1;
/// How far the cadence is moved, rpm. Estimate, as in a lap's band at a steady power.
const CADENCE_RPM: f64 = 5.0;

impl Condition {
    /// Every one.
    pub const ALL: [Self; 6] = [
        Self::AsEntered,
        Self::WetterGround,
        Self::LessPower,
        Self::MorePower,
        Self::LowerCadence,
        Self::HigherCadence,
    ];

    /// The course as it would be.
    pub(super) fn course(self, given: &Course) -> Course {
        if self != Self::WetterGround {
            return given.clone();
        }
        let wetter = |it: &Segment| Segment { surface: it.surface.wetter(), ..*it };
        Course::new(given.segments().iter().map(wetter).collect()).unwrap_or_else(|_| given.clone())
    }

    /// The rider as they would be, no further than each quantity may be.
    pub(super) fn rider(self, given: &BoxRider) -> BoxRider {
        let mut moved = *given;
        match self {
            Self::AsEntered | Self::WetterGround => {}
            Self::LessPower => with_power(&mut moved, 1.0 - POWER),
            Self::MorePower => with_power(&mut moved, 1.0 + POWER),
            Self::LowerCadence => with_cadence(&mut moved, -CADENCE_RPM),
            Self::HigherCadence => with_cadence(&mut moved, CADENCE_RPM),
        }
        moved
    }
}

fn with_power(rider: &mut BoxRider, factor: f64) {
    let times = |power: Power| Power::nearest(power.watts() * factor);
    match rider {
        BoxRider::Reserve(setup) => {
            let given = setup.account.effort;
            let moved = CriticalPower::new(times(given.sustainable()), given.reserve(), given.peak());
            setup.account.effort = moved.unwrap_or(given);
        }
        BoxRider::Steady(setup) => setup.rider.power = times(setup.rider.power),
    }
}

fn with_cadence(rider: &mut BoxRider, rpm: f64) {
    match rider {
        BoxRider::Reserve(setup) => {
            let account = &mut setup.account;
            let liked = account.preferred_cadence(account.effort.sustainable().into());
            account.own_cadence = Cadence::new(liked.rpm() + rpm).ok().or(account.own_cadence);
        }
        BoxRider::Steady(setup) => {
            let rider = &mut setup.rider;
            let moved = (rider.lowest_cadence.rpm() + rpm).min(rider.highest_cadence.rpm());
            rider.lowest_cadence = Cadence::new(moved).unwrap_or(rider.lowest_cadence);
        }
    }
}
