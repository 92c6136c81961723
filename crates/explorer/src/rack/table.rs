//! All bikes side by side: the answer, the table, and how it was worked out.

use crate::lap::words::answer::verdict;
use crate::layout::pieces::{self, name};
use crate::rack::column::Column;
use crate::rack::compared::Compared;
use crate::rack::row::{Row, Whose};
use crate::rack::section::BikesSection;
use crate::rack::view::onto_bench;
use crate::rack::words::compared as words;
use maud::{Markup, html};

pub(crate) fn answer(section: &BikesSection) -> Markup {
    let Some(compared) = &section.compared else { return html! { p { (words::NOT_YET) } } };
    html! {
        p { (words::answer(compared)) }
        @if let Some(settled) = compared.settled() { p.more { (verdict(settled)) } }
    }
}

pub(crate) fn working(_: &BikesSection) -> Markup {
    html! { @for paragraph in words::working() { p { (paragraph) } } }
}

pub(crate) fn table(section: &BikesSection) -> Markup {
    let Some(compared) = &section.compared else { return html! {} };
    let head = html! { tr { @for column in Column::ALL { (column_head(compared, column)) } } };
    let best = compared.best();
    let body = html! { @for row in &compared.rows { (bike(compared, row, best)) } };
    pieces::table(words::TABLE, words::REMARK, &head, &body)
}

fn column_head(compared: &Compared, column: Column) -> Markup {
    let sorted = compared.order.filter(|(by, _)| *by == column);
    let order = sorted.map(|(_, falls)| if falls { "descending" } else { "ascending" });
    html! {
        th.words scope="col" aria-sort=[order] {
            button type="button" data-act={ "order-bikes:" (column.key()) } { (words::head(column)) }
        }
    }
}

fn bike(compared: &Compared, row: &Row, best: Option<&Row>) -> Markup {
    html! {
        tr data-key=(key(&row.whose)) {
            th.words scope="row" {
                @match &row.whose {
                    Whose::Bench(side) => (name(*side)),
                    Whose::Kept { .. } => (words::bike(&row.whose)),
                }
                @if compared.is_unbeaten(row) { " " small { (words::UNBEATEN) } }
                @if let Whose::Kept { name, .. } = &row.whose { " " span.rack-acts { (onto_bench(name)) } }
            }
            @for (place, text) in cells(compared, row, best) { td.words { (leading_to(row, place, &text)) } }
        }
    }
}

/// By this the page moves a row that gets another place, where it would write another bike beneath the finger.
fn key(whose: &Whose) -> String {
    match whose {
        Whose::Bench(side) => side.to_string(),
        Whose::Kept { name, .. } => format!("kept:{name}"),
    }
}

/// Every figure of a bike, with the section that it is from.
pub(crate) fn cells(compared: &Compared, row: &Row, best: Option<&Row>) -> [(&'static str, String); 9] {
    let step = |step: Option<gear_math::gears::GearStep>| {
        step.map_or(words::NONE.to_owned(), |step| crate::number::percent(step.percent(), 1))
    };
    [
        ("rings", words::end_gear(&row.lowest)),
        ("rings", words::end_gear(&row.highest)),
        ("rings", step(row.steps.map(|steps| steps.mean))),
        ("rings", step(row.steps.map(|steps| steps.largest))),
        ("rings", row.useful.to_string()),
        ("cage", words::cage(row)),
        ("ride", words::ends(row)),
        ("lap", if compared.is_even { words::NONE.to_owned() } else { words::lap(compared, row, best) }),
        ("tyre-section", words::pressures(row)),
    ]
}

fn leading_to(row: &Row, section: &str, text: &str) -> Markup {
    let act = match &row.whose {
        Whose::Bench(_) => None,
        Whose::Kept { name, .. } => Some(format!("bike-a:{name}")),
    };
    html! { a href={ "#" (section) } data-act=[act] { (text) } }
}
