//! How low a tyre may be pumped.

use crate::wheel::both_units::{in_both_units, rounded_up};
use crate::wheel::construction::Construction;
use crate::wheel::pressure_case::{PressureCase, TyreGround};
use crate::wheel::quantity::{NominalWidth, Pressure};
use core::fmt;

/// The lowest pressure, and why.
///
/// With a tube it is what workshops hold to against pinching, common practice without a source: 35 psi at the least, 40 on
/// mixed ground under a light rider, 60 on rocks or under a heavy one, all for 33 mm. Between light and heavy riders it
/// rises evenly with their mass, and on other widths it is multiplied by
/// [`width_factor`](PressureCase::width_factor), since the load under which a rim reaches the ground grows as `p W^1.5`:
/// the reserve that custom has at 33 mm is kept. It is custom, not a limit of safety. The least pressures of ISO 5775-1 and
/// a marked minimum hold for every width as they stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureFloor {
    /// The pressure.
    pub pressure: Pressure,
    /// Why it is not to be lower.
    pub reason: FloorReason,
}

/// Why a pressure is not to be lower.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum FloorReason {
    /// Tubular: 1.0 bar (estimate).
    Tubular,
    /// Open tyre off the road: 1.5 bar, the minimum of ISO 5775-1 (as quoted by an encyclopedia).
    OffRoadTyre,
    /// Open tyre on the road: 2.0 bar (the same). Tyres below 28 mm, narrower than those for cross, count as such
    /// (estimate).
    RoadTyre,
    /// Open tyre of 25 mm or less: 3.0 bar (the same).
    NarrowTyre,
    /// Tube, soft ground: 35 psi at 33 mm (common practice).
    TubeOnSoftGround,
    /// Tube, mixed ground, rider up to 70 kg: 40 psi at 33 mm (common practice; the 70 kg is an estimate).
    TubeOnMixedGround,
    /// Tube, mixed ground, heavier rider: up to 60 psi at 33 mm from 85 kg on (common practice; the 85 kg and the even
    /// rise to it are estimates).
    TubeUnderHeavyRider,
    /// Tube, rocky ground: 60 psi at 33 mm (common practice).
    TubeOnRocks,
    /// What tyre or rim is marked with.
    MarkedMinimum,
}

/// Lowest usual pressure with a tube on 33 mm, in psi: anywhere, on mixed ground, and on rocks or under a heavy rider
/// (common practice).
const WITH_TUBE_PSI: [f64; 3] = [35.0, 40.0, 60.0];
/// Riders up to the first count as light, from the second on as heavy, in kilograms (estimate).
const RIDERS_KG: [f64; 2] = [70.0, 85.0];
/// Tyres narrower than this count as road tyres, in millimetres (estimate: the starting pressures for cross end there).
const CROSS_FROM_MM: f64 = 28.0;
/// Up to this width ISO 5775-1 asks for 3.0 bar (as quoted by an encyclopedia), in millimetres.
const NARROW_MM: f64 = 25.0;

impl PressureFloor {
    pub(crate) fn of(case: &PressureCase) -> Self {
        let by_construction = match case.construction {
            Construction::Tubular => Self::new(1.0, FloorReason::Tubular),
            Construction::Clincher | Construction::Tubeless => Self::by_standard(case),
        };
        let tube = (case.construction == Construction::Clincher).then(|| Self::with_tube(case));
        let mark = case.marks.least.map(|pressure| Self { pressure, reason: FloorReason::MarkedMinimum });
        [tube, mark].into_iter().flatten().fold(by_construction, Self::higher)
    }

    const fn new(bar: f64, reason: FloorReason) -> Self {
        Self { pressure: Pressure::computed_bar(bar), reason }
    }

    fn higher(self, other: Self) -> Self {
        if other.pressure > self.pressure { other } else { self }
    }

    /// ISO 5775-1, which goes by the label and leaves tubulars out.
    fn by_standard(case: &PressureCase) -> Self {
        match case.label.map_or(case.width.mm(), NominalWidth::mm) {
            width if width <= NARROW_MM => Self::new(3.0, FloorReason::NarrowTyre),
            width if width < CROSS_FROM_MM => Self::new(2.0, FloorReason::RoadTyre),
            _ => Self::new(1.5, FloorReason::OffRoadTyre),
        }
    }

