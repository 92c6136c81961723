//! How the two set-ups look: A solid, B open. Never by colour alone.

use super::palette::Palette;
use super::pen::{Drawn, Pen, Point};
use crate::report::Side;
use plotters::style::RGBColor;
use plotters_backend::DrawingBackend;

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
pub(super) fn bar<B: DrawingBackend>(
    pen: &mut Pen<'_, B>,
    look: &Palette,
    side: Side,
    from: Point,
    to: Point,
) -> Drawn<B> {
    match side {
        Side::A => pen.fill(from, to, side.ink(look)),
        Side::B => {
            pen.fill(from, to, look.paper)?;
            pen.frame(from, to, side.ink(look), 1.5)
        }
    }
}
