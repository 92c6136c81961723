//! The sentences that answer, where the saddle goes, and the care to take.

use crate::bench::field::Field;
use crate::layout::line::{Line, Look, link_to, strong};
use crate::position::inputs::PositionInputs;
use crate::position::report::{BAR, DROP, FRONT, PositionReport, RailShift, SADDLE};
use crate::position::section::PositionSection;
use crate::position::words::names::{NOT_KNOWN, below, setback, stem};
use crate::position::words::stems::missing;
use crate::units::{LengthNumber, length, rounded_length, whole_length as whole};
use gear_math::StemSearch;
use gear_math::position::{CarriedPosition, PositionChanges};

/// Whether a stem brings the bar to its place.
pub(crate) fn bar(report: &PositionSection) -> Line {
    let (position, nearest) = (&report.position, report.position.nearest());
    if !position.knows_stem() {
        return format!("{}, for want of a measure.", Look::Care.part("Which stem is not known")).into();
    }
    let stem = stem(&nearest.setup);
    let words = match &position.search {
        StemSearch::NoneFits(shortfall) => format!(
            "{}, because {}. The nearest, {stem}, is still off by {}.",
            Look::Stop.part("Not with a stem that is sold"),
            missing(shortfall),
            strong(&whole(nearest.miss_mm))
        ),
        StemSearch::Found(_) => format!(
            "{}, {}with a stem of {}: the bar comes within {} of its place{}.",
            if position.is_plain_sailing() { report.well() } else { Look::Care }.part("Yes"),
            if position.needs_post() { "but only with another seat post, and " } else { "" },
            strong(&stem),
            strong(&rounded_length(nearest.miss_mm, f64::ceil)),
            moved(&position.inputs.changes)
        ),
    };
    report.marked(&[SADDLE, BAR, FRONT].concat(), &words).into()
}

/// How that place shall differ from the road bike's.
fn moved(changes: &PositionChanges) -> String {
    let (up, closer) = (changes.bar_up_by.mm(), changes.bar_closer_by.mm());
    if (up, closer) == (0.0, 0.0) {
        return String::new();
    }
    format!(", {} higher and {} closer than on the road bike", length(up), length(closer))
}

/// Where saddle and bar go.
pub(crate) fn saddle(report: &PositionSection) -> Line {
    let (position, cross) = (&report.position, &report.position.cross);
    let tip = figure(report, position.tip_fields(), &setback(cross.setback_mm));
    let bar = figure(report, DROP, &below(cross.bar_drop_mm));
    if !position.knows(SADDLE) {
        return format!("The saddle’s height is not known, its tip {tip}, and the bar {bar}.").into();
    }
    let height = figure(report, SADDLE, &whole(cross.saddle_height_mm));
    format!("The saddle goes to {height} along the seat tube, its tip {tip}, and the bar {bar}.").into()
}

fn figure(report: &PositionSection, fields: &[Field], words: &str) -> String {
    if report.position.knows(fields) { report.marked(fields, &strong(words)) } else { NOT_KNOWN.to_owned() }
}

/// The measures that most often are typed wrongly, when what comes out is rarely seen.
pub(crate) fn is_every_measure_right(inputs: &PositionInputs) -> Line {
    let (road, front) = (&inputs.road, &inputs.front);
    let ask = |field, what: &str, value: f64| link_to(field, &format!("{what} {}?", LengthNumber(value)));
    format!(
        "Is every measure right? Hardly any bike needs such a stem; a measure typed wrongly does (estimate): {} {} {} {} {}",
        ask(Field::SaddleHeight, "saddle height", road.saddle.height.mm()),
        ask(Field::BarDrop, "drop", road.bar_drop.mm()),
        ask(Field::TipToBar, "saddle to bar", road.tip_to_bar.mm()),
        ask(Field::Stack, "stack", front.stack.mm()),
        ask(Field::Reach, "reach", front.reach.mm())
    )
    .into()
}

/// Where the saddle goes on its rails.
pub(crate) fn rails(position: &PositionReport) -> String {
    let slide = match position.rail_shift() {
        RailShift::Stays => {
            return "On the same seat post and saddle the rails stay where they are.".to_owned();
        }
        RailShift::Forward(mm) => {
            format!("On the same seat post and saddle, slide the saddle {} forward on its rails.", whole(mm))
        }
        RailShift::Back(mm) => {
            format!("On the same seat post and saddle, slide the saddle {} back on its rails.", whole(mm))
        }
    };
    if !position.rails_may_run_out() {
        return slide;
    }
    format!("{slide} That is more than rails usually allow: a seat post with another setback will be needed.")
}

/// How good all of it is.
pub(crate) fn as_a_tape() -> String {
    format!("All of it is as good as a tape measure: ±{} on each bike.", length(CarriedPosition::TAPE_MM))
}

/// What it is not.
pub(crate) const NO_ADVICE: &str =
    "This moves a position that already fits; it does not find one. It is no medical advice.";
