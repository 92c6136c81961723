//! What the desk does about a file with everything in it.

use crate::bench::field::Field;
use crate::bench::filed::FiledBench;
use crate::bench::offered::OWN_COURSE;
use crate::lap::own_course::OwnCourse;
use crate::page::desk::{Desk, Update};
use crate::page::scenario::Scenario;
use crate::page::words::file as words;
use crate::rack::from_scripts::RackFileFault;
use crate::rack::said::Said;
use std::rc::Rc;

/// What a file holds beside bikes.
#[derive(Debug, Default)]
pub struct OpenedFile {
    /// Its name.
    pub name: String,
    /// Its bench.
    pub bench: FiledBench,
    /// Name, rows and smoothing of the rider's own course that was ridden; none where it was another.
    pub ridden: Option<(String, String, Option<f64>)>,
    /// Courses that the browser now keeps beside others, and those that it did not.
    pub courses: [usize; 2],
    /// Names in it that say nothing.
    pub strange: Vec<String>,
}

impl Desk {
    /// The bench as texts.
    #[must_use]
    pub fn filed(&self) -> FiledBench {
        FiledBench::of(&self.bench)
    }

    /// Name and rows of the rider's own course, nothing painted over it; none while another is ridden.
    #[must_use]
    pub fn own_course(&self) -> Option<(String, String)> {
        let own = self.report.lap.own.as_ref()?;
        (self.bench.text(Field::Course) == OWN_COURSE).then(|| (own.name.clone(), own.course.sketch()))
    }

    /// Puts the bench of a file in the place of the one that is there, which undo brings back.
    pub fn open_file(&mut self, file: OpenedFile) -> Update {
        self.remember(None);
        self.pause();
        let (mut strange, mut cut) = (file.strange, Vec::new());
        let bench = file.bench.bench(&mut strange, &mut cut);
        let [kept, unkept] = file.courses;
        self.notices = vec![words::opened(&file.name, kept)];
        if unkept > 0 {
            self.notices.push(words::unkept(unkept));
        }
        let mut room = self.report.lap.clone();
        if bench.text(Field::Course) == OWN_COURSE {
            let own = file.ridden.map(|(name, rows, smoothing_m)| {
                OwnCourse::from_rows(&name, &rows, smoothing_m, Some(&file.name))
            });
            if matches!(own, Some(Err(_))) {
                self.notices.push(words::NO_COURSE.to_owned());
            }
            (room.own, room.refused) = (own.and_then(Result::ok).map(Rc::new), None);
            Rc::make_mut(&mut self.report).lap = room;
        }
        strange.sort_unstable();
        strange.dedup();
        if !strange.is_empty() {
            self.notices.push(words::strange(&strange));
        }
        if !cut.is_empty() {
            self.notices.push(words::cut(&cut));
        }
        let mut update = self.lay_out(bench, Scenario::default());
        update.link = Some(self.link());
        update
    }

    /// Says why a file is not opened.
    pub fn refuse_file(&mut self, name: &str, why: RackFileFault) -> Update {
        self.notices = vec![words::refused(name, why)];
        self.refresh(Vec::new(), false)
    }

    /// Says that all was saved under this name.
    pub fn file_saved(&mut self, name: &str) -> Update {
        self.rack.say(Said::Saved(name.to_owned()));
        self.refresh(Vec::new(), false)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_brings_bench_and_course_and_undo_takes_them_back() {
        let mut desk = Desk::default();
        desk.open("#r=3&ra=46/30&pa=100; 120; mud");
        desk.take_rows("Hill", "120; 1.5; firm grass\n30; -6; mud", Some(40.0), None);
        let (saved, own) = (desk.filed(), desk.own_course().unwrap());
        assert!(saved.mine.contains(&("rings-a".to_owned(), "46/30".to_owned())));
        assert!(!own.1.contains("120; mud"), "{own:?}");

        let mut other = Desk::default();
        other.open("#r=3&rb=38");
        let before = other.link();
        let file = OpenedFile {
            name: "all.json".to_owned(),
            bench: saved,
            ridden: Some((own.0.clone(), own.1.clone(), None)),
            courses: [2, 1],
            strange: vec!["colour".to_owned()],
        };
        let update = other.open_file(file);
        assert_eq!(update.link, Some(desk.link()));
        assert_eq!((other.course_name(), other.own_course()), (Some("Hill"), Some(own)));
        let (_, notices) = update.html.iter().find(|(id, _)| id == "notices").unwrap();
        for said in ["“all.json”", "2\u{a0}courses are added", "1\u{a0}course is not kept", "colour"] {
            assert!(notices.contains(said), "{said}: {notices}");
        }
        other.act("undo").unwrap();
        assert_eq!((other.link(), other.own_course()), (before, None));
    }

    #[test]
    fn a_course_that_is_none_is_said_and_the_bench_is_opened() {
        let mut desk = Desk::default();
        desk.open("#r=3&co=own&ra=46/30");
        let file = OpenedFile {
            bench: desk.filed(),
            ridden: Some(("Hill".to_owned(), "up; down".to_owned(), None)),
            ..OpenedFile::default()
        };
        desk.open_file(file);
        assert_eq!((desk.bench.text(Field::RingsA), desk.own_course()), ("46/30", None));
        assert!(desk.notices.contains(&words::NO_COURSE.to_owned()));
        let link = desk.link();
        desk.refuse_file("later.json", RackFileFault::OtherVersion);
        assert_eq!(desk.link(), link);
        assert!(desk.notices[0].contains("of a version that this page does not know"));
    }
}
