//! A place in the side view.

/// A place in the bicycle's side view.
///
/// Seen from the drive side: origin at the centre of the bottom bracket, x forward, y up, both in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BikePoint {
    /// Forward of the bottom bracket, in millimetres.
    pub x_mm: f64,
    /// Above the bottom bracket, in millimetres.
    pub y_mm: f64,
}

impl BikePoint {
    /// Straight distance to `other`, in millimetres.
    #[must_use]
    pub fn distance_mm(self, other: Self) -> f64 {
        (self.x_mm - other.x_mm).hypot(self.y_mm - other.y_mm)
    }

    /// The point `length_mm` away in the direction `angle_rad`, counted from forward towards up.
    pub(crate) fn along(self, angle_rad: f64, length_mm: f64) -> Self {
        let (sin, cos) = angle_rad.sin_cos();
        Self { x_mm: self.x_mm + length_mm * cos, y_mm: self.y_mm + length_mm * sin }
    }

    pub(crate) const ORIGIN: Self = Self { x_mm: 0.0, y_mm: 0.0 };
}
