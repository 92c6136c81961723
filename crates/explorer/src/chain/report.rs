//! The chain of one set-up: how every gear lies, which chain suits it, and how sure that is.

use crate::bench::field::Field;
use crate::chain::cages::Cages;
use crate::chain::inputs::ChainInputs;
use crate::rings::setup::SetupReport;
use crate::side::Side;
use gear_math::cage::{FrontConcern, FrontLimits};
use gear_math::chain::{
    Assumption, CageAnswer, CentreDistance, ChainDefaults, ChainMeasure, ChainPath, ChainPitch, ChainWindow,
    GearFit, GearState, Hanger, PathError, PathPoint, PitchCircle, TwoSprocketDrive, cassette_slope_degrees,
};
use gear_math::{ChainAdvice, ChainLinks, ChainSetup, Chainring, Chainset, Derailleur, Drivetrain, Gear};

/// Derailleur and chains.
#[derive(Debug)]
pub struct ChainsReport {
    /// What they are worked out from.
    pub inputs: ChainInputs,
    /// The chains of A and B; an error where wheels would run into each other.
    pub chains: [Result<ChainReport, PathError>; 2],
}

impl ChainsReport {
    pub(crate) fn of(inputs: &ChainInputs, cages: &Cages) -> Self {
        Self { inputs: *inputs, chains: Side::BOTH.map(|side| ChainReport::new(side, inputs, cages)) }
    }

    /// The derailleur of one set-up.
    #[must_use]
    pub const fn derailleur(&self, side: Side) -> &Derailleur {
        &self.inputs.derailleurs[side as usize]
    }

    /// Whether A and B have the same derailleur.
    #[must_use]
    pub fn has_one_derailleur(&self) -> bool {
        self.inputs.derailleurs[0] == self.inputs.derailleurs[1]
    }

    /// The chains that there are: those whose wheels clear one another.
    pub fn solved(&self) -> impl Iterator<Item = &ChainReport> {
        self.chains.iter().filter_map(|chain| chain.as_ref().ok())
    }

    /// Whether anything was left empty that the chains rest on.
    pub(crate) fn has_doubts(&self) -> bool {
        self.solved().any(|chain| !chain.doubts.is_empty())
    }

    /// Measures that were left empty and decide a number of links.
    pub(crate) fn deciding(&self) -> Vec<ChainMeasure> {
        let decides = |measure: &ChainMeasure| {
            let mut doubts = self.solved().flat_map(|chain| &chain.doubts);
            doubts.any(|doubt| doubt.decides && doubt.assumption.measure == *measure)
        };
        ChainDefaults::ASSUMPTIONS.iter().map(|assumption| assumption.measure).filter(decides).collect()
    }

    /// Gears in which the fitted chain, or the one that suits best, hangs if everything left empty is as usual.
    pub(crate) fn hanging_by_usual_measures(&self, setup: &SetupReport) -> Vec<Gear> {
        let Ok(chain) = &self.chains[setup.side as usize] else { return Vec::new() };
        let advice = &chain.advice;
        let fit = if setup.cage.fitted.is_some() { &advice.fit } else { &advice.suited };
        fit.in_state(GearState::Slack).collect()
    }
}

/// The chain of one set-up.
#[derive(Debug)]
pub struct ChainReport {
    /// Which set-up.
    pub side: Side,
    /// Parts, frame, cage and chainline.
    pub setup: ChainSetup,
    /// Verdict, chain length and remedies.
    pub advice: ChainAdvice,
    /// The chain counted on the bike, if it was.
    pub present: Option<ChainLinks>,
    /// Every gear with the present chain or the one to fit: ring by ring from the largest, the largest sprocket
    /// first.
    pub stations: Vec<Station>,
    /// Which of them is drawn.
    pub shown: usize,
    /// Which of them has least to spare.
    pub worst: usize,
    /// Its chain.
    pub path: ChainPath,
    /// The chain in the first and in the last station, which take most room.
    pub ends: [ChainPath; 2],
    /// Where the derailleur hangs.
    pub hanger: PathPoint,
    /// From there to the guide pulley under the largest sprocket, millimetres.
    pub reach_mm: f64,
    /// Slope the guide pulley must climb, degrees.
    pub slope_degrees: f64,
    /// What the front derailleur is held to.
    pub front_limits: FrontLimits,
    /// What it says to the rings.
    pub front: Vec<FrontConcern>,
    /// What was left empty, with what that costs in certainty.
    pub doubts: Vec<Doubt>,
    /// Ring and sprocket of the largest gear without the derailleur.
    pub two_wheels: Option<TwoSprocketDrive>,
    /// Whether the maker's capacity should have placed the rest position, but no stop does.
    pub capacity_out_of_reach: bool,
}

