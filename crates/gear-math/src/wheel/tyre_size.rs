//! A tyre by its ISO 5775 numbers.

use crate::{BeadSeat, Circumference, NominalWidth};
use core::fmt;

/// Nominal width and bead seat of a tyre. Printed as `33-622`, width first, as ISO 5775 has it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreSize {
    /// Width the tyre is sold by.
    pub width: NominalWidth,
    /// Bead seat of rim and tyre.
    pub bead_seat: BeadSeat,
}

impl TyreSize {
    /// Circumference of the unloaded wheel as the size alone gives it.
    ///
    /// # Formula
    /// C = π (BSD + 2 w), with the bead seat diameter BSD and the nominal width w, taken as the height of the
    /// tyre. Source: nominal overall diameter of ISO 5775; within 0.6 % of the setting tables of cycle computers
    /// for 18 to 45 mm on 622 mm.
    #[must_use]
    pub fn circumference(self) -> Circumference {
        Circumference::around(f64::from(self.bead_seat.mm()) + 2.0 * self.width.mm())
    }
}

impl fmt::Display for TyreSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.width.mm(), self.bead_seat.mm())
    }
}
