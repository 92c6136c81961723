//! How far the wheel rolls.

use crate::number::{plain, with_unit};
use gear_math::Wheel;

/// “2161 mm ±32”: a roll-out by the tyre's size, and how far it may be off.
pub(crate) fn by_size(wheel: &Wheel) -> String {
    let estimate = wheel.estimate();
    format!("{} ±{}", with_unit(estimate.circumference.mm(), 0, "mm"), plain(estimate.give_or_take_mm(), 0))
}
