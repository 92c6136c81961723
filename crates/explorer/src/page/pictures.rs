//! The pictures of all sections.

use crate::drawing::palette::{LIGHT, Palette};
use crate::drawing::pen::{Mark, Size};
use crate::drawing::plate::Plate;
use crate::drawing::spot::Spot;
use crate::page::questions::{self, Asked, Shown};
use crate::page::report::Report;
use plotters::backend::SVGBackend;
use plotters_backend::{DrawingBackend, DrawingErrorKind};
use std::fmt;

/// A picture of the page.
#[derive(Clone, Copy)]
pub struct Picture {
    question: &'static dyn Asked,
    place: usize,
    name: &'static str,
}

impl fmt::Debug for Picture {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name)
    }
}

impl Picture {
    /// Every picture, in the order of the page.
    pub fn all() -> impl Iterator<Item = Self> {
        questions::all().flat_map(|question| {
            let names = question.pictures().into_iter().enumerate();
            names.map(move |(place, name)| Self { question, place, name })
        })
    }

    /// Its name in the page.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.name
    }

    /// The picture of this name.
    #[must_use]
    pub fn by_name(name: &str) -> Option<Self> {
        Self::all().find(|picture| picture.name == name)
    }

    fn shown(self, report: &Report) -> Box<dyn Shown> {
        self.question.picture(report, self.place)
    }

    /// Whether it rests on the demo's values.
    pub(crate) fn is_demos(self, report: &Report) -> bool {
        self.question.is_demos(report)
    }

    /// What it is drawn with; nothing is green that rests on the demo's values.
    pub(crate) fn marks(self, report: &Report, look: &Palette, size: Size) -> Vec<Mark> {
        let _in_force = report.units.enter();
        let good = if self.is_demos(report) { look.soft } else { look.good };
        self.shown(report).marks(&Palette { good, ..*look }, size)
    }

    /// Height at a width, CSS pixels.
    #[must_use]
    pub fn height(self, report: &Report, width: f64) -> f64 {
        let _in_force = report.units.enter();
        self.shown(report).height(width)
    }

    /// What can be looked at, in the order the keyboard steps through.
    #[must_use]
    pub fn spots(self, report: &Report, size: Size) -> Vec<Spot> {
        let _in_force = report.units.enter();
        self.shown(report).spots(size)
    }

    /// What a spot says.
    #[must_use]
    pub fn words(self, report: &Report, spot: &Spot, index: usize) -> String {
        let _in_force = report.units.enter();
        self.shown(report).words(spot, index)
    }

    /// One sentence that says what the picture shows for this scenario; empty where it shows nothing and takes no room.
    #[must_use]
    pub fn label(self, report: &Report) -> String {
        let _in_force = report.units.enter();
        let shown = self.shown(report);
        if shown.shows() { shown.label() } else { String::new() }
    }
}

/// The picture as an SVG document, in ink on paper.
///
/// # Errors
/// What the backend reports.
pub fn as_svg(
    picture: Picture,
    report: &Report,
    size: Size,
) -> Result<String, DrawingErrorKind<std::io::Error>> {
    let mut svg = String::new();
    {
        let mut backend = SVGBackend::with_string(&mut svg, (size.0.round() as u32, size.1.round() as u32));
        let plate = Plate::svg();
        picture.marks(report, &LIGHT, size).iter().try_for_each(|mark| plate.draw(&mut backend, mark))?;
        backend.present()?;
    }
    Ok(svg)
}
