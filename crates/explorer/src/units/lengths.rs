//! Lengths of the bike as they are told in the units in force.

use crate::number::{mm, with_unit};
use crate::units::told::lengths;
use std::fmt::{self, Display, Formatter};

/// A length as it was typed, mm: to a tenth where there is one.
#[inline(never)]
pub(crate) fn length(length_mm: f64) -> String {
    if lengths().is_other() { whole_length(length_mm) } else { mm(length_mm) }
}

/// A length as a tape shows it, mm.
#[inline(never)]
pub(crate) fn whole_length(length_mm: f64) -> String {
    lengths().print(length_mm, 0)
}

/// The same by a rounding of its last place.
pub(crate) fn rounded_length(length_mm: f64, rounding: fn(f64) -> f64) -> String {
    let (unit, decimals) = (lengths(), lengths().decimals(0));
    let parts = if unit.is_other() { 100.0 } else { 1.0 };
    with_unit(rounding(unit.value(length_mm) * parts) / parts, decimals, unit.symbol())
}

/// Prints the number of a length, mm, with as many places as it needs; a sum of many of them is smaller code than one of texts.
pub(crate) struct LengthNumber(pub(crate) f64);

impl Display for LengthNumber {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(&lengths().typed(self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Units;

    #[test]
    fn an_inch_is_told_about_as_finely_as_a_millimetre() {
        let told = || {
            [
                length(172.5),
                whole_length(728.4),
                rounded_length(3.01, f64::ceil),
                rounded_length(88.9, f64::floor),
                LengthNumber(-56.0).to_string(),
            ]
            .map(|it| it.replace('\u{a0}', " "))
        };
        assert_eq!(told(), ["172.5 mm", "728 mm", "4 mm", "88 mm", "−56"]);
        let _in_force = Units { comma: true, ..Units::IMPERIAL }.enter();
        // 172.5 ÷ 25.4 = 6.791, 728.4 ÷ 25.4 = 28.677, 3.01 ÷ 25.4 = 0.1185, 88.9 ÷ 25.4 = 3.5 exactly.
        assert_eq!(told(), ["6,79 in", "28,68 in", "0,12 in", "3,50 in", "−2,205"]);
    }
}
