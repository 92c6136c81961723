//! Whose value stands in a field, and which fields the answer of a section rests on.
//!
//! A field is the rider's once it was typed in, claimed, or named by a link. Until then it holds what it started with: a usual
//! value, or one that only the demo's bike and rider have.

use crate::bench::field::{Field, Group};

/// Whose value a field holds, the surest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Owner {
    /// The rider's own.
    Rider,
    /// Common practice or an estimate, as the field's help says, or left open.
    Usual,
    /// The demo's, which is true of no other bike and rider.
    Demo,
    /// Nobody's: left empty or not understood, with nothing of the rider's to go on with.
    Unknown,
}

/// Fields that start with what is true of the demo's bike, rider and course only. All others start with a usual value, or
/// empty.
pub(crate) const DEMO: [Field; 35] = {
    use Field::{
        BarDrop, BikeMass, BodyMass, Capacity, CassetteA, CassetteB, ClimbLength, Construction, Course,
        CrossCrank, CrossSeatAngle, CrossStack, Ground, HeadAngle, Headset, LargestSprocket, Level, Power,
        Reach, Rim, RingDifference, RingsA, RingsB, RoadCrank, RoadStack, SaddleHeight, SeatAngle, Setback,
        Sketch, Slope, SmallestSprocket, Stack, TipToBar, Tyre, TyreGround,
    };
    [
        RingsA,
        CassetteA,
        RingsB,
        CassetteB,
        Tyre,
        Capacity,
        LargestSprocket,
        SmallestSprocket,
        RingDifference,
        BodyMass,
        BikeMass,
        Power,
        Level,
        Ground,
        Slope,
        ClimbLength,
        Course,
        Sketch,
        Construction,
        Rim,
        TyreGround,
        SaddleHeight,
        Setback,
        TipToBar,
        BarDrop,
        SeatAngle,
        RoadCrank,
        RoadStack,
        CrossSeatAngle,
        CrossCrank,
        CrossStack,
        Stack,
        Reach,
        HeadAngle,
        Headset,
    ]
};

impl Field {
    /// Whose the value is that the field starts with.
    #[must_use]
    pub fn start_owner(self) -> Owner {
        if DEMO.contains(&self) { Owner::Demo } else { Owner::Usual }
    }

    /// Whether it only says what is shown and how, which makes no bench the rider's own.
    #[must_use]
    pub fn is_setting(self) -> bool {
        use Group::{GearsShown, Probes, RideProbe, Sheet};
        matches!(self, Self::Inches | Self::SpeedUnit)
            || matches!(self.spec().group, GearsShown | Probes | RideProbe | Sheet)
    }
}
