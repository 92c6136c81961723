//! Rings, sprockets, wheel and cadences of A and B, and how their gears are told.

use crate::bench::cadence_window::CadenceWindow;
use crate::bench::field::Field;
use crate::bench::reader::Reader;
use crate::rings::cassettes::{self, TypedCassette};
use crate::rings::words::complaints as words;
use crate::side::Side;
use gear_math::chain::CageAnswer;
use gear_math::gears::RollOutLimit;
use gear_math::{Cadence, Chainset, Drivetrain, DuplicateTolerance, Setup, Speed, Wheel};

/// A cadence and a speed being looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Probe {
    /// For the speed of every gear.
    pub cadence: Cadence,
    /// For the cadence in every gear.
    pub speed: Speed,
    /// For the slope on which it is held.
    pub uphill: Speed,
}

/// What the gears of A and B are worked out from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RingsInputs {
    chainsets: [Chainset; 2],
    cassettes: [TypedCassette; 2],
    /// The wheels of A and B.
    pub wheels: [Wheel; 2],
    /// The rider's cadences.
    pub window: CadenceWindow,
    /// Gears closer than this count as one.
    pub tolerance: DuplicateTolerance,
    /// Whether gear inches are those of the nominal 27 in wheel.
    pub nominal_inches: bool,
    /// The roll-out limit of the race, if it has one.
    pub limit: Option<RollOutLimit>,
    /// What is being looked at.
    pub probe: Probe,
}

impl RingsInputs {
    pub(crate) fn read(reader: &mut Reader<'_>, good: &Self) -> Self {
        let cassettes = cassettes::read(reader, good.cassettes);
        Self {
            cassettes,
            chainsets: [
                reader.parsed(Field::RingsA, good.chainsets[0], words::chainset),
                reader.parsed(Field::RingsB, good.chainsets[1], words::chainset),
            ],
            wheels: reader.wheels(good.wheels),
            window: reader.window(good.window),
            tolerance: reader.quantity(Field::Tolerance),
            nominal_inches: reader.pick(Field::Inches, &[false, true]),
            limit: reader.quantity_or_none(Field::RollOutLimit),
            probe: Probe {
                cadence: reader.quantity(Field::ProbeCadence),
                speed: reader.speed(Field::ProbeSpeed),
                uphill: reader.speed(Field::SlopeSpeed),
            },
        }
    }

    /// Something to read the demo bench with.
    #[expect(clippy::expect_used, reason = "fixed values within every limit, run by every test")]
    pub(crate) fn bare() -> Self {
        let cadence = |rpm| Cadence::new(rpm).expect("a cadence");
        let speed = |km_per_h| Speed::from_km_per_h(km_per_h).expect("a speed");
        let cassette = "11-13-15".parse().expect("sprockets");
        Self {
            chainsets: ["42".parse().expect("rings"); 2],
            cassettes: [TypedCassette { cassette, name: None }; 2],
            wheels: [Wheel::by_size("33-622".parse().expect("a tyre"), None); 2],
            window: CadenceWindow { low: cadence(55.0), usual: cadence(85.0), high: cadence(110.0) },
            tolerance: DuplicateTolerance::default(),
            nominal_inches: false,
            limit: None,
            probe: Probe { cadence: cadence(85.0), speed: speed(15.0), uphill: speed(9.0) },
        }
    }

    /// Rings and sprockets of one set-up.
    #[must_use]
    pub const fn drivetrain(&self, side: Side) -> Drivetrain {
        Drivetrain {
            chainset: self.chainsets[side as usize],
            cassette: self.cassettes[side as usize].cassette,
        }
    }

    /// Rings and sprockets of A and of B.
    #[must_use]
    pub const fn drivetrains(&self) -> [Drivetrain; 2] {
        [self.drivetrain(Side::A), self.drivetrain(Side::B)]
    }

    /// One set-up on its wheel, without the gears that its cage forbids.
    #[must_use]
    pub fn set_up(&self, side: Side, cage: &CageAnswer) -> Setup {
        Setup { drivetrain: self.drivetrain(side), avoid: cage.avoid, wheel: self.wheel(side).roll_out() }
    }

    /// The wheel of one set-up.
    #[must_use]
    pub const fn wheel(&self, side: Side) -> Wheel {
        self.wheels[side as usize]
    }

    /// The cassette of one set-up, with the name that it was typed by, if it was.
    #[must_use]
    pub const fn typed_cassette(&self, side: Side) -> TypedCassette {
        self.cassettes[side as usize]
    }
}
