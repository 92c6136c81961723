//! How wide a labelled tyre comes out on a rim.

use crate::solve::point_reaching;
use crate::wheel::quantity::{MountedWidth, NominalWidth, RimInnerWidth};
use crate::wheel::section::{TyreFitError, TyreSection, casing_mm};
use core::f64::consts::FRAC_2_PI;
use core::fmt;

/// Measured beside computed width, in millimetres (estimate).
const EXPLAINED_MM: f64 = 4.0;

/// The width of a tyre as mounted, computed from its label.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreWidth {
    /// By the linear rule: the figure to use.
    pub mounted: MountedWidth,
    /// By the arc model, in which the casing keeps its length: the check on the linear rule.
    pub arc: MountedWidth,
    /// How far real tyres stray from it.
    pub accuracy: WidthAccuracy,
}

/// How far measured tyres stray from the computed width.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WidthAccuracy {
    /// Clincher or tubeless tyres.
    ///
    /// Six published readings came out 0.3 to 3.1 mm wider than computed, mean 1.6; people tend to report the wide
    /// ones, so 0.5 ± 1.2 mm is assumed (estimate).
    Wired,
    /// Tubulars: within about 0.5 mm of the label on any rim (a maker's journal).
    Tubular,
}

impl WidthAccuracy {
    /// How much wider than computed such tyres come out in the mean, in millimetres.
    #[must_use]
    pub const fn bias_mm(self) -> f64 {
        match self {
            Self::Wired => 0.5,
            Self::Tubular => 0.0,
        }
    }

    /// Usual spread about that mean, in millimetres either way.
    #[must_use]
    pub const fn spread_mm(self) -> f64 {
        match self {
            Self::Wired => 1.2,
            Self::Tubular => 0.5,
        }
    }
}

impl fmt::Display for WidthAccuracy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Wired => {
                "Expect about 0.5 mm more than computed, give or take 1.2 mm. The six readings found in print were all \
                 wider than computed, by 0.3 to 3.1 mm."
            }
            Self::Tubular => "Expect the label's width, give or take 0.5 mm, on any rim.",
        })
    }
}

impl TyreWidth {
    /// Growth of a tyre with its rim, in millimetres per millimetre.
    ///
    /// UN tyre regulations, paragraph 6.1.1.1, use this form with this number; the bicycle trade repeats it.
    pub const PER_RIM: f64 = 0.4;

    /// A tubular: as wide as its label, whatever the rim.
    #[must_use]
    pub const fn tubular(label: NominalWidth) -> Self {
        let width = MountedWidth::computed(label.mm());
        Self { mounted: width, arc: width, accuracy: WidthAccuracy::Tubular }
    }

    /// A clincher or tubeless tyre on a rim other than its measuring rim.
    ///
    /// # Formula
    /// ```text
    /// W = W_label + 0.4 (A − A_m)
    /// ```
    /// `A` inner width of the rim, `A_m` of the measuring rim. The arc model solves `W (π − θ) = W_label (π − θ_m)`
    /// with `sin θ = A/W`; both agree within 0.2 mm on rims in use.
    ///
    /// # Errors
    /// - [`TyreFitError::RimTooWide`] when the rim is as wide as the label or wider.
    /// - [`TyreFitError::MeasuringRimTooWide`] when the measuring rim is.
    ///
    /// # Example
    /// ```
    /// use gear_math::wheel::{NominalWidth, RimInnerWidth, TyreFitError, TyreWidth};
    /// let (label, measuring_rim) = (NominalWidth::new(32.0)?, RimInnerWidth::new(21.0)?);
    /// let width = TyreWidth::on_rim(label, RimInnerWidth::new(25.0)?, measuring_rim)?;
    /// assert_eq!(width.mounted.mm(), 33.6);
    /// assert_eq!(TyreWidth::on_rim(label, RimInnerWidth::new(35.0)?, measuring_rim), Err(TyreFitError::RimTooWide));
    /// # Ok::<(), Box<dyn core::error::Error>>(())
    /// ```
    pub fn on_rim(
        label: NominalWidth,
        rim: RimInnerWidth,
        measuring_rim: RimInnerWidth,
    ) -> Result<Self, TyreFitError> {
        let labelled = MountedWidth::computed(label.mm());
        let as_measured =
            TyreSection::new(labelled, measuring_rim).map_err(|_| TyreFitError::MeasuringRimTooWide)?;
        TyreSection::new(labelled, rim)?;
        Ok(Self {
            mounted: MountedWidth::computed(label.mm() + Self::PER_RIM * (rim.mm() - measuring_rim.mm())),
            arc: MountedWidth::computed(arc_width_mm(as_measured.casing_mm(), rim.mm())),
            accuracy: WidthAccuracy::Wired,
        })
    }

    /// Whether a calliper may well have read `measured` on this tyre: within 4 mm of the computed width, a little more than
    /// the 3.1 mm by which the widest reading in print exceeds it (estimate). If not, either was probably mistyped.
    #[must_use]
    pub fn explains(&self, measured: MountedWidth) -> bool {
        (measured.mm() - self.mounted.mm()).abs() <= EXPLAINED_MM
    }

    /// Lowest and highest width to reckon with, in millimetres.
    #[must_use]
    pub fn range_mm(&self) -> (f64, f64) {
        let middle = self.mounted.mm() + self.accuracy.bias_mm();
        (middle - self.accuracy.spread_mm(), middle + self.accuracy.spread_mm())
    }
}

/// The width of a casing of this length on this rim. It lies between the two ends of what an arc can be: as wide as the
/// rim, and half a circle. The casing must be longer than half a circle over the rim.
fn arc_width_mm(casing: f64, rim: f64) -> f64 {
    point_reaching(casing, rim, casing * FRAC_2_PI, |width| casing_mm(width, rim))
}
