//! The road position on the cross bike.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::bench::owners::Owners;
use crate::position::inputs::PositionInputs;
use gear_math::chain::BottomBracketDrop;
use gear_math::position::{
    BarPlacement, BikePoint, CarriedPosition, FrontEndView, PositionCaution, PositionView, StemFit,
    ToeClearance, ToeRoom, keep_hoods,
};
use gear_math::{StemSearch, TyreSize};

/// What the saddle's height on the cross bike rests on.
pub(crate) const SADDLE: &[Field] = &[
    Field::SaddleHeight,
    Field::SeatAngle,
    Field::RoadCrank,
    Field::RoadStack,
    Field::CrossSeatAngle,
    Field::CrossCrank,
    Field::CrossStack,
    Field::LowerBy,
];
/// What the place of the saddle's tip rests on, unless the knee is kept over the pedal.
const TIP: &[Field] = &[Field::Setback];
const TIP_BY_KNEE: &[Field] = &[Field::Setback, Field::RoadCrank, Field::CrossCrank];
/// What the bar's height against the saddle rests on.
pub(crate) const DROP: &[Field] = &[Field::BarDrop, Field::BarUpBy];
/// What the bar's place rests on beside the saddle's height.
pub(crate) const BAR: &[Field] =
    &[Field::Setback, Field::TipToBar, Field::BarDrop, Field::BarUpBy, Field::BarCloserBy];
/// What a stem rests on beside the bar's place.
pub(crate) const FRONT: &[Field] =
    &[Field::Stack, Field::Reach, Field::HeadAngle, Field::Headset, Field::ClampHeight];
/// What the room for the toes rests on beside the front centre, which is asked for by being left empty.
const TOES: &[Field] = &[Field::CrossCrank, Field::HeadAngle];

/// Less than this on the rails is nothing to slide, in millimetres: a tape shows no less.
const NO_SHIFT_MM: f64 = 0.5;

/// Where the saddle goes on its rails, and how far, in millimetres.
#[derive(Debug, Clone, Copy)]
pub(crate) enum RailShift {
    /// Nowhere.
    Stays,
    /// Forward.
    Forward(f64),
    /// Back.
    Back(f64),
}

/// The position's section, before it is put in words.
#[derive(Debug)]
pub struct PositionReport {
    /// What it is worked out from.
    pub inputs: PositionInputs,
    /// The points of the road bike.
    pub road: PositionView,
    /// The position on the cross bike.
    pub cross: CarriedPosition,
    /// Where a handlebar of another shape must be instead, when the reach of both is known.
    pub bar: Option<BarPlacement>,
    /// Stems that bring the bar there.
    pub search: StemSearch,
    /// The front end with the nearest of them.
    pub front: FrontEndView,
    /// How far the bottom bracket lies below the axles.
    pub bracket_drop: BottomBracketDrop,
    /// Room for the toes, when the front centre is known.
    pub toes: Option<ToeClearance>,
    /// The same with B's front wheel, where its tyre is of another size.
    pub toes_of_b: Option<ToeClearance>,
    /// What to look at before riding, the special cautions first.
    pub cautions: Vec<PositionCaution>,
    /// Measures that are not known: what rests on them fills its place only, and is not to be shown.
    unknown: Vec<Field>,
}

impl PositionReport {
    /// `bracket_drop` and `tyres` are those of the cross bike, set up as A and as B.
    pub(crate) fn new(
        inputs: PositionInputs,
        bracket_drop: BottomBracketDrop,
        tyres: [TyreSize; 2],
        owners: &Owners,
    ) -> Self {
        let cross = inputs.road.carried_to(&inputs.cross, &inputs.changes);
        let both = inputs.bars.road.zip(inputs.bars.cross);
        let bar = both.map(|(road, cross_bar)| keep_hoods(cross.target, &road, &cross_bar));
        let target = bar.map_or(cross.target, |bar| bar.centre);
        let search = inputs.front.search_stems(target, &inputs.limits);
        let mut report = Self {
            road: inputs.road.view(),
            front: inputs.front.view(&nearest(&search).setup),
            cautions: Vec::new(),
            unknown: unknown(owners),
            inputs,
            cross,
            bar,
            search,
            bracket_drop,
            toes: None,
            toes_of_b: None,
        };
        let [toes, of_b] = tyres.map(|tyre| report.toes_beside(tyre));
        (report.toes, report.toes_of_b) = (toes, of_b.filter(|_| tyres[0] != tyres[1]));
        report.cautions = report.all_cautions();
        report
    }

