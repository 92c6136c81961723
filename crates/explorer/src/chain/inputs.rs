//! What a workshop measured of frame, cage and chain; what it left empty is taken as usual.

use crate::bench::field::{Field, Group};
use crate::bench::reader::Reader;
use crate::chain::words::complaints as words;
use crate::side::Side;
use gear_math::chain::{
    BottomBracketDrop, Cage, CageMeasures, CageQuestion, ChainDefaults, ChainMeasure, ChainstayLength,
    ForeStop, FrameMeasures, GuideAngle, Hanger, HangerDrop, HangerSetback, PathError, PulleyCentres,
    PulleyGap, RearStop, WheelRole,
};
use gear_math::gears::{GearSet, Pulley};
use gear_math::{ChainLinks, ChainSetup, Chainring, Derailleur, Drivetrain, Limits, TotalCapacity};

/// The groups of fields that stand in the section on the cage and its chain.
pub(crate) const GROUPS: &[Group] = &[Group::Chain, Group::ChainFiner, Group::GearsShown];

/// Most gears a set-up can have.
const MOST_GEARS: f64 = 42.0;

/// Places on the way from the largest ring and sprocket to the smallest; 0 is the gear with least to spare.
static PLACES: Limits = Limits { name: "place of the gear", unit: "", min: 0.0, max: MOST_GEARS };

/// Where the rider's choice of gears stands.
pub(crate) const GEARS_OFF: [(Field, Side); 2] = [(Field::GearsOffA, Side::A), (Field::GearsOffB, Side::B)];

/// Inputs of the derailleur, the chain and its cage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainInputs {
    /// Rings and sprockets of A and of B.
    pub drivetrains: [Drivetrain; 2],
    /// The derailleurs of A and B.
    pub derailleurs: [Derailleur; 2],
    /// Gears that the rider never uses.
    pub(crate) gears_off: [GearSet; 2],
    chainstay: Option<ChainstayLength>,
    bottom_bracket_drop: Option<BottomBracketDrop>,
    hanger_drop: Option<HangerDrop>,
    hanger_setback: Option<HangerSetback>,
    measured: [MeasuredCage; 2],
    /// The cages made of what was measured and what is usual.
    pub cages: [Cage; 2],
    /// The chains now on the bikes, if their links were counted.
    pub links: [Option<ChainLinks>; 2],
    /// The ring that the front derailleur's plates are curved for, if known.
    pub made_for: Option<Chainring>,
    /// Whether the rest position stands where the maker's capacity puts it.
    pub stop_by_capacity: bool,
    /// Which gear of A and of B is drawn, counted from 0 at the largest ring and sprocket; the one with least to spare unless chosen.
    pub shown: [Option<usize>; 2],
}

/// A cage as far as it was measured.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct MeasuredCage {
    pulley_centres: Option<PulleyCentres>,
    guide: Option<Pulley>,
    tension: Option<Pulley>,
    gap: Option<PulleyGap>,
    guide_angle: Option<GuideAngle>,
    rear_stop: Option<RearStop>,
    fore_stop: Option<ForeStop>,
}

impl MeasuredCage {
    /// Of A and of B, which share all but the distance between the pulleys.
    fn read(reader: &mut Reader<'_>) -> [Self; 2] {
        let centres = reader.measures(Field::PulleyCentres);
        let shared = Self {
            pulley_centres: None,
            guide: reader.teeth(Field::GuideTeeth, Pulley::new),
            tension: reader.teeth(Field::TensionTeeth, Pulley::new),
            gap: reader.quantity_or_none(Field::PulleyGap),
            guide_angle: reader.quantity_or_none(Field::GuideAngle),
            rear_stop: reader.quantity_or_none(Field::RearStop),
            fore_stop: reader.quantity_or_none(Field::ForeStop),
        };
        centres.map(|pulley_centres| Self { pulley_centres, ..shared })
    }

    /// With what is usual in place of what was not measured; the length follows from a stated capacity.
    fn filled(&self, capacity: Option<TotalCapacity>) -> Result<Cage, PathError> {
        let usual = ChainDefaults::CAGE;
        let mut measures = CageMeasures {
            pulley_centres: usual.pulley_centres,
            guide: self.guide.unwrap_or(usual.guide),
            tension: self.tension.unwrap_or(usual.tension),
            gap: self.gap.unwrap_or(usual.gap),
            guide_angle: self.guide_angle.unwrap_or(usual.guide_angle),
            rear_stop: self.rear_stop.unwrap_or(usual.rear_stop),
            fore_stop: self.fore_stop.unwrap_or(usual.fore_stop),
        };
        let assumed = capacity.map_or(usual.pulley_centres, |capacity| measures.centres_for(capacity));
        measures.pulley_centres = self.pulley_centres.unwrap_or(assumed);
        Cage::new(measures)
    }
}

impl ChainInputs {
    /// Nothing measured.
    pub(crate) fn bare(drivetrains: [Drivetrain; 2]) -> Result<Self, PathError> {
        let measured = MeasuredCage::default();
        Ok(Self {
            drivetrains,
            derailleurs: [Derailleur::default(); 2],
            gears_off: [GearSet::NONE; 2],
            chainstay: None,
            bottom_bracket_drop: None,
            hanger_drop: None,
            hanger_setback: None,
            cages: [measured.filled(None)?; 2],
            measured: [measured; 2],
            links: [None; 2],
            made_for: None,
            stop_by_capacity: false,
            shown: [None; 2],
        })
    }

