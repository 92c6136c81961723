//! Tyre, rim and what loads them.

use super::parse::Reader;
use crate::field::Field;
use gear_math::{
    BikeMass, BodyMass, Construction, FrontShare, LabelEdition, MountedWidth, NominalWidth, Pressure,
    PressureMarks, RaceLimit, RimInnerWidth, TyreGround, WheelStyle,
};

/// What the tyre's section is worked out from, beside the tyre's size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreInputs {
    /// The rider.
    pub rider: BodyMass,
    /// Bike and clothes.
    pub bike: BikeMass,
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
    /// Front wheel's part of the weight.
    pub front_share: FrontShare,
}

impl TyreInputs {
    pub(super) fn read(reader: &mut Reader<'_>) -> Self {
        let limits = [Some(RaceLimit::UCI), Some(RaceLimit::MM_35), Some(RaceLimit::MM_38), None];
        let pressure = (&Pressure::LIMITS, Pressure::new as fn(f64) -> _);
        let rim = (&RimInnerWidth::LIMITS, RimInnerWidth::new as fn(f64) -> _);
        Self {
            rider: reader.quantity(Field::Body, (&BodyMass::LIMITS, BodyMass::new)),
            bike: reader.quantity(Field::BikeAndKit, (&BikeMass::LIMITS, BikeMass::new)),
            construction: reader.pick(Field::Construction, &Construction::ALL),
            rim: reader.quantity(Field::Rim, rim),
            limit: reader.pick(Field::WidthLimit, &limits),
            ground: reader.pick(Field::TyreGround, &TyreGround::ALL),
            style: reader.pick(Field::WheelStyle, &WheelStyle::ALL),
            other: reader.quantity_or_none(Field::OtherTyre, (&NominalWidth::LIMITS, NominalWidth::new)),
            marks: PressureMarks {
                tyre: reader.quantity_or_none(Field::TyreMark, pressure),
                rim: reader.quantity_or_none(Field::RimMark, pressure),
                hookless: reader.pick(Field::Hookless, &[false, true]),
            },
            measured: reader
                .quantity_or_none(Field::TyreWidthMeasured, (&MountedWidth::LIMITS, MountedWidth::new)),
            edition: reader.pick(Field::LabelEdition, &[LabelEdition::Etrto2020, LabelEdition::OlderIso]),
            measuring_rim: reader.quantity_or_none(Field::MeasuringRim, rim),
            front_share: reader.quantity(Field::FrontShare, (&FrontShare::LIMITS, FrontShare::new)),
        }
    }
}
