//! What a bike loses on another.

use crate::lap::settled::{Settled, quicker};
use crate::rack::row::Row;
use crate::side::Side;
use gear_math::course::{DrawnBand, LapDraw, Quicker, TimeBand};

/// What one bike loses on another round the lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Behind {
    /// In seconds; its edges are the best guess too before enough is drawn.
    pub time: TimeBand,
    /// Whether enough is drawn to tell its likely edges.
    pub is_banded: bool,
    /// Whether it may be none.
    pub is_open: bool,
}

impl Behind {
    /// By the laps of both and what is drawn of them; nothing before both are ridden.
    #[must_use]
    pub fn of(row: &Row, best: &Row) -> Option<Self> {
        let time_s = row.lap_s? - best.lap_s?;
        let pair = |(&best, &own): (&f64, &f64)| LapDraw { time_s: [own, best], on_foot_m: [vec![], vec![]] };
        let draws: Vec<LapDraw> = best.drawn_s.iter().zip(&row.drawn_s).map(pair).collect();
        let Some(drawn) = DrawnBand::of(&draws, LapDraw::STEP_ERROR_S) else {
            let time = TimeBand { low_s: time_s, time_s, high_s: time_s };
            return Some(Self { time, is_banded: false, is_open: true });
        };
        let time = drawn.gained.with_best(time_s);
        Some(Self { time, is_banded: true, is_open: quicker(&time, &drawn) == Quicker::TooClose })
    }

    /// What the other side loses on the one that is best, as the lap's own section says it.
    #[must_use]
    pub fn as_settled(settled: &Settled, best: Side) -> Self {
        let is_open = settled.quicker() == Quicker::TooClose;
        Self { time: settled.gain_of(best), is_banded: true, is_open }
    }
}
