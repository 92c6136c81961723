//! Drawing in CSS pixels on any plotters backend: positions, widths and type scale with the pixel ratio.

use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{Color, FontTransform, IntoTextStyle, RGBAColor, RGBColor, ShapeStyle};
use plotters_backend::{BackendCoord, DrawingBackend, DrawingErrorKind};

/// A point in CSS pixels from the top left corner of the picture.
pub(super) type Point = (f64, f64);

/// What drawing on `B` may fail with.
pub(super) type Drawn<B> = Result<(), DrawingErrorKind<<B as DrawingBackend>::ErrorType>>;

/// Type size of all labels, CSS pixels.
pub(super) const TYPE: f64 = 12.0;
const FAMILY: &str = "system-ui, sans-serif";

/// Where a label stands against its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The text begins at the point.
    Start,
    /// The text is centred on the point.
    Middle,
    /// The text ends at the point.
    End,
}

/// How a label is set.
#[derive(Debug, Clone, Copy)]
pub struct Type {
    ink: RGBColor,
    anchor: Anchor,
    size: f64,
    bold: bool,
    upright: bool,
}

impl Type {
    /// Plain type in one colour.
    #[must_use]
    pub const fn new(ink: RGBColor, anchor: Anchor) -> Self {
        Self { ink, anchor, size: TYPE, bold: false, upright: false }
    }

    /// The same, bold.
    #[must_use]
    pub const fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// The same in another size, CSS pixels.
    #[must_use]
    pub const fn size(self, size: f64) -> Self {
        Self { size, ..self }
    }

    /// The same, read from bottom to top.
    #[must_use]
    pub const fn upright(self) -> Self {
        Self { upright: true, ..self }
    }
}

/// A backend with the pixel ratio put in.
pub struct Pen<'b, B: DrawingBackend> {
    backend: &'b mut B,
    ratio: f64,
    type_scale: f64,
}

impl<'b, B: DrawingBackend> Pen<'b, B> {
    /// Draws on `backend` with `ratio` device pixels to the CSS pixel.
    pub fn new(backend: &'b mut B, ratio: f64) -> Self {
        Self { backend, ratio, type_scale: 1.0 }
    }

    /// The same for SVG, whose backend makes type smaller by a fixed factor.
    pub fn for_svg(backend: &'b mut B) -> Self {
        Self { backend, ratio: 1.0, type_scale: 1.24 }
    }

    fn device(&self, (x, y): Point) -> BackendCoord {
        ((x * self.ratio).round() as i32, (y * self.ratio).round() as i32)
    }

    fn stroke(&self, ink: RGBAColor, width: f64) -> ShapeStyle {
        ink.stroke_width((width * self.ratio).round().max(1.0) as u32)
    }

    /// A filled rectangle between two corners.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn fill(&mut self, from: Point, to: Point, ink: RGBColor) -> Drawn<B> {
        let (from, to) = (self.device(from), self.device(to));
        self.backend.draw_rect(from, to, &ink.filled(), true)
    }

    /// The outline of a rectangle, drawn inside its edge so that open and filled shapes are of one size.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn frame(&mut self, from: Point, to: Point, ink: RGBColor, width: f64) -> Drawn<B> {
        let inset = width / 2.0;
        let (from, to) =
            (self.device((from.0 + inset, from.1 + inset)), self.device((to.0 - inset, to.1 - inset)));
        let style = self.stroke(ink.to_rgba(), width);
        self.backend.draw_rect(from, to, &style, false)
    }

    /// A straight line.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn line(&mut self, from: Point, to: Point, ink: RGBColor, width: f64) -> Drawn<B> {
        let style = self.stroke(ink.to_rgba(), width);
        let (from, to) = (self.device(from), self.device(to));
        self.backend.draw_line(from, to, &style)
    }

    /// A broken line with dashes and gaps of `dash` CSS pixels.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn dashes(&mut self, from: Point, to: Point, ink: RGBColor, width: f64, dash: f64) -> Drawn<B> {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = dx.hypot(dy);
        let count = (length / (2.0 * dash)).ceil().min(2000.0) as usize;
        for index in 0..count {
            let start = index as f64 * 2.0 * dash / length;
            let end = (start + dash / length).min(1.0);
            let at = |share: f64| (from.0 + dx * share, from.1 + dy * share);
            self.line(at(start), at(end), ink, width)?;
        }
        Ok(())
    }

    /// A line through several points.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn path(&mut self, points: &[Point], ink: RGBColor, width: f64) -> Drawn<B> {
        let style = self.stroke(ink.to_rgba(), width);
        let points: Vec<_> = points.iter().map(|&point| self.device(point)).collect();
        self.backend.draw_path(points, &style)
    }

    /// A filled shape.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn shape(&mut self, points: &[Point], ink: RGBColor) -> Drawn<B> {
        let points: Vec<_> = points.iter().map(|&point| self.device(point)).collect();
        self.backend.fill_polygon(points, &ink.filled())
    }

    /// A filled circle.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn dot(&mut self, centre: Point, radius: f64, ink: RGBColor) -> Drawn<B> {
        let (centre, radius) = (self.device(centre), (radius * self.ratio).round() as u32);
        self.backend.draw_circle(centre, radius, &ink.filled(), true)
    }

    /// The outline of a circle.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn ring(&mut self, centre: Point, radius: f64, ink: RGBColor, width: f64) -> Drawn<B> {
        let style = self.stroke(ink.to_rgba(), width);
        let (centre, radius) = (self.device(centre), (radius * self.ratio).round() as u32);
        self.backend.draw_circle(centre, radius, &style, false)
    }

    /// A label, centred on the height of its point.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn text(&mut self, text: &str, at: Point, set: Type) -> Drawn<B> {
        let across = match set.anchor {
            Anchor::Start => HPos::Left,
            Anchor::Middle => HPos::Center,
            Anchor::End => HPos::Right,
        };
        let transform = if set.upright { FontTransform::Rotate270 } else { FontTransform::None };
        let font = plotters::style::FontDesc::new(
            plotters::style::FontFamily::Name(FAMILY),
            set.size * self.ratio * self.type_scale,
            if set.bold { plotters::style::FontStyle::Bold } else { plotters::style::FontStyle::Normal },
        )
        .transform(transform);
        let style = font.color(&set.ink).pos(Pos::new(across, VPos::Center)).into_text_style(&(1, 1));
        let at = self.device(at);
        self.backend.draw_text(text, &style, at)
    }
}
