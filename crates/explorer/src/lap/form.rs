//! The form of the section.

use crate::bench::field::Group;
use crate::lap::words::form as words;
use crate::layout::form::section;
use maud::{Markup, html};

/// The course, and how it is ridden.
pub(crate) fn lap() -> Markup {
    html! {
        div.grid { (section(Group::Lap)) (section(Group::LapFile)) }
        details {
            summary { (words::SKETCH) }
            (section(Group::LapSketch))
            p.quiet { (words::sketching()) }
        }
        details {
            summary { (words::HABITS) }
            div.grid { (section(Group::LapHabits)) }
        }
    }
}
