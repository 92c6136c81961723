//! How the position was worked out, with this scenario's numbers.

use crate::layout::sum::{Sum, sum};
use crate::number::{bracketed, plain, trimmed};
use crate::position::inputs::PositionInputs;
use crate::position::report::PositionReport;
use crate::units::{LengthNumber, length, lengths};
use gear_math::RoadPosition;
use gear_math::position::{BarShape, CarriedPosition};

/// Where a measure is not known.
pub(crate) const NOT_WORKED_OUT: &str = "Not worked out while a measure is not known.";
/// How forward and up are counted.
pub(crate) const AXES: &str =
    "Seen from the drive side; forward and up count from the centre of the bottom bracket.";
/// What “closer” and “higher” mean.
pub(crate) fn closer_and_higher() -> String {
    let (least, most) = (lengths().number(1.0, 0), lengths().print(4.0, 0));
    format!(
        "“Closer” is taken along the line from saddle tip to bar: taken level, the bar would come {least} to {most} nearer still. “Higher” is against the saddle: a saddle set lower takes the bar down with it."
    )
}

/// What it rests on.
pub(crate) const BASIS: &str = "Plane geometry; the changes and stem sizes are common practice.";

/// The saddle's height on the road bike's seat angle.
pub(crate) fn saddle_height(position: &PositionReport) -> Sum {
    let (road, inputs, cross) = parts(position);
    sum(
        "Saddle height",
        "height + road crank − cross crank + cross stack − road stack − lower",
        format!(
            "{} + {} − {} + {} − {} − {} = {}",
            LengthNumber(road.saddle.height.mm()),
            LengthNumber(road.footing.crank.mm()),
            LengthNumber(inputs.cross.footing.crank.mm()),
            LengthNumber(inputs.cross.footing.sole_stack.mm()),
            LengthNumber(road.footing.sole_stack.mm()),
            bracketed(&LengthNumber(inputs.changes.lower_by.mm()).to_string()),
            length(cross.saddle_height_road_angle_mm)
        ),
    )
}

/// The same on the cross bike's.
pub(crate) fn on_its_seat_angle(position: &PositionReport) -> Sum {
    let (road, inputs, cross) = parts(position);
    sum(
        "On the cross bike’s seat angle",
        "× sin(road angle) ÷ sin(cross angle)",
        format!(
            "{} × sin {}° ÷ sin {}° = {}",
            lengths().number(cross.saddle_height_road_angle_mm, 1),
            trimmed(road.saddle.seat_angle.degrees()),
            trimmed(inputs.cross.seat_angle.degrees()),
            length(cross.saddle_height_mm)
        ),
    )
}

/// The setback that keeps the knee over the pedal.
pub(crate) fn setback(position: &PositionReport) -> Sum {
    let (road, inputs, cross) = parts(position);
    sum(
        "Saddle’s setback",
        "road setback + road crank − cross crank",
        format!(
            "{} + {} − {} = {}",
            LengthNumber(road.saddle.setback.mm()),
            LengthNumber(road.footing.crank.mm()),
            LengthNumber(inputs.cross.footing.crank.mm()),
            length(cross.setback_mm)
        ),
    )
}

/// How far the saddle slides.
pub(crate) fn rails(position: &PositionReport) -> Sum {
    let (road, inputs, cross) = parts(position);
    sum(
        "Rails",
        "height × cos(seat angle) − setback, cross less road",
        format!(
            "({} × cos {}° − {}) − ({} × cos {}° − {}) = {}",
            lengths().number(cross.saddle_height_mm, 1),
            trimmed(inputs.cross.seat_angle.degrees()),
            LengthNumber(cross.setback_mm),
            LengthNumber(road.saddle.height.mm()),
            trimmed(road.saddle.seat_angle.degrees()),
            LengthNumber(road.saddle.setback.mm()),
            length(cross.rail_shift_forward_mm)
        ),
    )
}

/// The bar's place.
pub(crate) fn bar(position: &PositionReport) -> Sum {
    let cross = &position.cross;
    sum(
        "Bar",
        "forward = √(tip to bar² − drop²) − setback, up = saddle − drop",
        format!(
            "√({}² − {}²) − {} = {}; {} − {} = {}",
            LengthNumber(cross.tip_to_bar_mm),
            LengthNumber(cross.bar_drop_mm),
            LengthNumber(cross.setback_mm),
            length(cross.target.x_mm),
            lengths().number(cross.saddle_vertical_mm, 1),
            LengthNumber(cross.bar_drop_mm),
            length(cross.target.y_mm)
        ),
    )
}

/// What another handlebar moves it by.
pub(crate) fn other_handlebar(position: &PositionReport, (old, new): (BarShape, BarShape)) -> Sum {
    sum(
        "Other handlebar",
        "forward + road reach − cross reach",
        format!(
            "{} + {} − {} = {}",
            lengths().number(position.cross.target.x_mm, 1),
            LengthNumber(old.reach.mm()),
            LengthNumber(new.reach.mm()),
            length(position.target().x_mm)
        ),
    )
}

/// Where the nearest stem puts it.
pub(crate) fn stem(position: &PositionReport) -> Sum {
    let (front, nearest) = (&position.inputs.front, position.nearest());
    let (alpha, stem) = (trimmed(front.head_angle.degrees()), LengthNumber(nearest.setup.length.mm()));
    sum(
        "Stem",
        "h = headset + spacers + clamp ÷ 2; forward = reach − h cos α + L cos φ, up = stack + h sin α + L sin φ, φ = 90° − α + angle",
        format!(
            "h = {} + {} + {} ÷ 2, α = {alpha}°, φ = 90° − {alpha}° + {}°; {} − h cos α + {stem} cos φ = {}; {} + h sin α + {stem} sin φ = {}",
            LengthNumber(front.top_cap.mm()),
            LengthNumber(nearest.setup.spacers.mm()),
            LengthNumber(front.clamp_height.mm()),
            plain(nearest.setup.angle.degrees(), 0),
            LengthNumber(front.reach.mm()),
            length(nearest.bar.x_mm),
            LengthNumber(front.stack.mm()),
            length(nearest.bar.y_mm)
        ),
    )
}

fn parts(position: &PositionReport) -> (&RoadPosition, &PositionInputs, &CarriedPosition) {
    (&position.inputs.road, &position.inputs, &position.cross)
}
