//! The units that a bench is told in.

use crate::bench::bench::Bench;
use crate::bench::field::{Field, Group};
use crate::bench::reader::Reader;
use crate::units::{GearScale, Units};
use gear_math::typed::Unit;

/// Understands the choices of units.
pub(crate) fn read(reader: &mut Reader<'_>) -> Units {
    Units {
        speed: reader.pick(Field::SpeedUnit, &[Unit::KmPerH, Unit::MilesPerH]),
        mass: reader.pick(Field::MassUnit, &[Unit::Kilogram, Unit::Pound]),
        distance: reader.pick(Field::DistanceUnit, &[Unit::Metre, Unit::Foot]),
        length: reader.pick(Field::LengthUnit, &[Unit::Millimetre, Unit::Inch]),
        pressure: reader.pick(Field::PressureUnit, &[Unit::Bar, Unit::Psi]),
        gears: gears(reader),
        comma: reader.pick(Field::DecimalMark, &[false, true]),
    }
}

/// What gears are told by, gear inches on the wheel that is chosen for them.
fn gears(reader: &mut Reader<'_>) -> GearScale {
    let nominal = reader.text(Field::Inches).trim() == "nominal";
    let inches = if nominal { GearScale::NominalInches } else { GearScale::Inches };
    reader.pick(Field::GearScale, &[GearScale::Development, inches, GearScale::Ratio])
}

/// What the word “imperial” chooses; “metric” chooses what the same fields start with.
const IMPERIAL: [(Field, &str); 6] = [
    (Field::SpeedUnit, "mph"),
    (Field::MassUnit, "lb"),
    (Field::DistanceUnit, "ft"),
    (Field::LengthUnit, "in"),
    (Field::PressureUnit, "psi"),
    (Field::GearScale, "inches"),
];

impl Bench {
    /// The bench told in metric or imperial units; nothing for another word.
    pub(crate) fn with_units(&self, word: &str) -> Option<Self> {
        let is_imperial = match word {
            "metric" => false,
            "imperial" => true,
            _ => return None,
        };
        let mut bench = self.clone();
        for (field, imperial) in IMPERIAL {
            // What a field starts with stays out of the link.
            bench.put(field, if is_imperial { imperial } else { field.spec().start }, is_imperial);
        }
        Some(bench)
    }

    /// The bench told in the units of another.
    pub(crate) fn with_units_of(mut self, other: &Self) -> Self {
        Group::Units.fields().for_each(|field| self.take(field, other));
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_word_chooses_all_and_the_other_brings_everything_back() {
        let demo = Bench::default();
        let imperial = demo.with_units("imperial").unwrap();
        let read = |bench: &Bench| read(&mut Reader::new(bench, &demo));
        assert_eq!([read(&demo), read(&imperial)], [Units::METRIC, Units::IMPERIAL]);
        assert_eq!(imperial.with_units("metric"), Some(demo.clone()));
        assert!(demo.with_units("nautical").is_none());
    }
}
