//! A step begun at a speed: what can be made of it.

use crate::course::reserve::cell::Cell;
use crate::course::reserve::field::{greater, lesser};
use crate::course::reserve::way::{SLOWEST, Way};

/// Most rounds of Newton's method, and the changes of speed that end it, as shares.
const MOST_ROUNDS: usize = 12;
const NEAR: f64 = 5e-3;
const EXACT: f64 = 1e-9;
/// The slowest end that is tried, m/s.
const TRIED: f64 = 0.1;
const SAME: f64 = 1e-9;
/// More power at the wheel than riders have in a lap, W. Estimate: twice a sprinter's peak.
const STRONGEST: f64 = 3000.0;

/// A step begun at a speed, with the speeds at which it may end.
#[derive(Debug, Clone, Copy)]
pub(super) struct Entry<'a> {
    pub(super) cell: &'a Cell,
    pub(super) mass: f64,
    pub(super) speed: f64,
    /// By coasting.
    pub(super) coast: f64,
    pub(super) low: f64,
    pub(super) high: f64,
}

impl<'a> Entry<'a> {
    /// A step that must end within `next`. Balance lets nobody below its limit who is not below it already and gains speed.
    #[inline]
    pub(super) fn new(way: &Way, cell: &'a Cell, speed: f64, [slowest, fastest]: [f64; 2]) -> Self {
        let mut entry = Self { high: fastest, ..Self::bare(way, cell, speed) };
        if speed >= SLOWEST - SAME && !cell.blocked {
            let braked = greater(speed * speed - 2.0 * way.braking * cell.length, 0.0).sqrt();
            entry.coast = entry.end_under(0.0);
            entry.low = greater(lesser(braked, entry.coast), greater(lesser(way.balance, speed), slowest));
            entry.high = if entry.may_slip() { lesser(fastest, entry.end_under(cell.grip)) } else { fastest };
        }
        entry
    }

    /// A step of which nothing is known yet.
    #[inline]
    pub(super) fn bare(way: &Way, cell: &'a Cell, speed: f64) -> Self {
        Self { cell, mass: way.mass, speed, coast: 0.0, low: f64::INFINITY, high: 0.0 }
    }

    #[inline]
    pub(super) fn is_possible(&self) -> bool {
        self.low <= self.high
    }

    #[inline]
    pub(super) fn allowed(&self, end: f64) -> f64 {
        greater(lesser(end, self.high), self.low)
    }

    /// Whether anyone has the power to make the wheel slip.
    #[inline]
    fn may_slip(&self) -> bool {
        self.cell.grip * self.speed < STRONGEST
    }

    /// Speed at the end under a drive force; none where the bike stops before.
    ///
    /// # Formula
    /// d of (v + d)² − v² = 2 L/m_e (F − F(v + d/2)), a square equation as long as the air comes from one side.
    #[inline]
    fn end_under(&self, force: f64) -> f64 {
        let (cell, share) = (self.cell, 2.0 * self.cell.length / self.mass);
        let air = cell.air.copysign(self.speed + cell.wind);
        let square = 1.0 + 0.25 * share * air;
        let linear = 2.0 * self.speed + 0.5 * share * cell.force_growth(self.speed);
        let gained = share * (force - cell.force(self.speed));
        let root = linear * linear + 4.0 * square * gained;
        if root < 0.0 {
            return 0.0;
        }
        greater(self.speed + 2.0 * gained / (linear + root.sqrt()), 0.0)
    }

    /// Work at the wheel that an end takes, J; less than none is braked.
    ///
    /// # Formula
    /// ½ m_e (v₂² − v²) + F(v̄) L: energy balances over every step.
    #[inline]
    pub(super) fn work(&self, end: f64) -> f64 {
        0.5 * self.mass * (end * end - self.speed * self.speed)
            + self.cell.length * self.cell.force(0.5 * (self.speed + end))
    }

    /// # Formula
    /// t = 2 L/(v + v₂).
    #[inline]
    pub(super) fn time(&self, end: f64) -> f64 {
        2.0 * self.cell.length / (self.speed + end)
    }

    /// About the speed at the end on a power at the wheel, from a guess. It bears on which power is tried alone: what a step
    /// takes follows from the speed at its end.
    #[inline]
    pub(super) fn end_near(&self, power: f64, guess: f64) -> f64 {
        self.end_within(power, guess, NEAR)
    }

    /// The speed at the end on a power at the wheel.
    pub(super) fn end_on(&self, power: f64, guess: f64) -> f64 {
        self.end_within(power, guess, EXACT)
    }

    #[inline]
    fn end_within(&self, power: f64, guess: f64, share: f64) -> f64 {
        let mut end = guess;
        let given = 2.0 * power * self.cell.length;
        for _ in 0..MOST_ROUNDS {
            let (sum, work) = (self.speed + end, self.work(end));
            let growth = self.cell.force_growth(0.5 * sum);
            let slope = sum * (self.mass * end + 0.5 * self.cell.length * growth) + greater(work, 0.0);
            let step = (work * sum - given) / slope;
            end = greater(end - step, TRIED);
            if step.abs() < share * end {
                break;
            }
        }
        end
    }
}
