//! One engine for both ways of moving: what the muscles burn for a power at the crank.

use crate::rider::quantity::{BodyMass, GrossEfficiency, MetabolicPower, Power, StandingMetabolism};

impl GrossEfficiency {
    /// 0.23: a trained rider at race power, within the 0.20–0.25 of Moseley & Jeukendrup (2001, *Med Sci Sports
    /// Exerc* 33:621–627) and others; 0.22 is the better guess on steep ground.
    pub const TRAINED: Self = Self::known(0.23);
}

impl StandingMetabolism {
    /// 1.5 W/kg: the first term of Pandolf, Givoni & Goldman (1977, *J Appl Physiol* 43:577–581).
    pub const PANDOLF: Self = Self::known(1.5);
}

impl MetabolicPower {
    /// Everything the muscles and the rest of the body burn for a power at the crank.
    #[must_use]
    pub fn of(power: Power, efficiency: GrossEfficiency) -> Self {
        Self::new(power.watts() / efficiency.share())
    }

    /// What is left above standing still. The published costs on foot are above standing, so this is what pays
    /// for them; zero when standing alone takes more.
    #[must_use]
    pub fn above_standing(self, body: BodyMass, standing: StandingMetabolism) -> Self {
        Self::new((self.watts() - standing.w_per_kg() * body.kg()).max(0.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Energy from one millilitre of oxygen. Di Prampero et al. (1979, *J Appl Physiol* 47:201–206).
    const JOULES_PER_ML_OXYGEN: f64 = 20.9;

    #[test]
    fn oxygen_of_the_reference_rider() {
        let body = BodyMass::new(70.0).unwrap();
        let total = MetabolicPower::of(Power::new(250.0).unwrap(), GrossEfficiency::TRAINED);
        let net = total.above_standing(body, StandingMetabolism::PANDOLF);
        assert!((total.watts() - 1086.96).abs() < 0.01);
        assert!((net.watts() - 981.96).abs() < 0.01);
        let oxygen_ml_per_min = 60.0 * total.watts() / JOULES_PER_ML_OXYGEN;
        assert!((oxygen_ml_per_min - 3120.0).abs() < 5.0);
        assert!((oxygen_ml_per_min / body.kg() - 44.6).abs() < 0.05);
    }

    #[test]
    fn nothing_is_left_below_standing() {
        let body = BodyMass::new(150.0).unwrap();
        let little = MetabolicPower::of(Power::new(30.0).unwrap(), GrossEfficiency::TRAINED);
        assert_eq!(little.above_standing(body, StandingMetabolism::PANDOLF), MetabolicPower::new(0.0));
    }
}
