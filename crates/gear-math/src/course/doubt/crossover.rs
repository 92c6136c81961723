//! Where riding a climb stops paying, with its band.

use crate::course::doubt::draw::Draw;
use crate::course::doubt::percentile::{EDGES, percentile, share, sorted};
use crate::course::reserve::setup::ReserveSetup;
use crate::rider::{Climb, ClimbLength, Ground, RideOrRun};
use crate::solve::halved;

/// Halvings of all slopes that leave a hundredth of a per cent.
const HALVINGS: u32 = 12;

impl ReserveSetup {
    /// The slope, in per cent, from which a climb of this length takes no longer on foot, the budget spent either way and getting
    /// off and on left aside; none where riding pays up to the steepest slope, 45 %.
    ///
    /// # Formula
    /// The flattest slope at which [`RideOrRun::paced`] finds no ride, or one no quicker than its way on foot. That riding pays on
    /// all flatter ones is assumed.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Drivetrain, LapSetup, Power, Rider, Surface};
    /// use gear_math::course::ReserveSetup;
    /// use gear_math::rider::{Air, BikeMass, BodyMass, ClimbLength, CriticalPower, EffortAccount, EffortBudget, KitMass, PeakPower, WorkReserve};
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
    /// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    /// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
    /// let steady = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
    /// let forced = ReserveSetup { budget: EffortBudget::new(1500.0)?, ..steady };
    /// let (grass, length) = (Surface::FirmGrass.ground(), ClimbLength::new(60.0)?);
    /// assert!(forced.crossover_percent(&grass, length) > steady.crossover_percent(&grass, length));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn crossover_percent(&self, ground: &Ground, length: ClimbLength) -> Option<f64> {
        let lap = &self.lap;
        let question = RideOrRun::new(lap.rider, lap.bike, lap.air, lap.limits).ok()?;
        let ground = self.ground.of(ground);
        let pays = |percent: f64| {
            let climb = Climb::nearest(percent);
            let paced = question.paced(&self.account, &ground, climb, length, self.budget);
            paced.ride.is_some_and(|ride| ride.time < paced.foot.time)
        };
        let steepest = Climb::LIMITS.max;
        (!pays(steepest)).then(|| halved(0.0, steepest, HALVINGS, pays).1)
    }
}

/// Where riding a climb stops paying, over all draws, in whole per cent. An edge is none where riding pays on every slope that is
/// looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrossoverBand {
    /// Flattest likely slope.
    pub low_percent: Option<f64>,
    /// Median.
    pub percent: Option<f64>,
    /// Steepest likely slope.
    pub high_percent: Option<f64>,
    /// Share of the draws in which riding pays on every slope.
    pub none_share: f64,
}

impl CrossoverBand {
    /// Sums up the crossovers of draws: see [`Draw::crossover_percent`].
    ///
    /// # Example
    /// ```
    /// use gear_math::course::CrossoverBand;
    /// let band = CrossoverBand::of(&[Some(9.2), Some(11.4), Some(12.6), Some(13.1), None]);
    /// assert_eq!((band.low_percent, band.percent, band.high_percent), (Some(10.0), Some(13.0), None));
    /// assert_eq!(band.none_share, 0.2);
    /// ```
    #[must_use]
    pub fn of(crossovers: &[Option<f64>]) -> Self {
        let slopes = sorted(crossovers.iter().map(|slope| slope.unwrap_or(f64::INFINITY)));
        let edge = |at: f64| Some(percentile(&slopes, at).round()).filter(|slope| slope.is_finite());
        let [low_percent, percent, high_percent] = EDGES.map(edge);
        let none_share = share(&slopes, f64::is_infinite);
        Self { low_percent, percent, high_percent, none_share }
    }
}

impl Draw {
    /// [`ReserveSetup::crossover_percent`] at this draw.
    #[must_use]
    pub fn crossover_percent(
        &self,
        given: &ReserveSetup,
        ground: &Ground,
        length: ClimbLength,
    ) -> Option<f64> {
        self.setup(given).crossover_percent(ground, length)
    }
}
