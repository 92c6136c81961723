//! “Which tyre, how hard?”: the answer, what moves it, and how it was worked out.

use crate::bench::field::Field;
use crate::layout::pieces::{link_to, worked};
use crate::number::{percent, plain, with_unit};
use crate::tyre::report::{Gauge, TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use gear_math::PressureCase;
use gear_math::wheel::{
    AirSpring, CalliperVerdict, Construction, LimitedBy, PressureCaution, PressureReading, RaceLimit,
    WheelPressure, WidthVerdict,
};
use maud::{Markup, html};

/// The sentence that answers, what narrows it, and the cautions.
#[must_use]
pub(crate) fn answer(report: &TyreSection) -> Markup {
    let tyre = &report.tyre;
    match &tyre.fit {
        Err(error) => html! { p { b.stop { "This tyre cannot go on this rim. " } (error) } },
        Ok(fit) => html! {
            @if let Some(first) = tyre.first_of_all() { p { b class=(if first.is_danger() { "stop" } else { "care" }) { (first) } } }
            p { (width(tyre, fit)) " " (pressures(tyre, fit)) }
            @if tyre.danger().is_none() { (marks(fit)) (about_pressures(tyre, fit)) }
        },
    }
}

/// How the marks limit the pressures, with the way to what was not typed of them.
fn marks(fit: &TyreFit) -> Markup {
    html! {
        p.care {
            @for caution in fit.advice.cautions.iter().filter(|caution| caution.is_about_marks()) { (caution) " " }
            @if fit.case.marks.tyre.is_none() { (link_to(Field::TyreMark, "Tyre’s maximum")) " " }
            @if fit.case.marks.rim.is_none() { (link_to(Field::RimMark, "Rim’s maximum")) }
        }
    }
}

/// What moved the pressures, and what to make of them.
fn about_pressures(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let cautions =
        |of: fn(PressureCaution) -> bool| fit.advice.cautions.iter().filter(move |&&caution| of(caution));
    html! {
        @for caution in cautions(PressureCaution::is_beyond_the_formula) { p.care { (caution) } }
        p { (loaded_with(tyre)) }
        @for limit in fit.advice.limits_told() { p { (limit) } }
        @for caution in cautions(PressureCaution::tells_of_a_start) { p { (caution) } }
    }
}

/// Who rides and on what; those fields stand in another section.
fn loaded_with(tyre: &TyreReport) -> Markup {
    let inputs = &tyre.inputs;
    html! {
        "For a " (link_to(Field::BodyMass, &format!("rider of {} kg", inputs.rider.kg()))) " with "
        (link_to(Field::KitMass, &format!("{} kg of kit", inputs.kit.kg()))) " on a "
        (link_to(Field::BikeMass, &format!("bike of {} kg", inputs.bike.kg()))) ", and "
        (link_to(Field::RearWeight, &percent(100.0 * inputs.front_share.fraction(), 0))) " of the weight on the front wheel."
    }
}

fn width(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let (inputs, counts) = (&tyre.inputs, mm(fit.section.width().mm()));
    html! {
        @if fit.is_measured {
            "Measured, the tyre is " b { (counts) } " wide"
            @if !fit.width.explains(fit.section.width()) { ", " b.care { "which its label does not explain" } }
        } @else if inputs.construction == Construction::Tubular {
            "A tubular is about as wide as its label, " b { (counts) } " on any rim, give or take 0.5\u{a0}mm"
        } @else {
            "On a rim of " (typed(inputs.rim.mm())) " a tyre labelled " (tyre.size.width.mm()) " comes out about " b { (counts) } " wide, likely " (likely(fit))
        }
        @match inputs.limit {
            None => ".",
            Some(limit) => { (against(fit, limit)) }
        }
    }
}

fn against(fit: &TyreFit, limit: RaceLimit) -> Markup {
    let limit_mm = typed(limit.mm());
    html! {
        "; against the race limit of " (limit_mm) " that is "
        @if let Some(gauge) = fit.gauge { b class=(class(gauge)) { (gauge_words(gauge)) } }
        "."
    }
}

pub(crate) const fn class(gauge: Gauge) -> &'static str {
    match gauge {
        Gauge::Expected(WidthVerdict::LikelyWithin) | Gauge::Measured(CalliperVerdict::Within) => "good",
        Gauge::Expected(WidthVerdict::Measure) | Gauge::Measured(CalliperVerdict::AtLimit) => "care",
        Gauge::Expected(WidthVerdict::LikelyOver) | Gauge::Measured(CalliperVerdict::Over) => "stop",
    }
}

