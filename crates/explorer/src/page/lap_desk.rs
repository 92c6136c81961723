//! What the desk does about the lap: it is worked out apart from everything else, and searched by workers.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::bench::link;
use crate::bench::offered::{OWN_COURSE, SKETCH_COURSE};
use crate::lap::course_fault::CourseFault;
use crate::lap::drawn::Drawn;
use crate::lap::errand::Errand;
use crate::lap::even_errand::EvenErrand;
use crate::lap::found::Found;
use crate::lap::from_scripts::FileFault;
use crate::lap::inputs::CourseChoice;
use crate::lap::own_course::{OwnCourse, Track};
use crate::lap::refusal::Refusal;
use crate::lap::report::{FINENESS, LapQuestion, LapReport};
use crate::lap::room::LapRoom;
use crate::lap::search::Hunt;
use crate::lap::sent_track;
use crate::lap::sketched::Sketched;
use crate::lap::stroke::{Stroke, StrokeFault};
use crate::lap::words;
use crate::page::desk::{Desk, Update};
use crate::page::report::Report;
use crate::page::scenario::Scenario;
use crate::side::Side;
use gear_math::Course;
use gear_math::course::{LapComparison, LapSettling, ReservePlan, TimeBand, TrackOptions};
use maud::html;
use std::rc::Rc;

fn fits(course: &Course) -> bool {
    course.sketch().chars().count() <= Field::Sketch.longest()
}

impl Scenario {
    /// The bench of a link, understood.
    #[must_use]
    pub fn of_link(address: &str) -> Self {
        Self::read(&link::read(address).bench, &Self::default()).scenario
    }

    /// What a worker is to do for the lap round the course of these rows; none where it is ridden at an even power.
    #[must_use]
    pub fn errand(&self, rows: &str) -> Option<Errand> {
        Errand::of(&LapQuestion::of(&self.basis(), None), rows)
    }

    /// The same where it is ridden at an even power.
    #[must_use]
    pub fn even_errand(&self, rows: &str) -> Option<EvenErrand> {
        EvenErrand::of(&LapQuestion::of(&self.basis(), None), rows)
    }
}

impl Desk {
    /// Works the lap out, in coarse steps or until it has settled; `None` when that was done before. A track that is no course
    /// has no lap.
    pub fn lap(&mut self, settled: bool) -> Option<Update> {
        if self.good.lap.fault(self.room().own.as_deref()).is_some() {
            let stood = self.room().laps.is_some();
            return stood.then(|| self.with_laps(None));
        }
        let question = self.lap_question();
        let known = self.room().laps.as_ref().filter(|laps| laps.question == question);
        if known.is_some_and(|laps| !settled || laps.settled.is_some()) {
            return None;
        }
        let begun = self.settling.take().filter(|(of, _)| settled && *of == question);
        let laps = match begun {
            Some((question, settling)) => LapReport::settled(question, settling),
            None => LapReport::of(question, settled),
        };
        Some(self.with_laps(laps.ok()))
    }

    /// Rides once more of what an even lap takes to settle; whether there may be more to ride.
    pub fn settle_on(&mut self) -> bool {
        let Some(question) = self.open_question().filter(|it| it.on_reserve().is_none()) else {
            return false;
        };
        let begun = self.settling.take().filter(|(of, _)| *of == question);
        let begin = || (question.clone(), LapSettling::new(question.course.clone(), question.setups));
        let (_, settling) = self.settling.insert(begun.unwrap_or_else(begin));
        settling.go_on().unwrap_or(false)
    }

    fn lap_question(&self) -> LapQuestion {
        LapQuestion::of(&self.good.basis(), self.room().own.as_deref())
    }

    fn with_laps(&mut self, laps: Option<LapReport>) -> Update {
        let question = self.lap_question();
        let is_stale = laps.as_ref().is_some_and(|laps| laps.is_before(&question));
        let room = LapRoom { laps: laps.map(Rc::new), is_stale, ..self.room().clone() };
        let price = room.price(&question);
        if self.good.ride.lap_price != price {
            self.good.ride.lap_price = price;
            self.report = Report::after(&self.good, &self.report).into();
        }
        self.set_room(room);
        self.renew_bikes();
        self.refresh(Vec::new(), false)
    }

    /// Rows of the course whose lap workers are to ride on a reserve; none where it is ridden at an even power or nothing is left to do.
    pub fn lap_order(&mut self) -> Option<String> {
        let question = self.open_question().filter(|it| it.on_reserve().is_some())?;
        Some(self.order(question))
    }

