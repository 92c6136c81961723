//! The cross-section of an inflated tyre, taken as an arc between the edges of its rim.

use crate::wheel::quantity::{MountedWidth, RimInnerWidth};
use core::f64::consts::PI;
use core::fmt;

/// Why a tyre cannot be put on a rim.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum TyreFitError {
    /// The rim is as wide as the tyre or wider.
    RimTooWide,
    /// The measuring rim is as wide as the tyre's label or wider.
    MeasuringRimTooWide,
}

impl fmt::Display for TyreFitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::RimTooWide => "The rim must be narrower inside than the tyre: check both widths.",
            Self::MeasuringRimTooWide => {
                "The measuring rim must be narrower than the tyre: it is marked on the sidewall or follows from the width."
            }
        })
    }
}

impl core::error::Error for TyreFitError {}

/// The cross-section of an inflated tyre: a circular arc through the two edges of its rim.
///
/// The casing is taken as thin. Every length in millimetres; heights are counted from the line through the rim's
/// edges, outward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreSection {
    width: MountedWidth,
    rim: RimInnerWidth,
}

/// The arc to draw a cross-section with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionArc {
    /// Radius of the casing's arc: half the width.
    pub radius_mm: f64,
    /// Centre of the arc above the rim's edges.
    pub centre_height_mm: f64,
    /// Top of the arc above the rim's edges.
    pub height_mm: f64,
    /// Half the distance between the rim's edges, where the arc starts and ends.
    pub half_rim_mm: f64,
    /// Angle at the centre between straight down and the rim's edge, in radians. The arc is the rest of the circle.
    pub rim_angle_rad: f64,
}

impl TyreSection {
    /// A tyre of this mounted width on this rim. For a tubular take the width of the rim's bed.
    ///
    /// # Errors
    /// [`TyreFitError::RimTooWide`] when the rim is as wide as the tyre or wider.
    pub fn new(width: MountedWidth, rim: RimInnerWidth) -> Result<Self, TyreFitError> {
        if rim.mm() < width.mm() { Ok(Self { width, rim }) } else { Err(TyreFitError::RimTooWide) }
    }

    /// Width at the widest point.
    #[must_use]
    pub const fn width(&self) -> MountedWidth {
        self.width
    }

    /// Inner width of the rim.
    #[must_use]
    pub const fn rim(&self) -> RimInnerWidth {
        self.rim
    }

    /// The arc to draw.
    #[must_use]
    pub fn arc(&self) -> SectionArc {
        let radius = self.width.mm() / 2.0;
        let centre_height = radius * self.rim_angle().cos();
        SectionArc {
            radius_mm: radius,
            centre_height_mm: centre_height,
            height_mm: radius + centre_height,
            half_rim_mm: self.rim.mm() / 2.0,
            rim_angle_rad: self.rim_angle(),
        }
    }

    /// Tread above the rim's edges, in millimetres: `h = (W/2)(1 + cos θ)`, `sin θ = A/W`.
    #[must_use]
    pub fn height_mm(&self) -> f64 {
        self.arc().height_mm
    }

    /// Length of the casing from rim edge to rim edge, in millimetres: `W (π − θ)`.
    pub(crate) fn casing_mm(&self) -> f64 {
        casing_mm(self.width.mm(), self.rim.mm())
    }

    pub(crate) fn rim_angle(&self) -> f64 {
        (self.rim.mm() / self.width.mm()).asin()
    }
}

pub(crate) fn casing_mm(width_mm: f64, rim_mm: f64) -> f64 {
    width_mm * (PI - (rim_mm / width_mm).asin())
}
