//! Whose value stands in a field, and which fields the answer of a section rests on.
//!
//! A field is the rider's once it was typed in, claimed, or named by a link. Until then it holds what it started with: a usual
//! value, or one that only the demo's bike and rider have.

use crate::bench::bench::Bench;
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
const DEMO: [Field; 35] = {
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

/// Whose value every field holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Owners {
    all: Vec<Owner>,
    /// Whether nothing at all is the rider's: the bench is an example.
    pub is_example: bool,
}

impl Owners {
    /// The owners of a bench; nobody's are the fields that are `unknown`.
    #[must_use]
    pub fn of(bench: &Bench, unknown: &[Field]) -> Self {
        let owner =
            |field: &Field| if unknown.contains(field) { Owner::Unknown } else { bench.owner(*field) };
        Self { all: Field::ALL.iter().map(owner).collect(), is_example: bench.is_nobodys() }
    }

    /// Whose value a field holds.
    #[must_use]
    pub fn get(&self, field: Field) -> Owner {
        self.all[field as usize]
    }

    /// Whose value decides what rests on all of `fields`: the least sure of them.
    #[must_use]
    pub fn least(&self, fields: &[Field]) -> Owner {
        fields.iter().map(|&field| self.get(field)).max().unwrap_or(Owner::Rider)
    }

    /// The fields among `asked_for` whose value is not the rider's and not usual either, in the order of the bench.
    pub fn lacking(&self, asked_for: impl Fn(Field) -> bool) -> impl Iterator<Item = Field> {
        let lacks = move |field: &Field| self.get(*field) >= Owner::Demo && asked_for(*field);
        Field::ALL.iter().copied().filter(lacks)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_the_demos_counts_somewhere_and_is_no_blank() {
        for field in DEMO {
            assert!(!field.spec().start.is_empty(), "{field:?}");
            assert!(crate::page::questions::all().any(|it| it.rests_on(field)), "{field:?}");
        }
    }

    #[test]
    fn the_least_sure_value_decides() {
        let mut bench = Bench::default();
        bench.write(Field::Stack, "580");
        let owners = Owners::of(&bench, &[Field::Reach]);
        assert_eq!(owners.least(&[]), Owner::Rider);
        assert_eq!(owners.least(&[Field::Stack]), Owner::Rider);
        assert_eq!(owners.least(&[Field::Stack, Field::ClampHeight]), Owner::Usual);
        assert_eq!(owners.least(&[Field::HeadAngle, Field::ClampHeight]), Owner::Demo);
        assert_eq!(owners.least(&[Field::HeadAngle, Field::Reach]), Owner::Unknown);
        let lacking: Vec<Field> = owners.lacking(|field| field.spec().group == Group::CrossFrame).collect();
        assert_eq!(lacking, [Field::Reach, Field::HeadAngle, Field::Headset]);
    }
}
