//! The best way through a step at a price of a charged joule.

use crate::course::reserve::entry::Entry;
use crate::course::reserve::field::{Line, NEVER, greater};
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
    /// At the crank, were the chain straight, W.
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

/// What is thought of a step before it is tried.
#[derive(Debug, Clone, Copy)]
struct Guess {
    end: f64,
    power: f64,
    /// Charge, W, and its growth with the speed at the end.
    charge: f64,
    growth: f64,
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
        let within = |node: &usize| (entry.low..=entry.high).contains(&next.speeds[*node]);
        let at_node = |node| (node, self.judged(entry, gear, next, node, next.speeds[node]));
        let nodes = (0..next.speeds.len()).filter(within).map(at_node);
        match nodes.min_by(|a, b| a.1.cost.total_cmp(&b.1.cost)) {
            Some((node, other)) if other.cost < found.cost => {
                self.best(entry, gear, next, node, other.power).or(other)
            }
            _ => found,
        }
    }

    /// The best way without drive.
    #[inline]
    pub(super) fn idle(&self, entry: &Entry<'_>, gear: In, next: Line<'_>, node: usize) -> Choice {
        if !entry.is_possible() || entry.coast < entry.low {
            return Choice::NONE;
        }
        let [coasted, braked] =
            [entry.coast.min(entry.high), entry.low].map(|end| self.judged(entry, gear, next, node, end));
        coasted.or(braked)
    }

    /// The end at which the value of more speed is what it costs, and its piece: pieces are left for the one that an end lies in,
    /// and where two lead to one another it is the node between them.
    #[inline]
    fn found(&self, entry: &Entry<'_>, gear: In, next: Line<'_>, node: usize, power: f64) -> (f64, usize) {
        let mut guess = self.guess(entry, gear, entry.allowed(entry.speed), power);
        let mut piece = next.piece(guess.end, node);
        let (mut lowest, mut highest) = (0, next.last());
        for _ in 0..MOST_PIECES {
            let (end, power) = self.aim(entry, gear, next.slope(piece), &guess);
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
                return (entry.allowed(next.speeds[node]), piece);
            }
            piece = target.clamp(lowest, highest);
            let end = end.clamp(next.speeds[piece], next.speeds[piece + 1]);
            guess = self.guess(entry, gear, end, power);
        }
        (guess.end, piece)
    }

    #[inline]
    fn guess(&self, entry: &Entry<'_>, gear: In, end: f64, power: f64) -> Guess {
        let mean = 0.5 * (entry.speed + end);
        let used = self.gearing.used(gear, mean, power);
        let (rpm, crank) = (self.gearing.rpm[used] * mean, self.gearing.crossing[used] * power);
        let charge = self.account.charge_w(crank, rpm);
        if self.account.held_w(rpm) >= self.account.sustainable_w() {
            return Guess { end, power, charge: if charge.is_finite() { charge } else { 0.0 }, growth: 0.0 };
        }
        let quicker = self.account.charge_w(crank, (1.0 + NUDGE) * rpm);
        let known = quicker.is_finite() && charge.is_finite();
        let growth = (quicker - charge) / (2.0 * NUDGE * mean);
        if known {
            Guess { end, power, charge, growth }
        } else {
            Guess { end, power, charge: 0.0, growth: 0.0 }
        }
    }

    /// End and power of a step behind which the value falls by `-slope` per m²/s².
    ///
    /// # Formula
    /// λ h′ (m_e/(2 η) + P |t′|) = −V′ + |t′| (1 + λ h) − λ t h_v, all changes by v₂², with |t′| = L/((v + v₂)² v₂). Without drive
    /// it coasts where |t′| (1 − λ ρ CP) ≥ V′, else it brakes.
    #[inline]
    fn aim(&self, entry: &Entry<'_>, gear: In, slope: f64, guess: &Guess) -> (f64, f64) {
        let (sum, end) = (entry.speed + guess.end, guess.end);
        let quicker = entry.cell.length / (sum * sum * end);
        let turning = self.price * entry.cell.length * guess.growth / (sum * end);
        let gain = quicker * (1.0 + self.price * guess.charge) - slope - turning;
        let joules = 0.5 * entry.mass / self.way.efficiency + guess.power * quicker;
        let mean = 0.5 * sum;
        let used = self.gearing.used(gear, mean, guess.power);
        let (rpm, crossing) = (self.gearing.rpm[used] * mean, self.gearing.crossing[used]);
        let worth = gain / (self.price * joules * crossing);
        let power = self.account.power_worth(worth, rpm, crossing * guess.power) / crossing;
        if power > 0.0 {
            return (entry.allowed(entry.end_near(self.way.efficiency * power, end)), power);
        }
        let idle = 1.0 - self.price * self.account.repaid_w();
        let end = if idle * quicker >= slope { entry.coast } else { entry.low };
        (entry.allowed(end), 0.0)
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
        let guess = Guess { end: found.end.max(entry.low), power: found.power, charge: 0.0, growth: 0.0 };
        let (end, _) = self.aim(entry, gear, flat, &guess);
        found.or(self.judged(entry, gear, next, piece, end))
    }

    /// What an end costs from here on.
    #[inline]
    fn judged(&self, entry: &Entry<'_>, gear: In, next: Line<'_>, piece: usize, end: f64) -> Choice {
        let (time, mean) = (entry.time(end), 0.5 * (entry.speed + end));
        let power = greater(entry.work(end) / (self.way.efficiency * time), 0.0);
        let charge = self.charge(gear, mean, power);
        if charge == f64::INFINITY {
            return Choice::NONE;
        }
        let later = next.at(end, next.piece(end, piece));
        Choice { end, power, cost: time * (1.0 + self.price * charge) + later }
    }

    /// Charge of a power at a mean speed, W.
    #[inline]
    pub(super) fn charge(&self, gear: In, mean: f64, power: f64) -> f64 {
        let used = self.gearing.used(gear, mean, power);
        self.account.charge_w(self.gearing.crossing[used] * power, self.gearing.rpm[used] * mean)
    }
}
