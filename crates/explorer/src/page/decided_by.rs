//! The few fields that decide a section, over its answer: each a button with its value, which becomes the field when pressed.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::bench::of_b::OfB;
use crate::bench::owner::Owner;
use crate::layout::question::decided_by_id;
use crate::page::questions::Asked;
use crate::page::report::Report;
use crate::page::words::{notices, yours as words};
use maud::{Markup, html};

/// The row of a section that has one, as id and content.
pub(crate) fn row(report: &Report, bench: &Bench, question: &dyn Asked) -> Option<(String, String)> {
    let fields = question.decided_by();
    let button = |(place, &field): (usize, &Field)| button(report, bench, field, place == 0);
    let row = html! { @for shown in fields.iter().enumerate().map(button) { (shown) } };
    (!fields.is_empty()).then(|| (decided_by_id(question.id()), row.into_string()))
}

fn button(report: &Report, bench: &Bench, field: Field, is_first: bool) -> Markup {
    let is_lacking = report.owners.get(field) >= Owner::Demo;
    html! {
        button type="button" data-edits=(field.spec().key) tabindex=[(!is_first).then_some("-1")] {
            small { (words::named(field)) } " "
            span.demo[is_lacking] { (value(bench, field)) }
        }
    }
}

/// What stands in the field, or what it stands for while it is empty.
fn value(bench: &Bench, field: Field) -> String {
    let text = bench.text(field).trim();
    match field.as_on_a().map(|_| bench.of_b(field)) {
        Some(OfB::AsOnA) => notices::AS_A.to_owned(),
        Some(OfB::NotKnown) => notices::NOT_KNOWN.to_owned(),
        None if text.is_empty() => notices::LEFT_EMPTY.to_owned(),
        _ => field.told(text),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::questions;

    #[test]
    fn a_field_stands_with_its_value_and_is_hatched_while_it_is_not_the_riders() {
        let (mut bench, mut report) = (Bench::default(), Report::default());
        let cage = questions::all().find(|question| question.id() == "cage").unwrap();
        let said =
            |report: &Report, bench: &Bench| row(report, bench, cage).unwrap().1.replace('\u{a0}', " ");
        let told = said(&report, &bench);
        assert!(
            told.contains("<small>Total capacity</small> <span class=\"demo\">33 teeth</span>"),
            "{told}"
        );
        assert!(told.contains("<small>B’s total capacity</small> <span class=\"\">as A</span>"), "{told}");
        bench.write(Field::Capacity, "35");
        report.owners = crate::bench::owners::Owners::of(&bench, &[]).into();
        assert!(
            said(&report, &bench).contains("<small>Total capacity</small> <span class=\"\">35 teeth</span>")
        );
        let lap = questions::all().find(|question| question.id() == "lap").unwrap();
        assert_eq!(row(&report, &bench, lap), None, "its fields are in sight by themselves");
    }

    #[test]
    fn no_section_asks_for_a_field_that_moves_nothing_in_it() {
        for question in questions::all() {
            for &field in question.decided_by() {
                assert!(question.rests_on(field) || question.asks(field), "{} on {field:?}", question.id());
            }
        }
    }
}
