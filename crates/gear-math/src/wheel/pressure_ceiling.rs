//! How high a tyre may be pumped.

use crate::wheel::both_units::{in_both_units, rounded_down};
use crate::wheel::quantity::Pressure;
use core::fmt;

/// The pressures that tyre and rim are marked with.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PressureMarks {
    /// The highest, on the tyre's sidewall.
    pub tyre: Option<Pressure>,
    /// The highest, on the rim or in its papers.
    pub rim: Option<Pressure>,
    /// The lowest, on either.
    pub least: Option<Pressure>,
    /// Whether the rim is hookless.
    pub hookless: bool,
}

/// The highest pressure, and why.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureCeiling {
    /// The pressure.
    pub pressure: Pressure,
    /// Why it may not be higher.
    pub reason: CeilingReason,
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

/// ETRTO, hookless rims, as two makers state it.
const HOOKLESS: Pressure = Pressure::computed_bar(5.0);

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
        write!(f, "{}: {}", self.reason, in_both_units(self.pressure, rounded_down))
    }
}