    /// Rows of the course whose laps workers are to ride at an even power; none where there is a reserve, nothing is left to do or they
    /// are at it.
    pub fn even_order(&mut self) -> Option<String> {
        let question = self.open_question().filter(|it| it.on_reserve().is_none())?;
        (self.ordered.as_ref() != Some(&question)).then(|| self.order(question))
    }

    /// The lap that is asked for as long as something of it is to be worked out; none where there is no course for it.
    fn open_question(&self) -> Option<LapQuestion> {
        let question = self.lap_question();
        let is_known = |laps: &Rc<LapReport>| laps.question == question && laps.is_done();
        let is_done = self.room().laps.as_ref().is_some_and(is_known);
        let is_faulty = self.good.lap.fault(self.room().own.as_deref()).is_some();
        (!is_done && !is_faulty).then_some(question)
    }

    /// Orders a lap: rows of its course.
    fn order(&mut self, question: LapQuestion) -> String {
        let rows = question.course.sketch();
        self.ordered = Some(question);
        rows
    }

    /// Takes both laps at an even power that were ordered last; none where they are of something else, or of the bench before.
    pub fn take_even(&mut self, numbers: &[f64]) -> Option<Update> {
        let question = self.ordered.clone().filter(|question| *question == self.lap_question())?;
        let found = LapComparison::from_numbers(&question.course, question.setups.each_ref(), numbers)?;
        self.ordered = None;
        Some(self.with_laps(LapReport::compared(question, found).ok()))
    }

    /// Takes both plans that were ordered last; none where they are of something else, or the lap is at an even power meanwhile.
    pub fn take_plans(&mut self, plans: [&[f64]; 2]) -> Option<Update> {
        let question = self.ordered.clone().filter(|_| self.lap_question().on_reserve().is_some())?;
        let setups = question.on_reserve()?;
        let lap = |side: Side| {
            let plan = ReservePlan::from_numbers(plans[side as usize])?;
            plan.lap(&question.course, &setups[side as usize], FINENESS)
        };
        let laps = [lap(Side::A)?, lap(Side::B)?];
        Some(self.with_laps(Some(LapReport::ridden(question, laps))))
    }

    /// Takes draws of the lap that was ordered last.
    pub fn take_draws(&mut self, numbers: &[f64]) -> Option<Update> {
        let laps = self.room().laps.as_ref().filter(|laps| Some(&laps.question) == self.ordered.as_ref())?;
        let laps = LapReport::clone(laps).with(Drawn::all(numbers));
        Some(self.with_laps(Some(laps)))
    }

    /// Takes what was read of a GPX file.
    pub fn take_track(&mut self, name: &str, numbers: Vec<f64>) -> Update {
        let whole = TrackOptions { from: None, to: None, ..self.good.lap.track_options(false) };
        let points = sent_track::understood(numbers).map_err(CourseFault::Gpx);
        let track = points.and_then(|points| Track::of(Rc::new(points)));
        let own = track.and_then(|track| OwnCourse::along(name, track, whole));
        self.take_own(name, own)
    }

    /// Takes a course that was kept or saved: its name, its stretches, a row each, what it was smoothed over, and the
    /// file it comes from, unless the browser kept it.
    pub fn take_rows(
        &mut self,
        name: &str,
        rows: &str,
        smoothing_m: Option<f64>,
        file: Option<&str>,
    ) -> Update {
        self.take_own(name, OwnCourse::from_rows(name, rows, smoothing_m, file))
    }

    /// Paints a stretch of the course that is ridden, as a change of the field that holds what is painted; says that it was done,
    /// or why it was not.
    pub fn paint(&mut self, stroke: &str) -> Update {
        let (mut update, said) = match self.with_painted(stroke) {
            Ok(bench) => {
                self.remember(None);
                self.notices.clear();
                (self.change(bench), words::stroke::PAINTED.to_owned())
            }
            Err(fault) => (self.refresh(Vec::new(), false), words::stroke::fault(fault)),
        };
        update.html.push(("brush-says".to_owned(), html! { (said) }.into_string()));
        update
    }

    fn with_painted(&self, stroke: &str) -> Result<Bench, StrokeFault> {
        let stroke = Stroke::read(stroke)?;
        if let Some(course) = self.good.lap.course(self.room().own.as_deref()) {
            stroke.lies_on(&course)?;
        }
        let text = stroke.over(self.bench.text(Field::Paint))?;
        if text.chars().count() > Field::Paint.longest() {
            return Err(StrokeFault::TooLong);
        }
        let mut bench = self.bench.clone();
        bench.write(Field::Paint, &text);
        Ok(bench)
    }

    /// Says why a file or a kept course is not taken.
    pub fn refuse(&mut self, name: &str, why: FileFault) -> Update {
        self.take_own(name, Err(CourseFault::File(why)))
    }

