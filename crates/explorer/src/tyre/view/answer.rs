//! “Which tyre, how hard?”: the answer, what moves it, and how it was worked out.

use crate::layout::line::{Line, Look};
use crate::layout::pieces::{name, worked};
use crate::number::{plain, trimmed, with_unit};
use crate::tyre::report::{TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use crate::tyre::words::pressure::start_of;
use crate::tyre::words::width::mm;
use crate::tyre::words::{answer as words, said, working};
use crate::units;
use gear_math::PressureCase;
use gear_math::typed::Unit;
use gear_math::wheel::{Construction, PressureCaution, RimCaution, TyreWidth};
use maud::{Markup, html};

/// The sentence that answers, what narrows it, and the cautions.
#[must_use]
pub(crate) fn answer(report: &TyreSection) -> Markup {
    of_each(report, answer_of)
}

/// The same of both set-ups, or of each under its name where they differ.
pub(crate) fn of_each(report: &TyreSection, told: fn(&TyreSection) -> Markup) -> Markup {
    html! {
        @for section in report.each() {
            @if let Some(side) = section.side { h3 { (name(side)) } }
            (told(&section))
        }
    }
}

fn answer_of(report: &TyreSection) -> Markup {
    let tyre = &report.tyre;
    match &tyre.fit {
        Err(error) => html! { p { (words::cannot_go_on(error)) } },
        Ok(fit) => html! {
            @if let Some(first) = tyre.first_of_all() { p { (caution(first)) } }
            p { (words::width(report, fit)) " " (pressures(tyre, fit)) }
            @if tyre.danger().is_none() { (marks(fit)) (beyond_the_formula(fit)) }
        },
    }
}

/// What moved the pressures, and what to make of them.
#[must_use]
pub(crate) fn why(report: &TyreSection) -> Markup {
    of_each(report, |report| match &report.tyre.fit {
        Ok(fit) if report.tyre.danger().is_none() => about_pressures(&report.tyre, fit),
        _ => html! {},
    })
}

fn beyond_the_formula(fit: &TyreFit) -> Markup {
    html! {
        @for caution in fit.advice.cautions.iter().filter(|caution| caution.is_beyond_the_formula()) {
            p.care { (said::caution(*caution)) }
        }
    }
}

fn caution(caution: RimCaution) -> Line {
    let look = if caution.is_danger() { Look::Stop } else { Look::Care };
    look.part(&said::rim_caution(caution)).into()
}

/// How the marks limit the pressures, with the way to what was not typed of them.
fn marks(fit: &TyreFit) -> Markup {
    html! {
        p.care {
            @for caution in fit.advice.cautions.iter().filter(|caution| caution.is_about_marks()) { (said::caution(*caution)) " " }
        }
    }
}

/// What moved the pressures, and what to make of them.
fn about_pressures(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let cautions =
        |of: fn(PressureCaution) -> bool| fit.advice.cautions.iter().filter(move |&&caution| of(caution));
    html! {
        p {
            (words::loaded_with(&tyre.inputs))
            @if fit.case.marks.tyre.is_none() { " " (words::tyre_mark()) }
            @if fit.case.marks.rim.is_none() { " " (words::rim_mark()) }
        }
        @for limit in said::limits(&fit.advice) { p { (limit) } }
        @for caution in cautions(PressureCaution::tells_of_a_start) { p { (said::caution(*caution)) } }
    }
}

fn pressures(tyre: &TyreReport, fit: &TyreFit) -> Line {
    match &fit.advice.start {
        _ if tyre.danger().is_some() => words::NO_PRESSURE.into(),
        Ok(start) => words::start_with(&start_of(&start.front), &start_of(&start.rear)),
        Err(conflict) => Look::Stop.part(&said::no_pressure(conflict)).into(),
    }
}

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &TyreSection) -> Markup {
    of_each(report, working_of)
}

fn working_of(report: &TyreSection) -> Markup {
    let tyre = &report.tyre;
    let Ok(fit) = &tyre.fit else { return html! {} };
    html! {
        (width_worked(tyre, fit))
        @if !fit.is_measured { p { (said::accuracy(fit.width.accuracy)) } }
        @if tyre.danger().is_none() { (pressures_worked(tyre, fit)) }
    }
}

fn pressures_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    html! {
        (pressure_worked(tyre, fit))
        p { (working::practice()) }
        p { (working::lowest(&fit.advice.floor)) }
        @if let Some(loaded) = fit.loaded {
            (worked(working::DROP, &working::spring_law(), &working::drop(
                &with_unit(fit.case.loads().rear.newtons(), 0, "N"), &mm(fit.section.height_mm()), &mm(loaded.rear.deflection_mm))))
        }
        p { (working::law()) }
    }
}

fn width_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let computed = mm(fit.width.mounted.mm());
    match tyre.inputs.construction {
        _ if fit.is_measured => {
            html! { p { (working::measured(&mm(fit.section.width().mm()), &computed)) } }
        }
        Construction::Tubular => html! {},
        _ => {
            let [label, rim, per_rim] =
                [tyre.size.width.mm(), tyre.inputs.rim.mm(), TyreWidth::PER_RIM].map(trimmed);
            let sum = format!("{label} + {per_rim} × ({rim} − {})", plain(tyre.measuring_rim.mm(), 1));
            let numbers = working::width(&sum, &computed, &mm(fit.width.arc.mm()));
            worked(working::WIDTH, &working::width_formula(), &numbers)
        }
    }
}

fn pressure_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let (inputs, share) = (&tyre.inputs, plain(fit.case.front_share.fraction(), 2));
    let base = Unit::Bar.told(inputs.construction.base_psi(), Unit::Psi);
    let sum = format!(
        "{} × ({} ÷ {}) × ({} ÷ {})^{} × {} × {}",
        units::pressures().number(base, 3),
        units::masses().number(fit.case.total_kg(), 1),
        units::masses().typed(PressureCase::BASE_KG),
        trimmed(PressureCase::BASE_WIDTH.mm()),
        plain(fit.section.width().mm(), 1),
        trimmed(1.5),
        trimmed(inputs.ground.factor()),
        trimmed(inputs.style.factor()),
    );
    let mean = units::pressures().print(fit.advice.mean.bar(), 3);
    let numbers = working::pressure(&sum, &mean, &share);
    worked(working::PRESSURE, &working::pressure_formula(), &numbers)
}

pub(crate) fn rows<T>(lines: &[T], row: impl Fn(&T) -> Vec<String>) -> Vec<Vec<String>> {
    lines.iter().map(row).collect()
}
