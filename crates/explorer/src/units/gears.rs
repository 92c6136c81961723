//! Gears as they are told by what was chosen for them.

use crate::number::plain;
use crate::units::chosen::{GearScale, Units};
use crate::units::told::{Told, distances};
use gear_math::typed::Unit;
use gear_math::{Circumference, Development, Ratio};

/// Developments, m, where no wheel is at hand: by gear inches where those of the real wheel are chosen, else as ways.
pub(crate) fn developments() -> Told {
    match Units::now().gears {
        GearScale::Inches => Told::GearInches,
        _ => distances(),
    }
}

/// What those are told by.
pub(crate) fn developments_by() -> GearScale {
    match Units::now().gears {
        GearScale::Inches => GearScale::Inches,
        _ => GearScale::Development,
    }
}

/// What a gear is told by: its number.
pub(crate) fn gear_value(development: Development, wheel: Circumference) -> f64 {
    let ratio = || development.ratio(wheel).value();
    match Units::now().gears {
        GearScale::Development | GearScale::Inches => developments().value(development.m()),
        GearScale::NominalInches => Ratio::NOMINAL_WHEEL_INCHES * ratio(),
        GearScale::Ratio => ratio(),
    }
}

/// The same printed about as finely as a development with so many decimals.
pub(crate) fn gear_number(development: Development, wheel: Circumference, decimals: usize) -> String {
    let decimals = match Units::now().gears {
        GearScale::Development | GearScale::Inches => developments().decimals(decimals),
        GearScale::NominalInches => decimals.saturating_sub(1),
        GearScale::Ratio => decimals.max(2),
    };
    plain(gear_value(development, wheel), decimals)
}

/// The same with its unit.
pub(crate) fn gear(development: Development, wheel: Circumference, decimals: usize) -> String {
    let number = gear_number(development, wheel, decimals);
    match Units::now().gears {
        GearScale::Ratio => format!("{number}:1"),
        _ => format!("{number}\u{a0}{}", gear_unit()),
    }
}

/// The unit of such a number; none of a ratio.
pub(crate) fn gear_unit() -> &'static str {
    match Units::now().gears {
        GearScale::Development | GearScale::Inches => developments().symbol(),
        GearScale::NominalInches => Unit::GearInch.symbol(),
        GearScale::Ratio => "",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gear_math::Gear;

    #[test]
    fn a_gear_is_told_by_what_was_chosen() {
        let wheel = Circumference::new(2150.0).unwrap();
        let development = Gear::new(40, 20).unwrap().development(wheel);
        let told = |gears, distance| {
            let _in_force = Units { gears, distance, ..Units::METRIC }.enter();
            gear(development, wheel, 2)
        };
        assert_eq!(told(GearScale::Development, Unit::Metre), "4.30\u{a0}m");
        assert_eq!(told(GearScale::Development, Unit::Foot), "14.11\u{a0}ft");
        assert_eq!(told(GearScale::Inches, Unit::Metre), "53.9\u{a0}in");
        assert_eq!(told(GearScale::NominalInches, Unit::Metre), "54.0\u{a0}in");
        assert_eq!(told(GearScale::Ratio, Unit::Metre), "2.00:1");
    }
}
