//! Two laps compared, as numbers that can be handed on.

use crate::course::course::Course;
use crate::course::lap::account::Account;
use crate::course::lap::band::{BandedLap, LapComparison};
use crate::course::lap::follow::Moment;
use crate::course::lap::gains::{LapGains, Span};
use crate::course::lap::lap::Lap;
use crate::course::lap::modes::Mode;
use crate::course::lap::ride::Ride;
use crate::course::lap::settled::{on_ride, ridden};
use crate::course::lap::setup::LapSetup;
use crate::course::lap::time_band::TimeBand;
use crate::course::lap::uncertainty::Moved;
use crate::course::quantity::Step;
use crate::rider::PowerBelowStanding;

/// Numbers of the gain, in front of both laps; of a lap before what there are different numbers of; of a stretch and of a step.
const GAIN: usize = 3;
const HEAD: usize = 6;
const SPAN: usize = 2;
const STEP: usize = 4;
/// Stands where there is no gear.
const ON_FOOT: f64 = -1.0;

impl LapComparison {
    /// All of it as numbers, for [`from_numbers`](Self::from_numbers): what was found of it, without what comes of that. Course and
    /// set-ups are those that it is of.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Course, Drivetrain, LapSetup, Power, Rider};
    /// use gear_math::course::LapComparison;
    /// use gear_math::rider::{Air, BikeMass, BodyMass, KitMass};
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let setup = |rings: &str| -> Result<LapSetup, Box<dyn std::error::Error>> {
    ///     let drivetrain = Drivetrain { chainset: rings.parse()?, cassette: "11-14-18-23-32".parse()? };
    ///     let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    ///     Ok(LapSetup::new(rider, bike, Air::STILL))
    /// };
    /// let (first, second) = (setup("40")?, setup("44/31")?);
    /// let course: Course = "150; 0; firm grass\n40; 16; firm grass\n60; -8; firm grass".parse()?;
    /// let found = LapComparison::of(&course, &first, &second)?;
    /// let sent = found.numbers(&course, [&first, &second])?;
    /// assert_eq!(LapComparison::from_numbers(&course, [&first, &second], &sent), Some(found));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn numbers(&self, course: &Course, setups: [&LapSetup; 2]) -> Result<Vec<f64>, PowerBelowStanding> {
        let TimeBand { low_s, time_s, high_s } = self.gained;
        let mut numbers = vec![low_s, time_s, high_s];
        for (banded, setup) in [&self.first, &self.second].into_iter().zip(setups) {
            banded.write(course, setup, &mut numbers)?;
        }
        Ok(numbers)
    }

    /// The comparison of these numbers; none where they do not fit course and set-ups, which take as many steps in as many gears.
    /// Whoever takes them knows what they are of.
    #[must_use]
    pub fn from_numbers(course: &Course, setups: [&LapSetup; 2], numbers: &[f64]) -> Option<Self> {
        let are_numbers = numbers.iter().all(|number| number.is_finite());
        let (&[low_s, time_s, high_s], rest) = numbers.split_first_chunk::<GAIN>().filter(|_| are_numbers)?;
        let (first, rest) = BandedLap::read(course, setups[0], rest)?;
        let (second, rest) = BandedLap::read(course, setups[1], rest)?;
        let gained = TimeBand { low_s, time_s, high_s };
        let gains = LapGains::between(&first.lap, &second.lap);
        rest.is_empty().then_some(Self { quicker: gained.quicker(), gained, gains, first, second })
    }
}

