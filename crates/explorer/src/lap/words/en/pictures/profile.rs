//! The course from the side.

use crate::lap::settled::Settled;
use crate::lap::words::pictures::gain::most;
use crate::layout::line::name;
use crate::number::{signed, with_unit};
use crate::side::Side;
use crate::units;
use crate::words::counted;
use gear_math::Gear;

/// Title of the picture.
pub(crate) const TITLE: &str = "The lap, and how to ride it";

/// How it is to be read.
pub(crate) const CAPTION: &str = "Bars: ridden; footsteps: on foot; hatching: too close to call; strokes on the hill: obstacles; the bar over it: where most is gained. Drag over a stretch, or press Enter at both its ends, to change it. Beneath, the gear by its development, A a line, B in dashes; then your reserve: down where it is drawn, up where it comes back.";

/// Over what is drawn from the reserve.
pub(crate) const RESERVE: &str = "drawn from your reserve";

/// In place of the ground.
pub(crate) const OBSTACLE: &str = "an obstacle";

/// What it shows: length, climbing, and places on foot of A and B.
pub(crate) fn label(length_m: f64, climb_m: f64, [of_a, of_b]: [usize; 2]) -> String {
    let (length, climb) = (units::distances().print(length_m, 0), units::distances().print(climb_m, 0));
    let of_a = counted(of_a, "place", "places");
    format!("Profile of {length} with {climb} of climbing; on foot at {of_a} with A, {of_b} with B.")
}

/// A place: its distance and height, the slope in per cent, the ground, and how A and B go there.
pub(crate) fn place(at_m: f64, height_m: f64, slope: f64, ground: &str, [a, b]: [&str; 2]) -> String {
    let (at, height, slope) =
        (units::distances().print(at_m, 0), units::distances().print(height_m, 1), signed(slope, 1));
    format!("{at}: {height} up, {slope}\u{a0}%, {ground}. A: {a}. B: {b}.")
}

/// A stretch that is marked.
pub(crate) fn stretch(from_m: f64, to_m: f64) -> String {
    format!(
        "A stretch from {} to {}.",
        units::distances().print(from_m, 0),
        units::distances().print(to_m, 0)
    )
}

/// How a set-up is ridden.
pub(crate) fn ridden(gear: Gear, cadence_rpm: f64, speed: &str) -> String {
    let cadence = with_unit(cadence_rpm, 0, "rpm");
    format!("{gear} at {cadence}, {speed}")
}

/// The same on a reserve: at what power, and what is drawn of it against its fullest point on the lap.
pub(crate) fn on_reserve(riding: &str, power_w: f64, drawn_j: f64) -> String {
    let (power, drawn) = (with_unit(power_w, 0, "W"), with_unit(drawn_j / 1e3, 1, "kJ"));
    format!("{riding}, {power}, reserve down by {drawn}")
}

/// That it is not.
pub(crate) fn on_foot(speed: &str) -> String {
    format!("on foot, {speed}")
}

/// Where the one ahead gains most, once that is known, and where A and B go on foot.
pub(crate) fn says(settled: Option<&Settled>, on_foot: [usize; 2]) -> String {
    format!("{}{}", settled.map_or_else(String::new, most), feet(on_foot))
}

fn feet([of_a, of_b]: [usize; 2]) -> String {
    let (a, b) = (name(Side::A), name(Side::B));
    match (of_a, of_b) {
        (0, 0) => format!("You ride all of it with {a} and with {b}."),
        (same, other) if same == other => {
            format!("On foot at {} with {a} and with {b}.", counted(same, "place", "places"))
        }
        _ => format!("On foot at {} with {a}, {of_b} with {b}.", counted(of_a, "place", "places")),
    }
}
