//! What counts, gears, parts and states are called.

use crate::chain::fitting::{Beside, Fitting};
use crate::chain::report::Station;
use crate::number::{plain, shows_nothing, with_unit};
use crate::rings::setup::SetupReport;
use crate::words::{counted, listed};
use gear_math::Gear;
use gear_math::cage::{CageClass, DerailleurFigure};
use gear_math::chain::{CageAngle, ChainMeasure, GearState, WheelRole};
use gear_math::gears::GearSet;

/// Gears named one by one in a sentence; of more, only the first few are.
const NAMED: usize = 5;

/// “1 link”, “110 links”.
pub(crate) fn links(count: u16) -> String {
    counted(usize::from(count), "link", "links")
}

/// “1 tooth”, “37 teeth”.
pub(crate) fn teeth(count: u16) -> String {
    counted(usize::from(count), "tooth", "teeth")
}

/// “an 11”, “a 34”.
pub(crate) fn with_article(count: u16) -> String {
    if matches!(count, 8 | 11 | 18 | 80..=89) { format!("an {count}") } else { format!("a {count}") }
}

/// The first few gears, and how many more there are.
pub(crate) fn few(gears: &[Gear]) -> String {
    let mut names: Vec<String> = gears.iter().take(NAMED).map(ToString::to_string).collect();
    if gears.len() > NAMED {
        names.pop();
        names.push(format!("{} more", gears.len() + 1 - NAMED));
    }
    listed(&names)
}

/// Gears of a set-up by name.
pub(crate) fn named(setup: &SetupReport, set: GearSet) -> String {
    few(&set.gears(&setup.drivetrain).collect::<Vec<_>>())
}

/// “short”, “short or medium”, “short, medium or long”.
pub(crate) fn either(names: &[&str]) -> String {
    match names {
        [front @ .., before, last] => {
            let front: String = front.iter().map(|name| format!("{name}, ")).collect();
            format!("{front}{before} or {last}")
        }
        names => names.concat(),
    }
}

/// “110 links, 2 more than now”.
pub(crate) fn chain(fitting: Fitting) -> String {
    let fit = links(fitting.links);
    let Some((beside, more)) = fitting.change else { return fit };
    let count = more.abs();
    match (beside, more > 0) {
        (Beside::Now, true) => format!("{fit}, {count} more than now"),
        (Beside::Now, false) => format!("{fit}, {count} fewer than now"),
        (Beside::ThatOfA, true) => format!("{fit}, {count} more than A’s"),
        (Beside::ThatOfA, false) => format!("{fit}, {count} fewer than A’s"),
    }
}

/// A class of cages.
pub(crate) const fn class(class: &CageClass) -> &'static str {
    class.name
}

/// A maker's figure.
pub(crate) fn figure(figure: DerailleurFigure) -> String {
    figure.to_string()
}

/// A measure of frame or cage.
pub(crate) const fn measure(measure: ChainMeasure) -> &'static str {
    match measure {
        ChainMeasure::PulleyTeeth => "teeth of the pulleys",
        measure => measure.limits().name,
    }
}

/// Several of them.
pub(crate) fn measures(measures: &[ChainMeasure]) -> Vec<&'static str> {
    measures.iter().map(|&it| measure(it)).collect()
}

/// A wheel that the chain runs round.
pub(crate) const fn wheel(role: WheelRole) -> &'static str {
    match role {
        WheelRole::Chainring => "chainring",
        WheelRole::TensionPulley => "tension pulley",
        WheelRole::GuidePulley => "guide pulley",
        WheelRole::Sprocket => "sprocket",
    }
}

/// A state.
pub(crate) const fn state(state: GearState) -> &'static str {
    match state {
        GearState::Comfortable => "fine",
        GearState::TightButUsual => "tight but usual",
        GearState::TooTight => "too tight",
        GearState::Slack => "slack",
    }
}

/// Where the cage stands and how the gear runs, or how many links are missing or too many.
pub(crate) fn station(station: &Station) -> String {
    let name = state(station.fit.state);
    let links = with_unit(station.fit.links_over.abs(), 1, "links");
    match station.fit.state {
        state if station.to_try && state.is_usable() => format!("{}: {TRY}", near_stop(station)),
        GearState::Comfortable | GearState::TightButUsual => {
            format!("cage {}, {name}", direction(station.fit.drawn_angle))
        }
        GearState::TooTight => format!("{name}, {links} short"),
        GearState::Slack => format!("{name}, {links} too many"),
    }
}

/// What is to be done where a gear leaves too little to spare to be sure.
pub(crate) const TRY: &str = "check for slack";

/// How near its stop the cage stands.
pub(crate) fn near_stop(station: &Station) -> String {
    if shows_nothing(station.to_stop_degrees, 0) {
        "at its stop".to_owned()
    } else {
        format!("{}° from its stop", plain(station.to_stop_degrees, 0))
    }
}

/// A cage angle as seen from the drive side.
fn direction(angle: CageAngle) -> String {
    let degrees = plain(angle.degrees().abs(), 0);
    if shows_nothing(angle.degrees(), 0) {
        "straight down".to_owned()
    } else if angle.degrees() < 0.0 {
        format!("{degrees}° back")
    } else {
        format!("{degrees}° forward")
    }
}
