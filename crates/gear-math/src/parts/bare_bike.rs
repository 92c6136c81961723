//! The bike that parts go on.

use crate::cage::CageFinding;
use crate::chain::{
    Cage, CageAnswer, CageDoubt, CageMeasures, CageOutcome, CageQuestion, ChainDefaults, ChainLinks,
    ChainMeasure, ChainSetup, FrameMeasures,
};
use crate::gears::{Chainring, Drivetrain, Gear, GearSet};
use crate::parts::combination::Combination;
use crate::parts::fit::{Fit, FitVerdict};
use crate::parts::lack::Lack;
use crate::parts::parts_box::PartsBox;
use crate::parts::rear_derailleur::RearDerailleur;

/// What the bike asks of parts that go on it.
///
/// # Example
/// ```
/// use gear_math::{Derailleur, Sprocket, TotalCapacity};
/// use gear_math::parts::{BareBike, Lack, PartsBox, RearDerailleur};
/// let figures = Derailleur {
///     total_capacity: Some(TotalCapacity::new(33)?),
///     largest_sprocket: Some(Sprocket::new(30)?),
///     ..Derailleur::default()
/// };
/// let parts = PartsBox {
///     chainsets: vec!["40".parse()?],
///     cassettes: vec!["11-13-15-17-20-23-26-30".parse()?, "11-13-15-18-21-24-28-32".parse()?],
///     derailleurs: vec![RearDerailleur { figures, pulley_centres: None }],
///     ..PartsBox::default()
/// };
/// let fits: Vec<_> = parts.combinations().map(|it| BareBike::usual().fit(&parts, it)).collect();
/// assert_eq!(fits[0].map(|fit| fit.spare), Ok(Some(14)));
/// assert_eq!(fits[1], Err(Lack::LargestSprocket));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct BareBike {
    /// The frame.
    pub frame: FrameMeasures,
    /// What is measured of cages besides their length, or usual; the length is each derailleur's own.
    pub cage: CageMeasures,
    /// Measures of frame and cage that were left empty, for which usual ones stand here.
    pub unmeasured: Vec<ChainMeasure>,
    /// The largest ring that the frame clears, where it is known.
    pub largest_ring: Option<Chainring>,
    /// For how many sprockets the shifter is made, where that is to be kept.
    pub sprockets: Option<usize>,
    /// Gears that the rider never uses, whichever bike has them.
    pub switched_off: Vec<Gear>,
}

impl BareBike {
    /// A usual frame of which nothing was measured, and which clears everything.
    #[must_use]
    pub fn usual() -> Self {
        Self {
            frame: ChainDefaults::FRAME,
            cage: ChainDefaults::CAGE,
            unmeasured: ChainDefaults::ASSUMPTIONS.map(|it| it.measure).to_vec(),
            largest_ring: None,
            sprockets: None,
            switched_off: Vec::new(),
        }
    }

    /// How a combination out of a box goes together, or the first thing that keeps it from doing so.
    ///
    /// Cage and chain are what [`CageQuestion::answer`] says of them, makers' figures first. The chain is the shortest of the box
    /// that is long enough, cut to what is needed; where none is, a new one is needed, which rules nothing out.
    ///
    /// # Errors
    /// [`Lack`] where they do not go together.
    pub fn fit(&self, parts: &PartsBox, combination: Combination) -> Result<Fit, Lack> {
        let (drivetrain, rear) = (parts.drivetrain(combination), parts.derailleur(combination));
        self.clears(parts, &drivetrain)?;
        let setup = self.setup(drivetrain, &rear)?;
        let answer = self.answer(setup, &rear);
        let verdict = verdict(&answer)?;
        let needed = answer.links.ok_or(Lack::Wheels)?;
        let shortest = setup.window().map_err(|_| Lack::Wheels)?.shortest;
        let (links, chain) = chain(&parts.chains, shortest.min(needed), needed);
        Ok(Fit { drivetrain, verdict, avoid: answer.avoid, spare: answer.check.spare, links, chain })
    }

