//! What was last drawn of every picture: one that would look the same again is left as it is.

use crate::drawing::palette::Palette;
use crate::drawing::pen::{Mark, Size};
use crate::drawing::plate::Plate;
use crate::page::pictures::Picture;
use crate::page::report::Report;
use plotters_backend::{DrawingBackend, DrawingErrorKind};
use std::collections::BTreeMap;

/// The marks of pictures, by name.
#[derive(Debug, Default)]
pub struct Drawn(BTreeMap<&'static str, Vec<Mark>>);

impl Drawn {
    /// Makes up what a picture is drawn with; whether that differs from what it was last.
    pub fn prepare(&mut self, picture: Picture, report: &Report, look: &Palette, size: Size) -> bool {
        let marks = picture.marks(report, look, size);
        let differs = self.0.get(picture.name()) != Some(&marks);
        self.0.insert(picture.name(), marks);
        differs
    }

    /// Draws what was made up, with `ratio` device pixels to the CSS pixel.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn draw<B: DrawingBackend>(
        &self,
        picture: Picture,
        backend: &mut B,
        ratio: f64,
    ) -> Result<(), DrawingErrorKind<B::ErrorType>> {
        let plate = Plate::canvas(ratio);
        self.0.get(picture.name()).into_iter().flatten().try_for_each(|mark| plate.draw(backend, mark))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::Field;
    use crate::drawing::palette::{DARK, LIGHT};
    use crate::page::scenario::Scenario;

    #[test]
    fn only_what_would_look_otherwise_differs() {
        let with = |field: Field, text: &str| {
            let mut bench = Bench::default();
            bench.write(field, text);
            Report::of(&Scenario::read(&bench, &Scenario::default()).scenario)
        };
        let (ladder, size) = (Picture::by_name("ladder").unwrap(), (700.0, 400.0));
        let mut drawn = Drawn::default();
        assert!(drawn.prepare(ladder, &Report::default(), &LIGHT, size));
        assert!(!drawn.prepare(ladder, &with(Field::SaddleHeight, "731"), &LIGHT, size));
        assert!(drawn.prepare(ladder, &with(Field::RingsA, "48/33"), &LIGHT, size));
        assert!(drawn.prepare(ladder, &with(Field::RingsA, "48/33"), &DARK, size));
        assert!(drawn.prepare(ladder, &with(Field::RingsA, "48/33"), &DARK, (390.0, 400.0)));
    }
}
