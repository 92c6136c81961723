//! What the workshop has to know of tyre and pressure.

use crate::bench::field::Field;
use crate::layout::concern::Concern;
use crate::layout::sheet_block::{Block, Part};
use crate::side::Side;
use crate::tyre::report::{Gauge, TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use crate::tyre::words::answer::NO_PRESSURE;
use crate::tyre::words::pressure::{range_in_short, start_of};
use crate::tyre::words::{said, sheet as words};
use gear_math::wheel::PressureCaution;

#[must_use]
pub(crate) fn block(report: &TyreSection) -> Block {
    let mut block = Block::new(words::TITLE);
    report.each().iter().for_each(|section| tyre_of(&mut block, section));
    block.check(Concern::Wheels, said::CLEARANCE_CHECK);
    block
}

fn tyre_of(block: &mut Block, section: &TyreSection) {
    let (tyre, side) = (&section.tyre, section.side);
    if let Some(first) = tyre.first_of_all() {
        block.row_for(
            side,
            if first.is_danger() { words::DANGER } else { words::FIRST },
            said::rim_caution(first),
        );
        block.warns();
    }
    block.row_for(side, words::TYRE, words::tyre(tyre));
    block.on(&[Field::Tyre, Field::Construction]);
    block.row_for(side, words::RIM, words::rim(tyre));
    block.on(&[Field::Rim]);
    match &tyre.fit {
        Err(error) => block.row_for(side, words::WIDTH, said::no_fit(error)),
        Ok(fit) => mounted(block, side, tyre, fit),
    }
    for caution in tyre.cautions.iter().filter(|&&caution| Some(caution) != tyre.first_of_all()) {
        block.check(Concern::Wheels, said::rim_caution(*caution));
    }
}

/// A tyre that goes on its rim.
fn mounted(block: &mut Block, side: Option<Side>, tyre: &TyreReport, fit: &TyreFit) {
    block.row_for(side, words::WIDTH, words::width(tyre, fit));
    if fit.gauge.is_some_and(Gauge::asks_for_a_calliper) {
        block.check(Concern::Measuring, said::HOW_TO_MEASURE);
    }
    if let Some(ceiling) = fit.advice.ceiling.filter(|_| tyre.danger().is_none()) {
        block.row_for(side, words::HIGHEST, said::ceiling(&ceiling));
    }
    block.row_for(side, words::FOR, words::worked_out_for(tyre, fit));
    pressures(block, side, tyre, fit);
    checks(block, fit);
    if tyre.danger().is_none() {
        how_to_measure(block, fit);
    }
}

fn pressures(block: &mut Block, side: Option<Side>, tyre: &TyreReport, fit: &TyreFit) {
    match &fit.advice.start {
        _ if tyre.danger().is_some() => block.row_for(side, words::PRESSURE, NO_PRESSURE.to_owned()),
        Err(conflict) => block.row_for(side, words::PRESSURE, said::no_pressure(conflict)),
        Ok(start) => {
            for (wheel, pressure) in [(words::FRONT, start.front), (words::REAR, start.rear)] {
                block.row_for(
                    side,
                    wheel,
                    words::start_and_range(&start_of(&pressure), &range_in_short(&pressure)),
                );
            }
            block.parts.push(Part::blank(words::OWN_PRESSURE));
        }
    }
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
    cautions.map(|&caution| said::caution(caution)).collect()
}
