//! Where rings and sprockets stand sideways, and how far the chain is bent between them.

use crate::chain::measures::{Chainline, ChainstayLength, RingSpacing, SprocketPitch};
use crate::chain::pitch_circle::PitchCircle;
use crate::gears::{Cassette, ChainAngle, Chainset, Drivetrain, Gear};
use crate::quantity::OutOfLimits;

/// Sideways measures of a drivetrain, from the frame's mid-plane.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainlineMeasures {
    /// Middle of the rings: between the two of a double, the ring itself of a single.
    pub front: Chainline,
    /// One ring to the next.
    pub ring_spacing: RingSpacing,
    /// Middle of the cassette.
    pub rear: Chainline,
    /// One sprocket to the next.
    pub sprocket_pitch: SprocketPitch,
}

impl ChainlineMeasures {
    /// Plane of each ring, largest ring first, in millimetres from the mid-plane; the largest stands outermost.
    pub fn ring_planes_mm(&self, chainset: &Chainset) -> impl Iterator<Item = f64> + use<> {
        planes(self.front.mm(), self.ring_spacing.mm(), chainset.rings().len())
    }

    /// Plane of each sprocket, smallest first, in millimetres from the mid-plane; the smallest stands outermost.
    pub fn sprocket_planes_mm(&self, cassette: &Cassette) -> impl Iterator<Item = f64> + use<> {
        planes(self.rear.mm(), self.sprocket_pitch.mm(), cassette.sprockets().len())
    }

    /// Sideways view of every gear, in the order of [`Drivetrain::gears`].
    pub fn sideways<'a>(
        &'a self,
        drivetrain: &'a Drivetrain,
        chainstay: ChainstayLength,
    ) -> impl Iterator<Item = ChainAngle> + 'a {
        self.ring_planes_mm(&drivetrain.chainset)
            .flat_map(|ring| {
                self.sprocket_planes_mm(&drivetrain.cassette).map(move |sprocket| ring - sprocket)
            })
            .zip(drivetrain.gears())
            .map(move |(offset, gear)| chain_angle(offset, gear, chainstay))
    }
}

fn planes(middle: f64, spacing: f64, count: usize) -> impl Iterator<Item = f64> {
    let outermost = middle + spacing * (as_f64(count) - 1.0) / 2.0;
    (0..count).map(move |place| outermost - spacing * as_f64(place))
}

/// # Formula
/// atan(|ring plane − sprocket plane| ÷ upper run), upper run = √(chainstay² − (R − r)²). Derived.
fn chain_angle(offset_mm: f64, gear: Gear, chainstay: ChainstayLength) -> ChainAngle {
    let radius = |teeth| PitchCircle::of_bicycle(teeth).radius_mm();
    let lean = radius(gear.ring.teeth()) - radius(gear.sprocket.teeth());
    let upper_run = (chainstay.mm() * chainstay.mm() - lean * lean).sqrt();
    ChainAngle::new((offset_mm.abs() / upper_run).atan().to_degrees())
}

fn as_f64(count: usize) -> f64 {
    u16::try_from(count).map_or(f64::INFINITY, f64::from)
}

/// What a workshop measures at the rear hub to know where the cassette stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HubMeasures {
    /// Width between the frame's ends, in millimetres.
    pub width_mm: f64,
    /// Frame end to the outer face of the smallest sprocket, in millimetres.
    pub end_gap_mm: f64,
    /// Thickness of the smallest sprocket, in millimetres.
    pub sprocket_thickness_mm: f64,
}

impl HubMeasures {
    /// Chainline of a cassette of `sprockets` sprockets on this hub: half the width, less the gap, half a sprocket
    /// and half the stretch from first to last sprocket.
    ///
    /// # Errors
    /// [`OutOfLimits`] when the result is no possible [`Chainline`].
    pub fn chainline(&self, pitch: SprocketPitch, sprockets: usize) -> Result<Chainline, OutOfLimits> {
        let outermost = self.width_mm / 2.0 - self.end_gap_mm - self.sprocket_thickness_mm / 2.0;
        Chainline::new(outermost - pitch.mm() * (as_f64(sprockets) - 1.0) / 2.0)
    }
}

impl SprocketPitch {
    /// The usual pitch of a cassette with this many sprockets.
    ///
    /// Up to ten from a published table of widths and thicknesses. Eleven and twelve are estimates, from memory, because
    /// makers print none; they are good to 0.05 mm. For more, the value of twelve.
    #[must_use]
    pub fn usual(sprockets: usize) -> Self {
        let mm = match sprockets {
            0..=7 => 5.008,
            8 => 4.8,
            9 => 4.34,
            10 => 3.956,
            11 => 3.74,
            _ => 3.58,
        };
        Self::known(mm)
    }
}
