//! Pictures: each is one file with its height, its drawing and the spots that can be looked at.

mod capacity;
mod climb;
mod cross_section;
mod drivetrain;
mod found;
mod gain;
mod gear_map;
mod gear_times;
mod ladder;
mod overlap;
pub mod palette;
mod pen;
mod plate;
mod position;
mod profile;
mod scale;
mod side;
mod side_view;
mod slopes;
mod speeds;
mod spot;
mod steps;
mod tornado;
mod verdicts;
mod wrap;

pub use spot::{Spot, by_key, nearest};

use crate::owner::Section;
use crate::report::Report;
use palette::{DARK, LIGHT, Palette};
use pen::{Mark, Pen, Point};
use plate::Plate;
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
            Self::Ladder => ladder::height(report),
            Self::Speeds => speeds::height(report, width),
            Self::Steps => steps::height(width),
            Self::Overlap => overlap::height(report, width),
            Self::Wrap => wrap::height(width),
            Self::Drivetrain => drivetrain::height(report, width),
            Self::Capacity => capacity::height(),
            Self::Slopes => slopes::height(report),
            Self::Verdicts => verdicts::height(report),
            Self::Climb => climb::height(report),
            Self::Tornado => tornado::height(report),
            Self::Profile => profile::height(report, width),
            Self::Gain => gain::height(),
            Self::GearTimes => gear_times::height(report, width),
            Self::Found => found::height(report),
            Self::CrossSection => cross_section::height(report, width),
            Self::Position => position::height(report, width),
        }
    }

    /// What can be looked at, in the order the keyboard steps through.
    #[must_use]
    pub fn spots(self, report: &Report, size: Size) -> Vec<Spot> {
        match self {
            Self::Ladder => ladder::spots(report, size),
            Self::Speeds => speeds::spots(report, size),
            Self::Steps => steps::spots(report, size),
            Self::Overlap => overlap::spots(report, size),
            Self::Wrap => wrap::spots(report, size),
            Self::Drivetrain => drivetrain::spots(report, size),
            Self::Capacity => capacity::spots(report, size),
            Self::Slopes => slopes::spots(report, size),
            Self::Verdicts => verdicts::spots(report, size),
            Self::Climb => climb::spots(report, size),
            Self::Tornado => tornado::spots(report, size),
            Self::Profile => profile::spots(report, size),
            Self::Gain => gain::spots(report, size),
            Self::GearTimes => gear_times::spots(report, size),
            Self::Found => found::spots(report, size),
            Self::CrossSection => cross_section::spots(report, size),
            Self::Position => position::spots(report, size),
        }
    }

    /// What a spot says.
    #[must_use]
    pub fn words(self, report: &Report, spot: &Spot, index: usize) -> String {
        match self {
            Self::Profile => profile::words(report, index),
            Self::Gain => gain::words(report, index),
            _ => spot.text.clone(),
        }
    }

    /// One sentence that says what the picture shows for this scenario.
    #[must_use]
    pub fn label(self, report: &Report) -> String {
        match self {
            Self::Ladder => ladder::label(report),
            Self::Speeds => speeds::label(report),
            Self::Steps => steps::label(report),
            Self::Overlap => overlap::label(report),
            Self::Wrap => wrap::label(report),
            Self::Drivetrain => drivetrain::label(report),
            Self::Capacity => capacity::label(report),
            Self::Slopes => slopes::label(report),
            Self::Verdicts => verdicts::label(report),
            Self::Climb => climb::label(report),
            Self::Tornado => tornado::label(report),
            Self::Profile => profile::label(report),
            Self::Gain => gain::label(report),
            Self::GearTimes => gear_times::label(report),
            Self::Found => found::label(report),
            Self::CrossSection => cross_section::label(report),
            Self::Position => position::label(report),
        }
    }

    /// The section whose answer it shows.
    const fn section(self) -> Section {
        match self {
            Self::Ladder | Self::Speeds | Self::Steps | Self::Overlap => Section::Rings,
            Self::Wrap | Self::Drivetrain | Self::Capacity => Section::Cage,
            Self::Slopes | Self::Verdicts | Self::Climb | Self::Tornado => Section::Ride,
            Self::Profile | Self::Gain | Self::GearTimes | Self::Found => Section::Lap,
            Self::CrossSection => Section::Tyre,
            Self::Position => Section::Position,
        }
    }

    /// What rests on the demo's values is not green.
    fn marks(self, look: &Palette, report: &Report, size: Size) -> Vec<Mark> {
        let good = if report.owners.rests_on_demo(self.section()) { look.soft } else { look.good };
        let look = &Palette { good, ..*look };
        let pen = &mut Pen::default();
        pen.fill((0.0, 0.0), size, look.paper);
        match self {
            Self::Ladder => ladder::draw(pen, look, report, size),
            Self::Speeds => speeds::draw(pen, look, report, size),
            Self::Steps => steps::draw(pen, look, report, size),
            Self::Overlap => overlap::draw(pen, look, report, size),
            Self::Wrap => wrap::draw(pen, look, report, size),
            Self::Drivetrain => drivetrain::draw(pen, look, report, size),
            Self::Capacity => capacity::draw(pen, look, report, size),
            Self::Slopes => slopes::draw(pen, look, report, size),
            Self::Verdicts => verdicts::draw(pen, look, report, size),
            Self::Climb => climb::draw(pen, look, report, size),
            Self::Tornado => tornado::draw(pen, look, report, size),
            Self::Profile => profile::draw(pen, look, report, size),
            Self::Gain => gain::draw(pen, look, report, size),
            Self::GearTimes => gear_times::draw(pen, look, report, size),
            Self::Found => found::draw(pen, look, report, size),
            Self::CrossSection => cross_section::draw(pen, look, report, size),
            Self::Position => position::draw(pen, look, report, size),
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
