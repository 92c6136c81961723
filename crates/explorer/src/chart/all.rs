//! Pictures: each is one file with its height, its drawing and the spots that can be looked at.

use super::Spot;
use super::palette::{DARK, LIGHT, Palette};
use super::pen::{Mark, Pen};
use super::plate::Plate;
use crate::report::Report;
use plotters::backend::SVGBackend;
use plotters_backend::{DrawingBackend, DrawingErrorKind};

/// Width and height in CSS pixels.
pub type Size = (f64, f64);

/// A picture of the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Picture {
    /// Rungs of A and B on one rail of development.
    Ladder,
    /// Speed of every gear over the cadence window.
    Speeds,
    /// Step sizes in riding order.
    Steps,
    /// Gears of A against gears of B.
    Overlap,
    /// Slack to be taken up in every gear.
    Wrap,
    /// Drivetrains in a chosen gear, true to scale.
    Drivetrain,
    /// Capacity against cage length.
    Capacity,
    /// Speed riding and on foot against gradient.
    Slopes,
    /// Verdict by gradient and ground.
    Verdicts,
    /// Time against length of the climb.
    Climb,
    /// What moves the end of riding most.
    Tornado,
    /// The course with the plan and the gears on it.
    Profile,
    /// Time gained along the lap.
    Gain,
    /// How long in each gear.
    GearTimes,
    /// What a search found.
    Found,
    /// The tyre cut across on its rim, with the gauge over it.
    CrossSection,
    /// Road and cross position laid over one another.
    Position,
}

impl Picture {
    /// Every picture.
    pub const ALL: [Picture; 17] = [
        Self::Ladder,
        Self::Speeds,
        Self::Steps,
        Self::Overlap,
        Self::Wrap,
        Self::Drivetrain,
        Self::Capacity,
        Self::Slopes,
        Self::Verdicts,
        Self::Climb,
        Self::Tornado,
        Self::Profile,
        Self::Gain,
        Self::GearTimes,
        Self::Found,
        Self::CrossSection,
        Self::Position,
    ];