impl BandedLap {
    fn write(
        &self,
        course: &Course,
        setup: &LapSetup,
        numbers: &mut Vec<f64>,
    ) -> Result<(), PowerBelowStanding> {
        let Self { lap, band, too_close } = self;
        let step = Step::new(lap.step_m).map_err(|_| PowerBelowStanding)?;
        let moments = on_ride(course, setup, step, &Moved::NOT, |ride| ridden(ride, setup.begin))?;
        let error_s = lap.step_error_s.unwrap_or_default();
        let counts = [too_close.len(), moments.len()].map(|count| count as f64);
        numbers.extend([lap.step_m, error_s, band.low_s, band.high_s].iter().chain(&counts));
        numbers.extend(too_close.iter().flat_map(|span| [span.from_m, span.to_m]));
        numbers.extend(moments.iter().flat_map(sent));
        Ok(())
    }

    fn read<'n>(course: &Course, setup: &LapSetup, numbers: &'n [f64]) -> Option<(Self, &'n [f64])> {
        let (&[step_m, error_s, low_s, high_s, spans, steps], rest) = numbers.split_first_chunk::<HEAD>()?;
        let (spans, rest) = rest.split_at_checked((spans as usize).checked_mul(SPAN)?)?;
        let (steps, rest) = rest.split_at_checked((steps as usize).checked_mul(STEP)?)?;
        let moments: Vec<Moment> = steps.chunks_exact(STEP).map(taken).collect();
        let step = Step::new(step_m).ok()?;
        let told = |ride: &Ride<'_>| {
            let gears = ride.gears.all().count();
            let known = |moment: &Moment| moment.gear.is_none_or(|gear| usize::from(gear) < gears);
            let fits = moments.len() == ride.terrain.lap.len() && moments.iter().all(known);
            fits.then(|| Account::new(ride, setup).lap(&moments, step))
        };
        let lap = on_ride(course, setup, step, &Moved::NOT, told).ok()??;
        let band = TimeBand { low_s, time_s: lap.time_s, high_s };
        let too_close = spans.chunks_exact(SPAN).map(|it| Span { from_m: it[0], to_m: it[1] }).collect();
        Some((Self { lap: Lap { step_error_s: Some(error_s), ..lap }, band, too_close }, rest))
    }
}

fn sent(moment: &Moment) -> [f64; STEP] {
    [moment.gear.map_or(ON_FOOT, f64::from), moment.time, moment.entry, moment.exit]
}

fn taken(numbers: &[f64]) -> Moment {
    let gear = (numbers[0] >= 0.0).then_some(numbers[0] as u8);
    let mode = if gear.is_some() { Mode::Ride } else { Mode::Foot };
    Moment { mode, time: numbers[1], entry: numbers[2], exit: numbers[3], gear }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::demo::Demo;
    use crate::gears::Drivetrain;
    use crate::quantity::Circumference;
    use crate::rider::{Air, Bike, BikeMass, BodyMass, KitMass, Power, Rider};

    fn setup(rings: &str) -> LapSetup {
        let rider =
            Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(230.0).unwrap());
        let cassette = "11-13-15-18-21-24-28-32".parse().unwrap();
        let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
        LapSetup::new(rider, bike, Air::STILL)
    }

    #[test]
    fn a_comparison_comes_back_as_it_went_and_not_to_a_course_of_other_steps() {
        let course = Demo::SandPit.course();
        for [first, second] in [["46", "44/31"], ["44/31", "44/31"], ["36", "42"]] {
            let (first, second) = (setup(first), setup(second));
            let found = LapComparison::of(&course, &first, &second).unwrap();
            let sent = found.numbers(&course, [&first, &second]).unwrap();
            let taken = LapComparison::from_numbers(&course, [&first, &second], &sent);
            assert_eq!(taken.as_ref(), Some(&found));
            assert_eq!(LapComparison::from_numbers(&Demo::Meadow.course(), [&first, &second], &sent), None);
            for cut in 0..sent.len().min(20) {
                assert_eq!(
                    LapComparison::from_numbers(&course, [&first, &second], &sent[..sent.len() - 1 - cut]),
                    None
                );
                let mut spoilt = sent.clone();
                spoilt[cut] = f64::NAN;
                assert_eq!(LapComparison::from_numbers(&course, [&first, &second], &spoilt), None);
            }
        }
    }
}
