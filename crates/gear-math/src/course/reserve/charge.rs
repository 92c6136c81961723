//! What a power at a cadence takes from the reserve.

/// rpm per W
const RPM_PER_W: f64 = 0.142;
const RPM_AT_REST: f64 = 42.5;
const LEAST_RPM: f64 = 40.0;
const FASTEST_RPM: f64 = 230.0;

/// h of one rider.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Charge {
    pub(crate) cp: f64,
    pub(crate) peak: f64,
    pub(crate) repaid: f64,
    pub(crate) kappa: f64,
    pub(crate) lasting: f64,
    /// Preferred at CP.
    pub(crate) own_rpm: f64,
}

impl Charge {
    pub(crate) fn line(cp: f64) -> f64 {
        RPM_AT_REST + RPM_PER_W * cp
    }

    fn preferred(&self, power: f64) -> f64 {
        (self.own_rpm + RPM_PER_W * (power - self.cp)).max(LEAST_RPM)
    }

    pub(crate) fn strength(&self, rpm: f64) -> f64 {
        let share = rpm * (1.0 / FASTEST_RPM);
        4.0 * self.peak * share * (1.0 - share)
    }

    #[inline(always)]
    pub(crate) fn charge_w(&self, power: f64, rpm: f64) -> f64 {
        if power <= 0.0 {
            return -self.repaid * self.cp;
        }
        let u = rpm / self.preferred(power) - 1.0;
        let felt = power * (1.0 + self.kappa * u * u);
        let most = self.strength(rpm);
        let lasting = self.cp.min(self.lasting * most);
        if felt <= lasting {
            -self.repaid * self.cp * (1.0 - felt / lasting)
        } else if felt < most {
            (felt - lasting) * (most - lasting) / (most - felt)
        } else {
            f64::INFINITY
        }
    }

    /// The power at which one more joule at the crank charges `worth` joules more.
    #[inline(always)]
    pub(crate) fn power_worth(&self, worth: f64, rpm: f64, guess: f64) -> f64 {
        let most = self.strength(rpm);
        let lasting = self.cp.min(self.lasting * most);
        if lasting <= 0.0 {
            return 0.0;
        }
        let (factor, slope) = self.felt(lasting, rpm);
        let held = lasting / factor;
        if worth * held <= self.repaid * self.cp {
            return 0.0;
        }
        if worth <= slope {
            return held;
        }
        let mut power = guess.max(held);
        for _ in 0..2 {
            let (factor, slope) = self.felt(power, rpm);
            power = ((most - (most - lasting) * (slope / worth).sqrt()) / factor).max(held);
        }
        power
    }

    /// Factor of the cadence at a power, and what a watt more is felt as.
    #[inline(always)]
    fn felt(&self, power: f64, rpm: f64) -> (f64, f64) {
        let preferred = self.preferred(power);
        let ratio = rpm / preferred;
        let u = ratio - 1.0;
        let factor = 1.0 + self.kappa * u * u;
        let bend = if preferred > LEAST_RPM { 2.0 * self.kappa * u * ratio * RPM_PER_W / preferred } else { 0.0 };
        (factor, (factor - power * bend).max(0.2))
    }

    pub(crate) fn on_foot_w(&self, power: f64) -> f64 {
        if power <= self.cp {
            -self.repaid * (self.cp - power)
        } else if power < self.peak {
            (power - self.cp) * (self.peak - self.cp) / (self.peak - power)
        } else {
            f64::INFINITY
        }
    }
}
