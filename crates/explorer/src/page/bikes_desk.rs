//! What the desk does to compare all bikes: it works each out by itself, and sends workers round the course for their laps.

use crate::bench::link;
use crate::page::bike_row;
use crate::page::comparing::Comparing;
use crate::page::desk::{Desk, Update};
use crate::page::report::Report;
use crate::rack::bench_laps::BenchLaps;
use crate::rack::column::Column;
use crate::rack::compared::Compared;
use crate::rack::row::{Row, Whose};
use crate::side::Side;
use std::rc::Rc;

impl Desk {
    /// Lays out all bikes that are to be compared; [`work_out_bike`](Self::work_out_bike) then works them out one by one.
    pub fn begin_bikes(&mut self) {
        let on_bench = Side::BOTH.map(|side| (Whose::Bench(side), self.bench.bike(side)));
        let kept = self
            .rack()
            .bikes()
            .iter()
            .enumerate()
            .map(|(place, kept)| (Whose::Kept { name: kept.name.clone(), place }, kept.bike.clone()));
        let all = on_bench.into_iter().chain(kept).collect();
        self.comparing = Some(Comparing { waiting: all, rows: Vec::new() });
    }

    /// Works the next bike out; whether one is left then.
    pub fn work_out_bike(&mut self) -> bool {
        let Some(comparing) = &mut self.comparing else { return false };
        let Some((whose, bike)) = comparing.waiting.pop_front() else { return false };
        let bench = self.bench.with_bike(Side::A, &bike).with_a_copied_to_b();
        let link = link::write(&bench);
        let before = self.report.bikes.iter().flat_map(|bikes| &bikes.rows);
        let known = before.chain(&comparing.rows).find(|row| row.is_sure && row.link == link);
        let row = match known {
            Some(known) => Row { whose, lap_s: None, drawn_s: Vec::new(), ..known.clone() },
            None => bike_row::of(whose, link, &bench, &self.good),
        };
        comparing.rows.push(row);
        !comparing.waiting.is_empty()
    }

    /// Compares what now stands on the bench with what is on the rack; nothing when it is all as it was.
    pub fn compare_bikes(&mut self) -> Option<Update> {
        if self.comparing.is_none() {
            self.begin_bikes();
        }
        while self.work_out_bike() {}
        let before = self.report.bikes.clone();
        let rows = self.comparing.take()?.rows;
        let mut compared = self.compared(rows);
        if let Some(before) =
            before.as_deref().filter(|before| before.rows_of_course == compared.rows_of_course)
        {
            compared.keep_laps(before);
        }
        compared.take_bench_laps(self.bench_laps(&compared));
        if before.as_deref() == Some(&compared) {
            return None;
        }
        Rc::make_mut(&mut self.report).bikes = Some(Rc::new(compared));
        Some(self.refresh_bikes())
    }

    /// The course as rows, and a link for every bike whose lap is still to be ridden, or drawn; nothing where none is.
    #[must_use]
    pub fn bikes_order(&self) -> Option<(String, Vec<String>)> {
        let compared = self.report.bikes.as_ref().filter(|it| !it.is_even && it.kept() > 0)?;
        let links = compared.open();
        (!links.is_empty()).then(|| (compared.rows_of_course.clone(), links))
    }

    /// Takes the time of a bike's lap, which is shown when the bikes are.
    pub fn take_bike_lap(&mut self, link: &str, lap_s: f64) {
        self.change_bikes(|compared| compared.take_lap(link, lap_s));
    }

    /// Takes the times of a bike's lap in the draws, which are shown when the bikes are.
    pub fn take_bike_draws(&mut self, link: &str, drawn_s: &[f64]) {
        self.change_bikes(|compared| compared.take_draws(link, drawn_s));
    }

    /// Orders the bikes by a column; nothing when there is no such column or nothing to order.
    pub(crate) fn order_bikes(&mut self, key: &str) -> Option<Update> {
        let column = Column::by_key(key)?;
        self.change_bikes(|compared| compared.sort(column))?;
        Some(self.refresh_bikes())
    }

