//! What the desk does to compare all bikes: it works each out by itself, and sends workers round the course for their laps.

use crate::bench::bench::Bench;
use crate::bench::link;
use crate::page::desk::{Desk, Update};
use crate::page::report::Report;
use crate::page::scenario::Scenario;
use crate::rack::column::Column;
use crate::rack::compared::Compared;
use crate::rack::row::{EndGear, Row, Whose};
use crate::side::Side;
use gear_math::{Cadence, Gear, Setup};
use std::rc::Rc;

impl Desk {
    /// Compares what now stands on the bench with what is on the rack; nothing when it is all as it was.
    pub fn compare_bikes(&mut self) -> Option<Update> {
        let before = self.report.bikes.clone();
        let mut compared = self.compared();
        if let Some(before) =
            before.as_deref().filter(|before| before.rows_of_course == compared.rows_of_course)
        {
            compared.keep_laps(before);
        }
        if before.as_deref() == Some(&compared) {
            return None;
        }
        Rc::make_mut(&mut self.report).bikes = Some(Rc::new(compared));
        Some(self.refresh(Vec::new(), false))
    }

    /// The course as rows, and a link for every bike whose lap is still to be ridden, or drawn; nothing where none is.
    #[must_use]
    pub fn bikes_order(&self) -> Option<(String, Vec<String>)> {
        let compared = self.report.bikes.as_ref().filter(|it| !it.is_even && it.kept() > 0)?;
        let open = compared.rows.iter().filter(|row| row.lap_s.is_none() || !row.is_banded());
        let links: Vec<String> = open.map(|row| row.link.clone()).collect();
        (!links.is_empty()).then(|| (compared.rows_of_course.clone(), links))
    }

    /// Takes the time of a bike's lap.
    pub fn take_bike_lap(&mut self, link: &str, lap_s: f64) -> Option<Update> {
        self.change_bikes(|compared| compared.take_lap(link, lap_s))
    }

    /// Takes the times of a bike's lap in the draws.
    pub fn take_bike_draws(&mut self, link: &str, drawn_s: &[f64]) -> Option<Update> {
        self.change_bikes(|compared| compared.take_draws(link, drawn_s))
    }

    /// Orders the bikes by a column; nothing when there is no such column or nothing to order.
    pub(crate) fn order_bikes(&mut self, key: &str) -> Option<Update> {
        let column = Column::by_key(key)?;
        self.change_bikes(|compared| compared.sort(column))
    }

    /// Takes over what the lap now asks of the gears.
    pub(crate) fn renew_needs(&mut self) {
        let needs = needs(&self.report);
        if let Some(bikes) = &mut Rc::make_mut(&mut self.report).bikes {
            Rc::make_mut(bikes).needs = needs;
        }
    }

    fn change_bikes(&mut self, change: impl FnOnce(&mut Compared)) -> Option<Update> {
        change(Rc::make_mut(Rc::make_mut(&mut self.report).bikes.as_mut()?));
        Some(self.refresh(Vec::new(), false))
    }

    fn compared(&self) -> Compared {
        let on_bench = Side::BOTH.map(|side| (Whose::Bench(side), self.bench.bike(side)));
        let kept = self
            .rack()
            .bikes()
            .iter()
            .enumerate()
            .map(|(place, kept)| (Whose::Kept { name: kept.name.clone(), place }, kept.bike.clone()));
        let all = on_bench.into_iter().chain(kept);
        let alone = |(whose, bike)| (whose, self.bench.with_bike(Side::A, &bike).with_a_copied_to_b());
        let rows: Vec<Row> = all.map(alone).map(|(whose, bench)| row(whose, &bench, &self.good)).collect();
        let report = &self.report;
        Compared {
            rows,
            order: None,
            unit: report.rings.unit,
            course: self.course_name().unwrap_or_default().to_owned(),
            rows_of_course: self.course().map(|(_, rows)| rows).unwrap_or_default(),
            needs: needs(report),
            is_even: self.good.basis().on_reserve(Side::A).is_none(),
        }
    }
}

/// One bike by itself.
fn row(whose: Whose, bench: &Bench, good: &Scenario) -> Row {
    let scenario = Scenario::read(bench, good).scenario;
    let (rings, ride, cage) = (&scenario.rings, &scenario.ride, scenario.cages.answer(Side::A));
    let setup = rings.set_up(Side::A, cage);
    let summary = setup.summary(rings.tolerance);
    let flip = ride.question(Side::A).crossover(ride.ground(Side::A)).flip;
    Row {
        whose,
        link: link::write(bench),
        lowest: end(&setup, summary.lowest.gear, rings.window.low),
        highest: end(&setup, summary.highest.gear, rings.window.high),
        steps: summary.riding_order.step_spread(),
        useful: summary.useful(),
        cage: cage.outcome.clone(),
        links: cage.links.map(gear_math::ChainLinks::count),
        ends: flip.map(|flip| (flip.gradient, flip.reason)),
        pressures: scenario.tyres[0].starting_pressures(rings.wheel(Side::A).tyre),
        gears: gears(&setup),
        lap_s: None,
        drawn_s: Vec::new(),
    }
}