    /// Its name in the page.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ladder => "ladder",
            Self::Speeds => "speeds",
            Self::Steps => "steps",
            Self::Overlap => "overlap",
            Self::Wrap => "wrap",
            Self::Drivetrain => "drivetrain",
            Self::Capacity => "capacity",
            Self::Slopes => "slopes",
            Self::Verdicts => "verdicts",
            Self::Climb => "climb",
            Self::Tornado => "tornado",
            Self::Profile => "profile",
            Self::Gain => "gain",
            Self::GearTimes => "gear-times",
            Self::Found => "found",
            Self::CrossSection => "cross-section",
            Self::Position => "position",
        }
    }

    /// The picture of this name.
    #[must_use]
    pub fn by_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|picture| picture.name() == name)
    }

    /// Height at a width, CSS pixels.
    #[must_use]
    pub fn height(self, report: &Report, width: f64) -> f64 {
        match self {
            Self::Ladder => super::ladder::height(report),
            Self::Speeds => super::speeds::height(report, width),
            Self::Steps => super::steps::height(width),
            Self::Overlap => super::overlap::height(report, width),
            Self::Wrap => super::wrap::height(width),
            Self::Drivetrain => super::drivetrain::height(report, width),
            Self::Capacity => super::capacity::height(),
            Self::Slopes => super::slopes::height(report),
            Self::Verdicts => super::verdicts::height(report),
            Self::Climb => super::climb::height(report),
            Self::Tornado => super::tornado::height(report),
            Self::Profile => super::profile::height(report, width),
            Self::Gain => super::gain::height(),
            Self::GearTimes => super::gear_times::height(report, width),
            Self::Found => super::found::height(report),
            Self::CrossSection => super::cross_section::height(report, width),
            Self::Position => super::position::height(report, width),
        }
    }

    /// What can be looked at, in the order the keyboard steps through.
    #[must_use]
    pub fn spots(self, report: &Report, size: Size) -> Vec<Spot> {
        match self {
            Self::Ladder => super::ladder::spots(report, size),
            Self::Speeds => super::speeds::spots(report, size),
            Self::Steps => super::steps::spots(report, size),
            Self::Overlap => super::overlap::spots(report, size),
            Self::Wrap => super::wrap::spots(report, size),
            Self::Drivetrain => super::drivetrain::spots(report, size),
            Self::Capacity => super::capacity::spots(report, size),
            Self::Slopes => super::slopes::spots(report, size),
            Self::Verdicts => super::verdicts::spots(report, size),
            Self::Climb => super::climb::spots(report, size),
            Self::Tornado => super::tornado::spots(report, size),
            Self::Profile => super::profile::spots(report, size),
            Self::Gain => super::gain::spots(report, size),
            Self::GearTimes => super::gear_times::spots(report, size),
            Self::Found => super::found::spots(report, size),
            Self::CrossSection => super::cross_section::spots(report, size),
            Self::Position => super::position::spots(report, size),
        }
    }

    /// What a spot says.
    #[must_use]
    pub fn words(self, report: &Report, spot: &Spot, index: usize) -> String {
        match self {
            Self::Profile => super::profile::words(report, index),
            Self::Gain => super::gain::words(report, index),
            _ => spot.text.clone(),
        }
    }

    /// One sentence that says what the picture shows for this scenario.
    #[must_use]
    pub fn label(self, report: &Report) -> String {
        match self {
            Self::Ladder => super::ladder::label(report),
            Self::Speeds => super::speeds::label(report),
            Self::Steps => super::steps::label(report),
            Self::Overlap => super::overlap::label(report),
            Self::Wrap => super::wrap::label(report),
            Self::Drivetrain => super::drivetrain::label(report),
            Self::Capacity => super::capacity::label(report),
            Self::Slopes => super::slopes::label(report),
            Self::Verdicts => super::verdicts::label(report),
            Self::Climb => super::climb::label(report),
            Self::Tornado => super::tornado::label(report),
            Self::Profile => super::profile::label(report),
            Self::Gain => super::gain::label(report),
            Self::GearTimes => super::gear_times::label(report),
            Self::Found => super::found::label(report),
            Self::CrossSection => super::cross_section::label(report),
            Self::Position => super::position::label(report),
        }
    }

    fn marks(self, look: &Palette, report: &Report, size: Size) -> Vec<Mark> {
        let pen = &mut Pen::default();
        pen.fill((0.0, 0.0), size, look.paper);
        match self {
            Self::Ladder => super::ladder::draw(pen, look, report, size),
            Self::Speeds => super::speeds::draw(pen, look, report, size),
            Self::Steps => super::steps::draw(pen, look, report, size),
            Self::Overlap => super::overlap::draw(pen, look, report, size),
            Self::Wrap => super::wrap::draw(pen, look, report, size),
            Self::Drivetrain => super::drivetrain::draw(pen, look, report, size),
            Self::Capacity => super::capacity::draw(pen, look, report, size),
            Self::Slopes => super::slopes::draw(pen, look, report, size),
            Self::Verdicts => super::verdicts::draw(pen, look, report, size),
            Self::Climb => super::climb::draw(pen, look, report, size),
            Self::Tornado => super::tornado::draw(pen, look, report, size),
            Self::Profile => super::profile::draw(pen, look, report, size),
            Self::Gain => super::gain::draw(pen, look, report, size),
            Self::GearTimes => super::gear_times::draw(pen, look, report, size),
            Self::Found => super::found::draw(pen, look, report, size),
            Self::CrossSection => super::cross_section::draw(pen, look, report, size),
            Self::Position => super::position::draw(pen, look, report, size),
        }
        std::mem::take(&mut pen.marks)
    }
}

/// Draws on a canvas with `ratio` device pixels to the CSS pixel, in the light or the dark theme.
///
/// # Errors
/// What the backend reports.
pub fn on_canvas<B: DrawingBackend>(
    backend: &mut B,
    picture: Picture,
    report: &Report,
    size: Size,
    ratio: f64,
    dark: bool,
) -> Result<(), DrawingErrorKind<B::ErrorType>> {
    let look = if dark { DARK } else { LIGHT };
    let plate = Plate::canvas(ratio);
    picture.marks(&look, report, size).iter().try_for_each(|mark| plate.draw(backend, mark))
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
        picture.marks(&LIGHT, report, size).iter().try_for_each(|mark| plate.draw(&mut backend, mark))?;
        backend.present()?;
    }
    Ok(svg)
}
