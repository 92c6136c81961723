//! How far the guide pulley must reach, and how steeply it must climb.

use crate::chain::cage::Cage;
use crate::chain::frame::FrameMeasures;
use crate::chain::measures::{HangerDrop, HangerSetback, SprocketPitch};
use crate::chain::pitch_circle::PitchCircle;
use crate::chain::point::PathPoint;
use crate::gears::{Cassette, Sprocket};

/// Where the derailleur hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hanger {
    /// Below the rear axle, square to the line from axle to bottom bracket.
    pub drop: HangerDrop,
    /// Behind the rear axle, along that line.
    pub setback: HangerSetback,
}

impl Hanger {
    /// From mounting point to guide pulley axle with the chain on `sprocket`, in millimetres. It grows by about
    /// 2 mm per tooth of the sprocket.
    ///
    /// # Formula
    /// Distance from the hanger to the point r_s + gap + r_g from the axle in the guide pulley's direction.
    ///
    /// # Example
    /// ```
    /// use gear_math::Sprocket;
    /// use gear_math::chain::{Cage, ChainDefaults};
    /// let cage = Cage::new(ChainDefaults::CAGE)?;
    /// let reach = ChainDefaults::HANGER.reach_mm(Sprocket::new(34)?, &ChainDefaults::FRAME, &cage);
    /// assert!((reach - 82.2).abs() < 0.1);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn reach_mm(&self, sprocket: Sprocket, frame: &FrameMeasures, cage: &Cage) -> f64 {
        self.point(frame).distance_mm(guide_axle(sprocket, cage))
    }

    /// Millimetres by which a hanger must hang lower so that a derailleur that reaches `usual` also reaches
    /// `wanted`; 0 when it does so already, `None` when hanging lower alone cannot do it.
    ///
    /// # Formula
    /// The lesser root of |G − H − e·d| = reach for `usual`, with guide axle G for `wanted`, hanger H and d
    /// square to the line from axle to bottom bracket. The derailleur is taken to be used to the full on
    /// `usual`.
    #[must_use]
    pub fn extension_mm(
        &self,
        usual: Sprocket,
        wanted: Sprocket,
        frame: &FrameMeasures,
        cage: &Cage,
    ) -> Option<f64> {
        let reach = self.reach_mm(usual, frame, cage);
        let [hanger, guide] = [self.point(frame), guide_axle(wanted, cage)];
        let [gx, gy] = [guide.x_mm - hanger.x_mm, guide.y_mm - hanger.y_mm];
        let [_, [dx, dy]] = directions(frame);
        let [along, across] = [gx * dx + gy * dy, gx * dy - gy * dx];
        let half_chord = reach * reach - across * across;
        (half_chord >= 0.0).then(|| (along - half_chord.sqrt()).max(0.0))
    }

    /// The mounting point in the drivetrain's side view.
    #[must_use]
    pub fn point(&self, frame: &FrameMeasures) -> PathPoint {
        let [[fx, fy], [dx, dy]] = directions(frame);
        let [down, back] = [self.drop.mm(), self.setback.mm()];
        PathPoint { x_mm: down * dx - back * fx, y_mm: down * dy - back * fy }
    }
}

/// Unit vectors from the rear axle towards the bottom bracket, and square to it, downward.
fn directions(frame: &FrameMeasures) -> [[f64; 2]; 2] {
    let axle = frame.bottom_bracket();
    let [fx, fy] = [axle.x_mm, axle.y_mm].map(|part| part / frame.chainstay.mm());
    [[fx, fy], [fy, -fx]]
}

fn guide_axle(sprocket: Sprocket, cage: &Cage) -> PathPoint {
    cage.guide_axle(PitchCircle::of_bicycle(sprocket.teeth()).radius_mm())
}

/// Slope in degrees that the guide pulley must climb so that its gap stays equal on every sprocket; 0 for a single
/// sprocket.
///
/// # Formula
/// atan((r_large − r_small) ÷ ((n − 1) × sprocket pitch)). A parallelogram slanted for another slope leaves an
/// uneven gap, which the B screw can set right on one sprocket only.
///
/// # Example
/// ```
/// use gear_math::chain::{SprocketPitch, cassette_slope_degrees};
/// let cassette = "11-12-13-14-16-18-20-22-25-28-32".parse()?;
/// assert_eq!(cassette_slope_degrees(&cassette, SprocketPitch::usual(11)).round(), 48.0);
/// # Ok::<(), gear_math::gears::CassetteError>(())
/// ```
#[must_use]
pub fn cassette_slope_degrees(cassette: &Cassette, pitch: SprocketPitch) -> f64 {
    let radius = |sprocket: Sprocket| PitchCircle::of_bicycle(sprocket.teeth()).radius_mm();
    let steps = u16::try_from(cassette.sprockets().len()).map_or(0.0, f64::from) - 1.0;
    let climb = radius(cassette.largest()) - radius(cassette.smallest());
    if steps > 0.0 { (climb / (steps * pitch.mm())).atan().to_degrees() } else { 0.0 }
}