    fn take_own(&mut self, name: &str, own: Result<OwnCourse, CourseFault>) -> Update {
        match own {
            Err(why) => {
                let refused = Some(Refusal::File(name.to_owned(), why));
                self.with_room(LapRoom { refused, ..self.room().clone() })
            }
            Ok(own) => {
                self.remember(None);
                let room = LapRoom { own: Some(Rc::new(own)), refused: None, ..self.room().clone() };
                self.set_room(room);
                let mut bench = self.bench.clone();
                bench.write(Field::Course, OWN_COURSE);
                // The part that was used of another file is none of this one.
                bench.write(Field::TrackFrom, "");
                bench.write(Field::TrackTo, "");
                self.change(bench)
            }
        }
    }

    /// Name of the course that is ridden; none while its file is still to be chosen.
    #[must_use]
    pub fn course_name(&self) -> Option<&str> {
        match self.good.lap.choice {
            CourseChoice::Demo(demo) => Some(words::course::demo(demo)),
            CourseChoice::Own => self.room().own.as_ref().map(|own| own.name.as_str()),
            CourseChoice::Sketch => Some(words::course::MINE),
        }
    }

    /// Name and rows of the course as it is ridden; none while its file is still to be chosen, or is no course.
    #[must_use]
    pub fn course(&self) -> Option<(String, String)> {
        let name = self.course_name().map(|name| if name.is_empty() { words::course::MINE } else { name })?;
        if self.good.lap.fault(self.room().own.as_deref()).is_some() {
            return None;
        }
        Some((name.to_owned(), self.lap_question().course.sketch()))
    }

    /// The bench with the course that is ridden as a sketch, everything painted over it included. A recorded one is put in
    /// in fewer stretches; one that is still too long is left where it is. Either is said.
    pub(crate) fn with_course_sketched(&mut self) -> Bench {
        let (inputs, mut bench) = (&self.good.lap, self.bench.clone());
        let Some(course) = inputs.course(self.room().own.as_deref()) else { return bench };
        let course = inputs.painted(course);
        let is_recorded = inputs.choice == CourseChoice::Own;
        let most = Sketched::most(&course);
        let (sketch, sketched) = if fits(&course) && !(is_recorded && course.segments().len() > most) {
            (course, None)
        } else {
            let sketched = Sketched::of(&course, most);
            (sketched.joined.course.clone(), Some(Rc::new(sketched)))
        };
        if !fits(&sketch) {
            self.set_room(LapRoom { refused: Some(Refusal::Sketch), ..self.room().clone() });
            return bench;
        }
        self.set_room(LapRoom { sketched, refused: None, ..self.room().clone() });
        bench.write(Field::Sketch, &sketch.sketch());
        bench.write(Field::Paint, "");
        bench.write(Field::Course, SKETCH_COURSE);
        bench
    }

    /// What was on the desk one step back; the course from a file of then is at hand again, if there was one.
    pub(crate) fn back(&mut self) -> (Bench, Scenario) {
        let Some((bench, good, own)) = self.history.back() else {
            return (self.bench.clone(), self.good.clone());
        };
        let at_hand = self.room().own.as_ref();
        let restored = own.map(|own| own.restored(at_hand)).transpose();
        let (own, refused) = match restored {
            Ok(own) => (own.or_else(|| at_hand.cloned()), None),
            Err(name) => (None, Some(Refusal::Gone(name))),
        };
        self.set_room(LapRoom { own, refused, ..self.room().clone() });
        (bench, good)
    }

    /// Cuts the track at hand to its first lap, or takes it whole again; the bench stays.
    pub(crate) fn with_first_lap(&mut self, first_lap: bool) -> Option<Bench> {
        let own = self.room().own.as_ref()?.cut(first_lap)?;
        let room = LapRoom { own: Some(Rc::new(own)), refused: None, ..self.room().clone() };
        self.set_room(room);
        Some(self.bench.clone())
    }

    /// Begins a search; gives the number of set-ups to be tried.
    pub fn search(&mut self) -> (usize, Update) {
        let found = Found::of(&self.good.basis(), self.room().own.as_deref());
        (found.all.len(), self.with_found_now(found))
    }

    /// What the course from a file was smoothed over, where it is the one that is ridden.
    #[must_use]
    pub fn smoothing_m(&self) -> Option<f64> {
        self.room().own.as_ref().filter(|_| self.good.lap.choice == CourseChoice::Own)?.smoothing_m
    }

    /// This worker's part of the search round the course of these rows, whatever course the bench names: a link does not
    /// carry one from a file.
    #[must_use]
    pub fn hunt(&self, rows: &str, worker: usize, workers: usize) -> Option<Hunt> {
        Hunt::new(&self.good.basis(), &rows.parse().ok()?, worker, workers).ok()
    }

