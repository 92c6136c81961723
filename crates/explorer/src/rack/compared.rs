//! All kept bikes and those on the bench, side by side.

use crate::rack::column::Column;
use crate::rack::row::{Row, Whose};
use crate::speed_unit::SpeedUnit;
use gear_math::course::DrawnBand;
use gear_math::order::ascending;

/// The comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// The bikes, in the order of the table.
    pub rows: Vec<Row>,
    /// What they are ordered by, and whether from the highest down; the order of bench and rack when `None`.
    pub order: Option<(Column, bool)>,
    /// Unit of all speeds.
    pub unit: SpeedUnit,
    /// The course of the laps.
    pub course: String,
    /// That course as rows, round which the laps are ridden.
    pub rows_of_course: String,
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
        let best = self.best().cloned();
        let rank = |row: &Row| by.rank(row, best.as_ref());
        // What is not known comes last either way.
        ascending(&mut self.rows, |row| {
            rank(row).map_or(f64::INFINITY, |rank| if falls { -rank } else { rank })
        });
    }

    /// Takes the time of a bike's lap.
    pub fn take_lap(&mut self, link: &str, lap_s: f64) {
        self.rows.iter_mut().filter(|row| row.link == link).for_each(|row| row.lap_s = Some(lap_s));
        self.sort_again();
    }

    /// Takes the times of a bike's lap in the draws, in their order.
    pub fn take_draws(&mut self, link: &str, drawn_s: &[f64]) {
        self.rows.iter_mut().filter(|row| row.link == link).for_each(|row| row.drawn_s = drawn_s.to_vec());
    }

    /// Takes over the laps of an earlier comparison round the same course by the same rider.
    pub fn keep_laps(&mut self, before: &Self) {
        for row in &mut self.rows {
            if let Some(known) = before.rows.iter().find(|known| known.link == row.link) {
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
