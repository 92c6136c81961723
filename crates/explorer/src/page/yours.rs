//! What is not the rider's, said where it stands: the list at the top of the bench, beside every field, and with the answers
//! that rest on it.

use crate::bench::field::{Field, Group, Kind};
use crate::bench::owner::Owner;
use crate::page::questions::Asked;
use crate::page::report::Report;
use crate::page::words::yours as words;
use maud::{Markup, html};

/// The parts of the bench that the demo fills, by the names under which they are listed.
const PARTS: &[(&str, &[Group])] = &[
    (words::SETUP_A, &[Group::SetupA]),
    (words::SETUP_B, &[Group::SetupB, Group::BikeB]),
    (words::WHEEL, &[Group::Wheel]),
    (words::DERAILLEURS, &[Group::Derailleur]),
    (words::RIDE, &[Group::Ride]),
    (words::COURSE, &[Group::Lap, Group::LapSketch]),
    (words::TYRE, &[Group::Tyre]),
    (words::POSITION, &[Group::RoadBike, Group::CrossBike, Group::CrossFrame]),
];
/// Fields named in a line; more are counted.
const NAMED: usize = 6;

/// The parts of the bench that are not all the rider's, each with the number of its fields that are not, and a way there.
#[must_use]
pub(crate) fn overview(report: &Report) -> Markup {
    let of = |groups: &[Group]| -> Vec<Field> {
        report.owners.lacking(|field| groups.contains(&field.spec().group)).collect()
    };
    let parts: Vec<String> = PARTS
        .iter()
        .map(|(name, groups)| (name, of(groups)))
        .filter(|(_, fields)| !fields.is_empty())
        .map(|(name, fields)| words::part(name, &fields))
        .collect();
    html! { @if !parts.is_empty() { p.yours { (words::parts(&words::in_a_row(&parts))) } } }
}

/// Whose the value of a field is, where it is not the rider's.
#[must_use]
pub(crate) fn tag(report: &Report, field: Field) -> Markup {
    let spec = field.spec();
    let is_typed = matches!(spec.kind, Kind::Number) && !spec.start.is_empty();
    match report.owners.get(field) {
        Owner::Demo => html! { span.demo { (words::DEMOS) } " " },
        Owner::Unknown => html! { span.demo { (words::NOT_KNOWN) } " " },
        Owner::Usual if is_typed => html! { span.usual { (words::USUAL) } " " },
        _ => html! {},
    }
}

/// The buttons that claim a group of fields, as pairs of element id and content.
pub(crate) fn claims(report: &Report) -> impl Iterator<Item = (String, String)> {
    let groups = PARTS.iter().flat_map(|(name, groups)| groups.iter().map(move |&group| (*name, group)));
    groups.filter_map(|(name, group)| Some((group.claim_place()?, claim(report, name, group).into_string())))
}

fn claim(report: &Report, name: &str, group: Group) -> Markup {
    let is_demos = |field: Field| field.spec().group == group && report.owners.get(field) == Owner::Demo;
    let Some(first) = report.owners.lacking(is_demos).next() else { return html! {} };
    let label = match group {
        Group::Lap => words::TAKE_THIS_COURSE.to_owned(),
        _ => words::these_are_mine(name),
    };
    html! { button type="button" data-act={ "mine:" (first.spec().key) } { (label) } }
}

/// An answer, every figure of it marked where it rests on the demo's values.
pub(crate) fn marked(report: &Report, question: &dyn Asked, answer: &Markup) -> Markup {
    html! {
        (hatched(report, question, answer))
        @if let Some(line) = question.nobodys(report) { p.yours { (line) } }
    }
}

/// What is behind an answer, marked likewise, under a line that names the fields.
pub(crate) fn explained(report: &Report, question: &dyn Asked, why: &Markup) -> Markup {
    html! {
        (line(report, question))
        (hatched(report, question, why))
    }
}

fn hatched(report: &Report, question: &dyn Asked, text: &Markup) -> Markup {
    html! {
        @if question.is_demos(report) && !question.marks_itself() { div.demo { (text) } } @else { (text) }
    }
}

/// “Not yours yet: body mass, power, slope.”
fn line(report: &Report, question: &dyn Asked) -> Markup {
    let of = |owner: Owner| -> Vec<Field> {
        report.owners.lacking(|field| question.rests_on(field) && report.owners.get(field) == owner).collect()
    };
    let (demos, unknown) = (of(Owner::Demo), of(Owner::Unknown));
    html! {
        @if !unknown.is_empty() { p.yours { (words::unknown(&names(&unknown))) } }
        @if !demos.is_empty() { p.yours { (words::demos(&names(&demos))) } }
    }
}

/// Fields by name, each with a way there.
fn names(fields: &[Field]) -> String {
    let named: Vec<String> = fields.iter().take(NAMED).map(|&field| words::field(field)).collect();
    let (named, more) = (words::in_a_row(&named), fields.len().saturating_sub(NAMED));
    if more > 0 { words::and_more(&named, more) } else { named }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whatever_the_demo_puts_in_is_listed_once() {
        for field in Field::ALL.iter().filter(|field| field.start_owner() == Owner::Demo) {
            let group = field.spec().group;
            assert_eq!(PARTS.iter().filter(|(_, groups)| groups.contains(&group)).count(), 1, "{group:?}");
        }
    }
}
