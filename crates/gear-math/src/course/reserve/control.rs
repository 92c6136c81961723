//! What to do over one step: the power, or the brakes, that serve best from here on.

use crate::course::reserve::cell::Cell;
use crate::course::reserve::charge::Charge;
use crate::course::reserve::field::{NEVER, View};
use crate::course::reserve::gearing::{Gearing, In};
use crate::course::reserve::way::{SLOWEST, Way};

/// Who rides at which price of a charged joule.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rule<'a> {
    pub(super) way: &'a Way,
    pub(super) charge: &'a Charge,
    pub(super) gearing: &'a Gearing,
    /// s/J
    pub(super) price: f64,
    /// Turns of the search over one step.
    pub(super) turns: usize,
    pub(super) refine: usize,
}

/// One way through a step.
#[derive(Debug, Clone, Copy)]
pub(super) struct Choice {
    pub(super) end: f64,
    pub(super) power: f64,
    /// s + price × J, and what comes after.
    pub(super) cost: f64,
}

impl Choice {
    pub(super) const NONE: Self = Self { end: 0.0, power: 0.0, cost: NEVER };
}

/// A step begun at a speed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Entry<'a> {
    cell: &'a Cell,
    mass: f64,
    speed: f64,
    /// End by coasting, or as slow as that is allowed.
    coast: f64,
    low: f64,
    high: f64,
}

impl<'a> Entry<'a> {
    pub(super) fn new(way: &'a Way, cell: &'a Cell, speed: f64, next: (f64, f64)) -> Self {
        let mut entry = Self { cell, mass: way.mass, speed, coast: 0.0, low: 0.0, high: f64::INFINITY };
        let coast = entry.end_under(0.0);
        let braked = (speed * speed - 2.0 * way.braking * cell.length).max(0.0).sqrt();
        let balance = if speed < SLOWEST - 1e-9 { f64::INFINITY } else { way.balance.min(speed) };
        entry.low = braked.min(coast).max(balance).max(next.0);
        entry.high = next.1.min(if cell.grip < 1e9 { entry.end_under(cell.grip) } else { f64::INFINITY });
        entry.coast = coast;
        entry
    }

    fn is_possible(&self) -> bool {
        self.low <= self.high && !self.cell.blocked
    }

    /// Speed at the end under a drive force.
    #[inline(always)]
    fn end_under(&self, force: f64) -> f64 {
        let (square, share) = (self.speed * self.speed, 2.0 * self.cell.length / self.mass);
        let mut end = self.speed;
        for _ in 0..3 {
            let mean = 0.5 * (self.speed + end);
            end = (square + share * (force - self.cell.force(mean))).max(0.0).sqrt();
        }
        end
    }

    #[inline(always)]
    fn work(&self, end: f64) -> f64 {
        0.5 * self.mass * (end * end - self.speed * self.speed)
            + self.cell.length * self.cell.force(0.5 * (self.speed + end))
    }

    #[inline(always)]
    fn time(&self, end: f64) -> f64 {
        2.0 * self.cell.length / (self.speed + end)
    }

    /// Speed at the end on a power at the wheel.
    #[inline(always)]
    fn end_at(&self, power: f64, start: f64) -> f64 {
        let mut end = start;
        for _ in 0..12 {
            let sum = self.speed + end;
            let given = 2.0 * power * self.cell.length / sum;
            let slope = self.mass * end + 0.5 * self.cell.length * self.cell.force_growth(0.5 * sum) + given / sum;
            let step = (self.work(end) - given) / slope;
            end = (end - step).max(0.1);
            if step.abs() < 1e-3 * end {
                break;
            }
        }
        end
    }
}

