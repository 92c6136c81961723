//! The gears of a bike along a lap.

use crate::course::search::cranks::{Cranks, Place};
use crate::rider::Bike;

/// The gears of a bike along a lap, with the least that it costs to have come to each.
#[derive(Debug, Clone)]
pub(super) struct Along {
    places: Vec<Place>,
    /// Place of each gear's ring among the rings.
    rings: Vec<usize>,
    costs: Vec<f64>,
    by_ring: Vec<f64>,
}

impl Along {
    /// At the line, in whichever gear is best.
    pub(super) fn new(bike: &Bike) -> Self {
        let all = bike.drivetrain.chainset.rings();
        let gears: Vec<_> = bike.gears().collect();
        let ring = |ring| all.iter().position(|it| *it == ring).unwrap_or(0);
        Self {
            places: gears.iter().map(|it| Cranks::place(60.0 / it.development(bike.wheel).m())).collect(),
            rings: gears.iter().map(|it| ring(it.ring)).collect(),
            costs: vec![0.0; gears.len()],
            by_ring: vec![0.0; all.len()],
        }
    }

    /// Over a step that costs so much by [`Cranks`], in the gear that is in or after a shift at the rear or the front.
    pub(super) fn step(&mut self, by_cranks: &[f64], [rear, front]: [f64; 2]) {
        self.by_ring.fill(f64::INFINITY);
        for (&cost, &ring) in self.costs.iter().zip(&self.rings) {
            self.by_ring[ring] = self.by_ring[ring].min(cost);
        }
        let after_front = self.by_ring.iter().copied().fold(f64::INFINITY, f64::min) + front;
        for ((cost, &ring), place) in self.costs.iter_mut().zip(&self.rings).zip(&self.places) {
            *cost = cost.min(self.by_ring[ring] + rear).min(after_front) + place.of(by_cranks);
        }
    }

    /// What the best way costs.
    pub(super) fn least(&self) -> f64 {
        self.costs.iter().copied().fold(f64::INFINITY, f64::min)
    }
}
