//! A course in steps, for one rider on one bike.

use crate::course::course::Course;
use crate::course::quantity::CornerSpeed;
use crate::course::reserve::cell::Cell;
use crate::course::reserve::setup::ReserveSetup;
use crate::course::segment::Segment;
use crate::physics::GRAVITY;
use crate::rider::{Air, BalanceSpeed, FootDemand, Gradient, Ground, Headwind, Resistance, RoadLoad, Surface};

const ROUNDING: f64 = 1e-9;
pub(super) const OFF_M_PER_S: f64 = 3.5;
const SET_OFF_S: f64 = 0.5;
pub(super) const FASTEST: f64 = 15.0;
pub(super) const SLOWEST: f64 = 0.8;

/// A course in steps.
#[derive(Debug, Clone)]
pub(super) struct Way {
    pub(super) cells: Vec<Cell>,
    /// Highest speed at the beginning of every step and at the end of the last, m/s.
    pub(super) ceilings: Vec<f64>,
    pub(super) on_foot: Vec<FootDemand>,
    pub(super) mass: f64,
    pub(super) weight: f64,
    pub(super) efficiency: f64,
    pub(super) braking: f64,
    pub(super) balance: f64,
    pub(super) off: f64,
    pub(super) on: f64,
}

struct Person<'a> {
    setup: &'a ReserveSetup,
}

impl Person<'_> {
    fn ground(&self, surface: Surface) -> Ground {
        self.setup.ground.ground(&surface.ground_under(self.setup.lap.bike.tyre))
    }

    fn load(&self, ground: &Ground, headwind: Headwind) -> RoadLoad {
        let lap = &self.setup.lap;
        let air = Air { headwind, ..lap.air };
        let load = RoadLoad::new(lap.rider.with(&lap.bike), ground.rolling, &air, lap.bike.efficiency);
        RoadLoad { wheels: lap.wheels, ..load }
    }

    fn headwind(&self, segment: &Segment) -> Headwind {
        let wind = self.setup.wind.zip(segment.heading);
        wind.map_or(Headwind::NONE, |(wind, heading)| wind.against(heading))
    }

    fn weight(&self) -> f64 {
        self.setup.lap.rider.with(&self.setup.lap.bike).kg() * GRAVITY
    }

    fn grip(&self, ground: &Ground, gradient: Gradient) -> f64 {
        let slip = self.setup.lap.limits.grip.and_then(|stance| stance.slip(ground.friction, ground.rolling));
        slip.map_or(f64::INFINITY, |slip| {
            let normal = self.weight() / gradient.rise_over_run().hypot(1.0);
            (normal * (slip.rise_over_run() + ground.rolling.value())).max(0.0)
        })
    }

    fn cell(&self, segment: &Segment, number: usize, count: f64) -> Cell {
        let ground = self.ground(segment.surface);
        let Resistance { gravity, rolling, bearing, bearing_growth, air, headwind, .. } =
            self.load(&ground, self.headwind(segment)).resistance(segment.gradient);
        Cell {
            length: segment.length.m() / count,
            rise: segment.rise_m() / count,
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
            set_off_loss: (gravity + rolling) / self.weight() * GRAVITY * SET_OFF_S,
            segment: number,
        }
    }

    fn demand(&self, segment: &Segment) -> FootDemand {
        let lap = &self.setup.lap;
        FootDemand::new(&lap.rider, &lap.bike, &lap.air, &self.ground(segment.surface), segment.gradient)
    }
}

impl Way {
    pub(super) fn new(course: &Course, setup: &ReserveSetup, step_m: f64) -> Self {
        let person = Person { setup };
        let mut cells = Vec::new();
        for (number, segment) in course.segments().iter().enumerate() {
            let count = (segment.length.m() / step_m - ROUNDING).ceil().max(1.0);
            cells.resize(cells.len() + count as usize, person.cell(segment, number, count));
        }
        let lap = &setup.lap;
        let level = person.load(&person.ground(Surface::Tarmac), Headwind::NONE);
        let braking = lap.mounting.braking.m_per_s2();
        Self {
            ceilings: ceilings(&cells, braking),
            cells,
            on_foot: course.segments().iter().map(|segment| person.demand(segment)).collect(),
            mass: level.effective_mass(lap.inertia, lap.bike.wheel).kg(),
            weight: person.weight(),
            efficiency: lap.bike.efficiency.share(),
            braking,
            balance: lap.limits.balance.map_or(SLOWEST, BalanceSpeed::m_per_s),
            off: lap.mounting.off.s(),
            on: lap.mounting.on.s(),
        }
    }
}

/// Highest speeds so that braking in front of what is slow suffices, round and round.
fn ceilings(cells: &[Cell], braking: f64) -> Vec<f64> {
    let count = cells.len();
    let mut ceilings = vec![FASTEST; count + 1];
    for _ in 0..2 {
        ceilings[count] = ceilings[0];
        for at in (0..count).rev() {
            let (cell, ahead) = (&cells[at], ceilings[at + 1]);
            let before = cells[(at + count - 1) % count].corner;
            let own = if cell.blocked { OFF_M_PER_S } else { FASTEST.min(cell.corner) };
            let braked = (ahead * ahead + 2.0 * braking * cell.length).sqrt();
            let braked = if cell.blocked { own } else { braked };
            ceilings[at] = own.min(before).min(braked).max(SLOWEST + 0.05);
        }
        ceilings[count] = ceilings[0];
    }
    ceilings
}
