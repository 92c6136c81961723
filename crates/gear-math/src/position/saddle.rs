//! Where the saddle is, and what joins the foot to the bike.

use crate::position::point::BikePoint;
use crate::position::quantity::{SaddleHeight, SeatAngle, Setback, SoleStack};
use crate::rider::CrankLength;
use core::f64::consts::PI;

/// Where a saddle is, as it is measured on a bike. The saddle is taken as level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Saddle {
    /// Bottom bracket to saddle top, along the seat tube line.
    pub height: SaddleHeight,
    /// Tip behind the bottom bracket.
    pub setback: Setback,
    /// The seat angle along which the height was measured.
    pub seat_angle: SeatAngle,
}

impl Saddle {
    /// Saddle top above the bottom bracket, in millimetres: `SH · sin σ`.
    #[must_use]
    pub fn vertical_mm(&self) -> f64 {
        self.height.mm() * self.seat_angle.degrees().to_radians().sin()
    }

    /// The saddle's tip, taken at the height of its top.
    #[must_use]
    pub fn tip(&self) -> BikePoint {
        BikePoint { x_mm: -self.setback.mm(), y_mm: self.vertical_mm() }
    }
}

/// What joins the foot to the bicycle: crank, pedal and shoe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Footing {
    /// Length of the cranks.
    pub crank: CrankLength,
    /// Pedal axle to sole.
    pub sole_stack: SoleStack,
}

impl Footing {
    /// Saddle top to sole when the leg is longest, in millimetres: `E = SH + CL − k`.
    ///
    /// The sole lies `k` above the pedal axle, so a thicker stack shortens the leg's way.
    #[must_use]
    pub fn leg_extension_mm(&self, saddle_height_mm: f64) -> f64 {
        saddle_height_mm + self.longest_mm()
    }

    /// Bottom bracket to sole when the leg is longest, in millimetres.
    pub(crate) fn longest_mm(&self) -> f64 {
        self.crank.mm() - self.sole_stack.mm()
    }
}

/// The point `length_mm` up the seat tube line from the bottom bracket.
pub(crate) fn on_seat_line(seat_angle: SeatAngle, length_mm: f64) -> BikePoint {
    BikePoint::ORIGIN.along(PI - seat_angle.degrees().to_radians(), length_mm)
}