    fn with_tube(case: &PressureCase) -> Self {
        let [anywhere, mixed, most] = WITH_TUBE_PSI;
        let (psi, reason) = match case.ground {
            TyreGround::Soft => (anywhere, FloorReason::TubeOnSoftGround),
            TyreGround::Rocky => (most, FloorReason::TubeOnRocks),
            TyreGround::Mixed => match heaviness(case.rider.kg()) {
                light if light <= 0.0 => (mixed, FloorReason::TubeOnMixedGround),
                part => (mixed + part * (most - mixed), FloorReason::TubeUnderHeavyRider),
            },
        };
        Self { pressure: Pressure::computed_psi(psi * case.width_factor()), reason }
    }
}

/// From 0 for a light rider to 1 for a heavy one.
fn heaviness(kg: f64) -> f64 {
    let [light, heavy] = RIDERS_KG;
    ((kg - light) / (heavy - light)).clamp(0.0, 1.0)
}

impl fmt::Display for FloorReason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Tubular => "the lowest usual pressure of a tubular (estimate)",
            Self::OffRoadTyre => "the least that ISO 5775-1 has for open tyres off the road",
            Self::RoadTyre => "the least that ISO 5775-1 has for a road tyre (here one below 28 mm)",
            Self::NarrowTyre => "the least that ISO 5775-1 has for a tyre of 25 mm or less",
            Self::TubeOnSoftGround => "the lowest usual pressure with a tube (common practice)",
            Self::TubeOnMixedGround => "the lowest usual pressure with a tube on mixed ground (common practice)",
            Self::TubeUnderHeavyRider => {
                "the lowest usual pressure with a tube on mixed ground under a rider of this weight (common practice)"
            }
            Self::TubeOnRocks => "the lowest usual pressure with a tube on rocks and roots (common practice)",
            Self::MarkedMinimum => "the marked minimum",
        })
    }
}

impl fmt::Display for PressureFloor {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} is {}", self.reason, in_both_units(self.pressure, rounded_up))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wheel::pressure_case::tests::tubed;
    use crate::wheel::pressure_ceiling::PressureMarks;
    use crate::wheel::quantity::{MountedWidth, NominalWidth};

    fn psi(case: &PressureCase) -> f64 {
        PressureFloor::of(case).pressure.psi()
    }

    #[test]
    fn a_heavy_rider_may_go_low_on_soft_ground_only() {
        let floor = |kg, ground| psi(&tubed(kg, ground));
        assert!((floor(110.0, TyreGround::Soft) - 35.0).abs() < 1e-9);
        assert!((floor(110.0, TyreGround::Mixed) - 60.0).abs() < 1e-9);
        assert!((floor(77.5, TyreGround::Mixed) - 50.0).abs() < 1e-9);
        assert!((floor(70.0, TyreGround::Mixed) - 40.0).abs() < 1e-9);
    }

    #[test]
    fn a_wide_tyre_with_a_tube_goes_lower_down_to_the_standard() {
        let floor = |mm, ground| {
            let width = MountedWidth::new(mm).unwrap();
            PressureFloor::of(&PressureCase { width, ..tubed(60.0, ground) })
        };
        assert!((floor(45.0, TyreGround::Rocky).pressure.psi() - 37.7).abs() < 0.05);
        assert_eq!(floor(50.0, TyreGround::Soft), PressureFloor::new(1.5, FloorReason::OffRoadTyre));
    }

    #[test]
    fn narrow_tyres_have_the_floor_of_the_standard() {
        let reason = |construction, label_mm: f64, mounted_mm: f64| {
            let width = MountedWidth::new(mounted_mm).unwrap();
            let label = NominalWidth::new(label_mm).ok();
            PressureFloor::of(&PressureCase { construction, width, label, ..tubed(60.0, TyreGround::Soft) })
                .reason
        };
        assert_eq!(reason(Construction::Tubeless, 25.0, 26.2), FloorReason::NarrowTyre);
        assert_eq!(reason(Construction::Tubeless, 26.0, 24.8), FloorReason::RoadTyre);
        assert_eq!(reason(Construction::Tubeless, 28.0, 27.2), FloorReason::OffRoadTyre);
        assert_eq!(reason(Construction::Clincher, 26.0, 26.0), FloorReason::TubeOnSoftGround);
        assert_eq!(reason(Construction::Tubular, 25.0, 25.0), FloorReason::Tubular);
    }

    #[test]
    fn a_marked_minimum_counts_where_it_is_the_higher() {
        let reason = |bar| {
            let marks = PressureMarks { least: Pressure::new(bar).ok(), ..PressureMarks::default() };
            PressureFloor::of(&PressureCase { marks, ..tubed(60.0, TyreGround::Soft) }).reason
        };
        assert_eq!(reason(2.4), FloorReason::TubeOnSoftGround);
        assert_eq!(reason(2.5), FloorReason::MarkedMinimum);
    }
}
