//! Tyre and rim, and what loads them.

use crate::bench::field::{Field, Group};
use crate::bench::reader::Reader;
use gear_math::rider::{BikeMass, BodyMass, KitMass, RearShare};
use gear_math::wheel::{
    Construction, FrontShare, LabelEdition, MountedWidth, NominalWidth, PressureMarks, RaceLimit,
    RimInnerWidth, TyreFitError, TyreGround, TyreSection, TyreWidth, WheelStyle,
};

/// The groups of fields that stand in the section on tyre and pressure.
pub(crate) const GROUPS: &[Group] = &[Group::Tyre, Group::TyreFiner];

/// What presses on the tyres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Burden {
    /// The rider's body.
    pub rider: BodyMass,
    /// What the rider wears and carries.
    pub kit: KitMass,
    /// The bike.
    pub bike: BikeMass,
    /// Rear wheel's part of the weight.
    pub rear: RearShare,
}

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
    /// Understands the fields; who rides and on what stands elsewhere. A and B have a rim, a kind and a measured width each;
    /// marks, race rule and ground are of both.
    pub(crate) fn read(reader: &mut Reader<'_>, burdens: [Burden; 2]) -> [Self; 2] {
        let of_a = reader.pick(Field::Construction, &Construction::ALL);
        let [first, second, third] = Construction::ALL;
        let of_b = reader.pick(Field::ConstructionB, &[of_a, first, second, third]);
        let rims = reader.each(Field::Rim, Reader::quantity);
        let measured = reader.measures(Field::TyreWidthMeasured);
        let shared = Self::shared(reader, of_a, rims[0], burdens[0]);
        [(of_a, 0), (of_b, 1)].map(|(construction, side)| {
            let hookless = shared.marks.hookless && construction != Construction::Tubular;
            let marks = PressureMarks { hookless, ..shared.marks };
            let own = Self { construction, rim: rims[side], measured: measured[side], marks, ..shared };
            own.under(burdens[side])
        })
    }

    fn shared(
        reader: &mut Reader<'_>,
        construction: Construction,
        rim: RimInnerWidth,
        burden: Burden,
    ) -> Self {
        let limits = [Some(RaceLimit::UCI), Some(RaceLimit::MM_35), Some(RaceLimit::MM_38), None];
        Self {
            construction,
            rim,
            limit: reader.pick(Field::WidthLimit, &limits),
            ground: reader.pick(Field::TyreGround, &TyreGround::ALL),
            style: reader.pick(Field::WheelStyle, &WheelStyle::ALL),
            other: reader.quantity_or_none(Field::OtherTyre),
            marks: PressureMarks {
                tyre: reader.quantity_or_none(Field::TyreMark),
                rim: reader.quantity_or_none(Field::RimMark),
                least: reader.quantity_or_none(Field::LeastMark),
                hookless: reader.pick(Field::Hookless, &[false, true]),
            },
            measured: None,
            edition: reader.pick(Field::LabelEdition, &[LabelEdition::Etrto2020, LabelEdition::OlderIso]),
            measuring_rim: reader.quantity_or_none(Field::MeasuringRim),
            rider: burden.rider,
            kit: burden.kit,
            bike: burden.bike,
            front_share: FrontShare::beside(burden.rear),
        }
    }

    /// The same under another rider.
    pub(crate) fn under(self, Burden { rider, kit, bike, rear }: Burden) -> Self {
        Self { rider, kit, bike, front_share: FrontShare::beside(rear), ..self }
    }

    /// The rim on which a label's width holds.
    #[must_use]
    pub fn measured_on(&self, label: NominalWidth) -> RimInnerWidth {
        self.measuring_rim.unwrap_or_else(|| self.edition.measuring_rim(label))
    }

    /// How wide a tyre comes out on the rim.
    ///
    /// # Errors
    /// [`TyreFitError`] when it does not go on it.
    pub fn on_rim(&self, label: NominalWidth) -> Result<TyreWidth, TyreFitError> {
        match self.construction {
            Construction::Tubular => Ok(TyreWidth::tubular(label)),
            _ => TyreWidth::on_rim(label, self.rim, self.measured_on(label)),
        }
    }

    /// The width by calliper, unless it is narrower than the rim and so was misread.
    #[must_use]
    pub fn by_calliper(&self) -> Option<MountedWidth> {
        self.measured.filter(|measured| TyreSection::new(*measured, self.rim).is_ok())
    }

    /// The width that counts: by calliper, else on the rim; of a tyre that does not go on it, that of a usual one.
    #[must_use]
    pub fn width(&self, label: NominalWidth) -> MountedWidth {
        let on_rim = || self.on_rim(label).map_or(MountedWidth::CROSS, |width| width.mounted);
        self.by_calliper().unwrap_or_else(on_rim)
    }
}
