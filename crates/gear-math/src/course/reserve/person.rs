//! Rider and bike as they are on every part of the course.

use crate::course::quantity::CornerSpeed;
use crate::course::reserve::cell::Cell;
use crate::course::reserve::setup::ReserveSetup;
use crate::course::segment::Segment;
use crate::physics::GRAVITY;
use crate::rider::{Air, FootDemand, Gradient, Ground, Headwind, Resistance, RoadLoad, Surface};

/// Rider and bike as they are on every part of the course.
#[derive(Debug, Clone, Copy)]
pub(super) struct Person<'a> {
    pub(super) setup: &'a ReserveSetup,
}

impl Person<'_> {
    fn ground(&self, surface: Surface) -> Ground {
        self.setup.ground.of(&surface.ground_under(self.setup.lap.bike.tyre))
    }

    fn load(&self, ground: &Ground, headwind: Headwind) -> RoadLoad {
        let lap = &self.setup.lap;
        let air = Air { headwind, ..lap.air };
        let load = RoadLoad::new(lap.rider.with(&lap.bike), ground.rolling, &air, lap.bike.efficiency);
        RoadLoad { wheels: lap.wheels, ..load }
    }

    fn headwind(&self, segment: &Segment) -> Headwind {
        let known = self.setup.wind.zip(segment.heading);
        known.map_or(Headwind::NONE, |(wind, heading)| wind.against(heading))
    }

    fn weight(&self) -> f64 {
        self.setup.lap.rider.with(&self.setup.lap.bike).kg() * GRAVITY
    }

    /// Mass that resists a change of speed, kg.
    pub(super) fn mass(&self) -> f64 {
        let level = self.load(&self.ground(Surface::Tarmac), Headwind::NONE);
        level.effective_mass(self.setup.lap.inertia, self.setup.lap.bike.wheel).kg()
    }

    fn grip(&self, ground: &Ground, gradient: Gradient) -> f64 {
        let normal = self.weight() / gradient.rise_over_run().hypot(1.0);
        let grip = self.setup.lap.limits.grip;
        grip.map_or(f64::INFINITY, |stance| stance.drive_n(ground.friction, ground.rolling, normal))
    }

    /// One of `count` equal steps of a stretch.
    pub(super) fn cell(&self, segment: &Segment, number: usize, count: f64) -> Cell {
        let ground = self.ground(segment.surface);
        let resistance = self.load(&ground, self.headwind(segment)).resistance(segment.gradient);
        let Resistance { gravity, rolling, bearing, bearing_growth, air, headwind, .. } = resistance;
        Cell {
            length: segment.length.m() / count,
            gravity,
            rolling,
            bearing,
            bearing_growth,
            air,
            wind: headwind,
            grip: self.grip(&ground, segment.gradient),
            corner: segment.corner.map_or(f64::INFINITY, CornerSpeed::m_per_s),
            blocked: segment.obstacle.is_some(),
            extra: segment.obstacle.map_or(0.0, |obstacle| obstacle.time.s()) / count,
            gradient: segment.gradient,
            coefficient: ground.rolling,
            segment: number,
        }
    }

    pub(super) fn on_foot(&self, segment: &Segment) -> FootDemand {
        let lap = &self.setup.lap;
        let ground = self.ground(segment.surface);
        let rider = if segment.obstacle.is_some() { lap.rider.carrying() } else { lap.rider };
        FootDemand::new(&rider, &lap.bike, &lap.air, &ground, segment.gradient)
    }
}
