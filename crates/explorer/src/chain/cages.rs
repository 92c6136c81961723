//! Whether the cage takes A and B, and so which gears are not to be used: decided here once, for every section.

use crate::chain::inputs::ChainInputs;
use crate::side::Side;
use gear_math::chain::CageAnswer;
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
        Self {
            drivetrains: inputs.drivetrains,
            switched_off: inputs.gears_off,
            answers: Side::BOTH.map(|side| inputs.cage_answer(side)),
        }
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