fn end(setup: &Setup, gear: Gear, cadence: Cadence) -> EndGear {
    let row = setup.row(gear);
    EndGear { gear, development: row.development, speed: row.speed_at(cadence) }
}

/// Developments and ranks of the gears that may be used.
fn gears(setup: &Setup) -> Vec<(f64, usize)> {
    let (drivetrain, avoid) = (&setup.drivetrain, setup.avoid.unless_all(&setup.drivetrain));
    let rings = drivetrain.chainset.rings();
    let rank = |gear: Gear| rings.iter().rev().position(|ring| *ring == gear.ring).unwrap_or(0);
    let used = setup.rows().filter(|row| !avoid.holds(drivetrain, row.gear));
    used.map(|row| (row.development.m(), rank(row.gear))).collect()
}

/// How much of the time of A's lap is ridden in each development.
fn needs(report: &Report) -> Vec<(f64, f64)> {
    let Some(laps) = &report.lap.laps else { return Vec::new() };
    let (lap, wheel) = (&laps.laps[0], laps.question.setups[0].bike.wheel);
    lap.gears.iter().map(|used| (used.gear.development(wheel).m(), used.time_s / lap.time_s)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;

    fn desk() -> Desk {
        let mut desk = Desk::default();
        desk.open("#r=3&ra=46/30&bi=9.1&tyb=40-622&bib=8.2");
        desk.act_on_rack("keep-a", "", "Winter").unwrap();
        desk.act_on_rack("keep-b", "", "Summer").unwrap();
        desk.compare_bikes().unwrap();
        desk
    }

    fn bikes(desk: &Desk) -> Rc<Compared> {
        Rc::clone(desk.report.bikes.as_ref().unwrap())
    }

    #[test]
    fn a_kept_bike_compares_as_the_one_it_was_kept_from() {
        let compared = bikes(&desk());
        let [a, b, winter, summer] = compared.rows.as_slice() else { panic!("{compared:?}") };
        for (bench, kept) in [(a, winter), (b, summer)] {
            let kept = Row { whose: bench.whose.clone(), ..kept.clone() };
            assert_eq!(&kept, bench);
        }
        assert!(a.highest.development < b.highest.development || a.lowest != b.lowest);
    }

    #[test]
    fn nothing_is_compared_twice_and_laps_stay_while_they_hold() {
        let mut desk = desk();
        assert!(desk.compare_bikes().is_none());
        let (rows, links) = desk.bikes_order().unwrap();
        assert!(rows.contains("grass") && links.len() == 4);
        desk.take_bike_lap(&links[0], 600.0).unwrap();
        assert!(desk.compare_bikes().is_none());
        desk.bench.write(Field::BodyMass, "80");
        desk.lay_out(desk.bench.clone(), Scenario::default());
        desk.compare_bikes().unwrap();
        assert!(bikes(&desk).rows.iter().all(|row| row.lap_s.is_none()));
    }

    #[test]
    fn a_lap_that_comes_later_leaves_the_comparison_standing_and_says_what_it_asks_for() {
        let mut desk = desk();
        assert!(bikes(&desk).needs.is_empty());
        desk.lap(false).unwrap();
        let compared = bikes(&desk);
        assert!(compared.rows.len() == 4 && compared.needs.len() > 3);
        assert!(compared.needs.iter().map(|(_, share)| share).sum::<f64>() <= 1.0);
        assert_eq!(compared.bikes().count(), 2, "those on the bench are the kept ones");
    }

    #[test]
    fn the_quickest_leads_once_ordered_by_the_lap_and_the_table_is_saved_so() {
        let mut desk = desk();
        let (_, links) = desk.bikes_order().unwrap();
        for (place, link) in links.iter().enumerate() {
            desk.take_bike_lap(link, 600.0 - place as f64).unwrap();
            desk.take_bike_draws(link, &[600.0 - place as f64; 8]).unwrap();
        }
        assert!(desk.bikes_order().is_none());
        desk.act("order-bikes:lap").unwrap();
        let compared = bikes(&desk);
        let times: Vec<f64> = compared.rows.iter().filter_map(|row| row.lap_s).collect();
        assert!(times.is_sorted() && times.len() == 4);
        let csv = compared.csv();
        assert_eq!((csv.lines().count(), csv.contains("Winter")), (5, true));
        desk.act("order-bikes:lap").unwrap();
        assert!(bikes(&desk).rows.iter().filter_map(|row| row.lap_s).is_sorted_by(|a, b| a >= b));
        assert!(desk.act("order-bikes:colour").is_none());
    }

    #[test]
    fn a_bike_that_is_worse_in_everything_is_beaten() {
        let compared = bikes(&desk());
        let row = &compared.rows[0];
        let slower = Row { lap_s: Some(601.0), ..row.clone() };
        let quicker = Row { lap_s: Some(600.0), ..row.clone() };
        assert!(quicker.beats(&slower) && !slower.beats(&quicker) && !row.beats(row));
        let behind = slower.behind(&quicker).unwrap();
        assert!((behind.time_s - 1.0).abs() < 1e-9);
    }
}
