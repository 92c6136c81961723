//! Verdicts and reasons by name.

use gear_math::rider::Advice;
use serde::Serialize;
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What to do about a climb.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum AdviceName {
    /// Ride it at the power of the effort.
    Ride,
    /// Carry the speed brought to it.
    Carry,
    /// Force a gear that the power does not turn.
    Force,
    /// Riding and running are about as quick.
    TooClose,
    /// Get off and run.
    Run,
}

/// How the rider moves on foot.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum GaitName {
    /// Running.
    Run,
    /// Walking.
    Walk,
}

/// What ends riding.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum ReasonName {
    /// The lowest gear is too tall.
    Gear,
    /// The legs are too weak.
    Force,
    /// Too slow for balance.
    Balance,
    /// The rear wheel slips.
    Grip,
    /// Being on foot is as fast for the same energy.
    Energy,
}

/// Ride or run, as far as can be told.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum RideVerdict {
    /// Riding is faster.
    Ride,
    /// Being on foot is faster.
    Foot,
    /// A limit leaves no choice.
    FootForced,
    /// The uncertainty covers both.
    TooClose,
}

impl From<Advice> for AdviceName {
    fn from(advice: Advice) -> Self {
        match advice {
            Advice::Ride => Self::Ride,
            Advice::Carry => Self::Carry,
            Advice::Force => Self::Force,
            Advice::TooClose => Self::TooClose,
            Advice::Run => Self::Run,
        }
    }
}

impl From<gear_math::rider::Reason> for ReasonName {
    fn from(reason: gear_math::rider::Reason) -> Self {
        match reason {
            gear_math::rider::Reason::Gear => Self::Gear,
            gear_math::rider::Reason::Force => Self::Force,
            gear_math::rider::Reason::Balance => Self::Balance,
            gear_math::rider::Reason::Grip => Self::Grip,
            gear_math::rider::Reason::Energy => Self::Energy,
        }
    }
}

impl From<gear_math::rider::Verdict> for RideVerdict {
    fn from(verdict: gear_math::rider::Verdict) -> Self {
        match verdict {
            gear_math::rider::Verdict::Ride => Self::Ride,
            gear_math::rider::Verdict::Foot => Self::Foot,
            gear_math::rider::Verdict::FootForced => Self::FootForced,
            gear_math::rider::Verdict::TooClose => Self::TooClose,
        }
    }
}
