//! Units that a quantity may be told in, metric and imperial.

use core::f64::consts::PI;

/// A unit of mass, length, speed or pressure.
///
/// Inch, foot, mile and pound are those of the agreement of 1959, pound-force by standard gravity: NIST SP 811 (2008),
/// appendix B, in which all of these are exact but the last, which follows from them.
///
/// # Example
/// ```
/// use gear_math::typed::Unit;
/// assert_eq!(Unit::Kilogram.told(1.0, Unit::Pound), 0.453_592_37);
/// assert_eq!(Unit::Foot.told(0.3048, Unit::Metre), 1.0);
/// assert!((Unit::Psi.told(1.0, Unit::Bar) - 14.503_773_8).abs() < 1e-7);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// kg
    Kilogram,
    /// lb
    Pound,
    /// mm
    Millimetre,
    /// in
    Inch,
    /// m
    Metre,
    /// ft
    Foot,
    /// Of development, in: one turn of a wheel of one inch.
    GearInch,
    /// km
    Kilometre,
    /// mi
    Mile,
    /// km/h
    KmPerH,
    /// mph
    MilesPerH,
    /// m/s
    MPerS,
    /// bar
    Bar,
    /// psi
    Psi,
}

impl Unit {
    /// Its symbol.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Kilogram => "kg",
            Self::Pound => "lb",
            Self::Millimetre => "mm",
            Self::Inch | Self::GearInch => "in",
            Self::Metre => "m",
            Self::Foot => "ft",
            Self::Kilometre => "km",
            Self::Mile => "mi",
            Self::KmPerH => "km/h",
            Self::MilesPerH => "mph",
            Self::MPerS => "m/s",
            Self::Bar => "bar",
            Self::Psi => "psi",
        }
    }

    /// How many kilograms, millimetres, kilometres per hour or bar one of it is.
    pub(crate) const fn worth(self) -> f64 {
        match self {
            Self::Kilogram | Self::Millimetre | Self::KmPerH | Self::Bar => 1.0,
            Self::Pound => 0.453_592_37,
            Self::Inch => 25.4,
            Self::Foot => 304.8,
            Self::GearInch => PI * 25.4,
            Self::Metre => 1e3,
            Self::Kilometre => 1e6,
            Self::Mile => 1_609_344.0,
            Self::MilesPerH => 1.609_344,
            Self::MPerS => 3.6,
            // 0.453 592 37 kg · 9.806 65 m/s² ÷ (25.4 mm)², in units of 100 kPa.
            Self::Psi => 0.453_592_37 * 9.806_65 / (0.0254 * 0.0254) / 1e5,
        }
    }

    /// A value given in another unit of the same kind, in this one.
    #[must_use]
    pub fn told(self, value: f64, given_in: Self) -> f64 {
        if self == given_in { value } else { value * given_in.worth() / self.worth() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn they_are_worth_what_nist_sp_811_says() {
        for (unit, base, worth) in [
            (Unit::Pound, Unit::Kilogram, 0.453_592_37),
            (Unit::Inch, Unit::Millimetre, 25.4),
            (Unit::Foot, Unit::Metre, 0.3048),
            (Unit::GearInch, Unit::Inch, PI),
            (Unit::Mile, Unit::Kilometre, 1.609_344),
            (Unit::MilesPerH, Unit::MPerS, 0.447_04),
            (Unit::KmPerH, Unit::MPerS, 0.277_777_8),
            (Unit::Psi, Unit::Bar, 0.068_947_57),
        ] {
            let told = base.told(1.0, unit);
            // It prints seven digits.
            assert!((told - worth).abs() < 2e-7 * worth, "{unit:?}: {told}");
            assert!((unit.told(told, base) - 1.0).abs() < 1e-14, "{unit:?}");
        }
    }
}
