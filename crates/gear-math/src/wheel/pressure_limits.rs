//! How low and how high a tyre may be pumped.

use crate::wheel::pressure::{PressureCase, TyreGround};
use crate::{Construction, NominalWidth, Pressure};
use core::fmt;

/// The highest pressures that tyre and rim are marked with.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PressureMarks {
    /// On the tyre's sidewall.
    pub tyre: Option<Pressure>,
    /// On the rim or in its papers.
    pub rim: Option<Pressure>,
    /// Whether the rim is hookless.
    pub hookless: bool,
}

/// The lowest pressure, and why.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureFloor {
    /// The pressure.
    pub pressure: Pressure,
    /// Why it may not be lower.
    pub reason: FloorReason,
}

/// The highest pressure, and why.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureCeiling {
    /// The pressure.
    pub pressure: Pressure,
    /// Why it may not be higher.
    pub reason: CeilingReason,
}

/// Why a pressure may not be lower.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum FloorReason {
    /// Tubular: 1.0 bar (estimate).
    Tubular,
    /// Tubeless: 1.5 bar, the off-road minimum of ISO 5775-1 (as quoted by an encyclopedia).
    Tubeless,
    /// Tube, soft ground: 35 psi (common practice).
    TubeOnSoftGround,
    /// Tube, mixed ground: 40 psi (common practice).
    TubeOnMixedGround,
    /// Tube, rocky ground: 60 psi (common practice).
    TubeOnRocks,
    /// Tube under a rider of 85 kg or more, except on soft ground: 60 psi (common practice; the 85 kg is an estimate).
    TubeUnderHeavyRider,
    /// Wired tyre of 25 mm or less: 3.0 bar, the minimum of ISO 5775-1 (as quoted by an encyclopedia).
    NarrowTyre,
    /// Other wired tyre on the road: 2.0 bar (the same). Tyres below 28 mm, narrower than those for cross, count as such
    /// (estimate).
    RoadTyre,
}

/// Why a pressure may not be higher.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum CeilingReason {
    /// The mark on the tyre.
    TyreMark,
    /// The mark of the rim.
    RimMark,
    /// Hookless rim: 5.0 bar (ETRTO, as two makers state it). Wider tyres have lower limits: the rim's mark rules.
    HooklessRim,
}

/// What moved a starting pressure away from the formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LimitedBy {
    /// Raised to the floor.
    Floor(FloorReason),
    /// Cut to the ceiling.
    Ceiling(CeilingReason),
}

/// No pressure is both high enough for the tyre's safety and low enough for its marks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FloorAboveCeiling {
    /// The lowest pressure.
    pub floor: PressureFloor,
    /// The highest pressure.
    pub ceiling: PressureCeiling,
    /// How the tyre holds its air, which decides what to change.
    pub construction: Construction,
}

/// What to heed about a pressure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum PressureCaution {
    /// The lower mark of tyre and rim comes first.
    MarksFirst,
    /// No mark was given.
    NoMark,
    /// A hookless rim needs its own tyres.
    Hookless,
    /// The glue of a tubular.
    Glue,
    /// Pinch flats.
    PinchFlat,
    /// The trade's values for tubes are the safe side.
    TubeValuesAreCautious,
    /// Burping.
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

    /// Whether it says what to do from a starting pressure, and nothing where there is none.
    #[must_use]
    pub const fn tells_of_a_start(self) -> bool {
        matches!(self, Self::FindYourOwn | Self::FindYourOwnWithTubes)
    }
}

/// Riders from this mass on count as heavy, in kilograms (estimate).
const HEAVY_RIDER_KG: f64 = 85.0;
/// ETRTO, hookless rims, as two makers state it.
const HOOKLESS: Pressure = Pressure::computed_bar(5.0);
/// Widths that the formula was made for, in millimetres.
const WIDTHS_MM: core::ops::RangeInclusive<f64> = 28.0..=45.0;
/// Up to this width ISO 5775-1 asks for 3.0 bar (as quoted by an encyclopedia).
const NARROW_MM: f64 = 25.0;
/// Masses of rider and bike that the formula was made for, in kilograms.
const MASSES_KG: core::ops::RangeInclusive<f64> = 40.0..=130.0;

