//! Pictures: each is one file with its height, its drawing and the spots that can be looked at.

use crate::drawing::palette::{DARK, LIGHT, Palette};
use crate::drawing::pen::{Mark, Pen, Size};
use crate::drawing::plate::Plate;
use crate::drawing::spot::Spot;
use crate::page::report::Report;
use plotters::backend::SVGBackend;
use plotters_backend::{DrawingBackend, DrawingErrorKind};

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
            Self::Ladder => crate::rings::pictures::ladder::height(report),
            Self::Speeds => crate::rings::pictures::speeds::height(report, width),
            Self::Steps => crate::rings::pictures::steps::height(width),
            Self::Overlap => crate::rings::pictures::overlap::height(report, width),
            Self::Wrap => crate::chain::pictures::wrap::height(width),
            Self::Drivetrain => crate::chain::pictures::drivetrain::height(report, width),
            Self::Capacity => crate::chain::pictures::capacity::height(),
            Self::Slopes => crate::ride::pictures::slopes::height(report),
            Self::Verdicts => crate::ride::pictures::verdicts::height(report),
            Self::Climb => crate::ride::pictures::climb::height(report),
            Self::Tornado => crate::ride::pictures::tornado::height(report),
            Self::Profile => crate::lap::pictures::profile::height(report, width),
            Self::Gain => crate::lap::pictures::gain::height(),
            Self::GearTimes => crate::lap::pictures::gear_times::height(report, width),
            Self::Found => crate::lap::pictures::found::height(report),
            Self::CrossSection => crate::tyre::picture::height(report, width),
            Self::Position => crate::position::picture::height(report, width),
        }
    }

    /// What can be looked at, in the order the keyboard steps through.
    #[must_use]
    pub fn spots(self, report: &Report, size: Size) -> Vec<Spot> {
        match self {
            Self::Ladder => crate::rings::pictures::ladder::spots(report, size),
            Self::Speeds => crate::rings::pictures::speeds::spots(report, size),
            Self::Steps => crate::rings::pictures::steps::spots(report, size),
            Self::Overlap => crate::rings::pictures::overlap::spots(report, size),
            Self::Wrap => crate::chain::pictures::wrap::spots(report, size),
            Self::Drivetrain => crate::chain::pictures::drivetrain::spots(report, size),
            Self::Capacity => crate::chain::pictures::capacity::spots(report, size),
            Self::Slopes => crate::ride::pictures::slopes::spots(report, size),
            Self::Verdicts => crate::ride::pictures::verdicts::spots(report, size),
            Self::Climb => crate::ride::pictures::climb::spots(report, size),
            Self::Tornado => crate::ride::pictures::tornado::spots(report, size),
            Self::Profile => crate::lap::pictures::profile::spots(report, size),
            Self::Gain => crate::lap::pictures::gain::spots(report, size),
            Self::GearTimes => crate::lap::pictures::gear_times::spots(report, size),
            Self::Found => crate::lap::pictures::found::spots(report, size),
            Self::CrossSection => crate::tyre::picture::spots(report, size),
            Self::Position => crate::position::picture::spots(report, size),
        }
    }

    /// What a spot says.
    #[must_use]
    pub fn words(self, report: &Report, spot: &Spot, index: usize) -> String {
        match self {
            Self::Profile => crate::lap::pictures::profile::words(report, index),
            Self::Gain => crate::lap::pictures::gain::words(report, index),
            _ => spot.text.clone(),
        }
    }

    /// One sentence that says what the picture shows for this scenario.
    #[must_use]
    pub fn label(self, report: &Report) -> String {
        match self {
            Self::Ladder => crate::rings::pictures::ladder::label(report),
            Self::Speeds => crate::rings::pictures::speeds::label(report),
            Self::Steps => crate::rings::pictures::steps::label(report),
            Self::Overlap => crate::rings::pictures::overlap::label(report),
            Self::Wrap => crate::chain::pictures::wrap::label(report),
            Self::Drivetrain => crate::chain::pictures::drivetrain::label(report),
            Self::Capacity => crate::chain::pictures::capacity::label(report),
            Self::Slopes => crate::ride::pictures::slopes::label(report),
            Self::Verdicts => crate::ride::pictures::verdicts::label(report),
            Self::Climb => crate::ride::pictures::climb::label(report),
            Self::Tornado => crate::ride::pictures::tornado::label(report),
            Self::Profile => crate::lap::pictures::profile::label(report),
            Self::Gain => crate::lap::pictures::gain::label(report),
            Self::GearTimes => crate::lap::pictures::gear_times::label(report),
            Self::Found => crate::lap::pictures::found::label(report),
            Self::CrossSection => crate::tyre::picture::label(report),
            Self::Position => crate::position::picture::label(report),
        }
    }

    fn marks(self, look: &Palette, report: &Report, size: Size) -> Vec<Mark> {
        let pen = &mut Pen::default();
        pen.fill((0.0, 0.0), size, look.paper);
        match self {
            Self::Ladder => crate::rings::pictures::ladder::draw(pen, look, report, size),
            Self::Speeds => crate::rings::pictures::speeds::draw(pen, look, report, size),
            Self::Steps => crate::rings::pictures::steps::draw(pen, look, report, size),
            Self::Overlap => crate::rings::pictures::overlap::draw(pen, look, report, size),
            Self::Wrap => crate::chain::pictures::wrap::draw(pen, look, report, size),
            Self::Drivetrain => crate::chain::pictures::drivetrain::draw(pen, look, report, size),
            Self::Capacity => crate::chain::pictures::capacity::draw(pen, look, report, size),
            Self::Slopes => crate::ride::pictures::slopes::draw(pen, look, report, size),
            Self::Verdicts => crate::ride::pictures::verdicts::draw(pen, look, report, size),
            Self::Climb => crate::ride::pictures::climb::draw(pen, look, report, size),
            Self::Tornado => crate::ride::pictures::tornado::draw(pen, look, report, size),
            Self::Profile => crate::lap::pictures::profile::draw(pen, look, report, size),
            Self::Gain => crate::lap::pictures::gain::draw(pen, look, report, size),
            Self::GearTimes => crate::lap::pictures::gear_times::draw(pen, look, report, size),
            Self::Found => crate::lap::pictures::found::draw(pen, look, report, size),
            Self::CrossSection => crate::tyre::picture::draw(pen, look, report, size),
            Self::Position => crate::position::picture::draw(pen, look, report, size),
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
