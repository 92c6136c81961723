//! What was chosen, and for how long it is in force.

use gear_math::typed::Unit;
use std::cell::Cell;

/// What gears are told by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GearScale {
    /// The way of one turn of the crank.
    Development,
    /// Ratio times wheel diameter.
    Inches,
    /// Ratio times a nominal wheel.
    NominalInches,
    /// Chainring over sprocket.
    Ratio,
}

/// A unit for each quantity, and the decimal sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Units {
    /// km/h or mph, and for wind m/s or mph.
    pub speed: Unit,
    /// kg or lb.
    pub mass: Unit,
    /// mm or in, where the trade uses inches.
    pub length: Unit,
    /// bar or psi, the other in its shadow.
    pub pressure: Unit,
    /// m or ft of way and climbing, and with them km or mi.
    pub distance: Unit,
    /// What gears are told by.
    pub gears: GearScale,
    /// Whether the decimal sign is a comma.
    pub comma: bool,
}

impl Units {
    /// What holds until something else is chosen.
    pub const METRIC: Self = Self {
        speed: Unit::KmPerH,
        mass: Unit::Kilogram,
        length: Unit::Millimetre,
        pressure: Unit::Bar,
        distance: Unit::Metre,
        gears: GearScale::Development,
        comma: false,
    };

    /// What is chosen by one word beside [`METRIC`](Self::METRIC).
    pub const IMPERIAL: Self = Self {
        speed: Unit::MilesPerH,
        mass: Unit::Pound,
        length: Unit::Inch,
        pressure: Unit::Psi,
        distance: Unit::Foot,
        gears: GearScale::Inches,
        comma: false,
    };

    /// Puts these in force until what is given back is let go of.
    #[must_use]
    #[inline(never)]
    pub fn enter(self) -> InForce {
        InForce { before: NOW.replace(self) }
    }

    /// What is in force.
    #[must_use]
    pub fn now() -> Self {
        NOW.get()
    }

    /// Whether these are the units of `other`, whatever gears are told by and the decimal sign.
    #[must_use]
    pub fn are_those_of(self, other: Self) -> bool {
        Self { gears: self.gears, comma: self.comma, ..other } == self
    }

    /// The same with a point for decimal sign, as programs read it.
    #[must_use]
    pub const fn with_points(self) -> Self {
        Self { comma: false, ..self }
    }
}

thread_local! {
    static NOW: Cell<Units> = const { Cell::new(Units::METRIC) };
}

/// Units in force. Those from before are so again once this is let go of.
#[derive(Debug)]
pub struct InForce {
    before: Units,
}

impl Drop for InForce {
    #[inline(never)]
    fn drop(&mut self) {
        NOW.set(self.before);
    }
}

/// A text with the decimal sign in force in the place of points.
#[must_use]
pub(crate) fn signed_so(text: String) -> String {
    if Units::now().comma { text.replace('.', ",") } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_in_force_is_so_again() {
        let imperial = Units { mass: Unit::Pound, ..Units::METRIC };
        {
            let _outer = imperial.enter();
            drop(Units { comma: true, ..imperial }.enter());
            assert_eq!(Units::now(), imperial);
        }
        assert_eq!(Units::now(), Units::METRIC);
    }
}
