//! The power that a price of work makes worth while.

use crate::rider::account::EffortAccount;

/// Rounds in which the cadence liked and the power settle on each other; the first guess is usually near.
const ROUNDS: usize = 1;
/// A watt more is felt as this much at least. Estimate, against a guess far off.
const LEAST_FELT: f64 = 0.2;
/// Where a joule is worth as much no less than what lasts is worth pedalling, since no more than all of it is repaid.
const SURELY: f64 = 1.0;

impl EffortAccount {
    /// The power at a cadence up to which one more joule at the crank charges no more than `worth` joules, looked for from a
    /// guess.
    ///
    /// # Formula
    /// h′(P) = w. With h that of [`charge`](Self::charge), w′ = w dP/dP_c: P_c = P_m − (P_m − C)/√w′ where that is above C, C
    /// where coasting does not serve better, else nothing. Between nothing and C the charge bends down, so that no power there
    /// serves better than the two by turns.
    #[inline]
    pub(crate) fn power_worth(&self, worth: f64, cadence_rpm: f64, guess_w: f64) -> f64 {
        let peak = self.peak_w(cadence_rpm);
        let held = self.held_of(peak);
        if held <= 0.0 {
            return 0.0;
        }
        if worth >= SURELY {
            let power = self.power_above(worth, cadence_rpm, guess_w.max(held), (peak, held));
            if power >= held {
                return power;
            }
        }
        let (factor, felt) = self.felt_per_watt(held, cadence_rpm);
        let lasting = held / factor;
        if worth * lasting <= self.repaid_w() {
            0.0
        } else if worth <= felt {
            lasting
        } else {
            self.power_above(worth, cadence_rpm, guess_w.max(lasting), (peak, held)).max(lasting)
        }
    }

    #[inline]
    fn power_above(&self, worth: f64, cadence_rpm: f64, guess_w: f64, (peak, held): (f64, f64)) -> f64 {
        let mut power = guess_w;
        for _ in 0..ROUNDS {
            let (factor, felt) = self.felt_per_watt(power, cadence_rpm);
            power = (peak - (peak - held) * (felt / worth).sqrt()) / factor;
        }
        power
    }

    /// What cadence makes of a power, and what a watt more is felt as.
    #[inline]
    fn felt_per_watt(&self, power_w: f64, cadence_rpm: f64) -> (f64, f64) {
        let (ratio, growth) = self.ratio_and_growth(power_w, cadence_rpm);
        let off = ratio - 1.0;
        let factor = 1.0 + self.cadence_cost.value() * off * off;
        let bend = 2.0 * self.cadence_cost.value() * off * ratio * growth;
        (factor, (factor - power_w * bend).max(LEAST_FELT))
    }
}