    pub(crate) fn read(reader: &mut Reader<'_>, good: &Self, drivetrains: [Drivetrain; 2]) -> Self {
        let derailleurs = reader.derailleurs();
        let off = |(field, side): (Field, Side)| reader.gears_off(field, &drivetrains[side as usize]);
        let gears_off = GEARS_OFF.map(off);
        let (measured, cages) = cages(reader, good, derailleurs.map(|it| it.total_capacity));
        Self {
            drivetrains,
            derailleurs,
            gears_off,
            chainstay: reader.quantity_or_none(Field::Chainstay),
            bottom_bracket_drop: reader.quantity_or_none(Field::BottomBracketDrop),
            hanger_drop: reader.quantity_or_none(Field::HangerDrop),
            hanger_setback: reader.quantity_or_none(Field::HangerSetback),
            measured,
            cages,
            links: reader.each_or_none(Field::ChainLinks, Reader::links),
            made_for: reader.teeth(Field::FrontMadeFor, Chainring::new),
            stop_by_capacity: reader.pick(Field::StopBy, &[false, true]),
            shown: [Field::GearA, Field::GearB].map(|field| place(reader, field)),
        }
    }

    /// The frame, usual where it was not measured.
    #[must_use]
    pub fn frame(&self) -> FrameMeasures {
        let usual = ChainDefaults::FRAME;
        FrameMeasures {
            chainstay: self.chainstay.unwrap_or(usual.chainstay),
            bottom_bracket_drop: self.bottom_bracket_drop.unwrap_or(usual.bottom_bracket_drop),
        }
    }

    /// Where the derailleur hangs, usual where it was not measured.
    #[must_use]
    pub fn hanger(&self) -> Hanger {
        let usual = ChainDefaults::HANGER;
        Hanger {
            drop: self.hanger_drop.unwrap_or(usual.drop),
            setback: self.hanger_setback.unwrap_or(usual.setback),
        }
    }

    /// Whether a measure that decides chain length was left empty.
    #[must_use]
    pub const fn left_empty(&self, side: Side, measure: ChainMeasure) -> bool {
        let cage = &self.measured[side as usize];
        match measure {
            ChainMeasure::Chainstay => self.chainstay.is_none(),
            ChainMeasure::BottomBracketDrop => self.bottom_bracket_drop.is_none(),
            ChainMeasure::PulleyCentres => cage.pulley_centres.is_none(),
            ChainMeasure::PulleyTeeth => cage.guide.is_none() || cage.tension.is_none(),
            ChainMeasure::PulleyGap => cage.gap.is_none(),
            ChainMeasure::GuideAngle => cage.guide_angle.is_none(),
            ChainMeasure::RearStop => cage.rear_stop.is_none() && !self.stop_by_capacity,
            ChainMeasure::ForeStop => cage.fore_stop.is_none(),
        }
    }

    /// A set-up's chain and cage, with the rest position where the maker's capacity puts it when that is asked for; whether
    /// no stop does.
    pub(crate) fn setup(&self, side: Side, drivetrain: Drivetrain) -> Result<(ChainSetup, bool), PathError> {
        let setup = self.as_measured(side, drivetrain);
        let Some(capacity) = self.derailleur(side).total_capacity.filter(|_| self.stop_by_capacity) else {
            return Ok((setup, false));
        };
        let moved = setup.with_stated_capacity(capacity.teeth())?;
        Ok((moved.unwrap_or(setup), moved.is_none()))
    }

    /// The derailleur of one set-up.
    #[must_use]
    pub const fn derailleur(&self, side: Side) -> &Derailleur {
        &self.derailleurs[side as usize]
    }

    fn as_measured(&self, side: Side, drivetrain: Drivetrain) -> ChainSetup {
        let chainline = ChainDefaults::chainline(&drivetrain);
        ChainSetup { chainline, drivetrain, frame: self.frame(), cage: self.cages[side as usize] }
    }

    /// What is asked of the cage for one set-up.
    pub(crate) fn cage_question(&self, side: Side) -> CageQuestion {
        let drivetrain = self.drivetrains[side as usize];
        let setup = self.setup(side, drivetrain).map(|(setup, _)| setup);
        let measures = ChainDefaults::ASSUMPTIONS.map(|assumption| assumption.measure);
        CageQuestion {
            setup: setup.unwrap_or_else(|_| self.as_measured(side, drivetrain)),
            derailleur: *self.derailleur(side),
            links: self.links[side as usize],
            unmeasured: measures.into_iter().filter(|&it| self.left_empty(side, it)).collect(),
            switched_off: self.gears_off[side as usize],
        }
    }
}

/// What was measured of the cages of A and B, and the cages that it makes; where wheels would run into each other, those before.
fn cages(
    reader: &mut Reader<'_>,
    good: &ChainInputs,
    capacities: [Option<TotalCapacity>; 2],
) -> ([MeasuredCage; 2], [Cage; 2]) {
    let typed = MeasuredCage::read(reader);
    let (mut measured, mut cages) = (good.measured, good.cages);
    for side in Side::BOTH {
        let place = side as usize;
        match typed[place].filled(capacities[place]) {
            Ok(cage) => (measured[place], cages[place]) = (typed[place], cage),
            Err(error) => {
                let field = reader.standing_for(side, blamed(&error));
                reader.complain_once(field, words::path(&error), words::MEASURES_BEFORE.to_owned());
            }
        }
    }
    (measured, cages)
}

/// The field whose value most likely makes wheels run into each other.
const fn blamed(error: &PathError) -> Field {
    match error {
        PathError::WheelsOverlap { second: WheelRole::Sprocket, .. } => Field::PulleyGap,
        _ => Field::PulleyCentres,
    }
}

fn place(reader: &mut Reader<'_>, field: Field) -> Option<usize> {
    (reader.number_within(field, &PLACES) as usize).checked_sub(1)
}
