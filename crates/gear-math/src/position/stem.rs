//! Where a stem puts the bar, and which stem puts it there exactly.

use crate::position::limits::{PositionCaution, stem_cautions};
use crate::position::point::BikePoint;
use crate::position::quantity::{
    ClampHeight, FrameReach, FrameStack, HeadAngle, Spacers, StemAngle, StemLength, TopCap,
};
use core::f64::consts::PI;
use core::ops::RangeInclusive;

/// Lengths that bikes are sold with, in millimetres (estimate).
const COMMON_LENGTH_MM: RangeInclusive<f64> = 80.0..=120.0;
/// Steepest rise that is still common, in degrees (estimate).
const COMMON_RISE_DEG: f64 = 10.0;

/// The part of frame, headset and stem that a change of stem or spacers leaves as it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrontEnd {
    /// Bottom bracket up to the top of the head tube.
    pub stack: FrameStack,
    /// Bottom bracket forward to the top of the head tube.
    pub reach: FrameReach,
    /// Steering axis from the horizontal.
    pub head_angle: HeadAngle,
    /// Headset parts above the head tube; part of the bar's height, but not of the stack.
    pub top_cap: TopCap,
    /// Height of the stem's clamp.
    pub clamp_height: ClampHeight,
}

/// A stem and the spacers under it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StemSetup {
    /// Steerer centre to bar centre along the stem.
    pub length: StemLength,
    /// Stem against square to the steerer.
    pub angle: StemAngle,
    /// Spacers under the stem.
    pub spacers: Spacers,
}

impl StemSetup {
    /// What this stem and these spacers call for.
    #[must_use]
    pub fn cautions(&self) -> Vec<PositionCaution> {
        stem_cautions(self.length.mm(), self.spacers.mm())
    }

    /// Whether hardly any bike is ridden with such a stem: shorter than 80 mm, longer than 120 mm, or pointing up by more
    /// than 10° (estimate, because road and cross bikes are sold with 80 to 120 mm between −17° and +7°).
    #[must_use]
    pub fn is_rare(&self) -> bool {
        !COMMON_LENGTH_MM.contains(&self.length.mm()) || self.angle.degrees() > COMMON_RISE_DEG
    }
}

/// The points that a side view of the front end is drawn from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrontEndView {
    /// Top centre of the head tube.
    pub head_tube_top: BikePoint,
    /// Foot of the spacers, on top of the headset.
    pub spacers_foot: BikePoint,
    /// Foot of the stem's clamp, on top of the spacers.
    pub clamp_foot: BikePoint,
    /// Where the stem's line meets the steering axis.
    pub stem_on_steerer: BikePoint,
    /// Top of the stem's clamp.
    pub clamp_top: BikePoint,
    /// Centre of the bar.
    pub bar: BikePoint,
}

/// The one stem length and spacer height that put the bar exactly on a target with a stem of this angle.
///
/// Both may be lengths that nobody can build; [`StemSearch`](crate::position::stem_search::StemSearch) says which are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ExactStem {
    /// Stem against square to the steerer, in degrees.
    pub angle: StemAngle,
    /// Stem length, in millimetres.
    pub length_mm: f64,
    /// Spacers under the stem, in millimetres; negative when the front of the frame is too high for this angle.
    pub spacers_mm: f64,
}

impl FrontEnd {
    /// Where `setup` puts the centre of the bar.
    ///
    /// # Formula
    /// ```text
    /// h = t + s + c/2,  φ = 90° − α + β
    /// X = Re − h cos α + L cos φ
    /// Y = S  + h sin α + L sin φ
    /// ```
    /// `t` headset above the head tube, `s` spacers, `c` clamp height, `α` head angle, `β` stem angle, `L` stem
    /// length, `S` and `Re` stack and reach. Plane geometry.
    ///
    /// # Example
    /// ```
    /// use gear_math::position::{ClampHeight, FrameReach, FrameStack, FrontEnd, HeadAngle, Spacers, StemAngle, StemLength, StemSetup, TopCap};
    /// let front = FrontEnd {
    ///     stack: FrameStack::new(558.0)?,
    ///     reach: FrameReach::new(379.0)?,
    ///     head_angle: HeadAngle::new(72.0)?,
    ///     top_cap: TopCap::new(12.0)?,
    ///     clamp_height: ClampHeight::new(40.0)?,
    /// };
    /// let setup = StemSetup {
    ///     length: StemLength::new(90.0)?,
    ///     angle: StemAngle::new(-6.0)?,
    ///     spacers: Spacers::new(15.0)?,
    /// };
    /// let bar = front.bar(&setup);
    /// assert_eq!((bar.x_mm.round(), bar.y_mm.round()), (453.0, 621.0));
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn bar(&self, setup: &StemSetup) -> BikePoint {
        self.stem_on_steerer(setup.spacers).along(self.stem_direction(setup.angle), setup.length.mm())
    }

    /// The points to draw head tube, spacers and stem from.
    #[must_use]
    pub fn view(&self, setup: &StemSetup) -> FrontEndView {
        let clamp_foot = self.up_steerer(self.top_cap.mm() + setup.spacers.mm());
        FrontEndView {
            head_tube_top: self.up_steerer(0.0),
            spacers_foot: self.up_steerer(self.top_cap.mm()),
            clamp_foot,
            stem_on_steerer: self.stem_on_steerer(setup.spacers),
            clamp_top: clamp_foot.along(self.steerer_direction(), self.clamp_height.mm()),
            bar: self.bar(setup),
        }
    }

    /// The stem length and spacers that put the bar exactly on `target` with a stem of `angle`.
    ///
    /// # Formula
    /// With `(dx, dy)` from the top of the head tube to the target:
    /// ```text
    /// p = −dx cos α + dy sin α      up the steerer
    /// q =  dx sin α + dy cos α      square to it, forward
    /// L = q ÷ cos β,  s = p − q tan β − t − c/2
    /// ```
    #[must_use]
    pub fn exact_stem(&self, target: BikePoint, angle: StemAngle) -> ExactStem {
        let (sin, cos) = self.head_angle.degrees().to_radians().sin_cos();
        let (dx, dy) = (target.x_mm - self.reach.mm(), target.y_mm - self.stack.mm());
        let (up, forward) = (dy * sin - dx * cos, dx * sin + dy * cos);
        let stem = angle.degrees().to_radians();
        ExactStem {
            angle,
            length_mm: forward / stem.cos(),
            spacers_mm: up - forward * stem.tan() - self.top_cap.mm() - self.clamp_height.mm() / 2.0,
        }
    }

    fn stem_on_steerer(&self, spacers: Spacers) -> BikePoint {
        self.up_steerer(self.top_cap.mm() + spacers.mm() + self.clamp_height.mm() / 2.0)
    }

    fn up_steerer(&self, height_mm: f64) -> BikePoint {
        let head_tube_top = BikePoint { x_mm: self.reach.mm(), y_mm: self.stack.mm() };
        head_tube_top.along(self.steerer_direction(), height_mm)
    }

    fn steerer_direction(&self) -> f64 {
        PI - self.head_angle.degrees().to_radians()
    }

    fn stem_direction(&self, angle: StemAngle) -> f64 {
        (90.0 - self.head_angle.degrees() + angle.degrees()).to_radians()
    }
}
