//! What goes along on foot, and what a metre of it costs.

use crate::physics::GRAVITY;
use crate::rider::foot_bike::FootBike;
use crate::rider::ground::Ground;
use crate::rider::on_foot::Incline;
use crate::rider::rider::{Bike, Rider};

/// One way of taking the bike along.
///
/// # Formula
/// C_S m_foot + m_bike g (sin + Crr cos) ∕ GE for a metre. Carried, m_foot has the bike with the factor of its load, and nothing is
/// pushed. Pushed, it has the rider alone, and what is pushed costs as much as the same work at the crank: an estimate, because
/// neither the arms' efficiency nor what pushing does to the stride was measured. Downhill the bike rolls by itself and gives
/// nothing back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Way {
    /// Mass that the legs carry, times the person's factor, kg.
    mass: f64,
    /// Weight that is pushed, over gross efficiency, N.
    pushed: f64,
}

impl Way {
    /// Running and walking on a slope of this ground, J/m for the whole person with the bike.
    pub(super) fn costs(&self, incline: &Incline, on: &Underfoot) -> (f64, f64) {
        let (run, walk) = incline.costs(on.extra, on.share);
        let push = self.pushed * (incline.sine + on.rolling * incline.cosine).max(0.0);
        (run * self.mass + push, walk * self.mass + push)
    }
}

/// What a ground does to someone on foot and to a bike that is pushed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Underfoot {
    /// Foot factor less one.
    pub(super) extra: f64,
    /// Slope share.
    pub(super) share: f64,
    /// Rolling coefficient.
    pub(super) rolling: f64,
}

impl From<&Ground> for Underfoot {
    fn from(ground: &Ground) -> Self {
        Self {
            extra: ground.foot.value() - 1.0,
            share: ground.slope_share.value(),
            rolling: ground.rolling.value(),
        }
    }
}

/// Something of each way that is open: one, or two of which the better counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ways<T> {
    first: T,
    second: Option<T>,
}

impl<T> Ways<T> {
    pub(super) fn map<U>(&self, of: impl Fn(&T) -> U) -> Ways<U> {
        Ways { first: of(&self.first), second: self.second.as_ref().map(of) }
    }

    pub(super) fn best(self, is_better: impl Fn(&T, &T) -> bool) -> T {
        match self.second {
            Some(second) if is_better(&second, &self.first) => second,
            _ => self.first,
        }
    }
}

impl Ways<Way> {
    /// Of a rider with a bike, who carries it at a load factor and pushes at an efficiency.
    pub(super) fn new(rider: &Rider, bike: &Bike, load: f64, efficiency: f64) -> Self {
        let legs = |mass: f64| rider.foot_cost.value() * mass;
        let person = rider.body.kg() + rider.kit.kg();
        let carried = Way { mass: legs(person + load.max(0.0) * bike.mass.kg()), pushed: 0.0 };
        let pushed = Way { mass: legs(person), pushed: bike.mass.kg() * GRAVITY / efficiency };
        match rider.foot_bike {
            FootBike::Carried => Self { first: carried, second: None },
            FootBike::Pushed => Self { first: pushed, second: None },
            FootBike::Quicker => Self { first: carried, second: Some(pushed) },
        }
    }

    /// Whether anything is pushed.
    pub(super) fn is_pushed(&self) -> bool {
        self.second.is_some() || self.first.pushed > 0.0
    }

    /// Of somebody whose cost on foot is a multiple.
    pub(super) fn times(&self, factor: f64) -> Self {
        self.map(|way| Way { mass: way.mass * factor, ..*way })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rider::{BikeMass, BodyMass, Gradient, KitMass, Power, Surface};
    use crate::{Circumference, Drivetrain};

    fn costs(how: FootBike, percent: f64) -> (f64, f64) {
        let rider =
            Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(230.0).unwrap());
        let drivetrain = Drivetrain { chainset: "40".parse().unwrap(), cassette: "11-32".parse().unwrap() };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2100.0).unwrap());
        let rider = Rider { foot_bike: how, ..rider };
        let ways = Ways::new(&rider, &bike, 1.2, 0.23);
        let incline = Incline::up_or_down(Gradient::new(percent).unwrap());
        let underfoot = Underfoot::from(&Surface::FirmGrass.ground());
        ways.map(|way| way.costs(&incline, &underfoot)).best(|a, b| a.0 < b.0)
    }

    /// 9 kg on a slope of 20 % take 9 · 9.81 · 0.19612 = 17.31 N besides what rolls.
    #[test]
    fn pushing_lifts_the_bike_and_rolls_it() {
        let ground = Surface::FirmGrass.ground();
        let person = |percent: f64| {
            let incline = Incline::up_or_down(Gradient::new(percent).unwrap());
            66.0 * incline.costs(ground.foot.value() - 1.0, ground.slope_share.value()).0
        };
        let pushed = |percent: f64| 0.23 * (costs(FootBike::Pushed, percent).0 - person(percent));
        let weight = 9.0 * GRAVITY;
        let rolling = |cosine: f64| weight * ground.rolling.value() * cosine;
        assert!((pushed(0.0) - rolling(1.0)).abs() < 1e-9);
        assert!((pushed(20.0) - 17.31 - rolling(0.980_58)).abs() < 0.01, "{}", pushed(20.0));
        assert!(pushed(-20.0).abs() < 1e-9, "downhill it rolls by itself and gives nothing back");
    }

    #[test]
    fn the_quicker_way_is_the_cheaper_one() {
        for percent in [-20.0, -3.0, 0.0, 8.0, 20.0, 33.0, 45.0] {
            let [carried, pushed, quicker] =
                [FootBike::Carried, FootBike::Pushed, FootBike::Quicker].map(|how| costs(how, percent));
            assert!((quicker.0 - carried.0.min(pushed.0)).abs() < 1e-12, "{percent}");
        }
        assert!(costs(FootBike::Pushed, 0.0).0 < costs(FootBike::Carried, 0.0).0, "it rolls on the level");
    }
}
