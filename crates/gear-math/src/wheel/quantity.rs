//! Quantities that belong to the wheel alone.

use crate::quantity::Circumference;
use crate::quantity::{Limits, OutOfLimits, derived, measured, nearest};
use crate::typed::Unit;
use core::f64::consts::PI;

measured! {
    /// Width of a tyre as its designation has it, in millimetres. Limits: common practice, from the narrowest
    /// road tyre to a wide trail tyre.
    NominalWidth(mm): "tyre width", "mm", 18.0 ..= 65.0;
}

derived! {
    /// Diameter of the wheel over the tyre, in millimetres.
    WheelDiameter(mm);
    /// How far an estimated roll-out may be off either way, in percent of it.
    EstimateError(percent);
    /// By how much a measured roll-out exceeds the estimate, in percent of the estimate; negative when shorter.
    RollOutDeviation(percent);
}

impl Circumference {
    /// Diameter of the circle with this circumference.
    #[must_use]
    pub fn diameter(self) -> WheelDiameter {
        WheelDiameter::new(self.mm() / PI)
    }
}

measured! {
    /// Width between a rim's side walls, in millimetres. Limits: estimate.
    RimInnerWidth(mm): "rim inner width", "mm", 10.0 ..= 45.0;
    /// Width of an inflated tyre on its rim at the widest point, in millimetres. Limits: what
    /// [`NominalWidth`] and [`RimInnerWidth`] can lead to.
    MountedWidth(mm): "mounted tyre width", "mm", 14.0 ..= 80.0;
    /// Axle to the outside of the unloaded tyre, in millimetres. Limits: estimate.
    WheelRadius(mm): "wheel radius over the tyre", "mm", 150.0 ..= 400.0;
    /// Widest tyre that a race allows, in millimetres. Limits: estimate.
    RaceLimit(mm): "race limit for the tyre", "mm", 25.0 ..= 60.0;
    /// Force of one wheel on the ground, in newtons. Limits: estimate.
    WheelLoad(newtons): "load on the wheel", "N", 20.0 ..= 3000.0;
    /// Pressure in a tyre above the air outside, in bar. Limits: estimate.
    ///
    /// # Example
    /// ```
    /// use gear_math::Pressure;
    /// assert!((Pressure::from_psi(28.0)?.bar() - 1.931).abs() < 0.001);
    /// assert!((Pressure::new(1.7)?.psi() - 24.66).abs() < 0.01);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    Pressure(bar): "tyre pressure", "bar", 0.3 ..= 12.0;
    /// Part of the weight that the front wheel carries, of 1. Limits: ISO 4210-2 asks for at least 0.25.
    FrontShare(fraction): "front share of the weight", "", 0.2 ..= 0.7;
}

nearest! { FrontShare }

impl MountedWidth {
    /// 33 mm: what the rolling resistances of [`Surface`](crate::rider::Surface) belong to, and the widest that the UCI allows for
    /// cross.
    pub const CROSS: Self = Self(33.0);

    /// For widths computed from quantities whose limits keep the result within [`Self::LIMITS`].
    pub(crate) const fn computed(mm: f64) -> Self {
        Self(mm)
    }
}

impl RimInnerWidth {
    /// For rims taken from a table or rule, whose results stay within [`Self::LIMITS`].
    pub(crate) const fn tabled(mm: f64) -> Self {
        Self(mm)
    }
}

impl WheelRadius {
    /// For wheels whose size keeps the radius within [`Self::LIMITS`].
    pub(crate) const fn computed(mm: f64) -> Self {
        Self(mm)
    }
}

impl RaceLimit {
    /// 33 mm: UCI 1.3.018, since 1 July 2010.
    pub const UCI: Self = Self(33.0);
    /// 35 mm: some national rules.
    pub const MM_35: Self = Self(35.0);
    /// 38 mm: some national rules.
    pub const MM_38: Self = Self(38.0);
    /// The limits in use. Which one holds, the organiser knows.
    pub const CHOICES: [Self; 3] = [Self::UCI, Self::MM_35, Self::MM_38];
}

impl FrontShare {
    /// 0.45: recreational riders on scales, known at second hand only; 0.40 is quoted as well. Estimate, because neither was
    /// measured on cyclo-cross bikes.
    pub const USUAL: Self = Self(0.45);
}

impl Pressure {
    /// What a pressure typed in psi may be.
    pub const PSI_LIMITS: Limits = Limits { name: "tyre pressure", unit: "psi", min: 5.0, max: 174.0 };

    /// Takes a pressure in psi.
    ///
    /// # Errors
    /// [`OutOfLimits`] when the value is not a number or lies outside [`Self::PSI_LIMITS`].
    pub fn from_psi(value: f64) -> Result<Self, OutOfLimits> {
        const LIMITS: &Limits = &Pressure::PSI_LIMITS;
        LIMITS.check(value).map(Self::computed_psi)
    }

    /// The pressure in psi.
    #[must_use]
    pub fn psi(self) -> f64 {
        self.0 / Unit::Psi.worth()
    }

    /// For pressures from a rule or formula, which may lie outside what can be typed.
    pub(crate) const fn computed_psi(psi: f64) -> Self {
        Self(psi * Unit::Psi.worth())
    }

    /// For pressures from a rule or formula, which may lie outside what can be typed.
    pub(crate) const fn computed_bar(bar: f64) -> Self {
        Self(bar)
    }
}

impl WheelLoad {
    /// For loads computed from masses whose limits keep the result within [`Self::LIMITS`].
    pub(crate) const fn computed(newtons: f64) -> Self {
        Self(newtons)
    }
}
