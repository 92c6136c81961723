//! What the ground does to tyres and feet.

use crate::rider::doubt::ROLLING;
use crate::rider::quantity::{FootFactor, Friction, RollingCoefficient, SlopeShare};
use crate::wheel::{MountedWidth, WidthFactor};

/// The ground under wheel and foot.
///
/// # Example
/// ```
/// use gear_math::{Ground, Surface};
/// use gear_math::rider::Friction;
/// let grass = Surface::FirmGrass.ground();
/// let wet = Ground { friction: Friction::new(0.3)?, ..grass };
/// assert!(wet.friction < grass.friction && wet.rolling == grass.rolling);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ground {
    /// Rolling resistance of the tyres.
    pub rolling: RollingCoefficient,
    /// What of it the tyres' width makes.
    pub width: WidthFactor,
    /// Energy cost on foot, on the level, over hard ground.
    pub foot: FootFactor,
    /// How far that extra cost grows with the slope.
    pub slope_share: SlopeShare,
    /// Grip of the rear tyre.
    pub friction: Friction,
}

impl Ground {
    /// The rolling resistance at its lower (−1) or its higher edge (1), or in between. It may be off by 30 %, and the width's
    /// part by all of itself; both scale one figure, so they are added in quadrature.
    pub(crate) fn rolling_moved(&self, towards: f64) -> f64 {
        let edge = usize::from(towards > 0.0);
        let [of_ground, of_width] = [ROLLING, self.width.doubt()].map(|factors| factors[edge] - 1.0);
        self.rolling.value() * (1.0 + towards * of_ground.hypot(of_width))
    }
}

/// What a value rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Basis {
    /// A cited measurement.
    Published,
    /// Measurements of other tyres or gaits on either side of it.
    Bracketed,
    /// Judgement; no measurement was found.
    Estimate,
}

/// A value with the stretch in which the truth is thought to lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range<T> {
    /// Lowest likely value.
    pub low: T,
    /// The value to start from.
    pub typical: T,
    /// Highest likely value.
    pub high: T,
    /// What the typical value rests on.
    pub basis: Basis,
}

/// Kinds of ground met in cyclo-cross, from fast to slow.
///
/// # Example
/// ```
/// use gear_math::Surface;
/// let rolling = Surface::Mud.rolling();
/// assert!(rolling.low < rolling.typical && rolling.typical < rolling.high);
/// assert_eq!(Surface::named("Deep-Mud"), Some(Surface::DeepMud));
/// assert!(Surface::DeepMud.is_soft() && !Surface::FirmGrass.is_soft());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Surface {
    /// Asphalt or concrete.
    Tarmac,
    /// Gravel that does not give way.
    PackedGravel,
    /// Short, dry grass on firm soil.
    FirmGrass,
    /// Grass that the wheel sinks into a little.
    WetSoftGrass,
    /// Mud that is still rideable.
    Mud,
    /// Deep or sticky mud. What clogs the frame comes on top.
    DeepMud,
    /// Sand packed by rain or tide.
    WetPackedSand,
    /// Loose, dry sand.
    LooseSand,
}

impl Surface {
    /// Every surface, as they are listed here.
    pub const ALL: [Self; 8] = [
        Self::Tarmac,
        Self::PackedGravel,
        Self::FirmGrass,
        Self::WetSoftGrass,
        Self::Mud,
        Self::DeepMud,
        Self::WetPackedSand,
        Self::LooseSand,
    ];

    /// Whether wheels sink in, so that the tyre's width counts. On other ground wider tyres are known to roll easier where
    /// it is rough, and not where it is smooth, but nobody has measured how much on grass.
    #[must_use]
    pub const fn is_soft(self) -> bool {
        matches!(self, Self::Mud | Self::DeepMud | Self::LooseSand)
    }

    /// The same place after more rain, one step on: grass softens, soft grass and mud turn to mud and deep mud, loose sand packs,
    /// the rest stays what it is. Estimate.
    #[must_use]
    pub const fn wetter(self) -> Self {
        match self {
            Self::FirmGrass => Self::WetSoftGrass,
            Self::WetSoftGrass => Self::Mud,
            Self::Mud => Self::DeepMud,
            Self::LooseSand => Self::WetPackedSand,
            Self::Tarmac | Self::PackedGravel | Self::DeepMud | Self::WetPackedSand => self,
        }
    }

    /// Rolling resistance of a knobbly tyre of 33 mm at low pressure. Off-road at best ±30 %.
    ///
    /// Sources: a standard mechanical engineers' handbook quoting Moyer (gravel); Carvill, *Mechanical Engineer's
    /// Data Handbook* (1993: soil, sand); Maier et al. (*J Sports Sci*) and a field test (grass). The vehicle tyres
    /// behind some of them are not a bicycle's.
    #[must_use]
    pub const fn rolling(self) -> Range<RollingCoefficient> {
        const fn of(low: f64, typical: f64, high: f64, basis: Basis) -> Range<RollingCoefficient> {
            Range {
                low: RollingCoefficient::known(low),
                typical: RollingCoefficient::known(typical),
                high: RollingCoefficient::known(high),
                basis,
            }
        }
        match self {
            Self::Tarmac => of(0.004, 0.008, 0.012, Basis::Published),
            Self::PackedGravel => of(0.010, 0.014, 0.020, Basis::Published),
            Self::FirmGrass => of(0.020, 0.030, 0.040, Basis::Bracketed),
            Self::WetSoftGrass => of(0.035, 0.050, 0.070, Basis::Estimate),
            Self::Mud => of(0.050, 0.080, 0.150, Basis::Bracketed),
            Self::DeepMud => of(0.100, 0.150, 0.250, Basis::Estimate),
            Self::WetPackedSand => of(0.030, 0.045, 0.060, Basis::Estimate),
            Self::LooseSand => of(0.100, 0.150, 0.300, Basis::Bracketed),
        }
    }

