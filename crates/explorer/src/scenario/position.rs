//! The road position, the cross bike it goes to, and what the stem search may use.

use super::parse::Reader;
use crate::field::Field;
use gear_math::{
    BarCloser, BarDepth, BarDrop, BarRaise, BarReach, BarShape, BarTolerance, BottomBracketDrop, ClampHeight,
    CrankLength, CrossBike, Footing, ForkRake, FrameReach, FrameStack, FrontCentre, FrontEnd, HeadAngle,
    PedalOffset, PositionChanges, RoadPosition, Saddle, SaddleHeight, SaddleLowering, SeatAngle, Setback,
    SoleStack, Spacers, StemSearchLimits, TipToBar, TopCap,
};

/// What the position's section is worked out from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PositionInputs {
    /// The position as taped on the road bike.
    pub road: RoadPosition,
    /// The cross bike's seat angle, cranks and pedals.
    pub cross: CrossBike,
    /// What is meant to differ.
    pub changes: PositionChanges,
    /// The cross bike's frame, headset and clamp.
    pub front: FrontEnd,
    /// What the stem search may use.
    pub limits: StemSearchLimits,
    /// Handlebars of the road and of the cross bike, when both are given.
    pub bars: BarShapes,
    /// Measures for the room for the toes.
    pub toes: ToeInputs,
}

/// The shapes of the two handlebars; each measure may be missing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarShapes {
    road: (Option<BarReach>, Option<BarDepth>),
    cross: (Option<BarReach>, Option<BarDepth>),
}

impl BarShapes {
    /// The road bike's and the cross bike's handlebar, when all four measures are known.
    #[must_use]
    pub fn both(&self) -> Option<(BarShape, BarShape)> {
        let shape = |(reach, depth): (Option<BarReach>, Option<BarDepth>)| {
            Some(BarShape { reach: reach?, depth: depth? })
        };
        Some((shape(self.road)?, shape(self.cross)?))
    }
}

/// Measures for the room for the toes; without a front centre it is not checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToeInputs {
    /// Bottom bracket to front axle.
    pub front_centre: Option<FrontCentre>,
    /// Bottom bracket below the axles.
    pub bracket_drop: BottomBracketDrop,
    /// Front axle ahead of the steering axis.
    pub fork_rake: ForkRake,
    /// Pedal centre from the mid-plane.
    pub pedal_offset: PedalOffset,
}

impl PositionInputs {
    /// Reads the fields; without a `good` value one in error falls back on what it starts with.
    pub(super) fn read(reader: &mut Reader<'_>, good: Option<&Self>) -> Self {
        Self {
            road: road(reader, good.map(|good| &good.road)),
            cross: cross(reader, good.map(|good| &good.cross)),
            changes: changes(reader, good.map(|good| &good.changes)),
            front: front(reader, good.map(|good| &good.front)),
            limits: limits(reader, good.map(|good| &good.limits)),
            bars: bars(reader, good.map(|good| &good.bars)),
            toes: toes(reader, good.map(|good| &good.toes)),
        }
    }
}

fn road(reader: &mut Reader<'_>, good: Option<&RoadPosition>) -> RoadPosition {
    let saddle = good.map(|good| good.saddle);
    RoadPosition {
        saddle: Saddle {
            height: reader.quantity(
                Field::SaddleHeight,
                saddle.map(|saddle| saddle.height),
                (SaddleHeight::new, SaddleHeight::mm),
            ),
            setback: reader.quantity(
                Field::Setback,
                saddle.map(|saddle| saddle.setback),
                (Setback::new, Setback::mm),
            ),
            seat_angle: seat_angle(reader, Field::SeatAngle, saddle.map(|saddle| saddle.seat_angle)),
        },
        footing: footing(reader, Field::RoadCrank, Field::RoadStack, good.map(|good| good.footing)),
        tip_to_bar: reader.quantity(
            Field::TipToBar,
            good.map(|good| good.tip_to_bar),
            (TipToBar::new, TipToBar::mm),
        ),
        bar_drop: reader.quantity(
            Field::BarDrop,
            good.map(|good| good.bar_drop),
            (BarDrop::new, BarDrop::mm),
        ),
    }
}

fn seat_angle(reader: &mut Reader<'_>, field: Field, good: Option<SeatAngle>) -> SeatAngle {
    reader.quantity(field, good, (SeatAngle::new, SeatAngle::degrees))
}

