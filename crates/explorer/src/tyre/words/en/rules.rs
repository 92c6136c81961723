//! Rules of races on tyres and wheels.

use crate::layout::line::{Line, Look};
use crate::number::{trimmed, with_unit};
use crate::tyre::words::width::typed;
use gear_math::TyreSize;
use gear_math::wheel::RaceRule;

pub(crate) const TITLE: &str = "Width limits found in print";
pub(crate) const REMARK: &str = "They change, and local ones differ: your organiser has the last word. The gauge measures the mounted tyre, not its label.";
/// Over its columns.
pub(crate) const HEADS: [&str; 4] = ["Rule of", "For", "Widest", "Seen in"];

/// A row.
pub(crate) fn row(rule: &RaceRule) -> Vec<String> {
    vec![rule.body.to_owned(), rule.who.to_owned(), typed(rule.limit.mm()), rule.seen.to_owned()]
}

/// How large a wheel may be, and how large this one is.
pub(crate) fn wheels(size: TyreSize) -> Line {
    let verdict =
        if size.is_race_diameter() { "within that".to_owned() } else { Look::Stop.part("outside that") };
    let [least, greatest] = TyreSize::RACE_DIAMETER_MM.map(trimmed);
    let [diameter, room] =
        [size.nominal_diameter(), size.clearance_diameter()].map(|it| with_unit(it.mm(), 0, "mm"));
    format!("UCI 1.3.018 also forbids spikes and studs and asks for wheels of {least} to {greatest}\u{a0}mm over the tyre: {size} measures {diameter}, {verdict}. Leave it room for {room} in frame and fork: tyres grow.").into()
}
