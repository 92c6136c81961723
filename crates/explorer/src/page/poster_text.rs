//! Text of a picture that goes elsewhere, from top to bottom.

use crate::drawing::letters::{SMALLEST, lines, set_lines};
use crate::drawing::palette::LIGHT;
use crate::drawing::pen::{Anchor, Mark, Pen, Type};
use plotters::style::RGBColor;

/// Lines are as far apart as they are high and half as much: common practice for reading.
const LEADING: f64 = 1.5;

/// Share of the room that bold type may be reckoned to take: some systems' is that much wider; estimate, from DejaVu Sans Bold.
const BOLD_ROOM: f64 = 0.88;

/// Text in its place, each paragraph under the one before.
#[derive(Debug, Default)]
pub(crate) struct PosterText {
    pen: Pen,
    /// Where the next line begins, CSS pixels.
    pub(crate) y: f64,
}

impl PosterText {
    /// Lines under one another from `x`.
    pub(crate) fn lines(&mut self, lines: &[String], x: f64, set: Type) {
        let high = set.size * LEADING;
        for line in lines {
            self.pen.text(line, (x, self.y + high / 2.0), set);
            self.y += high;
        }
    }

    /// A paragraph in the smallest type.
    pub(crate) fn paragraph(&mut self, text: &str, (x, wide): (f64, f64), ink: RGBColor) {
        self.lines(&lines(text, wide), x, Type::new(ink, Anchor::Start));
    }

    /// The same bold, in type of any size.
    pub(crate) fn bold(&mut self, text: &str, (x, wide): (f64, f64), size: f64, ink: RGBColor) {
        self.lines(
            &set_lines(text, BOLD_ROOM * wide, size, true),
            x,
            Type::new(ink, Anchor::Start).bold().size(size),
        );
    }

    /// The same in the smallest type.
    pub(crate) fn strong(&mut self, text: &str, place: (f64, f64), ink: RGBColor) {
        self.bold(text, place, SMALLEST, ink);
    }

    /// Leaves some room, CSS pixels.
    pub(crate) fn skip(&mut self, room: f64) {
        self.y += room;
    }

    /// A rule from `x` on.
    pub(crate) fn rule(&mut self, (x, wide): (f64, f64)) {
        self.skip(3.0);
        self.pen.line((x, self.y), (x + wide, self.y), LIGHT.rule, 1.0);
        self.skip(4.0);
    }

    /// What was written, on paper of this size.
    pub(crate) fn on_paper(self, size: (f64, f64)) -> Vec<Mark> {
        let mut paper = Pen::default();
        paper.fill((0.0, 0.0), size, LIGHT.paper);
        paper.marks.extend(self.pen.marks);
        paper.marks
    }
}
