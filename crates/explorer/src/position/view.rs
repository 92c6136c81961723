//! “Does it sit like the road bike?”: the answer, the workshop's measures, the stems, and how it was worked out.

use crate::bench::field::Field;
use crate::layout::pieces::{link_to, plain_table, resting_on, worked};
use crate::layout::sheet_block::{Block, Part};
use crate::layout::sheet_checks::Concern;
use crate::number::{counted, listed, mm, plain, signed, trimmed, with_unit};
use crate::position::inputs::PositionInputs;
use crate::position::report::PositionReport;
use crate::position::report::{BAR, DROP, FRONT, SADDLE};
use crate::position::section::PositionSection;
use gear_math::StemSearch;
use gear_math::position::{BarShape, PositionCaution, StemFit, StemSetup, StemShortfall, ToeClearance};
use maud::{Markup, html};

/// Stems that are listed; a frame that fits well has dozens.
const STEMS_LISTED: usize = 12;

/// The sentence that answers, where the saddle goes, and the care to take. What rests on the demo's values is marked, what
/// rests on what is not known is left out.
#[must_use]
pub(crate) fn answer(report: &PositionSection) -> Markup {
    let position = &report.position;
    html! {
        p { (bar(report)) " " (saddle(report)) }
        @if position.knows_stem() {
            @for caution in position.nearest().setup.cautions() { p.care { (caution) } }
            @if position.search.is_doubtful() { p.care { (question(&position.inputs)) } }
        }
        p {
            @if position.knows(SADDLE) && position.knows(position.tip_fields()) { (rails(position)) " " }
            "All of it is as good as a tape measure: ±3 mm on each bike."
        }
        p.care { "This moves a position that already fits; it does not find one. It is no medical advice." }
    }
}

fn bar(report: &PositionSection) -> Markup {
    let (position, nearest) = (&report.position, report.position.nearest());
    let is_fine = nearest.setup.cautions().is_empty() && !position.search.is_doubtful();
    let words = match &position.search {
        _ if !position.knows_stem() => {
            return html! { b.care { "Which stem is not known" } ", for want of a measure." };
        }
        StemSearch::NoneFits(shortfall) => html! {
            b.stop { "Not with a stem that is sold" } ", because " (missing(shortfall)) ". The nearest, " (stem(&nearest.setup)) ", is still off by " b { (mm(nearest.miss_mm)) } "."
        },
        StemSearch::Found(_) => html! {
            b class=(if is_fine { "good" } else { "care" }) { "Yes" } ", with a stem of " b { (stem(&nearest.setup)) } ": the bar comes within " b { (with_unit(nearest.miss_mm, 1, "mm")) } " of its place."
        },
    };
    resting_on(&report.owners, &[BAR, FRONT].concat(), &words)
}

/// The measures that most often are typed wrongly, when what comes out is rarely seen.
fn question(inputs: &PositionInputs) -> Markup {
    let (road, front) = (&inputs.road, &inputs.front);
    let measures = [
        (Field::SaddleHeight, "saddle height", road.saddle.height.mm()),
        (Field::BarDrop, "drop", road.bar_drop.mm()),
        (Field::TipToBar, "saddle to bar", road.tip_to_bar.mm()),
        (Field::Stack, "stack", front.stack.mm()),
        (Field::Reach, "reach", front.reach.mm()),
    ];
    html! {
        "Is every measure right? Hardly any bike needs such a stem; a measure typed wrongly does (estimate):"
        @for (field, what, value) in measures { " " (link_to(field, &format!("{what} {value}?"))) }
    }
}

/// “at −6° it would take 16 mm more spacers than you allow, and at +6° …”.
fn missing(shortfall: &StemShortfall) -> String {
    let lacks = std::iter::once(&shortfall.lack).chain(&shortfall.other);
    let words =
        lacks.map(|lack| format!("at {} {}", angle(lack.exact.angle.degrees()), listed(&lack.missing)));
    words.collect::<Vec<_>>().join(", and ")
}

