//! The table of where everything goes.

use crate::bench::field::Field;
use crate::layout::head::Head;
use crate::layout::pieces::plain_table;
use crate::number::mm;
use crate::position::report::{BAR, DROP, PositionReport, SADDLE};
use crate::position::words::measures as words;
use crate::position::words::names::NOT_KNOWN;
use crate::units::{length, whole_length as whole};
use maud::Markup;

/// What the saddle's length of leg and the pedals rest on.
const FEET: &[Field] = &[Field::RoadCrank, Field::RoadStack, Field::CrossCrank, Field::CrossStack];

/// A measure: its name, what it rests on, on the road bike and on the cross bike, in millimetres.
type Measure<'r> = (&'static str, &'r [Field], Told, Option<f64>, f64);

/// How a measure of the road bike is told and one of the cross bike: as it was typed, or as a tape shows it.
type Told = [fn(f64) -> String; 2];

/// Typed of both, and in millimetres in every trade: the crank.
const GIVEN: Told = [mm, mm];
/// Typed of the road bike.
const CARRIED: Told = [length, whole];
/// Worked out for both.
const WORKED_OUT: Told = [whole, whole];

/// The workshop's measures on both bikes.
pub(crate) fn measures(position: &PositionReport) -> Markup {
    let rails = [SADDLE, position.tip_fields()].concat();
    let mut lines = saddle(position, &rails).to_vec();
    lines.extend(bar(position));
    lines.extend(feet(position));
    lines.extend(drops(position));
    let rows: Vec<Vec<String>> = lines.into_iter().map(|line| row(position, line)).collect();
    let [road, cross] = words::HEADS.map(Head::Figures);
    plain_table(words::TITLE, words::remark(&position.inputs.bars), &[Head::Empty, road, cross], &rows)
}

fn saddle<'r>(position: &'r PositionReport, rails: &'r [Field]) -> [Measure<'r>; 4] {
    let (road, cross) = (&position.inputs.road.saddle, &position.cross);
    let tip = position.tip_fields();
    [
        (words::SADDLE_HEIGHT, SADDLE, CARRIED, Some(road.height.mm()), cross.saddle_height_mm),
        (words::SADDLE_UPRIGHT, SADDLE, WORKED_OUT, Some(road.vertical_mm()), cross.saddle_vertical_mm),
        (words::SADDLE_TIP, tip, CARRIED, Some(road.setback.mm()), cross.setback_mm),
        (words::RAILS, rails, WORKED_OUT, None, cross.rail_shift_forward_mm),
    ]
}

fn bar(position: &PositionReport) -> [Measure<'_>; 4] {
    let (road, target) = (&position.inputs.road, position.target());
    [
        (words::TIP_TO_BAR, BAR, CARRIED, Some(road.tip_to_bar.mm()), position.tape_mm()),
        (words::BAR_DROP, DROP, CARRIED, Some(road.bar_drop.mm()), position.cross.bar_drop_mm),
        (words::BAR_FORWARD, BAR, WORKED_OUT, Some(position.road.bar.x_mm), target.x_mm),
        (words::BAR_UP, BAR, WORKED_OUT, Some(position.road.bar.y_mm), target.y_mm),
    ]
}

fn feet(position: &PositionReport) -> [Measure<'_>; 2] {
    let (road, cross) = (&position.inputs.road, &position.inputs.cross);
    let leg = road.footing.leg_extension_mm(road.saddle.height.mm());
    [
        (words::CRANK, FEET, GIVEN, Some(road.footing.crank.mm()), cross.footing.crank.mm()),
        (words::LEG, SADDLE, WORKED_OUT, Some(leg), position.cross.leg_extension_mm),
    ]
}

/// The handlebar's drops, where its shape is known.
fn drops(position: &PositionReport) -> Option<Measure<'_>> {
    let road = position.inputs.bars.road.and_then(|bar| bar.drops_y_mm(position.road.bar));
    let cross = position.bar.and_then(|bar| bar.drops_y_mm)?;
    Some((words::DROPS, BAR, WORKED_OUT, road, cross))
}

fn row(
    position: &PositionReport,
    (what, fields, [of_road, of_cross], road, cross): Measure<'_>,
) -> Vec<String> {
    if !position.knows(fields) {
        return vec![what.to_owned(), String::new(), NOT_KNOWN.to_owned()];
    }
    vec![what.to_owned(), road.map_or_else(String::new, of_road), of_cross(cross)]
}
