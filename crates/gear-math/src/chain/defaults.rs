//! What is assumed where a workshop has not measured, with where each value comes from.

use crate::chain::cage::{Cage, CageMeasures};
use crate::chain::chainline::ChainlineMeasures;
use crate::chain::fit::ChainWindow;
use crate::chain::frame::FrameMeasures;
use crate::chain::hanger::Hanger;
use crate::chain::measures::{
    BottomBracketDrop, Chainline, ChainstayLength, ForeStop, GuideAngle, HangerDrop, HangerSetback,
    PulleyCentres, PulleyGap, RearStop, RingSpacing, SprocketPitch,
};
use crate::chain::path_error::PathError;
use crate::chain::setup::ChainSetup;
use crate::gears::Drivetrain;
use crate::gears::Pulley;
use crate::quantity::Limits;

/// Usual measures of a cyclo-cross bike, for those that were left empty.
///
/// Each is a row of [`ChainDefaults::ASSUMPTIONS`], which says how far it may be off and where it comes from.
#[derive(Debug)]
pub struct ChainDefaults;

impl ChainDefaults {
    /// The frame.
    pub const FRAME: FrameMeasures = FrameMeasures {
        chainstay: ChainstayLength::known(425.0),
        bottom_bracket_drop: BottomBracketDrop::known(65.0),
    };

    /// A cage of medium length.
    pub const CAGE: CageMeasures = CageMeasures {
        pulley_centres: PulleyCentres::known(75.0),
        guide: Pulley::known(11),
        tension: Pulley::known(11),
        gap: PulleyGap::known(12.5),
        guide_angle: GuideAngle::known(10.0),
        rear_stop: RearStop::known(-75.0),
        fore_stop: ForeStop::known(65.0),
    };

    /// Where the derailleur hangs: published by frame builders as 28 mm below and 7 to 10 mm behind the axle.
    pub const HANGER: Hanger = Hanger { drop: HangerDrop::known(28.0), setback: HangerSetback::known(9.0) };

    /// Both chainlines at 43.5 mm, published for road doubles (45 to 47.5 mm with disc brakes, from memory: front and
    /// rear then move together); rings 7.5 mm apart (7 to 8, from memory); the usual pitch of the cassette.
    #[must_use]
    pub fn chainline(drivetrain: &Drivetrain) -> ChainlineMeasures {
        ChainlineMeasures {
            front: Chainline::known(43.5),
            ring_spacing: RingSpacing::known(7.5),
            rear: Chainline::known(43.5),
            sprocket_pitch: SprocketPitch::usual(drivetrain.cassette.sprockets().len()),
        }
    }

    /// The assumed measures that decide chain length, with their sources.
    pub const ASSUMPTIONS: [Assumption; 8] = [
        Assumption {
            measure: ChainMeasure::Chainstay,
            value: Self::FRAME.chainstay.mm(),
            low: 420.0,
            high: 435.0,
            source: "common practice on cyclo-cross frames",
        },
        Assumption {
            measure: ChainMeasure::BottomBracketDrop,
            value: Self::FRAME.bottom_bracket_drop.mm(),
            low: 58.0,
            high: 72.0,
            source: "common practice on cyclo-cross frames",
        },
        Assumption {
            measure: ChainMeasure::PulleyCentres,
            value: Self::CAGE.pulley_centres.mm(),
            low: 50.0,
            high: 93.0,
            source: "a published glossary gives 50 to 55 mm for short cages, 72.5 to 74 for medium, 86 to 89 for long",
        },
        Assumption {
            measure: ChainMeasure::PulleyTeeth,
            value: 11.0,
            low: 10.0,
            high: 12.0,
            source: "common practice",
        },
        Assumption {
            measure: ChainMeasure::PulleyGap,
            value: Self::CAGE.gap.mm(),
            low: 10.0,
            high: 20.0,
            source: "6 mm from tooth tip to tooth tip, as a cycle manual asks, plus two tooth heights; wide-range \
                     cassettes are set wider",
        },
        Assumption {
            measure: ChainMeasure::GuideAngle,
            value: Self::CAGE.guide_angle.degrees(),
            low: 0.0,
            high: 20.0,
            source: "estimate; a patent also draws the guide pulley ahead of the sprocket's lowest point",
        },
        Assumption {
            measure: ChainMeasure::RearStop,
            value: Self::CAGE.rear_stop.degrees(),
            low: -85.0,
            high: -65.0,
            source: "fitted so that capacities fall among published ones",
        },
        Assumption {
            measure: ChainMeasure::ForeStop,
            value: Self::CAGE.fore_stop.degrees(),
            low: 55.0,
            high: 75.0,
            source: "estimate: what chains cut by the workshop rule seldom exceed",
        },
    ];
}

/// A measure that decides chain length.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ChainMeasure {
    /// Bottom bracket to rear axle.
    Chainstay,
    /// Bottom bracket below the rear axle.
    BottomBracketDrop,
    /// Guide pulley axle to tension pulley axle.
    PulleyCentres,
    /// Teeth of both pulleys.
    PulleyTeeth,
    /// Guide pulley to sprocket.
    PulleyGap,
    /// Direction from rear axle to guide pulley.
    GuideAngle,
    /// Rear stop of the cage.
    RearStop,
    /// Fore stop of the cage.
    ForeStop,
}