fn footing(reader: &mut Reader<'_>, crank: Field, stack: Field, good: Option<Footing>) -> Footing {
    Footing {
        crank: reader.quantity(crank, good.map(|good| good.crank), (CrankLength::new, CrankLength::mm)),
        sole_stack: reader.quantity(stack, good.map(|good| good.sole_stack), (SoleStack::new, SoleStack::mm)),
    }
}

fn cross(reader: &mut Reader<'_>, good: Option<&CrossBike>) -> CrossBike {
    CrossBike {
        seat_angle: seat_angle(reader, Field::CrossSeatAngle, good.map(|good| good.seat_angle)),
        footing: footing(reader, Field::CrossCrank, Field::CrossStack, good.map(|good| good.footing)),
    }
}

fn changes(reader: &mut Reader<'_>, good: Option<&PositionChanges>) -> PositionChanges {
    PositionChanges {
        lower_by: reader.quantity(
            Field::LowerBy,
            good.map(|good| good.lower_by),
            (SaddleLowering::new, SaddleLowering::mm),
        ),
        bar_up_by: reader.quantity(
            Field::BarUpBy,
            good.map(|good| good.bar_up_by),
            (BarRaise::new, BarRaise::mm),
        ),
        bar_closer_by: reader.quantity(
            Field::BarCloserBy,
            good.map(|good| good.bar_closer_by),
            (BarCloser::new, BarCloser::mm),
        ),
        keep_knee_over_pedal: reader.choice(
            Field::Knee,
            good.is_some_and(|good| good.keep_knee_over_pedal),
            &[("saddle", false), ("knee", true)],
        ),
    }
}

fn front(reader: &mut Reader<'_>, good: Option<&FrontEnd>) -> FrontEnd {
    FrontEnd {
        stack: reader.quantity(Field::Stack, good.map(|good| good.stack), (FrameStack::new, FrameStack::mm)),
        reach: reader.quantity(Field::Reach, good.map(|good| good.reach), (FrameReach::new, FrameReach::mm)),
        head_angle: reader.quantity(
            Field::HeadAngle,
            good.map(|good| good.head_angle),
            (HeadAngle::new, HeadAngle::degrees),
        ),
        top_cap: reader.quantity(Field::Headset, good.map(|good| good.top_cap), (TopCap::new, TopCap::mm)),
        clamp_height: reader.quantity(
            Field::ClampHeight,
            good.map(|good| good.clamp_height),
            (ClampHeight::new, ClampHeight::mm),
        ),
    }
}

fn limits(reader: &mut Reader<'_>, good: Option<&StemSearchLimits>) -> StemSearchLimits {
    StemSearchLimits {
        tolerance: reader.quantity(
            Field::BarWithin,
            good.map(|good| good.tolerance),
            (BarTolerance::new, BarTolerance::mm),
        ),
        max_spacers: reader.quantity(
            Field::SpacersMost,
            good.map(|good| good.max_spacers),
            (Spacers::new, Spacers::mm),
        ),
    }
}

fn bars(reader: &mut Reader<'_>, good: Option<&BarShapes>) -> BarShapes {
    let mut shape = |reach, depth, (good_reach, good_depth)| {
        (
            reader.quantity_or_none(reach, good_reach, (BarReach::new, BarReach::mm)),
            reader.quantity_or_none(depth, good_depth, (BarDepth::new, BarDepth::mm)),
        )
    };
    let unknown = (None, None);
    BarShapes {
        road: shape(Field::RoadBarReach, Field::RoadBarDepth, good.map_or(unknown, |good| good.road)),
        cross: shape(Field::CrossBarReach, Field::CrossBarDepth, good.map_or(unknown, |good| good.cross)),
    }
}

fn toes(reader: &mut Reader<'_>, good: Option<&ToeInputs>) -> ToeInputs {
    ToeInputs {
        front_centre: reader.quantity_or_none(
            Field::FrontCentre,
            good.and_then(|good| good.front_centre),
            (FrontCentre::new, FrontCentre::mm),
        ),
        bracket_drop: reader.quantity(
            Field::BracketDrop,
            good.map(|good| good.bracket_drop),
            (BottomBracketDrop::new, BottomBracketDrop::mm),
        ),
        fork_rake: reader.quantity(
            Field::ForkRake,
            good.map(|good| good.fork_rake),
            (ForkRake::new, ForkRake::mm),
        ),
        pedal_offset: reader.quantity(
            Field::PedalOffset,
            good.map(|good| good.pedal_offset),
            (PedalOffset::new, PedalOffset::mm),
        ),
    }
}
