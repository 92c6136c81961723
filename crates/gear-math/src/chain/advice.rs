//! Whether the cage can stay, and if not as it is, what to change.

use crate::cage::Derailleur;
use crate::chain::fit::ChainFit;
use crate::chain::gear_state::{GearFit, GearState};
use crate::chain::hanger::Hanger;
use crate::chain::measures::{ChainLinks, PulleyCentres};
use crate::chain::path_error::PathError;
use crate::chain::remedy::{Change, Effort, EffortPart, Remedy};
use crate::chain::setup::ChainSetup;
use crate::gears::{Cassette, Chainring, Chainset, Drivetrain, Gear, Sprocket};

/// The mechanic's answer by geometry. Makers' figures, see [`Derailleur::check`], come before it.
///
/// # Example
/// ```
/// use gear_math::{ChainSetup, Derailleur, Drivetrain};
/// use gear_math::chain::{Cage, CageMeasures, ChainDefaults, ChainVerdict, Change, PulleyCentres};
/// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let short = CageMeasures { pulley_centres: PulleyCentres::new(55.0)?, ..ChainDefaults::CAGE };
/// let setup = ChainSetup {
///     chainline: ChainDefaults::chainline(&drivetrain),
///     drivetrain,
///     frame: ChainDefaults::FRAME,
///     cage: Cage::new(short)?,
/// };
/// let advice = setup.advise(None, &Derailleur::default(), &ChainDefaults::HANGER)?;
/// assert_eq!(advice.verdict, ChainVerdict::KeepAvoidingGears);
/// assert!(matches!(&advice.remedies[0].change, Change::AvoidGears(gears) if gears.len() == 1));
/// assert!(matches!(advice.remedies.last().unwrap().change, Change::LongerCage(_)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct ChainAdvice {
    /// Whether the cage can stay, with the chain that suits it best.
    pub verdict: ChainVerdict,
    /// Every gear with the chain that the verdict speaks of: the recommended one, or two links less.
    pub suited: ChainFit,
    /// Every gear with the chain that was given, or with the recommended one.
    pub fit: ChainFit,
    /// What would help, least effort first; empty when every gear is usable and the derailleur clears the largest
    /// sprocket.
    pub remedies: Vec<Remedy>,
}

/// Whether the cage can stay.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ChainVerdict {
    /// The recommended chain suits every gear.
    Keep,
    /// It can stay when some crossed gears are never used: the recommended chain hangs slack in them.
    KeepAvoidingGears,
    /// It can stay with a chain two links shorter than recommended: no gear is slack then, and the largest is
    /// tight but usual.
    KeepWithTightChain,
    /// Gears that are wanted would hang slack.
    LongerCageNeeded,
}

/// Rings closer than this leave two gears for every one; estimate.
const CLOSEST_RINGS_TEETH: u16 = 4;
/// Hangers that reach further down are hardly made; estimate.
const LONGEST_EXTENSION_MM: f64 = 40.0;

impl ChainSetup {
    /// Judges the cage and, where gears are not usable, works out what would help.
    ///
    /// Tells from `maker` only the largest sprocket: when the cassette's is larger, a longer hanger is among the
    /// remedies, as if the derailleur were used to the full on that sprocket and `hanger`.
    ///
    /// # Errors
    /// [`PathError::WheelsOverlap`] when the swinging tension pulley could run into a chainring.
    pub fn advise(
        &self,
        links: Option<ChainLinks>,
        maker: &Derailleur,
        hanger: &Hanger,
    ) -> Result<ChainAdvice, PathError> {
        let bench = Bench { setup: self, recommended: self.fit(None)?, present: self.fit(links)? };
        let mut remedies = Vec::new();
        bench.lower_hanger(maker, hanger).into_iter().for_each(|remedy| rank(&mut remedies, remedy));
        if !bench.present.all_usable() {
            bench.for_the_chain().for_each(|remedy| rank(&mut remedies, remedy));
        }
        let (verdict, suited) = bench.verdict();
        Ok(ChainAdvice { verdict, suited, remedies, fit: bench.present })
    }
}

impl ChainSetup {
    /// Whether the cage can stay, and the chain that the verdict speaks of.
    pub(super) fn suited(&self) -> Result<(ChainVerdict, ChainFit), PathError> {
        let recommended = self.fit(None)?;
        Ok(Bench { setup: self, present: recommended.clone(), recommended }.verdict())
    }
}