    /// Energy cost on foot over that of hard ground, on the level.
    ///
    /// Sources: Lejeune, Willems & Heglund (1998, *J Exp Biol* 201:2071–2080) and Pinnington & Dawson (2001, *J Sci
    /// Med Sport* 4:416–430) for sand; Kowalsky et al. (2021, *PLoS ONE* 16:e0228682) for the order of the others;
    /// terrain factors of Soule & Goldman (1972). No study of running in mud was found.
    #[must_use]
    pub const fn foot(self) -> Range<FootFactor> {
        const fn of(low: f64, typical: f64, high: f64, basis: Basis) -> Range<FootFactor> {
            Range {
                low: FootFactor::known(low),
                typical: FootFactor::known(typical),
                high: FootFactor::known(high),
                basis,
            }
        }
        match self {
            Self::Tarmac => of(1.00, 1.00, 1.00, Basis::Published),
            Self::PackedGravel | Self::FirmGrass => of(1.05, 1.10, 1.20, Basis::Published),
            Self::WetSoftGrass => of(1.15, 1.25, 1.40, Basis::Bracketed),
            Self::Mud => of(1.30, 1.50, 1.80, Basis::Bracketed),
            Self::DeepMud => of(1.50, 1.80, 2.00, Basis::Bracketed),
            Self::WetPackedSand => of(1.10, 1.20, 1.30, Basis::Bracketed),
            Self::LooseSand => of(1.20, 1.50, 1.60, Basis::Published),
        }
    }

    /// Usable friction of the driven tyre.
    ///
    /// Sources: Noon, *Engineering Analysis of Vehicular Accidents* (1994), for car tyres; knobs at low pressure on
    /// turf and mud are estimates.
    #[must_use]
    pub const fn friction(self) -> Range<Friction> {
        const fn of(low: f64, typical: f64, high: f64, basis: Basis) -> Range<Friction> {
            Range {
                low: Friction::known(low),
                typical: Friction::known(typical),
                high: Friction::known(high),
                basis,
            }
        }
        match self {
            Self::Tarmac => of(0.50, 0.65, 0.80, Basis::Published),
            Self::PackedGravel => of(0.35, 0.45, 0.60, Basis::Bracketed),
            Self::FirmGrass => of(0.35, 0.50, 0.70, Basis::Estimate),
            Self::WetSoftGrass => of(0.20, 0.30, 0.45, Basis::Bracketed),
            Self::Mud => of(0.20, 0.35, 0.60, Basis::Estimate),
            Self::DeepMud => of(0.15, 0.30, 0.60, Basis::Estimate),
            Self::WetPackedSand => of(0.40, 0.55, 0.65, Basis::Estimate),
            Self::LooseSand => of(0.30, 0.45, 0.60, Basis::Estimate),
        }
    }

    /// What a tyre of this width makes of the rolling resistance of a 33.
    #[must_use]
    pub fn width_factor(self, tyre: MountedWidth) -> WidthFactor {
        if self.is_soft() { WidthFactor::on_soft_ground(tyre) } else { WidthFactor::NONE }
    }

    /// Rolling resistance of a tyre of this width: all that the width does to riding besides its roll-out.
    #[must_use]
    pub fn rolling_under(self, tyre: MountedWidth) -> Range<RollingCoefficient> {
        let (factor, Range { low, typical, high, basis }) = (self.width_factor(tyre).value(), self.rolling());
        let [low, typical, high] =
            [low, typical, high].map(|of_33| RollingCoefficient::nearest(of_33.value() * factor));
        Range { low, typical, high, basis }
    }

    /// The typical values under tyres of this width.
    #[must_use]
    pub fn ground_under(self, tyre: MountedWidth) -> Ground {
        let (rolling, width) = (self.rolling_under(tyre).typical, self.width_factor(tyre));
        Ground { rolling, width, ..self.ground() }
    }

    /// The typical values under tyres of 33 mm, the extra cost on foot not growing with the slope.
    #[must_use]
    pub const fn ground(self) -> Ground {
        Ground {
            rolling: self.rolling().typical,
            width: WidthFactor::NONE,
            foot: self.foot().typical,
            slope_share: SlopeShare::FIXED,
            friction: self.friction().typical,
        }
    }
}

impl SlopeShare {
    /// The ground takes a fixed extra per metre, like rolling resistance does from the bike. The default.
    pub const FIXED: Self = Self::known(0.0);
    /// The ground multiplies the whole cost.
    pub const IN_FULL: Self = Self::known(1.0);
}
