//! Parts worth buying beside a box.

use crate::lap::api::fitting_row::{FitName, avoided};
use gear_math::parts::{Purchase, RearDerailleur, UsualPart};
use gear_math::{Cassette, Chainring, Chainset, Sprocket, TotalCapacity};
use serde::Serialize;
use tsify::Tsify;

/// Parts to buy together.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct PurchaseRow {
    parts: Vec<PartRow>,
    /// The set-up that they make with what is in the box.
    rings: Vec<u16>,
    sprockets: Vec<u16>,
    /// The rear derailleur of the box that shifts it; null where that is bought, or the box has none.
    derailleur: Option<usize>,
    verdict: FitName,
    links: u16,
    chain: Option<usize>,
    gears_to_avoid: Vec<[u16; 2]>,
    lap_s: f64,
    /// What it gains over the first of `fitting`, with its edges in about 9 in 10 cases; null where nothing fits.
    gain_s: Option<f64>,
    gain_low_s: Option<f64>,
    gain_high_s: Option<f64>,
}

impl PurchaseRow {
    pub(super) fn of(purchase: &Purchase) -> Self {
        let Purchase { parts, fit, own_derailleur, time_s, gained } = purchase;
        Self {
            parts: parts.iter().map(PartRow::of).collect(),
            rings: rings(&fit.drivetrain.chainset),
            sprockets: sprockets(&fit.drivetrain.cassette),
            derailleur: *own_derailleur,
            verdict: fit.verdict.into(),
            links: fit.links.count(),
            chain: fit.chain,
            gears_to_avoid: avoided(fit),
            lap_s: *time_s,
            gain_s: gained.map(|it| it.time_s),
            gain_low_s: gained.map(|it| it.low_s),
            gain_high_s: gained.map(|it| it.high_s),
        }
    }
}

/// A usual part, by its teeth: either `chainset`, `cassette` or `derailleur`.
#[derive(Debug, Default, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct PartRow {
    /// Its rings.
    chainset: Option<Vec<u16>>,
    /// The one ring of these to buy, where a chainset of the box has the others; a single goes on any of them.
    ring: Option<u16>,
    /// Its sprockets.
    cassette: Option<Vec<u16>>,
    /// The least that a rear derailleur has to take.
    derailleur: Option<TakenRow>,
}

impl PartRow {
    pub(super) fn of(part: &UsualPart) -> Self {
        match part {
            UsualPart::Chainset { chainset, ring } => {
                Self { chainset: Some(rings(chainset)), ring: ring.map(Chainring::teeth), ..Self::default() }
            }
            UsualPart::Cassette(cassette) => Self { cassette: Some(sprockets(cassette)), ..Self::default() },
            UsualPart::Derailleur(RearDerailleur { figures, .. }) => {
                let total_capacity_teeth = figures.total_capacity.map(TotalCapacity::teeth);
                let largest_sprocket_teeth = figures.largest_sprocket.map(Sprocket::teeth);
                let taken = TakenRow { total_capacity_teeth, largest_sprocket_teeth };
                Self { derailleur: Some(taken), ..Self::default() }
            }
        }
    }
}

/// What a rear derailleur takes.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct TakenRow {
    total_capacity_teeth: Option<u16>,
    largest_sprocket_teeth: Option<u16>,
}

fn rings(chainset: &Chainset) -> Vec<u16> {
    chainset.rings().iter().map(|ring| ring.teeth()).collect()
}

fn sprockets(cassette: &Cassette) -> Vec<u16> {
    cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).collect()
}
