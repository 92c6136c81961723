//! Quantities: one newtype each, the base unit in its headline, one table of limits for what may be typed.
//!
//! [`measured!`] makes a quantity that comes from outside and is checked against its [`Limits`];
//! [`derived!`] makes one that only a computation produces, so it needs no check. [`known!`] and [`nearest!`] are the
//! ways past the check from within: a constant is checked when compiling, a computed value is kept inside its limits.

use core::f64::consts::PI;
use core::fmt;

/// What a quantity may be: the one home of its bounds, used by constructors, forms, documents and errors.
///
/// # Example
/// ```
/// use gear_math::Cadence;
/// assert_eq!(Cadence::LIMITS.range(), "20 to 200 rpm");
/// assert!(Cadence::LIMITS.check(90.0).is_ok() && Cadence::LIMITS.check(f64::NAN).is_err());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Plain name, as it reads in a sentence.
    pub name: &'static str,
    /// Unit symbol; empty for a pure number.
    pub unit: &'static str,
    /// Smallest value allowed.
    pub min: f64,
    /// Largest value allowed.
    pub max: f64,
}

impl Limits {
    /// Gives `value` back when it lies within these limits.
    ///
    /// # Errors
    /// [`OutOfLimits`] when `value` is not a number, infinite, below `min` or above `max`.
    pub fn check(&'static self, value: f64) -> Result<f64, OutOfLimits> {
        if (self.min..=self.max).contains(&value) {
            Ok(value)
        } else {
            Err(OutOfLimits { limits: self, value })
        }
    }

    /// The allowed stretch in words, such as `20 to 200 rpm`.
    #[must_use]
    pub fn range(&self) -> String {
        let range = format!("{} to {} {}", self.min, self.max, self.unit);
        range.trim_end().replace('-', "\u{2212}")
    }
}

/// A value outside the limits of its quantity.
///
/// # Example
/// ```
/// use gear_math::Cadence;
/// let error = Cadence::new(5.0).unwrap_err();
/// assert_eq!((error.limits.name, error.value), ("cadence", 5.0));
/// assert_eq!(error.to_string(), "cadence must be 20 to 200 rpm");
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutOfLimits {
    /// The limits that were broken.
    pub limits: &'static Limits,
    /// The value that broke them.
    pub value: f64,
}

impl fmt::Display for OutOfLimits {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} must be {}", self.limits.name, self.limits.range())
    }
}

impl core::error::Error for OutOfLimits {}

impl OutOfLimits {
    /// Says the value too, unless that is what stands for every count too large to be one.
    pub(crate) fn with_value(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self}")?;
        if self.value < f64::from(u16::MAX) { write!(f, ", not {}", self.value) } else { Ok(()) }
    }
}

/// A quantity that is typed or measured, for whoever reads many of them alike.
///
/// # Example
/// ```
/// use gear_math::{Cadence, Circumference, Measured};
/// fn middle<T: Measured>() -> Option<T> {
///     T::measured((T::BOUNDS.min + T::BOUNDS.max) / 2.0).ok()
/// }
/// assert_eq!(middle::<Cadence>().map(Cadence::rpm), Some(110.0));
/// assert_eq!(middle::<Circumference>().map(Circumference::mm), Some(1750.0));
/// ```
pub trait Measured: Sized {
    /// What this quantity may be.
    const BOUNDS: &'static Limits;

    /// Takes a value in the base unit.
    ///
    /// # Errors
    /// [`OutOfLimits`] when the value is not a number or lies outside [`Self::BOUNDS`].
    fn measured(value: f64) -> Result<Self, OutOfLimits>;
}

