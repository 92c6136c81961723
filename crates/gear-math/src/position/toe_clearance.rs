//! Room between the toe and the front wheel.

use crate::chain::BottomBracketDrop;
use crate::position::limits::PositionCaution;
use crate::position::quantity::{ForkRake, FrontCentre, HeadAngle, PedalOffset};
use crate::rider::CrankLength;
use crate::wheel::WheelRadius;

/// What decides whether a toe can meet the front wheel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToeRoom {
    /// Bottom bracket to front axle.
    pub front_centre: FrontCentre,
    /// Bottom bracket below the axles.
    pub bottom_bracket_drop: BottomBracketDrop,
    /// Front wheel, over the tyre.
    pub wheel_radius: WheelRadius,
    /// Steering axis from the horizontal.
    pub head_angle: HeadAngle,
    /// Front axle ahead of the steering axis.
    pub fork_rake: ForkRake,
    /// Pedal centre from the mid-plane.
    pub pedal_offset: PedalOffset,
    /// Length of the cranks.
    pub crank: CrankLength,
}

/// Room between the forward pedal's axle and the tyre, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToeClearance {
    /// With the wheel straight ahead.
    pub straight_ahead_mm: f64,
    /// With the wheel turned towards the pedal: the figure that counts.
    pub swept_mm: f64,
    /// How it compares with the published figures.
    pub verdict: ToeVerdict,
}

/// A toe clearance against the published figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToeVerdict {
    /// At least 100 mm, the ISO 4210-2 figure without foot retention (from memory of the standard).
    Clear,
    /// At least 89 mm, enough for pedals that hold the foot; 16 CFR 1512.17(d) asks no more of others.
    ClearWithRetention,
    /// Less than 89 mm. Small racing frames often miss it: to be known, not forbidden.
    Short,
}

/// ISO 4210-2, pedals without foot retention (from memory of the standard).
const WITHOUT_RETENTION_MM: f64 = 100.0;
/// 16 CFR 1512.17(d); ISO 4210-2 with foot retention.
const WITH_RETENTION_MM: f64 = 89.0;

impl ToeVerdict {
    fn of(clearance_mm: f64) -> Self {
        if clearance_mm >= WITHOUT_RETENTION_MM {
            Self::Clear
        } else if clearance_mm >= WITH_RETENTION_MM {
            Self::ClearWithRetention
        } else {
            Self::Short
        }
    }

    /// The caution that goes with the verdict.
    #[must_use]
    pub const fn caution(self) -> Option<PositionCaution> {
        match self {
            Self::Clear => None,
            Self::ClearWithRetention => Some(PositionCaution::ToeClearanceWithoutRetention),
            Self::Short => Some(PositionCaution::ToeClearanceShort),
        }
    }
}

impl ToeRoom {
    /// Room between the pedal, forward and at the height of its axle, and the wheel turned into it.
    ///
    /// # Formula
    /// ```text
    /// FCx = √(FC² − drop²),  x0 = FCx − √(R² − drop²)
    /// x_a = FCx − rake ÷ sin α + drop ÷ tan α      steering axis at pedal height
    /// clearance = x_a − √((x_a − x0)² − z²) − CL
    /// ```
    /// Derived from the geometry; 1.7 to 2.4 mm less than three-dimensional geometry gives, on the safe side.
    #[must_use]
    pub fn clearance(&self) -> ToeClearance {
        let front_axle = leg(self.front_centre.mm(), self.bottom_bracket_drop.mm());
        let tyre = front_axle - leg(self.wheel_radius.mm(), self.bottom_bracket_drop.mm());
        let axis = self.axis_at_pedal_height_mm(front_axle);
        let swept = axis - leg(axis - tyre, self.pedal_offset.mm());
        let swept_mm = swept - self.crank.mm();
        ToeClearance {
            straight_ahead_mm: tyre - self.crank.mm(),
            swept_mm,
            verdict: ToeVerdict::of(swept_mm),
        }
    }

    fn axis_at_pedal_height_mm(&self, front_axle_mm: f64) -> f64 {
        let (sin, cos) = self.head_angle.degrees().to_radians().sin_cos();
        front_axle_mm - self.fork_rake.mm() / sin + self.bottom_bracket_drop.mm() * cos / sin
    }
}

/// The other leg of a right-angled triangle; none when a wheel is so small that it cannot reach as far aside as the
/// pedal.
fn leg(hypotenuse: f64, side: f64) -> f64 {
    (hypotenuse.powi(2) - side.powi(2)).max(0.0).sqrt()
}
