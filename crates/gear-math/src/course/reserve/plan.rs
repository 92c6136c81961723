//! What a lap was found by.

use crate::course::reserve::field::Field;
use crate::course::reserve::moment::State;
use crate::course::reserve::range::Range;

/// What a lap was found by: from there one much like it is found sooner.
#[derive(Debug, Clone)]
pub(super) struct Plan {
    pub(super) ranges: Vec<Range>,
    /// Values at the line.
    pub(super) line: Field,
    /// Price of a joule over 1/CP.
    pub(super) sustained_price: f64,
    pub(super) begin: State,
    /// In how many parts it was ridden and gone on foot.
    pub(super) parts: usize,
}
