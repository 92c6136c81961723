//! Heads of the values ready to be picked.

use gear_math::cage::CageClass;
use gear_math::gears::RollOutPreset;
use gear_math::{Cassette, Chainset};

/// Over what was picked last.
pub(crate) const LAST: &str = "Picked last";
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
