//! Pictures as a list of marks in CSS pixels, so that charts are plain functions and each backend is one small loop.

use crate::drawing::letters::SMALLEST;
use plotters::style::RGBColor;

/// A point in CSS pixels from the top left corner of the picture.
pub(crate) type Point = (f64, f64);

/// Width and height in CSS pixels.
pub type Size = (f64, f64);

/// Where a label stands against its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Anchor {
    /// The text begins at the point.
    Start,
    /// The text is centred on the point.
    Middle,
    /// The text ends at the point.
    End,
}

/// How a label is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Type {
    pub(crate) ink: RGBColor,
    pub(crate) anchor: Anchor,
    pub(crate) size: f64,
    pub(crate) bold: bool,
    pub(crate) upright: bool,
}

impl Type {
    /// Plain type in one colour.
    pub(crate) const fn new(ink: RGBColor, anchor: Anchor) -> Self {
        Self { ink, anchor, size: SMALLEST, bold: false, upright: false }
    }

    /// The same, bold.
    pub(crate) const fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// The same in another size, CSS pixels.
    pub(crate) const fn size(self, size: f64) -> Self {
        Self { size, ..self }
    }

    /// The same, read from bottom to top.
    pub(crate) const fn upright(self) -> Self {
        Self { upright: true, ..self }
    }
}

/// One thing drawn.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Mark {
    Fill(Point, Point, RGBColor),
    Frame(Point, Point, RGBColor, f64),
    Line(Point, Point, RGBColor, f64),
    Path(Vec<Point>, RGBColor, f64),
    Shape(Vec<Point>, RGBColor),
    Dot(Point, f64, RGBColor),
    Ring(Point, f64, RGBColor, f64),
    Text(String, Point, Type),
}

/// Gathers marks in the order they are drawn. Marks with a place that is no number are left out.
#[derive(Debug, Default)]
pub(crate) struct Pen {
    pub(crate) marks: Vec<Mark>,
}

impl Pen {
    fn put(&mut self, places: &[Point], mark: Mark) {
        if places.iter().all(|&(x, y)| x.is_finite() && y.is_finite()) {
            self.marks.push(mark);
        }
    }

    /// A filled rectangle between two corners.
    pub(crate) fn fill(&mut self, from: Point, to: Point, ink: RGBColor) {
        self.put(&[from, to], Mark::Fill(from, to, ink));
    }

    /// The outline of a rectangle, drawn inside its edge so that open and filled shapes are of one size.
    pub(crate) fn frame(&mut self, from: Point, to: Point, ink: RGBColor, width: f64) {
        let inset = width / 2.0;
        let (from, to) = ((from.0 + inset, from.1 + inset), (to.0 - inset, to.1 - inset));
        self.put(&[from, to], Mark::Frame(from, to, ink, width));
    }

    /// A straight line.
    pub(crate) fn line(&mut self, from: Point, to: Point, ink: RGBColor, width: f64) {
        self.put(&[from, to], Mark::Line(from, to, ink, width));
    }

    /// Two lines that cross out a place, each `reach` wide and high on either side of it.
    pub(crate) fn cross(&mut self, (x, y): Point, reach: f64, ink: RGBColor, width: f64) {
        self.line((x - reach, y - reach), (x + reach, y + reach), ink, width);
        self.line((x - reach, y + reach), (x + reach, y - reach), ink, width);
    }

    /// A broken line with dashes and gaps of `dash` CSS pixels.
    pub(crate) fn dashes(&mut self, from: Point, to: Point, ink: RGBColor, width: f64, dash: f64) {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = dx.hypot(dy);
        let count = (length / (2.0 * dash)).ceil().min(2000.0) as usize;
        for index in 0..count {
            let start = index as f64 * 2.0 * dash / length;
            let end = (start + dash / length).min(1.0);
            let at = |share: f64| (from.0 + dx * share, from.1 + dy * share);
            self.line(at(start), at(end), ink, width);
        }
    }

    /// A line through several points.
    pub(crate) fn path(&mut self, points: &[Point], ink: RGBColor, width: f64) {
        self.put(points, Mark::Path(points.to_vec(), ink, width));
    }

    /// A filled shape.
    pub(crate) fn shape(&mut self, points: &[Point], ink: RGBColor) {
        self.put(points, Mark::Shape(points.to_vec(), ink));
    }

    /// A filled circle.
    pub(crate) fn dot(&mut self, centre: Point, radius: f64, ink: RGBColor) {
        self.put(&[centre], Mark::Dot(centre, radius, ink));
    }

    /// The outline of a circle.
    pub(crate) fn ring(&mut self, centre: Point, radius: f64, ink: RGBColor, width: f64) {
        self.put(&[centre], Mark::Ring(centre, radius, ink, width));
    }

    /// A label, centred on the height of its point.
    pub(crate) fn text(&mut self, text: &str, at: Point, set: Type) {
        self.put(&[at], Mark::Text(text.to_owned(), at, set));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::palette::LIGHT;

    #[test]
    fn what_has_no_place_is_not_drawn() {
        let mut pen = Pen::default();
        pen.line((0.0, f64::NAN), (1.0, 1.0), LIGHT.ink, 1.0);
        pen.path(&[(0.0, 0.0), (f64::INFINITY, 1.0)], LIGHT.ink, 1.0);
        pen.dashes((0.0, 0.0), (0.0, 0.0), LIGHT.ink, 1.0, 4.0);
        assert!(pen.marks.is_empty());
    }
}