/// What the gauge says, in a few words.
#[must_use]
pub(crate) fn gauge_words(gauge: Gauge) -> String {
    match gauge {
        Gauge::Expected(verdict) => verdict.to_string(),
        Gauge::Measured(verdict) => verdict.to_string(),
    }
}

/// The range that the mounted width likely lies in.
pub(crate) fn likely(fit: &TyreFit) -> String {
    let (low, high) = fit.width.range_mm();
    format!("{} to {}", plain(low, 1), plain(high, 1))
}

fn pressures(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    match &fit.advice.start {
        _ if tyre.danger().is_some() => html! { (NO_PRESSURE) },
        Ok(start) => html! {
            "Start with " b { (start_of(&start.front)) } " in front and " b { (start_of(&start.rear)) } " behind."
        },
        Err(conflict) => html! { b.stop { (conflict) } },
    }
}

pub(crate) const NO_PRESSURE: &str = "No pressure is given for such a pair.";

/// What has to be said beside the measured width.
#[must_use]
pub(crate) fn width_remark(report: &TyreSection, help: &str) -> String {
    let tyre = &report.tyre;
    let Some((measured, fit)) = tyre.inputs.measured.zip(tyre.fit.as_ref().ok()) else {
        return help.to_owned();
    };
    let computed = mm(fit.width.mounted.mm());
    if !fit.is_measured {
        format!("No tyre is narrower than its rim: left aside. Computed: {computed}")
    } else if !fit.width.explains(measured) {
        format!("Far from the {computed} that label and rim lead to: check all three")
    } else {
        help.to_owned()
    }
}

/// What has to be said beside the rim's field.
#[must_use]
pub(crate) fn rim_remark(report: &TyreSection, help: &str) -> String {
    match &report.tyre.fit {
        Err(error) => error.to_string(),
        Ok(_) => help.to_owned(),
    }
}

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &TyreSection) -> Markup {
    let tyre = &report.tyre;
    let Ok(fit) = &tyre.fit else { return html! {} };
    html! {
        (width_worked(tyre, fit))
        @if !fit.is_measured { p { (fit.width.accuracy) } }
        @if tyre.danger().is_none() { (pressures_worked(tyre, fit)) }
    }
}

fn pressures_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    html! {
        (pressure_worked(tyre, fit))
        p { "Mass and width follow from one aim, the same drop of the tyre. The starting figures, and the lowest usual pressures with a tube, are workshop practice for " (typed(PressureCase::BASE_WIDTH.mm())) "; other widths get both × (" (PressureCase::BASE_WIDTH.mm()) " ÷ width)^1.5, which keeps the reserve before the rim touches. The factors for ground and style are chosen to meet that practice." }
        p { "Lowest here: " (fit.advice.floor) "." }
        @if let Some(loaded) = fit.loaded {
            (worked("Drop and reserve", &spring_law(), &format!(
                "rear: {} on h = {} gives d = {}", with_unit(fit.case.loads().rear.newtons(), 0, "N"), mm(fit.section.height_mm()), mm(loaded.rear.deflection_mm))))
        }
        p { "The law d^1.5 is that of Renart and Roura-Grabulosa, Am. J. Phys. 87, 102 (2019); its constant follows from the drawn arc." }
    }
}

fn spring_law() -> String {
    let (softening, bottoming) = (AirSpring::SOFTENING, AirSpring::BOTTOMING_LOAD);
    format!(
        "F = 4/3 k₀ (1 − {softening} f) p √(2R) d^1.5, f = d ÷ h; reserve = {bottoming} ÷ ((1 − {softening} f) f^1.5)"
    )
}