/// Puts `remedy` behind those of no greater effort. A handful of remedies needs no sorting algorithm, whose code is
/// large.
fn rank(remedies: &mut Vec<Remedy>, remedy: Remedy) {
    let place = remedies.partition_point(|other| other.effort <= remedy.effort);
    remedies.insert(place, remedy);
}

/// The set-up under examination.
struct Bench<'a> {
    setup: &'a ChainSetup,
    recommended: ChainFit,
    present: ChainFit,
}

impl Bench<'_> {
    fn verdict(&self) -> (ChainVerdict, ChainFit) {
        let recommended = || self.recommended.clone();
        if self.recommended.all_usable() {
            (ChainVerdict::Keep, recommended())
        } else if self.avoidable(&self.recommended).is_some() {
            (ChainVerdict::KeepAvoidingGears, recommended())
        } else if let Some(tight) = self.tight_chain() {
            (ChainVerdict::KeepWithTightChain, tight)
        } else {
            (ChainVerdict::LongerCageNeeded, recommended())
        }
    }

    fn for_the_chain(&self) -> impl Iterator<Item = Remedy> + '_ {
        let parts_needed = !self.recommended.all_usable();
        let parts = move || {
            [self.raise_small_ring(), self.lower_big_ring(), self.smaller_sprocket(), self.longer_cage()]
        };
        let parts = parts_needed.then(parts).into_iter().flatten();
        [self.avoid_gears(), self.other_links()].into_iter().chain(parts).flatten()
    }

    /// With the present chain where that will do, else with the recommended one.
    fn avoid_gears(&self) -> Option<Remedy> {
        let with = |fit: &ChainFit| self.avoidable(fit).map(|gears| (gears, fit.clone()));
        let (gears, fit) = with(&self.present).or_else(|| with(&self.recommended))?;
        if gears.is_empty() {
            return None;
        }
        let relinked = self.relinked(&fit);
        let part = if relinked > 0.0 { EffortPart::Chain } else { EffortPart::Nothing };
        let effort = Effort { part, share: relinked + share_of_gears(&gears, &fit) };
        Some(Remedy { change: Change::AvoidGears(gears), effort, fit })
    }

    /// The gears of `fit` that cannot be used, when all are slack and crossed on the smallest ring. Gears that
    /// are too tight are never merely avoided: one mistake breaks the derailleur.
    fn avoidable(&self, fit: &ChainFit) -> Option<Vec<Gear>> {
        let bike = &self.setup.drivetrain;
        let unusable = fit.gears.iter().filter(|gear| !gear.state.is_usable());
        let may_be = |fit: &GearFit| fit.state == GearState::Slack && bike.may_be_avoided(fit.gear);
        unusable.map(|fit| may_be(fit).then_some(fit.gear)).collect()
    }

    /// The chain that suits every gear: the recommended one, or two links less.
    fn other_links(&self) -> Option<Remedy> {
        let recommended = Some(self.recommended.clone()).filter(ChainFit::all_usable);
        let fit = recommended.or_else(|| self.tight_chain())?;
        let effort = Effort { part: EffortPart::Chain, share: self.relinked(&fit) };
        Some(Remedy { change: Change::OtherLinks(fit.links), effort, fit })
    }

    /// Share of the present chain's links that come off or are added.
    fn relinked(&self, fit: &ChainFit) -> f64 {
        let [before, after] = [&self.present, fit].map(|fit| fit.links.count());
        share(before.abs_diff(after), before)
    }

    /// A pair of links fewer than recommended, when that leaves every gear usable.
    fn tight_chain(&self) -> Option<ChainFit> {
        let links = self.recommended.links.minus(2);
        self.setup.fit(Some(links)).ok().filter(ChainFit::all_usable)
    }

    fn lower_hanger(&self, maker: &Derailleur, hanger: &Hanger) -> Option<Remedy> {
        let ChainSetup { frame, cage, .. } = self.setup;
        let wanted = self.setup.drivetrain.cassette.largest();
        let usual = maker.largest_sprocket.filter(|&usual| usual < wanted)?;
        let extension_mm =
            hanger.extension_mm(usual, wanted, frame, cage).filter(|&mm| mm <= LONGEST_EXTENSION_MM)?;
        let share = extension_mm / hanger.reach_mm(usual, frame, cage);
        let effort = Effort { part: EffortPart::OnePart, share };
        Some(Remedy { change: Change::LongerHanger { extension_mm }, effort, fit: self.present.clone() })
    }

    fn raise_small_ring(&self) -> Option<Remedy> {
        let (small, others) = self.setup.drivetrain.chainset.rings().split_last()?;
        let larger = (small.teeth() + 1)..(others.last()?.teeth() + 1).saturating_sub(CLOSEST_RINGS_TEETH);
        self.other_rings(larger, others, small.teeth())
    }

    fn lower_big_ring(&self) -> Option<Remedy> {
        let (big, others) = self.setup.drivetrain.chainset.rings().split_first()?;
        let smaller = ((others.first()?.teeth() + CLOSEST_RINGS_TEETH)..big.teeth()).rev();
        self.other_rings(smaller, others, big.teeth())
    }

    /// The first of `tried` that, in the place of a ring of `before` teeth beside `others`, leaves a chain for every
    /// gear.
    fn other_rings(
        &self,
        tried: impl Iterator<Item = u16>,
        others: &[Chainring],
        before: u16,
    ) -> Option<Remedy> {
        tried.into_iter().find_map(|teeth| {
            let chainset = Chainset::new(others.iter().map(|ring| ring.teeth()).chain([teeth])).ok()?;
            let drivetrain = Drivetrain { chainset, ..self.setup.drivetrain };
            let share = share(before.abs_diff(teeth), before);
            let effort = Effort { part: EffortPart::OnePart, share };
            self.with(ChainSetup { drivetrain, ..*self.setup }, Change::CloserRings(chainset), effort)
        })
    }

    fn smaller_sprocket(&self) -> Option<Remedy> {
        let cassette = self.setup.drivetrain.cassette;
        let [smallest, largest] = [cassette.smallest(), cassette.largest()].map(Sprocket::teeth);
        ((smallest + 1)..largest).rev().find_map(|teeth| {
            let kept =
                cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).take_while(|&kept| kept < teeth);
            let cassette = Cassette::new(kept.chain([teeth])).ok()?;
            let drivetrain = Drivetrain { cassette, ..self.setup.drivetrain };
            let effort = Effort { part: EffortPart::OnePart, share: share(largest - teeth, largest) };
            let change = Change::SmallerSprocket(cassette.largest());
            self.with(ChainSetup { drivetrain, ..*self.setup }, change, effort)
        })
    }

    /// The shortest cage, in whole millimetres, that leaves a chain for every gear. A longer cage only widens the
    /// window at both ends, so the whole millimetres can be halved.
    fn longer_cage(&self) -> Option<Remedy> {
        let before = self.setup.cage.measures().pulley_centres.mm();
        let [mut too_short, mut enough] = [before.floor(), PulleyCentres::LIMITS.max];
        while enough - too_short > 1.0 {
            let middle = f64::midpoint(too_short, enough).floor();
            let open = self.with_cage(middle).is_some_and(|setup| is_open(&setup));
            *(if open { &mut enough } else { &mut too_short }) = middle;
        }
        let effort = Effort { part: EffortPart::Derailleur, share: enough / before - 1.0 };
        self.with(self.with_cage(enough)?, Change::LongerCage(PulleyCentres::nearest(enough)), effort)
    }

    fn with_cage(&self, pulley_centres_mm: f64) -> Option<ChainSetup> {
        let cage = self.setup.cage.with_pulley_centres(PulleyCentres::nearest(pulley_centres_mm)).ok()?;
        Some(ChainSetup { cage, ..*self.setup })
    }

    /// The change, with every gear solved again, when it leaves a chain for every gear.
    fn with(&self, setup: ChainSetup, change: Change, effort: Effort) -> Option<Remedy> {
        let fit = is_open(&setup).then(|| setup.fit(None).ok())??;
        fit.all_usable().then_some(Remedy { change, effort, fit })
    }
}

fn is_open(setup: &ChainSetup) -> bool {
    setup.window().is_ok_and(|window| window.is_open())
}

fn share_of_gears(gears: &[Gear], fit: &ChainFit) -> f64 {
    let count = |length: usize| u16::try_from(length).unwrap_or(u16::MAX);
    share(count(gears.len()), count(fit.gears.len()))
}

fn share(part: u16, whole: u16) -> f64 {
    f64::from(part) / f64::from(whole)
}
