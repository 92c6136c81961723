//! Braking, getting on, shifting and bending the chain, sinking in and wind: closed forms, worked out apart from gear-math.

use gear_math::chain::PinFriction;
use gear_math::course::{Braking, Remount, ShiftTime, Shifting};
use gear_math::rider::{
    Air, Compass, DragArea, DrivetrainEfficiency, Headwind, RoadLoad, RollingCoefficient, Sinkage, TotalMass,
    WheelInertia, Wind, WindSpeed,
};
use gear_math::{Circumference, Gear, Gradient, Power, Speed};
use reference_checks::ride_or_run::speed;
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::error::Error;

type Outcome = Result<(), Box<dyn Error>>;

/// Runs every row of a table of the lap's model.
fn every<T: DeserializeOwned>(name: &str, at_least: usize, check: impl Fn(&T) -> Outcome) {
    let file = format!("lap-model/{name}.csv");
    check_all(&file, &rows::<T>(&file), at_least, |row| check(row).map_err(|error| error.to_string()));
}

#[derive(Deserialize)]
struct BrakingRow {
    v1: f64,
    v2: f64,
    b_m_per_s2: f64,
    distance_m: f64,
    time_s: f64,
    loss_s: f64,
}

#[test]
fn braking() {
    every("braking", 4, |row: &BrakingRow| {
        let braked = Braking::new(row.b_m_per_s2)?.slowing(speed(row.v1)?, speed(row.v2)?);
        close("way", braked.way.m(), row.distance_m, 1e-4)?;
        close("time", braked.time.s(), row.time_s, 1e-4)?;
        Ok(close("lost", braked.lost.s(), row.loss_s, 1e-4)?)
    });
}

#[derive(Deserialize)]
struct RemountRow {
    v_foot: f64,
    gradient: f64,
    #[serde(rename = "Crr")]
    crr: f64,
    v_start: f64,
    can_get_on: u8,
}

#[test]
fn getting_on() {
    every("remount", 5, |row: &RemountRow| {
        let gradient = Gradient::new(100.0 * row.gradient)?;
        let remount = Remount::at(speed(row.v_foot)?, gradient, RollingCoefficient::new(row.crr)?);
        close("speed", remount.speed.m_per_s(), row.v_start, 1e-4)?;
        let can = f64::from(u8::from(remount.is_possible()));
        Ok(close("whether at all", can, f64::from(row.can_get_on), 0.0)?)
    });
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct ShiftRow {
    v: f64,
    CP_W: f64,
    mass_kg: f64,
    kind: String,
    t_s: f64,
    m_e_kg: f64,
    v_after: f64,
}

impl ShiftRow {
    fn usual(&self) -> Result<ShiftTime, String> {
        match self.kind.as_str() {
            "rear" => Ok(Shifting::USUAL.rear),
            "front" => Ok(Shifting::USUAL.front),
            other => Err(format!("no shift at the {other}")),
        }
    }
}

#[test]
fn shifting() {
    every("shift-loss", 4, |row: &ShiftRow| {
        let mass = level_load(row.mass_kg, 0.03, Air::STILL)?
            .effective_mass(WheelInertia::USUAL, Circumference::new(2100.0)?);
        close("effective mass", mass.kg(), row.m_e_kg, 1e-5)?;
        close("seconds", row.usual()?.s(), row.t_s, 0.0)?;
        let (power, efficiency) = (Power::new(row.CP_W)?, DrivetrainEfficiency::OFF_ROAD);
        let after = row.usual()?.speed_after(speed(row.v)?, power, efficiency, mass);
        Ok(close("speed", after.m_per_s(), row.v_after, 1e-5)?)
    });
}

fn level_load(mass_kg: f64, crr: f64, air: Air) -> Result<RoadLoad, Box<dyn Error>> {
    let (mass, rolling) = (TotalMass::new(mass_kg)?, RollingCoefficient::new(crr)?);
    Ok(RoadLoad::new(mass, rolling, &air, DrivetrainEfficiency::OFF_ROAD).with_wheels())
}

#[derive(Deserialize)]
struct ChainRow {
    ring: u16,
    sprocket: u16,
    loss: f64,
}

#[test]
fn bending_the_chain() {
    every("chain-loss", 5, |row: &ChainRow| {
        let loss = PinFriction::USUAL.loss(Gear::new(row.ring, row.sprocket)?);
        Ok(close("loss", loss, row.loss, 1e-6)?)
    });
}

#[derive(Deserialize)]
struct SinkageRow {
    sinkage_cm: f64,
    factor: f64,
}

#[test]
fn sinking_in_on_foot() {
    every("foot-sinkage", 5, |row: &SinkageRow| {
        Ok(close("factor", Sinkage::new(row.sinkage_cm)?.terrain_factor(), row.factor, 1e-4)?)
    });
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct WindRow {
    mass_kg: f64,
    Crr: f64,
    P_W: f64,
    v_m_per_s: f64,
    wind_m_per_s: f64,
    from_deg: f64,
    w0: f64,
    w90: f64,
    w180: f64,
    w270: f64,
    mean_drag_N: f64,
    closed_form_N: f64,
    v0: f64,
    v90: f64,
    v180: f64,
    v270: f64,
    time_400m_s: f64,
    time_400m_calm_s: f64,
}

impl WindRow {
    fn load(&self, headwind: Headwind) -> Result<RoadLoad, Box<dyn Error>> {
        // The spokes' 0.0044 m² come on top of this.
        let air = Air { headwind, drag_area: DragArea::new(0.4)?, ..Air::STILL };
        level_load(self.mass_kg, self.Crr, air)
    }

    fn held(&self, headwind: Headwind) -> Result<Speed, Box<dyn Error>> {
        Ok(self.load(headwind)?.steady_speed(Power::new(self.P_W)?, Gradient::LEVEL))
    }

    /// Air drag on one side at the even speed, N.
    fn drag_n(&self, headwind: Headwind) -> Result<f64, Box<dyn Error>> {
        let even = speed(self.v_m_per_s)?;
        Ok(self.load(headwind)?.power(even, Gradient::LEVEL).air_w / even.m_per_s())
    }

    fn check(&self) -> Outcome {
        let wind = Wind { speed: WindSpeed::new(self.wind_m_per_s)?, from: Compass::new(self.from_deg)? };
        let (mut drag, mut time) = (0.0, 0.0);
        let sides = [
            (0.0, self.w0, self.v0),
            (90.0, self.w90, self.v90),
            (180.0, self.w180, self.v180),
            (270.0, self.w270, self.v270),
        ];
        for (heading, against, held) in sides {
            let headwind = wind.against(Compass::new(heading)?);
            close("wind", headwind.m_per_s(), against, 1e-4)?;
            let found = self.held(headwind)?.m_per_s();
            close("steady speed", found, held, 1e-4)?;
            drag += self.drag_n(headwind)? / 4.0;
            time += 100.0 / found;
        }
        close("mean drag", drag, self.mean_drag_N, 1e-4)?;
        close("drag in closed form", drag, self.closed_form_N, 1e-4)?;
        close("time", time, self.time_400m_s, 1e-4)?;
        Ok(close("calm", 400.0 / self.held(Headwind::NONE)?.m_per_s(), self.time_400m_calm_s, 1e-4)?)
    }
}

/// Round a square the wind's parts along the way cancel, their squares do not.
#[test]
fn wind_round_a_square() {
    every("wind-square", 3, WindRow::check);
}
