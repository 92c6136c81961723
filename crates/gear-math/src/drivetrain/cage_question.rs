//! “Will the cage take it?”: all that is known of one set-up, and the one place where it is decided.

use super::cage_answer::{
    CageAnswer, CageDoubt, CageLength, CageNeed, CageOutcome, ClassTrial, DerailleurNeed,
};
use super::cage_trial::{Doubted, Standing, Trial};
use super::chain_defaults::ChainMeasure;
use super::chain_setup::ChainSetup;
use super::measures::{ChainLinks, PulleyCentres};
use super::path_error::PathError;
use crate::{
    CageCheck, CageClass, CageFinding, Derailleur, DerailleurFigure, GearSet, Sprocket, TotalCapacity,
};

/// All that is known of a set-up's cage and chain.
///
/// # Example
/// ```
/// use gear_math::{
///     Cage, CageDoubt, CageOutcome, CageQuestion, ChainDefaults, ChainSetup, Derailleur, Drivetrain, GearSet, Sprocket,
///     TotalCapacity,
/// };
/// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let nothing_known = CageQuestion {
///     setup: ChainSetup {
///         chainline: ChainDefaults::chainline(&drivetrain),
///         drivetrain,
///         frame: ChainDefaults::FRAME,
///         cage: Cage::new(ChainDefaults::CAGE)?,
///     },
///     derailleur: Derailleur::default(),
///     links: None,
///     unmeasured: ChainDefaults::ASSUMPTIONS.map(|it| it.measure).to_vec(),
///     switched_off: GearSet::NONE,
/// };
/// let answer = nothing_known.answer();
/// assert!(matches!(answer.outcome, CageOutcome::NotKnown(CageDoubt::CageLength(_))));
///
/// let stated = Derailleur {
///     total_capacity: Some(TotalCapacity::new(33)?),
///     largest_sprocket: Some(Sprocket::new(34)?),
///     ..Derailleur::default()
/// };
/// let answer = CageQuestion { derailleur: stated, ..nothing_known }.answer();
/// assert_eq!(answer.outcome, CageOutcome::FitsAvoidingGears);
/// assert_eq!(answer.avoid, GearSet::parse("31×11", &drivetrain)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct CageQuestion {
    /// Rings, sprockets, frame and cage, as measured or usual. Where the pulley centres are among the unmeasured and a
    /// capacity is stated, they should be [those of that capacity](crate::CageMeasures::centres_for).
    pub setup: ChainSetup,
    /// The makers' figures.
    pub derailleur: Derailleur,
    /// The chain now fitted, if its links were counted.
    pub links: Option<ChainLinks>,
    /// Measures that were left empty, for which usual ones stand in `setup`.
    pub unmeasured: Vec<ChainMeasure>,
    /// Gears that the rider never uses.
    pub switched_off: GearSet,
}

/// Spare teeth from which some whole, even number of links surely suits every gear: two links, a tooth being half of one.
const SURE_SPARE: i32 = 4;
/// Every derailleur for more than one sprocket takes this one (the least of the usual largest sprockets, see
/// [`CageClass::ALL`]; from workshop memory).
const TAKEN_BY_EVERY: u16 = CageClass::ALL[0].largest_sprocket.0;
/// Published capacities lie up to so many teeth below and above what geometry gives cages of the same length: from the
/// rows of the reference table of cage lengths, −6.3 to +3.0.
const STATED_BELOW_AND_ABOVE: (f64, f64) = (6.5, 3.0);

impl CageQuestion {
    /// Decides.
    ///
    /// The makers' figures come first: a broken one is the verdict. With a stated capacity the chain's slack goes by it,
    /// and geometry only says what is to be tried by hand. Without one geometry decides, and only where the measures
    /// left empty cannot turn it within their [usual range](crate::ChainDefaults::ASSUMPTIONS), one at a time; with
    /// neither capacity nor pulley centres every usual length of cage is tried. A chain that was counted has to suit.
    #[must_use]
    pub fn answer(&self) -> CageAnswer {
        let check = self.derailleur.check(&self.setup.drivetrain);
        let mut answer = CageAnswer {
            outcome: CageOutcome::Fits,
            avoid: self.switched_off.and(self.beyond_capacity()),
            switched_off: self.switched_off,
            to_try: GearSet::NONE,
            links: None,
            fitted: self.links,
            too_short: GearSet::NONE,
            length: self.length(),
            check,
        };
        answer.outcome = self.outcome(&mut answer);
        answer.to_try = answer.to_try.without(answer.avoid);
        answer
    }

    fn outcome(&self, answer: &mut CageAnswer) -> CageOutcome {
        let tried = self.chain(answer);
        if let Some(need) = self.need(&answer.check) {
            return CageOutcome::DoesNotFit(need);
        }
        match tried {
            Err(error) => CageOutcome::NotKnown(CageDoubt::Path(error)),
            Ok((free, present)) => self.weighed(answer, &free, &present),
        }
    }

