//! The whole board as a picture for a message.

use crate::drawing::palette::LIGHT;
use crate::layout::decision::{Decision, Standing};
use crate::page::overall::{in_the_way, which};
use crate::page::poster_text::PosterText;
use crate::page::questions::{self, Asked};
use crate::page::report::Report;
use crate::page::words::{board, poster as words};
use crate::side::Side;
use plotters::style::RGBColor;

/// Shares of the width that question, A, B and the difference take.
const SHARES: [f64; 4] = [0.16, 0.31, 0.31, 0.22];
/// Between two columns, CSS pixels.
const GAP: f64 = 8.0;

/// The sentence over all, a row for every decision, and what the signs stand for.
pub(crate) fn write(report: &Report, text: &mut PosterText, place: (f64, f64)) {
    text.strong(&words::paragraph(&which(report), in_the_way(report).as_ref()), place, LIGHT.ink);
    text.skip(8.0);
    let [question, a, b, between] = columns(place);
    let heads =
        [words::QUESTION.to_owned(), Side::A.to_string(), Side::B.to_string(), board::BETWEEN.to_owned()];
    let inks = [LIGHT.soft, LIGHT.a, LIGHT.b, LIGHT.soft];
    let at = [question, a, b, between];
    beside(text, &[0, 1, 2, 3], |text, &column| text.strong(&heads[column], at[column], inks[column]));
    for asked in questions::all() {
        let Some(decision) = asked.decision(report) else { continue };
        text.rule(place);
        row(text, asked, &decision, (asked.is_demos(report), at));
    }
    text.rule(place);
    text.paragraph(&words::key(), place, LIGHT.soft);
}

/// Where each column begins and how wide it is.
fn columns((x, wide): (f64, f64)) -> [(f64, f64); 4] {
    let mut from = x;
    SHARES.map(|share| {
        let column = (from, share * wide - GAP);
        from += share * wide;
        column
    })
}

/// Writes side by side, each from the same height, and goes on below the longest.
fn beside<T>(text: &mut PosterText, cells: &[T], write: impl Fn(&mut PosterText, &T)) {
    let top = text.y;
    let mut end = top;
    for cell in cells {
        text.y = top;
        write(text, cell);
        end = f64::max(end, text.y);
    }
    text.y = end;
}

type Columns = (bool, [(f64, f64); 4]);

fn row(text: &mut PosterText, asked: &dyn Asked, decision: &Decision, (on_demo, at): Columns) {
    let [_, a, b, between] = at;
    let sides: &[Side] = if decision.is_of_both() { &[Side::A] } else { &Side::BOTH };
    beside(text, &[0, 1, 2], |text, &part| match part {
        0 => text.strong(asked.name(), at[0], LIGHT.ink),
        1 => beside(text, sides, |text, &side| {
            let both = (a.0, a.1 + GAP + b.1);
            let place = if sides.len() == 1 { both } else { [a, b][side as usize] };
            verdict(text, decision, side, (on_demo, place));
        }),
        _ => text.paragraph(&decision.difference, between, LIGHT.ink),
    });
}

fn verdict(text: &mut PosterText, decision: &Decision, side: Side, (on_demo, place): (bool, (f64, f64))) {
    let said = &decision.bikes[side as usize];
    let standing = said.standing.shown(on_demo);
    let told = format!("{} {}", standing.sign(), said.words);
    let told = if decision.is_before { words::not_final(told.trim()) } else { told.trim().to_owned() };
    text.strong(&told, place, ink(standing));
    if !said.detail.is_empty() {
        text.paragraph(&said.detail, place, LIGHT.soft);
    }
}

const fn ink(standing: Standing) -> RGBColor {
    match standing {
        Standing::Well => LIGHT.good,
        Standing::Care => LIGHT.care,
        Standing::Stop => LIGHT.stop,
        Standing::Open | Standing::Even | Standing::Told => LIGHT.ink,
    }
}
