//! Widths.

use crate::layout::line::Look;
use crate::number::{plain, trimmed, with_unit};
use crate::tyre::report::{Gauge, TyreFit};
use crate::tyre::section::TyreSection;
use gear_math::wheel::{CalliperVerdict, WidthVerdict};

/// A computed width, to a tenth.
pub(crate) fn mm(mm: f64) -> String {
    with_unit(mm, 1, "mm")
}

/// A width as it was typed or laid down.
pub(crate) fn typed(mm: f64) -> String {
    format!("{}\u{a0}mm", trimmed(mm))
}

/// The range that the mounted width likely lies in.
pub(crate) fn likely(fit: &TyreFit) -> String {
    let (low, high) = fit.width.range_mm();
    format!("{} to {}", plain(low, 1), plain(high, 1))
}

/// What the gauge says, in a few words.
pub(crate) fn gauge(gauge: Gauge) -> String {
    match gauge {
        Gauge::Expected(verdict) => verdict.to_string(),
        Gauge::Measured(verdict) => verdict.to_string(),
    }
}

/// How what the gauge says stands out.
pub(crate) fn look(report: &TyreSection, gauge: Gauge) -> Look {
    match gauge {
        Gauge::Expected(WidthVerdict::LikelyWithin) | Gauge::Measured(CalliperVerdict::Within) => {
            report.well()
        }
        Gauge::Expected(WidthVerdict::Measure) | Gauge::Measured(CalliperVerdict::AtLimit) => Look::Care,
        Gauge::Expected(WidthVerdict::LikelyOver) | Gauge::Measured(CalliperVerdict::Over) => Look::Stop,
    }
}