fn saddle(report: &PositionSection) -> Markup {
    let (position, cross) = (&report.position, &report.position.cross);
    let tip = position.tip_fields();
    let figure = |fields: &[Field], words: String| match position.knows(fields) {
        true => resting_on(&report.owners, fields, &html! { b { (words) } }),
        false => html! { "not known" },
    };
    html! {
        @if position.knows(SADDLE) { "The saddle goes to " (figure(SADDLE, whole(cross.saddle_height_mm))) " along the seat tube" }
        @else { "The saddle’s height is not known" }
        ", its tip " (figure(tip, setback(cross.setback_mm))) ", and the bar " (figure(DROP, below(cross.bar_drop_mm))) "."
    }
}

fn rails(position: &PositionReport) -> String {
    let shift = position.cross.rail_shift_forward_mm;
    if shift.abs() < 0.5 {
        return "On the same seat post and saddle the rails stay where they are.".to_owned();
    }
    let direction = if shift > 0.0 { "forward" } else { "back" };
    let far = if position.cross.cautions.contains(&PositionCaution::RailsMayRunOut) {
        " That is more than rails usually allow: a seat post with another setback will be needed."
    } else {
        ""
    };
    format!(
        "On the same seat post and saddle, slide the saddle {} {direction} on its rails.{far}",
        whole(shift.abs())
    )
}

/// “12 mm behind the bottom bracket”, whichever side it is on.
pub(crate) fn setback(setback_mm: f64) -> String {
    side_of(setback_mm, "behind", "ahead of", "the bottom bracket")
}

/// “57 mm below the saddle”, whichever is the higher.
pub(crate) fn below(drop_mm: f64) -> String {
    side_of(drop_mm, "below", "above", "the saddle")
}

fn side_of(value_mm: f64, over: &str, under: &str, what: &str) -> String {
    let side = if value_mm < 0.0 { under } else { over };
    format!("{} {side} {what}", whole(value_mm.abs()))
}

/// Everything under the picture.
#[must_use]
pub(crate) fn tables(report: &PositionSection) -> Markup {
    let position = &report.position;
    html! {
        (measures(position))
        @if position.knows_stem() { (stems(position)) }
        @if let Some(toes) = position.toes { p.prose { (toe_room(&toes)) " " (bracket(report)) } }
        (cautions(position))
        (practice())
    }
}

fn measures(position: &PositionReport) -> Markup {
    let (inputs, road, cross) = (&position.inputs, &position.inputs.road, &position.cross);
    let target = position.target();
    let leg = road.footing.leg_extension_mm(road.saddle.height.mm());
    let height = road.saddle.height.mm();
    let tip = position.tip_fields();
    let feet: &[Field] = &[Field::RoadCrank, Field::RoadStack, Field::CrossCrank, Field::CrossStack];
    let rails = [SADDLE, tip].concat();
    let mut lines: Vec<(&str, &[Field], Option<f64>, f64)> = vec![
        (
            "Saddle height, bottom bracket centre to saddle top along the seat tube",
            SADDLE,
            Some(height),
            cross.saddle_height_mm,
        ),
        (
            "Saddle top above the bottom bracket, upright",
            SADDLE,
            Some(road.saddle.vertical_mm()),
            cross.saddle_vertical_mm,
        ),
        (
            "Saddle tip behind the bottom bracket, level",
            tip,
            Some(road.saddle.setback.mm()),
            cross.setback_mm,
        ),
        ("Saddle forward on its rails", &rails, None, cross.rail_shift_forward_mm),
        ("Saddle tip to bar centre, straight", BAR, Some(road.tip_to_bar.mm()), position.tape_mm()),
        ("Bar centre below saddle top", DROP, Some(road.bar_drop.mm()), cross.bar_drop_mm),
        ("Bar centre ahead of the bottom bracket", BAR, Some(position.road.bar.x_mm), target.x_mm),
        ("Bar centre above the bottom bracket", BAR, Some(position.road.bar.y_mm), target.y_mm),
        ("Crank", feet, Some(road.footing.crank.mm()), inputs.cross.footing.crank.mm()),
        ("Saddle to sole, leg at its longest", SADDLE, Some(leg), cross.leg_extension_mm),
    ];
    let road_drops = inputs.bars.road.and_then(|bar| bar.drops_y_mm(position.road.bar));
    let drops = position.bar.and_then(|bar| bar.drops_y_mm);
    lines.extend(drops.map(|drops| ("Drops above the bottom bracket", BAR, road_drops, drops)));
    let remark = match (inputs.bars.road, inputs.bars.cross) {
        (Some(_), Some(_)) => {
            "The bar’s place is that of the cross handlebar, so that the hoods stay where they were meant to be."
        }
        (None, None) if !inputs.bars.is_drop_alone => {
            "The same handlebar on both bikes. If they differ, give the reach of both under “Finer settings”."
        }
        _ => {
            "The reach of one handlebar alone says nothing, nor does a drop without it: give the reach of both under “Finer settings”. Until then the bars count as the same."
        }
    };
    let row = |(what, fields, road, cross): (&str, &[Field], Option<f64>, f64)| {
        if !position.knows(fields) {
            return vec![what.to_owned(), String::new(), "not known".to_owned()];
        }
        vec![what.to_owned(), road.map_or_else(String::new, mm), mm(cross)]
    };
    let rows: Vec<Vec<String>> = lines.into_iter().map(row).collect();
    plain_table("Where everything goes", remark, &["", "Road", "Cross"], &rows)
}

