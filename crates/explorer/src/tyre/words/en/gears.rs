//! The gears on another tyre.

use crate::layout::line::{Line, strong};
use crate::number::{percent, with_unit};
use crate::side::Side;
use crate::tyre::report::OtherTyre;
use gear_math::Wheel;

pub(crate) const EVERY: &str = "Every gear on both tyres";
pub(crate) const GEAR: &str = "Gear";
pub(crate) const LEFT_ASIDE: &str = "Your measured roll-out is left aside here.";

/// What the tyre to compare with does to every gear.
pub(crate) fn other(wheel: &Wheel, other: &OtherTyre) -> Line {
    let is_longer = other.size.width > wheel.tyre.width;
    let step = percent(other.step.percent(), 1);
    let change = strong(&if is_longer { format!("{step} longer") } else { format!("{step} shorter") });
    let [there, here] = [other.size, wheel.tyre].map(|size| with_unit(size.circumference().mm(), 0, "mm"));
    let (other, own) = (other.size, wheel.tyre);
    format!(
        "With {other} every gear is {change}: it rolls {there} where {own} rolls {here}, both by their size."
    )
    .into()
}

/// Title of the table of one set-up's gears.
pub(crate) fn title(side: Side, own: &str, other: &str) -> String {
    format!("{side} on {own} and {other}")
}
