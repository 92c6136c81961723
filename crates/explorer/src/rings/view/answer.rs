//! “Which rings?”: the answer, the summary, and how it was worked out.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::layout::pieces::column;
use crate::layout::pieces::{name, table, worked};
use crate::layout::sheet_block::Block;
use crate::number::{counted, percent, plain, rpm, signed, trimmed, with_unit};
use crate::rings::cassettes::WhySoMany;
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::step_verdict::StepVerdict;
use crate::rings::view::limit;
use crate::side::Side;
use crate::tyre::view::answer::by_size;
use gear_math::gears::EndDifference;
use gear_math::{Speed, Sprocket};
use maud::{Markup, html};

/// The sentence that answers, and one that helps to weigh it.
#[must_use]
pub(crate) fn answer(report: &RingsSection) -> Markup {
    let alike = report.rings.setup(Side::A).drivetrain == report.rings.setup(Side::B).drivetrain;
    html! {
        @if alike {
            p { (name(Side::A)) " and " (name(Side::B)) " have the same rings and sprockets. Change one of them to compare." }
        } @else {
            p { (low_end(report)) " " (high_end(report)) " " (step_sizes(report)) }
            p { (counts(report)) }
        }
        @for setup in &report.rings.setups { (taken_for(setup)) }
    }
}

/// What a cassette typed by its name was taken for.
fn taken_for(setup: &SetupReport) -> Markup {
    let cassette = &setup.drivetrain.cassette;
    html! {
        @if let Some((named, _)) = setup.typed.name.filter(|(_, why)| *why != WhySoMany::NoneSuch) {
            p { (name(setup.side)) "’s " (named) " is taken as " (cassette) ", a usual one with " (cassette.sprockets().len()) " sprockets. Makers differ in the middle: count yours." }
        }
    }
}

fn low_end(report: &RingsSection) -> Markup {
    let cadence = rpm(report.rings.window.low);
    let speeds = Side::BOTH.map(|side| report.rings.setup(side).lowest().speed_low);
    let speed = |side: Side| report.rings.unit.print(speeds[side as usize]);
    match report.rings.faster(speeds) {
        None => html! { "Both turn " (cadence) " down to " b { (speed(Side::A)) } "." },
        Some(faster) => {
            let lower = faster.other();
            html! {
                (name(lower)) " turns " (cadence) " down to " b { (speed(lower)) } ", " (name(faster)) " only down to "
                b { (speed(faster)) } "."
            }
        }
    }
}

fn high_end(report: &RingsSection) -> Markup {
    let cadence = rpm(report.rings.window.high);
    let speeds = Side::BOTH.map(|side| report.rings.setup(side).highest().speed_high);
    let speed = |side: Side| report.rings.unit.print(speeds[side as usize]);
    match report.rings.faster(speeds) {
        None => html! { "At the top they are alike: " (speed(Side::A)) " at " (cadence) "." },
        Some(faster) => html! {
            "At the top " (name(faster)) " reaches " b { (speed(faster)) } " against " (speed(faster.other())) " at "
            (cadence) "."
        },
    }
}

fn step_sizes(report: &RingsSection) -> Markup {
    let Some((steps, verdict)) = report.rings.steps() else { return html! {} };
    let mean = |side: Side| percent(steps[side as usize].mean, 0);
    let most = |side: Side| percent(steps[side as usize].largest, 0);
    html! {
        @match verdict {
            StepVerdict::Alike => {
                "Their steps are alike: " b { (mean(Side::A)) } " on average, " (most(Side::A)) " at most."
            }
            StepVerdict::AtMost(wider) => {
                "Their steps are alike on average, " b { (mean(wider)) } "; the largest is wider on " (name(wider)) ": "
                (most(wider)) " against " (most(wider.other())) "."
            }
            StepVerdict::OnAverage(wider) => {
                (name(wider)) " has the wider steps on average: " b { (mean(wider)) } " against " (mean(wider.other()))
                "; the largest is " (most(wider)) " on both."
            }
            StepVerdict::Both(wider) => {
                (name(wider)) " has the wider steps: " b { (mean(wider)) } " on average and " (most(wider))
                " at most, " (name(wider.other())) " " (mean(wider.other())) " and " (most(wider.other())) "."
            }
            StepVerdict::OnAverageOnly(wider) => {
                (name(wider)) " has the wider steps on average, " b { (mean(wider)) } " against " (mean(wider.other()))
                ", but the largest step is " (name(wider.other())) "’s: " (most(wider.other())) " against "
                (most(wider)) "."
            }
        }
    }
}

