//! The gears of a bike along a lap.

use crate::course::search::cranks::{Cranks, Place};
use crate::rider::{Bike, Power};

/// The least that it costs to have come so far, with its shifts at the rear and the front.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reached {
    pub(super) cost: f64,
    /// What it counts for beside that.
    reluctance: f64,
    pub(super) shifts: [u32; 2],
}

impl Reached {
    const AT_LINE: Self = Self { cost: 0.0, reluctance: 0.0, shifts: [0; 2] };
    const NEVER: Self = Self { cost: f64::INFINITY, ..Self::AT_LINE };

    #[inline]
    fn or(self, other: Self) -> Self {
        if other.counted() < self.counted() { other } else { self }
    }

    /// What is chosen by.
    #[inline]
    fn counted(&self) -> f64 {
        self.cost + self.reluctance
    }

    /// After a shift at the rear (0) or the front (1), which is none where it costs nothing: beside the bike.
    #[inline]
    fn shifted(mut self, end: usize, loss: f64) -> Self {
        self.cost += loss;
        self.shifts[end] += u32::from(loss > 0.0);
        self
    }
}

/// The gears of a bike along a lap.
#[derive(Debug, Clone)]
pub(super) struct Along {
    places: Vec<Place>,
    /// Reluctance to pedal in each gear, W.
    reluctances: Vec<f64>,
    /// Place of each gear's ring among the rings.
    rings: Vec<usize>,
    in_gears: Vec<Reached>,
    by_ring: Vec<Reached>,
}

impl Along {
    /// At the line, in whichever gear is best.
    pub(super) fn new(bike: &Bike, sustainable: Power) -> Self {
        let all = bike.drivetrain.chainset.rings();
        let gears: Vec<_> = bike.gears().collect();
        let ring = |ring| all.iter().position(|it| *it == ring).unwrap_or(0);
        Self {
            places: gears.iter().map(|it| Cranks::of_development(it.development(bike.wheel).m())).collect(),
            reluctances: gears.iter().map(|it| bike.reluctance_w(*it, sustainable)).collect(),
            rings: gears.iter().map(|it| ring(it.ring)).collect(),
            in_gears: vec![Reached::AT_LINE; gears.len()],
            by_ring: vec![Reached::NEVER; all.len()],
        }
    }

    /// Over a step that costs so much by [`Cranks`] and is pedalled for so many s, in the gear that is in or after a shift at the
    /// rear or the front.
    pub(super) fn step(&mut self, by_cranks: &[f64], pedalled: f64, [rear, front]: [f64; 2]) {
        self.by_ring.fill(Reached::NEVER);
        for (reached, &ring) in self.in_gears.iter().zip(&self.rings) {
            self.by_ring[ring] = self.by_ring[ring].or(*reached);
        }
        let after_front = best(&self.by_ring).shifted(1, front);
        let gears = self.rings.iter().zip(&self.places).zip(&self.reluctances);
        for (reached, ((&ring, place), reluctance)) in self.in_gears.iter_mut().zip(gears) {
            *reached = reached.or(self.by_ring[ring].shifted(0, rear)).or(after_front);
            reached.cost += place.of(by_cranks);
            reached.reluctance += pedalled * reluctance;
        }
    }

    /// The best way so far.
    pub(super) fn least(&self) -> Reached {
        best(&self.in_gears)
    }
}

fn best(all: &[Reached]) -> Reached {
    all.iter().copied().fold(Reached::NEVER, Reached::or)
}
