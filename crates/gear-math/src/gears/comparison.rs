//! Set-up A against set-up B.

use crate::gears::gear::Gear;
use crate::gears::matching::pair_up;
use crate::gears::quantity::{DuplicateTolerance, GearStep};
use crate::gears::setup::Setup;
use crate::gears::summary::SetupSummary;
use crate::order::ascending;
use crate::quantity::{Cadence, Circumference, Development, Speed};
use core::cmp::Ordering;

/// Two set-ups side by side. Exchanging them exchanges everything said of A and B and nothing else.
///
/// # Example
/// ```
/// use gear_math::{Circumference, Drivetrain, Setup, Compared};
/// let wheel = Circumference::new(2150.0)?;
/// let cassette = "11-13-15-18-21-24-28-32".parse()?;
/// let double = Setup::new(Drivetrain { chainset: "44/31".parse()?, cassette }, wheel);
/// let single = Setup::new(Drivetrain { chainset: "40".parse()?, cassette }, wheel);
/// let comparison = double.compare(&single, Default::default());
/// assert_eq!(comparison.lowest.longer, Some(Compared::B));
/// let below = comparison.only_a.below.unwrap();
/// assert_eq!(format!("{:.2} m to {:.2} m", below.from.m(), below.to.m()), "2.08 m to 2.69 m");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// Set-up A summed up.
    pub a: SetupSummary,
    /// Set-up B summed up.
    pub b: SetupSummary,
    /// Gears that both have within the tolerance, lowest first; no gear is in two pairs.
    pub shared: Vec<SharedGear>,
    /// What only A reaches.
    pub only_a: OwnReach,
    /// What only B reaches.
    pub only_b: OwnReach,
    /// The lowest gears against each other.
    pub lowest: EndDifference,
    /// The highest gears against each other.
    pub highest: EndDifference,
}

/// One of two set-ups.
///
/// # Example
/// ```
/// use gear_math::{Circumference, Compared, Drivetrain, DuplicateTolerance, Setup};
/// let on = |wheel_mm| -> Result<Setup, Box<dyn std::error::Error>> {
///     let drivetrain = Drivetrain { chainset: "42".parse()?, cassette: "11-13-15-17".parse()? };
///     Ok(Setup::new(drivetrain, Circumference::new(wheel_mm)?))
/// };
/// let comparison = on(2100.0)?.compare(&on(2150.0)?, DuplicateTolerance::default());
/// assert_eq!(comparison.highest.longer, Some(Compared::B));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Compared {
    /// Set-up A.
    A,
    /// Set-up B.
    B,
}

/// A gear that both set-ups have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SharedGear {
    /// The gear of set-up A.
    pub a: Gear,
    /// The gear of set-up B.
    pub b: Gear,
    /// How far their developments are apart.
    pub step: GearStep,
}

/// What one set-up reaches beyond the other. A difference within the tolerance counts as none.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnReach {
    /// Below the lowest gear of the other.
    pub below: Option<DevelopmentSpan>,
    /// Above the highest gear of the other.
    pub above: Option<DevelopmentSpan>,
}

/// A stretch of developments.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DevelopmentSpan {
    /// The shorter end.
    pub from: Development,
    /// The longer end.
    pub to: Development,
}

impl DevelopmentSpan {
    /// The same stretch as speeds at a cadence, slower end first.
    #[must_use]
    pub fn speeds_at(&self, cadence: Cadence) -> (Speed, Speed) {
        (self.from.speed_at(cadence), self.to.speed_at(cadence))
    }
}

/// Two developments against each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EndDifference {
    /// The set-up with the longer development; none when they are equal.
    pub longer: Option<Compared>,
    /// How much longer it is.
    pub step: GearStep,
}

impl Setup {
    /// Compares this set-up, as A, with another, as B, each on its own wheel.
    ///
    /// Gears to avoid are left out on both sides. Gears in common are found in rising order so that as many as possible are paired, and of all such pairings
    /// the one with the least total difference is taken. Own algorithm.
    #[must_use]
    pub fn compare(&self, other: &Self, tolerance: DuplicateTolerance) -> Comparison {
        let (a, b) = (self.summary(tolerance), other.summary(tolerance));
        Comparison {
            shared: shared_gears(self, other, tolerance),
            only_a: OwnReach::of(&a, &b, tolerance),
            only_b: OwnReach::of(&b, &a, tolerance),
            lowest: EndDifference::between(a.lowest.development, b.lowest.development),
            highest: EndDifference::between(a.highest.development, b.highest.development),
            a,
            b,
        }
    }
}

impl OwnReach {
    fn of(own: &SetupSummary, other: &SetupSummary, tolerance: DuplicateTolerance) -> Self {
        let (low, high) = (own.lowest.development, own.highest.development);
        let (other_low, other_high) = (other.lowest.development, other.highest.development);
        let differs = |a: Development, b: Development| !a.step_to(b).is_within(tolerance);
        let below = DevelopmentSpan { from: low, to: if other_low < high { other_low } else { high } };
        let above = DevelopmentSpan { from: if other_high > low { other_high } else { low }, to: high };
        Self {
            below: (low < other_low && differs(low, other_low)).then_some(below),
            above: (high > other_high && differs(high, other_high)).then_some(above),
        }
    }
}

impl EndDifference {
    /// B's gear against A's: +10 when it is a tenth longer, −10 when it is a tenth shorter.
    #[must_use]
    pub fn b_against_a_percent(&self) -> f64 {
        let step = self.step.percent();
        match self.longer {
            Some(Compared::A) => -100.0 * step / (100.0 + step),
            _ => step,
        }
    }

    fn between(a: Development, b: Development) -> Self {
        let longer = match a.m().total_cmp(&b.m()) {
            Ordering::Less => Some(Compared::B),
            Ordering::Equal => None,
            Ordering::Greater => Some(Compared::A),
        };
        Self { longer, step: a.step_to(b) }
    }
}

/// A gear on its wheel. Developments are compared as ring × other sprocket × circumference, so that equal gears on the
/// same wheel are exactly equal.
#[derive(Clone, Copy)]
struct Rolling {
    gear: Gear,
    wheel: Circumference,
}

impl Rolling {
    fn sorted(set_up: &Setup) -> Vec<Self> {
        let mut gears = Vec::with_capacity(set_up.drivetrain.gear_count());
        gears.extend(set_up.avoid.rest(&set_up.drivetrain).map(|gear| Self { gear, wheel: set_up.wheel }));
        ascending(&mut gears, |it| f64::from(it.gear.ring.teeth()));
        ascending(&mut gears, |it| it.gear.ratio().value());
        gears
    }

    fn against(self, other: Self) -> f64 {
        f64::from(self.gear.against(other.gear)) * self.wheel.mm()
    }

    fn step_to(self, other: Self) -> GearStep {
        GearStep::between(self.against(other), other.against(self))
    }

    fn is_lower_than(self, other: Self) -> bool {
        self.against(other) < other.against(self)
    }
}

fn shared_gears(a: &Setup, b: &Setup, tolerance: DuplicateTolerance) -> Vec<SharedGear> {
    let (a, b) = (Rolling::sorted(a), Rolling::sorted(b));
    let step = |i: usize, j: usize| Some(a[i].step_to(b[j])).filter(|step| step.is_within(tolerance));
    pair_up((a.len(), b.len()), step, |i, j| a[i].is_lower_than(b[j]))
        .into_iter()
        .map(|(i, j, step)| SharedGear { a: a[i].gear, b: b[j].gear, step })
        .collect()
}
