//! Whether a derailleur takes a set-up, by its maker's figures.

use crate::api::objects::{RingAndSprocket, derailleur, drivetrain, input, output};
use crate::chain::words::findings::reason;
use gear_math::cage::CageFinding;
use gear_math::{CageVerdict, Derailleur};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What `cageCheck` takes. A limit that is left out is not checked.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CageCheckInput {
    rings: Vec<u16>,
    sprockets: Vec<u16>,
    #[tsify(optional)]
    total_capacity_teeth: Option<u16>,
    #[tsify(optional)]
    largest_sprocket_teeth: Option<u16>,
    #[tsify(optional)]
    smallest_sprocket_teeth: Option<u16>,
    #[tsify(optional)]
    chainring_difference_teeth: Option<u16>,
}

/// What `cageCheck` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct CageCheckResult {
    /// Ring difference plus sprocket difference.
    needed_teeth: u16,
    /// Capacity left over, negative when short; null when the derailleur's is not given.
    spare_teeth: Option<i32>,
    verdict: Verdict,
    findings: Vec<Finding>,
}

/// The answer in one word.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Every limit is kept, total capacity and largest sprocket among them.
    Fits,
    /// The limits given are kept, but total capacity or largest sprocket is not given.
    FitsAsFarAsKnown,
    /// No limit was given.
    Unknown,
    /// It fits if the gears named in the findings are never used.
    FitsIfGearsAvoided,
    /// At least one limit is broken.
    DoesNotFit,
}

/// One thing found wrong.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct Finding {
    kind: FindingKind,
    /// The finding in words.
    message: String,
    /// Gears to avoid: the chain hangs in them.
    gears: Vec<RingAndSprocket>,
    /// Total capacity to ask for, when a longer cage is needed.
    ask_for_teeth: Option<u16>,
}

/// What kind of thing was found.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum FindingKind {
    /// The largest sprocket is too large for the derailleur.
    SprocketTooLarge,
    /// The smallest sprocket is too small for it.
    SprocketTooSmall,
    /// The rings differ by too much.
    RingDifferenceTooLarge,
    /// Some gears must never be used.
    AvoidGears,
    /// The cage is too short.
    LongerCage,
}

/// Total capacity needed against a derailleur's stated limits.
///
/// # Errors
/// When a ring, a sprocket or a limit is outside what is possible.
#[wasm_bindgen(js_name = cageCheck, unchecked_return_type = "CageCheckResult")]
pub fn cage_check(
    #[wasm_bindgen(unchecked_param_type = "CageCheckInput")] asked: JsValue,
) -> Result<JsValue, JsError> {
    let asked: CageCheckInput = input(asked)?;
    let drivetrain = drivetrain(&asked.rings, &asked.sprockets)?;
    let check = asked.derailleur()?.check(&drivetrain);
    output(&CageCheckResult {
        needed_teeth: check.needed,
        spare_teeth: check.spare,
        verdict: check.verdict.into(),
        findings: check.findings.iter().map(Finding::new).collect(),
    })
}

impl CageCheckInput {
    fn derailleur(&self) -> Result<Derailleur, JsError> {
        derailleur(
            self.total_capacity_teeth,
            [self.largest_sprocket_teeth, self.smallest_sprocket_teeth],
            self.chainring_difference_teeth,
        )
    }
}

impl From<CageVerdict> for Verdict {
    fn from(verdict: CageVerdict) -> Self {
        match verdict {
            CageVerdict::Fits => Self::Fits,
            CageVerdict::FitsAsFarAsKnown => Self::FitsAsFarAsKnown,
            CageVerdict::Unknown => Self::Unknown,
            CageVerdict::FitsIfGearsAvoided => Self::FitsIfGearsAvoided,
            CageVerdict::DoesNotFit => Self::DoesNotFit,
        }
    }
}

impl Finding {
    fn new(found: &CageFinding) -> Self {
        let (kind, gears, ask_for_teeth) = match found {
            CageFinding::SprocketTooLarge { .. } => (FindingKind::SprocketTooLarge, &[][..], None),
            CageFinding::SprocketTooSmall { .. } => (FindingKind::SprocketTooSmall, &[][..], None),
            CageFinding::RingDifferenceTooLarge { .. } => {
                (FindingKind::RingDifferenceTooLarge, &[][..], None)
            }
            CageFinding::AvoidGears { gears, .. } => (FindingKind::AvoidGears, &gears[..], None),
            CageFinding::LongerCage { slack_gears, ask_for, .. } => {
                (FindingKind::LongerCage, &slack_gears[..], Some(*ask_for))
            }
        };
        let gears = gears.iter().map(|&gear| gear.into()).collect();
        Self { kind, message: reason(found), gears, ask_for_teeth }
    }
}
