//! The JavaScript module: plain objects in, plain objects out, the unit in every name.

use crate::api::misfit;
use crate::api::strict::Strict;
use gear_math::gears::RingDifference;
use gear_math::{
    Cassette, Chainset, Circumference, Derailleur, Drivetrain, Gear, Setup, Sprocket, TotalCapacity,
};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use std::fmt::Display;
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// A chainring and a sprocket.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RingAndSprocket {
    /// Teeth of the chainring.
    pub(crate) ring: u16,
    /// Teeth of the sprocket.
    pub(crate) sprocket: u16,
}

impl From<Gear> for RingAndSprocket {
    fn from(gear: Gear) -> Self {
        Self { ring: gear.ring.teeth(), sprocket: gear.sprocket.teeth() }
    }
}

/// A gear of set-up or ring A and one of B that are nearly the same.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GearPair {
    ring_a: u16,
    sprocket_a: u16,
    ring_b: u16,
    sprocket_b: u16,
    /// How far apart the two are: larger over smaller development, less one.
    difference_percent: f64,
}

impl GearPair {
    pub(crate) fn new(a: Gear, b: Gear, step: gear_math::gears::GearStep) -> Self {
        Self {
            ring_a: a.ring.teeth(),
            sprocket_a: a.sprocket.teeth(),
            ring_b: b.ring.teeth(),
            sprocket_b: b.sprocket.teeth(),
            difference_percent: step.percent(),
        }
    }
}

/// Rings and sprockets, and the wheel they turn.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SetUpInput {
    /// Teeth of one to three chainrings, in any order.
    rings: Vec<u16>,
    /// Teeth of one to fourteen sprockets, ascending.
    sprockets: Vec<u16>,
    /// Distance the wheel rolls in one turn.
    circumference_mm: f64,
}

impl SetUpInput {
    pub(crate) fn set_up(&self) -> Result<Setup, JsError> {
        let wheel = Circumference::new(self.circumference_mm).map_err(thrown)?;
        Ok(Setup::new(drivetrain(&self.rings, &self.sprockets)?, wheel))
    }
}

pub(crate) fn drivetrain(rings: &[u16], sprockets: &[u16]) -> Result<Drivetrain, JsError> {
    Ok(Drivetrain {
        chainset: Chainset::new(rings.iter().copied()).map_err(thrown)?,
        cassette: Cassette::new(sprockets.iter().copied()).map_err(thrown)?,
    })
}

/// A derailleur by what its maker states of it, as far as that is given; of sprockets the largest and the smallest.
pub(crate) fn derailleur(
    capacity: Option<u16>,
    sprockets: [Option<u16>; 2],
    difference: Option<u16>,
) -> Result<Derailleur, JsError> {
    let sprocket = |teeth: Option<u16>| teeth.map(Sprocket::new).transpose().map_err(thrown);
    let [largest, smallest] = sprockets;
    Ok(Derailleur {
        total_capacity: capacity.map(TotalCapacity::new).transpose().map_err(thrown)?,
        largest_sprocket: sprocket(largest)?,
        smallest_sprocket: sprocket(smallest)?,
        ring_difference: difference.map(RingDifference::new).transpose().map_err(thrown)?,
    })
}

/// An error of gear-math as a JavaScript error with its message.
pub(crate) fn thrown(error: impl Display) -> JsError {
    JsError::new(&error.to_string())
}

pub(crate) fn input<T: DeserializeOwned>(value: JsValue) -> Result<T, JsError> {
    T::deserialize(Strict::given(value)).map_err(|error| {
        let what = misfit::placed("", &error.to_string());
        thrown(format!("the input is not of the form that the types describe: {what}"))
    })
}

pub(crate) fn output<T: Serialize>(value: &T) -> Result<JsValue, JsError> {
    value.serialize(&serde_wasm_bindgen::Serializer::json_compatible()).map_err(thrown)
}