fn width_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    match tyre.inputs.construction {
        _ if fit.is_measured => {
            html! { p { "The width is your calliper’s, " (mm(fit.section.width().mm())) "; computed it would be " (mm(fit.width.mounted.mm())) "." } }
        }
        Construction::Tubular => html! {},
        _ => worked(
            "Width on the rim",
            "label + 0.4 × (rim − measuring rim)",
            &format!(
                "{} + 0.4 × ({} − {}) = {}; with the casing as an arc {}",
                tyre.size.width.mm(),
                tyre.inputs.rim.mm(),
                plain(tyre.measuring_rim.mm(), 1),
                mm(fit.width.mounted.mm()),
                mm(fit.width.arc.mm())
            ),
        ),
    }
}

fn pressure_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let (inputs, share) = (&tyre.inputs, plain(fit.case.front_share.fraction(), 2));
    let (base_kg, base_mm) = (PressureCase::BASE_KG, PressureCase::BASE_WIDTH.mm());
    worked(
        "Pressure, mean of both wheels",
        &format!(
            "p₀ × (mass ÷ {base_kg} kg) × ({base_mm} mm ÷ width)^1.5 × ground × style; front × (0.5 + x), rear × (1.5 − x)"
        ),
        &format!(
            "{} × ({} ÷ {base_kg}) × ({base_mm} ÷ {})^1.5 × {} × {} = {}, with x = {share}",
            plain(inputs.construction.base_psi(), 0),
            plain(fit.case.total_kg(), 1),
            plain(fit.section.width().mm(), 1),
            inputs.ground.factor(),
            inputs.style.factor(),
            with_unit(fit.advice.mean.psi(), 1, "psi"),
        ),
    )
}

pub(crate) fn rows<T>(lines: &[T], row: impl Fn(&T) -> Vec<String>) -> Vec<Vec<String>> {
    lines.iter().map(row).collect()
}

/// “22 (1.52) ↑”: psi, bar, and whether the start was raised or cut.
pub(crate) fn both_units(wheel: &WheelPressure) -> String {
    let mark = match wheel.limited_by {
        Some(LimitedBy::Floor(_)) => "\u{a0}↑",
        Some(LimitedBy::Ceiling(_)) => "\u{a0}↓",
        None => "",
    };
    let start = wheel.reading(wheel.start);
    format!("{}\u{a0}({}){mark}", plain(start.psi, places(start)), plain(start.bar, 2))
}

/// “24 psi (1.65 bar)”.
pub(crate) fn start_of(wheel: &WheelPressure) -> String {
    let start = wheel.reading(wheel.start);
    format!("{} ({})", with_unit(start.psi, places(start), "psi"), with_unit(start.bar, 2, "bar"))
}

pub(crate) fn places(reading: PressureReading) -> usize {
    usize::from(reading.in_tenths)
}

/// A computed width, to a tenth.
pub(crate) fn mm(mm: f64) -> String {
    with_unit(mm, 1, "mm")
}

/// A width as it was typed or laid down.
pub(crate) fn typed(mm: f64) -> String {
    format!("{mm}\u{a0}mm")
}

/// Where to look for one's own pressure, “22 (the lowest) to 28 psi (1.52 to 1.93 bar)”.
pub(crate) fn range(wheel: &WheelPressure) -> String {
    let [low, high] = [wheel.low, wheel.high].map(|pressure| wheel.reading(pressure));
    let lowest = if wheel.low <= wheel.floor { " (the lowest)" } else { "" };
    if low == high {
        return format!("{}: no less, no more", with_unit(low.bar, 2, "bar"));
    }
    format!(
        "{}{lowest} to {} ({} to {})",
        plain(low.psi, places(low)),
        with_unit(high.psi, places(high), "psi"),
        plain(low.bar, 2),
        with_unit(high.bar, 2, "bar")
    )
}
