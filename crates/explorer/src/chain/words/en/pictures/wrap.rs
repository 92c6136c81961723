//! Slack that the cage must take up in every gear.

use crate::chain::words::names::teeth;
use crate::layout::line::name;
use crate::rings::setup::GearLine;
use crate::side::Side;
use gear_math::gears::Chainring;

/// Its title.
pub(crate) const TITLE: &str = "Chain the cage must take up";
/// How it is to be read.
pub(crate) const CAPTION: &str = "Teeth of slack in every gear, counted from the largest ring and sprocket. Crossed out: beyond the maker’s capacity, there the chain hangs.";
/// The axis of sprockets.
pub(crate) const ACROSS: &str = "sprocket";

/// The level that the maker states.
pub(crate) fn capacity(teeth: u16) -> String {
    format!("capacity {teeth}")
}

/// The line of one ring.
pub(crate) fn ring(ring: Chainring) -> String {
    format!("{ring} ring")
}

/// The picture in a sentence, from what A and B need.
pub(crate) fn label(needed: [u16; 2], capacities: [Option<u16>; 2]) -> String {
    let [a, b] = needed.map(teeth);
    let [of_a, of_b] = capacities.map(|capacity| {
        capacity.map_or("no capacity was given".to_owned(), |teeth| format!("the cage has {teeth}"))
    });
    let limit = if of_a == of_b { of_a } else { format!("on A {of_a}, on B {of_b}") };
    format!("Chain to be taken up in every gear: A needs {a} of capacity, B needs {b} of capacity; {limit}.")
}

/// One gear.
pub(crate) fn gear(side: Side, line: &GearLine, capacity: Option<u16>) -> String {
    let (gear, slack) = (line.gear, teeth(line.slack));
    match capacity {
        _ if line.beyond_cage > 0 => format!(
            "{side} {gear}: {slack} of slack to take up; {} more than the cage can take, so the chain hangs.",
            line.beyond_cage
        ),
        Some(capacity) => {
            format!("{side} {gear}: {slack} of slack to take up; {} to spare.", capacity - line.slack)
        }
        None => format!("{side} {gear}: {slack} of slack to take up."),
    }
}

/// What A and B need, against what their cages have.
pub(crate) fn says(needed: [u16; 2], capacities: [Option<u16>; 2]) -> String {
    let [a, b] = [Side::A, Side::B].map(|side| {
        let (needed, has) = (needed[side as usize], capacities[side as usize]);
        let (side, need) = (name(side), teeth(needed));
        match has {
            None => format!("{side} needs {need}; what its cage takes is not known"),
            Some(has) if has < needed => {
                format!("{side} needs {need}, {} more than its cage takes", needed - has)
            }
            Some(has) if has == needed => format!("{side} needs {need}, all that its cage takes"),
            Some(has) => format!("{side} needs {need}, its cage takes {has}"),
        }
    });
    format!("{a}; {b}.")
}