fn stems(position: &PositionReport) -> Markup {
    let (shown, rest): (&[StemFit], usize) = match &position.search {
        StemSearch::Found(fits) => {
            (&fits[..fits.len().min(STEMS_LISTED)], fits.len().saturating_sub(STEMS_LISTED))
        }
        StemSearch::NoneFits(shortfall) => (std::slice::from_ref(&shortfall.nearest), 0),
    };
    let limits = &position.inputs.limits;
    let title = match position.search {
        StemSearch::Found(_) => "Stems and spacers that get there, nearest first",
        StemSearch::NoneFits(_) => "The nearest stem, though it does not get there",
    };
    let remark = format!(
        "Sold lengths 60 to 140 mm and angles 6° to 17°, either way up; spacers up to {}; forward and up each within {}. A stem’s angle is 0° square to the steerer.{}",
        with_unit(limits.max_spacers.mm(), 0, "mm"),
        mm(limits.tolerance.mm()),
        if rest > 0 {
            format!(" {} more get there too.", counted(rest, "combination", "combinations"))
        } else {
            String::new()
        }
    );
    let rows: Vec<Vec<String>> = shown.iter().map(stem_row).collect();
    html! {
        (plain_table(title, &remark, &STEM_HEAD, &rows))
        @if let StemSearch::NoneFits(shortfall) = &position.search { (exact(shortfall)) }
    }
}

const STEM_HEAD: [&str; 7] = ["Stem", "Angle", "Spacers", "Off by", "Bar forward", "Bar up", "|Remark"];

fn stem_row(fit: &StemFit) -> Vec<String> {
    let setup = &fit.setup;
    let cautions: Vec<String> = setup.cautions().iter().map(ToString::to_string).collect();
    vec![
        mm(setup.length.mm()),
        angle(setup.angle.degrees()),
        mm(setup.spacers.mm()),
        with_unit(fit.miss_mm, 1, "mm"),
        signed(fit.dx_mm, 1),
        signed(fit.dy_mm, 1),
        cautions.join(" "),
    ]
}

fn exact(shortfall: &StemShortfall) -> Markup {
    let exact = &shortfall.lack.exact;
    html! {
        div.prose { p {
            b { "What is missing" } ": " (missing(shortfall)) "."
            @if exact.is_a_stem() {
                " Exactly right would be " (mm(exact.length_mm)) " at " (angle(exact.angle.degrees())) " on " (mm(exact.spacers_mm)) " of spacers."
            }
        } }
    }
}

fn toe_room(toes: &ToeClearance) -> Markup {
    html! {
        "Toe overlap: " b { (room(toes)) } " from pedal axle to tyre with the wheel turned into it."
        @if let Some(caution) = toes.verdict.caution() { " " span.care { (caution) } }
    }
}

/// Rounded down, so that it does not read like the limit that it misses.
fn room(toes: &ToeClearance) -> String {
    whole(toes.swept_mm.floor())
}

/// The bottom bracket lies where the chain has it too.
fn bracket(report: &PositionSection) -> Markup {
    let drop = with_unit(report.position.bracket_drop.mm(), 0, "mm");
    html! { "Worked out with the bottom bracket " (link_to(Field::BottomBracketDrop, &format!("{drop} below the axles"))) "." }
}

