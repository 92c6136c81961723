//! The drivetrain in one gear.

use crate::chain::report::{ChainReport, Station};
use crate::chain::words::names;
use crate::layout::line::name;
use crate::number::{plain, with_unit};
use crate::side::Side;
use gear_math::chain::PathWheel;

/// Its title.
pub(crate) const TITLE: &str = "The chain in one gear, true to scale";
/// How it is to be read.
pub(crate) const CAPTION: &str = "From the drive side; broken lines: the cage’s rest position and forward limit. The framed gear is drawn.";
/// The key's mark of a gear that is to be looked at.
pub(crate) const TO_TRY: &str = "check for slack";
/// The key's mark of a gear that asks for more than the maker states.
pub(crate) const BEYOND: &str = "beyond maker’s capacity";

/// The picture in a sentence.
pub(crate) fn label(panels: &[String]) -> String {
    format!("Drivetrain from the drive side, true to scale. {}.", panels.join(". "))
}

/// Over the drivetrain of one set-up.
pub(crate) fn panel(chain: &ChainReport) -> String {
    let station = chain.station();
    format!("{} · {}: {}", chain.side, station.fit.gear, names::station(station))
}

/// Over a drivetrain that cannot be.
pub(crate) fn overlap(side: Side) -> String {
    format!("{side}: these wheels run into each other")
}

/// One gear.
pub(crate) fn gear(side: Side, station: &Station) -> String {
    let fit = &station.fit;
    let mut text = format!("{side} {}: {}", fit.gear, names::station(station));
    if fit.state.is_usable() {
        text.push_str(&format!(
            "; the chain could lose {} before the cage reaches its forward limit, or gain {} before it hangs",
            with_unit(fit.to_fore_stop, 1, "links"),
            plain(fit.to_rear_stop, 1)
        ));
    }
    text.push_str(&format!(". Chain angle {}°", plain(fit.chain_angle.degrees(), 1)));
    text + &against(station) + "."
}

/// What speaks against a gear.
fn against(station: &Station) -> String {
    let against = [
        (station.crossed, ", cross-chained"),
        (station.beyond_maker > 0, ". Beyond the maker’s capacity, which comes first"),
        (station.avoid, ". Never use it"),
    ];
    against.iter().filter(|(holds, _)| *holds).map(|&(_, words)| words).collect()
}

/// One wheel.
pub(crate) fn wheel(side: Side, wheel: &PathWheel) -> String {
    format!(
        "{side}, {} of {} teeth: the chain lies round {}° of it, {}.",
        names::wheel(wheel.role),
        wheel.circle.teeth(),
        plain(wheel.wrap_degrees, 0),
        with_unit(wheel.chain_mm, 0, "mm")
    )
}

/// What the gear with least to spare is like on a set-up.
pub(crate) fn finding(chain: &ChainReport) -> String {
    let (worst, name) = (chain.worst(), name(chain.side));
    let gear = worst.fit.gear;
    match (worst.fit.state.is_usable(), worst.to_try) {
        (true, true) => {
            format!("On {name} the cage in {gear} stands {}: {}", names::near_stop(worst), names::TRY)
        }
        (true, false) => format!("On {name} every gear runs, with least to spare in {gear}"),
        (false, _) => format!("On {name} {gear} is {}", names::station(worst)),
    }
}

/// What is found on both.
pub(crate) fn says([a, b]: &[String; 2]) -> String {
    format!("{a}. {b}.")
}
