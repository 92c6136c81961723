//! Capacity against the length of the cage.

use crate::chain::words::names;
use crate::layout::line::name;
use crate::side::Side;
use gear_math::cage::CageClass;

/// Its title.
pub(crate) const TITLE: &str = "Capacity and the length of the cage";
/// How it is to be read.
pub(crate) const CAPTION: &str = "The curve is what geometry gives a cage of that length; the point is A’s, the ring B’s. Grey: what makers usually state.";
/// The axis of cage lengths.
pub(crate) const ACROSS: &str = "mm between pulley centres";
/// The axis of capacities.
pub(crate) const UP: &str = "teeth";

/// The level that a set-up asks for.
pub(crate) fn needs(side: Side, teeth: u16) -> String {
    format!("{side} needs {teeth}")
}

/// The level that the maker states.
pub(crate) fn states(side: Option<Side>, teeth: u16) -> String {
    match side {
        Some(side) => format!("{side}’s maker: {teeth}"),
        None => format!("maker states {teeth}"),
    }
}

/// The picture in a sentence; `geometry` is a cage's length and what it takes.
pub(crate) fn label(levels: &[String], geometry: Option<[String; 2]>) -> String {
    let levels = levels.join(", ");
    match geometry {
        None => format!("Total capacity against cage length: {levels}."),
        Some([cage, teeth]) => format!(
            "Total capacity against cage length: {levels}; by geometry a cage of {cage} takes {teeth} teeth."
        ),
    }
}

/// A class of cages.
pub(crate) fn class(class: &CageClass) -> String {
    let (least, most) = class.total_capacity;
    format!("Usual {} cages: {least} to {most} teeth, common practice.", names::class(class))
}

/// The cage with a set-up.
pub(crate) fn cage(side: Side, [cage, teeth]: &[String; 2], needed: u16) -> String {
    format!("{side}: a cage of {cage} takes {teeth} teeth by geometry; {needed} are needed.")
}

/// What A and B need and what geometry gives their cages, where that is known.
pub(crate) fn says(needed: [u16; 2], geometry: [Option<[String; 2]>; 2]) -> String {
    let [of_a, of_b] = geometry;
    let [a, b] = [(Side::A, of_a), (Side::B, of_b)].map(|(side, geometry)| {
        let (needed, side) = (needed[side as usize], name(side));
        match geometry {
            Some([_, teeth]) => format!("{side} needs {needed}, by geometry its cage takes {teeth}"),
            None => format!("{side} needs {needed}, its geometry cannot be drawn"),
        }
    });
    format!("{a}; {b}.")
}
