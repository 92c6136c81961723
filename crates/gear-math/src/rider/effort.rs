//! How much power for how long.

use crate::rider::quantity::{
    BodyMass, EffortTime, PeakPower, Power, PowerDemand, ReserveShare, Time, WorkReserve,
};
use core::fmt;

/// A rider's sustainable power and the work in store above it.
///
/// # Example
/// ```
/// use gear_math::Power;
/// use gear_math::rider::{CriticalPower, EffortTime, PeakPower, WorkReserve};
/// let rider = CriticalPower::new(Power::new(230.0)?, WorkReserve::new(15.0)?, PeakPower::new(980.0)?)?;
/// assert!((rider.power(EffortTime::new(30.0)?).watts() - 530.0).abs() < 1e-9);
/// assert!(CriticalPower::new(Power::new(400.0)?, WorkReserve::USUAL, PeakPower::new(300.0)?).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CriticalPower {
    sustainable: Power,
    reserve: WorkReserve,
    peak: PeakPower,
}

impl CriticalPower {
    /// Takes the sustainable (critical) power, the work in store above it (W′) and the peak power.
    ///
    /// # Errors
    /// [`PeakTooLow`] when `peak` is not above `sustainable`.
    pub fn new(sustainable: Power, reserve: WorkReserve, peak: PeakPower) -> Result<Self, PeakTooLow> {
        if peak.watts() > sustainable.watts() {
            Ok(Self { sustainable, reserve, peak })
        } else {
            Err(PeakTooLow { sustainable, peak })
        }
    }

    /// Of a rider of this body whose peak power is not known: it is [estimated](PeakPower::estimated).
    #[must_use]
    pub const fn of_body(sustainable: Power, reserve: WorkReserve, body: BodyMass) -> Self {
        Self { sustainable, reserve, peak: PeakPower::estimated(sustainable, body) }
    }

    /// The power that lasts.
    #[must_use]
    pub const fn sustainable(&self) -> Power {
        self.sustainable
    }

    /// The work in store above it.
    #[must_use]
    pub const fn reserve(&self) -> WorkReserve {
        self.reserve
    }

    /// The peak power, at the best cadence.
    #[must_use]
    pub const fn peak(&self) -> PeakPower {
        self.peak
    }

    /// Power that a fresh rider holds for a time.
    ///
    /// # Formula
    /// P = CP + W′/(t + W′/(P_max − CP)). Morton (1996, *Ergonomics* 39:611–619, doi:10.1080/00140139608964484).
    #[must_use]
    pub fn power(&self, time: EffortTime) -> PowerDemand {
        self.power_costing(self.reserve.j(), time)
    }

    /// The same for a rider who may spend `joules` alone.
    pub(super) fn power_costing(&self, joules: f64, time: EffortTime) -> PowerDemand {
        let sustainable = self.sustainable.watts();
        let onset = joules / (self.peak.watts() - sustainable);
        PowerDemand::new(sustainable + joules / (time.s() + onset))
    }

    /// The simpler estimate without a peak, good for 2 to 30 minutes; absurdly high below one.
    ///
    /// # Formula
    /// P = CP + W′/t. Monod & Scherrer (1965, *Ergonomics* 8:329–338, from memory), as in Skiba et al. (2012, *Med Sci Sports Exerc* 44:1526–1532).
    #[must_use]
    pub fn power_without_peak(&self, time: EffortTime) -> PowerDemand {
        self.power_spending(ReserveShare::ALL, time)
    }

    /// Power for a time that spends part of the reserve.
    ///
    /// # Formula
    /// P = CP + share · W′/t.
    #[must_use]
    pub fn power_spending(&self, share: ReserveShare, time: EffortTime) -> PowerDemand {
        PowerDemand::new(self.sustainable.watts() + share.value() * self.reserve.j() / time.s())
    }

    /// Power for a time in a race, where only part of the reserve may be spent each lap; never above what a fresh
    /// rider holds.
    #[must_use]
    pub fn race_power(&self, share: ReserveShare, time: EffortTime) -> PowerDemand {
        let spending = self.power_spending(share, time);
        PowerDemand::new(spending.watts().min(self.power(time).watts()))
    }

