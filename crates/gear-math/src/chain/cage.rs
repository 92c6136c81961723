//! The cage of a rear derailleur, as a workshop measures it.

use crate::cage::CageClass;
use crate::chain::measures::{ForeStop, GuideAngle, PulleyCentres, PulleyGap, RearStop};
use crate::chain::path_error::{PathError, WheelRole};
use crate::chain::pitch_circle::PitchCircle;
use crate::chain::point::PathPoint;
use crate::gears::{Pulley, TotalCapacity};

/// What is measured or read off a rear derailleur and its cage.
///
/// Angles are seen from the drive side and counted from straight down, positive forward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CageMeasures {
    /// Guide pulley axle to tension pulley axle.
    pub pulley_centres: PulleyCentres,
    /// The upper pulley, next to the sprocket.
    pub guide: Pulley,
    /// The lower pulley.
    pub tension: Pulley,
    /// Pitch circle of the guide pulley to that of the sprocket, held equal on every sprocket: an ideal
    /// slanted parallelogram.
    pub gap: PulleyGap,
    /// Direction from rear axle to guide pulley.
    pub guide_angle: GuideAngle,
    /// Where the cage stands when it can take up no more.
    pub rear_stop: RearStop,
    /// How far forward the cage may be pulled.
    pub fore_stop: ForeStop,
}

/// Chain that a tooth of total capacity stands for, in millimetres: half a link.
const MM_PER_TOOTH: f64 = 6.35;
/// Least gap between the pitch circles of the two pulleys, in millimetres; estimate, so that their teeth clear.
const PULLEYS_APART_MM: f64 = 4.0;

impl CageMeasures {
    /// Pulley centres of the cage that takes up `capacity`, with these pulleys and stops: the inverse of
    /// [`Cage::capacity_estimate_teeth`], but never shorter or longer than cages are [made](CageClass::ALL).
    ///
    /// # Example
    /// ```
    /// use gear_math::TotalCapacity;
    /// use gear_math::chain::ChainDefaults;
    /// for (teeth, mm) in [(29, 50.0), (33, 54.0), (37, 67.0), (39, 74.0), (45, 95.0)] {
    ///     let centres = ChainDefaults::CAGE.centres_for(TotalCapacity::new(teeth)?);
    ///     assert_eq!(centres.mm().round(), mm);
    /// }
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn centres_for(&self, capacity: TotalCapacity) -> PulleyCentres {
        let mm = (f64::from(capacity.teeth()) * MM_PER_TOOTH - self.wrap_mm()) / self.swing();
        let shortest = CageClass::SHORTEST_MM.max(self.pulley_radii_mm() + PULLEYS_APART_MM);
        PulleyCentres::nearest(mm.min(CageClass::LONGEST_MM).max(shortest))
    }

    /// Chain that the swing between the stops takes up for each millimetre between the pulley centres.
    fn swing(&self) -> f64 {
        let [fore, rear] = self.stops();
        fore.sin() + rear.sin()
    }

    /// Chain that both pulleys gain between the stops, in millimetres.
    fn wrap_mm(&self) -> f64 {
        let [fore, rear] = self.stops();
        self.circles().map(PitchCircle::mm_per_radian).iter().sum::<f64>() * (fore + rear)
    }

    fn stops(&self) -> [f64; 2] {
        [self.fore_stop.degrees(), self.rear_stop.degrees().abs()].map(f64::to_radians)
    }

    fn pulley_radii_mm(&self) -> f64 {
        self.circles().map(PitchCircle::radius_mm).iter().sum()
    }

    fn circles(&self) -> [PitchCircle; 2] {
        [self.guide, self.tension].map(|pulley| PitchCircle::of_bicycle(pulley.teeth()))
    }
}

/// A cage whose pulleys clear each other and the sprocket.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cage {
    measures: CageMeasures,
}

impl Cage {
    /// Takes the measures of a cage.
    ///
    /// # Errors
    /// [`PathError::WheelsOverlap`]
    /// - of the pulleys, when their centres are no further apart than the sum of their pitch radii;
    /// - of guide pulley and sprocket, when the gap is zero.
    ///
    /// # Example
    /// ```
    /// use gear_math::chain::{Cage, CageMeasures, ChainDefaults, PulleyCentres};
    /// let usual = ChainDefaults::CAGE;
    /// assert!(Cage::new(usual).is_ok());
    /// let stub = CageMeasures { pulley_centres: PulleyCentres::new(40.0)?, ..usual };
    /// let error = Cage::new(stub).unwrap_err().to_string();
    /// assert!(error.starts_with("guide pulley and tension pulley run into each other"));
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    pub fn new(measures: CageMeasures) -> Result<Self, PathError> {
        let cage = Self { measures };
        let overlap = |first, second| Err(PathError::WheelsOverlap { first, second });
        if measures.pulley_centres.mm() <= measures.pulley_radii_mm() {
            overlap(WheelRole::GuidePulley, WheelRole::TensionPulley)
        } else if measures.gap.mm() <= 0.0 {
            overlap(WheelRole::GuidePulley, WheelRole::Sprocket)
        } else {
            Ok(cage)
        }
    }

    /// The measures it was made from.
    #[must_use]
    pub const fn measures(&self) -> &CageMeasures {
        &self.measures
    }

    /// Chain the cage takes between its stops, in teeth of total capacity, by a short sum that needs no bike.
    ///
    /// # Formula
    /// [c (sin ψf + sin |ψr|) + (p/2π)(Ng + Nt)(ψf + |ψr|)] ÷ (p/2), with pulley centres c, stops ψf and ψr,
    /// pulley teeth Ng and Nt, pitch p: the swing of the tension pulley along the lower run, and the wrap that
    /// both pulleys gain. Derived; within 0.4 tooth of the full path for usual bikes. The level depends on the
    /// stops, which are fitted to published capacities: the maker's figure comes first.
    #[must_use]
    pub fn capacity_estimate_teeth(&self) -> f64 {
        let m = &self.measures;
        (m.pulley_centres.mm() * m.swing() + m.wrap_mm()) / MM_PER_TOOTH
    }

    /// The same cage with its pulleys further apart or closer.
    ///
    /// # Errors
    /// As [`Cage::new`].
    pub fn with_pulley_centres(&self, pulley_centres: PulleyCentres) -> Result<Self, PathError> {
        Self::new(CageMeasures { pulley_centres, ..self.measures })
    }

    /// The same cage with another rest position.
    pub(super) const fn with_rear_stop(&self, rear_stop: RearStop) -> Self {
        Self { measures: CageMeasures { rear_stop, ..self.measures } }
    }

    /// Where the guide pulley stands when the chain lies on a sprocket of this pitch radius.
    pub(super) fn guide_axle(&self, sprocket_radius: f64) -> PathPoint {
        let from_axle = sprocket_radius + self.measures.gap.mm() + self.guide_circle().radius_mm();
        PathPoint::REAR_AXLE.below(self.measures.guide_angle.degrees().to_radians(), from_axle)
    }

    pub(super) const fn guide_circle(&self) -> PitchCircle {
        PitchCircle::of_bicycle(self.measures.guide.teeth())
    }

    pub(super) const fn tension_circle(&self) -> PitchCircle {
        PitchCircle::of_bicycle(self.measures.tension.teeth())
    }
}
