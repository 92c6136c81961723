//! One set-up tried with one chain, and how far what was not measured could turn the outcome.

use crate::chain::defaults::{Assumption, ChainDefaults, ChainMeasure};
use crate::chain::fit::ChainFit;
use crate::chain::gear_state::GearState;
use crate::chain::measures::ChainLinks;
use crate::chain::path_error::PathError;
use crate::chain::setup::ChainSetup;
use crate::gears::GearSet;

/// How a set-up stands with its chain, from best to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// Every gear runs.
    Runs,
    /// The chain hangs, but only in crossed gears of the smallest ring.
    HangsInAvoidable,
    /// The chain hangs in gears that are wanted, or no path can be drawn.
    Hangs,
}

/// A set-up with the chain that was fitted, or with the one that suits it best.
pub(super) struct Trial {
    pub(super) links: ChainLinks,
    pub(super) too_short: GearSet,
    pub(super) hangs: GearSet,
    pub(super) standing: Standing,
}

impl Trial {
    pub(super) fn of(setup: &ChainSetup, fitted: Option<ChainLinks>) -> Result<Self, PathError> {
        match fitted {
            Some(_) => setup.fit(fitted).map(|fit| Self::new(setup, &fit)),
            None => setup.suited().map(|(_, fit)| Self::new(setup, &fit)),
        }
    }

    fn new(setup: &ChainSetup, fit: &ChainFit) -> Self {
        let bike = &setup.drivetrain;
        let [hangs, too_short] = [GearState::Slack, GearState::TooTight].map(|state| fit.set(state));
        let avoidable = hangs.gears(bike).all(|gear| bike.may_be_avoided(gear));
        let standing = match (hangs.is_empty(), avoidable) {
            (true, _) => Standing::Runs,
            (false, true) => Standing::HangsInAvoidable,
            (false, false) => Standing::Hangs,
        };
        Self { links: fit.links, too_short, hangs, standing }
    }

    /// The fitted chain against the one that suits best: what hangs with either is not the chain's fault.
    pub(super) fn of_chain(setup: &ChainSetup, fitted: Option<ChainLinks>) -> Result<Self, PathError> {
        let [free, mut present] = [Self::of(setup, None)?, Self::of(setup, fitted)?];
        present.hangs = present.hangs.without(free.hangs);
        present.standing = if present.hangs.is_empty() { Standing::Runs } else { Standing::Hangs };
        Ok(present)
    }

    /// Gears that cannot be ridden.
    fn unusable(&self) -> GearSet {
        self.too_short.and(self.hangs)
    }

    /// Whether the same would be said of both.
    fn agrees_with(&self, other: &Self) -> bool {
        self.standing == other.standing && self.too_short.is_empty() == other.too_short.is_empty()
    }
}

/// What a set-up comes to when the measures that were left empty lie anywhere in their usual range.
pub(super) struct Doubted {
    /// Measures that turn the outcome, the most decisive first.
    pub(super) decisive: Vec<ChainMeasure>,
    /// Gears that hang wherever they lie.
    pub(super) surely: GearSet,
    /// Gears that hang somewhere.
    pub(super) perhaps: GearSet,
}

impl Doubted {
    /// Moves each of `unmeasured` to either end of what is usual, one at a time. The forward limit is not moved: it is
    /// how far one chooses to pull the cage, not a measure of the bike.
    pub(super) fn of(
        setup: &ChainSetup,
        base: &Trial,
        unmeasured: &[ChainMeasure],
        trial: impl Fn(&ChainSetup) -> Result<Trial, PathError>,
    ) -> Self {
        let mut doubted = Self { decisive: Vec::new(), surely: base.hangs, perhaps: base.hangs };
        let mut changes: Vec<usize> = Vec::new();
        let is_moved =
            |it: &&Assumption| unmeasured.contains(&it.measure) && it.measure != ChainMeasure::ForeStop;
        for assumption in ChainDefaults::ASSUMPTIONS.iter().filter(is_moved) {
            if let Some(change) = doubted.turned_by(assumption, setup, base, &trial) {
                let place = changes.partition_point(|&other| other >= change);
                changes.insert(place, change);
                doubted.decisive.insert(place, assumption.measure);
            }
        }
        doubted
    }

    /// How many gears change between usable and not, where the outcome turns.
    fn turned_by(
        &mut self,
        assumption: &Assumption,
        setup: &ChainSetup,
        base: &Trial,
        trial: &impl Fn(&ChainSetup) -> Result<Trial, PathError>,
    ) -> Option<usize> {
        let mut most = None;
        for value in [assumption.low, assumption.high] {
            let Ok(trial) = assumption.replaced(setup, value).and_then(|moved| trial(&moved)) else {
                continue;
            };
            self.surely = self.surely.common(trial.hangs);
            self.perhaps = self.perhaps.and(trial.hangs);
            if !trial.agrees_with(base) {
                let [here, there] = [base.unusable(), trial.unusable()];
                most = most.max(Some(here.without(there).and(there.without(here)).count()));
            }
        }
        most
    }
}
