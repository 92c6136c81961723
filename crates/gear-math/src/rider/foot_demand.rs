//! What going on foot takes at any speed, up and down.

use crate::rider::air::Air;
use crate::rider::burden::{Underfoot, Ways};
use crate::rider::ground::Ground;
use crate::rider::on_foot::{Gaits, Incline};
use crate::rider::quantity::Gradient;
use crate::rider::rider::{Bike, Rider};

/// The power that would have to be turned at the crank for the muscles to burn as much as a speed on foot takes, on one slope
/// and ground. Wind is left out: on foot it makes less than 2 % up to 5 m/s.
///
/// # Formula
/// P = GE \[p₀ m + C v + k m v³\], with C what a metre costs by the cheaper of the ways in which the bike may go along, between
/// those of walking and running from [`Incline`]; downhill the speeds of the gaits are those of the level, an estimate, because
/// nobody measured them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FootDemand {
    efficiency: f64,
    /// Of standing still, W.
    standing: f64,
    /// Of running and walking, for the whole person with the bike, J/m.
    costs: Ways<(f64, f64)>,
    /// Between these speeds a walk is hurried, m/s.
    economical: f64,
    transition: f64,
    /// J·s²/m³.
    drag: f64,
}

impl FootDemand {
    pub(crate) fn new(rider: &Rider, bike: &Bike, air: &Air, ground: &Ground, gradient: Gradient) -> Self {
        let incline = Incline::up_or_down(gradient);
        let ways = Ways::new(rider, bike, bike.load.value(), rider.efficiency.share());
        let underfoot = Underfoot::from(ground);
        let costs = ways.map(|way| {
            let (run, walk) = way.costs(&incline, &underfoot);
            (run, if rider.gaits == Gaits::RunOnly { run } else { walk })
        });
        Self {
            efficiency: rider.efficiency.share(),
            standing: rider.standing.w_per_kg() * rider.body.kg(),
            costs,
            economical: incline.economical.m_per_s(),
            transition: incline.transition.m_per_s(),
            drag: air.foot_drag.j_s2_per_kg_m3() * rider.body.kg(),
        }
    }

    /// At a speed in m/s, in W at the crank.
    pub(crate) fn crank_w(&self, speed: f64) -> f64 {
        let hurry = (speed - self.economical) / (self.transition - self.economical);
        let hurry = hurry.clamp(0.0, 1.0);
        let costs = self.costs.map(|(run, walk)| walk + (run - walk) * hurry * hurry);
        let cost = costs.best(|a, b| a < b) + self.drag * speed * speed;
        self.efficiency * (self.standing + cost * speed)
    }
}