    /// What frame, shifter and front derailleurs say.
    fn clears(&self, parts: &PartsBox, bike: &Drivetrain) -> Result<(), Lack> {
        let fronts = &parts.front_derailleurs;
        let is_shifted = bike.chainset.rings().len() == 1
            || fronts.is_empty()
            || fronts.iter().any(|it| it.shifts(&bike.chainset));
        match () {
            () if self.largest_ring.is_some_and(|most| bike.chainset.largest() > most) => Err(Lack::Frame),
            () if self.sprockets.is_some_and(|count| bike.cassette.sprockets().len() != count) => {
                Err(Lack::SprocketCount)
            }
            () if !is_shifted => Err(Lack::Rings),
            () => Ok(()),
        }
    }

    /// With the cage as long as was measured, or as its capacity asks for, or of medium length.
    fn setup(&self, drivetrain: Drivetrain, rear: &RearDerailleur) -> Result<ChainSetup, Lack> {
        let by_capacity =
            rear.figures.total_capacity.map_or(self.cage.pulley_centres, |it| self.cage.centres_for(it));
        let pulley_centres = rear.pulley_centres.unwrap_or(by_capacity);
        let cage = Cage::new(CageMeasures { pulley_centres, ..self.cage }).map_err(|_| Lack::Wheels)?;
        let chainline = ChainDefaults::chainline(&drivetrain);
        Ok(ChainSetup { drivetrain, frame: self.frame, cage, chainline })
    }

    fn answer(&self, setup: ChainSetup, rear: &RearDerailleur) -> CageAnswer {
        let is_unknown =
            |it: &&ChainMeasure| **it != ChainMeasure::PulleyCentres || rear.pulley_centres.is_none();
        let switched_off = GearSet::of(&setup.drivetrain, |gear| self.switched_off.contains(&gear));
        let unmeasured = self.unmeasured.iter().filter(is_unknown).copied().collect();
        CageQuestion { setup, derailleur: rear.figures, links: None, unmeasured, switched_off }.answer()
    }
}

fn verdict(answer: &CageAnswer) -> Result<FitVerdict, Lack> {
    match answer.outcome {
        CageOutcome::DoesNotFit(_) => Err(broken(&answer.check.findings)),
        CageOutcome::NotKnown(CageDoubt::Path(_)) => Err(Lack::Wheels),
        CageOutcome::NotKnown(_) | CageOutcome::OtherChain { .. } => Ok(FitVerdict::NotKnown),
        CageOutcome::Fits => Ok(FitVerdict::Fits),
        CageOutcome::FitsOnPaper => Ok(FitVerdict::OnPaper),
        CageOutcome::FitsAvoidingGears => Ok(FitVerdict::AvoidingGears),
    }
}

/// The first of the makers' figures that is broken; where none is, geometry finds the cage too short.
fn broken(findings: &[CageFinding]) -> Lack {
    let lack = |finding: &CageFinding| match finding {
        CageFinding::RingDifferenceTooLarge { .. } => Lack::Rings,
        CageFinding::SprocketTooLarge { .. } => Lack::LargestSprocket,
        CageFinding::SprocketTooSmall { .. } => Lack::SmallestSprocket,
        CageFinding::LongerCage { .. } | CageFinding::AvoidGears { .. } => Lack::Cage,
    };
    findings.iter().map(lack).min().unwrap_or(Lack::Cage)
}

/// The links to ride, and which chain of the box they come from: the shortest that gives what is needed, or else the longest that
/// still reaches round the largest wheels.
fn chain(chains: &[ChainLinks], shortest: ChainLinks, needed: ChainLinks) -> (ChainLinks, Option<usize>) {
    let of = |least: ChainLinks| chains.iter().enumerate().filter(move |(_, links)| **links >= least);
    let to_cut = of(needed).min_by_key(|(_, links)| **links);
    let near = || of(shortest).max_by_key(|(_, links)| **links);
    match to_cut.or_else(near) {
        Some((place, links)) => (needed.min(*links), Some(place)),
        None => (needed, None),
    }
}
