//! A set-up with what came of its lap, for ranking.

use crate::cage::Derailleur;
use crate::course::lap::lap::Lap;
use crate::course::search::search::Candidate;
use crate::rider::Bike;

impl Candidate {
    /// A bike with its lap.
    #[must_use]
    pub fn planned(bike: &Bike, lap: &Lap, derailleur: &Derailleur) -> Self {
        Self::known(bike, lap.time_s, [lap.shifts_rear, lap.shifts_front], derailleur)
    }

    pub(super) fn known(bike: &Bike, time_s: f64, [rear, front]: [u32; 2], derailleur: &Derailleur) -> Self {
        let largest_step = bike.drivetrain.cassette.largest_step();
        Self {
            drivetrain: bike.drivetrain,
            time_s,
            shifts_rear: rear,
            shifts_front: front,
            largest_step_percent: largest_step.map_or(0.0, |step| step.step.percent()),
            lowest_development_m: bike.lowest_development().m(),
            spare_capacity: derailleur.check(&bike.drivetrain).spare,
        }
    }
}