/// Declares quantities that are typed or measured, each with its limits.
macro_rules! measured {
    ($($(#[$doc:meta])* $type:ident($unit_fn:ident): $name:literal, $unit:literal, $min:literal ..= $max:literal;)+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $type(f64);

        impl $type {
            /// What this quantity may be.
            pub const LIMITS: Limits = Limits { name: $name, unit: $unit, min: $min, max: $max };

            /// Takes a value in the base unit.
            ///
            /// # Errors
            /// [`OutOfLimits`] when the value is not a number or lies outside [`Self::LIMITS`].
            pub fn new(value: f64) -> Result<Self, OutOfLimits> {
                const LIMITS: &Limits = &$type::LIMITS;
                LIMITS.check(value).map(Self)
            }

            /// The value in the base unit.
            #[must_use]
            pub const fn $unit_fn(self) -> f64 {
                self.0
            }
        }

        impl $crate::Measured for $type {
            const BOUNDS: &'static Limits = &Self::LIMITS;

            fn measured(value: f64) -> Result<Self, OutOfLimits> {
                Self::new(value)
            }
        }
    )+};
}

/// Declares quantities that only computations produce.
macro_rules! derived {
    ($($(#[$doc:meta])* $type:ident($unit_fn:ident);)+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $type(f64);

        impl $type {
            pub(crate) const fn new(value: f64) -> Self {
                Self(value)
            }

            /// The value in the base unit.
            #[must_use]
            pub const fn $unit_fn(self) -> f64 {
                self.0
            }
        }
    )+};
}

/// Constants of this crate, checked against their limits when compiling.
macro_rules! known {
    ($($type:ident),+ $(,)?) => {$(
        impl $type {
            pub(super) const fn known(value: f64) -> Self {
                assert!(value >= Self::LIMITS.min && value <= Self::LIMITS.max);
                Self(value)
            }
        }
    )+};
}

/// Computed or moved values, kept inside their limits.
macro_rules! nearest {
    ($($type:ident),+ $(,)?) => {$(
        impl $type {
            pub(crate) const fn nearest(value: f64) -> Self {
                Self(value.clamp(Self::LIMITS.min, Self::LIMITS.max))
            }
        }
    )+};
}

pub(crate) use {derived, known, measured, nearest};

measured! {
    /// Pedalling rate, in revolutions of the crank per minute.
    ///
    /// # Example
    /// ```
    /// use gear_math::Cadence;
    /// assert_eq!(Cadence::new(90.0)?.rpm(), 90.0);
    /// assert!(Cadence::GRINDING < Cadence::PREFERRED);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Cadence(rpm): "cadence", "rpm", 20.0 ..= 200.0;
    /// Body mass, in kilograms. The studies behind the foot model measured adults.
    BodyMass(kg): "body mass", "kg", 30.0 ..= 150.0;
    /// Clothes, shoes, helmet and bottle on the rider, in kilograms.
    KitMass(kg): "kit", "kg", 0.0 ..= 20.0;
    /// The bicycle as it stands, mud included, in kilograms.
    BikeMass(kg): "bike mass", "kg", 4.0 ..= 30.0;
    /// Everything the rider moves when riding, in kilograms.
    TotalMass(kg): "total mass", "kg", 20.0 ..= 200.0;
    /// Distance the bicycle rolls in one turn of the wheel, in millimetres.
    ///
    /// # Example
    /// ```
    /// use gear_math::Circumference;
    /// assert!((Circumference::new(2150.0)?.diameter().mm() - 684.4).abs() < 0.1);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Circumference(mm): "wheel circumference", "mm", 500.0 ..= 3000.0;
}

derived! {
    /// Chainring teeth over sprocket teeth: turns of the wheel for one turn of the crank. A pure number.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Circumference, Gear};
    /// let ratio = Gear::new(44, 32)?.ratio();
    /// assert_eq!(ratio.value(), 1.375);
    /// assert!((ratio.development(Circumference::new(2150.0)?).m() - 2.956).abs() < 0.001);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Ratio(value);
    /// Distance covered in one turn of the crank, in metres. Also called roll-out.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Cadence, Circumference, Gear};
    /// let development = Gear::new(40, 20)?.development(Circumference::new(2100.0)?);
    /// assert_eq!(development.m(), 4.2);
    /// assert!((development.speed_at(Cadence::new(90.0)?).km_per_h() - 22.68).abs() < 0.01);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Development(m);
    /// Ratio times wheel diameter, in inches.
    ///
    /// # Example
    /// ```
    /// use gear_math::Gear;
    /// assert_eq!(Gear::new(40, 20)?.ratio().nominal_gear_inches().inches(), 54.0);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    GearInches(inches);
    /// Road speed, in metres per second.
    ///
    /// # Example
    /// ```
    /// use gear_math::Speed;
    /// let speed = Speed::from_km_per_h(18.0)?;
    /// assert_eq!(speed.m_per_s(), 5.0);
    /// assert!((speed.miles_per_h() - 11.18).abs() < 0.01);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Speed(m_per_s);
}

nearest! { BikeMass }

impl TotalMass {
    /// Rider, kit and bike together.
    #[must_use]
    pub fn of(body: BodyMass, kit: KitMass, bike: BikeMass) -> Self {
        Self(body.0 + kit.0 + bike.0)
    }
}

impl Circumference {
    /// π × diameter, for wheels whose own limits keep the result within [`Self::LIMITS`].
    pub(crate) fn around(diameter_mm: f64) -> Self {
        Self(PI * diameter_mm)
    }
}

impl Speed {
    /// What a typed speed may be, in kilometres per hour. Computed speeds have no limits.
    pub const KM_PER_H_LIMITS: Limits = Limits { name: "speed", unit: "km/h", min: 0.0, max: 150.0 };

    /// Takes a speed in kilometres per hour.
    ///
    /// # Errors
    /// [`OutOfLimits`] when the value is not a number or lies outside [`Self::KM_PER_H_LIMITS`].
    pub fn from_km_per_h(value: f64) -> Result<Self, OutOfLimits> {
        const LIMITS: &Limits = &Speed::KM_PER_H_LIMITS;
        LIMITS.check(value).map(|value| Self(value / 3.6))
    }

    /// The speed in kilometres per hour.
    #[must_use]
    pub fn km_per_h(self) -> f64 {
        self.0 * 3.6
    }

    /// The speed in miles per hour, with the international mile of 1609.344 m.
    #[must_use]
    pub fn miles_per_h(self) -> f64 {
        self.0 * 3600.0 / 1609.344
    }
}

impl Cadence {
    /// 50 rpm: the slowest that most riders can use; 60 is comfortable, 40 standing and straining (common practice).
    pub const GRINDING: Self = Self(50.0);
    /// 80 rpm: preferred on a climb, near the optimum of Dunst et al. (2024, *Front Physiol* 15:1343601).
    pub const PREFERRED: Self = Self(80.0);
    /// 115 rpm: where leg power peaks. Estimate, below Martin, Wagner & Coyle (1997, *Med Sci Sports Exerc*
    /// 29:1505–1512).
    pub const OF_PEAK_POWER: Self = Self(115.0);
    /// 120 rpm: the fastest that stays useful off-road (common practice).
    pub const SPINNING: Self = Self(120.0);
}
