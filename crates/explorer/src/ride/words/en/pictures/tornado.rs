//! What moves the end of riding most.

use crate::ride::swing::Swing;
use crate::ride::words::figures::whole_or_never;
use crate::ride::words::terms::{doubtful, moved, valued};
use crate::side::Side;

/// The first words of its caption.
pub(crate) const TITLE: &str = "How sure is this?";
/// How it is to be read.
pub(crate) const CAPTION: &str =
    "How far one doubtful input alone moves the gradient where riding ends: − its low value, + its high one.";
/// Where there is nothing to show.
pub(crate) const NOTHING: &str = "Nothing doubtful moves the end of riding here.";

/// What it shows, in one sentence.
pub(crate) fn label(widest: Option<&Swing>) -> String {
    match widest {
        None => NOTHING.to_owned(),
        Some(swing) => format!("What moves the end of riding most: {}", bar_spot(Side::A, swing)),
    }
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
