//! What to heed about a pressure.

use crate::wheel::construction::Construction;
use crate::wheel::pressure_case::PressureCase;
use core::fmt;

/// What to heed about a pressure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum PressureCaution {
    /// How the marks of tyre and rim limit it.
    MarksFirst,
    /// No maximum was given.
    NoMark,
    /// The tyre's maximum was not given.
    NoTyreMark,
    /// The rim's maximum was not given.
    NoRimMark,
    /// A hookless rim needs its own tyres.
    Hookless,
    /// The glue or tape of a tubular.
    Glue,
    /// Pinch flats.
    PinchFlat,
    /// What the lowest usual pressures with a tube rest on.
    TubeValuesAreCustom,
    /// Which tyres and rims go without a tube, and burping.
    Burping,
    /// The formula was not made for this width.
    UnusualWidth,
    /// The formula was not made for this mass.
    UnusualMass,
    /// How to find one's own pressure.
    FindYourOwn,
    /// The same with tubes, which a rim that touches the ground pinches.
    FindYourOwnWithTubes,
    /// Gauges differ.
    SameGauge,
}

impl PressureCaution {
    /// Whether the formula was not made for the case.
    #[must_use]
    pub const fn is_beyond_the_formula(self) -> bool {
        matches!(self, Self::UnusualWidth | Self::UnusualMass)
    }

    /// Whether it belongs to the marks.
    #[must_use]
    pub const fn is_about_marks(self) -> bool {
        matches!(self, Self::MarksFirst | Self::NoMark | Self::NoTyreMark | Self::NoRimMark)
    }

    /// Whether a hand on the wheel settles it, or the names on tyre and rim.
    #[must_use]
    pub const fn is_checked_by_hand(self) -> bool {
        matches!(self, Self::Hookless | Self::Glue | Self::PinchFlat | Self::Burping)
    }

    /// Whether it says how a pressure of one's own is found, and where the formula does not lead to it.
    #[must_use]
    pub const fn tells_how_to_measure(self) -> bool {
        self.tells_of_a_start() || self.is_beyond_the_formula()
    }

    /// Whether it says what to do from a starting pressure, and nothing where there is none.
    #[must_use]
    pub const fn tells_of_a_start(self) -> bool {
        matches!(self, Self::FindYourOwn | Self::FindYourOwnWithTubes)
    }
}

/// Widths that the formula was made for, in millimetres.
const WIDTHS_MM: core::ops::RangeInclusive<f64> = 28.0..=45.0;
/// Masses of rider and bike that the formula was made for, in kilograms.
const MASSES_KG: core::ops::RangeInclusive<f64> = 40.0..=130.0;

pub(crate) fn cautions(case: &PressureCase) -> Vec<PressureCaution> {
    use PressureCaution::{FindYourOwn, FindYourOwnWithTubes, Hookless, MarksFirst, SameGauge};
    let mut cautions = vec![MarksFirst];
    cautions.extend(missing_mark(case));
    cautions.extend(case.marks.hookless.then_some(Hookless));
    cautions.extend(of_construction(case.construction));
    cautions.extend(beyond_the_formula(case));
    let own = if case.construction == Construction::Clincher { FindYourOwnWithTubes } else { FindYourOwn };
    cautions.extend([own, SameGauge]);
    cautions
}

const fn missing_mark(case: &PressureCase) -> Option<PressureCaution> {
    match (case.marks.tyre.is_some(), case.marks.rim.is_some()) {
        (false, false) => Some(PressureCaution::NoMark),
        (false, true) => Some(PressureCaution::NoTyreMark),
        (true, false) => Some(PressureCaution::NoRimMark),
        (true, true) => None,
    }
}

const fn of_construction(construction: Construction) -> &'static [PressureCaution] {
    match construction {
        Construction::Tubular => &[PressureCaution::Glue],
        Construction::Clincher => &[PressureCaution::PinchFlat, PressureCaution::TubeValuesAreCustom],
        Construction::Tubeless => &[PressureCaution::Burping],
    }
}

fn beyond_the_formula(case: &PressureCase) -> impl Iterator<Item = PressureCaution> {
    let width = (!WIDTHS_MM.contains(&case.width.mm())).then_some(PressureCaution::UnusualWidth);
    let mass = (!MASSES_KG.contains(&case.total_kg())).then_some(PressureCaution::UnusualMass);
    width.into_iter().chain(mass)
}

impl fmt::Display for PressureCaution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::MarksFirst => {
                "The lower of the two maximum marks, on tyre and rim, is the highest pressure; a marked minimum is the least."
            }
            Self::NoMark => "Neither maximum was given here: read both off tyre and rim before pumping.",
            Self::NoTyreMark => "The tyre’s maximum was not given here: read it off the sidewall before pumping.",
            Self::NoRimMark => {
                "The rim’s maximum was not given here: look on the rim or in its papers before pumping."
            }
            Self::Hookless => {
                "A hookless rim needs a tyre that its maker names for hookless rims, and a wide tyre may be allowed less \
                 than 5.0 bar (72 psi)."
            }
            Self::Glue => {
                "Glue or tape a tubular as its maker says, and let it cure as long as that says. Before riding it at low \
                 pressure try by hand to push it off its rim, all the way round."
            }
            Self::PinchFlat => {
                "Too soft, a tube is pinched against both edges of the rim: two holes side by side mean more pressure."
            }
            Self::TubeValuesAreCustom => {
                "The lowest usual pressures with a tube are workshop custom against pinching, given for 33 mm and carried \
                 over to other widths; recent advice goes lower, to 30 to 40 psi at that width, where nothing sharp lies."
            }
            Self::Burping => {
                "Without a tube, tyre and rim must both be made for it (marked tubeless or tubeless-ready). Too soft, the \
                 tyre can lift off the rim’s edge in a turn and lose its air at once: lean on it hard by hand first."
            }
            Self::UnusualWidth => {
                "The formula was made for tyres of 28 to 45 mm. Outside them start from the pressure that the tyre’s maker \
                 names."
            }
            Self::UnusualMass => {
                "The formula was made for 40 to 130 kg of rider and bike. Outside them start from the pressure that the \
                 tyre’s maker names."
            }
            Self::FindYourOwn => {
                "This is a start, good to 15 % either way; half a psi can be felt. On the course, let out air until the rim \
                 touches the ground once a lap at most, and not below the lowest pressure given. With a carbon rim stop at \
                 the first touch and look for cracks."
            }
            Self::FindYourOwnWithTubes => {
                "This is a start, good to 15 % either way. On the course, let out air in small steps and stop before the rim \
                 touches the ground, and not below the lowest pressure given: a rim that strikes pinches the tube, and a \
                 carbon rim that has struck has to be looked over for cracks."
            }
            Self::SameGauge => "Gauges differ by several psi: always use the same one.",
        })
    }
}