fn counts(report: &RingsSection) -> Markup {
    html! {
        @for setup in &report.rings.setups { (useful(setup)) " " }
        "They have "
        @if report.rings.common.is_empty() { "no gear" } @else { (counted(report.rings.common.len(), "gear", "gears")) }
        " in common within "
        (with_unit_trimmed(report.rings.tolerance.percent())) "."
        @if report.rings.wheel.measured.is_none() {
            " Speeds are good to " (with_unit_trimmed(report.rings.wheel.estimate().error.percent()))
            " by tyre size; a measured roll-out is better."
        }
    }
}

fn with_unit_trimmed(percent: f64) -> String {
    format!("{}\u{a0}%", trimmed(percent))
}

/// How many gears are worth having, and how many double shifts the way up through them costs.
fn useful(setup: &SetupReport) -> Markup {
    let (summary, order) = (&setup.summary, &setup.summary.riding_order);
    let useful = counted(summary.useful(), "useful gear", "useful gears");
    html! {
        (name(setup.side)) " has " (useful) " of " (summary.gears) (never_used(setup))
        @if setup.drivetrain.chainset.rings().len() > 1 {
            "; going up ring by ring takes in " (order.gear_count()) " with "
            (counted(order.double_shifts(), "double shift", "double shifts"))
        }
        "."
    }
}

/// “, 2 of them never to be used”.
fn never_used(setup: &SetupReport) -> String {
    match setup.avoided().len() {
        0 => String::new(),
        count => format!(", {count} of them never to be used"),
    }
}

/// The two set-ups side by side in numbers.
#[must_use]
pub(crate) fn summary(report: &RingsSection) -> Markup {
    let [a, b] = &report.rings.setups;
    let head = html! { tr { td {} (column(Side::A)) (column(Side::B)) th scope="col" { "B against A" } } };
    let both = |value: fn(&SetupReport) -> String| [value(a), value(b)];
    let speeds = |speed: fn(&SetupReport) -> Speed| {
        [report.rings.unit.print(speed(a)), report.rings.unit.print(speed(b))]
    };
    let (low, high) = (change(&report.rings.comparison.lowest), change(&report.rings.comparison.highest));
    let speed_at = |cadence| format!("Its speed at {}", rpm(cadence));
    let body = html! {
        (row("Lowest gear", &both(|setup| setup.lowest().gear.to_string()), ""))
        (row("Its development", &both(|setup| with_unit(setup.lowest().development.m(), 3, "m")), &low))
        (row(&speed_at(report.rings.window.low), &speeds(|setup| setup.lowest().speed_low), &low))
        (row("Highest gear", &both(|setup| setup.highest().gear.to_string()), ""))
        (row("Its development", &both(|setup| with_unit(setup.highest().development.m(), 3, "m")), &high))
        (row(&speed_at(report.rings.window.high), &speeds(|setup| setup.highest().speed_high), &high))
        (row("Range, highest over lowest", &both(|setup| percent(setup.summary.range.percent(), 0)), ""))
        (row("Gears (cross-chained)", &both(|setup| {
            format!("{} ({})", setup.summary.gears, setup.summary.crossed)
        }), ""))
        (row("Useful gears", &both(|setup| setup.summary.useful().to_string()), ""))
    };
    table("A and B side by side", "", &head, &body)
}

fn row(what: &str, [a, b]: &[String; 2], difference: &str) -> Markup {
    html! { tr { th scope="row" { (what) } td { (a) } td { (b) } td { (difference) } } }
}

/// B against A in per cent. At one cadence and on one wheel, speeds stand to each other as developments do.
fn change(difference: &EndDifference) -> String {
    format!("{}\u{a0}%", signed(difference.b_against_a_percent(), 1))
}

/// What the workshop has to know.
#[must_use]
pub(crate) fn block(report: &RingsSection) -> Block {
    let mut block = Block::new("Gears");
    for setup in &report.rings.setups {
        let drivetrain = &setup.drivetrain;
        let [rings, cassette_field]: [&[Field]; 2] = match setup.side {
            Side::A => [&[Field::RingsA], &[Field::CassetteA]],
            Side::B => [&[Field::RingsB], &[Field::CassetteB]],
        };
        block.row_of(setup.side, "Rings", drivetrain.chainset.to_string());
        block.on(rings);
        block.row_of(setup.side, "Cassette", cassette(setup));
        block.on(cassette_field);
    }
    block.row(
        "Roll-out",
        match report.rings.wheel.measured {
            Some(measured) => format!("{} measured", with_unit(measured.mm(), 0, "mm")),
            None => format!("{}, by the tyre’s size", by_size(&report.rings.wheel)),
        },
    );
    block.on(if report.rings.wheel.measured.is_some() { &[Field::RollOut] } else { &[Field::Tyre] });
    limit::for_the_sheet(report, &mut block);
    for setup in &report.rings.setups {
        block.grid_of(setup.side, "Development, m", development_grid(setup));
    }
    block.row("In the tables", legend(report).to_owned());
    block.on(&[]);
    block
}