    /// Takes over what the lap now says of A and B, and what it asks of the gears.
    pub(crate) fn renew_bikes(&mut self) {
        let Some(bikes) = &self.report.bikes else { return };
        let (needs, laps) = (needs(&self.report), self.bench_laps(bikes));
        self.change_bikes(|compared| {
            compared.needs = needs;
            compared.take_bench_laps(laps);
        });
    }

    /// What the lap's own section has of these A and B round this course.
    fn bench_laps(&self, compared: &Compared) -> Option<BenchLaps> {
        let laps = self.report.lap.laps.as_ref()?;
        let of_these = Side::BOTH.map(|side| compared.on_bench(side).and_then(|row| row.rides));
        let is_of_these = laps.question.on_reserve()?.map(Some) == of_these;
        let is_of_course = laps.question.course.sketch() == compared.rows_of_course;
        (is_of_these && is_of_course).then(|| BenchLaps::of(laps))
    }

    fn change_bikes(&mut self, change: impl FnOnce(&mut Compared)) -> Option<()> {
        change(Rc::make_mut(Rc::make_mut(&mut self.report).bikes.as_mut()?));
        Some(())
    }

    fn compared(&self, rows: Vec<Row>) -> Compared {
        let report = &self.report;
        Compared {
            rows,
            order: None,
            course: self.course_name().unwrap_or_default().to_owned(),
            rows_of_course: self.course().map(|(_, rows)| rows).unwrap_or_default(),
            bench_laps: None,
            needs: needs(report),
            is_even: self.good.basis().on_reserve(Side::A).is_none(),
        }
    }
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
    use crate::page::scenario::Scenario;
    use crate::rack::behind::Behind;

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
        assert!(rows.contains("grass") && links.len() == 2, "a bike that is kept is ridden once");
        desk.take_bike_lap(&links[0], 600.0);
        assert!(desk.compare_bikes().is_none());
        for looks in [(Field::SpeedUnit, "mph"), (Field::Inches, "nominal"), (Field::SheetFor, "b")] {
            desk.bench.write(looks.0, looks.1);
            desk.lay_out(desk.bench.clone(), Scenario::default());
            desk.compare_bikes();
            assert_eq!(bikes(&desk).rows.iter().filter(|row| row.lap_s == Some(600.0)).count(), 2);
        }
        desk.bench.write(Field::BodyMass, "80");
        desk.lay_out(desk.bench.clone(), Scenario::default());
        desk.compare_bikes().unwrap();
        assert!(bikes(&desk).rows.iter().all(|row| row.lap_s.is_none()));
    }

    #[test]
    fn beside_a_field_in_error_workers_are_sent_round_with_its_last_good_value() {
        let mut desk = desk();
        for text in ["300", "300 x"] {
            desk.edit(&[("power".to_owned(), text.to_owned())]);
        }
        desk.compare_bikes().unwrap();
        let (_, links) = desk.bikes_order().unwrap();
        assert!(links.iter().all(|link| link.ends_with("&pw=300") || link.contains("&pw=300&")), "{links:?}");
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

    /// What is left as it was is not worked out again, and comes out as if it were.
    #[test]
    fn bikes_worked_out_one_by_one_or_known_from_before_are_those_worked_out_at_once() {
        let mut known = desk();
        known.act("bike-b:Winter").unwrap();
        known.begin_bikes();
        assert_eq!(
            (0..5).map(|_| known.work_out_bike()).collect::<Vec<_>>(),
            [true, true, true, false, false]
        );
        known.compare_bikes().unwrap();
        let mut fresh = desk();
        fresh.act("bike-b:Winter").unwrap();
        Rc::make_mut(&mut fresh.report).bikes = None;
        fresh.compare_bikes().unwrap();
        assert_eq!(bikes(&known), bikes(&fresh));
        let ends = bikes(&known).on_bench(Side::B).unwrap().ends.unwrap();
        let of_section = known.report.ride.sides[1].flip().unwrap();
        assert_eq!(ends, (of_section.gradient, of_section.reason));
    }

    #[test]
    fn a_change_of_the_bench_ends_what_was_being_compared() {
        let mut desk = desk();
        desk.begin_bikes();
        desk.work_out_bike();
        desk.edit(&[("rings-a".to_owned(), "40".to_owned())]);
        assert!(!desk.work_out_bike(), "those of before are none of now");
        desk.compare_bikes().unwrap();
        assert!(bikes(&desk).on_bench(Side::A).unwrap().lowest.gear.to_string().starts_with("40×"));
    }

    #[test]
    fn every_kept_bike_can_be_put_on_either_side_from_its_row() {
        let mut desk = desk();
        desk.unfold("fold-bikes-numbers", true);
        let update = desk.write_unfolded(None);
        let table = update.html.iter().find(|(id, _)| id == "bikes-table").unwrap();
        for act in ["bike-a:Winter", "bike-b:Winter", "bike-a:Summer", "bike-b:Summer"] {
            assert!(table.1.contains(&format!("<button type=\"button\" data-act=\"{act}\"")), "{}", table.1);
            assert!(desk.act(act).unwrap().link.is_some());
        }
        for id in ["rings", "cage", "ride", "lap", "tyre-section"] {
            let cell = format!("<a href=\"#{id}\" data-act=\"bike-a:Summer\">");
            assert!(table.1.contains(&cell), "{cell}");
        }
    }

    fn cell(desk: &Desk, side: Side) -> String {
        let compared = bikes(desk);
        let row = compared.on_bench(side).unwrap();
        crate::rack::words::compared::lap(&compared, row, compared.best())
    }

    /// A and B are asked about in two sections: one function answers.
    #[test]
    fn between_a_and_b_the_table_says_what_the_laps_own_section_says() {
        let mut desk = desk();
        let (rows, links) = desk.bikes_order().unwrap();
        for link in &links {
            let errand = Scenario::of_link(link).errand(&rows).unwrap();
            desk.take_bike_lap(link, errand.lap_s(Side::A).unwrap());
            let drawn: Vec<f64> = (0..Compared::DRAWS).map(|number| errand.drawn_s(number)).collect();
            desk.take_bike_draws(link, &drawn);
        }
        let by_themselves = bikes(&desk);
        let update = desk.lap(true).unwrap();
        let laps = desk.report.lap.laps.clone().unwrap();
        let settled = laps.settled.as_ref().unwrap();
        let compared = bikes(&desk);
        for side in Side::BOTH {
            let [ridden, told] =
                [&by_themselves, &compared].map(|it| it.on_bench(side).unwrap().lap_s.unwrap());
            assert!((ridden - told).abs() < 1e-9, "{ridden} {told}");
            assert!((told - laps.laps[side as usize].time_s).abs() < 1e-9);
        }
        let (best, other) = (settled.ahead(), settled.ahead().other());
        let lead = settled.lead();
        let [low, time, high] = [lead.low_s, lead.time_s, lead.high_s]
            .map(|s| crate::number::signed_seconds_in(s, settled.gained.precision()));
        assert!(cell(&desk, best).ends_with(", the best"), "{}", cell(&desk, best));
        let told = cell(&desk, other);
        assert!(told.ends_with(&format!("{time} s ({low} to {high})")), "{told}");
        let [own, tables] = ["lap-answer", "bikes-answer"]
            .map(|id| update.html.iter().find(|(it, _)| it == id).unwrap().1.as_str());
        let verdict = crate::lap::words::answer::verdict(settled);
        let verdict = maud::html! { (verdict) }.into_string();
        assert!(own.contains(&verdict) && tables.contains(&verdict), "{tables}");
    }

    #[test]
    fn the_quickest_leads_once_ordered_by_the_lap_and_the_table_is_saved_so() {
        let mut desk = desk();
        let (_, links) = desk.bikes_order().unwrap();
        for (place, link) in links.iter().enumerate() {
            desk.take_bike_lap(link, 600.0 - place as f64);
            desk.take_bike_draws(link, &[600.0 - place as f64; 8]);
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
        let behind = Behind::of(&slower, &quicker).unwrap();
        assert!((behind.time.time_s - 1.0).abs() < 1e-9);
    }
}
