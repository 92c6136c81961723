//! How the two set-ups look: A solid, B open. Never by colour alone.

use crate::drawing::palette::Palette;
use crate::drawing::pen::{Pen, Point};
use crate::side::Side;
use plotters::style::RGBColor;

impl Side {
    /// The set-up's colour.
    #[must_use]
    pub const fn ink(self, look: &Palette) -> RGBColor {
        match self {
            Self::A => look.a,
            Self::B => look.b,
        }
    }

    /// The set-up's wash, for areas.
    #[must_use]
    pub const fn wash(self, look: &Palette) -> RGBColor {
        match self {
            Self::A => look.a_wash,
            Self::B => look.b_wash,
        }
    }
}

/// A bar of one set-up: filled for A, outlined for B.
pub(crate) fn bar(pen: &mut Pen, look: &Palette, side: Side, from: Point, to: Point) {
    pen.fill((from.0, from.1 - 1.0), (to.0 + 1.0, to.1 + 1.0), look.paper);
    match side {
        Side::A => pen.fill(from, to, side.ink(look)),
        Side::B => {
            pen.fill(from, to, look.paper);
            pen.frame(from, to, side.ink(look), 1.5);
        }
    }
}

/// A line of set-up A: solid, with a full end. Drawn after [`tube`], so that it lies inside where the two coincide.
pub(crate) fn wire(pen: &mut Pen, look: &Palette, points: &[Point]) {
    pen.path(points, look.a, 3.0);
    if let Some(&end) = points.last() {
        pen.dot(end, 4.5, look.a);
    }
}

/// A line of set-up B: open, with an open end.
pub(crate) fn tube(pen: &mut Pen, look: &Palette, points: &[Point]) {
    pen.path(points, look.b, 9.0);
    pen.path(points, look.paper, 6.0);
    if let Some(&end) = points.last() {
        pen.dot(end, 6.0, look.paper);
        pen.ring(end, 6.0, look.b, 1.5);
    }
}
