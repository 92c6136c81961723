//! What became of a file with everything in it.

use crate::rack::from_scripts::RackFileFault;
use crate::words::{counted, listed};

/// Names that a sentence lists; more are counted.
const NAMED: usize = 6;

/// A file was opened, with courses that the browser now keeps.
pub(crate) fn opened(file: &str, courses: usize) -> String {
    let courses = match courses {
        0 => String::new(),
        _ => {
            format!(" {} added to those kept in this browser.", counted(courses, "course is", "courses are"))
        }
    };
    format!("The bench is that of “{file}”. Undo brings back yours.{courses}")
}

/// Courses that the browser did not keep.
pub(crate) fn unkept(courses: usize) -> String {
    format!(
        "{} not kept: this browser’s storage is full or switched off, or the file holds very many.",
        counted(courses, "course is", "courses are")
    )
}

/// The course that was ridden cannot be read.
pub(crate) const NO_COURSE: &str = "The course that was ridden cannot be read: choose another.";

/// Why a file is not opened, and what to do.
pub(crate) fn refused(file: &str, why: RackFileFault) -> String {
    let why = match why {
        RackFileFault::TooLarge => "it is too large",
        RackFileFault::Unreadable => "the file cannot be read; choose it once more",
        RackFileFault::Foreign => "its bench, bikes or courses are not what “Save all as a file” writes",
        RackFileFault::OtherVersion => {
            "it is of a version that this page does not know; open it with the page that wrote it"
        }
    };
    format!("“{file}” is not opened: {why}. Everything stays as it is.")
}

/// Names in a file that say nothing.
pub(crate) fn strange(names: &[String]) -> String {
    format!("Passed over, as nothing has that name or no text is there: {}.", few(names))
}

/// Fields whose texts were cut.
pub(crate) fn cut(keys: &[&'static str]) -> String {
    format!("Far too long and cut: {}.", few(keys))
}

fn few<T: ToString>(names: &[T]) -> String {
    let short = |name: &T| name.to_string().chars().take(24).collect::<String>();
    let mut first: Vec<String> = names.iter().take(NAMED).map(short).collect();
    if names.len() > NAMED {
        first.push(format!("{} more", names.len() - NAMED));
    }
    listed(&first)
}
