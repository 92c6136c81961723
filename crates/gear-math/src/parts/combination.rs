//! Which parts of a box are tried together.

/// Places of parts in a box, counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Combination {
    /// Of the chainset.
    pub chainset: usize,
    /// Of the cassette.
    pub cassette: usize,
    /// Of the rear derailleur; none where the box has none, and nothing is known of the one that is used.
    pub derailleur: Option<usize>,
}
