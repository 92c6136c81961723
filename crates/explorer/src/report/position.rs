//! The road position on the cross bike.

use crate::scenario::{PositionInputs, Scenario};
use gear_math::{
    BarPlacement, BikePoint, BottomBracketDrop, CarriedPosition, FrontEndView, PositionCaution, PositionView,
    StemFit, StemSearch, ToeClearance, ToeRoom, keep_hoods,
};

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
    /// What to look at before riding, the special cautions first.
    pub cautions: Vec<PositionCaution>,
}

impl PositionReport {
    pub(super) fn new(scenario: &Scenario) -> Self {
        let inputs = scenario.position;
        let cross = inputs.road.carried_to(&inputs.cross, &inputs.changes);
        let both = inputs.bars.road.zip(inputs.bars.cross);
        let bar = both.map(|(road, cross_bar)| keep_hoods(cross.target, &road, &cross_bar));
        let target = bar.map_or(cross.target, |bar| bar.centre);
        let search = inputs.front.search_stems(target, &inputs.limits);
        let toes = toe_room(scenario).map(|room| room.clearance());
        Self {
            road: inputs.road.view(),
            front: inputs.front.view(&nearest(&search).setup),
            cautions: cautions(&cross, &search, toes),
            inputs,
            cross,
            bar,
            search,
            bracket_drop: scenario.chain.frame().bottom_bracket_drop,
            toes,
        }
    }

    /// Where the centre of the bar must be on the cross bike.
    #[must_use]
    pub fn target(&self) -> BikePoint {
        self.bar.map_or(self.cross.target, |bar| bar.centre)
    }

    /// Saddle tip to the centre of the bar on the cross bike, along the tape, in millimetres.
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

fn toe_room(scenario: &Scenario) -> Option<ToeRoom> {
    let (position, toes) = (&scenario.position, &scenario.position.toes);
    Some(ToeRoom {
        front_centre: toes.front_centre?,
        bottom_bracket_drop: scenario.chain.frame().bottom_bracket_drop,
        wheel_radius: scenario.wheel.tyre.outer_radius(),
        head_angle: position.front.head_angle,
        fork_rake: toes.fork_rake,
        pedal_offset: toes.pedal_offset,
        crank: position.cross.footing.crank,
    })
}

fn cautions(
    cross: &CarriedPosition,
    search: &StemSearch,
    toes: Option<ToeClearance>,
) -> Vec<PositionCaution> {
    let mut cautions = cross.cautions.clone();
    cautions.extend(nearest(search).setup.cautions());
    cautions.extend(toes.and_then(|toes| toes.verdict.caution()));
    cautions.extend(PositionCaution::ALWAYS);
    cautions
}