    /// Takes what workers found since, and puts it in order.
    pub fn take_found(&mut self, rows: &[f64]) -> Update {
        let mut found = self.found();
        found.take(rows);
        found.rank();
        self.with_found_now(found)
    }

    /// Numbers of the set-ups that are to be planned in full, none where all have been.
    #[must_use]
    pub fn to_plan(&self) -> Vec<usize> {
        self.room().found.as_ref().map(|found| found.to_plan()).unwrap_or_default()
    }

    /// Numbers of the set-ups that are to be ridden once more.
    #[must_use]
    pub fn leading(&self) -> Vec<usize> {
        self.room().found.as_ref().map(|found| found.leading()).unwrap_or_default()
    }

    /// Times of these set-ups, in seconds.
    #[must_use]
    pub fn found_times_s(&self, numbers: &[usize]) -> Vec<f64> {
        self.room().found.as_ref().map(|found| found.times_s(numbers)).unwrap_or_default()
    }

    /// Ends the search, with what the leading ones gain over the first.
    pub fn end_search(&mut self, finals: Vec<TimeBand>) -> Update {
        let found = self.found();
        let finals = found.leading().into_iter().zip(finals).collect();
        self.with_found_now(Found { finals, done: true, ..found })
    }

    fn found(&self) -> Found {
        let room = self.room();
        room.found.as_deref().cloned().unwrap_or_else(|| Found::of(&self.good.basis(), room.own.as_deref()))
    }

    fn with_found_now(&mut self, found: Found) -> Update {
        self.with_room(LapRoom { found: Some(Rc::new(found)), ..self.room().clone() })
    }

    /// The bench with a set-up that was found, by its number.
    pub(crate) fn with_found(&self, number: &str, [rings, cassette]: [Field; 2]) -> Option<Bench> {
        let drivetrain = *self.room().found.as_ref()?.all.get(number.parse::<usize>().ok()?)?;
        let mut bench = self.bench.clone();
        bench.write(rings, &drivetrain.chainset.to_string());
        bench.write(cassette, &drivetrain.cassette.to_string());
        Some(bench)
    }

    fn room(&self) -> &LapRoom {
        &self.report.lap
    }

    fn with_room(&mut self, room: LapRoom) -> Update {
        self.set_room(room);
        self.refresh(Vec::new(), false)
    }

    /// Puts it in place without showing it: what comes next does.
    fn set_room(&mut self, room: LapRoom) {
        Rc::make_mut(&mut self.report).lap = room;
    }

