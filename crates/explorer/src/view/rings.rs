//! “Which rings?”: the answer, the summary, and how it was worked out.

use super::gears::column;
use super::sheet::Block;
use super::words::{name, table, worked};
use crate::number::{counted, percent, plain, signed, with_unit};
use crate::report::{GearLine, Report, SetupReport, Side};
use gear_math::{EndDifference, Speed, Sprocket};
use maud::{Markup, html};

/// Differences below this are called the same, per cent.
const ALIKE: f64 = 0.5;

/// The sentence that answers, and one that helps to weigh it.
#[must_use]
pub(super) fn answer(report: &Report) -> Markup {
    if report.setup(Side::A).drivetrain == report.setup(Side::B).drivetrain {
        return html! { p { (name(Side::A)) " and " (name(Side::B)) " have the same rings and sprockets. Change one of them to compare." } };
    }
    html! {
        p { (low_end(report)) " " (high_end(report)) " " (step_sizes(report)) }
        p { (counts(report)) }
    }
}

fn low_end(report: &Report) -> Markup {
    let cadence = with_unit(report.window.low.rpm(), 0, "rpm");
    let speed = |side| report.unit.print(report.setup(side).lowest().speed_low);
    match longer(&report.comparison.lowest) {
        None => html! { "Both climb down to the same " b { (speed(Side::A)) } " at " (cadence) "." },
        Some(longer) => {
            let lower = longer.other();
            html! {
                (name(lower)) " lets you keep " (cadence) " down to " b { (speed(lower)) } ", where " (name(longer))
                " runs out at " b { (speed(longer)) } "."
            }
        }
    }
}

fn high_end(report: &Report) -> Markup {
    let speed = |side| report.unit.print(report.setup(side).highest().speed_high);
    let difference = percent(report.comparison.highest.step.percent(), 0);
    match longer(&report.comparison.highest) {
        None => html! { "At the top they are alike, " b { (speed(Side::A)) } "." },
        Some(longer) => html! {
            "At the top " (name(longer)) " pulls " (difference) " higher: " b { (speed(longer)) } " against "
            (speed(longer.other())) " at " (with_unit(report.window.high.rpm(), 0, "rpm")) "."
        },
    }
}

fn step_sizes(report: &Report) -> Markup {
    let mean = |side| report.setup(side).steps.map(|steps| steps.mean.percent());
    let (Some(a), Some(b)) = (mean(Side::A), mean(Side::B)) else { return html! {} };
    if (a - b).abs() < ALIKE {
        return html! { "Their steps are alike, " b { (percent(a, 0)) } " on average." };
    }
    let (wider, wide, close) = if a > b { (Side::A, a, b) } else { (Side::B, b, a) };
    html! {
        (name(wider)) " has the wider steps: " b { (percent(wide, 1)) } " on average where " (name(wider.other()))
        " takes " (percent(close, 1)) "."
    }
}

/// The side whose gear is longer, unless the two are alike.
fn longer(difference: &EndDifference) -> Option<Side> {
    difference.longer.filter(|_| difference.step.percent() >= ALIKE).map(Side::from)
}

fn counts(report: &Report) -> Markup {
    let useful = |side: Side| {
        let summary = summary_of(report, side);
        let doubles = counted(summary.riding_order.double_shifts(), "double shift", "double shifts");
        html! { (name(side)) " has " (summary.useful()) " useful gears of " (summary.gears) " and needs " (doubles) " on the way up" }
    };
    html! {
        (useful(Side::A)) "; " (useful(Side::B)) ". They have " (counted(report.common.len(), "gear", "gears"))
        " in common within " (percent(report.tolerance.percent(), 1)) "."
    }
}

fn summary_of(report: &Report, side: Side) -> &gear_math::SetUpSummary {
    match side {
        Side::A => &report.comparison.a,
        Side::B => &report.comparison.b,
    }
}

/// The two set-ups side by side in numbers.
#[must_use]
pub(super) fn summary(report: &Report) -> Markup {
    let [a, b] = &report.setups;
    let head = html! { tr { td {} (column(a)) (column(b)) th scope="col" { "B against A" } } };
    let speed_row = |what: String, speed: &dyn Fn(&SetupReport) -> Speed| {
        let value = |setup| report.unit.value(speed(setup));
        row(&what, &[report.unit.print(speed(a)), report.unit.print(speed(b))], &change(value(a), value(b)))
    };
    let body = html! {
        (row("Lowest gear", &[a.lowest().gear.to_string(), b.lowest().gear.to_string()], ""))
        (metres("Its development", a.lowest().development.m(), b.lowest().development.m()))
        (speed_row(format!("Its speed at {}", with_unit(report.window.low.rpm(), 0, "rpm")), &|setup| setup.lowest().speed_low))
        (row("Highest gear", &[a.highest().gear.to_string(), b.highest().gear.to_string()], ""))
        (metres("Its development", a.highest().development.m(), b.highest().development.m()))
        (speed_row(format!("Its speed at {}", with_unit(report.window.high.rpm(), 0, "rpm")), &|setup| setup.highest().speed_high))
        (plain_row(report, "Range, highest over lowest", |side| percent(summary_of(report, side).range.percent(), 0)))
        (plain_row(report, "Gears, and crossed ones among them", |side| {
            let summary = summary_of(report, side);
            format!("{}, {}", summary.gears, summary.crossed)
        }))
        (plain_row(report, "Useful gears", |side| summary_of(report, side).useful().to_string()))
    };
    table("A and B side by side", "", &head, &body)
}

