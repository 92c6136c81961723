//! What is wrong with a field.

use crate::bench::field::Field;

/// What is wrong with a field, and what the page uses instead.
#[derive(Debug, Clone, PartialEq)]
pub struct Complaint {
    /// The field.
    pub field: Field,
    /// What to type.
    pub message: String,
    /// The last good value, which the page goes on with; none where there never was one.
    pub kept: Option<String>,
    /// What was perhaps meant, to be written into the field at the press of a button.
    pub offer: Option<String>,
}