/// One gear with its chain.
#[derive(Debug, Clone, Copy)]
pub struct Station {
    /// How the chain lies.
    pub fit: GearFit,
    /// Whether it runs at its steepest.
    pub crossed: bool,
    /// Teeth of slack beyond the capacity that the maker states.
    pub beyond_maker: u16,
    /// Whether it is not to be used.
    pub avoid: bool,
    /// Whether it is to be looked at by hand for slack.
    pub to_try: bool,
    /// From its rest position to where the cage stands, degrees.
    pub to_stop_degrees: f64,
}

impl Station {
    /// What is left to spare, the least for the worst gear: too short a chain breaks something, a gear that is not to be used anyway
    /// matters least. Links, and a hundred more for every rank.
    fn spare(&self) -> f64 {
        let GearFit { to_fore_stop: fore, to_rear_stop: rear, state, .. } = self.fit;
        match state {
            GearState::TooTight => fore,
            _ if self.avoid => 500.0 + rear,
            GearState::Slack => 100.0 + rear,
            _ if self.to_try => 200.0 + rear,
            GearState::TightButUsual => 300.0 + fore,
            GearState::Comfortable => 400.0 + fore.min(rear),
        }
    }
}

/// A measure that was left empty.
#[derive(Debug, Clone, Copy)]
pub struct Doubt {
    /// What was taken instead.
    pub assumption: Assumption,
    /// The chains that would suit if the measure lay at its likely ends; `None` when nothing would.
    pub ends: [Option<ChainWindow>; 2],
    /// Whether at an end of what is usual another number of links would be right.
    pub decides: bool,
}

impl ChainReport {
    fn new(side: Side, inputs: &ChainInputs, cages: &Cages) -> Result<Self, PathError> {
        let drivetrain = inputs.drivetrains[side as usize];
        let (setup, capacity_out_of_reach) = inputs.setup(side, drivetrain)?;
        let hanger = inputs.hanger();
        let derailleur = inputs.derailleur(side);
        let advice = advise(&setup, (derailleur, inputs.links[side as usize]), &hanger)?;
        let stations = stations(&advice, &setup, derailleur, cages.answer(side));
        let worst = worst(&stations);
        let shown = inputs.shown[side as usize].map_or(worst, |shown| shown.min(stations.len() - 1));
        let path = |place: usize| setup.path(stations[place].fit.gear, advice.fit.links);
        let front_limits = front_limits(&drivetrain, derailleur, inputs.made_for);
        let by_capacity = derailleur.total_capacity.is_some();
        Ok(Self {
            side,
            present: inputs.links[side as usize],
            shown,
            worst,
            path: path(shown)?,
            ends: [path(0)?, path(stations.len() - 1)?],
            hanger: hanger.point(&setup.frame),
            reach_mm: hanger.reach_mm(drivetrain.cassette.largest(), &setup.frame, &setup.cage),
            slope_degrees: cassette_slope_degrees(&drivetrain.cassette, setup.chainline.sprocket_pitch),
            front: front_limits.concerns(&drivetrain.chainset),
            front_limits,
            doubts: doubts(&setup, advice.suited.links, |measure| {
                let is_known = by_capacity && measure == ChainMeasure::PulleyCentres;
                inputs.left_empty(side, measure) && !is_known
            }),
            two_wheels: two_wheels(&setup),
            capacity_out_of_reach,
            setup,
            stations,
            advice,
        })
    }

    /// The gear that is drawn.
    #[must_use]
    pub fn station(&self) -> &Station {
        &self.stations[self.shown]
    }

    /// The gear with least to spare.
    #[must_use]
    pub fn worst(&self) -> &Station {
        &self.stations[self.worst]
    }