impl FloorReason {
    /// The highest of the floors that hold for a tyre.
    fn of(case: &PressureCase) -> Self {
        let by_use = Self::by_use(case);
        Self::by_width(case).filter(|by_width| by_width.pressure() > by_use.pressure()).unwrap_or(by_use)
    }

    /// ISO 5775-1 leaves tubulars out.
    fn by_width(case: &PressureCase) -> Option<Self> {
        let width = case.label.map_or(case.width.mm(), NominalWidth::mm);
        match case.construction {
            Construction::Tubular => None,
            _ if width <= NARROW_MM => Some(Self::NarrowTyre),
            _ if width < *WIDTHS_MM.start() => Some(Self::RoadTyre),
            _ => None,
        }
    }

    fn by_use(case: &PressureCase) -> Self {
        match (case.construction, case.ground) {
            (Construction::Tubular, _) => Self::Tubular,
            (Construction::Tubeless, _) => Self::Tubeless,
            (Construction::Clincher, TyreGround::Soft) => Self::TubeOnSoftGround,
            (Construction::Clincher, TyreGround::Rocky) => Self::TubeOnRocks,
            (Construction::Clincher, TyreGround::Mixed) if case.rider.kg() >= HEAVY_RIDER_KG => {
                Self::TubeUnderHeavyRider
            }
            (Construction::Clincher, TyreGround::Mixed) => Self::TubeOnMixedGround,
        }
    }

    /// The lowest pressure for this reason.
    #[must_use]
    pub const fn pressure(self) -> Pressure {
        match self {
            Self::Tubular => Pressure::computed_bar(1.0),
            Self::Tubeless => Pressure::computed_bar(1.5),
            Self::TubeOnSoftGround => Pressure::computed_psi(35.0),
            Self::TubeOnMixedGround => Pressure::computed_psi(40.0),
            Self::TubeOnRocks | Self::TubeUnderHeavyRider => Pressure::computed_psi(60.0),
            Self::NarrowTyre => Pressure::computed_bar(3.0),
            Self::RoadTyre => Pressure::computed_bar(2.0),
        }
    }
}

impl PressureFloor {
    pub(crate) fn of(case: &PressureCase) -> Self {
        let reason = FloorReason::of(case);
        Self { pressure: reason.pressure(), reason }
    }
}

impl PressureMarks {
    /// The lowest of all that limits the pressure; `None` when nothing is known.
    #[must_use]
    pub fn ceiling(&self) -> Option<PressureCeiling> {
        let hookless = self.hookless.then_some(HOOKLESS);
        [
            (self.tyre, CeilingReason::TyreMark),
            (self.rim, CeilingReason::RimMark),
            (hookless, CeilingReason::HooklessRim),
        ]
        .into_iter()
        .filter_map(|(mark, reason)| mark.map(|pressure| PressureCeiling { pressure, reason }))
        .min_by(|a, b| a.pressure.bar().total_cmp(&b.pressure.bar()))
    }
}

impl LimitedBy {
    pub(crate) fn of(
        pressure: Pressure,
        floor: PressureFloor,
        ceiling: Option<PressureCeiling>,
    ) -> Option<Self> {
        let ceiling = ceiling.filter(|ceiling| pressure > ceiling.pressure);
        if pressure < floor.pressure {
            Some(Self::Floor(floor.reason))
        } else {
            ceiling.map(|ceiling| Self::Ceiling(ceiling.reason))
        }
    }
}

impl FloorAboveCeiling {
    pub(crate) fn check(
        floor: PressureFloor,
        ceiling: Option<PressureCeiling>,
        construction: Construction,
    ) -> Result<(), Self> {
        match ceiling {
            Some(ceiling) if floor.pressure > ceiling.pressure => Err(Self { floor, ceiling, construction }),
            _ => Ok(()),
        }
    }
}