    /// How long a power above the sustainable one lasts on part of the reserve; `None` when it is sustainable.
    ///
    /// # Formula
    /// t = W′_spent/(P − CP).
    #[must_use]
    pub fn lasts(&self, power: PowerDemand, share: ReserveShare) -> Option<Time> {
        let above = power.watts() - self.sustainable.watts();
        (above > 0.0).then(|| Time::new(share.value() * self.reserve.j() / above))
    }
}

/// What a rider has in reserve per kg of body, and for every watt that is kept up, in joules.
const RESERVE_PER_KG: f64 = 80.0;
const RESERVE_PER_W: f64 = 40.0;
/// The most that is typical, kJ.
const MOST_RESERVE_KJ: f64 = 25.0;

impl WorkReserve {
    /// 18 kJ: a trained man; 10 to 25 kJ are typical. Estimate.
    pub const USUAL: Self = Self::known(18.0);

    pub(crate) fn j(self) -> f64 {
        self.kj() * 1000.0
    }

    /// What a rider of this body who keeps up `power` for minutes may have in reserve. For someone who does not know
    /// the power either it follows from the [level](Level::power).
    ///
    /// # Formula
    /// W′ = 80 J/kg · m + 40 J/W · P, no more than 25 kJ. Estimate: 16 to 18 kJ for trained men of 70 to 75 kg, who keep
    /// up 250 to 300 W (Vanhatalo, Doust & Burnley 2007, *Med Sci Sports Exerc* 39:548–555, found 15 to 16 kJ beside
    /// 256 W), between the 10 and 25 kJ that are typical for riders of 60 to 80 kg of every level. One rider may be a third
    /// away.
    ///
    /// # Example
    /// ```
    /// use gear_math::rider::{BodyMass, Level, WorkReserve};
    /// let body = BodyMass::new(58.0)?;
    /// let [now_and_then, _, _, national] = Level::ALL.map(|level| WorkReserve::estimated(level.power(body), body));
    /// assert!((now_and_then.kj() - 9.7).abs() < 0.1 && (national.kj() - 15.3).abs() < 0.1);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub const fn estimated(power: Power, body: BodyMass) -> Self {
        let joules = RESERVE_PER_KG * body.kg() + RESERVE_PER_W * power.watts();
        Self::nearest((joules / 1000.0).min(MOST_RESERVE_KJ))
    }
}

impl ReserveShare {
    /// All of it: once, fresh.
    pub const ALL: Self = Self::known(1.0);
    /// One fifth: what a climb of every lap may cost. Estimate.
    pub const EACH_LAP: Self = Self::known(0.2);
}

/// The peak power does not exceed the sustainable power.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PeakTooLow {
    /// The sustainable power that was given.
    pub sustainable: Power,
    /// The peak power that was given.
    pub peak: PeakPower,
}

impl fmt::Display for PeakTooLow {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "type a peak power above the sustainable {} W", self.sustainable.watts())
    }
}

impl core::error::Error for PeakTooLow {}

/// A rider's standard, for those who do not know their power. Estimates of what is held for some minutes, from
/// which one rider may be a quarter away.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Level {
    /// Rides now and then: 2.2 W/kg.
    Occasional,
    /// Trains with a club: 3.0 W/kg.
    Club,
    /// Races regularly: 3.6 W/kg.
    Racing,
    /// Races among the best of a country: 4.6 W/kg.
    National,
}

impl Level {
    /// Every level, from the weakest.
    pub const ALL: [Self; 4] = [Self::Occasional, Self::Club, Self::Racing, Self::National];

    /// Power over body mass, in W/kg. Estimate, because published power profiles are sorted by minutes, not by such words.
    #[must_use]
    pub const fn watts_per_kg(self) -> f64 {
        match self {
            Self::Occasional => 2.2,
            Self::Club => 3.0,
            Self::Racing => 3.6,
            Self::National => 4.6,
        }
    }

    /// How far one rider may be from the power of a level, as a share of it. Estimate, because riders sort themselves.
    pub const OFF: f64 = 0.25;

    /// Power for a body mass, by [`watts_per_kg`](Self::watts_per_kg).
    #[must_use]
    pub const fn power(self, body: BodyMass) -> Power {
        Power::nearest(self.watts_per_kg() * body.kg())
    }
}
