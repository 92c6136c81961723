//! Tyre and rim, and what loads them.

use super::RideInputs;
use super::parse::Reader;
use crate::field::Field;
use gear_math::{
    BikeMass, BodyMass, Construction, FrontShare, KitMass, LabelEdition, MountedWidth, NominalWidth,
    PressureMarks, RaceLimit, RimInnerWidth, TyreGround, WheelStyle,
};

/// What the tyre's section is worked out from, beside the tyre's size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreInputs {
    /// The rider's body.
    pub rider: BodyMass,
    /// What the rider wears and carries.
    pub kit: KitMass,
    /// The bike.
    pub bike: BikeMass,
    /// Front wheel's part of the weight.
    pub front_share: FrontShare,
    /// How the tyre holds its air.
    pub construction: Construction,
    /// Inner width of the rim.
    pub rim: RimInnerWidth,
    /// Widest tyre that the race allows, if it has a limit.
    pub limit: Option<RaceLimit>,
    /// The ground of the course.
    pub ground: TyreGround,
    /// The rider's way with wheels.
    pub style: WheelStyle,
    /// A width to compare with, if any.
    pub other: Option<NominalWidth>,
    /// What tyre and rim are marked with.
    pub marks: PressureMarks,
    /// The tyre's width by calliper, if somebody has measured it.
    pub measured: Option<MountedWidth>,
    /// Which edition of the rules the label follows.
    pub edition: LabelEdition,
    /// The measuring rim, if the sidewall names one.
    pub measuring_rim: Option<RimInnerWidth>,
}

impl TyreInputs {
    /// Understands the fields; who rides and on what, `ride` has read already.
    pub(super) fn read(reader: &mut Reader<'_>, ride: &RideInputs) -> Self {
        let limits = [Some(RaceLimit::UCI), Some(RaceLimit::MM_35), Some(RaceLimit::MM_38), None];
        let construction = reader.pick(Field::Construction, &Construction::ALL);
        let hookless = reader.pick(Field::Hookless, &[false, true]);
        Self {
            rider: ride.rider.body,
            kit: ride.rider.kit,
            bike: ride.bike.mass,
            front_share: FrontShare::beside(ride.stance.rear),
            construction,
            rim: reader.quantity(Field::Rim),
            limit: reader.pick(Field::WidthLimit, &limits),
            ground: reader.pick(Field::TyreGround, &TyreGround::ALL),
            style: reader.pick(Field::WheelStyle, &WheelStyle::ALL),
            other: reader.quantity_or_none(Field::OtherTyre),
            marks: PressureMarks {
                tyre: reader.quantity_or_none(Field::TyreMark),
                rim: reader.quantity_or_none(Field::RimMark),
                hookless: hookless && construction != Construction::Tubular,
            },
            measured: reader.quantity_or_none(Field::TyreWidthMeasured),
            edition: reader.pick(Field::LabelEdition, &[LabelEdition::Etrto2020, LabelEdition::OlderIso]),
            measuring_rim: reader.quantity_or_none(Field::MeasuringRim),
        }
    }
}
