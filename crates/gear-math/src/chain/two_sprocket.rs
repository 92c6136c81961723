//! Chain round two wheels and nothing else: the base of every workshop rule.

use crate::chain::measures::{ChainLinks, ChainstayLength};
use crate::chain::pitch_circle::PitchCircle;
use crate::gears::Gear;
use crate::quantity::measured;
use crate::quantity::{Limits, OutOfLimits};
use core::f64::consts::{PI, TAU};
use core::fmt;

measured! {
    /// Axle to axle distance of a two-wheel chain drive, in millimetres.
    CentreDistance(mm): "centre distance", "mm", 20.0 ..= 5000.0;
}

/// A chain drive of two wheels at a fixed centre distance.
///
/// # Example
/// ```
/// use gear_math::chain::{CentreDistance, ChainPitch, PitchCircle, TwoSprocketDrive};
/// let wheel = |teeth| PitchCircle::new(teeth, ChainPitch::BICYCLE).unwrap();
/// let drive = TwoSprocketDrive::new(wheel(40), wheel(42), CentreDistance::new(430.0).unwrap()).unwrap();
/// assert!((drive.exact_links() - 108.7195).abs() < 1e-4);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoSprocketDrive {
    smaller: PitchCircle,
    larger: PitchCircle,
    centres: CentreDistance,
}

/// Why two wheels make no drive.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum TwoSprocketError {
    /// The wheels are for chains of different pitch.
    PitchDiffers,
    /// The centres are so close that the wheels run into each other.
    WheelsOverlap,
}

impl fmt::Display for TwoSprocketError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::PitchDiffers => "both wheels must be for chain of the same pitch",
            Self::WheelsOverlap => {
                "the wheels run into each other: type a larger centre distance or fewer teeth"
            }
        })
    }
}

impl core::error::Error for TwoSprocketError {}

impl CentreDistance {
    /// Every chainstay lies within [`Self::LIMITS`].
    const fn of_bicycle(chainstay: ChainstayLength) -> Self {
        Self(chainstay.mm())
    }
}

impl TwoSprocketDrive {
    /// A drive of two wheels; their order does not matter.
    ///
    /// # Errors
    /// - [`TwoSprocketError::PitchDiffers`] when the pitches differ;
    /// - [`TwoSprocketError::WheelsOverlap`] when the centre distance does not exceed the sum of the radii.
    pub fn new(
        first: PitchCircle,
        second: PitchCircle,
        centres: CentreDistance,
    ) -> Result<Self, TwoSprocketError> {
        if first.pitch() != second.pitch() {
            return Err(TwoSprocketError::PitchDiffers);
        }
        if first.radius_mm() + second.radius_mm() >= centres.mm() {
            return Err(TwoSprocketError::WheelsOverlap);
        }
        let (smaller, larger) =
            if first.teeth() <= second.teeth() { (first, second) } else { (second, first) };
        Ok(Self { smaller, larger, centres })
    }

    /// Ring and sprocket of a bicycle, whose limits keep the wheels apart.
    pub(super) const fn of_bicycle(gear: Gear, chainstay: ChainstayLength) -> Self {
        let [ring, sprocket] = [gear.ring.teeth(), gear.sprocket.teeth()];
        let (smaller, larger) = if ring < sprocket { (ring, sprocket) } else { (sprocket, ring) };
        Self {
            smaller: PitchCircle::of_bicycle(smaller),
            larger: PitchCircle::of_bicycle(larger),
            centres: CentreDistance::of_bicycle(chainstay),
        }
    }

    /// The workshop rule for the largest gear: the shortest chain that closes without the derailleur, plus one
    /// pair of links (common practice). The bare chain would break something; the pair is the whole margin.
    #[must_use]
    pub fn plus_two(&self) -> ChainLinks {
        ChainLinks::even_up(self.exact_links()).plus(2)
    }

    /// Chain length in links, exact.
    ///
    /// # Formula
    /// L/p = 2 (C/p) cos β + N₁ (π − 2β)/2π + N₂ (π + 2β)/2π with sin β = (r₂ − r₁)/C, where C is the centre
    /// distance, p the pitch, N₁ ≤ N₂ the teeth and r₁ ≤ r₂ the pitch radii. Derived; the arcs count teeth.
    #[must_use]
    pub fn exact_links(&self) -> f64 {
        let beta = ((self.larger.radius_mm() - self.smaller.radius_mm()) / self.centres.mm()).asin();
        let [n1, n2] = self.teeth();
        2.0 * self.centre_pitches() * beta.cos() + (n1 * (PI - 2.0 * beta) + n2 * (PI + 2.0 * beta)) / TAU
    }

    /// Chain length in links by the handbook's approximation.
    ///
    /// # Formula
    /// L/p ≈ 2C/p + (N₁ + N₂)/2 + ((N₂ − N₁)/2π)² p/C, symbols as in [`exact_links`](Self::exact_links).
    /// Source: V. B. Bhandari, *Design of Machine Elements*, chapter on chain drives.
    #[must_use]
    pub fn handbook_links(&self) -> f64 {
        let [n1, n2] = self.teeth();
        2.0 * self.centre_pitches() + (n1 + n2) / 2.0 + self.square_term() / self.centre_pitches()
    }

    /// The shortest chain that closes round both wheels by the handbook's length: the next even count.
    #[must_use]
    pub fn closing_links(&self) -> ChainLinks {
        ChainLinks::even_up(self.handbook_links())
    }

    /// The centre distance in millimetres at which a chain of `links` is just taut; `None` when it cannot reach
    /// round both wheels.
    ///
    /// # Formula
    /// C = (p/4) (a + √(a² − 8 ((N₂ − N₁)/2π)²)) with a = L − (N₁ + N₂)/2. Source: as
    /// [`handbook_links`](Self::handbook_links), of which it is the inverse.
    #[must_use]
    pub fn taut_centres_mm(&self, links: ChainLinks) -> Option<f64> {
        let [n1, n2] = self.teeth();
        let free = f64::from(links.count()) - (n1 + n2) / 2.0;
        let root = free * free - 8.0 * self.square_term();
        (free > 0.0 && root >= 0.0).then(|| self.smaller.pitch().mm() / 4.0 * (free + root.sqrt()))
    }

    pub(super) const fn centres_mm(&self) -> f64 {
        self.centres.mm()
    }

    /// Teeth of the smaller and the larger wheel.
    pub(super) fn teeth(&self) -> [f64; 2] {
        [self.smaller, self.larger].map(|wheel| f64::from(wheel.teeth()))
    }

    fn centre_pitches(&self) -> f64 {
        self.centres.mm() / self.smaller.pitch().mm()
    }

    fn square_term(&self) -> f64 {
        let [n1, n2] = self.teeth();
        ((n2 - n1) / TAU).powi(2)
    }
}
