//! The bike as a plain object.

use crate::api::objects::{drivetrain, thrown};
use crate::ride::api::given::given;
use gear_math::gears::GearSet;
use gear_math::rider::{BikeMass, DrivetrainEfficiency, LoadFactor};
use gear_math::wheel::MountedWidth;
use gear_math::{Bike, Circumference};
use serde::Deserialize;
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Circumference of the model's reference wheel, mm.
const REFERENCE_WHEEL_MM: f64 = 2095.0;

/// The bike.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BikeInput {
    mass_kg: f64,
    /// Teeth of one to three chainrings.
    rings: Vec<u16>,
    /// Teeth of one to fourteen sprockets, ascending.
    sprockets: Vec<u16>,
    /// 2095 when left out.
    #[tsify(optional)]
    circumference_mm: Option<f64>,
    /// Width of the tyres as mounted, which counts on mud, deep mud and loose sand; 33 when left out.
    #[tsify(optional)]
    tyre_width_mm: Option<f64>,
    /// Share of the power that reaches the wheel; 0.96 when left out.
    #[tsify(optional)]
    drivetrain_efficiency: Option<f64>,
    /// What a kilogram of carried bike costs over one of body; 1.2 when left out.
    #[tsify(optional)]
    carried_load_factor: Option<f64>,
    /// Gears that are never used, each as its ring and its sprocket; all are used when left out, and when none would be
    /// left.
    #[tsify(optional)]
    gears_to_avoid: Option<Vec<[u16; 2]>>,
}

impl BikeInput {
    pub(crate) fn bike(&self) -> Result<Bike, JsError> {
        let wheel =
            Circumference::new(self.circumference_mm.unwrap_or(REFERENCE_WHEEL_MM)).map_err(thrown)?;
        let mass = BikeMass::new(self.mass_kg).map_err(thrown)?;
        let bike = Bike::new(mass, drivetrain(&self.rings, &self.sprockets)?, wheel);
        let mut avoid = self.gears_to_avoid.iter().flatten().copied();
        let avoid = avoid.try_fold(GearSet::NONE, |all, gear| all.with(&bike.drivetrain, gear));
        Ok(Bike {
            avoid: avoid.map_err(thrown)?,
            tyre: given(self.tyre_width_mm, MountedWidth::new, bike.tyre)?,
            efficiency: given(self.drivetrain_efficiency, DrivetrainEfficiency::new, bike.efficiency)?,
            load: given(self.carried_load_factor, LoadFactor::new, bike.load)?,
            ..bike
        })
    }
}