fn cautions(position: &PositionReport) -> Markup {
    html! {
        div.prose {
            p { b { "Before riding" } }
            ul { @for caution in &position.cautions { li { (caution) " " small.quiet { "(" (caution.source()) ")" } } } }
        }
    }
}

/// What the workshop adds from experience.
const PRACTICE: [(&str, &str); 4] = [
    (
        "Bottle",
        "One cage at most, on the seat tube: the arm goes through the main triangle and the down tube lies in the hand when the bike is shouldered.",
    ),
    (
        "Hoods",
        "Set them a touch higher than on the road, so that the hands stay put over ruts and the levers are in reach from behind the saddle. Check the reach of both from the drops.",
    ),
    (
        "Pedals",
        "Release tension low for mud, so that a clogged cleat still lets go; higher on rough, dry ground, so that the foot is not shaken out. Try both feet standing still.",
    ),
    (
        "Rear derailleur",
        "In mud shift one sprocket at a time, ease off while it moves, and do not backpedal with grass in the pulleys: a clogged cage twists the hanger. Look at the hanger after every fall.",
    ),
];

fn practice() -> Markup {
    html! {
        div.prose {
            p { b { "Workshop practice" } " (experience, no source)" }
            ul { @for (what, words) in PRACTICE { li { b { (what) ". " } (words) } } }
        }
    }
}

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &PositionSection) -> Markup {
    let position = &report.position;
    let (road, inputs, cross) = (&position.inputs.road, &position.inputs, &position.cross);
    let (front, nearest, bar) = (&inputs.front, position.nearest(), position.nearest().bar);
    let (alpha, length) = (front.head_angle.degrees(), nearest.setup.length.mm());
    if !position.knows_stem() {
        return html! { p { "Not worked out while a measure is not known." } };
    }
    html! {
        p { "Seen from the drive side; forward and up count from the centre of the bottom bracket." }
        (worked("Saddle height", "height + road crank − cross crank + cross stack − road stack − lower", &format!(
            "{} + {} − {} + {} − {} − {} = {}",
            road.saddle.height.mm(), road.footing.crank.mm(), inputs.cross.footing.crank.mm(), inputs.cross.footing.sole_stack.mm(),
            road.footing.sole_stack.mm(), inputs.changes.lower_by.mm(), mm(cross.saddle_height_road_angle_mm))))
        (worked("On the cross bike’s seat angle", "× sin(road angle) ÷ sin(cross angle)", &format!(
            "{} × sin {}° ÷ sin {}° = {}",
            plain(cross.saddle_height_road_angle_mm, 1), road.saddle.seat_angle.degrees(), inputs.cross.seat_angle.degrees(), mm(cross.saddle_height_mm))))
        @if inputs.changes.keep_knee_over_pedal {
            (worked("Saddle’s setback", "road setback + road crank − cross crank", &format!(
                "{} + {} − {} = {}", road.saddle.setback.mm(), road.footing.crank.mm(), inputs.cross.footing.crank.mm(), mm(cross.setback_mm))))
        }
        (worked("Rails", "height × cos(seat angle) − setback, cross less road", &format!(
            "({} × cos {}° − {}) − ({} × cos {}° − {}) = {}",
            plain(cross.saddle_height_mm, 1), inputs.cross.seat_angle.degrees(), trimmed(cross.setback_mm),
            road.saddle.height.mm(), road.saddle.seat_angle.degrees(), trimmed(road.saddle.setback.mm()), mm(cross.rail_shift_forward_mm))))
        (worked("Bar", "forward = √(tip to bar² − drop²) − setback, up = saddle − drop", &format!(
            "√({}² − {}²) − {} = {}; {} − {} = {}",
            trimmed(cross.tip_to_bar_mm), trimmed(cross.bar_drop_mm), trimmed(cross.setback_mm), mm(cross.target.x_mm),
            plain(cross.saddle_vertical_mm, 1), trimmed(cross.bar_drop_mm), mm(cross.target.y_mm))))
        @if let Some((old, new)) = inputs.bars.road.zip(inputs.bars.cross) {
            (worked("Other handlebar", "forward + road reach − cross reach", &format!(
                "{} + {} − {} = {}", plain(cross.target.x_mm, 1), old.reach.mm(), new.reach.mm(), mm(position.target().x_mm))))
        }
        (worked("Stem", "h = headset + spacers + clamp ÷ 2; forward = reach − h cos α + L cos φ, up = stack + h sin α + L sin φ, φ = 90° − α + angle", &format!(
            "h = {} + {} + {} ÷ 2, α = {alpha}°, φ = 90° − {alpha}° + {}°; {} − h cos α + {length} cos φ = {}; {} + h sin α + {length} sin φ = {}",
            front.top_cap.mm(), nearest.setup.spacers.mm(), front.clamp_height.mm(), plain(nearest.setup.angle.degrees(), 0),
            front.reach.mm(), mm(bar.x_mm), front.stack.mm(), mm(bar.y_mm))))
        p { "“Closer” is taken along the line from saddle tip to bar: taken level, the bar would come 1 to 4 mm nearer still. “Higher” is against the saddle: a saddle set lower takes the bar down with it." }
        p { "Plane geometry; the changes and stem sizes are common practice." }
    }
}

