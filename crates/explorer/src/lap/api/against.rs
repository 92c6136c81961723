//! A lap on one bike against that on another.

use gear_math::course::{Doubt, DrawnBand, DrawnVerdict, Turn, TurnedSide, Turner};
use serde::Serialize;
use tsify::Tsify;

/// How the bike in `against` compares with `bike`, over as many draws as were asked for.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct AgainstResult {
    /// What `against` gains on a lap, with its edges in about 9 in 10 cases: less than nothing where it is slower.
    gained_s: f64,
    gained_low_s: f64,
    gained_high_s: f64,
    verdict: VerdictName,
    /// By what of all that is doubtful it turns, what matters most first; empty where nothing does it beyond chance. 13 draws are
    /// the fewest by which anything can, 64 the best.
    turned_by: Vec<TurnedByRow>,
}

/// How two bikes compare.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum VerdictName {
    /// `bike` is quicker in nearly all draws.
    Bike,
    /// `against` is.
    Against,
    /// Nearly always less than a second apart.
    Alike,
    /// None of these.
    TooClose,
}

/// What turns who is quicker.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TurnedByRow {
    quantity: QuantityName,
    turns: TurnName,
    /// Where it turns.
    at: f64,
    /// Spearman's rank correlation with what `against` gains.
    correlation: f64,
    below: TurnedSideRow,
    above: TurnedSideRow,
}

/// Draws on one side of a value.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TurnedSideRow {
    draws: usize,
    /// Median of what `against` gains.
    gained_s: f64,
    /// Share of them in which `against` is quicker.
    against_share: f64,
    verdict: VerdictName,
}

/// What turns.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum TurnName {
    /// Who is ahead.
    Lead,
    /// Whether one is quicker in nearly all draws.
    Surety,
}

/// What is doubtful. Efficiencies and shares are from 0 to 1, powers in W, dismount and remount in s, the pins in mm, the
/// carried load and all others factors.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub enum QuantityName {
    /// Of the legs.
    GrossEfficiency,
    /// On the rolling resistance of every ground.
    Rolling,
    /// On what every ground adds on foot.
    FootGround,
    /// How much the mass of a carried bike counts.
    CarriedLoad,
    /// On this person's cost on foot.
    FootCost,
    /// Of the chain.
    DrivetrainEfficiency,
    /// At its best cadence.
    PeakPower,
    /// Of leaving the preferred cadence.
    CadenceCost,
    /// Of what is left unused.
    RepaidShare,
    /// Of strength, for minutes.
    LastingShare,
    /// Both together.
    DismountAndRemount,
    /// On the friction of the rear tyre.
    Grip,
    /// Without drawing on the reserve.
    SustainablePower,
    /// Times radius, in the chain.
    PinFriction,
}

impl AgainstResult {
    pub(super) fn of(best_s: f64, drawn: &DrawnBand, turners: &[Turner]) -> Self {
        let gained = drawn.gained.with_best(best_s);
        Self {
            gained_s: gained.time_s,
            gained_low_s: gained.low_s,
            gained_high_s: gained.high_s,
            verdict: drawn.verdict.into(),
            turned_by: turners.iter().map(TurnedByRow::from).collect(),
        }
    }
}

impl From<&Turner> for TurnedByRow {
    fn from(it: &Turner) -> Self {
        Self {
            quantity: it.doubt.into(),
            turns: if it.turn == Turn::Lead { TurnName::Lead } else { TurnName::Surety },
            at: it.at,
            correlation: it.correlation,
            below: it.below.into(),
            above: it.above.into(),
        }
    }
}

impl From<TurnedSide> for TurnedSideRow {
    fn from(it: TurnedSide) -> Self {
        let TurnedSide { count, gained_s, second_share, verdict } = it;
        Self { draws: count, gained_s, against_share: second_share, verdict: verdict.into() }
    }
}

impl From<DrawnVerdict> for VerdictName {
    fn from(verdict: DrawnVerdict) -> Self {
        match verdict {
            DrawnVerdict::First => Self::Bike,
            DrawnVerdict::Second => Self::Against,
            DrawnVerdict::Alike => Self::Alike,
            DrawnVerdict::TooClose => Self::TooClose,
        }
    }
}

impl From<Doubt> for QuantityName {
    fn from(doubt: Doubt) -> Self {
        match doubt {
            Doubt::Efficiency => Self::GrossEfficiency,
            Doubt::Rolling => Self::Rolling,
            Doubt::FootGround => Self::FootGround,
            Doubt::Load => Self::CarriedLoad,
            Doubt::FootCost => Self::FootCost,
            Doubt::Drivetrain => Self::DrivetrainEfficiency,
            Doubt::Peak => Self::PeakPower,
            Doubt::CadenceCost => Self::CadenceCost,
            Doubt::Repaid => Self::RepaidShare,
            Doubt::Lasting => Self::LastingShare,
            Doubt::Mounting => Self::DismountAndRemount,
            Doubt::Grip => Self::Grip,
            Doubt::Sustained => Self::SustainablePower,
            Doubt::Pins => Self::PinFriction,
        }
    }
}
