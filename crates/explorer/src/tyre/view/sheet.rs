//! What the workshop has to know of tyre and pressure.

use crate::bench::field::Field;
use crate::layout::sheet_block::{Block, Part};
use crate::layout::sheet_checks::Concern;
use crate::number::{plain, with_unit};
use crate::tyre::report::{Gauge, TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use crate::tyre::view::answer::{NO_PRESSURE, gauge_words, likely, mm, places, range, start_of, typed};
use gear_math::wheel::{CLEARANCE_CHECK, Construction, HOW_TO_MEASURE, PressureCaution, WheelPressure};

#[must_use]
pub(crate) fn block(report: &TyreSection) -> Block {
    let tyre = &report.tyre;
    let inputs = &tyre.inputs;
    let mut block = Block::new("Tyre and pressure");
    if let Some(first) = tyre.first_of_all() {
        block.row(if first.is_danger() { "Danger" } else { "First" }, first.to_string());
        block.on(&[]);
    }
    block.row("Tyre", format!("{}, {}", tyre.size, inputs.construction));
    block.on(&[Field::Tyre, Field::Construction]);
    block.row("Rim", format!("{} inside, {}", typed(inputs.rim.mm()), rim_type(tyre)));
    block.on(&[Field::Rim]);
    match &tyre.fit {
        Err(error) => block.row("Width", error.to_string()),
        Ok(fit) => mounted(&mut block, tyre, fit),
    }
    for caution in tyre.cautions.iter().filter(|&&caution| Some(caution) != tyre.first_of_all()) {
        block.check(Concern::Wheels, caution.to_string());
    }
    block.check(Concern::Wheels, CLEARANCE_CHECK);
    block
}

fn rim_type(tyre: &TyreReport) -> &'static str {
    match tyre.inputs.construction {
        Construction::Tubular => "bed of a tubular rim",
        _ if tyre.inputs.marks.hookless => "hookless",
        _ => "hooked",
    }
}

/// A tyre that goes on its rim.
fn mounted(block: &mut Block, tyre: &TyreReport, fit: &TyreFit) {
    block.row("Width", width(tyre, fit));
    if fit.gauge.is_some_and(Gauge::asks_for_a_calliper) {
        block.check(Concern::Measuring, HOW_TO_MEASURE);
    }
    if let Some(ceiling) = fit.advice.ceiling.filter(|_| tyre.danger().is_none()) {
        block.row("Highest allowed", ceiling.to_string());
    }
    block.row("For", worked_out_for(tyre, fit));
    pressures(block, tyre, fit);
    checks(block, fit);
    if tyre.danger().is_none() {
        how_to_measure(block, fit);
    }
}

fn width(tyre: &TyreReport, fit: &TyreFit) -> String {
    let counts = mm(fit.section.width().mm());
    let width = if fit.is_measured {
        format!("{counts} measured")
    } else {
        format!("{counts} computed, likely {}", likely(fit))
    };
    match tyre.inputs.limit.zip(fit.gauge) {
        Some((limit, gauge)) => format!("{width}; limit {}: {}", typed(limit.mm()), gauge_words(gauge)),
        None => width,
    }
}

fn worked_out_for(tyre: &TyreReport, fit: &TyreFit) -> String {
    let all = with_unit(fit.case.total_kg(), 1, "kg");
    format!("{all} in all, {} ground, style {}", tyre.inputs.ground, tyre.inputs.style)
}

fn pressures(block: &mut Block, tyre: &TyreReport, fit: &TyreFit) {
    match &fit.advice.start {
        _ if tyre.danger().is_some() => block.row("Pressure", NO_PRESSURE.to_owned()),
        Err(conflict) => block.row("Pressure", conflict.to_string()),
        Ok(start) => {
            for (wheel, pressure) in [("Front", start.front), ("Rear", start.rear)] {
                block.row(wheel, format!("{}; try {}", start_of(&pressure), in_short(&pressure)));
            }
            block.parts.push(Part::blank("Own pressure"));
        }
    }
}

/// Where to look for one's own pressure, “22 to 28 (1.52 to 1.93), no less”: in psi, then in bar, as the start before it.
fn in_short(wheel: &WheelPressure) -> String {
    let [low, high] = [wheel.low, wheel.high].map(|pressure| wheel.reading(pressure));
    if low == high {
        return range(wheel);
    }
    let no_less = if wheel.low <= wheel.floor { ", no less" } else { "" };
    let [from, to] = [low, high].map(|it| plain(it.psi, places(it)));
    format!("{from} to {to} ({} to {}){no_less}", plain(low.bar, 2), plain(high.bar, 2))
}

/// What concerns the marks is one check; what only explains the figures stays on the page.
fn checks(block: &mut Block, fit: &TyreFit) {
    block.check(Concern::Wheels, cautions(fit, PressureCaution::is_about_marks).join(" "));
    for words in cautions(fit, PressureCaution::is_checked_by_hand) {
        block.check(Concern::Wheels, words);
    }
}

/// What to make of the pressures given.
fn how_to_measure(block: &mut Block, fit: &TyreFit) {
    for words in cautions(fit, PressureCaution::tells_how_to_measure) {
        block.check(Concern::Measuring, words);
    }
}

fn cautions(fit: &TyreFit, wanted: fn(PressureCaution) -> bool) -> Vec<String> {
    let cautions = fit.advice.cautions.iter().filter(|&&caution| wanted(caution));
    cautions.map(ToString::to_string).collect()
}
