//! What a search found: lap time against lowest gear, the unbeaten ones full.

use super::palette::Palette;
use super::pen::{Anchor, Pen, Point, Type};
use super::scale::Scale;
use super::{Size, Spot};
use crate::number::with_unit;
use crate::report::{Found, Report, Side};
use crate::view::lap::clock;
use gear_math::{Candidate, Ranked};

const LEFT: f64 = 52.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 20.0;
const HEIGHT: f64 = 280.0;
/// Height while there is nothing to draw.
const EMPTY: f64 = 32.0;
const FLOOR: f64 = HEIGHT - 26.0;
/// Side of the squares of which each holds one mark at most, CSS pixels: more would only cover one another.
const CELL: f64 = 3.0;
/// Slower than the quickest by more than this share is only drawn when it is unbeaten, and then on the upper edge.
const SLOWEST: f64 = 1.15;
const DEVELOPMENTS: [f64; 12] = [0.8, 1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0];

struct Layout {
    across: Scale,
    up: Scale,
    limit: f64,
}

impl Layout {
    fn new(found: &Found, width: f64) -> Self {
        let all = || found.order.iter().map(|it| &it.candidate);
        let quickest = all().map(|it| it.time_s).fold(f64::INFINITY, f64::min);
        let limit = quickest * SLOWEST;
        let (mut low, mut high, mut slowest) = (f64::INFINITY, 0.0, quickest);
        for it in found.order.iter().filter(|it| it.unbeaten || it.candidate.time_s <= limit) {
            low = f64::min(low, it.candidate.lowest_development_m);
            high = f64::max(high, it.candidate.lowest_development_m);
            slowest = f64::max(slowest, it.candidate.time_s.min(limit));
        }
        Self {
            across: Scale::ratio((low, high), (LEFT + 8.0, width - RIGHT)),
            up: Scale::even((quickest, slowest), (FLOOR - 10.0, TOP + 6.0)),
            limit,
        }
    }

    fn at(&self, it: &Candidate) -> Point {
        (self.across.at(it.lowest_development_m), self.up.at(it.time_s.min(self.limit)))
    }
}

fn found(report: &Report) -> Option<&Found> {
    report.lap.found.as_deref().filter(|found| !found.order.is_empty())
}

pub(super) fn height(report: &Report) -> f64 {
    if found(report).is_some() { HEIGHT } else { EMPTY }
}

pub(super) fn label(report: &Report) -> String {
    match found(report) {
        None => "Nothing has been searched yet.".to_owned(),
        Some(found) => format!(
            "Lap time against lowest gear of {} set-ups; first is {}.",
            found.order.len(),
            describe(&found.order[0])
        ),
    }
}

pub(super) fn draw(pen: &mut Pen, look: &Palette, report: &Report, size: Size) {
    let Some(found) = found(report) else {
        pen.text("What a search finds is drawn here.", (4.0, 20.0), Type::new(look.soft, Anchor::Start));
        return;
    };
    let layout = Layout::new(found, size.0);
    draw_axes(pen, look, &layout, size.0);
    let columns = (size.0 / CELL) as usize + 1;
    let mut taken = vec![false; columns * ((HEIGHT / CELL) as usize + 1)];
    for unbeaten in [false, true] {
        let drawn =
            |it: &&Ranked| it.unbeaten == unbeaten && (unbeaten || it.candidate.time_s <= layout.limit);
        for it in found.order.iter().filter(drawn) {
            let at = layout.at(&it.candidate);
            let cell = (at.1 / CELL) as usize * columns + (at.0 / CELL) as usize;
            if unbeaten {
                pen.dot(at, 4.0, look.good);
            } else if taken.get(cell) == Some(&false) {
                taken[cell] = true;
                pen.ring(at, 2.0, look.soft, 1.0);
            }
        }
    }
    for side in Side::BOTH {
        let bench = &found.bench[side as usize];
        let Some(it) = found.order.iter().find(|it| it.candidate.drivetrain == *bench) else { continue };
        if it.candidate.time_s <= layout.limit {
            let at = layout.at(&it.candidate);
            pen.ring(at, 7.0, side.ink(look), 2.0);
            let away = if side == Side::A { -9.0 } else { 9.0 };
            pen.text(
                &side.to_string(),
                (at.0 + away, at.1 - 14.0),
                Type::new(side.ink(look), Anchor::Middle).bold(),
            );
        }
    }
}

fn draw_axes(pen: &mut Pen, look: &Palette, layout: &Layout, width: f64) {
    for time in layout.up.even_ticks(26.0) {
        let y = layout.up.at(time);
        pen.line((LEFT, y), (width - RIGHT, y), look.rule, 1.0);
        pen.text(&clock(time), (LEFT - 6.0, y), Type::new(look.soft, Anchor::End));
    }
    pen.line((LEFT, FLOOR), (width - RIGHT, FLOOR), look.ink, 1.0);
    for tick in layout.across.ticks(&DEVELOPMENTS, 44.0) {
        let x = layout.across.at(tick);
        pen.text(&with_unit(tick, 1, "m"), (x, FLOOR + 13.0), Type::new(look.soft, Anchor::Middle));
    }
    let set = |anchor| Type::new(look.soft, anchor);
    pen.text("lap time", (0.0, 8.0), set(Anchor::Start));
    pen.text("across: way per crank turn, lowest gear", (width - RIGHT, 8.0), set(Anchor::End));
}

pub(super) fn spots(report: &Report, size: Size) -> Vec<Spot> {
    let Some(found) = found(report) else { return Vec::new() };
    let layout = Layout::new(found, size.0);
    let listed = found.listed().map(|(place, _)| place).collect::<Vec<_>>();
    let looked_at =
        found.order.iter().enumerate().filter(|(place, it)| it.unbeaten || listed.contains(place));
    let spot = |it: &Ranked| {
        let at = layout.at(&it.candidate);
        Spot::around(at, at, 6.0, format!("{}.", describe(it)))
    };
    looked_at.map(|(_, it)| spot(it)).collect()
}

fn describe(it: &Ranked) -> String {
    let candidate = &it.candidate;
    format!(
        "{} with {}: {}, lowest gear {}{}",
        candidate.drivetrain.chainset,
        candidate.drivetrain.cassette,
        clock(candidate.time_s),
        with_unit(candidate.lowest_development_m, 2, "m"),
        if it.unbeaten { ", unbeaten" } else { "" }
    )
}
