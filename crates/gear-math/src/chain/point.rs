//! A place in the side view of the drivetrain.

/// A place in the drivetrain's side view, seen from the drive side: origin at the rear axle, x forward, y up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PathPoint {
    /// Forward of the rear axle, in millimetres.
    pub x_mm: f64,
    /// Above the rear axle, in millimetres.
    pub y_mm: f64,
}

impl PathPoint {
    pub(super) const REAR_AXLE: Self = Self { x_mm: 0.0, y_mm: 0.0 };

    /// The point `length` away, `forward` radians forward of straight down.
    pub(super) fn below(self, forward: f64, length: f64) -> Self {
        let (sin, cos) = forward.sin_cos();
        Self { x_mm: self.x_mm + length * sin, y_mm: self.y_mm - length * cos }
    }

    /// Straight distance to `other`, in millimetres.
    #[must_use]
    pub fn distance_mm(self, other: Self) -> f64 {
        let [dx, dy] = self.to(other);
        dx.hypot(dy)
    }

    pub(super) fn to(self, other: Self) -> [f64; 2] {
        [other.x_mm - self.x_mm, other.y_mm - self.y_mm]
    }
}