pub(crate) fn cautions(case: &PressureCase) -> Vec<PressureCaution> {
    let mut cautions = vec![PressureCaution::MarksFirst];
    if case.marks.tyre.is_none() && case.marks.rim.is_none() {
        cautions.push(PressureCaution::NoMark);
    }
    if case.marks.hookless {
        cautions.push(PressureCaution::Hookless);
    }
    cautions.extend(match case.construction {
        Construction::Tubular => [PressureCaution::Glue].as_slice(),
        Construction::Clincher if case.ground == TyreGround::Rocky => [PressureCaution::PinchFlat].as_slice(),
        Construction::Clincher => {
            [PressureCaution::PinchFlat, PressureCaution::TubeValuesAreCautious].as_slice()
        }
        Construction::Tubeless => [PressureCaution::Burping].as_slice(),
    });
    if !WIDTHS_MM.contains(&case.width.mm()) {
        cautions.push(PressureCaution::UnusualWidth);
    }
    if !MASSES_KG.contains(&case.total_kg()) {
        cautions.push(PressureCaution::UnusualMass);
    }
    cautions.push(match case.construction {
        Construction::Clincher => PressureCaution::FindYourOwnWithTubes,
        Construction::Tubular | Construction::Tubeless => PressureCaution::FindYourOwn,
    });
    cautions.push(PressureCaution::SameGauge);
    cautions
}

impl fmt::Display for FloorReason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Tubular => "a tubular should not go below 1.0 bar",
            Self::Tubeless => "a tubeless tyre should not go below 1.5 bar",
            Self::TubeOnSoftGround => "a tyre with a tube should not go below 35 psi on any ground",
            Self::TubeOnMixedGround => "a tyre with a tube should not go below 40 psi on mixed ground",
            Self::TubeOnRocks => "a tyre with a tube should not go below 60 psi on rocks and roots",
            Self::TubeUnderHeavyRider => {
                "a tyre with a tube should not go below 60 psi under a rider of 85 kg or more, except on soft ground"
            }
            Self::NarrowTyre => "a tyre of 25 mm or less should not go below 3.0 bar",
            Self::RoadTyre => "a tyre of less than 28 mm should not go below 2.0 bar",
        })
    }
}

impl fmt::Display for CeilingReason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TyreMark => "the tyre is marked with no more",
            Self::RimMark => "the rim is marked with no more",
            Self::HooklessRim => "a hookless rim takes no more",
        })
    }
}

impl fmt::Display for PressureCeiling {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let hundredths = rounded_down(self.pressure.bar() * 100.0);
        let places = if hundredths % 10.0 > 0.0 { 2 } else { 1 };
        let (bar, psi) = (hundredths / 100.0, rounded_down(self.pressure.psi()));
        write!(f, "{}: {bar:.places$} bar or {psi:.0} psi", self.reason)
    }
}

/// No pressure is told higher than it is; what only arithmetic takes away is given back.
fn rounded_down(value: f64) -> f64 {
    (value + 1e-6).floor()
}

impl fmt::Display for LimitedBy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Floor(reason) => write!(f, "raised: {reason}"),
            Self::Ceiling(reason) => write!(f, "cut: {reason}"),
        }
    }
}

impl fmt::Display for FloorAboveCeiling {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { floor, ceiling, .. } = self;
        let change = match self.construction {
            Construction::Clincher => "Take a wider tyre with a higher mark, or do not ride it with tubes",
            Construction::Tubular | Construction::Tubeless => "Check the mark, or take another tyre or rim",
        };
        write!(f, "No pressure suits: {}, but {ceiling}. {change}.", floor.reason)
    }
}

impl core::error::Error for FloorAboveCeiling {}

