//! The board: every decision at a glance.

use crate::layout::decision::{Decision, Standing, Verdict};
use crate::layout::line::Line;
use crate::layout::pieces::name;
use crate::page::overall::{in_the_way, which};
use crate::page::questions::{self, Asked};
use crate::page::report::Report;
use crate::page::settle::settle;
use crate::page::was::Was;
use crate::page::words::board as words;
use crate::side::Side;
use maud::{Markup, html};

/// All that changes on the board, as pairs of element id and content.
pub(crate) fn fragments(report: &Report, was: &Was) -> Vec<(String, String)> {
    let mut all = vec![("board-says".to_owned(), says(report).into_string())];
    let mut changed = Vec::new();
    for question in questions::all() {
        let Some(decision) = question.decision(report) else { continue };
        let row = Row {
            question,
            decision: &decision,
            was: was.of(question.id()),
            on_demo: question.is_demos(report),
        };
        all.push((row_id(question.id()), row.cells().into_string()));
        all.push((marks_id(question.id()), row.marks().into_string()));
        changed.extend(row.change());
    }
    all.push(("board-change".to_owned(), html! { (changed.join(" ")) }.into_string()));
    all.push(("board-settle".to_owned(), settle(report).into_string()));
    all
}

/// The id of a question's row.
pub(crate) fn row_id(question: &str) -> String {
    format!("decide-{question}")
}

/// The id of a question's signs in the navigation.
pub(crate) fn marks_id(question: &str) -> String {
    format!("at-{question}")
}

fn says(report: &Report) -> Markup {
    html! {
        span.stale[report.lap.is_stale].demo[rests_on_demo(report)] { (which(report)) }
        @if let Some(line) = in_the_way(report) { " " (line) }
    }
}

/// Whether the sentence over all would be another with the rider's own values.
fn rests_on_demo(report: &Report) -> bool {
    questions::all().any(|question| question.id() == "lap" && question.is_demos(report))
}

struct Row<'r> {
    question: &'static dyn Asked,
    decision: &'r Decision,
    was: Option<&'r [String; 2]>,
    on_demo: bool,
}

impl Row<'_> {
    fn cells(&self) -> Markup {
        let before = self.decision.is_before;
        html! {
            th scope="row" { a href={ "#" (self.question.id()) } tabindex="-1" { (self.question.name()) } }
            @if self.decision.is_of_both() {
                td colspan="2" class=[before.then_some("stale")] { (self.verdict(Side::A)) }
            } @else {
                @for side in Side::BOTH {
                    td class=[before.then_some("stale")] { span.unseen { (side) ": " } (self.verdict(side)) }
                }
            }
            td.between.stale[before] { (self.decision.difference) }
        }
    }

    fn verdict(&self, side: Side) -> Markup {
        let Verdict { standing, words, detail } = &self.decision.bikes[side as usize];
        let verdict = Line::from(standing.look(self.on_demo).part(words));
        html! {
            div.verdict-line.demo[self.on_demo] { (self.sign(side)) (verdict) }
            @if !detail.is_empty() { div.detail { (detail) } }
            @if let Some(was) = self.before(side) { div.was { (words::was(was)) } }
        }
    }

    /// How a bike stands; what is well on the demo's values is not the rider's answer yet.
    fn sign(&self, side: Side) -> Markup {
        match self.decision.bikes[side as usize].standing {
            Standing::Well if self.on_demo => marked(Standing::Open.sign(), words::NOT_YOURS),
            Standing::Told => html! {},
            standing => marked(standing.sign(), words::meaning(standing)),
        }
    }

    /// What was said of a bike before, where that was something else.
    fn before(&self, side: Side) -> Option<&str> {
        let was = self.was?[side as usize].as_str();
        let now = &self.decision.bikes[side as usize].words;
        (!self.decision.is_before && was != now).then_some(was)
    }

    fn marks(&self) -> Markup {
        let decision = self.decision;
        let is_told = decision.bikes.iter().all(|verdict| verdict.standing == Standing::Told);
        let words =
            |side: Side| html! { (self.sign(side)) " " span.told { (decision.short[side as usize]) } };
        html! {
            @if decision.is_of_both() {
                span.both { (words(Side::A)) }
            } @else {
                @for side in Side::BOTH { span.told[is_told] { (name(side)) (words(side)) } " " }
            }
            span.told.between { (decision.difference) }
        }
    }

    /// What the last change did to it.
    fn change(&self) -> Option<String> {
        let is_changed = |side: &Side| self.before(*side).is_some();
        let said = |side: Side| words::of_bike(side, &self.decision.bikes[side as usize].words);
        let told: Vec<String> = match Side::BOTH.into_iter().filter(is_changed) {
            mut changed if self.decision.is_of_both() => changed
                .next()
                .map(|side| self.decision.bikes[side as usize].words.clone())
                .into_iter()
                .collect(),
            changed => changed.map(said).collect(),
        };
        (!told.is_empty()).then(|| words::changed(self.question.name(), &told))
    }
}

fn marked(sign: &str, spoken: &str) -> Markup {
    html! {
        span class="sign" aria-hidden="true" { (sign) }
        span.unseen { (spoken) ": " }
    }
}
