//! Quantities as they are told in the units in force.

use crate::number::{plain, trimmed, with_unit};
use crate::units::chosen::Units;
use gear_math::Speed;
use gear_math::typed::Unit;

/// What is told in one of two units, a metric one and another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Told {
    Mass,
    Speed,
    Wind,
    Length,
    Pressure,
    Distance,
    LongDistance,
    /// Development by gear inches, whatever ways are told in.
    GearInches,
}

impl Told {
    /// The metric unit, the other one, and how many decimals more that has.
    const fn units(self) -> (Unit, Unit, isize) {
        match self {
            Self::Mass => (Unit::Kilogram, Unit::Pound, 0),
            Self::Speed => (Unit::KmPerH, Unit::MilesPerH, 0),
            Self::Wind => (Unit::MPerS, Unit::MilesPerH, 0),
            Self::Length => (Unit::Millimetre, Unit::Inch, 2),
            Self::Pressure => (Unit::Bar, Unit::Psi, -2),
            Self::Distance => (Unit::Metre, Unit::Foot, 0),
            Self::LongDistance => (Unit::Kilometre, Unit::Mile, 0),
            Self::GearInches => (Unit::Metre, Unit::GearInch, -1),
        }
    }

    /// Whether the other unit is in force.
    pub(crate) fn is_other(self) -> bool {
        let now = Units::now();
        match self {
            Self::Mass => now.mass == Unit::Pound,
            Self::Speed | Self::Wind => now.speed == Unit::MilesPerH,
            Self::Length => now.length == Unit::Inch,
            Self::Pressure => now.pressure == Unit::Psi,
            Self::Distance | Self::LongDistance => now.distance == Unit::Foot,
            Self::GearInches => true,
        }
    }

    /// The metric unit.
    pub(crate) const fn own(self) -> Unit {
        self.units().0
    }

    /// The unit that may take its place.
    pub(crate) const fn other(self) -> Unit {
        self.units().1
    }

    fn unit(self) -> Unit {
        if self.is_other() { self.other() } else { self.own() }
    }

    /// The symbol of the unit in force.
    pub(crate) fn symbol(self) -> &'static str {
        self.unit().symbol()
    }

    /// The number for a value in the metric unit.
    #[inline(never)]
    pub(crate) fn value(self, value: f64) -> f64 {
        self.unit().told(value, self.own())
    }

    /// The value in the metric unit of a number.
    pub(crate) fn metric(self, number: f64) -> f64 {
        self.own().told(number, self.unit())
    }

    /// As many decimals as tell a value about as finely as so many in the metric unit.
    pub(crate) fn decimals(self, metric: usize) -> usize {
        if self.is_other() { metric.saturating_add_signed(self.units().2) } else { metric }
    }

    /// The number for a value in the metric unit, told about as finely as with so many decimals there.
    #[inline(never)]
    pub(crate) fn number(self, value: f64, decimals: usize) -> String {
        plain(self.value(value), self.decimals(decimals))
    }

    /// The same with the unit.
    #[inline(never)]
    pub(crate) fn print(self, value: f64, decimals: usize) -> String {
        with_unit(self.value(value), self.decimals(decimals), self.symbol())
    }

    /// A value that was typed, with as many places as it needs.
    pub(crate) fn typed(self, value: f64) -> String {
        if self.is_other() { converted(self.value(value)) } else { trimmed(value) }
    }

    /// A value that is roughly so, to two figures.
    pub(crate) fn rough(self, value: f64) -> String {
        let number = self.value(value);
        let decimals = match number.abs() {
            10.0.. => 0,
            1.0.. => 1,
            _ => 2,
        };
        if self.is_other() { plain(number, decimals) } else { trimmed(value) }
    }
}

/// A number that came out of another unit: to four figures, which is finer than anybody measures.
pub(crate) fn converted(number: f64) -> String {
    let decimals = match number.abs() {
        100.0.. => 1,
        10.0.. => 2,
        _ => 3,
    };
    crate::number::without_noughts(&plain(number, decimals))
}

/// Masses, kg.
pub(crate) const fn masses() -> Told {
    Told::Mass
}

/// Speeds, km/h.
pub(crate) const fn speeds() -> Told {
    Told::Speed
}

/// Speeds of wind and balance, m/s.
pub(crate) const fn winds() -> Told {
    Told::Wind
}

/// Lengths of the bike where the trade uses inches, mm.
pub(crate) const fn lengths() -> Told {
    Told::Length
}

/// Pressures, bar.
pub(crate) const fn pressures() -> Told {
    Told::Pressure
}

/// Short ways, climbing and developments, m.
pub(crate) const fn distances() -> Told {
    Told::Distance
}

/// Long ways, km.
pub(crate) const fn long_distances() -> Told {
    Told::LongDistance
}

/// A speed with its unit, to one decimal.
pub(crate) fn speed(speed: Speed) -> String {
    speeds().print(speed.km_per_h(), 1)
}

/// The number of a speed.
pub(crate) fn speed_value(speed: Speed) -> f64 {
    speeds().value(speed.km_per_h())
}

/// The number of a speed, to one decimal.
pub(crate) fn speed_number(speed: Speed) -> String {
    speeds().number(speed.km_per_h(), 1)
}

/// A mass as it was typed, with its unit.
pub(crate) fn mass(kg: f64) -> String {
    format!("{}\u{a0}{}", masses().typed(kg), masses().symbol())
}

/// So many watts to a kilogram, or to a pound.
pub(crate) fn per_mass(w_per_kg: f64, decimals: usize) -> String {
    let finer = usize::from(masses().is_other());
    format!("{}\u{a0}W/{}", plain(masses().metric(w_per_kg), decimals + finer), masses().symbol())
}

/// The number of watts to a kilogram, or to a pound.
pub(crate) fn per_mass_number(w_per_kg: f64) -> String {
    trimmed(masses().metric(w_per_kg))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantities_are_told_in_the_units_in_force() {
        let told = || {
            [
                mass(62.0),
                distances().print(60.0, 0),
                long_distances().print(3.0, 1),
                lengths().print(728.0, 0),
                winds().print(2.0, 1),
            ]
        };
        assert_eq!(
            told(),
            ["62 kg", "60 m", "3.0 km", "728 mm", "2.0 m/s"].map(|it| it.replace(' ', "\u{a0}"))
        );
        let _in_force = Units { comma: true, ..Units::IMPERIAL }.enter();
        let imperial = ["136,7 lb", "197 ft", "1,9 mi", "28,66 in", "4,5 mph"];
        assert_eq!(told(), imperial.map(|it| it.replace(' ', "\u{a0}")));
        assert_eq!(pressures().print(1.75, 2), "25\u{a0}psi");
    }
}
