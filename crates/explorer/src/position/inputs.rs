//! The road position, the cross bike it goes to, and what the stem search may use.

use crate::bench::field::{Field, Group};
use crate::bench::reader::Reader;
use gear_math::position::{
    BarShape, Footing, ForkRake, FrontCentre, FrontEnd, PedalOffset, PositionChanges, Saddle,
    StemSearchLimits,
};
use gear_math::{CrossBike, RoadPosition};

/// The groups of fields that stand in the section on the position.
pub(crate) const GROUPS: &[Group] =
    &[Group::RoadBike, Group::CrossBike, Group::CrossFrame, Group::PositionFiner];

/// What the position's section is worked out from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PositionInputs {
    /// The position as measured on the road bike.
    pub road: RoadPosition,
    /// The cross bike's seat angle, cranks and pedals.
    pub cross: CrossBike,
    /// What is meant to differ.
    pub changes: PositionChanges,
    /// The cross bike's frame, headset and clamp.
    pub front: FrontEnd,
    /// What the stem search may use.
    pub limits: StemSearchLimits,
    /// Handlebars of the road and of the cross bike.
    pub bars: BarShapes,
    /// Measures for the room for the toes.
    pub toes: ToeInputs,
}

/// The shapes of the two handlebars; each may be unknown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarShapes {
    /// The road bike's.
    pub road: Option<BarShape>,
    /// The cross bike's.
    pub cross: Option<BarShape>,
    /// Whether a drop was given without its reach: it says nothing alone.
    pub is_drop_alone: bool,
}

/// Measures for the room for the toes; without a front centre it is not checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToeInputs {
    /// Bottom bracket to front axle.
    pub front_centre: Option<FrontCentre>,
    /// Front axle ahead of the steering axis.
    pub fork_rake: ForkRake,
    /// Pedal centre from the mid-plane.
    pub pedal_offset: PedalOffset,
}

impl PositionInputs {
    pub(crate) fn read(reader: &mut Reader<'_>) -> Self {
        Self {
            road: road(reader),
            cross: CrossBike {
                seat_angle: reader.known(Field::CrossSeatAngle),
                footing: footing(reader, Field::CrossCrank, Field::CrossStack),
            },
            changes: changes(reader),
            front: front(reader),
            limits: StemSearchLimits {
                tolerance: reader.quantity(Field::BarWithin),
                max_spacers: reader.quantity(Field::SpacersMost),
            },
            bars: bars(reader),
            toes: toes(reader),
        }
    }
}

fn road(reader: &mut Reader<'_>) -> RoadPosition {
    RoadPosition {
        saddle: Saddle {
            height: reader.known(Field::SaddleHeight),
            setback: reader.known(Field::Setback),
            seat_angle: reader.known(Field::SeatAngle),
        },
        footing: footing(reader, Field::RoadCrank, Field::RoadStack),
        tip_to_bar: reader.known(Field::TipToBar),
        bar_drop: reader.known(Field::BarDrop),
    }
}

fn footing(reader: &mut Reader<'_>, crank: Field, stack: Field) -> Footing {
    Footing { crank: reader.known(crank), sole_stack: reader.known(stack) }
}

fn changes(reader: &mut Reader<'_>) -> PositionChanges {
    PositionChanges {
        lower_by: reader.known(Field::LowerBy),
        bar_up_by: reader.known(Field::BarUpBy),
        bar_closer_by: reader.known(Field::BarCloserBy),
        keep_knee_over_pedal: reader.pick(Field::Knee, &[false, true]),
    }
}

fn front(reader: &mut Reader<'_>) -> FrontEnd {
    FrontEnd {
        stack: reader.known(Field::Stack),
        reach: reader.known(Field::Reach),
        head_angle: reader.known(Field::HeadAngle),
        top_cap: reader.known(Field::Headset),
        clamp_height: reader.known(Field::ClampHeight),
    }
}

/// Each is known as soon as its reach is.
fn bars(reader: &mut Reader<'_>) -> BarShapes {
    let mut is_drop_alone = false;
    let mut bar = |reach, depth| {
        let (reach, depth) = (reader.quantity_or_none(reach), reader.quantity_or_none(depth));
        is_drop_alone |= reach.is_none() && depth.is_some();
        Some(BarShape { reach: reach?, depth })
    };
    let (road, cross) =
        (bar(Field::RoadBarReach, Field::RoadBarDepth), bar(Field::CrossBarReach, Field::CrossBarDepth));
    BarShapes { road, cross, is_drop_alone }
}

fn toes(reader: &mut Reader<'_>) -> ToeInputs {
    ToeInputs {
        front_centre: reader.quantity_or_none(Field::FrontCentre),
        fork_rake: reader.quantity(Field::ForkRake),
        pedal_offset: reader.quantity(Field::PedalOffset),
    }
}
