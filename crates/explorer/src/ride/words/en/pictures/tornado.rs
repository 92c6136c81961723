//! What moves the end of riding most.

use crate::layout::line::name;
use crate::ride::swing::Swing;
use crate::ride::words::figures::whole_or_never;
use crate::ride::words::terms::{doubtful, moved, valued};
use crate::side::Side;
use crate::words::capital;

/// The first words of its caption.
pub(crate) const TITLE: &str = "How sure is this?";
/// How it is to be read.
pub(crate) const CAPTION: &str =
    "The gradient where riding ends, one doubtful input alone moved: − its low value, + its high one.";
/// What it shows, in one sentence.
pub(crate) fn label(widest: Option<&Swing>) -> String {
    widest.map_or_else(String::new, |swing| {
        format!("What moves the end of riding most: {}", bar_spot(Side::A, swing))
    })
}

/// An input above its bars.
pub(crate) fn input(swing: &Swing) -> String {
    format!("{}, {}", doubtful(swing.input), moved(swing.input, swing.bars[0].values))
}

/// What an input does to a side.
pub(crate) fn bar_spot(side: Side, swing: &Swing) -> String {
    let (input, bar) = (swing.input, &swing.bars[side as usize]);
    let name = doubtful(input);
    let (low, high) = (valued(input, bar.values.0), valued(input, bar.values.1));
    let (at_low, at_high) = (whole_or_never(bar.at_low), whole_or_never(bar.at_high));
    format!("{name} of {low} ends {side}’s riding at {at_low}, {high} at {at_high}.")
}

/// What moves it most.
pub(crate) fn says(widest: Option<&Swing>) -> String {
    let Some(swing) = widest else { return String::new() };
    let (input, values) = (capital(doubtful(swing.input)), moved(swing.input, swing.bars[0].values));
    let [a, b] = Side::BOTH.map(|side| {
        let bar = &swing.bars[side as usize];
        let (low, high) = (whole_or_never(bar.at_low), whole_or_never(bar.at_high));
        format!("{low} to {high} with {}", name(side))
    });
    format!("{input} of {values} moves the end of riding most: {a}, {b}.")
}