impl fmt::Display for PressureCaution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::MarksFirst => {
                "The marks on tyre and rim come before any figure here, and the lower of the two counts."
            }
            Self::NoMark => "Read the highest pressure off the tyre and the rim before pumping: none was given here.",
            Self::Hookless => {
                "A hookless rim needs a tyre that its maker names for hookless rims, and a wide tyre may be allowed less \
                 than 5.0 bar."
            }
            Self::Glue => "Try by hand to push the tubular off its rim, all the way round, before riding at low pressure.",
            Self::PinchFlat => {
                "Too soft, a tube is pinched against both edges of the rim: two holes side by side mean more pressure."
            }
            Self::TubeValuesAreCautious => {
                "The figures for tubes are workshop practice on the safe side; recent advice goes down to 30 to 40 psi."
            }
            Self::Burping => {
                "Too soft, the tyre can lift off the rim's edge in a turn and lose its air at once: lean on it hard by hand \
                 first."
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
                "This is a start, good to 15 % either way. On the course, let out air until the rim touches the ground once \
                 a lap at most, but never below the lowest pressure given; half a psi can be felt."
            }
            Self::FindYourOwnWithTubes => {
                "This is a start, good to 15 % either way. On the course, let out air in small steps and stop before the rim \
                 touches the ground, and never below the lowest pressure given: a rim that strikes pinches the tube."
            }
            Self::SameGauge => "Gauges differ by several psi: always use the same one.",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BodyMass, FrontShare, MountedWidth, WheelStyle};

    fn tubed(rider_kg: f64, ground: TyreGround, mark_bar: f64) -> PressureCase {
        PressureCase {
            rider: BodyMass::new(rider_kg).unwrap(),
            kit_and_bike: None,
            width: MountedWidth::new(34.0).unwrap(),
            label: None,
            construction: Construction::Clincher,
            ground,
            style: WheelStyle::Normal,
            front_share: FrontShare::USUAL,
            marks: PressureMarks { tyre: Pressure::new(mark_bar).ok(), rim: None, hookless: true },
        }
    }

    #[test]
    fn the_lowest_mark_is_the_ceiling() {
        let ceiling = |mark_bar| tubed(65.0, TyreGround::Soft, mark_bar).advice().ceiling.unwrap();
        assert_eq!(ceiling(4.5).reason, CeilingReason::TyreMark);
        assert_eq!(ceiling(5.5).reason, CeilingReason::HooklessRim);
    }

    #[test]
    fn a_heavy_rider_may_go_low_on_soft_ground_only() {
        let floor = |kg, ground| tubed(kg, ground, 5.0).advice().floor.reason;
        assert_eq!(floor(85.0, TyreGround::Soft), FloorReason::TubeOnSoftGround);
        assert_eq!(floor(85.0, TyreGround::Mixed), FloorReason::TubeUnderHeavyRider);
        assert_eq!(floor(84.9, TyreGround::Mixed), FloorReason::TubeOnMixedGround);
    }

    #[test]
    fn narrow_tyres_have_the_floor_of_the_standard() {
        let floor = |construction, label_mm: f64, mounted_mm: f64| {
            let case = PressureCase {
                construction,
                width: MountedWidth::new(mounted_mm).unwrap(),
                label: NominalWidth::new(label_mm).ok(),
                ..tubed(60.0, TyreGround::Soft, 6.0)
            };
            case.advice().floor.reason
        };
        assert_eq!(floor(Construction::Tubeless, 25.0, 26.2), FloorReason::NarrowTyre);
        assert_eq!(floor(Construction::Clincher, 25.0, 25.0), FloorReason::NarrowTyre);
        assert_eq!(floor(Construction::Tubeless, 26.0, 24.8), FloorReason::RoadTyre);
        assert_eq!(floor(Construction::Clincher, 26.0, 26.0), FloorReason::TubeOnSoftGround);
        assert_eq!(floor(Construction::Tubeless, 28.0, 27.2), FloorReason::Tubeless);
        assert_eq!(floor(Construction::Tubular, 25.0, 25.0), FloorReason::Tubular);
    }

    #[test]
    fn a_ceiling_just_under_a_floor_does_not_read_like_it() {
        let conflict = |bar| tubed(65.0, TyreGround::Soft, bar).advice().start.unwrap_err().to_string();
        assert!(
            conflict(2.4).contains(
                "below 35 psi on any ground, but the tyre is marked with no more: 2.4 bar or 34 psi"
            )
        );
        let mixed = tubed(65.0, TyreGround::Mixed, 2.75).advice().start.unwrap_err().to_string();
        assert!(mixed.contains("2.75 bar or 39 psi"), "{mixed}");
        assert_eq!(
            PressureMarks { hookless: true, ..PressureMarks::default() }.ceiling().unwrap().to_string(),
            "a hookless rim takes no more: 5.0 bar or 72 psi"
        );
    }

    #[test]
    fn no_number_comes_with_what_to_change() {
        let conflict = tubed(65.0, TyreGround::Rocky, 3.8).advice().start.unwrap_err();
        assert_eq!(
            conflict.to_string(),
            "No pressure suits: a tyre with a tube should not go below 60 psi on rocks and roots, but the tyre is marked \
             with no more: 3.8 bar or 55 psi. Take a wider tyre with a higher mark, or do not ride it with tubes."
        );
    }
}
