//! Fields with their labels, their controls and room for a message.

use crate::bench::field::{Field, Group, Kind};
use crate::layout::picks::picks;
use crate::layout::words::form as words;
use maud::{Markup, html};

/// The fields of a group that stand inside a section: all but those of the first screen.
pub(crate) fn section(group: Group) -> Markup {
    let is_claimed_here = group.fields().next().is_some_and(|field| !field.is_first());
    html! {
        @if is_claimed_here { (claim(group)) }
        @for field in group.fields().filter(|field| !field.is_first()) { (entry(field)) }
    }
}

/// A few fields, wherever else they belong.
pub(crate) fn fields(fields: &[Field]) -> Markup {
    html! { @for &field in fields { (entry(field)) } }
}

/// A field of a bike in its column, where the row says what it is; its label is read out.
pub(crate) fn cell(field: Field, label: &str) -> Markup {
    let spec = field.spec();
    html! {
        div class="field cell" {
            label.unseen for=(spec.key) { (label) }
            span.entry { (control(field)) (picks(field)) }
            div.says id={ "says-" (spec.key) } {}
        }
    }
}

/// Groups with their headings, and the finer settings folded away under them.
pub(crate) fn with_finer(groups: &[(&str, Group)], finer: Group) -> Markup {
    html! {
        @for &(legend, group) in groups {
            @if legend.is_empty() { div.measures { (section(group)) } }
            @else { (fieldset(legend, &html! { div.measures { (section(group)) } })) }
        }
        details { summary { (words::FINER) } div.measures { (section(finer)) } }
    }
}

/// Room for the button that claims what the demo put in.
pub(crate) fn claim(group: Group) -> Markup {
    html! { @if let Some(place) = group.claim_place() { div.mine id=(place) {} } }
}

/// Fields under a heading.
pub(crate) fn fieldset(legend: &str, fields: &Markup) -> Markup {
    html! { fieldset { legend { (legend) } (fields) } }
}

fn entry(field: Field) -> Markup {
    let spec = field.spec();
    html! {
        div.field.lines[matches!(spec.kind, Kind::Lines(_))] {
            label for=(spec.key) { (spec.label) }
            span.entry {
                (control(field))
                (picks(field))
                @if !spec.unit.is_empty() && !matches!(spec.kind, Kind::Slider(..)) { span.unit id=[field.has_other_unit().then(|| unit_id(field))] { (field.unit()) } }
            }
            @if let Kind::Slider(..) = spec.kind { output id={ "value-" (spec.key) } for=(spec.key) {} }
            div.says id={ "says-" (spec.key) } {}
        }
    }
}

/// Where the unit of a field stands that has a choice of units.
pub(crate) fn unit_id(field: Field) -> String {
    format!("unit-{}", field.spec().key)
}

/// Whether it takes rings or sprockets: figures, and between them what a phone's number keyboard has.
const fn is_toothed(field: Field) -> bool {
    matches!(field, Field::RingsA | Field::RingsB | Field::CassetteA | Field::CassetteB)
}

fn control(field: Field) -> Markup {
    let spec = field.spec();
    let (key, says) = (spec.key, format!("says-{}", spec.key));
    match spec.kind {
        Kind::Choice(choices) => html! {
            select id=(key) data-field=(key) aria-describedby=(says) {
                @for (value, label) in choices { option value=(value) selected[*value == spec.start] { (label) } }
            }
        },
        Kind::Slider(min, max, step) => html! {
            input id=(key) data-field=(key) type="range" min=(min) max=(max) step=(step) value=(spec.start);
        },
        Kind::Text => {
            html! { (text_input(key, &says, if is_toothed(field) { "decimal" } else { "text" }, spec.start)) }
        }
        Kind::Lines(rows) => html! {
            textarea id=(key) data-field=(key) rows=(rows) aria-describedby=(says) spellcheck="false" autocapitalize="off" { (spec.start) }
        },
        Kind::Number => html! { (text_input(key, &says, "decimal", spec.start)) },
    }
}

fn text_input(key: &str, says: &str, mode: &str, start: &str) -> Markup {
    html! {
        input id=(key) data-field=(key) type="text" inputmode=(mode) value=(start) aria-describedby=(says)
            spellcheck="false" autocapitalize="off";
    }
}
