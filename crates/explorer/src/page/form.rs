//! The bench as a form, and the forms of the sections by name.

use crate::bench::field::Group;
use crate::layout::form::{fieldset, section};
use crate::page::questions;
use crate::page::words::form as words;
use maud::{Markup, html};

fn bench() -> Markup {
    html! {
        (fieldset("a", words::SETUP_A, Group::SetupA))
        fieldset.b {
            legend { (words::SETUP_B) }
            (section(Group::SetupB))
            details id="bike-b" { summary { (words::BIKE_B) } div.measures { (section(Group::BikeB)) } }
        }
        details id="more" {
            summary { (words::MORE) }
            div.groups {
                (fieldset("shared", words::WHEEL, Group::Wheel))
                (fieldset("shared", words::DERAILLEURS, Group::Derailleur))
                (fieldset("shared", words::RIDER, Group::Rider))
                (fieldset("shared", words::RECKONING, Group::Reckoning))
            }
        }
    }
}

/// The form that the page asks for by name.
#[must_use]
pub fn by_name(name: &str) -> Option<Markup> {
    match name {
        "bench" => Some(bench()),
        "sheet" => Some(section(Group::Sheet)),
        _ => questions::all().find_map(|question| question.form(name)),
    }
}
