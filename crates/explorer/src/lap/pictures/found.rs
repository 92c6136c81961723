//! What a search found: time behind the best against lowest gear.

use crate::drawing::cloud::{Axes, Cloud, HEIGHT, Marked};
use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Pen, Size};
use crate::drawing::spot::Spot;
use crate::lap::found::Found;
use crate::lap::section::LapSection;
use crate::lap::words::pictures::found as words;

/// What a search found.
pub(crate) const FOUND: Drawing<LapSection> = Drawing {
    name: "found",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: |report| found(report).map_or_else(String::new, words::says),
    spots,
    label,
    words: Spot::own_words,
};

fn found(report: &LapSection) -> Option<&Found> {
    report.lap.found.as_deref().filter(|found| !found.order.is_empty())
}

fn height(report: &LapSection, _: f64) -> f64 {
    if found(report).is_some() { HEIGHT } else { 0.0 }
}

fn label(report: &LapSection) -> String {
    found(report).map_or_else(String::new, words::label)
}

fn cloud(found: &Found) -> Cloud {
    let marked = |place: usize| Marked {
        place,
        sides: found.sides_at(place).collect(),
        name: words::name(found, place),
        says: words::spot(found, place),
    };
    let point = |place: usize| (found.order[place].candidate.lowest_development_m, found.behind_s(place));
    Cloud {
        points: (0..found.order.len()).map(point).collect(),
        best_s: found.order[0].candidate.time_s,
        front: found.front.clone(),
        marked: found.shown().into_iter().map(marked).collect(),
        beside: Vec::new(),
        axes: Axes { up: words::UP, across: words::across(), tick: words::tick },
    }
}

fn draw(pen: &mut Pen, look: &Palette, report: &LapSection, size: Size) {
    if let Some(found) = found(report) {
        cloud(found).draw(pen, look, size);
    }
}

fn spots(report: &LapSection, size: Size) -> Vec<Spot> {
    found(report).map_or_else(Vec::new, |found| cloud(found).spots(size))
}
