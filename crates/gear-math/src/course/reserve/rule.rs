//! The best way through a step at a price of a charged joule.

use crate::course::reserve::entry::Entry;
use crate::course::reserve::field::{Line, NEVER, Within, greater};
use crate::course::reserve::gearing::{Gearing, In};
use crate::course::reserve::way::Way;
use crate::rider::EffortAccount;

/// Most pieces between nodes that are tried; one or two are usual.
const MOST_PIECES: usize = 12;
/// Where the value hardly falls with speed over the slowest piece, compared with that of the end found, somebody gets off ahead:
/// slowing down for that is tried as well.
const FLAT: f64 = 0.5;

/// Share of a cadence by which it is moved to see what the charge makes of it.
const NUDGE: f64 = 0.01;

/// Who rides at which price of a charged joule.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rule<'a> {
    pub(super) way: &'a Way,
    pub(super) account: &'a EffortAccount,
    pub(super) gearing: &'a Gearing,
    /// s/J.
    pub(super) price: f64,
}

/// One way through a step.
#[derive(Debug, Clone, Copy)]
pub(super) struct Choice {
    /// Speed at the end, m/s.
    pub(super) end: f64,
    /// At the crank, W.
    pub(super) power: f64,
    /// Time and price of the charge, with all that comes after, s.
    pub(super) cost: f64,
}

impl Choice {
    pub(super) const NONE: Self = Self { end: 0.0, power: 0.0, cost: NEVER };

    #[inline]
    fn or(self, other: Self) -> Self {
        if other.cost < self.cost { other } else { self }
    }
}

/// A way through a step without drive.
#[derive(Debug, Clone, Copy)]
pub(super) struct Undriven {
    end: f64,
    /// Time and price of the charge, s.
    cost: f64,
    place: Within,
}

impl Undriven {
    /// What it costs with what comes after, s.
    #[inline]
    pub(super) fn then(&self, next: Line<'_>) -> f64 {
        self.cost + next.within(self.place)
    }
}