/// What the workshop has to know.
#[must_use]
pub(crate) fn block(report: &PositionSection) -> Block {
    let position = &report.position;
    let cross = &position.cross;
    let target = position.target();
    let mut block = Block::new("Position");
    block.row(
        "Saddle height",
        format!(
            "{} from bottom bracket to saddle top along the seat tube at {}°",
            whole(cross.saddle_height_mm),
            position.inputs.cross.seat_angle.degrees()
        ),
    );
    block.on(SADDLE);
    block.row("Saddle top", format!("{} above the bottom bracket", whole(cross.saddle_vertical_mm)));
    block.on(SADDLE);
    block.row("Saddle tip", setback(cross.setback_mm));
    block.on(position.tip_fields());
    block.row("Rails", rails(position));
    block.on(BAR);
    block.row("Saddle tip to bar", format!("{} straight", whole(position.tape_mm())));
    block.on(BAR);
    block.row("Bar centre", below(cross.bar_drop_mm));
    block.on(DROP);
    block.row(
        "From bottom bracket to bar",
        format!("{} forward, {} up", whole(target.x_mm), whole(target.y_mm)),
    );
    block.on(BAR);
    block.row("Stem", stem_for_the_sheet(position));
    block.row(
        "Stem’s angle",
        "0° is square to the steerer, minus points down; all of this ±3 mm, as a tape measure is".to_owned(),
    );
    block.on(&[]);
    block.row("Worked out on", front_end(&position.inputs));
    block.on(FRONT);
    carried_over(&mut block, &position.inputs);
    let feet = &position.inputs.cross.footing;
    block.row(
        "Crank, sole",
        format!("{}; sole {} above the pedal axle", mm(feet.crank.mm()), mm(feet.sole_stack.mm())),
    );
    block.on(&[Field::CrossCrank, Field::CrossStack]);
    if let Some(toes) = position.toes {
        let enough = if toes.verdict.caution().is_none() { "enough" } else { "short, see below" };
        block.row("Toe overlap", format!("{} from pedal axle to tyre, {enough}", room(&toes)));
    }
    block.row("For mud", IN_SHORT.to_owned());
    block.on(&[]);
    for measure in ["Built: height, setback", "Built: to bar, drop"] {
        block.parts.push(Part::blank(measure));
    }
    checks(&mut block, &position.cautions);
    block
}

/// The nearest stem, and others that do as well.
fn stem_for_the_sheet(position: &PositionReport) -> String {
    let nearest = position.nearest();
    match &position.search {
        StemSearch::NoneFits(shortfall) => {
            format!("none fits: {}; nearest {}", missing(shortfall), stem(&nearest.setup))
        }
        StemSearch::Found(fits) => {
            // Nothing that calls for more care than the first.
            let care = nearest.setup.cautions();
            let no_worse = |fit: &&StemFit| fit.setup.cautions().iter().all(|caution| care.contains(caution));
            let mut words = format!("{}; off by {}", stem(&nearest.setup), mm(nearest.miss_mm));
            for fit in fits.iter().skip(1).filter(no_worse).take(2) {
                words.push_str("; or ");
                words.push_str(&stem(&fit.setup));
            }
            words
        }
    }
}

