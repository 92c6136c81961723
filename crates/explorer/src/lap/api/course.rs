//! A course as plain objects.

use crate::api::objects::thrown;
use crate::ride::api::surroundings::surface;
use gear_math::course::{CornerSpeed, Obstacle, ObstacleTime, Segment, StretchLength};
use gear_math::rider::Compass;
use gear_math::{Course, Gradient};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Kilometres per hour in a metre per second.
const KM_PER_H: f64 = 3.6;

/// A course: its stretches in the order they are ridden.
#[derive(Debug, Deserialize, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CourseInput {
    stretches: Vec<StretchInput>,
}

/// One stretch.
#[derive(Debug, Deserialize, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct StretchInput {
    /// Along the ground.
    length_m: f64,
    gradient_percent: f64,
    /// tarmac, packed gravel, firm grass, wet soft grass, mud, deep mud, wet packed sand or loose sand.
    ground: String,
    /// An obstacle to be taken on foot: what it costs on top of its length; none when left out.
    #[tsify(optional)]
    obstacle_s: Option<f64>,
    /// The fastest it can be ridden; no limit when left out.
    #[tsify(optional)]
    corner_kmh: Option<f64>,
    /// Which way it leads, clockwise from north, 0 to 360; wind counts only where it is given.
    #[serde(default)]
    #[tsify(optional)]
    heading_deg: Option<f64>,
}

impl CourseInput {
    pub(super) fn course(&self) -> Result<Course, JsError> {
        let stretches = self.stretches.iter().map(StretchInput::segment).collect::<Result<_, _>>()?;
        Course::new(stretches).map_err(thrown)
    }

    pub(super) fn of(course: &Course) -> Self {
        Self { stretches: course.segments().iter().map(StretchInput::of).collect() }
    }
}

impl StretchInput {
    fn segment(&self) -> Result<Segment, JsError> {
        let obstacle = |seconds| ObstacleTime::new(seconds).map(|time| Obstacle { time }).map_err(thrown);
        let limits = CornerSpeed::LIMITS;
        let corner = |kmh: f64| {
            CornerSpeed::new(kmh / KM_PER_H).map_err(|_| {
                let (least, most) = (limits.min * KM_PER_H, limits.max * KM_PER_H);
                thrown(format!("corner speed must be {least:.2} to {most:.0} km/h"))
            })
        };
        Ok(Segment {
            length: StretchLength::new(self.length_m).map_err(thrown)?,
            gradient: Gradient::new(self.gradient_percent).map_err(thrown)?,
            surface: surface(&self.ground)?,
            obstacle: self.obstacle_s.map(obstacle).transpose()?,
            corner: self.corner_kmh.map(corner).transpose()?,
            heading: self.heading_deg.map(Compass::new).transpose().map_err(thrown)?,
        })
    }

    fn of(segment: &Segment) -> Self {
        Self {
            length_m: segment.length.m(),
            gradient_percent: segment.gradient.percent(),
            ground: segment.surface.name().to_owned(),
            obstacle_s: segment.obstacle.map(|obstacle| obstacle.time.s()),
            corner_kmh: segment.corner.map(|corner| corner.m_per_s() * KM_PER_H),
            heading_deg: segment.heading.map(Compass::degrees),
        }
    }
}
