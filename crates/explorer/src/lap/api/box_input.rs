//! A box of parts and the bike that they go on, as plain objects.

use crate::api::objects::{derailleur, thrown};
use crate::ride::api::given::given;
use gear_math::chain::{BottomBracketDrop, ChainMeasure, ChainstayLength, FrameMeasures, PulleyCentres};
use gear_math::gears::RingDifference;
use gear_math::parts::{BareBike, FrontDerailleur, PartsBox, RearDerailleur};
use gear_math::{Bike, Cassette, ChainLinks, Chainring, Chainset};
use serde::Deserialize;
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// A box of parts. What is left out or empty is said at each.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BoxInput {
    /// Each by the teeth of its one to three rings; those of the bike when left out.
    #[tsify(optional)]
    chainsets: Option<Vec<Vec<u16>>>,
    /// Each by its sprockets, ascending; that of the bike when left out.
    #[tsify(optional)]
    cassettes: Option<Vec<Vec<u16>>>,
    /// Rear derailleurs; one of which nothing is known when left out, so that it is not checked.
    #[tsify(optional)]
    derailleurs: Option<Vec<DerailleurInput>>,
    /// Front derailleurs, for two and three rings; the front is not checked when left out.
    #[tsify(optional)]
    front_derailleurs: Option<Vec<FrontInput>>,
    /// Chains, each by an even number of links, inner and outer counted alike; none when left out.
    #[tsify(optional)]
    chain_links: Option<Vec<u16>>,
}

/// A rear derailleur. A limit that is left out is not checked.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct DerailleurInput {
    #[tsify(optional)]
    total_capacity_teeth: Option<u16>,
    #[tsify(optional)]
    largest_sprocket_teeth: Option<u16>,
    #[tsify(optional)]
    smallest_sprocket_teeth: Option<u16>,
    /// Most teeth between the rings, where its maker states that.
    #[tsify(optional)]
    chainring_difference_teeth: Option<u16>,
    /// The length of its cage; as its capacity asks for when left out.
    #[tsify(optional)]
    pulley_centres_mm: Option<f64>,
}

/// A front derailleur. A limit that is left out is not checked.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FrontInput {
    /// The largest ring it is made for; up to 4 teeth fewer do.
    #[tsify(optional)]
    largest_ring_teeth: Option<u16>,
    /// Most teeth between the rings.
    #[tsify(optional)]
    chainring_difference_teeth: Option<u16>,
}

/// What the bike asks of parts that go on it.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct MountInput {
    /// Bottom bracket to rear axle; a usual one when left out.
    #[tsify(optional)]
    chainstay_mm: Option<f64>,
    /// Bottom bracket below the rear axle; usual when left out.
    #[tsify(optional)]
    bottom_bracket_drop_mm: Option<f64>,
    /// The largest ring the frame clears; not checked when left out.
    #[tsify(optional)]
    largest_ring_teeth: Option<u16>,
    /// For how many sprockets the shifter is made; not checked when left out.
    #[tsify(optional)]
    sprocket_count: Option<usize>,
}

impl BoxInput {
    pub(super) fn parts(&self, bike: &Bike) -> Result<PartsBox, JsError> {
        let own = bike.drivetrain;
        Ok(PartsBox {
            chainsets: each(&self.chainsets, |teeth| Chainset::new(teeth.iter().copied()).map_err(thrown))?
                .unwrap_or_else(|| vec![own.chainset]),
            cassettes: each(&self.cassettes, |teeth| Cassette::new(teeth.iter().copied()).map_err(thrown))?
                .unwrap_or_else(|| vec![own.cassette]),
            derailleurs: each(&self.derailleurs, DerailleurInput::rear)?.unwrap_or_default(),
            front_derailleurs: each(&self.front_derailleurs, FrontInput::front)?.unwrap_or_default(),
            chains: each(&self.chain_links, |links| ChainLinks::new(*links).map_err(thrown))?
                .unwrap_or_default(),
            tyres: Vec::new(),
        })
    }
}

/// Every one of a list, where there is one.
fn each<T, U>(
    all: &Option<Vec<T>>,
    read: impl Fn(&T) -> Result<U, JsError>,
) -> Result<Option<Vec<U>>, JsError> {
    all.as_ref().map(|all| all.iter().map(read).collect()).transpose()
}

impl DerailleurInput {
    fn rear(&self) -> Result<RearDerailleur, JsError> {
        let sprockets = [self.largest_sprocket_teeth, self.smallest_sprocket_teeth];
        let figures = derailleur(self.total_capacity_teeth, sprockets, self.chainring_difference_teeth)?;
        let pulley_centres = self.pulley_centres_mm.map(PulleyCentres::new).transpose().map_err(thrown)?;
        Ok(RearDerailleur { figures, pulley_centres })
    }
}

impl FrontInput {
    fn front(&self) -> Result<FrontDerailleur, JsError> {
        Ok(FrontDerailleur {
            largest_ring: self.largest_ring_teeth.map(Chainring::new).transpose().map_err(thrown)?,
            difference: self
                .chainring_difference_teeth
                .map(RingDifference::new)
                .transpose()
                .map_err(thrown)?,
        })
    }
}

impl MountInput {
    /// The bike without its gears; those that it avoids are avoided whichever set-up has them.
    pub(super) fn bare(&self, bike: &Bike) -> Result<BareBike, JsError> {
        let usual = BareBike::usual();
        let is_left_empty = |it: &ChainMeasure| match it {
            ChainMeasure::Chainstay => self.chainstay_mm.is_none(),
            ChainMeasure::BottomBracketDrop => self.bottom_bracket_drop_mm.is_none(),
            _ => true,
        };
        Ok(BareBike {
            frame: FrameMeasures {
                chainstay: given(self.chainstay_mm, ChainstayLength::new, usual.frame.chainstay)?,
                bottom_bracket_drop: given(
                    self.bottom_bracket_drop_mm,
                    BottomBracketDrop::new,
                    usual.frame.bottom_bracket_drop,
                )?,
            },
            unmeasured: usual.unmeasured.iter().filter(|it| is_left_empty(it)).copied().collect(),
            largest_ring: self.largest_ring_teeth.map(Chainring::new).transpose().map_err(thrown)?,
            sprockets: self.sprocket_count,
            switched_off: bike.avoid.gears(&bike.drivetrain).collect(),
            ..usual
        })
    }
}
