//! What the workshop has to know of tyre and pressure.

use crate::bench::field::Field;
use crate::layout::sheet_block::{Block, Part};
use crate::layout::sheet_checks::Concern;
use crate::number::with_unit;
use crate::tyre::report::{Gauge, TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use crate::tyre::view::answer::{NO_PRESSURE, gauge_words, likely, mm, range, start_of, typed};
use gear_math::wheel::{CLEARANCE_CHECK, Construction, HOW_TO_MEASURE, PressureCaution};

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
    block.row("Highest allowed", highest(fit));
    block.row("Worked out for", worked_out_for(tyre, fit));
    pressures(block, tyre, fit);
    checks(block, fit);
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

fn highest(fit: &TyreFit) -> String {
    fit.advice.ceiling.map_or("read it off tyre and rim".to_owned(), |ceiling| ceiling.to_string())
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
                block.row(wheel, format!("{}; try {}", start_of(&pressure), range(&pressure)));
            }
            block.parts.push(Part::blank("Own pressure, front and rear"));
        }
    }
}

/// What concerns the marks is one check; what only explains the figures stays on the page.
fn checks(block: &mut Block, fit: &TyreFit) {
    let of = |wanted: fn(PressureCaution) -> bool| {
        let cautions = fit.advice.cautions.iter().filter(move |&&caution| wanted(caution));
        cautions.map(ToString::to_string).collect::<Vec<_>>()
    };
    block.check(Concern::Wheels, of(PressureCaution::is_about_marks).join(" "));
    for words in of(PressureCaution::is_checked_by_hand) {
        block.check(Concern::Wheels, words);
    }
    for words in of(PressureCaution::tells_how_to_measure) {
        block.check(Concern::Measuring, words);
    }
}
