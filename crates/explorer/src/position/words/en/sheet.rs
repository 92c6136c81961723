//! Rows of the workshop sheet.

use crate::number::{mm, trimmed};
use crate::position::inputs::PositionInputs;
use crate::position::report::PositionReport;
use crate::position::words::names::stem as stem_name;
use crate::position::words::stems::missing;
use crate::position::words::tables::room;
use crate::units::{LengthNumber, length, whole_length as whole};
use gear_math::StemSearch;
use gear_math::position::{BarShape, Footing, PositionChanges, ToeClearance};

/// Over the section's rows.
pub(crate) const TITLE: &str = "Position";
/// The saddle's height.
pub(crate) const SADDLE_HEIGHT: &str = "Saddle height";
/// The saddle's setback.
pub(crate) const SADDLE_TIP: &str = "Saddle tip";
/// Where the saddle goes on its rails.
pub(crate) const RAILS: &str = "Rails";
/// Saddle to bar.
pub(crate) const TIP_TO_BAR: &str = "Tip to bar";
/// The bar's height.
pub(crate) const BAR_CENTRE: &str = "Bar centre";
/// The nearest stem.
pub(crate) const STEM: &str = "Stem";
/// What the stem was worked out on.
pub(crate) const FRAME: &str = "Frame";
/// What shall differ.
pub(crate) const CHANGES: &str = "Changes";
/// Another handlebar.
pub(crate) const HANDLEBAR: &str = "Handlebar";
/// Crank and sole.
pub(crate) const FEET: &str = "Crank, sole";
/// Room between toes and tyre.
pub(crate) const TOES: &str = "Toe overlap";
/// What is written down once it is built.
pub(crate) const BUILT: [&str; 2] = ["Built: saddle", "Built: bar"];

/// The saddle's height.
pub(crate) fn saddle_height(position: &PositionReport) -> String {
    let (height, angle) =
        (whole(position.cross.saddle_height_mm), trimmed(position.inputs.cross.seat_angle.degrees()));
    format!("{height} up the seat tube at {angle}°, to the saddle top")
}

/// Saddle to bar.
pub(crate) fn tip_to_bar(tape_mm: f64) -> String {
    format!("{} straight", whole(tape_mm))
}

/// The nearest stem; others stand on the page.
pub(crate) fn stem(position: &PositionReport) -> String {
    let nearest = position.nearest();
    let stem = stem_name(&nearest.setup);
    match &position.search {
        StemSearch::NoneFits(shortfall) => format!("none fits: {}; nearest {stem}", missing(shortfall)),
        StemSearch::Found(_) => format!("{stem}; off by {}; minus points down", whole(nearest.miss_mm)),
    }
}

/// The frame's and the headset's measures that a stem was worked out on.
pub(crate) fn frame(inputs: &PositionInputs) -> String {
    let front = &inputs.front;
    format!(
        "stack {}, reach {}, head angle {}°, headset {}, clamp {}; at most {} of spacers",
        LengthNumber(front.stack.mm()),
        LengthNumber(front.reach.mm()),
        trimmed(front.head_angle.degrees()),
        LengthNumber(front.top_cap.mm()),
        length(front.clamp_height.mm()),
        length(inputs.limits.max_spacers.mm())
    )
}

/// What shall differ from the road bike.
pub(crate) fn changes(changes: &PositionChanges) -> String {
    let [lower, higher, closer] =
        [changes.lower_by.mm(), changes.bar_up_by.mm(), changes.bar_closer_by.mm()].map(length);
    if changes.keep_knee_over_pedal {
        format!("saddle {lower} lower; bar {higher} higher, {closer} closer, knee kept over the pedal")
    } else {
        format!("saddle {lower} lower; bar {higher} higher, {closer} closer")
    }
}

/// The handlebar that saddle to bar and bar centre hold for.
pub(crate) fn handlebar(road: BarShape, cross: BarShape) -> String {
    let [road, cross] = [road, cross].map(shape);
    format!("of the cross bike, {cross}: saddle to bar and bar centre hold for it (road bike: {road})")
}

fn shape(bar: BarShape) -> String {
    let reach = length(bar.reach.mm());
    match bar.depth {
        Some(depth) => format!("reach {reach}, drop {}", length(depth.mm())),
        None => format!("reach {reach}"),
    }
}

/// Crank and sole.
pub(crate) fn feet(feet: &Footing) -> String {
    format!("{}; sole {} above the pedal axle", mm(feet.crank.mm()), length(feet.sole_stack.mm()))
}

/// Room between toes and tyre, of both sides where their tyres differ.
pub(crate) fn toes(toes: &ToeClearance, of_b: Option<&ToeClearance>) -> String {
    of_b.map_or_else(|| room_said(toes), |of_b| format!("A {}; B {}", room_said(toes), room_said(of_b)))
}

fn room_said(toes: &ToeClearance) -> String {
    let room = room(toes);
    if toes.verdict.caution().is_none() {
        format!("{room} from pedal axle to tyre, enough")
    } else {
        format!("{room} from pedal axle to tyre, short, see below")
    }
}
