//! “Will the cage take it?”: all that is known of one set-up, and the one place where it is decided.

use crate::cage::{CageCheck, CageClass, CageFinding, Derailleur, DerailleurFigure};
use crate::chain::cage_answer::{
    CageAnswer, CageDoubt, CageLength, CageNeed, CageOutcome, ClassTrial, DerailleurNeed,
};
use crate::chain::cage_trial::{Doubted, Standing, Trial};
use crate::chain::defaults::ChainMeasure;
use crate::chain::measures::{ChainLinks, PulleyCentres};
use crate::chain::path_error::PathError;
use crate::chain::setup::ChainSetup;
use crate::gears::{GearSet, Sprocket, TotalCapacity};

/// All that is known of a set-up's cage and chain.
///
/// # Example
/// ```
/// use gear_math::{ChainSetup, Derailleur, Drivetrain, Sprocket, TotalCapacity};
/// use gear_math::chain::{Cage, CageDoubt, CageOutcome, CageQuestion, ChainDefaults};
/// use gear_math::gears::GearSet;
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
    /// capacity is stated, they should be [those of that capacity](crate::chain::cage::CageMeasures::centres_for).
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
    /// left empty cannot turn it within their [usual range](crate::chain::defaults::ChainDefaults::ASSUMPTIONS), one at a time; with
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
            return self.with_another_chain(answer, hangs);
        }
        if let Some(doubt) = self.disagreement() {
            return CageOutcome::NotKnown(doubt);
        }
        match self.derailleur.total_capacity {
            Some(_) => self.by_maker(answer, present),
            None => self.by_geometry(answer, present),
        }
    }

    /// The fitted chain cannot stay; what becomes of the cage is asked without it.
    fn with_another_chain(&self, answer: &mut CageAnswer, hangs: GearSet) -> CageOutcome {
        let then = Self { links: None, ..self.clone() }.answer();
        answer.avoid = answer.avoid.and(then.avoid);
        match then.outcome {
            CageOutcome::DoesNotFit(need) => CageOutcome::DoesNotFit(need),
            CageOutcome::NotKnown(doubt) => CageOutcome::OtherChain { hangs, doubt: Some(doubt) },
            _ => CageOutcome::OtherChain { hangs, doubt: None },
        }
    }

    /// With the capacity stated.
    fn by_maker(&self, answer: &mut CageAnswer, present: &Trial) -> CageOutcome {
        answer.to_try = self.to_try(present);
        if self.links.is_some()
            && let Ok(base) = Trial::of_chain(&self.setup, self.links)
        {
            let moved = |setup: &ChainSetup| Trial::of_chain(&self.as_stated(setup)?, self.links);
            let mut unmeasured = self.unmeasured.clone();
            unmeasured.retain(|&measure| measure != ChainMeasure::PulleyCentres);
            let doubted = Doubted::of(&self.setup, &base, &unmeasured, moved);
            if !doubted.decisive.is_empty() {
                return CageOutcome::NotKnown(CageDoubt::Measures(doubted.decisive));
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
        let moved = |setup: &ChainSetup| Trial::of(setup, self.links);
        let doubted = Doubted::of(&self.setup, present, &self.unmeasured, moved);
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

    /// The shortest cage of a class, but the longest of the last one: nothing longer is made.
    fn in_class(&self, class: &CageClass) -> ClassTrial {
        let (shortest, longest) = class.pulley_centres_mm;
        let mm = if longest < CageClass::LONGEST_MM { shortest } else { longest };
        let trial =
            self.with_centres(PulleyCentres::nearest(mm)).and_then(|setup| Trial::of(&setup, self.links));
        let every = || GearSet::of(&self.setup.drivetrain, |_| true);
        let (standing, hangs) =
            trial.map_or_else(|_| (Standing::Hangs, every()), |trial| (trial.standing, trial.hangs));
        ClassTrial { class: *class, standing, hangs }
    }

    fn with_centres(&self, centres: PulleyCentres) -> Result<ChainSetup, PathError> {
        Ok(ChainSetup { cage: self.setup.cage.with_pulley_centres(centres)?, ..self.setup })
    }

    /// A setup with moved measures; where the length of the cage follows from its capacity, it follows anew.
    fn as_stated(&self, setup: &ChainSetup) -> Result<ChainSetup, PathError> {
        let is_measured = !self.unmeasured.contains(&ChainMeasure::PulleyCentres);
        let Some(capacity) = self.derailleur.total_capacity.filter(|_| !is_measured) else {
            return Ok(*setup);
        };
        let centres = setup.cage.measures().centres_for(capacity);
        Ok(ChainSetup { cage: setup.cage.with_pulley_centres(centres)?, ..*setup })
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::cage::{Cage, CageMeasures};
    use crate::chain::defaults::ChainDefaults;
    use crate::gears::{Drivetrain, RingDifference};

    /// The question about a set-up on usual measures, the length of the cage by the capacity.
    fn question(rings: &str, sprockets: &str, capacity: Option<u16>, largest: Option<u16>) -> CageQuestion {
        let drivetrain =
            Drivetrain { chainset: rings.parse().unwrap(), cassette: sprockets.parse().unwrap() };
        let total_capacity = capacity.map(|teeth| TotalCapacity::new(teeth).unwrap());
        let usual = ChainDefaults::CAGE;
        let pulley_centres =
            total_capacity.map_or(usual.pulley_centres, |capacity| usual.centres_for(capacity));
        CageQuestion {
            setup: ChainSetup {
                chainline: ChainDefaults::chainline(&drivetrain),
                drivetrain,
                frame: ChainDefaults::FRAME,
                cage: Cage::new(CageMeasures { pulley_centres, ..usual }).unwrap(),
            },
            derailleur: Derailleur {
                total_capacity,
                largest_sprocket: largest.map(|teeth| Sprocket::new(teeth).unwrap()),
                smallest_sprocket: None,
                ring_difference: RingDifference::new(16).ok(),
            },
            links: None,
            unmeasured: ChainDefaults::ASSUMPTIONS.map(|it| it.measure).to_vec(),
            switched_off: GearSet::NONE,
        }
    }

    const WIDE: (&str, &str) = ("50/34", "11-12-13-14-15-17-19-21-24-27-30");

    fn wide(capacity: Option<u16>) -> CageQuestion {
        question(WIDE.0, WIDE.1, capacity, Some(34))
    }

    /// With the pulley centres measured.
    fn measured(mm: f64, question: CageQuestion) -> CageQuestion {
        let mut setup = question.setup;
        setup.cage = setup.cage.with_pulley_centres(PulleyCentres::new(mm).unwrap()).unwrap();
        let mut unmeasured = question.unmeasured;
        unmeasured.retain(|&it| it != ChainMeasure::PulleyCentres);
        CageQuestion { setup, unmeasured, ..question }
    }

    fn with_links(links: u16, question: CageQuestion) -> CageQuestion {
        CageQuestion { links: ChainLinks::new(links).ok(), ..question }
    }

    fn names(question: &CageQuestion, set: GearSet) -> Vec<String> {
        set.gears(&question.setup.drivetrain).map(|gear| gear.to_string()).collect()
    }

    #[test]
    fn a_capacity_two_teeth_short_gives_gears_to_avoid() {
        let question = wide(Some(33));
        let answer = question.answer();
        assert_eq!(answer.outcome, CageOutcome::FitsAvoidingGears);
        assert_eq!(names(&question, answer.avoid), ["34×11", "34×12"]);
        assert_eq!(names(&question, answer.to_try), ["34×13"]);
        assert_eq!(answer.links.map(ChainLinks::count), Some(110));
        assert!(!answer.does_not_fit() && !answer.is_not_known());
    }

    #[test]
    fn whole_links_ask_for_a_trial_below_four_teeth_to_spare() {
        assert_eq!(wide(Some(39)).answer().outcome, CageOutcome::Fits);
        let question = wide(Some(38));
        let answer = question.answer();
        assert_eq!(answer.outcome, CageOutcome::FitsOnPaper);
        assert!(names(&question, answer.to_try).contains(&"34×11".to_owned()));
    }

    /// The mechanic's case: 48/34 from 12-25 to 11-34 on a derailleur for 28 and 29 teeth.
    #[test]
    fn what_to_buy_is_one_need() {
        let asked = question("48/34", "11-13-15-17-19-21-23-25-27-30-34", Some(29), Some(28));
        let answer = asked.answer();
        let CageOutcome::DoesNotFit(CageNeed { derailleur: Some(need), ring_difference: None }) =
            answer.outcome
        else {
            panic!("{:?}", answer.outcome);
        };
        assert_eq!((need.largest.teeth(), need.capacity, need.smallest), (34, 37, None));
        assert_eq!(answer.links.map(ChainLinks::count), Some(112));
        assert_eq!(names(&asked, answer.avoid), ["34×11", "34×13", "34×15", "34×17"]);
        assert!(answer.does_not_fit());
    }

    #[test]
    fn with_nothing_known_every_usual_length_is_told() {
        let answer = wide(None).answer();
        let CageOutcome::NotKnown(CageDoubt::CageLength(trials)) = &answer.outcome else {
            panic!("{:?}", answer.outcome);
        };
        let standings: Vec<Standing> = trials.iter().map(|trial| trial.standing).collect();
        assert_eq!(standings, [Standing::Hangs, Standing::Runs, Standing::Runs, Standing::Runs]);
        assert_eq!(trials[0].hangs.count(), 6);
        assert!(answer.avoid.is_empty() && answer.is_not_known());
        let wider_than_any = question_of_all("60/40/20", "9-10-12-14-17-20-24-28-32-37-42-47-52-60");
        assert!(matches!(wider_than_any.answer().outcome, CageOutcome::DoesNotFit(_)));
        let narrow = question("40", "11-13-15-18-21-24-28", None, Some(28));
        assert_eq!(narrow.answer().outcome, CageOutcome::Fits, "any cage takes it");
    }

    fn question_of_all(rings: &str, sprockets: &str) -> CageQuestion {
        let asked = question(rings, sprockets, None, Some(60));
        CageQuestion { derailleur: Derailleur { ring_difference: None, ..asked.derailleur }, ..asked }
    }

    #[test]
    fn a_figure_that_could_turn_the_verdict_keeps_it_open() {
        let open = |question: CageQuestion| match question.answer().outcome {
            CageOutcome::NotKnown(CageDoubt::Figure(figure)) => Some(figure),
            _ => None,
        };
        let asked = question(WIDE.0, WIDE.1, Some(39), None);
        assert_eq!(open(asked), Some(DerailleurFigure::LargestSprocket));
        let no_difference = Derailleur { ring_difference: None, ..wide(Some(39)).derailleur };
        let asked = CageQuestion { derailleur: no_difference, ..wide(Some(39)) };
        assert_eq!(open(asked), Some(DerailleurFigure::RingDifference));
        assert_eq!(open(question("44/32", "11-13-15-18-21-24-28", Some(39), None)), None);
    }

    #[test]
    fn capacity_and_length_have_to_go_together() {
        let outcome = |mm, capacity| measured(mm, wide(Some(capacity))).answer().outcome;
        let CageOutcome::NotKnown(CageDoubt::Disagree { stated, by_centres }) = outcome(50.0, 39) else {
            panic!("{:?}", outcome(50.0, 39));
        };
        assert!(stated.teeth() == 39 && (by_centres - 31.9).abs() < 0.1, "{by_centres}");
        assert!(matches!(outcome(93.0, 36), CageOutcome::NotKnown(CageDoubt::Disagree { .. })));
        assert!(!matches!(outcome(75.0, 33), CageOutcome::NotKnown(_)));
        assert!(!matches!(outcome(55.0, 35), CageOutcome::NotKnown(_)));
    }

    #[test]
    fn a_chain_too_short_is_never_merely_avoided() {
        let question = with_links(104, wide(Some(39)));
        let answer = question.answer();
        assert!(matches!(answer.outcome, CageOutcome::OtherChain { .. }), "{:?}", answer.outcome);
        assert_eq!(names(&question, answer.too_short), ["50×21", "50×24", "50×27", "50×30"]);
        assert_eq!(answer.avoid.common(answer.too_short), answer.too_short);
        assert_eq!(answer.links.map(ChainLinks::count), Some(110));
        let long = with_links(120, wide(Some(39))).answer();
        let CageOutcome::OtherChain { hangs, doubt: None } = long.outcome else {
            panic!("{:?}", long.outcome)
        };
        assert!(long.too_short.is_empty() && !hangs.is_empty());
        let unsure = with_links(110, wide(Some(39))).answer().outcome;
        assert!(
            matches!(&unsure, CageOutcome::NotKnown(CageDoubt::Measures(which)) if which[0] == ChainMeasure::Chainstay),
            "{unsure:?}"
        );
        let stay_measured =
            CageQuestion { unmeasured: vec![ChainMeasure::PulleyCentres], ..with_links(110, wide(Some(39))) };
        assert_eq!(stay_measured.answer().outcome, CageOutcome::Fits);
    }

    #[test]
    fn what_was_switched_off_is_avoided_and_turns_no_verdict() {
        let off = GearSet::parse("50×30, 34×15", &wide(None).setup.drivetrain).unwrap();
        let answer = CageQuestion { switched_off: off, ..wide(Some(39)) }.answer();
        assert!(answer.avoid_by_cage().is_empty());
        assert_eq!((answer.outcome, answer.avoid), (CageOutcome::Fits, off));
    }

    /// A verdict by geometry alone stays what it is when any measure left empty turns out to lie at either end of what is
    /// usual.
    #[test]
    fn a_verdict_by_geometry_outlasts_every_measure() {
        let mut sure = 0;
        for mm in [50.0, 55.0, 62.0, 70.0, 75.0, 82.0, 93.0] {
            for rings in ["50/34", "44/32", "40", "46/30"] {
                for sprockets in ["11-13-15-17-19-21-23-25-28", WIDE.1, "11-13-15-18-21-24-28-32-36-40"] {
                    let asked = measured(mm, question(rings, sprockets, None, Some(42)));
                    sure += usize::from(outlasts(&asked));
                }
            }
        }
        assert!(sure > 30, "only {sure} verdicts are known");
    }

    fn outlasts(asked: &CageQuestion) -> bool {
        let answer = asked.answer();
        let kind = core::mem::discriminant(&answer.outcome);
        if answer.is_not_known() {
            return false;
        }
        let moved = |it: &&crate::chain::defaults::Assumption| {
            asked.unmeasured.contains(&it.measure) && it.measure != ChainMeasure::ForeStop
        };
        for assumption in ChainDefaults::ASSUMPTIONS.iter().filter(moved) {
            for value in [assumption.low, assumption.high] {
                let setup = assumption.replaced(&asked.setup, value).unwrap();
                let then = CageQuestion { setup, unmeasured: Vec::new(), ..asked.clone() }.answer();
                assert_eq!(core::mem::discriminant(&then.outcome), kind, "{asked:?} {assumption:?} {value}");
                assert!(then.avoid.without(answer.avoid).is_empty(), "{asked:?} {assumption:?}");
            }
        }
        true
    }
}
