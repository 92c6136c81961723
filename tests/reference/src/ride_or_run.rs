//! The rider, bikes and grounds of the ride-or-run tables.

use gear_math::rider::{
    Air, BikeMass, BodyMass, Climb, FootFactor, Friction, KitMass, RidingLimits, RollingCoefficient, Slope,
    SlopeShare,
};
use gear_math::wheel::WidthFactor;
use gear_math::{
    Bike, Cassette, Chainset, Circumference, Drivetrain, Ground, Power, RideOrRun, Rider, Speed,
};
use std::error::Error;

/// Everything a reference case depends on; checks change what their row changes.
#[derive(Debug, Clone, Copy)]
pub struct Case {
    /// 70 kg with 2 kg of kit, 250 W, gross efficiency 0.23.
    pub rider: Rider,
    /// 8.5 kg, one ring and one sprocket, 2.095 m.
    pub bike: Bike,
    /// Still, 0.40 m² and 1.20 kg/m³.
    pub air: Air,
    /// Firm grass or mud.
    pub ground: Ground,
}

impl Case {
    /// The reference rider with one gear on the named ground.
    ///
    /// # Errors
    /// When gear-math refuses a value or the ground has no name here.
    pub fn new(surface: &str, ring: u16, sprocket: u16) -> Result<Self, Box<dyn Error>> {
        let drivetrain =
            Drivetrain { chainset: Chainset::new([ring])?, cassette: Cassette::new([sprocket])? };
        Ok(Self {
            rider: Rider::new(BodyMass::new(70.0)?, KitMass::new(2.0)?, Power::new(250.0)?),
            bike: Bike::new(BikeMass::new(8.5)?, drivetrain, Circumference::new(2095.0)?),
            air: Air::STILL,
            ground: ground(surface)?,
        })
    }

    /// The question with gear and energy only.
    ///
    /// # Errors
    /// When gear-math refuses the rider.
    pub fn question(&self) -> Result<RideOrRun, Box<dyn Error>> {
        Ok(RideOrRun::new(self.rider, self.bike, self.air, RidingLimits::GEAR_ONLY)?)
    }
}

fn ground(surface: &str) -> Result<Ground, Box<dyn Error>> {
    let (rolling, foot) = match surface {
        "firm_grass" => (0.03, 1.1),
        "mud" => (0.08, 1.5),
        _ => return Err(format!("no ground called {surface}").into()),
    };
    Ok(Ground {
        rolling: RollingCoefficient::new(rolling)?,
        width: WidthFactor::NONE,
        foot: FootFactor::new(foot)?,
        slope_share: SlopeShare::FIXED,
        friction: Friction::new(0.5)?,
    })
}

/// A gradient of a table, which writes rise over run.
///
/// # Errors
/// When it lies outside the model.
pub fn climb(rise_over_run: f64) -> Result<Climb, Box<dyn Error>> {
    Ok(Climb::new(rise_over_run * 100.0)?)
}

/// A speed of a table, which writes metres per second.
///
/// # Errors
/// When it lies outside the limits of speed.
pub fn speed(m_per_s: f64) -> Result<Speed, Box<dyn Error>> {
    Ok(Speed::from_km_per_h(m_per_s * 3.6)?)
}

/// `Ok` when a gradient agrees, or is missing on both sides; tables write `none_up_to_0.45` for a missing one.
///
/// # Errors
/// When the two differ by more than `tolerance`.
pub fn same_gradient(what: &str, found: Option<Slope>, expected: &str, tolerance: f64) -> Result<(), String> {
    match (found, expected.parse::<f64>()) {
        (Some(found), Ok(expected)) => crate::close(what, found.rise_over_run(), expected, tolerance),
        (None, Err(_)) if expected == "none_up_to_0.45" => Ok(()),
        _ => Err(format!("{what}: found {found:?}, expected {expected}")),
    }
}
