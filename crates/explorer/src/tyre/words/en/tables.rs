//! How pressure and width move.

use crate::tyre::words::pressure::first;

pub(crate) const PRESSURES: &str = "Pressures to start from";
pub(crate) const PRESSURES_REMARK: &str = "The last three rows explain and rank, they do not promise: a casing is stiffer than its air, and a sharp edge bottoms a tyre far sooner than flat ground.";
pub(crate) const FRONT: &str = "Front";
pub(crate) const REAR: &str = "Rear";
pub(crate) const START: &str = "Start";
pub(crate) const TRY: &str = "Try between";
pub(crate) const DROP: &str = "Tyre drop, % of height";
pub(crate) const BOTTOMING: &str = "Load that bottoms the rim, × yours";
pub(crate) const CONTACT: &str = "Contact with firm ground";

pub(crate) const WIDTHS: &str = "Other widths on this rim";
pub(crate) const WIDTHS_REMARK: &str = "Same rider, ground and kind of tyre. The widest tyre that frame and fork makers name comes before this table. “↑” was raised to the lowest usual pressure or the marked minimum, “↓” cut to the highest allowed; “*” is outside what the formula was made for. Gears against the tyre on the bench, both by their size.";
pub(crate) const WIDTHS_HEADS: [&str; 5] = ["Tyre", "On this rim", "Against the limit", "Roll-out", "Gears"];

/// Front and rear pressures, the unit in brackets behind the first.
pub(crate) fn pressures() -> [String; 2] {
    let [one, other] = first("bar", "psi");
    [FRONT, REAR].map(|wheel| format!("{wheel}, {one} ({other})"))
}

pub(crate) const NO_LIMIT: &str = "no limit";
/// Where there is no pressure.
pub(crate) const NONE: &str = "none";

pub(crate) const RIDERS: &str = "Other riders on this tyre";
pub(crate) const RIDERS_REMARK: &str = "Body mass; kit and bike stay.";
pub(crate) const RIDER: &str = "Rider";

pub(crate) const GROUNDS: &str = "Other ground and style";
pub(crate) const GROUND: &str = "Ground";

/// How its cells are to be read.
pub(crate) fn grounds_remark() -> String {
    let [one, other] = first("bar", "psi");
    format!("Front / rear, {one} ({other}).")
}

/// Why a tube’s pressure rises at once from mixed ground to rocks.
pub(crate) fn on_rocks(front: &str, rear: &str) -> String {
    format!(
        "On rocks workshop custom for tubes, the same under every rider, stands in for the formula’s {front} and {rear}."
    )
}
