//! What the desk does about the box of parts: it sorts it, and gathers what workers find of its laps.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::bench::whole_bike::{Part, WholeBike};
use crate::lap::report::LapQuestion;
use crate::lap::words::found::set_up;
use crate::page::desk::{Desk, Update};
use crate::page::scenario::Scenario;
use crate::page::sections;
use crate::parts::asked::BoxAsked;
use crate::parts::column::Column;
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
    /// Begins with the box as it is, and with kept courses that count by their weights; [`sort_box`](Self::sort_box) then finds out
    /// what goes together.
    pub fn begin_box(&mut self, courses: Vec<(String, f64)>) -> Update {
        let course = self.course_name().unwrap_or_default().to_owned();
        let found = BoxFound::of(self.box_asked(), course, courses);
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

    /// Takes what the planned ones are behind under every condition, s.
    pub fn take_box_regrets(&mut self, behind_s: &[f64]) {
        self.change_box(|found| found.take_regrets(behind_s));
    }

    /// Puts the table in the order of a column by its place.
    pub(crate) fn order_box(&mut self, place: &str) -> Option<Update> {
        let column = Column::at(place.parse().ok()?)?;
        self.change_box(|found| found.order_by(column))?;
        Some(self.refresh_section(sections::of_box))
    }

    /// The name under which a combination is kept.
    pub(crate) fn combination_name(&self, key: &str) -> Option<String> {
        let (_, fit) = self.box_found()?.by_key(key)?;
        Some(set_up(&fit.drivetrain))
    }

    /// Takes the time of the quickest on every tyre of the box, s.
    pub fn take_box_tyres(&mut self, times_s: Vec<f64>) {
        self.change_box(|found| found.on_tyres_s = times_s);
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lap::found::Standing;
    use crate::parts::section::BoxSection;
    use crate::parts::view;
    use gear_math::Derailleur;

    fn filled(edits: &[(&str, &str)]) -> Desk {
        let mut desk = Desk::default();
        let steady = [("lap-model", "steady"), ("links", "110")];
        let edits: Vec<_> =
            steady.iter().chain(edits).map(|&(key, text)| (key.to_owned(), text.to_owned())).collect();
        desk.edit(&edits);
        desk
    }

    /// A box ridden to its end.
    fn ridden(edits: &[(&str, &str)]) -> Desk {
        let mut desk = filled(edits);
        desk.begin_box(Vec::new());
        while desk.sort_box(7) {}
        let mut errand = Scenario::of_link(&desk.link()).box_errand(&desk.course().unwrap().1).unwrap();
        loop {
            let (laps, in_full) = desk.box_to_ride();
            if laps.is_empty() {
                break;
            }
            let rows: Vec<f64> = laps.iter().flat_map(|&lap| errand.ride(lap, in_full)).collect();
            desk.take_box(&rows);
        }
        desk.show_box();
        let (numbers, times): (Vec<usize>, Vec<f64>) = desk.box_leading().into_iter().unzip();
        desk.take_box_bands(errand.gains(&numbers, &times));
        let planned = desk.box_planned();
        while errand.doubt(&planned) {}
        desk.take_box_regrets(&errand.regrets());
        desk.take_box_tyres(errand.on_tyres(numbers[0]));
        desk.end_box();
        desk
    }

    const BOX: (&str, &str) = ("box-parts", "38 42 / 11-34 11s, 11-32 10s / 35/30, 39/36");

    fn section(desk: &Desk) -> BoxSection {
        desk.report().box_section()
    }

    fn answer(desk: &Desk) -> String {
        view::answer::answer(&section(desk)).into_string().replace('\u{a0}', " ")
    }

    fn found(desk: &Desk) -> Rc<BoxFound> {
        section(desk).found.unwrap()
    }

    #[test]
    fn the_parts_of_the_bench_are_always_in_the_box() {
        let said = answer(&filled(&[]));
        assert!(
            said.contains("Only the parts of <b class=\"A\">A</b>") && said.contains("4 combinations"),
            "{said}"
        );
        let said = answer(&filled(&[BOX]));
        assert!(said.contains("5 sets of rings, 4 cassettes and 3 rear derailleurs"), "{said}");
    }

    #[test]
    fn what_is_not_understood_is_said_and_the_rest_is_taken() {
        let mut desk = filled(&[]);
        let update = desk.edit(&[("box-parts".into(), "38 99 / 11-34 11s, x / 39".into())]);
        assert_eq!(update.wrong, ["box-parts"]);
        let said = &update.html.iter().find(|(id, _)| id == "says-box-parts").unwrap().1;
        for piece in
            ["“99” is not understood as rings", "“x” is", "“39” is not understood as a rear derailleur"]
        {
            assert!(said.contains(piece), "{piece}: {said}");
        }
        assert_eq!(section(&desk).parts.chainsets.len(), 3);
    }

    #[test]
    fn the_quickest_is_named_and_what_does_not_fit_is_counted() {
        let desk = ridden(&[BOX]);
        let (found, said) = (found(&desk), answer(&desk));
        let best = found.order[0].parts;
        assert!(found.order.iter().all(|it| it.parts.lap.planned && it.parts.lap.time_s >= best.lap.time_s));
        assert!(said.contains("Quickest of the box round Autumn meadow: "), "{said}");
        assert!(said.contains(&best.fit.drivetrain.chainset.to_string()), "{said}");
        let lacking: usize = found.sorted().lacking().iter().map(|it| it.1).sum();
        assert!(
            said.contains(&format!("{lacking} do not fit: "))
                && said.contains("15 for another number of sprockets"),
            "{said}"
        );
        let is_good =
            Side::BOTH.iter().any(|&side| matches!(found.standing(side), Standing::First | Standing::Tie(_)));
        assert_eq!(said.contains("Nothing to change"), is_good, "{said}");
        assert!(said.contains("east regretted on another day"), "{said}");
    }

    #[test]
    fn a_row_goes_onto_the_bench_with_its_derailleur_and_the_results_stand() {
        let mut desk = ridden(&[BOX]);
        let place = found(&desk).order.iter().position(|it| it.parts.combination.derailleur == Some(2));
        let parts = found(&desk).order[place.unwrap()].parts;
        let b = desk.bench.bike(Side::B);
        let act = format!("box-a:{}", crate::parts::found::key(parts.combination));
        desk.act(&act).unwrap();
        assert_eq!(desk.bench.text(Field::RingsA), parts.fit.drivetrain.chainset.to_string());
        let figures = [Field::Capacity, Field::LargestSprocket, Field::ChainLinks]
            .map(|it| desk.bench.text(it).to_owned());
        assert_eq!(figures, ["39".to_owned(), "36".to_owned(), parts.fit.links.count().to_string()]);
        assert_eq!(desk.bench.bike(Side::B), b);
        assert!(!found(&desk).is_stale, "all that is now on the bench lies in the box");
        desk.edit(&[("body-mass".into(), "80".into())]);
        assert!(found(&desk).is_stale && answer(&desk).contains("ride again"));
        assert!(desk.act("box-b:9-9-9").is_none());
    }

    #[test]
    fn a_derailleur_without_figures_stays_and_is_judged_by_geometry() {
        let desk = ridden(&[BOX, ("capacity", ""), ("largest-sprocket", "")]);
        let found = found(&desk);
        let Derailleur { total_capacity, largest_sprocket, .. } = found.asked.parts.derailleurs[0].figures;
        assert_eq!((total_capacity, largest_sprocket, found.asked.parts.derailleurs.len()), (None, None, 3));
        let of_first = |it: &&crate::parts::choice::Choice| it.parts.combination.derailleur == Some(0);
        let parts = found.order.iter().find(of_first).unwrap().parts;
        let said = crate::parts::words::named::combination(&parts, &found.asked.parts);
        assert!(
            said.ends_with("on the derailleur without makers’ figures, judged by geometry alone"),
            "{said}"
        );
    }

    #[test]
    fn tyres_of_the_box_are_ridden_with_the_quickest() {
        let desk = ridden(&[("box-parts", "tyres 33-622 tubular, 50-584")]);
        let (found, said) = (found(&desk), answer(&desk));
        let [own, other] = found.on_tyres_s[..] else { panic!("{:?}", found.on_tyres_s) };
        assert!((own - found.order[0].parts.lap.time_s).abs() < 1.0 && (own - other).abs() > 0.05);
        assert!(
            said.contains("On the tyres of the box: 33-622 tubular ") && said.contains(" and 50-584 "),
            "{said}"
        );
    }

    #[test]
    fn a_row_is_kept_and_the_table_put_in_order() {
        let mut desk = ridden(&[BOX]);
        let parts = found(&desk).order[1].parts;
        let key = crate::parts::found::key(parts.combination);
        desk.act_on_rack("keep-box", &key, "").unwrap();
        let kept = &desk.rack().bikes()[0];
        assert_eq!(kept.bike.text(Field::RingsA), parts.fit.drivetrain.chainset.to_string());
        assert!(kept.name.starts_with(&parts.fit.drivetrain.chainset.to_string()), "{}", kept.name);
        assert!(desk.act_on_rack("keep-box", "9-9-9", "").is_none());
        let lowest = |desk: &Desk| {
            let found = found(desk);
            found.listed().into_iter().map(|it| found.order[it].lowest_m).collect::<Vec<_>>()
        };
        desk.act("order-box:3").unwrap();
        assert!(lowest(&desk).is_sorted());
        desk.act("order-box:3").unwrap();
        assert!(lowest(&desk).is_sorted_by(|a, b| a >= b));
        assert!(desk.act("order-box:9").is_none());
    }

    #[test]
    fn another_day_is_told_condition_by_condition() {
        let said = answer(&ridden(&[BOX]));
        for day in ["one step wetter", "10 % less power", "10 % more power", "5 rpm less", "5 rpm more"] {
            assert!(said.contains(day), "{day}: {said}");
        }
    }

    #[test]
    fn a_box_stopped_at_once_says_so_and_one_ridden_is_a_table() {
        let mut desk = filled(&[BOX]);
        desk.begin_box(Vec::new());
        desk.end_box();
        assert!(answer(&desk).contains("Stopped after 0 of 60"), "{}", answer(&desk));
        assert_eq!(found(&desk).csv(), None);
        let desk = ridden(&[BOX]);
        let table = view::table::rows(&section(&desk)).into_string();
        let count = found(&desk).order.len();
        assert_eq!(table.matches("<tr").count(), 1 + count.min(crate::parts::found::LISTED));
        assert_eq!(found(&desk).csv().unwrap().lines().count(), 1 + count);
    }
}
