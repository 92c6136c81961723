//! How a gear looks: crossed, to be avoided, or neither.

use crate::drawing::looks::bar;
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Pen, Point};
use crate::rings::setup::GearLine;
use crate::side::Side;

/// The bar of a gear, or a thin line where it is not to be used.
pub(crate) fn gear_bar(pen: &mut Pen, look: &Palette, side: Side, line: &GearLine, from: Point, to: Point) {
    let middle = f64::midpoint(from.1, to.1);
    if line.avoid {
        pen.line((from.0, middle), (to.0, middle), side.ink(look), 1.0);
    } else {
        bar(pen, look, side, from, to);
    }
}