    /// The slider that says which gear is drawn.
    #[must_use]
    pub const fn shown_field(&self) -> Field {
        match self.side {
            Side::A => Field::GearA,
            Side::B => Field::GearB,
        }
    }
}

/// Where no links were counted, everything is worked out for the chain that the verdict speaks of.
fn advise(
    setup: &ChainSetup,
    (derailleur, counted): (&Derailleur, Option<ChainLinks>),
    hanger: &Hanger,
) -> Result<ChainAdvice, PathError> {
    let with = |links| setup.advise(links, derailleur, hanger);
    let advice = with(counted)?;
    let other = counted.is_none() && advice.suited.links != advice.fit.links;
    if other { with(Some(advice.suited.links)) } else { Ok(advice) }
}

fn two_wheels(setup: &ChainSetup) -> Option<TwoSprocketDrive> {
    let wheel = |teeth| PitchCircle::new(teeth, ChainPitch::BICYCLE).ok();
    let Drivetrain { chainset, cassette } = &setup.drivetrain;
    let centres = CentreDistance::new(setup.frame.chainstay.mm()).ok()?;
    let (ring, sprocket) = (wheel(chainset.largest().teeth())?, wheel(cassette.largest().teeth())?);
    TwoSprocketDrive::new(ring, sprocket, centres).ok()
}

fn stations(
    advice: &ChainAdvice,
    setup: &ChainSetup,
    derailleur: &Derailleur,
    answer: &CageAnswer,
) -> Vec<Station> {
    let (drivetrain, rest) = (&setup.drivetrain, setup.cage.measures().rear_stop.degrees());
    let crossed = drivetrain.crossed_rule();
    let station = |&fit: &GearFit| Station {
        fit,
        crossed: crossed.covers(fit.gear),
        beyond_maker: derailleur.slack_beyond(drivetrain, fit.gear),
        avoid: answer.avoid.holds(drivetrain, fit.gear),
        to_try: answer.to_try.holds(drivetrain, fit.gear),
        to_stop_degrees: fit.drawn_angle.degrees() - rest,
    };
    let sprockets = drivetrain.cassette.sprockets().len();
    advice.fit.gears.chunks(sprockets).flat_map(|ring| ring.iter().rev().map(station)).collect()
}

fn worst(stations: &[Station]) -> usize {
    let spare = |place: &usize| stations[*place].spare();
    (0..stations.len()).min_by(|a, b| spare(a).total_cmp(&spare(b))).unwrap_or(0)
}

fn front_limits(
    drivetrain: &Drivetrain,
    derailleur: &Derailleur,
    made_for: Option<Chainring>,
) -> FrontLimits {
    let usual = FrontLimits::usual(drivetrain.chainset.rings().len());
    FrontLimits {
        most_difference: derailleur
            .ring_difference
            .map_or(usual.most_difference, gear_math::gears::RingDifference::teeth),
        made_for,
        ..usual
    }
}

/// Whether most front derailleurs would shift these rings badly, because they are too close to one another.
pub(crate) fn shift_badly(rings: &Chainset) -> bool {
    let concerns = FrontLimits::usual(rings.rings().len()).concerns(rings);
    concerns.iter().any(|concern| matches!(concern, FrontConcern::DifferenceTooSmall { .. }))
}

fn doubts(setup: &ChainSetup, links: ChainLinks, left_empty: impl Fn(ChainMeasure) -> bool) -> Vec<Doubt> {
    let here = setup.window().ok();
    let doubt = |assumption: Assumption| {
        let ends = assumption.ends(setup).map_or([None; 2], |ends| ends.map(Some));
        Doubt { assumption, ends, decides: ends.iter().any(|&end| !same_chain(end, here, links)) }
    };
    ChainDefaults::ASSUMPTIONS
        .into_iter()
        .filter(|assumption| left_empty(assumption.measure))
        .map(doubt)
        .collect()
}

/// Whether `links` suit both, or neither and the largest gear asks both for as many.
fn same_chain(a: Option<ChainWindow>, b: Option<ChainWindow>, links: ChainLinks) -> bool {
    match (a, b) {
        (Some(a), Some(b)) if a.suits(links) || b.suits(links) => a.suits(links) && b.suits(links),
        (Some(a), Some(b)) => a.shortest == b.shortest,
        (a, b) => a.is_none() && b.is_none(),
    }
}
