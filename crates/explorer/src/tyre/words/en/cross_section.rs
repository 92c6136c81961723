//! The tyre on its rim, cut across.

use crate::number::{plain, with_unit};
use crate::side::Side;
use crate::tyre::report::{Gauge, TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use crate::tyre::words::width::gauge;
use gear_math::wheel::{CalliperVerdict, Construction, RaceLimit, WidthVerdict};

pub(crate) const TITLE: &str = "The tyre on its rim, cut across";
pub(crate) const CAPTION: &str = "To scale, with the gauge of the race slid over it. Broken marks show how far the width may be off on either side. Where B has a tyre or rim of its own, A is drawn solid and B open.";
pub(crate) const NO_TYRE: &str = "No tyre to draw: check tyre and rim.";
pub(crate) const MEASURED: &str = "measured";
/// Beside the bar that long.
pub(crate) const SCALE: &str = "10 mm";

/// A tyre in one sentence, and whose it is where they differ.
pub(crate) fn label(side: Option<Side>, tyre: &TyreReport) -> String {
    let (size, rim) = (of_side(side, &tyre.size.to_string()), mm(tyre.inputs.rim.mm()));
    let Ok(fit) = &tyre.fit else { return format!("Cross-section: {size} does not go on this rim.") };
    let width = mm(fit.section.width().mm());
    match tyre.inputs.limit.map(|limit| mm(limit.mm())) {
        Some(limit) => format!(
            "Cross-section to scale: {size} on a rim of {rim} is {width} wide; the gauge of the race is {limit} wide."
        ),
        None => format!("Cross-section to scale: {size} on a rim of {rim} is {width} wide."),
    }
}

/// Over the race's gauge.
pub(crate) fn race_gauge(limit: RaceLimit, said: Option<Gauge>) -> String {
    let limit = mm(limit.mm());
    match said {
        Some(said) => format!("race gauge {limit} · {}", verdict(said)),
        None => format!("race gauge {limit}"),
    }
}

/// The same over tyres that differ.
pub(crate) fn race_gauge_of_each(limit: RaceLimit, said: [Option<Gauge>; 2]) -> String {
    let each = Side::BOTH.into_iter().zip(said);
    let said = each.filter_map(|(side, said)| Some(format!("{side} {}", in_short(said?))));
    format!("gauge {} · {}", mm(limit.mm()), said.collect::<Vec<_>>().join(", "))
}

/// What is said of the tyre of a side; of both alike without a letter.
fn of_side(side: Option<Side>, said: &str) -> String {
    side.map_or_else(|| said.to_owned(), |side| format!("{side} {said}"))
}

/// How wide a tyre is.
pub(crate) fn width_of(side: Option<Side>, fit: &TyreFit) -> String {
    of_side(side, &mm(fit.section.width().mm()))
}

const fn in_short(gauge: Gauge) -> &'static str {
    match gauge {
        Gauge::Expected(WidthVerdict::LikelyWithin) => "likely within",
        Gauge::Expected(WidthVerdict::Measure) => "too close",
        Gauge::Expected(WidthVerdict::LikelyOver) => "likely over",
        Gauge::Measured(CalliperVerdict::Within) => "within",
        Gauge::Measured(CalliperVerdict::AtLimit) => "at the limit",
        Gauge::Measured(CalliperVerdict::Over) => "over",
    }
}

const fn verdict(gauge: Gauge) -> &'static str {
    match gauge {
        Gauge::Expected(WidthVerdict::LikelyWithin) => "likely within",
        Gauge::Expected(WidthVerdict::Measure) => "too close to tell: measure",
        Gauge::Expected(WidthVerdict::LikelyOver) => "likely over",
        Gauge::Measured(CalliperVerdict::Within) => "within, as measured",
        Gauge::Measured(CalliperVerdict::AtLimit) => "at the limit: measure again",
        Gauge::Measured(CalliperVerdict::Over) => "over, as measured",
    }
}

/// How far a computed width may be off.
pub(crate) fn likely((low, high): (f64, f64)) -> String {
    format!("likely {}–{}", plain(low, 1), plain(high, 1))
}

/// Under the rim.
pub(crate) fn rim_across(side: Option<Side>, tyre: &TyreReport) -> String {
    let rim = mm(tyre.inputs.rim.mm());
    let said = match tyre.inputs.construction {
        Construction::Tubular => format!("rim {rim} bed"),
        _ => format!("rim {rim} inside"),
    };
    of_side(side, &said)
}

/// The rim, looked at.
pub(crate) fn rim(tyre: &TyreReport) -> String {
    format!("Rim: {} inside.", mm(tyre.inputs.rim.mm()))
}

/// The tyre, looked at.
pub(crate) fn body(side: Option<Side>, tyre: &TyreReport, fit: &TyreFit) -> String {
    let (low, high) = fit.width.range_mm();
    format!(
        "{whose} {size}: computed {width}, likely {low} to {high}; {height} high above the rim’s edges.",
        whose = side.map_or_else(|| "Tyre".to_owned(), |side| format!("{side}’s tyre")),
        size = tyre.size,
        width = mm(fit.width.mounted.mm()),
        low = plain(low, 1),
        high = mm(high),
        height = mm(fit.section.arc().height_mm),
    )
}

/// The race's gauge, looked at.
pub(crate) fn gauge_of(limit: RaceLimit, said: Option<Gauge>) -> String {
    let limit = mm(limit.mm());
    match said {
        Some(said) => format!("Gauge of {limit}: {}.", gauge(said)),
        None => format!("Gauge of {limit}."),
    }
}

/// A length in the picture, to a tenth where it is no whole number.
pub(crate) fn mm(mm: f64) -> String {
    with_unit(mm, usize::from(mm.fract().abs() > 1e-9), "mm")
}

/// How wide it comes out, and what the race's gauge says.
pub(crate) fn says(report: &TyreSection) -> String {
    let tyre = &report.tyre;
    let Ok(fit) = &tyre.fit else { return format!("{} does not go on this rim.", tyre.size) };
    let width = with_unit(fit.section.width().mm(), 1, "mm");
    match fit.gauge {
        Some(said) => format!("{} comes out {width} wide: {}.", tyre.size, verdict(said)),
        None => format!("{} comes out {width} wide.", tyre.size),
    }
}
