//! What a tyre's pressure depends on.

use crate::physics::GRAVITY;
use crate::quantity::{BikeMass, BodyMass, KitMass, TotalMass};
use crate::wheel::construction::Construction;
use crate::wheel::pressure_ceiling::PressureMarks;
use crate::wheel::quantity::{FrontShare, MountedWidth, NominalWidth, WheelLoad};
use crate::wheel::wheels::Wheels;
use core::fmt;

/// The ground of a course, as a tyre meets it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TyreGround {
    /// Soft ground or mud.
    Soft,
    /// A bit of everything.
    Mixed,
    /// Rocks, roots, or fast and bumpy.
    Rocky,
}

impl TyreGround {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Soft, Self::Mixed, Self::Rocky];

    /// Factor on the pressure, chosen so that the trade's values on each ground are met (estimate).
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Soft => 0.85,
            Self::Mixed => 1.0,
            Self::Rocky => 1.2,
        }
    }
}

impl fmt::Display for TyreGround {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Soft => "soft or muddy",
            Self::Mixed => "mixed",
            Self::Rocky => "rocks, roots, fast and bumpy",
        })
    }
}

/// How a rider treats the wheels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WheelStyle {
    /// Light on the bike: unweights over edges.
    Smooth,
    /// Like most.
    Normal,
    /// Rough: hits edges.
    Hard,
}

impl WheelStyle {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Smooth, Self::Normal, Self::Hard];

    /// Factor on the pressure, chosen so that the trade's values for each rider are met (estimate).
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Smooth => 0.9,
            Self::Normal => 1.0,
            Self::Hard => 1.1,
        }
    }
}

impl fmt::Display for WheelStyle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Smooth => "light on the bike",
            Self::Normal => "normal",
            Self::Hard => "rough, hits edges",
        })
    }
}

/// Everything that a starting pressure depends on.
///
/// # Example
/// ```
/// use gear_math::PressureCase;
/// use gear_math::rider::BodyMass;
/// use gear_math::wheel::{Construction, FrontShare, MountedWidth, PressureMarks, TyreGround, WheelStyle};
/// let case = PressureCase {
///     rider: BodyMass::new(64.0)?,
///     kit_and_bike: None,
///     width: MountedWidth::new(33.0)?,
///     label: None,
///     construction: Construction::Tubular,
///     ground: TyreGround::Mixed,
///     style: WheelStyle::Normal,
///     front_share: FrontShare::USUAL,
///     marks: PressureMarks::default(),
/// };
/// let start = case.advice().start?;
/// assert_eq!(start.front.start.psi().round(), 22.0);
/// assert_eq!(start.rear.start.psi().round(), 24.0);
/// # Ok::<(), Box<dyn core::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureCase {
    /// The rider.
    pub rider: BodyMass,
    /// Kit and bike; 9 kg of both when not known (estimate).
    pub kit_and_bike: Option<(KitMass, BikeMass)>,
    /// Width of the tyre as mounted; of a tubular, the label.
    pub width: MountedWidth,
    /// Width by the label, which the standard's least pressures go by; the mounted width stands in for it.
    pub label: Option<NominalWidth>,
    /// How the tyre holds its air.
    pub construction: Construction,
    /// The course.
    pub ground: TyreGround,
    /// The rider's way with wheels.
    pub style: WheelStyle,
    /// Front wheel's part of the weight.
    pub front_share: FrontShare,
    /// What tyre and rim are marked with.
    pub marks: PressureMarks,
}

/// Kit and bike when only the rider is known, in kilograms (estimate).
const UNKNOWN_KIT_AND_BIKE_KG: f64 = 9.0;

impl PressureCase {
    /// Width that the practice values belong to.
    pub const BASE_WIDTH: MountedWidth = MountedWidth::CROSS;
    /// Rider, kit and bike that the base pressures belong to, in kilograms: 70 kg (common practice) and 9 (estimate).
    pub const BASE_KG: f64 = 79.0;

    /// Rider, kit and bike, in kilograms.
    #[must_use]
    pub fn total_kg(&self) -> f64 {
        let total = |(kit, bike)| TotalMass::of(self.rider, kit, bike).kg();
        self.kit_and_bike.map_or(self.rider.kg() + UNKNOWN_KIT_AND_BIKE_KG, total)
    }

    /// Static load of each wheel on level ground.
    #[must_use]
    pub fn loads(&self) -> Wheels<WheelLoad> {
        let (weight, front) = (self.total_kg() * GRAVITY, self.front_share.fraction());
        Wheels { front, rear: 1.0 - front }.map(|share| WheelLoad::computed(weight * share))
    }

    /// By what a pressure for 33 mm is multiplied on this width so that the tyre keeps its reserve before the rim
    /// touches: the load that does so grows as `p W^1.5` ([`AirSpring`](crate::wheel::air_spring::AirSpring)).
    #[must_use]
    pub fn width_factor(&self) -> f64 {
        (Self::BASE_WIDTH.mm() / self.width.mm()).powf(1.5)
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// A rider on 33 mm with tubes and nothing marked.
    pub(crate) fn tubed(rider_kg: f64, ground: TyreGround) -> PressureCase {
        PressureCase {
            rider: BodyMass::new(rider_kg).unwrap(),
            kit_and_bike: None,
            width: PressureCase::BASE_WIDTH,
            label: None,
            construction: Construction::Clincher,
            ground,
            style: WheelStyle::Normal,
            front_share: FrontShare::USUAL,
            marks: PressureMarks::default(),
        }
    }
}
