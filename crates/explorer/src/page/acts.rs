//! What the page's buttons do to the desk.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::page::desk::{Desk, Update};
use crate::page::scenario::Scenario;
use crate::side::Side;
use std::rc::Rc;

impl Desk {
    /// Does what a button says; `None` when there is no such button.
    pub fn act(&mut self, name: &str) -> Option<Update> {
        let (name, number) = name.split_once(':').unwrap_or((name, ""));
        if name == "order-bikes" {
            return self.order_bikes(number);
        }
        if name == "order-box" {
            return self.order_box(number);
        }
        self.look_back();
        let own = self.report.lap.own.clone();
        let (next, good) = match name {
            "bench-a" => (self.with_found(number, [Field::RingsA, Field::CassetteA])?, self.good.clone()),
            "bench-b" => (self.with_found(number, [Field::RingsB, Field::CassetteB])?, self.good.clone()),
            "box-a" => (self.with_combination(number, Side::A)?, self.good.clone()),
            "box-b" => (self.with_combination(number, Side::B)?, self.good.clone()),
            "bike-a" => (self.rack.on_bench(number, Side::A, &self.bench), self.good.clone()),
            "bike-b" => (self.rack.on_bench(number, Side::B, &self.bench), self.good.clone()),
            "mine" => (self.with_claimed(number)?, self.good.clone()),
            "sketch-it" => (self.with_course_sketched(), self.good.clone()),
            "first-lap" => (self.with_first_lap(true)?, self.good.clone()),
            "all-laps" => (self.with_first_lap(false)?, self.good.clone()),
            "swap" => (self.bench.swapped(), self.good.rearranged(Bench::swapped)),
            "copy" => (self.bench.with_a_copied_to_b(), self.good.rearranged(Bench::with_a_copied_to_b)),
            "units" => (self.bench.with_units(number)?, self.good.clone()),
            "reset" => (Bench::default().with_units_of(&self.bench), Scenario::default()),
            "undo" => self.back(),
            _ => return None,
        };
        let is_other = self.report.lap.own.as_ref().map(Rc::as_ptr) != own.as_ref().map(Rc::as_ptr);
        if name != "undo" && (next != self.bench || is_other) {
            self.history.remember(&self.bench, &self.good, own.as_ref(), None);
        }
        self.notices.clear();
        let mut update = self.lay_out(next, good);
        update.link = Some(self.link());
        Some(update)
    }

    /// The bench with all that the demo put into the group of a field taken for the rider's own.
    fn with_claimed(&self, key: &str) -> Option<Bench> {
        let (group, mut bench) = (Field::by_key(key)?.spec().group, self.bench.clone());
        let in_group = |field: &&Field| field.spec().group == group;
        let demos = |field: &&Field| self.bench.owner(**field) == Owner::Demo;
        Field::ALL.iter().filter(in_group).filter(demos).for_each(|&field| bench.claim(field));
        Some(bench)
    }
}
