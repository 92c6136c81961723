//! What moves a pressure from the formula, or forbids every one.

use crate::wheel::pressure_ceiling::PressureCeiling;
use crate::wheel::pressure_floor::{FloorReason, PressureFloor};
use crate::wheel::quantity::Pressure;
use core::fmt;

/// What moved a starting pressure away from the formula.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LimitedBy {
    /// Raised to the floor.
    Floor(PressureFloor),
    /// Cut to the ceiling.
    Ceiling(PressureCeiling),
}

/// No pressure is both as high as the lowest and as low as the highest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FloorAboveCeiling {
    /// The lowest pressure.
    pub floor: PressureFloor,
    /// The highest pressure.
    pub ceiling: PressureCeiling,
}

impl LimitedBy {
    pub(crate) fn of(
        pressure: Pressure,
        floor: PressureFloor,
        ceiling: Option<PressureCeiling>,
    ) -> Option<Self> {
        let ceiling = ceiling.filter(|ceiling| pressure > ceiling.pressure);
        if pressure < floor.pressure { Some(Self::Floor(floor)) } else { ceiling.map(Self::Ceiling) }
    }

    /// “raised” or “cut”.
    #[must_use]
    pub(crate) const fn verb(self) -> &'static str {
        match self {
            Self::Floor(_) => "raised",
            Self::Ceiling(_) => "cut",
        }
    }
}

impl fmt::Display for LimitedBy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Floor(floor) => floor.fmt(f),
            Self::Ceiling(ceiling) => ceiling.fmt(f),
        }
    }
}

impl FloorAboveCeiling {
    pub(crate) fn check(floor: PressureFloor, ceiling: Option<PressureCeiling>) -> Result<(), Self> {
        match ceiling {
            Some(ceiling) if floor.pressure > ceiling.pressure => Err(Self { floor, ceiling }),
            _ => Ok(()),
        }
    }

    /// What to change.
    fn remedy(&self) -> &'static str {
        use FloorReason::{
            MarkedMinimum, TubeOnMixedGround, TubeOnRocks, TubeOnSoftGround, TubeUnderHeavyRider,
        };
        match self.floor.reason {
            TubeOnSoftGround | TubeOnMixedGround | TubeUnderHeavyRider | TubeOnRocks => {
                "Take a wider tyre or one with a higher mark, or do not ride it with a tube"
            }
            MarkedMinimum => "Read both marks again; if they stand, take another tyre or rim",
            _ => "Read the mark again, or take another tyre or rim",
        }
    }
}

impl fmt::Display for FloorAboveCeiling {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "No pressure suits: {}, but {}. {}.", self.floor, self.ceiling, self.remedy())
    }
}

impl core::error::Error for FloorAboveCeiling {}

#[cfg(test)]
mod tests {
    use crate::wheel::pressure_case::tests::tubed;
    use crate::wheel::pressure_case::{PressureCase, TyreGround};
    use crate::wheel::pressure_ceiling::{CeilingReason, PressureMarks};
    use crate::wheel::quantity::Pressure;

    fn marked(kg: f64, ground: TyreGround, tyre_bar: f64) -> PressureCase {
        let marks =
            PressureMarks { tyre: Pressure::new(tyre_bar).ok(), hookless: true, ..PressureMarks::default() };
        PressureCase { marks, ..tubed(kg, ground) }
    }

    #[test]
    fn the_lowest_mark_is_the_ceiling() {
        let ceiling = |bar| marked(65.0, TyreGround::Soft, bar).advice().ceiling.unwrap();
        assert_eq!(ceiling(4.5).reason, CeilingReason::TyreMark);
        assert_eq!(ceiling(5.5).reason, CeilingReason::HooklessRim);
        assert_eq!(ceiling(5.5).to_string(), "a hookless rim takes no more: 5.0 bar or 72 psi");
    }

    #[test]
    fn a_ceiling_just_under_a_floor_does_not_read_like_it() {
        let conflict = |ground, bar| marked(65.0, ground, bar).advice().start.unwrap_err().to_string();
        let soft = conflict(TyreGround::Soft, 2.4);
        assert!(
            soft.contains("is 2.42 bar or 35 psi, but the tyre is marked with no more: 2.4 bar or 34 psi"),
            "{soft}"
        );
        let mixed = conflict(TyreGround::Mixed, 2.75);
        assert!(mixed.contains("2.75 bar or 39 psi"), "{mixed}");
    }

    #[test]
    fn no_number_comes_with_what_to_change() {
        assert_eq!(
            marked(65.0, TyreGround::Rocky, 3.8).advice().start.unwrap_err().to_string(),
            "No pressure suits: the lowest usual pressure with a tube on rocks and roots (common practice) is 4.14 bar or \
             60 psi, but the tyre is marked with no more: 3.8 bar or 55 psi. Take a wider tyre or one with a higher mark, \
             or do not ride it with a tube."
        );
    }

    #[test]
    fn marks_that_exclude_one_another_are_to_be_read_again() {
        let mut case = marked(65.0, TyreGround::Soft, 3.0);
        case.marks.least = Pressure::new(3.5).ok();
        let conflict = case.advice().start.unwrap_err().to_string();
        assert!(
            conflict.starts_with("No pressure suits: the marked minimum is 3.5 bar or 51 psi, but"),
            "{conflict}"
        );
        assert!(
            conflict.ends_with("Read both marks again; if they stand, take another tyre or rim."),
            "{conflict}"
        );
    }
}
