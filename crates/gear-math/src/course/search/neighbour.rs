//! What other gears would make of a lap that is planned.

use crate::course::course::Course;
use crate::course::lap::lap::Lap;
use crate::course::lap::reserve_use::ReserveUse;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::setup::ReserveSetup;
use crate::course::search::along::{Along, Reached};
use crate::course::search::cranks::{Cranks, Place};
use crate::course::search::piece::Piece;
use crate::rider::Bike;

/// A lap planned in full, and what other gears would make of it.
#[derive(Debug, Clone)]
pub(super) struct Neighbour {
    setup: ReserveSetup,
    /// s/J.
    price: f64,
    pieces: Vec<Piece>,
    /// What every step charges by [`Cranks`], step by step, J.
    charged_j: Vec<f64>,
    /// Way per crank turn in the lowest gear, m.
    pub(super) lowest_m: f64,
    /// Time of the lap, s.
    pub(super) time_s: f64,
    /// Its shifts at the rear and the front.
    pub(super) shifts: [u32; 2],
    /// Its time beside what its own gears charge, s.
    beside_s: f64,
}

impl Neighbour {
    pub(super) fn new(course: &Course, setup: &ReserveSetup) -> Option<Self> {
        let lap = Lap::on_reserve(course, setup, Fineness::QUICK);
        let reserve = lap.reserve.as_ref()?;
        let pieces = pieces(setup, &lap, reserve);
        let by_cranks = |piece: &Piece| {
            let piece = *piece;
            Cranks::all().map(move |turns| piece.charged_j(&setup.account, turns))
        };
        let charged_j = pieces.iter().flat_map(by_cranks).collect();
        let (price, lowest_m) = (reserve.price_s_per_j, setup.lap.bike.lowest_development().m());
        let (time_s, shifts) = (lap.time_s, [lap.shifts_rear, lap.shifts_front]);
        let new = Self { setup: *setup, price, pieces, charged_j, lowest_m, time_s, shifts, beside_s: 0.0 };
        Some(Self { beside_s: lap.time_s - price * new.along(&setup.lap.bike).cost, ..new })
    }

    /// Whether it is the lap of a bike.
    pub(super) fn is_of(&self, bike: &Bike) -> bool {
        self.setup.lap.bike == *bike
    }

    /// About the time of the lap on a bike that differs by its gears alone, in s, and its shifts at the rear and the front.
    pub(super) fn look(&self, bike: &Bike) -> [f64; 3] {
        let Reached { cost, shifts: [rear, front], .. } = self.along(bike);
        [self.beside_s + self.price * cost, rear.into(), front.into()]
    }

    /// A time that no bike with some of these gears comes below when [looked](Self::look) at: every step in the one that suits
    /// it best, with shifts for nothing.
    pub(super) fn at_least_s(&self, places: &[Place]) -> f64 {
        let least =
            |by_cranks: &[f64]| places.iter().fold(f64::INFINITY, |least, it| least.min(it.of(by_cranks)));
        self.beside_s + self.price * self.charged_j.chunks(Cranks::COUNT).map(least).sum::<f64>()
    }

    /// What the gears of a bike charge along the lap, shifts included, J.
    fn along(&self, bike: &Bike) -> Reached {
        let shifting = &self.setup.lap.shifting;
        let mut along = Along::new(bike, self.setup.account.effort.sustainable());
        for (piece, by_cranks) in self.pieces.iter().zip(self.charged_j.chunks(Cranks::COUNT)) {
            let drive = piece.drive_j(&self.setup.account);
            along.step(
                by_cranks,
                piece.pedalled_s(),
                [shifting.rear, shifting.front].map(|shift| drive * shift.s()),
            );
        }
        along.least()
    }
}

fn pieces(setup: &ReserveSetup, lap: &Lap, reserve: &ReserveUse) -> Vec<Piece> {
    let mut from = 0.0;
    let steps = lap.trace.iter().zip(&reserve.trace);
    let piece = steps.map(|(point, reserve)| {
        let way = point.at_m - from;
        from = point.at_m;
        Piece::new(setup, point, reserve.power_w, way)
    });
    piece.collect()
}
