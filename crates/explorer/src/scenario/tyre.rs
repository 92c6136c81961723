//! Tyre, rim and what loads them.

use super::parse::Reader;
use crate::field::Field;
use gear_math::{
    BikeMass, BodyMass, Construction, FrontShare, LabelEdition, MountedWidth, NominalWidth, PressureMarks,
    RaceLimit, RimInnerWidth, TyreGround, WheelStyle,
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
    /// Reads the fields; without a `good` value one in error falls back on what it starts with.
    pub(super) fn read(reader: &mut Reader<'_>, good: Option<&Self>) -> Self {
        let marks = good.map(|good| good.marks);
        Self {
            rider: reader.quantity(Field::Body, good.map(|good| good.rider), (BodyMass::new, BodyMass::kg)),
            bike: reader.quantity(
                Field::BikeAndKit,
                good.map(|good| good.bike),
                (BikeMass::new, BikeMass::kg),
            ),
            construction: reader.choice(
                Field::Construction,
                good.map_or(Construction::Tubeless, |good| good.construction),
                &[
                    ("tubular", Construction::Tubular),
                    ("clincher", Construction::Clincher),
                    ("tubeless", Construction::Tubeless),
                ],
            ),
            rim: reader.quantity(
                Field::Rim,
                good.map(|good| good.rim),
                (RimInnerWidth::new, RimInnerWidth::mm),
            ),
            limit: reader.choice(
                Field::WidthLimit,
                good.map_or(Some(RaceLimit::UCI), |good| good.limit),
                &[
                    ("33", Some(RaceLimit::UCI)),
                    ("35", Some(RaceLimit::MM_35)),
                    ("38", Some(RaceLimit::MM_38)),
                    ("none", None),
                ],
            ),
            ground: reader.choice(
                Field::TyreGround,
                good.map_or(TyreGround::Mixed, |good| good.ground),
                &[("soft", TyreGround::Soft), ("mixed", TyreGround::Mixed), ("rocky", TyreGround::Rocky)],
            ),
            style: reader.choice(
                Field::WheelStyle,
                good.map_or(WheelStyle::Normal, |good| good.style),
                &[("smooth", WheelStyle::Smooth), ("normal", WheelStyle::Normal), ("hard", WheelStyle::Hard)],
            ),
            other: reader.quantity_or_none(
                Field::OtherTyre,
                good.and_then(|good| good.other),
                (NominalWidth::new, NominalWidth::mm),
            ),
            marks: PressureMarks {
                tyre: reader.pressure_or_none(Field::TyreMark, marks.and_then(|marks| marks.tyre)),
                rim: reader.pressure_or_none(Field::RimMark, marks.and_then(|marks| marks.rim)),
                hookless: reader.choice(
                    Field::Hookless,
                    marks.is_some_and(|marks| marks.hookless),
                    &[("hooked", false), ("hookless", true)],
                ),
            },
            measured: reader.quantity_or_none(
                Field::TyreWidthMeasured,
                good.and_then(|good| good.measured),
                (MountedWidth::new, MountedWidth::mm),
            ),
            edition: reader.choice(
                Field::LabelEdition,
                good.map_or(LabelEdition::Etrto2020, |good| good.edition),
                &[("2020", LabelEdition::Etrto2020), ("older", LabelEdition::OlderIso)],
            ),
            measuring_rim: reader.quantity_or_none(
                Field::MeasuringRim,
                good.and_then(|good| good.measuring_rim),
                (RimInnerWidth::new, RimInnerWidth::mm),
            ),
            front_share: reader.quantity(
                Field::FrontShare,
                good.map(|good| good.front_share),
                (FrontShare::new, FrontShare::fraction),
            ),
        }
    }
}
