//! The pass against the riding, which finds what it is worth to be anywhere.

use crate::course::reserve::entry::Entry;
use crate::course::reserve::field::{Field, NEVER, greater, lesser};
use crate::course::reserve::planner::Planner;

/// The pass against the riding, with its room to work in.
#[derive(Debug)]
pub(super) struct Pass<'a> {
    planner: &'a Planner<'a>,
    /// Power of the best way on from every node, from which that of the step before is looked for, W.
    powers: Vec<f64>,
    /// The least of it by ring after a shift at the rear.
    shifted: Vec<f64>,
}

impl<'a> Pass<'a> {
    pub(super) fn new(planner: &'a Planner<'a>, nodes: usize) -> Self {
        let (gears, usual) = (planner.gears(), planner.rule.account.sustainable_w());
        let rings = planner.rule.gearing.rings.iter().max().map_or(0, |last| last + 1);
        Self { planner, powers: vec![usual; nodes * gears], shifted: vec![NEVER; rings] }
    }

    /// Fills a field in front of a place whose values stand.
    pub(super) fn back(&mut self, field: &mut Field, from: usize) {
        for at in (0..from).rev() {
            self.ride(field, at);
            self.go_on_foot(field, at);
            self.shift(field, at);
            self.get_off(field, at);
        }
    }

    fn ride(&mut self, field: &mut Field, at: usize) {
        let way = self.planner.rule.way;
        let range = field.range(at + 1);
        for node in 0..field.nodes {
            let speed = field.knots(at)[node].speed;
            let entry = Entry::new(way, &way.cells[at], speed, range);
            let cranks = self.planner.cranks_at(speed);
            if self.pedal(field, at, node, &entry, cranks) {
                self.idle(field, at, node, &entry, cranks);
            }
        }
    }

    /// Rides on in the gears that are pedalled in, and says whether somebody coasts in one of them.
    fn pedal(
        &mut self,
        field: &mut Field,
        at: usize,
        node: usize,
        entry: &Entry<'_>,
        cranks: [f64; 2],
    ) -> bool {
        let mut coasts = false;
        for gear in 0..field.gears {
            let slot = gear * field.nodes + node;
            let place = at * field.gears * field.nodes + slot;
            field.riding[place] = NEVER;
            if self.planner.is_pedalled(gear, cranks) {
                let (chosen, line) = (self.planner.gear(gear), field.line(at + 1, gear));
                let choice = self.planner.rule.best(entry, chosen, line, node, self.powers[slot]);
                field.riding[place] = choice.cost;
                self.powers[slot] = choice.power;
                coasts |= choice.power <= 0.0;
            }
        }
        coasts
    }

    /// Rides on in the others, which nobody is in who does not coast.
    fn idle(&self, field: &mut Field, at: usize, node: usize, entry: &Entry<'_>, cranks: [f64; 2]) {
        let Some(ways) = self.planner.rule.undriven(entry, field.line(at + 1, 0), node) else { return };
        for gear in 0..field.gears {
            if !self.planner.is_pedalled(gear, cranks) {
                let line = field.line(at + 1, gear);
                let [coasted, braked] = ways.map(|way| way.then(line));
                field.riding[(at * field.gears + gear) * field.nodes + node] = lesser(coasted, braked);
            }
        }
    }

    /// On foot over the step, or getting on before it.
    fn go_on_foot(&self, field: &mut Field, at: usize) {
        let on_foot = self.planner.foot_cost(at) + field.foot[at + 1];
        let riding =
            self.planner.set_off(at).map(|speed| self.planner.rule.way.on + self.set_off(field, at, speed));
        field.foot[at] = riding.map_or(on_foot, |riding| riding.min(on_foot));
    }

    /// Cost of riding on from the speed of setting off itself: the nodes on both sides may be bound by balance where it is not,
    /// or the other way about.
    fn set_off(&self, field: &Field, at: usize, speed: f64) -> f64 {
        let (planner, node) = (self.planner, field.line(at, 0).piece(speed, 0));
        let entry = Entry::new(planner.rule.way, &planner.rule.way.cells[at], speed, field.range(at + 1));
        let cranks = planner.cranks_at(speed);
        let pedalled = (0..field.gears).filter(|gear| planner.is_pedalled(*gear, cranks));
        let costs = pedalled.map(|gear| {
            let (line, power) = (field.line(at + 1, gear), self.powers[gear * field.nodes + node]);
            planner.rule.best(&entry, planner.gear(gear), line, node, power).cost
        });
        costs.fold(NEVER, lesser)
    }

    /// Riding on in the same gear, or in another after a shift.
    fn shift(&mut self, field: &mut Field, at: usize) {
        let size = field.gears * field.nodes;
        let Field { values, riding, .. } = field;
        values[at * size..(at + 1) * size].copy_from_slice(&riding[at * size..(at + 1) * size]);
        if self.planner.geared {
            for node in 0..field.nodes {
                self.shift_at(field, at, node);
            }
        }
    }

    fn shift_at(&mut self, field: &mut Field, at: usize, node: usize) {
        let (gearing, nodes) = (self.planner.rule.gearing, field.nodes);
        let speed = field.knots(at)[node].speed;
        let after = |loss: f64| field.riding(at, 0).place(greater(speed * speed - loss, 0.0).sqrt(), node);
        let [rear, front] = [gearing.rear, gearing.front].map(after);
        let mut best_front = NEVER;
        self.shifted.fill(NEVER);
        for (gear, &ring) in gearing.rings.iter().enumerate() {
            let line = field.riding(at, gear);
            self.shifted[ring] = lesser(self.shifted[ring], rear.map_or(NEVER, |place| line.within(place)));
            best_front = lesser(best_front, front.map_or(NEVER, |place| line.within(place)));
        }
        for (gear, &ring) in gearing.rings.iter().enumerate() {
            let value = &mut field.values[(at * field.gears + gear) * nodes + node];
            *value = lesser(*value, lesser(self.shifted[ring], best_front));
        }
    }

    fn get_off(&self, field: &mut Field, at: usize) {
        let off = self.planner.off + field.foot[at];
        let Field { nodes, gears, knots, values, .. } = field;
        let knots = &knots[at * *nodes..(at + 1) * *nodes];
        for values in values[at * *gears * *nodes..(at + 1) * *gears * *nodes].chunks_mut(*nodes) {
            for (value, knot) in values.iter_mut().zip(knots) {
                *value = lesser(*value, off + Planner::fall(knot.speed));
            }
        }
    }
}
