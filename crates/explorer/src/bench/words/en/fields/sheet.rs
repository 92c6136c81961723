//! Labels and help of the workshop sheet.

use crate::bench::field_words::{FieldWords, said};

pub(crate) const SHEET_FOR: FieldWords = said("Sheet for", "");
