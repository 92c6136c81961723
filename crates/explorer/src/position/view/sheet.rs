//! What the workshop has to know of the position.

use crate::bench::field::Field;
use crate::layout::concern::Concern;
use crate::layout::sheet_block::{Block, Part};
use crate::position::inputs::PositionInputs;
use crate::position::report::{BAR, DROP, FRONT, PositionReport, SADDLE};
use crate::position::section::PositionSection;
use crate::position::words::answer::rails;
use crate::position::words::names;
use crate::position::words::sheet as words;
use gear_math::position::PositionCaution;

/// The section's rows and checks.
#[must_use]
pub(crate) fn block(report: &PositionSection) -> Block {
    let position = &report.position;
    let mut block = Block::new(words::TITLE);
    saddle(&mut block, position);
    bar(&mut block, position);
    carried_over(&mut block, &position.inputs);
    feet(&mut block, position);
    for measure in words::BUILT {
        block.parts.push(Part::blank(measure));
    }
    checks(&mut block, &position.cautions);
    block
}

fn saddle(block: &mut Block, position: &PositionReport) {
    block.row(words::SADDLE_HEIGHT, words::saddle_height(position));
    block.on(SADDLE);
    block.row(words::SADDLE_TIP, names::setback(position.cross.setback_mm));
    block.on(position.tip_fields());
    block.row(words::RAILS, rails(position));
    block.on(BAR);
}

fn bar(block: &mut Block, position: &PositionReport) {
    block.row(words::TIP_TO_BAR, words::tip_to_bar(position.tape_mm()));
    block.on(BAR);
    block.row(words::BAR_CENTRE, names::below(position.cross.bar_drop_mm));
    block.on(DROP);
    block.row(words::STEM, words::stem(position));
    block.row(words::FRAME, words::frame(&position.inputs));
    block.on(FRONT);
}

/// What shall differ from the road bike.
fn carried_over(block: &mut Block, inputs: &PositionInputs) {
    block.row(words::CHANGES, words::changes(&inputs.changes));
    block.on(&[Field::LowerBy, Field::BarUpBy, Field::BarCloserBy]);
    if let Some((road, cross)) = inputs.bars.road.zip(inputs.bars.cross) {
        block.row(words::HANDLEBAR, words::handlebar(road, cross));
        block.on(&[]);
    }
}

fn feet(block: &mut Block, position: &PositionReport) {
    block.row(words::FEET, words::feet(&position.inputs.cross.footing));
    block.on(&[Field::CrossCrank, Field::CrossStack]);
    if let Some(toes) = position.toes {
        block.row(words::TOES, words::toes(&toes, position.toes_of_b.as_ref()));
    }
}

/// What belongs together is one check; what is no check stands apart, and the measures of a race's rules stay on the page.
fn checks(block: &mut Block, cautions: &[PositionCaution]) {
    for together in PositionCaution::BY_HAND {
        let of_them: Vec<_> = cautions.iter().copied().filter(|caution| together.contains(caution)).collect();
        block.check(Concern::Cockpit, names::cautions(&of_them));
    }
    let by_hand = PositionCaution::BY_HAND.concat();
    let is_told =
        |caution: &&PositionCaution| !by_hand.contains(caution) && **caution != PositionCaution::RaceMeasures;
    for &caution in cautions.iter().filter(is_told) {
        let is_note = PositionCaution::NOTES.contains(&caution);
        block.check(if is_note { Concern::Measuring } else { Concern::Cockpit }, names::caution(caution));
    }
}