    /// Tries the chain that suits best and the one that is fitted; notes which to fit, and what the fitted one is too
    /// short for.
    fn chain(&self, answer: &mut CageAnswer) -> Result<(Trial, Trial), PathError> {
        let free = Trial::of(&self.setup, None)?;
        let present = Trial::of(&self.setup, self.links)?;
        answer.links = Some(self.to_buy_for(&answer.check).unwrap_or(free.links));
        answer.too_short = if self.links.is_some() { present.too_short } else { GearSet::NONE };
        answer.avoid = answer.avoid.and(answer.too_short);
        Ok((free, present))
    }

    fn weighed(&self, answer: &mut CageAnswer, free: &Trial, present: &Trial) -> CageOutcome {
        let hangs = present.hangs.without(free.hangs);
        if self.links.is_some() && !(answer.too_short.is_empty() && hangs.is_empty()) {
            answer.avoid = answer.avoid.and(hangs);
            return CageOutcome::OtherChain { hangs };
        }
        if let Some(doubt) = self.disagreement() {
            return CageOutcome::NotKnown(doubt);
        }
        match self.derailleur.total_capacity {
            Some(_) => self.by_maker(answer, present),
            None => self.by_geometry(answer, present),
        }
    }

    /// With the capacity stated.
    fn by_maker(&self, answer: &mut CageAnswer, present: &Trial) -> CageOutcome {
        answer.to_try = self.to_try(present);
        if self.links.is_some() {
            let doubted = Doubted::of(&self.setup, self.links, present, &self.unmeasured);
            if !doubted.shortening.is_empty() {
                return CageOutcome::NotKnown(CageDoubt::Measures(doubted.shortening));
            }
        }
        let is_avoiding = !answer.avoid_by_cage().is_empty();
        let is_sure = answer.to_try.without(answer.avoid).is_empty();
        self.unless_unknown(match (is_avoiding, is_sure) {
            (true, _) => CageOutcome::FitsAvoidingGears,
            (false, true) => CageOutcome::Fits,
            (false, false) => CageOutcome::FitsOnPaper,
        })
    }

    fn by_geometry(&self, answer: &mut CageAnswer, present: &Trial) -> CageOutcome {
        if self.unmeasured.contains(&ChainMeasure::PulleyCentres)
            && let Some(outcome) = self.by_class(answer)
        {
            return outcome;
        }
        let doubted = Doubted::of(&self.setup, self.links, present, &self.unmeasured);
        if !doubted.decisive.is_empty() {
            answer.avoid = answer.avoid.and(doubted.surely);
            return CageOutcome::NotKnown(CageDoubt::Measures(doubted.decisive));
        }
        answer.avoid = answer.avoid.and(doubted.perhaps);
        match present.standing {
            Standing::Runs => self.unless_unknown(CageOutcome::Fits),
            Standing::HangsInAvoidable => self.unless_unknown(CageOutcome::FitsAvoidingGears),
            Standing::Hangs => CageOutcome::DoesNotFit(self.another_derailleur(&answer.check)),
        }
    }

    /// With neither capacity nor pulley centres known: none where every length of cage takes every gear.
    fn by_class(&self, answer: &mut CageAnswer) -> Option<CageOutcome> {
        let trials: Vec<ClassTrial> = CageClass::ALL.iter().map(|class| self.in_class(class)).collect();
        if trials.iter().all(|trial| trial.standing == Standing::Runs) {
            return None;
        }
        answer.avoid = answer.avoid.and(hanging_in_all(&trials));
        let none_does = trials.iter().all(|trial| trial.standing == Standing::Hangs);
        Some(if none_does {
            CageOutcome::DoesNotFit(self.another_derailleur(&answer.check))
        } else {
            CageOutcome::NotKnown(CageDoubt::CageLength(trials))
        })
    }

    /// The shortest cage of a class.
    fn in_class(&self, class: &CageClass) -> ClassTrial {
        let mm = class.pulley_centres_mm.0;
        let trial =
            self.with_centres(PulleyCentres::known(mm)).and_then(|setup| Trial::of(&setup, self.links));
        let every = || GearSet::of(&self.setup.drivetrain, |_| true);
        let (standing, hangs) =
            trial.map_or_else(|_| (Standing::Hangs, every()), |trial| (trial.standing, trial.hangs));
        ClassTrial { class: *class, standing, hangs }
    }

    fn with_centres(&self, centres: PulleyCentres) -> Result<ChainSetup, PathError> {
        Ok(ChainSetup { cage: self.setup.cage.with_pulley_centres(centres)?, ..self.setup })
    }