fn row(what: &str, [a, b]: &[String; 2], difference: &str) -> Markup {
    html! { tr { th scope="row" { (what) } td { (a) } td { (b) } td { (difference) } } }
}

fn metres(what: &str, a: f64, b: f64) -> Markup {
    row(what, &[with_unit(a, 3, "m"), with_unit(b, 3, "m")], &change(a, b))
}

fn plain_row(_report: &Report, what: &str, value: impl Fn(Side) -> String) -> Markup {
    row(what, &[value(Side::A), value(Side::B)], "")
}

/// B against A in per cent.
fn change(a: f64, b: f64) -> String {
    format!("{}\u{a0}%", signed((b / a - 1.0) * 100.0, 1))
}

/// What the workshop has to know.
#[must_use]
pub(super) fn block(report: &Report) -> Block {
    let mut block = Block::new("Gears");
    for setup in &report.setups {
        let drivetrain = &setup.drivetrain;
        block.row_of(setup.side, "Rings", drivetrain.chainset.to_string());
        block.row_of(setup.side, "Cassette", drivetrain.cassette.to_string());
    }
    block.row("Roll-out", with_unit(report.wheel.roll_out().mm(), 0, "mm"));
    for setup in &report.setups {
        block.grid_of(setup.side, "Development, m", development_grid(setup));
    }
    block.row("In the tables", "( ) crossed, × chain hangs loose: never use".to_owned());
    block
}

/// Sprockets down, rings across.
fn development_grid(setup: &SetupReport) -> Vec<Vec<String>> {
    let (rings, sprockets) = (setup.drivetrain.chainset.rings(), setup.drivetrain.cassette.sprockets());
    let head = std::iter::once(String::new()).chain(rings.iter().map(ToString::to_string)).collect();
    let cell = |line: &GearLine| {
        let development = plain(line.development.m(), 2);
        match (line.loose, line.crossed) {
            (true, _) => format!("{development} ×"),
            (false, true) => format!("({development})"),
            _ => development,
        }
    };
    let row = |sprocket: &Sprocket| {
        let mut row = vec![sprocket.to_string()];
        for rank in 0..rings.len() {
            let line = setup.gears.iter().find(|line| line.rank == rank && line.gear.sprocket == *sprocket);
            row.push(line.map_or_else(String::new, cell));
        }
        row
    };
    std::iter::once(head).chain(sprockets.iter().map(row)).collect()
}

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(super) fn working(report: &Report) -> Markup {
    let setup = report.setup(Side::A);
    let low = setup.lowest();
    let gear = low.gear;
    let circumference = report.wheel.roll_out();
    html! {
        (wheel(report))
        (worked("Development", "ring ÷ sprocket × circumference", &format!(
            "{} ÷ {} × {} = {}", gear.ring, gear.sprocket, with_unit(circumference.mm() / 1000.0, 4, "m"), with_unit(low.development.m(), 3, "m"))))
        (worked("Gear inches", inches_formula(report), &format!(
            "{} ÷ {} → {} in", gear.ring, gear.sprocket, plain(low.inches.inches(), 2))))
        (worked("Speed", "development × cadence × 0.06", &format!(
            "{} × {} × 0.06 = {}", with_unit(low.development.m(), 3, "m"), plain(report.window.low.rpm(), 0), with_unit(low.speed_low.km_per_h(), 2, "km/h"))))
        (worked("Step", "larger ÷ smaller − 1", "of two developments, or of two sprockets on one ring"))
        p { b { "Crossed gears " } (crossed_rule(report)) }
        p { b { "Useful gears " } "are those left when the crossed ones are taken out and gears within "
            (percent(report.tolerance.percent(), 1)) " of one another count once." }
        p { "These definitions are the trade’s own; the tables they are checked against are listed with the project’s tests." }
    }
}

fn wheel(report: &Report) -> Markup {
    let wheel = &report.wheel;
    let (seat, width) = (wheel.tyre.bead_seat.mm(), wheel.tyre.width.mm());
    html! {
        (worked("Circumference", "π × (bead seat + 2 × width), ISO 5775-1 sizes", &format!(
            "π × ({seat} + 2 × {width}) = {}", with_unit(wheel.estimate().circumference.mm(), 0, "mm"))))
        @if let Some(measured) = wheel.measured {
            p { "Your roll-out of " (with_unit(measured.mm(), 0, "mm")) " is used instead." }
        } @else {
            p { "A soft cyclo-cross tyre may roll " (percent(wheel.estimate().error.percent(), 1)) " more or less than that; a measured roll-out is better." }
        }
    }
}

const fn inches_formula(report: &Report) -> &'static str {
    if report.nominal_inches { "ring ÷ sprocket × 27 in" } else { "development ÷ (π × 0.0254 m)" }
}

fn crossed_rule(report: &Report) -> Markup {
    html! {
        "by common practice, where the chain runs at its steepest: "
        @for setup in &report.setups { (name(setup.side)) " " (setup.crossed) ". " }
    }
}
