//! The two side views.

use crate::number::{mm, plain, trimmed};
use crate::position::report::PositionReport;
use crate::position::words::names::{below, setback, stem_length};
use crate::units::{length, lengths, whole_length as whole};

/// Its title.
pub(crate) const TITLE: &str = "Road and cross laid over one another";
/// How it is to be read.
pub(crate) const CAPTION: &str =
    "To scale, both bottom brackets in one place; saddle tip, bar and sole enlarged to one scale.";
/// The road bike's lines.
pub(crate) const ROAD: &str = "road";
/// The cross bike's lines.
pub(crate) const CROSS: &str = "cross";
/// The saddle.
pub(crate) const SADDLE: &str = "saddle";
/// The handlebar.
pub(crate) const BAR: &str = "bar";
/// The bottom bracket.
pub(crate) const BOTTOM_BRACKET: &str = "bottom bracket";
/// The pedal.
pub(crate) const PEDAL: &str = "pedal";
/// Over the places enlarged.
pub(crate) const PLACES: [&str; 3] = ["saddle tip", "bar", "sole"];

/// Under them: what is measured there.
pub(crate) const MEASURES: [&str; 3] = ["height", "drop", "stack"];

/// A measure on the road bike and on the cross bike.
pub(crate) fn from_to([road, cross]: [&str; 2]) -> String {
    format!("{road} → {cross}")
}

/// The length of the scale, in the unit in force.
pub(crate) fn scale(length: f64) -> String {
    format!("{} {}", trimmed(length), lengths().symbol())
}

/// The picture in a sentence.
pub(crate) fn label(position: &PositionReport) -> String {
    let (road, cross) = (&position.inputs.road, &position.cross);
    format!(
        "Side view of both bikes to scale: saddle {} high on the road bike and {} on the cross bike, bar {} and {}.",
        length(road.saddle.height.mm()),
        whole(cross.saddle_height_mm),
        below(road.bar_drop.mm()),
        below(cross.bar_drop_mm)
    )
}

/// The saddle's tip.
pub(crate) fn saddle(position: &PositionReport) -> String {
    let (road, cross) = (&position.inputs.road, &position.cross);
    format!(
        "Saddle: {} along the seat tube, {}; on the road bike {}, {}.",
        whole(cross.saddle_height_mm),
        setback(cross.setback_mm),
        length(road.saddle.height.mm()),
        setback(road.saddle.setback.mm())
    )
}

/// The handlebar.
pub(crate) fn bar(position: &PositionReport) -> String {
    let road = &position.inputs.road;
    format!(
        "Bar: {}, {} from its tip; on the road bike {}, {}.",
        below(position.cross.bar_drop_mm),
        whole(position.tape_mm()),
        below(road.bar_drop.mm()),
        length(road.tip_to_bar.mm())
    )
}

/// The stem.
pub(crate) fn stem(position: &PositionReport) -> String {
    let nearest = position.nearest();
    format!(
        "Stem drawn: {} at {}° on {} of spacers; it is off the bar’s place by {}.",
        stem_length(nearest.setup.length),
        plain(nearest.setup.angle.degrees(), 0),
        length(nearest.setup.spacers.mm()),
        whole(nearest.miss_mm)
    )
}

/// The pedal.
pub(crate) fn pedal(position: &PositionReport) -> String {
    let (road, cross) = (&position.inputs.road.footing, &position.inputs.cross.footing);
    format!(
        "Pedal: crank {}, sole {} above the axle; on the road bike {} and {}.",
        mm(cross.crank.mm()),
        length(cross.sole_stack.mm()),
        mm(road.crank.mm()),
        length(road.sole_stack.mm())
    )
}

/// What becomes of saddle and bar.
pub(crate) fn says(position: &PositionReport) -> String {
    let (road, cross) = (&position.inputs.road, &position.cross);
    let of_road = road.saddle.height.mm();
    let saddle = whole(cross.saddle_height_mm);
    let saddle = if saddle == whole(of_road) {
        format!("Saddle {saddle} high as on the road bike")
    } else {
        format!("Saddle {saddle} high instead of {}", length(of_road))
    };
    let (bar, higher) = (below(cross.bar_drop_mm), road.bar_drop.mm() - cross.bar_drop_mm);
    let side = if higher < 0.0 { "lower" } else { "higher" };
    format!("{saddle}, bar {bar}, {} {side} than there.", whole(higher.abs()))
}