    fn toes_beside(&self, tyre: TyreSize) -> Option<ToeClearance> {
        let room = toe_room(&self.inputs, self.bracket_drop, tyre).filter(|_| self.knows(TOES));
        room.map(|room| room.clearance())
    }

    fn all_cautions(&self) -> Vec<PositionCaution> {
        let mut cautions = Vec::new();
        if self.knows(SADDLE) && self.knows(self.tip_fields()) {
            cautions.extend(&self.cross.cautions);
        }
        if self.knows_stem() {
            cautions.extend(self.nearest().setup.cautions());
        }
        let of_toes = [self.toes, self.toes_of_b].into_iter().flatten();
        let worst = of_toes.min_by(|a, b| a.swept_mm.total_cmp(&b.swept_mm));
        cautions.extend(worst.and_then(|toes| toes.verdict.caution()));
        cautions.extend(PositionCaution::ALWAYS);
        cautions
    }

    /// Whether all of `fields` are known, so that what rests on them may be shown.
    #[must_use]
    pub fn knows(&self, fields: &[Field]) -> bool {
        fields.iter().all(|field| !self.unknown.contains(field))
    }

    /// Whether the bar's place is known, and the front of the frame that a stem must bring it to.
    #[must_use]
    pub fn knows_stem(&self) -> bool {
        [SADDLE, BAR, FRONT].iter().all(|fields| self.knows(fields))
    }

    /// What the place of the saddle's tip rests on.
    #[must_use]
    pub fn tip_fields(&self) -> &'static [Field] {
        if self.inputs.changes.keep_knee_over_pedal { TIP_BY_KNEE } else { TIP }
    }

    /// Where the saddle goes on its rails.
    pub(crate) fn rail_shift(&self) -> RailShift {
        match self.cross.rail_shift_forward_mm {
            shift if shift.abs() < NO_SHIFT_MM => RailShift::Stays,
            shift if shift > 0.0 => RailShift::Forward(shift),
            shift => RailShift::Back(-shift),
        }
    }

    /// Whether that may be more than the rails allow.
    pub(crate) fn rails_may_run_out(&self) -> bool {
        self.cross.cautions.contains(&PositionCaution::RailsMayRunOut)
    }

    /// Whether the seat post as it is does not bring the saddle to its place.
    pub(crate) fn needs_post(&self) -> bool {
        self.knows(SADDLE) && self.knows(self.tip_fields()) && self.rails_may_run_out()
    }

    /// Whether nothing is to be said against the stem that was found, nor against the seat post.
    pub(crate) fn is_plain_sailing(&self) -> bool {
        self.nearest().setup.cautions().is_empty() && !self.search.is_doubtful() && !self.needs_post()
    }

    /// Where the centre of the bar must be on the cross bike.
    #[must_use]
    pub fn target(&self) -> BikePoint {
        self.bar.map_or(self.cross.target, |bar| bar.centre)
    }

    /// Saddle tip to the centre of the bar on the cross bike, in a straight line, in millimetres.
    #[must_use]
    pub fn tape_mm(&self) -> f64 {
        self.cross.tape_mm(self.target())
    }

    /// The stem that comes nearest, whether near enough or not.
    #[must_use]
    pub fn nearest(&self) -> &StemFit {
        nearest(&self.search)
    }
}

/// A search that found something is never empty.
fn nearest(search: &StemSearch) -> &StemFit {
    match search {
        StemSearch::Found(fits) => &fits[0],
        StemSearch::NoneFits(shortfall) => &shortfall.nearest,
    }
}

fn toe_room(inputs: &PositionInputs, bracket_drop: BottomBracketDrop, tyre: TyreSize) -> Option<ToeRoom> {
    let toes = &inputs.toes;
    Some(ToeRoom {
        front_centre: toes.front_centre?,
        bottom_bracket_drop: bracket_drop,
        wheel_radius: tyre.outer_radius(),
        head_angle: inputs.front.head_angle,
        fork_rake: toes.fork_rake,
        pedal_offset: toes.pedal_offset,
        crank: inputs.cross.footing.crank,
    })
}

/// Measures of the position that are not known.
fn unknown(owners: &Owners) -> Vec<Field> {
    owners.lacking(|field| owners.get(field) == Owner::Unknown).collect()
}