impl Rule<'_> {
    /// The best way through a step in a gear, looked for from the power of a similar one.
    #[inline]
    pub(super) fn best(
        &self,
        entry: &Entry<'_>,
        gear: In,
        next: Line<'_>,
        node: usize,
        power: f64,
    ) -> Choice {
        if !entry.is_possible() {
            return Choice::NONE;
        }
        let (end, piece) = self.found(entry, gear, next, node, power);
        let found = self.judged(entry, gear, next, piece, end);
        let coasted = self.or_coasting(found, entry, gear, next, piece);
        self.or_falling(coasted, entry, gear, next, piece)
    }

    /// The same, looked for from the best of all nodes as well: from one power alone it may be the best of its surroundings only.
    pub(super) fn surely(
        &self,
        entry: &Entry<'_>,
        gear: In,
        next: Line<'_>,
        node: usize,
        power: f64,
    ) -> Choice {
        let found = self.best(entry, gear, next, node, power);
        let within = |node: &usize| (entry.low..=entry.high).contains(&next.speed(*node));
        let at_node = |node| (node, self.judged(entry, gear, next, node, next.speed(node)));
        let nodes = (0..next.knots.len()).filter(within).map(at_node);
        match nodes.min_by(|a, b| a.1.cost.total_cmp(&b.1.cost)) {
            Some((node, other)) if other.cost < found.cost => {
                self.best(entry, gear, next, node, other.power).or(other)
            }
            _ => found,
        }
    }

    /// The ways without drive, which are the same in every gear.
    #[inline]
    pub(super) fn undriven(&self, entry: &Entry<'_>, next: Line<'_>, node: usize) -> Option<[Undriven; 2]> {
        let possible = entry.is_possible() && entry.coast >= entry.low;
        possible.then(|| {
            [entry.coast.min(entry.high), entry.low].map(|end| Undriven {
                end,
                cost: entry.time(end) * (1.0 - self.price * self.account.repaid_w()),
                place: next.at(end, next.piece(end, node)),
            })
        })
    }

    /// The best way without drive.
    pub(super) fn idle(&self, entry: &Entry<'_>, next: Line<'_>, node: usize) -> Choice {
        let ways = self.undriven(entry, next, node);
        ways.map_or(Choice::NONE, |ways| {
            let [coasted, braked] = ways.map(|way| Choice { end: way.end, power: 0.0, cost: way.then(next) });
            coasted.or(braked)
        })
    }

    /// The end at which the value of more speed is what it costs, and its piece: pieces are left for the one that an end lies in,
    /// and where two lead to one another it is the node between them.
    #[inline]
    fn found(&self, entry: &Entry<'_>, gear: In, next: Line<'_>, node: usize, power: f64) -> (f64, usize) {
        let (mut end, mut power) = (entry.allowed(entry.speed), power);
        let mut piece = next.piece(end, node);
        let (mut lowest, mut highest) = (0, next.last());
        for _ in 0..MOST_PIECES {
            (end, power) = self.aim(entry, gear, next.slope(piece), end, power);
            let target = next.piece(end, piece);
            if target == piece {
                return (end, piece);
            }
            let node = piece + usize::from(target > piece);
            if target > piece {
                lowest = node;
            } else {
                highest = piece - 1;
            }
            if lowest > highest {
                return (entry.allowed(next.speed(node)), piece);
            }
            piece = target.clamp(lowest, highest);
            end = end.clamp(next.speed(piece), next.speed(piece + 1));
        }
        (end, piece)
    }

    /// End and power of a step behind which the value falls by `-slope` per m²/s².
    ///
    /// # Formula
    /// λ h′ (m_e/(2 η) + P |t′|) = −V′ + |t′| (1 + λ h) − λ t h_v, all changes by v₂², with |t′| = L/((v + v₂)² v₂). Without drive
    /// it coasts where |t′| (1 − λ ρ CP) ≥ V′, else it brakes.
    #[inline]
    fn aim(&self, entry: &Entry<'_>, gear: In, slope: f64, end: f64, power: f64) -> (f64, f64) {
        let (sum, length) = (entry.speed + end, entry.cell.length);
        let mean = 0.5 * sum;
        let used = self.gearing.used(gear, mean, power);
        let rpm = self.gearing.rpm[used] * mean;
        let (charge, growth) = self.charge_and_growth(power, rpm);
        let counted = charge + self.gearing.reluctance[used];
        let inverse = 1.0 / (sum * sum * end);
        let quicker = length * inverse;
        let turning = self.price * quicker * growth;
        let gain = quicker * (1.0 + self.price * counted) - slope - turning;
        let joules = 0.5 * entry.mass / self.way.efficiency + power * quicker;
        let power = self.account.power_worth(gain / (self.price * joules), rpm, power);
        if power > 0.0 {
            return (entry.allowed(entry.end_near(self.way.efficiency * power, end)), power);
        }
        let idle = 1.0 - self.price * self.account.repaid_w();
        let end = if idle * quicker >= slope { entry.coast } else { entry.low };
        (entry.allowed(end), 0.0)
    }

    /// Charge of a power, W, and what it grows by with the logarithm of the cadence; nothing where it is impossible.
    #[inline]
    fn charge_and_growth(&self, power: f64, rpm: f64) -> (f64, f64) {
        let charge = self.account.charge_w(power, rpm);
        if charge == f64::INFINITY {
            return (0.0, 0.0);
        }
        if self.account.held_w(rpm) >= self.account.sustainable_w() {
            return (charge, 0.0);
        }
        let quicker = self.account.charge_w(power, (1.0 + NUDGE) * rpm);
        if quicker == f64::INFINITY { (0.0, 0.0) } else { (charge, (quicker - charge) * (1.0 / NUDGE)) }
    }

    /// Less power than lasts is worse than coasting and pedalling by turns.
    #[inline]
    fn or_coasting(
        &self,
        found: Choice,
        entry: &Entry<'_>,
        gear: In,
        next: Line<'_>,
        piece: usize,
    ) -> Choice {
        let partly = found.power > 0.0 && found.power < self.account.sustainable_w();
        if partly && entry.coast >= entry.low {
            found.or(self.judged(entry, gear, next, piece, entry.coast))
        } else {
            found
        }
    }

    #[inline]
    fn or_falling(&self, found: Choice, entry: &Entry<'_>, gear: In, next: Line<'_>, piece: usize) -> Choice {
        let flat = next.slope(0);
        if flat <= FLAT * next.slope(piece) {
            return found;
        }
        let (end, _) = self.aim(entry, gear, flat, found.end.max(entry.low), found.power);
        found.or(self.judged(entry, gear, next, piece, end))
    }

    /// What an end costs from here on.
    #[inline]
    fn judged(&self, entry: &Entry<'_>, gear: In, next: Line<'_>, piece: usize, end: f64) -> Choice {
        let (time, mean) = (entry.time(end), 0.5 * (entry.speed + end));
        let power = greater(entry.work(end) / (self.way.efficiency * time), 0.0);
        let counted = self.counted(gear, mean, power);
        if counted == f64::INFINITY {
            return Choice::NONE;
        }
        let later = next.within(next.at(end, next.piece(end, piece)));
        Choice { end, power, cost: time * (1.0 + self.price * counted) + later }
    }

    /// Charge of a power at a mean speed, W.
    #[inline]
    pub(super) fn charge(&self, gear: In, mean: f64, power: f64) -> f64 {
        self.account.charge_w(power, self.gearing.rpm[self.gearing.used(gear, mean, power)] * mean)
    }

    /// The same with the reluctance to pedal in the gear: what is chosen by, W.
    #[inline]
    fn counted(&self, gear: In, mean: f64, power: f64) -> f64 {
        let used = self.gearing.used(gear, mean, power);
        let reluctance = if power > 0.0 { self.gearing.reluctance[used] } else { 0.0 };
        self.account.charge_w(power, self.gearing.rpm[used] * mean) + reluctance
    }
}