impl Rule<'_> {
    /// The best way through a step in a gear.
    #[inline(always)]
    pub(super) fn best(&self, entry: &Entry<'_>, gear: In, next: View<'_>, node: usize, guess: f64) -> Choice {
        if !entry.is_possible() {
            return Choice::NONE;
        }
        let mut end = entry.speed.clamp(entry.low, entry.high);
        let mut piece = next.piece(end, node);
        let mut power = guess;
        let mut charged = self.charged(entry, gear, end, power);
        let (mut lowest, mut highest) = (0, next.speeds.len() - 2);
        for turn in 1..12 {
            let slope = next.slope(piece);
            (end, power) = self.aim(entry, gear, slope, end, power, charged);
            let target = next.piece(end, piece);
            if target == piece && turn >= self.turns {
                break;
            }
            if target != piece {
                let up = target > piece;
                let node = if up { piece + 1 } else { piece };
                if up { lowest = node } else { highest = node.saturating_sub(1) }
                if lowest > highest {
                    end = next.speeds[node].clamp(entry.low, entry.high);
                    break;
                }
                piece = target.clamp(lowest, highest);
                end = end.clamp(next.speeds[piece], next.speeds[piece + 1]);
            }
            charged = self.charged(entry, gear, end, power);
        }
        let mut best = self.judged(entry, gear, next, piece, end);
        if best.power < self.charge.cp && entry.coast >= entry.low && entry.coast < best.end {
            let coasting = self.judged(entry, gear, next, piece, entry.coast);
            if coasting.cost < best.cost { best = coasting; }
        }
        let flat = next.slope(0);
        if flat > 0.5 * next.slope(piece) {
            let (end, _) = self.aim(entry, gear, flat, best.end, best.power, (0.0, 0.0));
            let falling = self.judged(entry, gear, next, piece, end);
            if falling.cost < best.cost { best = falling; }
        }
        if self.refine > 0 { best = self.refined(entry, gear, next, piece, best); }
        best
    }

    /// A better end near one that is found.
    fn refined(&self, entry: &Entry<'_>, gear: In, next: View<'_>, piece: usize, found: Choice) -> Choice {
        let reach = 1.5 * (next.speeds[1] / next.speeds[0] - 1.0) * found.end;
        let (mut low, mut high) = ((found.end - reach).max(entry.low), (found.end + reach).min(entry.high));
        let mut best = found;
        for _ in 0..self.refine {
            let ends = [low + 0.382 * (high - low), low + 0.618 * (high - low)];
            let [a, b] = ends.map(|end| self.judged(entry, gear, next, piece, end));
            if a.cost < b.cost { high = ends[1] } else { low = ends[0] }
            for it in [a, b] { if it.cost < best.cost { best = it; } }
        }
        best
    }

    /// Charge, and its growth by the speed at the end.
    #[inline(always)]
    fn charged(&self, entry: &Entry<'_>, gear: In, end: f64, power: f64) -> (f64, f64) {
        let mean = 0.5 * (entry.speed + end);
        let rpm = self.gearing.rpm[self.gearing.used(gear, mean, power)] * mean;
        let charged = self.charge.charge_w(power, rpm);
        let quicker = self.charge.charge_w(power, 1.01 * rpm);
        if charged.is_finite() && quicker.is_finite() { (charged, (quicker - charged) / (0.02 * mean)) } else { (0.0, 0.0) }
    }

    /// End of the step and power where value falls by `slope` per m²/s².
    #[inline(always)]
    fn aim(&self, entry: &Entry<'_>, gear: In, slope: f64, end: f64, power: f64, (charged, growth): (f64, f64)) -> (f64, f64) {
        let sum = entry.speed + end;
        let quicker = entry.cell.length / (sum * sum * end.max(0.3));
        let gain = quicker * (1.0 + self.price * charged) - slope
            - self.price * entry.time(end) * growth / (2.0 * end.max(0.3));
        let joules = 0.5 * entry.mass / self.way.efficiency + power * quicker;
        let mean = 0.5 * sum;
        let rpm = self.gearing.rpm[self.gearing.used(gear, mean, power)] * mean;
        let power = self.charge.power_worth(gain / (self.price * joules), rpm, power);
        if power > 0.0 {
            let start = if power > 2.0 * self.charge.cp { 1.3 * entry.speed.max(end) } else { end };
            return (entry.end_at(self.way.efficiency * power, start).clamp(entry.low, entry.high), power);
        }
        let idle = 1.0 - self.price * self.charge.repaid * self.charge.cp;
        let end = if idle * quicker - slope >= 0.0 { entry.coast } else { entry.low };
        (end.clamp(entry.low, entry.high), 0.0)
    }

    /// What ending so costs from here on.
    #[inline(always)]
    pub(super) fn judged(&self, entry: &Entry<'_>, gear: In, next: View<'_>, piece: usize, end: f64) -> Choice {
        let (time, mean) = (entry.time(end), 0.5 * (entry.speed + end));
        let power = (entry.work(end) / (self.way.efficiency * time)).max(0.0);
        let rpm = self.gearing.rpm[self.gearing.used(gear, mean, power)] * mean;
        let charged = self.charge.charge_w(power, rpm);
        if charged == f64::INFINITY {
            return Choice::NONE;
        }
        let piece = next.piece(end, piece);
        let cost = time * (1.0 + self.price * charged) + next.at(end, piece);
        Choice { end, power, cost }
    }
}
