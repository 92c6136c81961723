//! The table of what was ridden, on the page and as comma-separated values.

use crate::lap::words::found::{as_side, behind, put_on_bench};
use crate::layout::csv::csv;
use crate::layout::pieces::{name, table};
use crate::number::clock;
use crate::parts::column::Column;
use crate::parts::found::{BoxFound, LISTED, key};
use crate::parts::section::BoxSection;
use crate::parts::words::named::{chain, combination};
use crate::parts::words::table as words;
use crate::side::Side;
use crate::units;
use gear_math::course::Precision;
use maud::{Markup, html};

/// The quickest of what was ridden.
pub(crate) fn rows(section: &BoxSection) -> Markup {
    let Some(found) = section.found.as_ref().filter(|found| !found.order.is_empty()) else { return html! {} };
    let count = found.order.len();
    let listed = count.min(LISTED);
    let [title, remark] = words::TABLE;
    let [parts, bench, figures @ ..] = words::HEADS;
    let head = html! {
        tr {
            (column_head(found, 0, parts))
            th scope="col" { (bench) }
            @for (place, name) in figures.into_iter().enumerate() { (column_head(found, place + 1, name)) }
        }
    };
    let body = html! { @for place in found.listed() { (row(found, place)) } };
    html! {
        div.stale[found.is_stale] {
            (table(title, remark, &head, &body))
            @if listed < count { p.quiet { (words::more(listed, count)) } }
        }
    }
}

/// The head of a column by which the table is put in order.
fn column_head(found: &BoxFound, place: usize, name: &str) -> Markup {
    let sorted = found.by.filter(|(by, _)| Column::at(place) == Some(*by));
    let order = sorted.map(|(_, falls)| if falls { "descending" } else { "ascending" });
    html! {
        th scope="col" aria-sort=[order] { button type="button" data-act={ "order-box:" (place) } { (name) } }
    }
}

fn row(found: &BoxFound, place: usize) -> Markup {
    let sides: Vec<Side> = found.sides_at(place).collect();
    let [parts, figures @ ..] = cells(found, place);
    html! {
        tr.own[!sides.is_empty()] {
            th scope="row" {
                @for side in &sides { (name(*side)) " " }
                (parts)
                @if found.front.contains(&place) { " ●" }
            }
            td { (onto_bench(found, place)) }
            @for text in figures { td { (text) } }
        }
    }
}

fn onto_bench(found: &BoxFound, place: usize) -> Markup {
    let parts = &found.order[place].parts;
    let key = key(parts.combination);
    let button = |act: &str, side: Side| {
        html! {
            button type="button" data-act={ (act) (key) } aria-label=(put_on_bench(&parts.fit.drivetrain, side)) { (as_side(side)) }
        }
    };
    html! {
        (button("box-a:", Side::A)) " " (button("box-b:", Side::B)) " "
        button type="button" data-keep=(key) aria-label=(words::keeps(&parts.fit.drivetrain)) { (words::KEEP) }
    }
}

/// What is told of the lap at a place, but for its buttons.
fn cells(found: &BoxFound, place: usize) -> [String; 6] {
    let (choice, parts) = (&found.order[place], &found.asked.parts);
    let fit = &choice.parts.fit;
    let avoid: Vec<String> = fit.avoid.gears(&fit.drivetrain).map(|gear| gear.to_string()).collect();
    [
        combination(&choice.parts, parts),
        clock(choice.parts.lap.time_s, Precision::WITHOUT_BAND),
        behind(found.behind_s(place), found.tested(place)),
        units::developments().print(choice.lowest_m, 2),
        chain(&choice.parts, parts),
        if avoid.is_empty() { words::NONE.to_owned() } else { avoid.join(", ") },
    ]
}

impl BoxFound {
    /// Every lap as comma-separated values, heads first; nothing before one was ridden.
    #[must_use]
    pub fn csv(&self) -> Option<String> {
        let _points = units::Units::now().with_points().enter();
        let [parts, _, figures @ ..] = words::HEADS;
        let head = std::iter::once(parts).chain(figures).map(str::to_owned).collect();
        let lines = (0..self.order.len()).map(|place| cells(self, place).to_vec());
        (!self.order.is_empty()).then(|| csv(std::iter::once(head).chain(lines)))
    }
}
