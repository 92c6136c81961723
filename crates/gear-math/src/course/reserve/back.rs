//! The pass against the riding, which finds what it is worth to be anywhere.

use crate::course::reserve::entry::Entry;
use crate::course::reserve::field::{Field, Line, NEVER};
use crate::course::reserve::planner::Planner;

/// The pass against the riding, with its room to work in.
#[derive(Debug)]
pub(super) struct Pass<'a> {
    planner: &'a Planner<'a>,
    /// Power of the best way on from every node, from which that of the step before is looked for, W.
    powers: Vec<f64>,
    /// Cost of riding on without a shift, s.
    riding: Vec<f64>,
    /// The same by gear after a shift at the rear.
    shifted: Vec<f64>,
}

impl<'a> Pass<'a> {
    pub(super) fn new(planner: &'a Planner<'a>, nodes: usize) -> Self {
        let (gears, usual) = (planner.gears(), planner.rule.account.sustainable_w());
        Self {
            planner,
            powers: vec![usual; nodes * gears],
            riding: vec![NEVER; nodes * gears],
            shifted: vec![NEVER; gears],
        }
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

    fn ride(&mut self, field: &Field, at: usize) {
        let way = self.planner.rule.way;
        let range = field.range(at + 1);
        for (node, &speed) in field.speeds(at).iter().enumerate() {
            let entry = Entry::new(way, &way.cells[at], speed, range);
            let pedalled = self.planner.pedalled(speed);
            for gear in 0..field.gears {
                let slot = gear * field.nodes + node;
                let line = field.line(at + 1, gear);
                let choice = self.planner.ride(&entry, pedalled, gear, line, node, self.powers[slot]);
                self.riding[slot] = choice.cost;
                self.powers[slot] = choice.power;
            }
        }
    }

    /// On foot over the step, or getting on before it.
    fn go_on_foot(&self, field: &mut Field, at: usize) {
        let on_foot = self.planner.foot_cost(at) + field.foot[at + 1];
        let riding = self.planner.set_off(at).map(|speed| {
            let speeds = field.speeds(at);
            let lines = self.riding.chunks(field.nodes).map(|values| Line { speeds, values });
            self.planner.rule.way.on + lines.map(|line| line.value(speed, 0)).fold(NEVER, f64::min)
        });
        field.foot[at] = riding.map_or(on_foot, |riding| riding.min(on_foot));
    }

    /// Riding on in the same gear, or in another after a shift.
    fn shift(&mut self, field: &mut Field, at: usize) {
        let size = field.gears * field.nodes;
        field.values[at * size..(at + 1) * size].copy_from_slice(&self.riding);
        if self.planner.geared {
            for node in 0..field.nodes {
                self.shift_at(field, at, node);
            }
        }
    }

    fn shift_at(&mut self, field: &mut Field, at: usize, node: usize) {
        let (gearing, nodes) = (self.planner.rule.gearing, field.nodes);
        let speeds = field.speeds(at);
        let after = |loss: f64| (speeds[node] * speeds[node] - loss).max(0.0).sqrt();
        let (rear, front) = (after(gearing.rear), after(gearing.front));
        let mut best_front = NEVER;
        for (values, shifted) in self.riding.chunks(nodes).zip(&mut self.shifted) {
            let line = Line { speeds, values };
            *shifted = line.value(rear, node);
            best_front = best_front.min(line.value(front, node));
        }
        for gear in 0..field.gears {
            let rings = (0..field.gears).filter(|other| gearing.same_ring(gear, *other));
            let best = rings.map(|other| self.shifted[other]).fold(best_front, f64::min);
            let value = &mut field.values[(at * field.gears + gear) * nodes + node];
            *value = value.min(best);
        }
    }

    fn get_off(&self, field: &mut Field, at: usize) {
        let off = self.planner.rule.way.off + field.foot[at];
        let Field { nodes, gears, speeds, values, .. } = field;
        let speeds = &speeds[at * *nodes..(at + 1) * *nodes];
        for values in values[at * *gears * *nodes..(at + 1) * *gears * *nodes].chunks_mut(*nodes) {
            for (value, &speed) in values.iter_mut().zip(speeds) {
                *value = value.min(off + Planner::fall(speed));
            }
        }
    }
}
