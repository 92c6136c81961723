//! What the section is written and drawn from.

use crate::parts::found::BoxFound;
use gear_math::parts::PartsBox;
use std::rc::Rc;

/// “What is best of the box?”, before it is put in words.
#[derive(Debug)]
pub struct BoxSection {
    /// What lies in the box, the parts of A and B among it.
    pub parts: Rc<PartsBox>,
    /// Whether nothing else lies in it.
    pub is_bench_only: bool,
    /// For how many sprockets the shifter is made, where that is to be kept.
    pub sprockets: Option<usize>,
    /// How many sprockets A has.
    pub of_a: usize,
    /// What was found of it; none before it was asked.
    pub found: Option<Rc<BoxFound>>,
}
