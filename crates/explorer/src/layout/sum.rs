//! A line of a note on how something was worked out.

use crate::layout::pieces::worked;
use maud::Markup;

/// What is worked out, its formula, and the same with numbers.
pub(crate) type Sum = [String; 3];

/// A sum of these words and numbers.
pub(crate) fn sum(what: &str, formula: &str, numbers: String) -> Sum {
    [what.to_owned(), formula.to_owned(), numbers]
}

/// Puts a sum in its place.
pub(crate) fn shown([what, formula, numbers]: &Sum) -> Markup {
    worked(what, formula, numbers)
}
