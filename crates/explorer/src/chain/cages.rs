//! Whether the cage takes A and B, and so which gears are not to be used: decided here once, for every section.

use crate::chain::inputs::ChainInputs;
use crate::side::Side;
use gear_math::cage::CageClass;
use gear_math::chain::{CageAnswer, ClassTrial, PulleyCentres, Standing};
use gear_math::gears::GearSet;
use gear_math::{Drivetrain, Gear};

/// What the cage says to A and B, and what the rider does.
#[derive(Debug, Clone, PartialEq)]
pub struct Cages {
    drivetrains: [Drivetrain; 2],
    switched_off: [GearSet; 2],
    answers: [CageAnswer; 2],
}

impl Cages {
    pub(crate) fn of(inputs: &ChainInputs) -> Self {
        let [a, b] = Side::BOTH.map(|side| inputs.cage_question(side));
        let of_a = a.answer();
        let of_b = if a == b { of_a.clone() } else { b.answer() };
        Self { drivetrains: inputs.drivetrains, switched_off: inputs.gears_off, answers: [of_a, of_b] }
    }

    /// Whether the cage takes one set-up.
    #[must_use]
    pub const fn answer(&self, side: Side) -> &CageAnswer {
        &self.answers[side as usize]
    }

    /// Gears of A and of B that are not to be used.
    #[must_use]
    pub fn avoided(&self) -> [GearSet; 2] {
        self.answers.each_ref().map(|answer| answer.avoid)
    }

    /// The lowest gears of A and of B that may be used.
    #[must_use]
    pub fn lowest(&self) -> [Gear; 2] {
        Side::BOTH.map(|side| self.answer(side).avoid.lowest(&self.drivetrains[side as usize]))
    }

    /// Gears of any set-up that are not to be used: those of A and of B as they are; of another the rider's choice for both.
    #[must_use]
    pub fn avoid(&self, drivetrain: &Drivetrain) -> GearSet {
        let own = Side::BOTH.into_iter().find(|&side| self.drivetrains[side as usize] == *drivetrain);
        own.map_or_else(|| self.switched_off_in(drivetrain), |side| self.answer(side).avoid)
    }

    fn switched_off_in(&self, drivetrain: &Drivetrain) -> GearSet {
        let is_off =
            |side: Side, gear| self.switched_off[side as usize].holds(&self.drivetrains[side as usize], gear);
        GearSet::of(drivetrain, |gear| Side::BOTH.into_iter().any(|side| is_off(side, gear)))
    }
}

/// The class of cages that those for wide ranges follow.
const LONG: CageClass = CageClass::ALL[2];

/// Trials of usual lengths that tell something: where a long cage will do, a longer one is nothing to tell.
pub(crate) fn worth_telling(trials: &[ClassTrial]) -> &[ClassTrial] {
    let will_do = |trial: &ClassTrial| trial.class == LONG && trial.standing == Standing::Runs;
    let told = trials.iter().position(will_do).map_or(trials.len(), |long| long + 1);
    &trials[..told]
}

/// The cages that are usually at least of some length.
pub(crate) enum UsualCage {
    /// A class.
    Of(&'static CageClass),
    /// Longer than one class, shorter than the next.
    Between(&'static CageClass, &'static CageClass),
}

impl UsualCage {
    /// Those with pulley centres at least so far apart, where there are any.
    pub(crate) fn with(centres: PulleyCentres) -> Option<Self> {
        const CLASSES: &[CageClass] = &CageClass::ALL;
        let mm = centres.mm();
        let place = CLASSES.iter().position(|class| class.pulley_centres_mm.1 >= mm)?;
        let class = &CLASSES[place];
        match CLASSES[..place].last() {
            Some(shorter) if mm < class.pulley_centres_mm.0 => Some(Self::Between(shorter, class)),
            _ => Some(Self::Of(class)),
        }
    }
}