    fn change(&mut self, bench: Bench) -> Update {
        let mut update = self.lay_out(bench, self.good.clone());
        update.link = Some(self.link());
        update
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gear_math::course::Step;
    use gear_math::rider::EffortPrice;
    use gear_math::{Bike, Lap, LapSetup};

    const BANK: &str = "200; 0; firm grass\n30; 14; firm grass\n90; -4; firm grass";

    fn on_bank() -> Desk {
        let mut desk = Desk::default();
        edited(&mut desk, &[(Field::Course, "sketch"), (Field::Sketch, BANK)]);
        desk
    }

    fn answer(update: &Update) -> &str {
        &update.html.iter().find(|(id, _)| id == "lap-answer").unwrap().1
    }

    /// What workers do, and the page itself where there are none, is one and the same lap.
    #[test]
    fn workers_ride_the_lap_that_the_page_would() {
        let mut desk = on_bank();
        let rows = desk.lap_order().unwrap();
        let errand = Scenario::of_link(&desk.link()).errand(&rows).unwrap();
        let [a, b] = Side::BOTH.map(|side| errand.plan(side));
        let told = desk.take_plans([&a, &b]).unwrap();
        assert!(answer(&told).contains("Looking closer: at first sight "), "{}", answer(&told));
        let mut alone = on_bank();
        alone.lap(false);
        assert_eq!(desk.room().laps.as_ref().unwrap().laps, alone.room().laps.as_ref().unwrap().laps);

        let draws =
            |numbers: std::ops::Range<usize>| numbers.flat_map(|it| errand.draw(it)).collect::<Vec<f64>>();
        desk.take_draws(&draws(0..7));
        assert!(desk.room().laps.as_ref().unwrap().settled.is_none(), "too few to say anything");
        let told = desk.take_draws(&draws(6..8)).unwrap();
        assert!(told.html.iter().all(|(id, _)| id != "lap-why"), "it is folded away");
        desk.unfold("fold-lap-why", true);
        let why = desk.write_unfolded(None).html.pop().unwrap().1;
        assert!(why.contains("8 of 64 so far"), "{why}");
        assert!(desk.lap_order().is_some(), "56 are left");
        desk.take_draws(&draws(8..64));
        assert!(desk.lap_order().is_none());
        assert!(desk.take_plans([&a[1..], &b]).is_none(), "half a plan is none");
    }

    #[test]
    fn an_even_lap_that_a_worker_rode_is_that_of_the_page() {
        let mut desk = on_bank();
        assert!(desk.even_order().is_none(), "on a reserve it is another order");
        edited(&mut desk, &[(Field::LapModel, "steady")]);
        let rows = desk.even_order().unwrap();
        assert!(desk.even_order().is_none(), "it is being ridden");
        let mut errand = Scenario::of_link(&desk.understood()).even_errand(&rows).unwrap();
        while errand.go_on() {}
        let found = errand.numbers();
        let mut at_once = on_bank();
        edited(&mut at_once, &[(Field::LapModel, "steady")]);
        at_once.lap(true);
        assert!(desk.take_even(&found[1..]).is_none());
        desk.take_even(&found).unwrap();
        let laps =
            |desk: &Desk| desk.room().laps.as_ref().map(|laps| (laps.laps.clone(), laps.settled.clone()));
        assert_eq!(laps(&desk), laps(&at_once));
        assert!(desk.even_order().is_none(), "nothing is left to do");
        edited(&mut desk, &[(Field::Power, "260")]);
        assert!(desk.even_order().is_some());
        edited(&mut desk, &[(Field::Power, "270")]);
        assert!(desk.take_even(&found).is_none(), "what is late is of the lap before");
        assert!(desk.even_order().is_some(), "another lap is ridden anew");
    }

    #[test]
    fn plans_that_are_late_do_not_stand_for_an_even_lap() {
        let mut desk = on_bank();
        let rows = desk.lap_order().unwrap();
        let errand = Scenario::of_link(&desk.understood()).errand(&rows).unwrap();
        let plans = Side::BOTH.map(|side| errand.plan(side));
        let plans = plans.each_ref().map(Vec::as_slice);
        edited(&mut desk, &[(Field::LapModel, "steady")]);
        assert!(desk.take_plans(plans).is_none());
        edited(&mut desk, &[(Field::LapModel, "reserve")]);
        assert!(desk.take_plans(plans).is_some());
    }

    #[test]
    fn an_even_lap_settles_ride_by_ride_as_it_does_at_once() {
        let mut desk = on_bank();
        assert!(!desk.settle_on(), "on a reserve workers do it");
        edited(&mut desk, &[(Field::LapModel, "steady")]);
        desk.lap(false);
        assert!(desk.settle_on() && desk.settle_on());
        edited(&mut desk, &[(Field::Power, "260")]);
        let rides = (0..).take_while(|_| desk.settle_on()).count();
        assert!(rides > 30, "{rides}, those of before do not count");
        let slowly = desk.lap(true).unwrap();
        let settled = |desk: &Desk| desk.room().laps.as_ref().unwrap().settled.clone().unwrap();
        assert!(!desk.settle_on() && desk.lap(true).is_none());
        let mut at_once = on_bank();
        edited(&mut at_once, &[(Field::LapModel, "steady"), (Field::Power, "260")]);
        at_once.lap(true);
        assert_eq!(settled(&desk), settled(&at_once));
        assert!(slowly.html.iter().any(|(id, _)| id == "lap-answer"));
    }

    #[test]
    fn a_lap_of_before_is_said_to_be_until_the_one_of_now_has_come() {
        let mut desk = on_bank();
        desk.lap(false);
        assert!(desk.lap_order().is_some());
        let told = edited(&mut desk, &[(Field::Power, "260")]);
        assert!(answer(&told).contains("Working it out for what you changed"), "{}", answer(&told));
        let late = desk.take_draws(&[]).unwrap();
        assert!(late.html.is_empty(), "what comes late changes nothing");
        desk.lap_order();
        assert!(desk.take_draws(&[]).is_none(), "the lap of now is not there yet");
        let told = desk.lap(false).unwrap();
        assert!(!answer(&told).contains("Working it out"), "{}", answer(&told));
        edited(&mut desk, &[(Field::LapModel, "steady")]);
        assert!(desk.lap_order().is_none(), "at a steady power the page rides it");
    }

    /// The climb stands at the usual price until the lap of the same bench has told its own, and does not keep one of before.
    #[test]
    fn a_climb_takes_the_price_of_the_lap_of_now() {
        fn prices(desk: &Desk) -> [EffortPrice; 2] {
            desk.report.ride.sides.each_ref().map(|side| side.paced.spending.price)
        }
        fn of_laps(desk: &Desk) -> [EffortPrice; 2] {
            let laps = &desk.room().laps.as_ref().unwrap().laps;
            laps.each_ref().map(|lap| EffortPrice::new(lap.reserve.as_ref().unwrap().price_s_per_j).unwrap())
        }
        let mut desk = on_bank();
        let usual = [desk.good.ride.account().usual_price(); 2];
        assert_eq!(prices(&desk), usual);
        desk.lap(false);
        assert_eq!(prices(&desk), of_laps(&desk));
        assert!(prices(&desk) != usual && prices(&desk)[0] != prices(&desk)[1], "each bike has its own");
        let told = edited(&mut desk, &[(Field::Slope, "8")]);
        assert_eq!(prices(&desk), of_laps(&desk), "the slope asked about is none of the lap's");
        assert!(told.html.iter().any(|(id, _)| id == "ride-answer"));
        let fresh = Report::of(&desk.good);
        assert_eq!(format!("{:?}", desk.report.ride), format!("{:?}", fresh.ride));
        edited(&mut desk, &[(Field::SecondsLost, "4")]);
        assert_eq!(prices(&desk), usual, "another rider may have another price");
        desk.lap(false);
        assert_eq!(prices(&desk), of_laps(&desk));
        edited(&mut desk, &[(Field::LapModel, "steady")]);
        assert_eq!(prices(&desk), [EffortPrice::NONE; 2], "an even lap has none");
    }

    #[test]
    fn a_climb_is_greyed_where_the_price_to_come_may_turn_its_advice() {
        let mut desk = on_bank();
        desk.lap(false);
        let greyed = |slope: &str, desk: &mut Desk| {
            let html = edited(desk, &[(Field::Slope, slope)]).html;
            let (_, answer) = html.into_iter().find(|(id, _)| id == "ride-answer").unwrap();
            assert_eq!(answer.contains("stale"), desk.report.ride.may_turn(), "{answer}");
            answer.contains("stale")
        };
        let slopes: Vec<String> = (8..60).map(|half| (f64::from(half) / 2.0).to_string()).collect();
        assert!(slopes.iter().all(|slope| !greyed(slope, &mut desk)), "nothing is awaited");
        edited(&mut desk, &[(Field::BodyMass, "61")]);
        let open = slopes.iter().filter(|slope| greyed(slope, &mut desk)).count();
        assert!((1..20).contains(&open), "{open} of {}", slopes.len());
    }

    fn edited(desk: &mut Desk, edits: &[(Field, &str)]) -> Update {
        let edits: Vec<_> =
            edits.iter().map(|(field, text)| (field.spec().key.to_owned(), (*text).to_owned())).collect();
        desk.edit(&edits)
    }

    #[test]
    fn workers_ride_the_course_from_the_file() {
        let mut desk = Desk::default();
        desk.take_rows("Mine", "500; 0; mud\n140; 5; firm grass", None, Some("a course.json"));
        edited(
            &mut desk,
            &[(Field::LapModel, "steady"), (Field::Paint, "20; 24; foot 2\n300; 340; corner 12")],
        );
        let (name, rows) = desk.course().unwrap();
        assert_eq!(name, "Mine");
        let mut worker = Desk::default();
        worker.open(&desk.link());
        assert_eq!(worker.course(), None, "a link does not carry the file");
        assert!(worker.hunt("", 0, 1).is_none(), "without a course there is nothing to search");
        let question = LapQuestion::of(&desk.good.basis(), desk.room().own.as_deref());
        let [setup, _] = question.setups;
        for (_, found) in worker.hunt(&rows, 0, 1).unwrap().advance(3) {
            let avoid = desk.good.cages.avoid(&found.drivetrain);
            let setup =
                LapSetup { bike: Bike { drivetrain: found.drivetrain, avoid, ..setup.bike }, ..setup };
            let lap = Lap::in_steps(&question.course, &setup, Step::new(1.0).unwrap()).unwrap();
            assert!((lap.time_s - found.time_s).abs() < 1e-6, "{} not {}", found.time_s, lap.time_s);
        }
    }

    #[test]
    fn undo_brings_the_file_before_back() {
        let mut desk = Desk::default();
        let name = |desk: &Desk| desk.course().unwrap().0;
        desk.take_rows("First", "500; 0; mud", None, Some("a course.json"));
        desk.take_rows("Second", "700; 0; tarmac", None, Some("a course.json"));
        assert_eq!(name(&desk), "Second");
        desk.act("undo");
        assert_eq!(name(&desk), "First");
        desk.act("undo");
        assert_eq!((name(&desk).as_str(), desk.history.is_empty()), ("Autumn meadow", true));
        assert!(desk.room().own.is_some(), "a file stays at hand for whoever chooses it again");
    }

    /// Points of a file of this name that lead north, so many of them.
    fn northward(points: u32) -> Vec<f64> {
        let point = |place: u32| {
            format!("<trkpt lat='{:.6}' lon='6.1'><ele>10</ele></trkpt>", 50.0 + f64::from(place) * 1e-5)
        };
        let points: String = (0..points).map(point).collect();
        sent_track::read(&format!("<gpx version='1.1'><trk><trkseg>{points}</trkseg></trk></gpx>"))
    }

    #[test]
    fn steps_share_the_points_of_a_file_and_undo_uses_them_as_they_were_used() {
        let mut desk = Desk::default();
        desk.take_track("Ride.gpx", northward(500));
        let before = desk.course();
        let points =
            |desk: &Desk| Rc::clone(&desk.room().own.as_ref().unwrap().track.as_ref().unwrap().0.points);
        let first = points(&desk);
        for smoothing in ["25", "60", "80"] {
            edited(&mut desk, &[(Field::Smoothing, smoothing)]);
            desk.pause();
        }
        edited(&mut desk, &[(Field::TrackTo, "300")]);
        assert!(Rc::ptr_eq(&points(&desk), &first) && desk.course() != before);
        for _ in 0..4 {
            desk.act("undo");
        }
        assert!(Rc::ptr_eq(&points(&desk), &first));
        assert_eq!(desk.course(), before);
    }

    #[test]
    fn what_undo_has_no_room_for_is_said() {
        let mut desk = Desk::default();
        let large = northward(40_000);
        let room: usize = 48 << 20;
        let most = room / size_of_val(large.as_slice());
        for number in 0..most + 4 {
            desk.take_track(&format!("{number}.gpx"), large.clone());
        }
        let refused = |desk: &Desk| desk.room().refused.clone();
        for number in (3..most + 3).rev() {
            desk.act("undo");
            assert_eq!((desk.course_name(), refused(&desk)), (Some(number.to_string().as_str()), None));
        }
        let told = desk.act("undo").unwrap();
        assert_eq!((desk.course_name(), desk.course()), (None, None), "no other file stands in");
        let said = &told.html.iter().find(|(id, _)| id == "lap-course").unwrap().1;
        assert!(said.contains("“2.gpx” is no longer at hand"), "{said}");
        for _ in 0..3 {
            desk.act("undo");
        }
        assert_eq!((desk.course_name(), refused(&desk)), (Some("Autumn meadow"), None));
    }

    #[test]
    fn a_part_of_one_file_is_none_of_the_next() {
        let point = |place: u32| {
            format!("<trkpt lat='{:.6}' lon='6.1'><ele>10</ele></trkpt>", 50.0 + f64::from(place) * 1e-4)
        };
        let points: String = (0..100).map(point).collect();
        let text = format!("<gpx version='1.1'><trk><trkseg>{points}</trkseg></trk></gpx>");
        let mut desk = Desk::default();
        let course = |update: Update| update.html.into_iter().find(|(id, _)| id == "lap-course").unwrap().1;
        desk.take_track("First", sent_track::read(&text));
        edited(&mut desk, &[(Field::TrackFrom, "200")]);
        let said = edited(&mut desk, &[(Field::TrackTo, "600")]);
        assert!(course(said).contains("from 200\u{a0}m to 600\u{a0}m of the track"));
        let said = desk.take_track("Second", sent_track::read(&text));
        assert_eq!((desk.bench.text(Field::TrackFrom), desk.bench.text(Field::TrackTo)), ("", ""));
        assert!(!course(said).contains("of the track"));
    }

    fn paints(desk: &mut Desk, stroke: &str) -> (bool, String) {
        let update = desk.paint(stroke);
        let (id, said) = update.html.last().unwrap();
        assert_eq!(id, "brush-says");
        (update.undo && update.link.is_some(), said.clone())
    }

    #[test]
    fn what_is_painted_stands_in_the_field_and_is_one_step_for_undo() {
        let mut desk = Desk::default();
        let before = desk.bench.clone();
        assert!(paints(&mut desk, "310; 355 m; deep mud").0);
        assert!(paints(&mut desk, "340; 400; mud").0);
        assert_eq!(desk.bench.text(Field::Paint), "310; 340; deep mud\n340; 400; mud");
        assert_eq!(desk.good.lap.changes(), 2);
        desk.act("undo");
        assert_eq!(desk.bench.text(Field::Paint), "310; 355; deep mud");
        desk.act("undo");
        assert_eq!(desk.bench, before);
    }

    #[test]
    fn why_nothing_is_painted_is_told_and_nothing_has_changed() {
        let mut desk = Desk::default();
        edited(&mut desk, &[(Field::Paint, "310; 355; lava")]);
        let before = desk.bench.clone();
        for (stroke, said) in [
            ("; 20; mud", "Say in metres"),
            ("20; 10; mud", "Say in metres"),
            ("10; 20; foot 99", "foot 2”, 0 to 60 s"),
            ("3000; 3100; mud", "Nothing of the course lies there"),
            ("10; 20; mud", "Line 1: type from m"),
        ] {
            let (done, words) = paints(&mut desk, stroke);
            assert!(!done && words.contains(said), "{words}");
        }
        assert_eq!(desk.bench, before);
        let full = "1; 2; mud\n".repeat(400);
        edited(&mut desk, &[(Field::Course, "meadow"), (Field::Paint, &full[..3990])]);
        assert!(paints(&mut desk, "10; 20; deep mud").1.starts_with("This is longer than the field holds"));
    }

    #[test]
    fn the_chooser_says_what_is_ridden_and_where_it_comes_from() {
        let mut desk = Desk::default();
        let mut said = |act: &dyn Fn(&mut Desk) -> Update| {
            let html = act(&mut desk).html;
            html.into_iter().find(|(id, _)| id == "lap-loaded").unwrap().1.replace('\u{a0}', " ")
        };
        let told = said(&|desk| desk.open(""));
        assert!(
            told.contains("Autumn meadow</b>: 3.00 km with") && told.contains("of climbing, invented."),
            "{told}"
        );
        let rows = "500; 2; mud";
        let told = said(&|desk| desk.take_rows("Mine", rows, None, Some("a course.json")));
        assert!(
            told.contains("Mine</b>: 0.50 km with 10 m of climbing, from the file “a course.json”."),
            "{told}"
        );
        let told = said(&|desk| desk.take_rows("Mine", rows, None, None));
        assert!(told.contains("kept in this browser."), "{told}");
        let told = said(&|desk| desk.paint("10; 20; mud"));
        assert!(told.contains("kept in this browser, with 1 change on it."), "{told}");
        let told = said(&|desk| edited(desk, &[(Field::Course, "sketch")]));
        assert!(told.contains("The sketch</b>: "), "{told}");
    }

    #[test]
    fn paint_beyond_a_course_from_a_file_is_told() {
        let mut desk = Desk::default();
        desk.take_rows("Mine", "500; 0; mud", None, Some("a course.json"));
        let wrong = |desk: &mut Desk, paint| {
            let edits = [(Field::Paint.spec().key.to_owned(), String::from(paint))];
            desk.edit(&edits).wrong
        };
        assert_eq!(wrong(&mut desk, "400; 480; tarmac"), Vec::<&str>::new());
        assert_eq!(wrong(&mut desk, "500; 580; tarmac"), ["paint"]);
        edited(&mut desk, &[(Field::Course, "meadow")]);
        assert_eq!(wrong(&mut desk, "500; 580; tarmac "), Vec::<&str>::new());
    }

    #[test]
    fn a_recorded_lap_goes_into_the_sketch_and_its_link_opens_it_again() {
        let hill = |at: f64| 6.0 * (at / 110.0).sin() + 2.0 * (at / 31.0).cos();
        let row = |place: u32| {
            let at = f64::from(place) * 5.01;
            format!("5.01; {}; firm grass", 100.0 * (hill(at + 5.01) - hill(at)) / 5.01)
        };
        let rows: Vec<String> = (0..565).map(row).collect();
        let mut desk = Desk::default();
        desk.take_rows("Recorded", &rows.join("\n"), None, Some("a course.json"));
        edited(&mut desk, &[(Field::Paint, "300; 420; deep mud\n500; 512; corner 14")]);
        let whole = LapQuestion::of(&desk.good.basis(), desk.room().own.as_deref()).course;
        let update = desk.act("sketch-it").unwrap();
        let sketched = LapQuestion::of(&desk.good.basis(), desk.room().own.as_deref()).course;
        assert!(sketched.segments().len() <= Sketched::MOST && desk.good.lap.choice == CourseChoice::Sketch);
        assert!((sketched.length_m() - whole.length_m()).abs() < 0.1);
        assert!((sketched.climb_m() - whole.climb_m()).abs() < 0.1 * whole.climb_m());
        let said = update.html.iter().find(|(id, _)| id == "lap-course").unwrap();
        assert!(said.1.contains("stretches in place of 56"), "{}", said.1);
        let link = desk.link();
        assert!(link.len() < 1900, "{}", link.len());
        let mut other = Desk::default();
        other.open(&link);
        assert_eq!(other.good.lap.sketch, desk.good.lap.sketch);
        edited(&mut desk, &[(Field::Sketch, "100; 0; mud")]);
        assert_ne!(desk.room().sketched.as_ref().map(|it| &it.joined.course), Some(&*desk.good.lap.sketch));
    }
}
