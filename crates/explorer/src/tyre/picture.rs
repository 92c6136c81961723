//! The tyre cut across on its rim, to scale, with the race's gauge over it.

use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::spot::Spot;
use crate::side::Side;
use crate::tyre::report::{Gauge, TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use crate::tyre::words::cross_section as words;
use gear_math::wheel::{CalliperVerdict, Construction, SectionArc, WidthVerdict};
use plotters::style::RGBColor;
use std::f64::consts::PI;

/// The tyre cut across on its rim, with the gauge over it.
pub(crate) const CROSS_SECTION: Drawing<TyreSection> = Drawing {
    name: "cross-section",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: words::says,
    spots,
    label,
    words: Spot::own_words,
};

/// Millimetres that only the drawing needs.
const GAUGE_WALL: f64 = 4.5;
const GAUGE_CLEARANCE: f64 = 4.0;
const CASING: f64 = 2.2;
const RIM_WALL: f64 = 1.7;
const RIM_DEPTH: f64 = 20.0;
/// CSS pixels.
const LINE: f64 = 14.0;
const HEAD: f64 = 24.0;
const FOOT: f64 = 44.0;
const TALLEST: f64 = 430.0;
const LARGEST_SCALE: f64 = 8.0;

/// From millimetres, right of the middle and above the rim's edges, to CSS pixels.
struct Layout {
    scale: f64,
    middle: f64,
    edge: f64,
}

impl Layout {
    fn new(report: &TyreSection, width: f64) -> Self {
        let extents = drawn(report).map(|(_, tyre)| extent(tyre));
        let (across, above) =
            extents.fold((0.0, 0.0), |all, it| (f64::max(all.0, it.0), f64::max(all.1, it.1)));
        let scale = (0.7 * width / across).min(TALLEST / (above + RIM_DEPTH)).min(LARGEST_SCALE);
        Self { scale, middle: width / 2.0, edge: HEAD + above * scale }
    }

    fn at(&self, (right, up): Point) -> Point {
        (self.middle + right * self.scale, self.edge - up * self.scale)
    }

    fn all(&self, points: &[Point]) -> Vec<Point> {
        points.iter().map(|&point| self.at(point)).collect()
    }

    fn height(&self) -> f64 {
        self.edge + RIM_DEPTH * self.scale + FOOT
    }
}

/// The tyres that are drawn: that of both, or A's and then B's own.
fn drawn(report: &TyreSection) -> impl Iterator<Item = (Option<Side>, &TyreReport)> {
    let side = report.of_b.as_ref().map(|_| Side::A);
    std::iter::once((side, &*report.tyre)).chain(report.of_b.as_deref().map(|of_b| (Some(Side::B), of_b)))
}

/// Millimetres across, and above the rim's edges.
fn extent(tyre: &TyreReport) -> (f64, f64) {
    let rim = tyre.inputs.rim.mm() + 2.0 * RIM_WALL;
    let gauge = tyre.inputs.limit.map_or(0.0, |limit| limit.mm() + 2.0 * GAUGE_WALL);
    let (wide, high) =
        tyre.fit.as_ref().map_or((0.0, 10.0), |fit| (widest(fit), fit.section.arc().height_mm));
    let above = if tyre.inputs.limit.is_some() { GAUGE_CLEARANCE + GAUGE_WALL } else { 2.0 };
    (rim.max(gauge).max(wide + 4.0), high + above)
}

fn widest(fit: &TyreFit) -> f64 {
    fit.width.range_mm().1.max(fit.section.width().mm())
}

fn height(report: &TyreSection, width: f64) -> f64 {
    let more = if report.of_b.is_some() { LINE } else { 0.0 };
    Layout::new(report, width).height() + more
}

fn label(report: &TyreSection) -> String {
    let label = |(side, tyre): (Option<Side>, &TyreReport)| words::label(side, tyre);
    drawn(report).map(label).collect::<Vec<_>>().join(" ")
}

fn draw(pen: &mut Pen, look: &Palette, report: &TyreSection, size: Size) {
    let (tyre, of_b) = (&report.tyre, report.of_b.as_deref());
    let layout = Layout::new(report, size.0);
    draw_gauge(pen, look, &layout, report);
    let arc = tyre.fit.as_ref().ok().map(|fit| fit.section.arc());
    draw_rim(pen, look, &layout, tyre, arc.as_ref());
    if let Some(of_b) = of_b {
        draw_b(pen, look, &layout, of_b, arc.map(|arc| arc.centre_height_mm));
    }
    match &tyre.fit {
        Ok(fit) => draw_tyre(pen, look, &layout, report, fit),
        Err(_) => {
            pen.text(words::NO_TYRE, (layout.middle, HEAD + 10.0), Type::new(look.stop, Anchor::Middle));
        }
    }
    draw_foot(pen, look, &layout, report);
}

/// B's own tyre, open, on its own rim; A's lies solid over it, and its width is told above B's.
fn draw_b(pen: &mut Pen, look: &Palette, layout: &Layout, of_b: &TyreReport, middle_of_a: Option<f64>) {
    let Ok(fit) = &of_b.fit else { return };
    let (arc, inside) = (fit.section.arc(), of_b.inputs.rim.mm() / 2.0);
    let end = if of_b.inputs.construction == Construction::Tubular { PI } else { PI - arc.rim_angle_rad };
    let casing = layout.all(&around(&arc, arc.radius_mm - CASING / 2.0, -end, end));
    pen.path(&casing, look.b, CASING * layout.scale);
    pen.path(&casing, look.paper, CASING * layout.scale - 3.0);
    for side in [-1.0, 1.0] {
        let wall = [(side * inside, 1.5), (side * inside, -9.0)];
        pen.path(&layout.all(&wall), look.b, 1.5);
    }
    let at = layout.at((0.0, middle_of_a.unwrap_or(arc.centre_height_mm)));
    let told = words::width_of(Some(Side::B), fit);
    pen.text(&told, (at.0, at.1 + 2.2 * LINE), Type::new(look.b, Anchor::Middle).bold());
}

/// A block with a slot as wide as the race allows.
fn draw_gauge(pen: &mut Pen, look: &Palette, layout: &Layout, report: &TyreSection) {
    let tyre = &report.tyre;
    let Some((limit, fit)) = tyre.inputs.limit.zip(tyre.fit.as_ref().ok()) else { return };
    let of_b = report.of_b.as_ref().and_then(|of_b| of_b.fit.as_ref().ok());
    let arc = fit.section.arc();
    let highest = of_b.map_or(0.0, |of_b| of_b.section.arc().height_mm).max(arc.height_mm);
    let (inner, outer) = (limit.mm() / 2.0, limit.mm() / 2.0 + GAUGE_WALL);
    let (slot, top) = (highest + GAUGE_CLEARANCE, highest + GAUGE_CLEARANCE + GAUGE_WALL);
    let foot = (arc.centre_height_mm - 8.0).max(2.0);
    let outline = [
        (-outer, foot),
        (-outer, top),
        (outer, top),
        (outer, foot),
        (inner, foot),
        (inner, slot),
        (-inner, slot),
        (-inner, foot),
        (-outer, foot),
    ];
    let outline = layout.all(&outline);
    pen.shape(&outline, look.rule);
    pen.path(&outline, look.ink, 1.5);
    let (ink, title) = match of_b {
        None => (fit.gauge.map_or(look.ink, |gauge| ink(look, gauge)), words::race_gauge(limit, fit.gauge)),
        Some(of_b) => (look.ink, words::race_gauge_of_each(limit, [fit.gauge, of_b.gauge])),
    };
    pen.text(&title, (layout.middle, 11.0), Type::new(ink, Anchor::Middle).bold());
}

const fn ink(look: &Palette, gauge: Gauge) -> RGBColor {
    match gauge {
        Gauge::Expected(WidthVerdict::LikelyWithin) | Gauge::Measured(CalliperVerdict::Within) => look.good,
        Gauge::Expected(WidthVerdict::Measure) | Gauge::Measured(CalliperVerdict::AtLimit) => look.care,
        Gauge::Expected(WidthVerdict::LikelyOver) | Gauge::Measured(CalliperVerdict::Over) => look.stop,
    }
}

fn draw_rim(pen: &mut Pen, look: &Palette, layout: &Layout, tyre: &TyreReport, arc: Option<&SectionArc>) {
    let inside = tyre.inputs.rim.mm() / 2.0;
    let outside = inside + RIM_WALL;
    let mut outline = vec![(inside, 0.0), (outside, 0.0), (outside, -9.0), (6.0, -RIM_DEPTH)];
    outline.extend([(-6.0, -RIM_DEPTH), (-outside, -9.0), (-outside, 0.0), (-inside, 0.0)]);
    match arc.filter(|_| tyre.inputs.construction == Construction::Tubular) {
        Some(arc) => {
            outline.extend(around(arc, arc.radius_mm, PI + arc.rim_angle_rad, PI - arc.rim_angle_rad));
        }
        None => outline.extend(clincher_bed(inside, tyre.inputs.marks.hookless)),
    }
    outline.push((inside, 0.0));
    let outline = layout.all(&outline);
    pen.shape(&outline, look.rule);
    pen.path(&outline, look.ink, 1.5);
}

/// From the left edge to the right one: side walls, with hooks or without, shelves and the well between them.
fn clincher_bed(inside: f64, hookless: bool) -> Vec<Point> {
    let hook = if hookless { 0.0 } else { 1.0 };
    let well = inside * 0.45;
    let right = [
        (inside - hook, -0.4),
        (inside - hook, -1.4),
        (inside, -2.4),
        (inside, -6.0),
        (well + 1.5, -6.0),
        (well, -8.5),
    ];
    let left = right.iter().map(|&(x, y)| (-x, y));
    left.chain(right.iter().rev().copied()).collect()
}

/// The casing's arc between two angles, counted from the top to the right.
fn around(arc: &SectionArc, radius: f64, from: f64, to: f64) -> Vec<Point> {
    const STEPS: u8 = 48;
    (0..=STEPS)
        .map(|step| {
            let angle = from + (to - from) * f64::from(step) / f64::from(STEPS);
            (radius * angle.sin(), arc.centre_height_mm + radius * angle.cos())
        })
        .collect()
}

fn draw_tyre(pen: &mut Pen, look: &Palette, layout: &Layout, report: &TyreSection, fit: &TyreFit) {
    let (tyre, arc) = (&report.tyre, fit.section.arc());
    let ink = report.of_b.as_ref().map_or(look.ink, |_| look.a);
    let tubular = tyre.inputs.construction == Construction::Tubular;
    let end = if tubular { 1.02 * PI } else { PI - arc.rim_angle_rad };
    let casing = around(&arc, arc.radius_mm - CASING / 2.0, -end, end);
    pen.path(&layout.all(&casing), ink, CASING * layout.scale);
    let tread = around(&arc, arc.radius_mm - CASING * 1.3, -1.15, 1.15);
    pen.path(&layout.all(&tread), ink, CASING * 0.9 * layout.scale);
    if !tubular {
        for side in [-1.0, 1.0] {
            pen.dot(layout.at((side * (arc.half_rim_mm - 1.6), -1.6)), 1.9 * layout.scale, ink);
        }
    }
    if let Some(limit) = tyre.inputs.limit {
        draw_excess(pen, look, layout, &arc, limit.mm() / 2.0);
    }
    draw_width(pen, look, layout, report, fit);
}

/// What stands beyond the gauge's slot.
fn draw_excess(pen: &mut Pen, look: &Palette, layout: &Layout, arc: &SectionArc, slot: f64) {
    if arc.radius_mm <= slot {
        return;
    }
    let from = (slot / arc.radius_mm).asin();
    for mirrored in [1.0, -1.0] {
        let beyond: Vec<Point> =
            around(arc, arc.radius_mm, from, PI - from).iter().map(|&(x, y)| (mirrored * x, y)).collect();
        pen.shape(&layout.all(&beyond), look.stop);
    }
}

fn draw_width(pen: &mut Pen, look: &Palette, layout: &Layout, report: &TyreSection, fit: &TyreFit) {
    let (tyre, arc) = (&report.tyre, fit.section.arc());
    let side = report.of_b.as_ref().map(|_| Side::A);
    let (half, up) = (arc.radius_mm, arc.centre_height_mm);
    let (left, right) = (layout.at((-half, up)), layout.at((half, up)));
    let casing = CASING * layout.scale;
    pen.line((left.0 + casing, left.1), (right.0 - casing, left.1), look.ink, 1.0);
    heads(pen, (left.0 + 1.0, left.1), (right.0 - 1.0, left.1), look.paper);
    let (x, y) = layout.at((0.0, up));
    pen.text(
        &words::width_of(side, fit),
        (x, y - 12.0),
        Type::new(side.map_or(look.ink, |side| side.ink(look)), Anchor::Middle).bold().size(14.0),
    );
    if tyre.inputs.measured.is_some() {
        pen.text(words::MEASURED, (x, y + 12.0), Type::new(look.soft, Anchor::Middle));
        return;
    }
    let (low, high) = fit.width.range_mm();
    pen.text(&words::likely((low, high)), (x, y + 12.0), Type::new(look.soft, Anchor::Middle));
    for reach in [low, high] {
        for side in [-0.5, 0.5] {
            let at = |up| layout.at((side * reach, up));
            pen.dashes(at(up - 5.0), at(up + 5.0), look.care, 1.5, 3.0);
        }
    }
}

/// A dimension line with a head at both ends.
fn arrow(pen: &mut Pen, look: &Palette, from: Point, to: Point) {
    pen.line(from, to, look.ink, 1.0);
    heads(pen, from, to, look.ink);
}

fn heads(pen: &mut Pen, from: Point, to: Point, ink: RGBColor) {
    for ((x, y), inward) in [(from, 6.0), (to, -6.0)] {
        pen.shape(&[(x, y), (x + inward, y - 3.0), (x + inward, y + 3.0)], ink);
    }
}

fn draw_foot(pen: &mut Pen, look: &Palette, layout: &Layout, report: &TyreSection) {
    let tyre = &report.tyre;
    let (x, y) = layout.at((0.0, -RIM_DEPTH));
    let half = tyre.inputs.rim.mm() / 2.0 * layout.scale;
    let y = y + 12.0;
    arrow(pen, look, (x - half, y), (x + half, y));
    for (row, (side, tyre)) in drawn(report).enumerate() {
        let ink = side.map_or(look.ink, |side| side.ink(look));
        let at = (x, y + LINE + row as f64 * LINE);
        pen.text(&words::rim_across(side, tyre), at, Type::new(ink, Anchor::Middle));
    }
    let bar = 10.0 * layout.scale;
    pen.line((2.0, y), (2.0 + bar, y), look.soft, 3.0);
    pen.text(words::SCALE, (2.0, y + 14.0), Type::new(look.soft, Anchor::Start));
}

fn spots(report: &TyreSection, size: Size) -> Vec<Spot> {
    let tyre = &report.tyre;
    let layout = Layout::new(report, size.0);
    let around =
        |from: Point, to: Point, text: String| Spot::around(layout.at(from), layout.at(to), 2.0, text);
    let rim = tyre.inputs.rim.mm() / 2.0 + RIM_WALL;
    let rim = around((-rim, 0.0), (rim, -RIM_DEPTH), words::rim(tyre));
    let Ok(fit) = &tyre.fit else { return vec![rim] };
    let arc = fit.section.arc();
    let body = |side: Option<Side>, tyre: &TyreReport, fit: &TyreFit| {
        let arc = fit.section.arc();
        around((-arc.radius_mm, arc.height_mm), (arc.radius_mm, 0.0), words::body(side, tyre, fit))
    };
    let bodies = drawn(report).filter_map(|(side, tyre)| Some(body(side, tyre, tyre.fit.as_ref().ok()?)));
    let gauge = tyre.inputs.limit.map(|limit| {
        let (half, top) = (limit.mm() / 2.0 + GAUGE_WALL, arc.height_mm + GAUGE_CLEARANCE);
        around((-half, top + GAUGE_WALL), (half, top), words::gauge_of(limit, fit.gauge))
    });
    gauge.into_iter().chain(bodies).chain([rim]).collect()
}
