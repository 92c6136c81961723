//! What the desk does about the lap: it is worked out apart from everything else, and searched by workers.

use crate::bench::Bench;
use crate::desk::{Desk, Update};
use crate::field::Field;
use crate::report::{Found, Hunt, LapQuestion, LapReport, LapRoom, OwnCourse, Report};
use crate::scenario::CourseChoice;
use gear_math::{TimeBand, TrackOptions};
use std::rc::Rc;

impl Desk {
    /// Works the lap out, in coarse steps or until it has settled; `None` when that was done before.
    pub fn lap(&mut self, settled: bool) -> Option<Update> {
        let question = LapQuestion::of(&self.good, self.room().own.as_deref());
        let known = self.room().laps.as_ref().filter(|laps| laps.question == question);
        if known.is_some_and(|laps| !settled || laps.settled.is_some()) {
            return None;
        }
        let laps = LapReport::of(question, settled).ok().map(Rc::new);
        Some(self.with_room(LapRoom { laps, ..self.room().clone() }))
    }

    /// Takes the text of a GPX file.
    pub fn take_track(&mut self, name: &str, text: &str) -> Update {
        let options = TrackOptions {
            smoothing: self.good.lap.smoothing,
            surface: self.good.lap.track_ground,
            first_lap: false,
        };
        self.take_own(name, OwnCourse::from_gpx(name, text.into(), options))
    }

    /// Takes a course that was kept: its name and its stretches, a row each.
    pub fn take_rows(&mut self, name: &str, rows: &str) -> Update {
        self.take_own(name, OwnCourse::from_rows(name, rows))
    }

    /// Says why a file or a kept course is not taken.
    pub fn refuse(&mut self, name: &str, why: &str) -> Update {
        self.take_own(name, Err(why.to_owned()))
    }

    fn take_own(&mut self, name: &str, own: Result<OwnCourse, String>) -> Update {
        match own {
            Err(why) => {
                let refused = Some(format!("“{name}” is not taken: {why}. The course stays as it was."));
                self.with_room(LapRoom { refused, ..self.room().clone() })
            }
            Ok(own) => {
                let room = LapRoom { own: Some(Rc::new(own)), refused: None, ..self.room().clone() };
                self.set_room(room);
                let mut bench = self.bench.clone();
                bench.write(Field::Course, "own");
                self.change(bench)
            }
        }
    }

    /// The course as it is ridden, as rows, and its name.
    #[must_use]
    pub fn course(&self) -> (String, String) {
        let room = self.room();
        let own = room.own.as_ref().filter(|_| self.good.lap.choice == CourseChoice::Own);
        let name = match (self.good.lap.choice, own) {
            (CourseChoice::Demo(demo), _) => demo.name().to_owned(),
            (_, Some(own)) => own.name.clone(),
            _ => "My course".to_owned(),
        };
        (name, LapQuestion::of(&self.good, own.map(|own| &**own)).course.sketch())
    }

    /// The bench with the course that is ridden as a sketch, everything painted over it included; too long a course
    /// is left where it is, and said to be.
    pub(super) fn with_course_sketched(&mut self) -> Bench {
        let rows = self.course().1;
        let mut bench = self.bench.clone();
        if rows.chars().count() > Field::Sketch.longest() {
            let room = LapRoom {
                refused: Some(
                    "The sketch cannot hold this course: it has too many stretches. Keep it or save it as a file."
                        .to_owned(),
                ),
                ..self.room().clone()
            };
            self.set_room(room);
            return bench;
        }
        bench.write(Field::Sketch, &rows);
        bench.write(Field::Paint, "");
        bench.write(Field::Course, "sketch");
        bench
    }

    /// Cuts the track at hand to its first lap, or takes it whole again; the bench stays.
    pub(super) fn with_first_lap(&mut self, first_lap: bool) -> Option<Bench> {
        let own = self.room().own.as_ref()?.cut(first_lap).ok()?;
        let room = LapRoom { own: Some(Rc::new(own)), refused: None, ..self.room().clone() };
        self.set_room(room);
        Some(self.bench.clone())
    }

    /// Begins a search; gives the number of set-ups to be tried.
    pub fn search(&mut self) -> (usize, Update) {
        let found = Found::of(&self.good, self.room().own.as_deref());
        (found.all.len(), self.with_found_now(found))
    }

    /// This worker's part of the search.
    #[must_use]
    pub fn hunt(&self, worker: usize, workers: usize) -> Option<Hunt> {
        Hunt::new(&self.good, self.room().own.as_deref(), worker, workers).ok()
    }

    /// Takes what workers found since, and puts it in order.
    pub fn take_found(&mut self, rows: &[f64]) -> Update {
        let mut found = self.found();
        found.take(rows);
        found.rank();
        self.with_found_now(found)
    }

    /// Numbers of the set-ups that are to be ridden once more.
    #[must_use]
    pub fn leading(&self) -> Vec<usize> {
        self.room().found.as_ref().map(|found| found.leading()).unwrap_or_default()
    }

    /// Ends the search, with what the leading ones gain over the first.
    pub fn end_search(&mut self, finals: Vec<TimeBand>) -> Update {
        let found = self.found();
        let finals = found.leading().into_iter().zip(finals).collect();
        self.with_found_now(Found { finals, done: true, ..found })
    }

    fn found(&self) -> Found {
        let room = self.room();
        room.found.as_deref().cloned().unwrap_or_else(|| Found::of(&self.good, room.own.as_deref()))
    }

    fn with_found_now(&mut self, found: Found) -> Update {
        self.with_room(LapRoom { found: Some(Rc::new(found)), ..self.room().clone() })
    }

    /// The bench with a set-up that was found, by its number.
    pub(super) fn with_found(&self, number: &str, [rings, cassette]: [Field; 2]) -> Option<Bench> {
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
        match Rc::get_mut(&mut self.report) {
            Some(report) => report.lap = room,
            None => self.report = Rc::new(Report { lap: room, ..Report::after(&self.good, &self.report) }),
        }
    }

    fn change(&mut self, bench: Bench) -> Update {
        self.history.remember(&self.bench, &self.good, None);
        let mut update = self.lay_out(bench, self.good.clone());
        update.link = Some(self.link());
        update
    }
}