impl ChainMeasure {
    /// Name, unit and what may be typed.
    #[must_use]
    pub const fn limits(self) -> Limits {
        match self {
            Self::Chainstay => ChainstayLength::LIMITS,
            Self::BottomBracketDrop => BottomBracketDrop::LIMITS,
            Self::PulleyCentres => PulleyCentres::LIMITS,
            Self::PulleyTeeth => Pulley::LIMITS,
            Self::PulleyGap => PulleyGap::LIMITS,
            Self::GuideAngle => GuideAngle::LIMITS,
            Self::RearStop => RearStop::LIMITS,
            Self::ForeStop => ForeStop::LIMITS,
        }
    }
}

/// A measure's usual value, for when it was not measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Assumption {
    /// What is assumed.
    pub measure: ChainMeasure,
    /// The value, in the unit of the measure's [limits](ChainMeasure::limits).
    pub value: f64,
    /// The least that is likely.
    pub low: f64,
    /// The most that is likely.
    pub high: f64,
    /// Where the value comes from.
    pub source: &'static str,
}

impl Assumption {
    /// What the assumption costs in certainty: the chains that would suit `setup` if the measure lay at its
    /// likely least, and at its likely most.
    ///
    /// # Errors
    /// - [`PathError::WheelsOverlap`] when the wheels of `setup` would run into each other at either end;
    /// - [`PathError::OutOfLimits`] when an end is no value that the measure may have.
    ///
    /// # Example
    /// ```
    /// use gear_math::{ChainSetup, Drivetrain};
    /// use gear_math::chain::{Cage, ChainDefaults};
    /// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    /// let setup = ChainSetup {
    ///     chainline: ChainDefaults::chainline(&drivetrain),
    ///     drivetrain,
    ///     frame: ChainDefaults::FRAME,
    ///     cage: Cage::new(ChainDefaults::CAGE)?,
    /// };
    /// let chainstay = ChainDefaults::ASSUMPTIONS[0];
    /// let [short, long] = chainstay.ends(&setup)?;
    /// assert!(long.shortest_exact - short.shortest_exact > 2.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn ends(&self, setup: &ChainSetup) -> Result<[ChainWindow; 2], PathError> {
        Ok([self.replaced(setup, self.low)?.window()?, self.replaced(setup, self.high)?.window()?])
    }

    pub(super) fn replaced(&self, setup: &ChainSetup, value: f64) -> Result<ChainSetup, PathError> {
        let mut frame = setup.frame;
        let mut cage = *setup.cage.measures();
        match self.measure {
            ChainMeasure::Chainstay => frame.chainstay = ChainstayLength::new(value)?,
            ChainMeasure::BottomBracketDrop => frame.bottom_bracket_drop = BottomBracketDrop::new(value)?,
            ChainMeasure::PulleyCentres => cage.pulley_centres = PulleyCentres::new(value)?,
            ChainMeasure::PulleyTeeth => [cage.guide, cage.tension] = [Pulley::new(value as u16)?; 2],
            ChainMeasure::PulleyGap => cage.gap = PulleyGap::new(value)?,
            ChainMeasure::GuideAngle => cage.guide_angle = GuideAngle::new(value)?,
            ChainMeasure::RearStop => cage.rear_stop = RearStop::new(value)?,
            ChainMeasure::ForeStop => cage.fore_stop = ForeStop::new(value)?,
        }
        Cage::new(cage).map(|cage| ChainSetup { frame, cage, ..*setup })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn setup() -> ChainSetup {
        let drivetrain = Drivetrain {
            chainset: "44/31".parse().unwrap(),
            cassette: "11-13-15-18-21-24-28-32".parse().unwrap(),
        };
        ChainSetup {
            chainline: ChainDefaults::chainline(&drivetrain),
            drivetrain,
            frame: ChainDefaults::FRAME,
            cage: Cage::new(ChainDefaults::CAGE).unwrap(),
        }
    }

    #[test]
    fn a_pulley_without_teeth_is_none() {
        let pulleys = ChainDefaults::ASSUMPTIONS.iter().find(|it| it.measure == ChainMeasure::PulleyTeeth);
        for teeth in [0.0, -11.0, 1e9] {
            let ends = Assumption { low: teeth, ..*pulleys.unwrap() }.ends(&setup());
            assert!(matches!(ends, Err(PathError::OutOfLimits(_))), "{teeth}");
        }
    }

    #[test]
    fn an_end_outside_its_limits_makes_no_bicycle() {
        for assumption in ChainDefaults::ASSUMPTIONS {
            let limits = assumption.measure.limits();
            for beyond in [limits.min - 1.0, limits.max + 1.0, f64::NAN] {
                let widened = Assumption { low: beyond, ..assumption };
                let error = widened.ends(&setup()).unwrap_err();
                assert!(
                    matches!(error, PathError::OutOfLimits(broken) if broken.limits.name == limits.name),
                    "{error} for {}",
                    limits.name
                );
            }
            assert!(assumption.ends(&setup()).is_ok());
        }
    }
}
