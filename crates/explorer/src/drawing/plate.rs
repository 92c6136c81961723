//! From marks to a plotters backend: positions, widths and type scale with the pixel ratio.

use crate::drawing::pen::{Anchor, Mark, Point, Type};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{
    Color, FontDesc, FontFamily, FontStyle, FontTransform, IntoTextStyle, RGBColor, ShapeStyle, TextStyle,
};
use plotters_backend::{BackendCoord, DrawingBackend, DrawingErrorKind};

/// The system's own type, and what comes near the widths that labels are spread by where a picture is shown elsewhere.
const FAMILY: &str = "system-ui, Arial, Helvetica, sans-serif";

/// How CSS pixels become the backend's.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Plate {
    /// Device pixels to the CSS pixel.
    ratio: f64,
    /// What the backend's type must be multiplied with to come out in its size.
    type_scale: f64,
    /// Where the marks' corner lies, CSS pixels.
    corner: Point,
}

impl Plate {
    /// A canvas with `ratio` device pixels to the CSS pixel.
    pub(crate) const fn canvas(ratio: f64) -> Self {
        Self { ratio, type_scale: 1.0, corner: (0.0, 0.0) }
    }

    /// An SVG document, whose backend makes type smaller by 1.24.
    pub(crate) const fn svg() -> Self {
        Self { ratio: 1.0, type_scale: 1.24, corner: (0.0, 0.0) }
    }

    /// The same for marks whose corner lies elsewhere.
    pub(crate) const fn from(self, corner: Point) -> Self {
        Self { corner, ..self }
    }

    fn device(self, (x, y): Point) -> BackendCoord {
        let (left, top) = self.corner;
        (((left + x) * self.ratio).round() as i32, ((top + y) * self.ratio).round() as i32)
    }

    fn stroke(self, ink: RGBColor, width: f64) -> ShapeStyle {
        ink.stroke_width((width * self.ratio).round().max(1.0) as u32)
    }

    fn radius(self, radius: f64) -> u32 {
        (radius * self.ratio).round() as u32
    }

    fn type_style(self, set: &Type) -> TextStyle<'static> {
        let across = match set.anchor {
            Anchor::Start => HPos::Left,
            Anchor::Middle => HPos::Center,
            Anchor::End => HPos::Right,
        };
        let style = if set.bold { FontStyle::Bold } else { FontStyle::Normal };
        let transform = if set.upright { FontTransform::Rotate270 } else { FontTransform::None };
        let size = set.size * self.ratio * self.type_scale;
        FontDesc::new(FontFamily::Name(FAMILY), size, style)
            .transform(transform)
            .color(&set.ink)
            .pos(Pos::new(across, VPos::Center))
            .into_text_style(&(1, 1))
    }

    /// Draws one mark.
    pub(crate) fn draw<B: DrawingBackend>(
        self,
        backend: &mut B,
        mark: &Mark,
    ) -> Result<(), DrawingErrorKind<B::ErrorType>> {
        let many = |points: &[Point]| points.iter().map(|&point| self.device(point)).collect::<Vec<_>>();
        match mark {
            Mark::Fill(from, to, ink) => {
                backend.draw_rect(self.device(*from), self.device(*to), &ink.filled(), true)
            }
            Mark::Frame(from, to, ink, width) => {
                backend.draw_rect(self.device(*from), self.device(*to), &self.stroke(*ink, *width), false)
            }
            Mark::Line(from, to, ink, width) => {
                backend.draw_line(self.device(*from), self.device(*to), &self.stroke(*ink, *width))
            }
            Mark::Path(points, ink, width) => backend.draw_path(many(points), &self.stroke(*ink, *width)),
            Mark::Shape(points, ink) => backend.fill_polygon(many(points), &ink.filled()),
            Mark::Dot(centre, radius, ink) => {
                backend.draw_circle(self.device(*centre), self.radius(*radius), &ink.filled(), true)
            }
            Mark::Ring(centre, radius, ink, width) => backend.draw_circle(
                self.device(*centre),
                self.radius(*radius),
                &self.stroke(*ink, *width),
                false,
            ),
            Mark::Text(text, at, set) => backend.draw_text(text, &self.type_style(set), self.device(*at)),
        }
    }
}
