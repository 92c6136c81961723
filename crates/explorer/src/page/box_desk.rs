//! What the desk does about the box of parts: it sorts it, and gathers what workers find of its laps.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::bench::whole_bike::{Part, WholeBike};
use crate::lap::report::LapQuestion;
use crate::page::desk::{Desk, Update};
use crate::page::scenario::Scenario;
use crate::page::sections;
use crate::parts::asked::BoxAsked;
use crate::parts::errand::BoxErrand;
use crate::parts::found::BoxFound;
use crate::parts::offer::Offer;
use crate::side::Side;
use gear_math::course::TimeBand;
use gear_math::gears::{RingDifference, Sprocket, TotalCapacity};
use gear_math::parts::RearDerailleur;
use std::rc::Rc;

impl Scenario {
    /// What a worker is to do for the box round a course of these rows; none where there is nothing to ride.
    #[must_use]
    pub fn box_errand(&self, rows: &str) -> Option<BoxErrand> {
        BoxErrand::of(BoxAsked::of(&self.basis(), &self.parts, rows.parse().ok()?)).ok()
    }
}

impl Desk {
    /// Begins with the box as it is; [`sort_box`](Self::sort_box) then finds out what goes together.
    pub fn begin_box(&mut self) -> Update {
        let course = self.course_name().unwrap_or_default().to_owned();
        let found = BoxFound::of(self.box_asked(), course);
        self.set_box(Some(Rc::new(found)));
        self.show_box()
    }

    fn box_asked(&self) -> BoxAsked {
        let question = LapQuestion::of(&self.good.basis(), self.report.lap.own.as_deref());
        BoxAsked::of(&self.good.basis(), &self.good.parts, question.course)
    }

    fn set_box(&mut self, found: Option<Rc<BoxFound>>) {
        Rc::make_mut(&mut self.report).box_found = found;
    }

    /// Tries the next `count` combinations; whether there are more.
    pub fn sort_box(&mut self, count: usize) -> bool {
        self.change_box(|found| found.sort(count)).unwrap_or(false)
    }

    /// Numbers of the laps to be looked at, or once all are, to be planned in full.
    #[must_use]
    pub fn box_to_ride(&self) -> (Vec<usize>, bool) {
        self.box_found().map(BoxFound::to_ride).unwrap_or_default()
    }

    /// Pieces of work that are done, and how many there are.
    #[must_use]
    pub fn box_progress(&self) -> [usize; 2] {
        self.box_found().map(BoxFound::progress).unwrap_or_default()
    }

    /// Takes what was found of laps, which is shown when the box is.
    pub fn take_box(&mut self, rows: &[f64]) {
        self.change_box(|found| found.take(rows));
    }

    /// Shows what was found so far.
    pub fn show_box(&mut self) -> Update {
        self.change_box(BoxFound::rank);
        self.refresh_section(sections::of_box)
    }

    /// Numbers and times of the laps that are ridden once more.
    #[must_use]
    pub fn box_leading(&self) -> Vec<(usize, f64)> {
        self.box_found().map(BoxFound::leading).unwrap_or_default()
    }

    /// Numbers of the laps whose regret is asked for.
    #[must_use]
    pub fn box_planned(&self) -> Vec<usize> {
        self.box_found().map(BoxFound::planned).unwrap_or_default()
    }

    /// Takes what the leading ones gain over the first.
    pub fn take_box_bands(&mut self, bands: Vec<TimeBand>) {
        self.change_box(|found| found.take_bands(bands));
    }

    /// Takes by how much the planned ones are regretted at most.
    pub fn take_box_regrets(&mut self, worst_s: &[f64]) {
        self.change_box(|found| found.take_regrets(worst_s));
    }

    /// Takes what is worth buying.
    pub fn take_box_offers(&mut self, offers: Vec<Offer>) {
        self.change_box(|found| found.offers = Some(offers));
    }

    /// Ends it, whatever was found.
    pub fn end_box(&mut self) -> Update {
        self.change_box(|found| found.is_done = true);
        self.show_box()
    }

    /// Takes note of whether something else would be asked now.
    pub(crate) fn compare_box(&mut self) {
        if self.box_found().is_none() {
            return;
        }
        let now = self.box_asked();
        self.change_box(|found| found.is_stale = !found.asked.holds_for(&now));
    }

    fn box_found(&self) -> Option<&BoxFound> {
        self.report.box_found.as_deref()
    }

    fn change_box<T>(&mut self, change: impl FnOnce(&mut BoxFound) -> T) -> Option<T> {
        Some(change(Rc::make_mut(Rc::make_mut(&mut self.report).box_found.as_mut()?)))
    }

    /// The bench with a combination that was found on one side: its rings, cassette and derailleur, and its chain where links are
    /// counted there.
    pub(crate) fn with_combination(&self, key: &str, side: Side) -> Option<Bench> {
        let found = self.box_found()?;
        let (combination, fit) = found.by_key(key)?;
        let mut bike = self.bench.bike(side);
        put(&mut bike, Field::RingsA, fit.drivetrain.chainset.to_string());
        put(&mut bike, Field::CassetteA, fit.drivetrain.cassette.to_string());
        if combination.derailleur.is_some() {
            put_derailleur(&mut bike, &found.asked.parts.derailleur(combination));
        }
        if !bike.text(Field::ChainLinks).is_empty() {
            put(&mut bike, Field::ChainLinks, fit.links.count().to_string());
        }
        Some(self.bench.with_bike(side, &bike))
    }
}

fn put_derailleur(bike: &mut WholeBike, RearDerailleur { figures, pulley_centres }: &RearDerailleur) {
    let teeth = |figure: Option<u16>| figure.map_or_else(String::new, |it| it.to_string());
    put(bike, Field::Capacity, teeth(figures.total_capacity.map(TotalCapacity::teeth)));
    put(bike, Field::LargestSprocket, teeth(figures.largest_sprocket.map(Sprocket::teeth)));
    put(bike, Field::SmallestSprocket, teeth(figures.smallest_sprocket.map(Sprocket::teeth)));
    put(bike, Field::RingDifference, teeth(figures.ring_difference.map(RingDifference::teeth)));
    put(bike, Field::PulleyCentres, pulley_centres.map_or_else(String::new, |it| it.mm().to_string()));
}

/// Puts a part on a bike, unless it is there already.
fn put(bike: &mut WholeBike, of_a: Field, text: String) {
    if bike.text(of_a) != text {
        bike.put(of_a, Part { text, is_riders: true });
    }
}