/// What belongs together is one check; what is no check stands apart.
fn checks(block: &mut Block, cautions: &[PositionCaution]) {
    for together in PositionCaution::BY_HAND {
        let of_them = cautions.iter().filter(|caution| together.contains(caution));
        let words: Vec<String> = of_them.map(ToString::to_string).collect();
        block.check(Concern::Cockpit, words.join(" "));
    }
    let by_hand = PositionCaution::BY_HAND.concat();
    for caution in cautions.iter().filter(|caution| !by_hand.contains(caution)) {
        let is_note = PositionCaution::NOTES.contains(caution);
        block.check(if is_note { Concern::Measuring } else { Concern::Cockpit }, caution.to_string());
    }
}

/// The workshop's experience in short.
const IN_SHORT: &str = "one bottle cage on the seat tube, hoods a touch higher, pedals released more easily, one sprocket at a time (practice, no source)";

const ROAD: &[Field] = &[
    Field::SaddleHeight,
    Field::SeatAngle,
    Field::Setback,
    Field::TipToBar,
    Field::BarDrop,
    Field::RoadCrank,
    Field::RoadStack,
];

/// What it was carried over from and what shall differ, to be measured again in case of doubt.
fn carried_over(block: &mut Block, inputs: &PositionInputs) {
    let (road, changes) = (&inputs.road, &inputs.changes);
    block.row(
        "Measured on the road bike",
        format!(
            "saddle {} along {}°, tip {}; bar {} from the tip, {}; crank {}, sole {}",
            mm(road.saddle.height.mm()),
            road.saddle.seat_angle.degrees(),
            setback(road.saddle.setback.mm()),
            mm(road.tip_to_bar.mm()),
            below(road.bar_drop.mm()),
            mm(road.footing.crank.mm()),
            mm(road.footing.sole_stack.mm())
        ),
    );
    block.on(ROAD);
    block.row(
        "Changes",
        format!(
            "saddle lower by {}, bar higher by {} and closer by {}{}",
            mm(changes.lower_by.mm()),
            mm(changes.bar_up_by.mm()),
            mm(changes.bar_closer_by.mm()),
            if changes.keep_knee_over_pedal { ", knee kept over the pedal" } else { "" }
        ),
    );
    block.on(&[Field::LowerBy, Field::BarUpBy, Field::BarCloserBy]);
    if let Some((road, cross)) = inputs.bars.road.zip(inputs.bars.cross) {
        let drop =
            |bar: BarShape| bar.depth.map_or_else(String::new, |depth| format!(", drop {}", mm(depth.mm())));
        block.row(
            "Handlebar",
            format!(
                "of the cross bike, reach {}{}: saddle to bar and bar centre hold for it (road bike: reach {}{})",
                mm(cross.reach.mm()),
                drop(cross),
                mm(road.reach.mm()),
                drop(road)
            ),
        );
        block.on(&[]);
    }
}

/// The frame's and the headset's measures that a stem was worked out on.
fn front_end(inputs: &PositionInputs) -> String {
    let front = &inputs.front;
    format!(
        "stack {}, reach {}, head angle {}°, headset {}, clamp {} mm; at most {} mm of spacers",
        front.stack.mm(),
        front.reach.mm(),
        front.head_angle.degrees(),
        front.top_cap.mm(),
        front.clamp_height.mm(),
        inputs.limits.max_spacers.mm()
    )
}

/// “100 mm at −6° on 15 mm of spacers”.
fn stem(setup: &StemSetup) -> String {
    let spacers = match setup.spacers.mm() {
        none if none < 0.5 => "without spacers".to_owned(),
        mm => format!("on {} of spacers", with_unit(mm, 0, "mm")),
    };
    format!("{} at {} {spacers}", with_unit(setup.length.mm(), 0, "mm"), angle(setup.angle.degrees()))
}

fn angle(degrees: f64) -> String {
    format!("{}°", signed(degrees, 0))
}

/// What a tape can show.
fn whole(mm: f64) -> String {
    with_unit(mm, 0, "mm")
}
