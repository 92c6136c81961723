//! What a worker does for a box: it rides its share of the laps, says what they gain and how they are regretted, and looks for
//! what is worth buying.

use crate::parts::asked::BoxAsked;
use crate::parts::found::row;
use crate::parts::offer::Offer;
use crate::parts::words::offer as words;
use gear_math::course::TimeBand;
use gear_math::gears::GearSet;
use gear_math::parts::{BoxRides, BoxTyre, Buying, CourseWeight, Outing, Robust, SortedBox};
use gear_math::{Course, Drivetrain, rider::PowerBelowStanding};

/// A worker's part for one box.
#[derive(Debug)]
pub struct BoxErrand {
    asked: BoxAsked,
    laps: Vec<(Drivetrain, GearSet)>,
    rides: BoxRides,
    courses: Vec<(Course, CourseWeight)>,
    robust: Option<Robust>,
    buying: Option<Buying>,
}

impl BoxErrand {
    /// Sorts the whole box, so that laps have the same numbers for every worker.
    ///
    /// # Errors
    /// When an even power leaves nothing to move on foot with.
    pub fn of(asked: BoxAsked) -> Result<Self, PowerBelowStanding> {
        let (laps, _) = SortedBox::of(&asked.outing.bike, &asked.parts).laps();
        let rides = BoxRides::new(&asked.outing.course, &asked.outing.rider, &laps)?;
        Ok(Self { asked, laps, rides, courses: Vec::new(), robust: None, buying: None })
    }

    /// The lap of a number in full on every tyre of the box, s.
    #[must_use]
    pub fn on_tyres(&self, number: usize) -> Vec<f64> {
        let Some(lap) = self.laps.get(number) else { return Vec::new() };
        let Outing { course, rider, .. } = &self.asked.outing;
        let ride = |tyre: &BoxTyre| BoxRides::new(course, &tyre.under(rider), &[*lap]);
        let tyres = self.asked.parts.tyres.iter();
        tyres.map(|it| ride(it).map_or(f64::NAN, |rides| rides.plan(lap).time_s)).collect()
    }

    /// Leaves what was begun beside the laps.
    pub fn begin_anew(&mut self) {
        self.courses.clear();
        (self.robust, self.buying) = (None, None);
    }

    /// The lap of a number by a first look or in full, as a row; nothing of a number that none has.
    #[must_use]
    pub fn ride(&self, number: usize, in_full: bool) -> Vec<f64> {
        let ridden = |lap| if in_full { self.rides.plan(lap) } else { self.rides.look(lap) };
        self.laps.get(number).map_or_else(Vec::new, |lap| row(number, &ridden(lap)).to_vec())
    }

    /// What the laps of these numbers, with their times in seconds, gain over the first of them.
    #[must_use]
    pub fn gains(&self, numbers: &[usize], times_s: &[f64]) -> Vec<TimeBand> {
        let timed: Vec<_> = self.known(numbers).into_iter().zip(times_s.iter().copied()).collect();
        let Some((first, others)) = timed.split_first() else { return Vec::new() };
        let own = TimeBand { low_s: 0.0, time_s: 0.0, high_s: 0.0 };
        std::iter::once(own).chain(self.rides.gains(first, others)).collect()
    }

    /// Takes another course that counts for what is regretted, by its rows and its weight; what is none is passed over.
    pub fn add_course(&mut self, rows: &str, weight: f64) {
        self.courses.extend(rows.parse().ok().zip(CourseWeight::new(weight).ok()));
    }

    /// Rides the laps of these numbers on another day, and round the courses added; whether there is more to do. Begins anew once all is done.
    pub fn doubt(&mut self, numbers: &[usize]) -> bool {
        let laps = self.known(numbers);
        let (outing, courses) = (&self.asked.outing, &mut self.courses);
        let robust = self.robust.get_or_insert_with(|| Robust::new(outing, laps, std::mem::take(courses)));
        robust.advance().unwrap_or(false)
    }

    /// What each of them is behind the quickest under every condition, s.
    #[must_use]
    pub fn regrets(&mut self) -> Vec<f64> {
        let regrets = self.robust.take().map(|it| it.regrets()).unwrap_or_default();
        regrets.iter().flat_map(|it| it.behind_s).collect()
    }

    /// Looks on for what is worth buying beside the lap of a number, with its time; whether there is more to do.
    pub fn shop(&mut self, best: Option<(usize, f64)>, count: usize) -> bool {
        let best = best.and_then(|(number, time_s)| Some((*self.laps.get(number)?, time_s)));
        let BoxAsked { outing, parts, budget, .. } = &self.asked;
        let buying = self.buying.get_or_insert_with(|| Buying::new(outing, parts, best, *budget));
        buying.advance(count).unwrap_or(false)
    }

    /// What is worth buying.
    #[must_use]
    pub fn offers(&mut self) -> Vec<Offer> {
        let wheel = self.asked.bike().wheel;
        let Some(buying) = self.buying.take() else { return Vec::new() };
        buying.purchases().iter().map(|it| Offer::of(it, words::said(it, &self.asked.parts), wheel)).collect()
    }

    fn known(&self, numbers: &[usize]) -> Vec<(Drivetrain, GearSet)> {
        numbers.iter().filter_map(|number| self.laps.get(*number).copied()).collect()
    }
}
