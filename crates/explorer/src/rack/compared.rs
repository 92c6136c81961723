//! All kept bikes and those on the bench, side by side.

use crate::lap::settled::Settled;
use crate::rack::behind::Behind;
use crate::rack::bench_laps::BenchLaps;
use crate::rack::column::Column;
use crate::rack::row::{Row, Whose};
use crate::side::Side;
use gear_math::course::DrawnBand;
use gear_math::order::ascending;

/// The comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// The bikes, in the order of the table.
    pub rows: Vec<Row>,
    /// What they are ordered by, and whether from the highest down; the order of bench and rack when `None`.
    pub order: Option<(Column, bool)>,
    /// The course of the laps.
    pub course: String,
    /// That course as rows, round which the laps are ridden.
    pub rows_of_course: String,
    /// The laps of A and B as their own section has them, once it has.
    pub bench_laps: Option<BenchLaps>,
    /// Shares of the time that A's lap spends at developments, in metres; empty before it is ridden.
    pub needs: Vec<(f64, f64)>,
    /// Whether laps are ridden at an even power, which are not compared here.
    pub is_even: bool,
}

impl Compared {
    /// Draws that a lap is ridden with before its edges are told.
    pub const DRAWS: usize = DrawnBand::LEAST;

    /// The bike with the quickest lap of those that are ridden.
    #[must_use]
    pub fn best(&self) -> Option<&Row> {
        let ridden = self.bikes().filter(|row| row.lap_s.is_some());
        ridden.min_by(|a, b| a.lap_s.unwrap_or(f64::MAX).total_cmp(&b.lap_s.unwrap_or(f64::MAX)))
    }

    /// Every bike once: one that is kept and on the bench is told by its name.
    pub fn bikes(&self) -> impl Iterator<Item = &Row> {
        let is_kept = |row: &Row| {
            self.rows.iter().any(|other| other.link == row.link && matches!(other.whose, Whose::Kept { .. }))
        };
        self.rows.iter().filter(move |row| matches!(row.whose, Whose::Kept { .. }) || !is_kept(row))
    }

    /// Whether any bike is on the rack beside those on the bench.
    #[must_use]
    pub fn has_kept(&self) -> bool {
        self.rows.iter().any(|row| matches!(row.whose, Whose::Kept { .. }))
    }

    /// Whether no other bike beats this one.
    #[must_use]
    pub fn is_unbeaten(&self, row: &Row) -> bool {
        !self.rows.iter().any(|other| other.beats(row))
    }

    /// Orders the rows by a column, the other way round where they were already.
    pub fn sort(&mut self, by: Column) {
        let falls = self.order == Some((by, false));
        self.order = Some((by, falls));
        self.sort_again();
    }

    /// Brings the rows back into the order that was asked for.
    pub fn sort_again(&mut self) {
        let Some((by, falls)) = self.order else { return };
        // What is not known comes last either way.
        ascending(&mut self.rows, |row| {
            by.rank(row).map_or(f64::INFINITY, |rank| if falls { -rank } else { rank })
        });
    }

    /// Takes the time of a bike's lap.
    pub fn take_lap(&mut self, errand: &str, lap_s: f64) {
        self.each_riding_as(errand, |row| row.lap_s = Some(lap_s));
        self.sort_again();
    }

    /// Takes the times of a bike's lap in the draws, in their order.
    pub fn take_draws(&mut self, errand: &str, drawn_s: &[f64]) {
        self.each_riding_as(errand, |row| row.drawn_s = drawn_s.to_vec());
    }

    /// Changes every bike whose lap is that of the one with this errand.
    fn each_riding_as(&mut self, errand: &str, change: impl Fn(&mut Row)) {
        let Some(rides) = self.rows.iter().find(|row| row.errand == errand).map(|row| row.rides) else {
            return;
        };
        self.rows.iter_mut().filter(|row| row.rides == rides).for_each(change);
    }

    /// Takes what the lap's own section has of A and B, or that it has nothing of them as they are.
    pub fn take_bench_laps(&mut self, laps: Option<BenchLaps>) {
        self.bench_laps = laps;
        let Some(times_s) = self.bench_laps.as_ref().map(|laps| laps.times_s) else { return };
        for side in Side::BOTH {
            if let Some(errand) = self.on_bench(side).map(|row| row.errand.clone()) {
                self.each_riding_as(&errand, |row| row.lap_s = Some(times_s[side as usize]));
            }
        }
        self.sort_again();
    }

    /// The bike on a side of the bench.
    #[must_use]
    pub fn on_bench(&self, side: Side) -> Option<&Row> {
        self.rows.iter().find(|row| row.whose == Whose::Bench(side))
    }

    /// What the lap's own section says of A and B, where they are two bikes and there are others.
    #[must_use]
    pub fn settled(&self) -> Option<&Settled> {
        let [a, b] = Side::BOTH.map(|side| self.on_bench(side).map(|row| row.rides));
        self.bench_laps.as_ref().and_then(|laps| laps.settled.as_ref()).filter(|_| a != b)
    }

    /// What a bike loses on the best one: between A and B what the lap's own section says.
    #[must_use]
    pub fn behind(&self, row: &Row, best: &Row) -> Option<Behind> {
        let is_on = |row: &Row, side| self.on_bench(side).is_some_and(|it| it.rides == row.rides);
        let faces = |side: &Side| is_on(best, *side) && is_on(row, side.other());
        match (self.settled(), Side::BOTH.into_iter().find(faces)) {
            (Some(settled), Some(side)) => Some(Behind::as_settled(settled, side)),
            _ => Behind::of(row, best),
        }
    }

    /// A link for every lap that is still to be ridden, or drawn.
    #[must_use]
    pub fn open(&self) -> Vec<String> {
        let mut open: Vec<&Row> = Vec::new();
        for row in self.rows.iter().filter(|row| row.lap_s.is_none() || !row.is_banded()) {
            if open.iter().all(|it| it.rides != row.rides) {
                open.push(row);
            }
        }
        open.into_iter().map(|row| row.errand.clone()).collect()
    }

    /// Takes over the laps of an earlier comparison round the same course by the same rider.
    pub fn keep_laps(&mut self, before: &Self) {
        for row in &mut self.rows {
            if let Some(known) = before.rows.iter().find(|known| known.rides == row.rides) {
                (row.lap_s, row.drawn_s) = (known.lap_s, known.drawn_s.clone());
            }
        }
        self.order = before.order;
        self.sort_again();
    }

    /// Bikes that are kept, apart from those on the bench.
    #[must_use]
    pub fn kept(&self) -> usize {
        self.rows.iter().filter(|row| matches!(row.whose, Whose::Kept { .. })).count()
    }
}
