//! Heads of the form's parts, and of the values ready to be picked.

use crate::words::listed;
use gear_math::cage::CageClass;
use gear_math::gears::RollOutPreset;
use gear_math::{Cassette, Chainset, Surface};

/// Set-up A.
pub(crate) const SETUP_A: &str = "A · filled";
/// Set-up B.
pub(crate) const SETUP_B: &str = "B · outlined";
/// What unfolds the rest of the bench.
pub(crate) const MORE: &str = "Wheel, derailleur, rider, rules";
/// Part of the bench.
pub(crate) const WHEEL: &str = "Wheel";
/// Part of the bench.
pub(crate) const DERAILLEURS: &str = "Derailleurs";
/// Part of the bench.
pub(crate) const RIDER: &str = "Rider";
/// Part of the bench.
pub(crate) const RECKONING: &str = "Counting, units, race rules";
/// What unfolds finer settings.
pub(crate) const FINER: &str = "Finer settings";
/// Part of the position.
pub(crate) const ROAD_BIKE: &str = "Road bike, as measured";
/// Part of the position.
pub(crate) const CROSS_BIKE: &str = "Cross bike, and what shall differ";
/// Part of the position.
pub(crate) const CROSS_FRAME: &str = "Cross frame";
/// What unfolds the finer settings of riding and running.
pub(crate) const RIDE_FINER: &str = "Finer settings: your body, the ground, the limits";
/// Part of riding and running.
pub(crate) const RIDE_RIDER: &str = "Rider and burden";
/// Part of riding and running.
pub(crate) const RIDE_GROUND: &str = "Ground and air";
/// Part of riding and running.
pub(crate) const RIDE_LIMITS: &str = "What ends riding";
/// Part of riding and running.
pub(crate) const RIDE_EFFORT: &str = "Short efforts";
/// What unfolds the sketch of a course.
pub(crate) const SKETCH: &str = "Sketch a course; change ground or add obstacles on a stretch";
/// What unfolds how the lap is ridden.
pub(crate) const HABITS: &str = "Shifting and braking";

/// How a sketch is written.
pub(crate) fn sketching() -> String {
    let grounds = listed(&Surface::ALL.map(Surface::name));
    format!("Separate with ; or |. Grounds: {grounds}.")
}

/// Over the cassettes to pick.
pub(crate) const CASSETTES: &str = "Usual cassettes";
/// Over the rings to pick.
pub(crate) const RINGS: &str = "Usual rings";
/// Over what cages have.
pub(crate) const CAGES: &str = "Usual by cage length";
/// Over the limits of roll-out.
pub(crate) const RULES: &str = "From rule books";

/// What a list of values to pick is called.
pub(crate) fn picks(title: &str, label: &str, side: &str) -> String {
    format!("{title}, put into {label} {side}")
}

/// Over cassettes of so many sprockets.
pub(crate) fn cassettes(sprockets: usize) -> String {
    format!("{sprockets} sprockets, common practice; makers differ in the middle")
}

/// A cassette to pick.
pub(crate) fn cassette(cassette: &Cassette) -> String {
    format!("{}-{}: {cassette}", cassette.smallest(), cassette.largest())
}

/// Over rings of one kind.
pub(crate) fn rings(chainset: &Chainset) -> &'static str {
    if chainset.difference() > 0 { "Pairs, common practice" } else { "Single rings, common practice" }
}

/// Over capacities of a cage.
pub(crate) fn capacities(class: &CageClass) -> String {
    let (least, most) = class.total_capacity;
    format!("{} cage, common practice: {least} to {most}", class.name)
}

/// A capacity to pick.
pub(crate) fn teeth(teeth: u16) -> String {
    format!("{teeth} teeth")
}

/// Over distances of a cage's pulleys.
pub(crate) fn pulley_centres(class: &CageClass) -> String {
    format!("{} cage, common practice", class.name)
}

/// A limit of roll-out, and where it is written.
pub(crate) fn roll_out_limit(preset: &RollOutPreset) -> String {
    let (limit, category, status) = (preset.limit.m(), preset.category, preset.status);
    match preset.article {
        Some(article) => format!("{limit} m, {category} ({status}, article {article})"),
        None => format!("{limit} m, {category} ({status})"),
    }
}

/// Over the limits of one rule book.
pub(crate) fn rule_book(preset: &RollOutPreset) -> String {
    format!("{}, {}", preset.federation, preset.discipline)
}
