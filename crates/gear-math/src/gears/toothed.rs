//! Toothed wheels and differences between them, all counted in teeth.

use crate::quantity::{Limits, OutOfLimits};
use core::fmt;

macro_rules! toothed {
    ($($(#[$doc:meta])* $type:ident: $name:literal, $min:literal ..= $max:literal;)+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $type(u16);

        impl $type {
            /// How many teeth there may be.
            pub const LIMITS: Limits = Limits { name: $name, unit: "teeth", min: $min, max: $max };

            /// Takes a number of teeth.
            ///
            /// # Errors
            /// [`OutOfLimits`] when `teeth` lies outside [`Self::LIMITS`].
            pub fn new(teeth: u16) -> Result<Self, OutOfLimits> {
                const LIMITS: &Limits = &$type::LIMITS;
                LIMITS.check(f64::from(teeth)).map(|_| Self(teeth))
            }

            /// Number of teeth.
            #[must_use]
            pub const fn teeth(self) -> u16 {
                self.0
            }
        }

        impl fmt::Display for $type {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    )+};
}

toothed! {
    /// A ring on the crank, named by its teeth. Limits: common practice.
    ///
    /// # Example
    /// ```
    /// use gear_math::Chainring;
    /// assert_eq!(Chainring::new(44)?.teeth(), 44);
    /// assert!(Chainring::new(12).is_err());
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Chainring: "chainring", 20.0 ..= 60.0;
    /// A sprocket of the cassette, named by its teeth. Limits: common practice.
    ///
    /// # Example
    /// ```
    /// use gear_math::Sprocket;
    /// assert_eq!(Sprocket::new(34)?.to_string(), "34");
    /// assert!(Sprocket::new(8).is_err());
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Sprocket: "sprocket", 9.0 ..= 60.0;
    /// A pulley of the rear derailleur, named by its teeth. Limits: common practice.
    Pulley: "pulley", 8.0 ..= 20.0;
    /// Total capacity of a rear derailleur as its maker states it: the difference in teeth, front and rear added,
    /// over which the cage keeps the chain tight. Limits: estimate, twice the range seen in print.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Drivetrain, TotalCapacity};
    /// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    /// assert!(TotalCapacity::new(37)?.teeth() > bike.needed_capacity());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    TotalCapacity: "total capacity", 5.0 ..= 91.0;
    /// Difference between the largest and the smallest ring that a front derailleur spans as its maker states it.
    /// Limits: what [`Chainring::LIMITS`] allow.
    RingDifference: "chainring difference", 0.0 ..= 40.0;
}

impl Pulley {
    /// A constant of this crate, checked against the limits when compiling.
    pub(crate) const fn known(teeth: u16) -> Self {
        assert!(teeth as f64 >= Self::LIMITS.min && teeth as f64 <= Self::LIMITS.max);
        Self(teeth)
    }
}
