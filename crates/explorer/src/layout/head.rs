//! What stands over a column of a table.

use crate::side::Side;

/// The head of a column.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Head<'t> {
    /// None, over what heads the rows.
    Empty,
    /// The name of a set-up, over figures.
    Setup(Side),
    /// The same over words.
    SetupInWords(Side),
    /// Over figures.
    Figures(&'t str),
    /// Over words, which may run over several lines.
    Words(&'t str),
}

impl Head<'_> {
    /// Over a column that heads the rows and one of each set-up.
    pub(crate) const SETUPS: [Self; 3] = [Self::Empty, Self::Setup(Side::A), Self::Setup(Side::B)];

    /// Whether words stand under it.
    pub(crate) const fn is_over_words(self) -> bool {
        matches!(self, Self::Words(_) | Self::SetupInWords(_))
    }
}