/// The crosses go by the capacity of the derailleur, which must be the rider's.
fn legend(report: &RingsSection) -> &'static str {
    if report.owners.is_example || report.owners.get(Field::Capacity) < Owner::Demo {
        "( ) cross-chained, × never use"
    } else {
        "( ) cross-chained; × is not known"
    }
}

/// The sprockets; of a cassette typed by its name that they are to be counted.
fn cassette(setup: &SetupReport) -> String {
    let cassette = &setup.drivetrain.cassette;
    match setup.typed.name {
        Some((name, why)) if why != WhySoMany::NoneSuch => {
            format!("{cassette}, usual for {name}: count yours")
        }
        _ => cassette.to_string(),
    }
}

/// Sprockets down, rings across.
fn development_grid(setup: &SetupReport) -> Vec<Vec<String>> {
    let (rings, sprockets) = (setup.drivetrain.chainset.rings(), setup.drivetrain.cassette.sprockets());
    let head = std::iter::once(String::new()).chain(rings.iter().map(ToString::to_string)).collect();
    let cell = |line: &GearLine| {
        let development = plain(line.development.m(), 2);
        match (line.avoid, line.crossed) {
            (true, _) => format!("{development}×"),
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
pub(crate) fn working(report: &RingsSection) -> Markup {
    let setup = report.rings.setup(Side::A);
    let low = setup.lowest();
    let gear = low.gear;
    let circumference = report.rings.wheel.roll_out();
    html! {
        (wheel(report))
        (worked("Development", "ring ÷ sprocket × circumference", &format!(
            "{} ÷ {} × {} = {}", gear.ring, gear.sprocket, with_unit(circumference.mm() / 1000.0, 4, "m"), with_unit(low.development.m(), 3, "m"))))
        (gear_inches(report))
        (worked("Speed", "development × cadence × 0.06", &format!(
            "{} × {} × 0.06 = {}", with_unit(low.development.m(), 3, "m"), trimmed(report.rings.window.low.rpm()), with_unit(low.speed_low.km_per_h(), 2, "km/h"))))
        (step(report))
        p { b { "Cross-chained gears " } (crossed_rule(report)) }
        p { b { "Useful gears " } "are those left when the cross-chained ones are taken out and gears within "
            (percent(report.rings.tolerance.percent(), 1)) " of one another count once." }
        p { "Ratio, development, gear inches and step are the trade’s own definitions, checked against handbooks of 1916 and 1921 and published gear tables. Lowest and highest cadence, useful and cross-chained gears are common practice." }
    }
}

fn wheel(report: &RingsSection) -> Markup {
    let wheel = &report.rings.wheel;
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

fn gear_inches(report: &RingsSection) -> Markup {
    let low = report.rings.setup(Side::A).lowest();
    let result = with_unit(low.inches.inches(), 2, "in");
    if report.rings.nominal_inches {
        let numbers = format!("{} ÷ {} × 27 in = {result}", low.gear.ring, low.gear.sprocket);
        worked("Gear inches", "ring ÷ sprocket × 27 in", &numbers)
    } else {
        let numbers = format!("{} ÷ 0.0798 m = {result}", with_unit(low.development.m(), 3, "m"));
        worked("Gear inches", "development ÷ (π × 0.0254 m)", &numbers)
    }
}

/// The largest step of A's cassette, worked out.
fn step(report: &RingsSection) -> Markup {
    let formula = "larger ÷ smaller − 1, of two developments or of two sprockets on one ring";
    let numbers =
        report.rings.setup(Side::A).drivetrain.cassette.largest_step().map_or_else(String::new, |step| {
            format!("{} ÷ {} − 1 = {}", step.larger, step.smaller, percent(step.step.percent(), 1))
        });
    worked("Step", formula, &numbers)
}

fn crossed_rule(report: &RingsSection) -> Markup {
    html! {
        "by common practice, where the chain runs at its steepest: "
        @for setup in &report.rings.setups { (name(setup.side)) " " (setup.crossed) ". " }
    }
}
