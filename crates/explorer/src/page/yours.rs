//! What is not the rider's, said where it stands: the list at the top of the bench, beside every field, and with the answers
//! that rest on it.

use crate::bench::field::{Field, Group, Kind};
use crate::bench::owner::Owner;
use crate::lap::inputs::CourseChoice;
use crate::layout::pieces::link_to;
use crate::page::questions::Asked;
use crate::page::report::Report;
use maud::{Markup, PreEscaped, html};

/// The parts of the bench that the demo fills, by the names under which they are listed.
const PARTS: [(&str, &[Group]); 8] = [
    ("set-up A", &[Group::SetupA]),
    ("set-up B", &[Group::SetupB]),
    ("wheel", &[Group::Wheel]),
    ("derailleurs", &[Group::Derailleur]),
    ("rider and climb", &[Group::Ride]),
    ("course", &[Group::Lap, Group::LapSketch]),
    ("tyre and rim", &[Group::Tyre]),
    ("position", &[Group::RoadBike, Group::CrossBike, Group::CrossFrame]),
];
/// Fields named in a line; more are counted.
const NAMED: usize = 6;

/// The parts of the bench that are not all the rider's, each with the number of its fields that are not, and a way there.
#[must_use]
pub(crate) fn overview(report: &Report) -> Markup {
    let of = |groups: &[Group]| -> Vec<Field> {
        report.owners.lacking(|field| groups.contains(&field.spec().group)).collect()
    };
    let parts: Vec<Markup> = PARTS
        .iter()
        .map(|(name, groups)| (name, of(groups)))
        .filter(|(_, fields)| !fields.is_empty())
        .map(|(name, fields)| html! { (link_to(fields[0], name)) " (" (fields.len()) ")" })
        .collect();
    html! { @if !parts.is_empty() { p.yours { "Not yours yet: " (joined(&parts)) "." } } }
}

fn joined(parts: &[Markup]) -> Markup {
    html! { @for (place, part) in parts.iter().enumerate() { @if place > 0 { ", " } (part) } }
}

/// Whose the value of a field is, where it is not the rider's.
#[must_use]
pub(crate) fn tag(report: &Report, field: Field) -> Markup {
    let spec = field.spec();
    let is_typed = matches!(spec.kind, Kind::Number) && !spec.start.is_empty();
    match report.owners.get(field) {
        Owner::Demo => html! { span.demo { "demo’s" } " " },
        Owner::Unknown => html! { span.demo { "not known" } " " },
        Owner::Usual if is_typed => html! { span.usual { "usual" } " " },
        _ => html! {},
    }
}

/// Where the button stands that claims what the demo put into a group of fields; it is named after the group's first field.
#[must_use]
pub(crate) fn claim_place(group: Group) -> Option<String> {
    let first = Field::ALL.iter().find(|field| field.spec().group == group)?;
    PARTS.iter().any(|(_, groups)| groups.contains(&group)).then(|| format!("mine-{}", first.spec().key))
}

/// The buttons that claim a group of fields, as pairs of element id and content.
pub(crate) fn claims(report: &Report) -> impl Iterator<Item = (String, String)> {
    let groups = PARTS.iter().flat_map(|(name, groups)| groups.iter().map(move |&group| (*name, group)));
    groups.filter_map(|(name, group)| Some((claim_place(group)?, claim(report, name, group).into_string())))
}

fn claim(report: &Report, name: &str, group: Group) -> Markup {
    let is_demos = |field: Field| field.spec().group == group && report.owners.get(field) == Owner::Demo;
    let Some(first) = report.owners.lacking(is_demos).next() else { return html! {} };
    let words = if group == Group::Lap { "Take this invented course" } else { "These are mine" };
    html! { button type="button" data-act={ "mine:" (first.spec().key) } aria-label={ (words) ": " (name) } { (words) } }
}

/// A fragment of a section that may rest on the demo's values: nothing in it is green then, and in an answer every figure is
/// marked, with a line under it that names the fields.
#[must_use]
pub(crate) fn marked(report: &Report, question: &dyn Asked, is_answer: bool, fragment: String) -> String {
    let is_demos = report.owners.rests_on_demo(|field| question.rests_on(field));
    let fragment = if is_demos { fragment.replace("class=\"good\"", "class=\"unsure\"") } else { fragment };
    if !is_answer {
        return fragment;
    }
    let is_marked = is_demos && !question.marks_itself();
    let fragment = PreEscaped(fragment);
    html! { @if is_marked { div.demo { (fragment) } } @else { (fragment) } (line(report, question)) }
        .into_string()
}

/// “Not yours yet: body mass, power, slope.”
fn line(report: &Report, question: &dyn Asked) -> Markup {
    let of = |owner: Owner| -> Vec<Field> {
        report.owners.lacking(|field| question.rests_on(field) && report.owners.get(field) == owner).collect()
    };
    let (demos, unknown) = (of(Owner::Demo), of(Owner::Unknown));
    let is_invented = question.id() == "lap"
        && report.owners.get(Field::Course) == Owner::Rider
        && matches!(report.lap_inputs.choice, CourseChoice::Demo(_));
    html! {
        @if !unknown.is_empty() { p.yours { "Not known: " (names(&unknown)) "." } }
        @if !demos.is_empty() { p.yours { "Not yours yet: " (names(&demos)) ". Hatched figures rest on the demo’s." } }
        @if is_invented { p.yours { "The course is " (link_to(Field::Course, "an invented one")) "." } }
    }
}

/// Fields by name, each with a way there.
#[must_use]
pub(crate) fn names(fields: &[Field]) -> Markup {
    let named: Vec<Markup> = fields.iter().take(NAMED).map(|&field| link_to(field, &name(field))).collect();
    let more = fields.len().saturating_sub(NAMED);
    html! { (joined(&named)) @if more > 0 { " and " (more) " more" } }
}

/// A field's label as it reads in a sentence.
fn name(field: Field) -> String {
    let mut label = field.spec().label.to_owned();
    if let Some(first) = label.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    match field.spec().group {
        Group::SetupA => format!("A’s {label}"),
        Group::SetupB => format!("B’s {label}"),
        Group::CrossBike => format!("cross bike’s {label}"),
        _ => label,
    }
}
