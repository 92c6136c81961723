//! What is asked of a box: its parts with those of the bench, and what they are combined for.

use crate::lap::basis::Basis;
use crate::parts::inputs::BoxInputs;
use crate::side::Side;
use gear_math::chain::{CageMeasures, ChainDefaults, ChainMeasure};
use gear_math::parts::{BareBike, BoxRider, Combination, Outing, PartsBox, RearDerailleur};
use gear_math::{Bike, Course, Drivetrain};

/// What is asked of a box.
#[derive(Debug, Clone, PartialEq)]
pub struct BoxAsked {
    /// What it is combined for.
    pub outing: Outing,
    /// What was typed.
    typed: PartsBox,
    /// What was typed behind the parts of A and B.
    pub parts: PartsBox,
    /// A and B as they stand, where all of them lies in the box.
    pub bench: [Option<Combination>; 2],
    /// How many parts may be bought together.
    pub budget: usize,
}

impl BoxAsked {
    /// What a bench asks round a course.
    #[must_use]
    pub fn of(basis: &Basis<'_>, inputs: &BoxInputs, course: Course) -> Self {
        let parts = whole(basis, inputs);
        let rider =
            basis.on_reserve(Side::A).map_or(BoxRider::Steady(basis.setup(Side::A)), BoxRider::Reserve);
        let bench = Side::BOTH.map(|side| standing(basis, &parts, side));
        let outing = Outing { course, rider, bike: bare(basis, inputs) };
        Self { outing, typed: inputs.typed.clone(), parts, bench, budget: inputs.budget }
    }

    /// Whether what was found for this holds for another one too: it is the same but for parts of the bench, and those all lie in
    /// this box.
    #[must_use]
    pub fn holds_for(&self, other: &Self) -> bool {
        let (own, its) = (&self.parts, &other.parts);
        let are_within = its.chainsets.iter().all(|it| own.chainsets.contains(it))
            && its.cassettes.iter().all(|it| own.cassettes.contains(it))
            && its.derailleurs.iter().all(|it| own.derailleurs.contains(it));
        are_within
            && (&self.typed, self.budget) == (&other.typed, other.budget)
            && self.outing == other.outing_with(self.bike())
    }

    /// The bike as it stands.
    #[must_use]
    pub const fn bike(&self) -> &Bike {
        self.outing.rider.bike()
    }

    /// What the box is combined for, with the gears of another bike.
    fn outing_with(&self, gears: &Bike) -> Outing {
        let mut outing = self.outing.clone();
        let bike = match &mut outing.rider {
            BoxRider::Reserve(setup) => &mut setup.lap.bike,
            BoxRider::Steady(setup) => &mut setup.bike,
        };
        (bike.drivetrain, bike.avoid) = (gears.drivetrain, gears.avoid);
        outing
    }
}

/// What lies in the box, the parts of A and B first. Where no derailleur is known there is none: nothing is checked then.
#[must_use]
pub fn whole(basis: &Basis<'_>, inputs: &BoxInputs) -> PartsBox {
    let drivetrains = basis.rings.drivetrains();
    let typed = inputs.typed.clone();
    let derailleurs =
        each_once(Side::BOTH.map(|side| rear(basis, side)).into_iter().chain(typed.derailleurs));
    let is_any_known = derailleurs.iter().any(|it| *it != RearDerailleur::default());
    PartsBox {
        chainsets: each_once(drivetrains.iter().map(|it| it.chainset).chain(typed.chainsets)),
        cassettes: each_once(drivetrains.iter().map(|it| it.cassette).chain(typed.cassettes)),
        derailleurs: if is_any_known { derailleurs } else { Vec::new() },
        front_derailleurs: typed.front_derailleurs,
        tyres: each_once(typed.tyres.into_iter()),
        chains: each_once(basis.chain.links.into_iter().flatten().chain(typed.chains)),
    }
}

fn each_once<T: PartialEq>(all: impl Iterator<Item = T>) -> Vec<T> {
    let mut kept = Vec::new();
    for one in all {
        if !kept.contains(&one) {
            kept.push(one);
        }
    }
    kept
}

fn rear(basis: &Basis<'_>, side: Side) -> RearDerailleur {
    let is_measured = !basis.chain.left_empty(side, ChainMeasure::PulleyCentres);
    let centres = basis.chain.cages[side as usize].measures().pulley_centres;
    RearDerailleur { figures: *basis.chain.derailleur(side), pulley_centres: is_measured.then_some(centres) }
}

/// A set-up of the bench among the combinations of the box.
fn standing(basis: &Basis<'_>, parts: &PartsBox, side: Side) -> Option<Combination> {
    let Drivetrain { chainset, cassette } = basis.rings.drivetrains()[side as usize];
    let rear = rear(basis, side);
    let derailleur = parts.derailleurs.iter().position(|it| *it == rear);
    if derailleur.is_none() && !parts.derailleurs.is_empty() {
        return None;
    }
    let chainset = parts.chainsets.iter().position(|it| *it == chainset)?;
    let cassette = parts.cassettes.iter().position(|it| *it == cassette)?;
    Some(Combination { chainset, cassette, derailleur })
}

/// The bike without the parts that the box has.
fn bare(basis: &Basis<'_>, inputs: &BoxInputs) -> BareBike {
    let (chain, drivetrains) = (basis.chain, basis.rings.drivetrains());
    let left_empty = |it: &ChainMeasure| *it == ChainMeasure::PulleyCentres || chain.left_empty(Side::A, *it);
    let off = |side: Side| chain.gears_off[side as usize].gears(&drivetrains[side as usize]);
    let pulley_centres = ChainDefaults::CAGE.pulley_centres;
    BareBike {
        frame: chain.frame(),
        cage: CageMeasures { pulley_centres, ..*chain.cages[0].measures() },
        unmeasured: ChainDefaults::ASSUMPTIONS.map(|it| it.measure).into_iter().filter(left_empty).collect(),
        largest_ring: basis.lap.search.frame_ring,
        sprockets: inputs.sprockets,
        switched_off: Side::BOTH.into_iter().flat_map(off).collect(),
    }
}
