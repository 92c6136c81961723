//! The forms of the first screen, and those of the sections by name.

use crate::bench::field::Group;
use crate::bench::first::{BANK, LAP, PARTS, RIDER};
use crate::layout::form::{cell, claim, fields, fieldset, section};
use crate::page::questions;
use crate::page::words::form as words;
use crate::side::Side;
use maud::{Markup, html};

/// Both bikes, part by part.
fn bikes() -> Markup {
    html! {
        @for [of_a, of_b] in PARTS {
            div.part {
                span.part-name { (of_a.spec().label) @if !of_a.spec().unit.is_empty() { small { (of_a.spec().unit) } } }
                (cell(of_a, &words::part_of(Side::A, of_a)))
                (cell(of_b, &words::part_of(Side::B, of_a)))
            }
        }
    }
}

/// Rider, bank and course.
fn first() -> Markup {
    html! {
        (fieldset(words::RIDER, &fields(&RIDER)))
        (fieldset(words::BANK, &fields(&BANK)))
        (fieldset(words::LAP, &fields(&LAP)))
    }
}

/// What of both bikes few need to change.
fn more() -> Markup {
    let all = |groups: &[Group]| html! { @for &group in groups { (section(group)) } };
    html! {
        (fieldset(words::SETUP_A, &all(&[Group::SetupA, Group::Wheel, Group::Derailleur])))
        (fieldset(words::SETUP_B, &all(&[Group::SetupB, Group::BikeB])))
        (fieldset(words::RIDER, &section(Group::Rider)))
    }
}

/// Room for the buttons that claim what the demo put on the first screen.
fn claims() -> Markup {
    let groups = [Group::SetupA, Group::SetupB, Group::Wheel, Group::Derailleur, Group::Ride, Group::Lap];
    html! { @for group in groups { (claim(group)) } }
}

/// The form that the page asks for by name.
#[must_use]
pub fn by_name(name: &str) -> Option<Markup> {
    match name {
        "bench" => Some(bikes()),
        "first" => Some(first()),
        "more" => Some(more()),
        "claims" => Some(claims()),
        "units" => Some(section(Group::Units)),
        "sheet" => Some(section(Group::Sheet)),
        _ => questions::all().find_map(|question| question.form(name)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;
    use crate::page::questions::Asked;

    #[test]
    fn every_field_stands_in_one_form() {
        let forms: String = ["bench", "first", "more", "units", "sheet"]
            .into_iter()
            .filter_map(by_name)
            .chain(questions::all().flat_map(Asked::all_forms))
            .map(maud::PreEscaped::into_string)
            .collect();
        for field in Field::ALL {
            let place = format!(" id=\"{}\"", field.spec().key);
            assert_eq!(forms.matches(&place).count(), 1, "{}", field.spec().key);
        }
    }
}
