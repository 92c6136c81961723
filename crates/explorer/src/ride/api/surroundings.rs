//! Ground, air and what ends riding, as plain objects.

use crate::ride::api::given::given;
use gear_math::rider::{
    Air, AirDensity, DragArea, FootDrag, FootFactor, Friction, PeakPower, RidingLimits, RollingCoefficient,
    SlopeShare,
};
use gear_math::wheel::{MountedWidth, WidthFactor};
use gear_math::{Ground, Rider, Surface};
use serde::Deserialize;
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// The ground.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GroundInput {
    /// What the other values are taken from where they are left out, named as in a course; firm grass when left out.
    #[tsify(optional)]
    surface: Option<String>,
    /// Rolling coefficient of the tyres as they are; the surface's under tyres of that width when left out, 0.03 on firm
    /// grass.
    #[tsify(optional)]
    crr: Option<f64>,
    /// Cost on foot over that of hard ground, on the level; the surface's when left out, 1.1 on firm grass.
    #[tsify(optional)]
    foot_factor: Option<f64>,
    /// How far that extra cost grows with the slope, 0 to 1; 0 when left out.
    #[tsify(optional)]
    slope_share: Option<f64>,
    /// Friction of the rear tyre; the surface's when left out, 0.5 on firm grass.
    #[tsify(optional)]
    friction_mu: Option<f64>,
}

/// Still air and the rider in it.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct AirInput {
    /// Drag area; 0.4 when left out.
    #[tsify(optional)]
    cda_m2: Option<f64>,
    /// 1.2 when left out.
    #[tsify(optional)]
    density_kg_m3: Option<f64>,
    /// Air drag on foot per kilogram of body, J·s²/(kg·m³); 0.01 when left out.
    #[tsify(optional)]
    foot_drag_per_kg: Option<f64>,
}

/// Which limits count besides the lowest gear; each one does when left out. With all off, gear and energy decide.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LimitsInput {
    /// Too slow for balance, below 1.2 m/s.
    #[tsify(optional)]
    balance: Option<bool>,
    /// The rear wheel slips.
    #[tsify(optional)]
    grip: Option<bool>,
    /// The legs are too weak to turn the lowest gear for minutes. Their peak is the rider's; an estimate when left out: 14 W per
    /// kg of body, or four times the power where that is more.
    #[tsify(optional)]
    force: Option<bool>,
}

impl GroundInput {
    pub(crate) fn ground(&self, tyre: MountedWidth) -> Result<Ground, JsError> {
        let surface = self.surface.as_deref().map_or(Ok(Surface::FirmGrass), surface)?;
        let typical = surface.ground_under(tyre);
        Ok(Ground {
            width: if self.crr.is_some() { WidthFactor::NONE } else { typical.width },
            rolling: given(self.crr, RollingCoefficient::new, typical.rolling)?,
            foot: given(self.foot_factor, FootFactor::new, typical.foot)?,
            slope_share: given(self.slope_share, SlopeShare::new, typical.slope_share)?,
            friction: given(self.friction_mu, Friction::new, typical.friction)?,
        })
    }
}

impl AirInput {
    pub(crate) fn air(&self) -> Result<Air, JsError> {
        Ok(Air {
            drag_area: given(self.cda_m2, DragArea::new, Air::STILL.drag_area)?,
            density: given(self.density_kg_m3, AirDensity::new, Air::STILL.density)?,
            foot_drag: given(self.foot_drag_per_kg, FootDrag::new, Air::STILL.foot_drag)?,
            ..Air::STILL
        })
    }
}

impl LimitsInput {
    /// With the peak power of the legs, where it is known.
    pub(crate) fn limits(&self, rider: &Rider, peak: Option<PeakPower>) -> RidingLimits {
        let counts = |switch: &Option<bool>| switch.unwrap_or(true);
        let mut all = RidingLimits::all(rider);
        if let (Some(legs), Some(peak)) = (&mut all.force, peak) {
            legs.peak = peak;
        }
        RidingLimits {
            balance: all.balance.filter(|_| counts(&self.balance)),
            grip: all.grip.filter(|_| counts(&self.grip)),
            force: all.force.filter(|_| counts(&self.force)),
        }
    }
}

/// A ground by its name.
pub(crate) fn surface(name: &str) -> Result<Surface, JsError> {
    let known = || Surface::ALL.map(Surface::name).join(", ");
    Surface::named(name)
        .ok_or_else(|| JsError::new(&format!("there is no ground “{name}”; there are {}", known())))
}
