//! Labels and help of tyre and rim.

use crate::bench::field_words::{FieldWords, said};

pub(crate) const CONSTRUCTION: FieldWords = said("Kind of tyre", "");
pub(crate) const RIM: FieldWords =
    said("Rim, inner width", "Between the side walls; of a tubular rim, its bed");
pub(crate) const TYRE_MARK: FieldWords =
    said("Tyre’s marked maximum", "On the sidewall; with its unit if that is another");
pub(crate) const RIM_MARK: FieldWords = said("Rim’s marked maximum", "On the rim or in its papers");
pub(crate) const LEAST_MARK: FieldWords = said("Marked minimum", "On tyre or rim, if there is one");
pub(crate) const WIDTH_LIMIT: FieldWords =
    said("Race limit", "33 mm: UCI 1.3.018. Others: ask your organiser");
pub(crate) const TYRE_GROUND: FieldWords = said("Ground of the course", "Of all of it, as a tyre meets it");
pub(crate) const WHEEL_STYLE: FieldWords = said("Riding style", "");
pub(crate) const OTHER_TYRE: FieldWords =
    said("Compare with a width of", "What it would do to every gear; may be left empty");
pub(crate) const HOOKLESS: FieldWords = said("Rim type", "");
pub(crate) const TYRE_WIDTH_MEASURED: FieldWords =
    said("Tyre’s width measured", "Inflated on this rim; it wins over the estimate");
pub(crate) const LABEL_EDITION: FieldWords = said("Label follows", "");
pub(crate) const MEASURING_RIM: FieldWords =
    said("Measuring rim", "If the sidewall names one; else it follows from the label");