    /// The outcome, unless a figure that was not looked up could still turn it.
    fn unless_unknown(&self, outcome: CageOutcome) -> CageOutcome {
        let bike = &self.setup.drivetrain;
        let (usual_difference, _) = Derailleur::USUAL_DOUBLE_DIFFERENCE;
        let usual_difference = match bike.chainset.rings().len() {
            1 | 2 => usual_difference,
            _ => Derailleur::USUAL_TRIPLE_DIFFERENCE,
        };
        let asks_much = |figure: &DerailleurFigure| match figure {
            DerailleurFigure::LargestSprocket => bike.cassette.largest().teeth() > TAKEN_BY_EVERY,
            DerailleurFigure::RingDifference => bike.chainset.difference() > usual_difference,
            DerailleurFigure::TotalCapacity | DerailleurFigure::SmallestSprocket => false,
        };
        match self.derailleur.unknown().find(asks_much) {
            Some(figure) => CageOutcome::NotKnown(CageDoubt::Figure(figure)),
            None => outcome,
        }
    }

    /// What the makers' figures rule out, as what would have to be changed.
    fn need(&self, check: &CageCheck) -> Option<CageNeed> {
        let asks_for_derailleur = |found: &CageFinding| {
            matches!(
                found,
                CageFinding::SprocketTooLarge { .. }
                    | CageFinding::SprocketTooSmall { .. }
                    | CageFinding::LongerCage { .. }
            )
        };
        let derailleur = check.findings.iter().any(asks_for_derailleur).then(|| self.derailleur_need(check));
        let ring_difference = check.findings.iter().find_map(|found| match found {
            CageFinding::RingDifferenceTooLarge { difference, .. } => Some(*difference),
            _ => None,
        });
        let need = CageNeed { derailleur, ring_difference };
        (need != CageNeed::default()).then_some(need)
    }

    fn another_derailleur(&self, check: &CageCheck) -> CageNeed {
        CageNeed { derailleur: Some(self.derailleur_need(check)), ring_difference: None }
    }

    fn derailleur_need(&self, check: &CageCheck) -> DerailleurNeed {
        let smallest = check.findings.iter().find_map(|found| match found {
            CageFinding::SprocketTooSmall { sprocket, .. } => Some(*sprocket),
            _ => None,
        });
        let largest: Sprocket = self.setup.drivetrain.cassette.largest();
        DerailleurNeed { largest, smallest, capacity: check.needed }
    }

    /// The chain to buy with a longer cage, where the capacity asks for one.
    fn to_buy_for(&self, check: &CageCheck) -> Option<ChainLinks> {
        let is_short = check.spare.is_some_and(|spare| spare < 0);
        self.need(check)?.derailleur.filter(|_| is_short)?;
        let centres = self.setup.cage.measures().centres_for(TotalCapacity::new(check.needed).ok()?);
        let longer = self.with_centres(centres).ok()?;
        Trial::of(&longer, None).ok().map(|trial| trial.links)
    }

    fn beyond_capacity(&self) -> GearSet {
        let bike = &self.setup.drivetrain;
        GearSet::of(bike, |gear| self.derailleur.slack_beyond(bike, gear) > 0)
    }

    /// Gears within the capacity that leave less than a whole pair of links to spare.
    fn least_to_spare(&self) -> GearSet {
        let bike = &self.setup.drivetrain;
        let Some(capacity) = self.derailleur.total_capacity else { return GearSet::NONE };
        let spare = |gear| i32::from(capacity.teeth()) - i32::from(bike.slack(gear));
        let least = bike.gears().map(spare).filter(|&spare| spare >= 0).min();
        GearSet::of(bike, |gear| Some(spare(gear)) == least && spare(gear) < SURE_SPARE)
    }

    /// With a whole pair of links to spare by the maker's sum nothing needs a trial, unless the cage was measured too.
    fn to_try(&self, present: &Trial) -> GearSet {
        let least = self.least_to_spare();
        let is_sure = least.is_empty() && matches!(self.length(), CageLength::ByCapacity(_));
        if is_sure { GearSet::NONE } else { least.and(present.hangs) }
    }

    fn disagreement(&self) -> Option<CageDoubt> {
        let CageLength::Measured(_) = self.length() else { return None };
        let stated = self.derailleur.total_capacity?;
        let by_centres = self.setup.cage.capacity_estimate_teeth();
        let off = f64::from(stated.teeth()) - by_centres;
        let (below, above) = STATED_BELOW_AND_ABOVE;
        (!(-below..=above).contains(&off)).then_some(CageDoubt::Disagree { stated, by_centres })
    }

    fn length(&self) -> CageLength {
        let centres = self.setup.cage.measures().pulley_centres;
        match (self.unmeasured.contains(&ChainMeasure::PulleyCentres), self.derailleur.total_capacity) {
            (false, _) => CageLength::Measured(centres),
            (true, Some(_)) => CageLength::ByCapacity(centres),
            (true, None) => CageLength::Assumed(centres),
        }
    }
}

/// Gears that hang whatever the length of the cage.
fn hanging_in_all(trials: &[ClassTrial]) -> GearSet {
    trials.iter().map(|trial| trial.hangs).reduce(GearSet::common).unwrap_or_default()
}
