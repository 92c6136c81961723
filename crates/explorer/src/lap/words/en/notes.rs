//! Files, kept courses and a search, while they are in the browser's hands.

use crate::lap::from_scripts::{CourseNote, FileFault, SearchNote};
use gear_math::course::GpxError;

const NO_COURSE: &str = "There is no course to ride yet: first choose the file of one that can be used.";

/// Why a file or a kept course is not taken, within a sentence.
pub(crate) fn fault(fault: FileFault) -> String {
    let words = match fault {
        FileFault::TooLarge => return GpxError::TooLarge.to_string(),
        FileFault::Unreadable => "the file cannot be read",
        FileFault::Foreign => "it is neither GPX nor one of our courses",
        FileFault::OtherVersion => "it is not one of our courses, or of a later version",
    };
    words.to_owned()
}

/// What became of a course of this name.
pub(crate) fn course(note: CourseNote, name: &str) -> String {
    match note {
        CourseNote::None => NO_COURSE.to_owned(),
        CourseNote::Saved => format!("Saved as “{name}”."),
        CourseNote::Kept => format!("Kept in this browser as “{name}”."),
        CourseNote::Painted => {
            "Your changes on its stretches are part of what was kept: they need not be made again.".to_owned()
        }
        CourseNote::OfAnother => format!(
            "Another course is kept as “{name}”: keep once more to put this one in its place, or give it another name."
        ),
        CourseNote::Lost => {
            format!("“{name}” is no longer kept: it was forgotten elsewhere. The course stays as it was.")
        }
        CourseNote::Forgotten => format!("“{name}” is forgotten."),
        CourseNote::Reading => format!("Reading “{name}”…"),
        CourseNote::Forbidden => {
            "This browser keeps nothing for this page: save the course as a file.".to_owned()
        }
    }
}

/// How it stands with a search.
pub(crate) const fn search(note: SearchNote) -> &'static str {
    match note {
        SearchNote::FieldsWrong => "First put right the fields that are marked.",
        SearchNote::NoCourse => NO_COURSE,
        SearchNote::PlanningBest => "Planning the best of them in full",
        SearchNote::RidingBest => "Riding the best once more, with every doubt moved",
        SearchNote::NoWorkers => "This browser does not let the page search in the background.",
        SearchNote::NoLap => "The lap cannot be worked out for this rider and course.",
    }
}

/// How far it is.
pub(crate) fn search_left(tried: usize, total: usize, seconds: f64) -> String {
    format!("{tried} of {total}, about {seconds} s to go")
}
