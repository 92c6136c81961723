//! “Which rings?”: the answer, the summary, and how it was worked out.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::layout::line::Line;
use crate::layout::pieces::{self, column, table};
use crate::layout::sheet_block::Block;
use crate::number::{percent, rpm, signed, trimmed, with_unit};
use crate::rings::cassettes::WhySoMany;
use crate::rings::report::RingsReport;
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::view::limit;
use crate::rings::words;
use crate::side::Side;
use crate::units;
use gear_math::gears::{CassetteName, EndDifference};
use gear_math::{Development, Ratio, Speed, Sprocket, Wheel};
use maud::{Markup, html};

/// The sentence that answers.
#[must_use]
pub(crate) fn answer(report: &RingsSection) -> Markup {
    let rings = &report.rings;
    html! {
        @if rings.has_one_set_up() {
            p { (words::answer::same_set_ups()) }
        } @else {
            p { (low_end(rings)) " " (high_end(rings)) " " @if let Some((steps, verdict)) = rings.steps() { (words::answer::step_sizes(steps, verdict)) } }
        }
    }
}

/// What helps to weigh it.
#[must_use]
pub(crate) fn why(report: &RingsSection) -> Markup {
    let rings = &report.rings;
    html! {
        @if !rings.has_one_set_up() { p { (counts(rings)) } }
        @for setup in &rings.setups { (taken_for(setup)) }
    }
}

/// What a cassette typed by its name was taken for.
fn taken_for(setup: &SetupReport) -> Markup {
    let Some(named) = usual_name(setup) else { return html! {} };
    let cassette = &setup.drivetrain.cassette;
    let count = cassette.sprockets().len();
    html! { p { (words::answer::taken_for(setup.side, &named.to_string(), &cassette.to_string(), count)) } }
}

/// The name that a usual cassette was typed by.
fn usual_name(setup: &SetupReport) -> Option<CassetteName> {
    setup.typed.name.filter(|(_, why)| *why != WhySoMany::NoneSuch).map(|(name, _)| name)
}

fn low_end(rings: &RingsReport) -> Line {
    let speeds = rings.setups.each_ref().map(|setup| setup.lowest().speed_low);
    let [a, b] = speeds.map(units::speed);
    words::answer::low_end(rings.faster(speeds).map(Side::other), [&a, &b], &rpm(rings.window.low))
}

fn high_end(rings: &RingsReport) -> Line {
    let speeds = rings.setups.each_ref().map(|setup| setup.highest().speed_high);
    let [a, b] = speeds.map(units::speed);
    words::answer::high_end(rings.faster(speeds), [&a, &b], &rpm(rings.window.high))
}

fn counts(rings: &RingsReport) -> Markup {
    let tolerance = with_unit_trimmed(rings.tolerance.percent());
    let errors =
        Side::BOTH.into_iter().map(|side| rings.wheel(side)).filter(|wheel| wheel.measured.is_none());
    let error = errors.map(|wheel| wheel.estimate().error.percent()).reduce(f64::max);
    html! {
        @for setup in &rings.setups { (words::answer::useful(setup)) " " }
        (words::answer::in_common(rings.common.len(), &tolerance))
        @if let Some(error) = error { " " (words::answer::speeds_by_size(&with_unit_trimmed(error))) }
    }
}

fn with_unit_trimmed(percent: f64) -> String {
    format!("{}\u{a0}%", trimmed(percent))
}

/// The two set-ups side by side in numbers.
#[must_use]
pub(crate) fn summary(report: &RingsSection) -> Markup {
    let [a, b] = &report.rings.setups;
    let head = html! { tr { td {} (column(Side::A)) (column(Side::B)) th scope="col" { (words::summary::B_AGAINST_A) } } };
    let both = |value: fn(&SetupReport) -> String| [value(a), value(b)];
    let sizes = |line: fn(&SetupReport) -> &GearLine| {
        [a, b].map(|setup| report.rings.gear(setup.side, line(setup).development, 3))
    };
    let speeds = |speed: fn(&SetupReport) -> Speed| [units::speed(speed(a)), units::speed(speed(b))];
    let (low, high) = (change(&report.rings.comparison.lowest), change(&report.rings.comparison.highest));
    let speed_at = |cadence| words::summary::its_speed_at(&rpm(cadence));
    let body = html! {
        (row(words::summary::LOWEST, &both(|setup| setup.lowest().gear.to_string()), ""))
        (row(&words::summary::its_size(), &sizes(SetupReport::lowest), &low))
        (row(&speed_at(report.rings.window.low), &speeds(|setup| setup.lowest().speed_low), &low))
        (row(words::summary::HIGHEST, &both(|setup| setup.highest().gear.to_string()), ""))
        (row(&words::summary::its_size(), &sizes(SetupReport::highest), &high))
        (row(&speed_at(report.rings.window.high), &speeds(|setup| setup.highest().speed_high), &high))
        (row(words::summary::RANGE, &both(|setup| percent(setup.summary.range.percent(), 0)), ""))
        (row(words::summary::GEARS, &both(|setup| {
            format!("{} ({})", setup.summary.gears, setup.summary.crossed)
        }), ""))
        (row(words::summary::USEFUL, &both(|setup| setup.summary.useful().to_string()), ""))
    };
    table(words::summary::TITLE, "", &head, &body)
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
    let mut block = Block::new(words::sheet::TITLE);
    for setup in &report.rings.setups {
        let drivetrain = &setup.drivetrain;
        let [rings, cassette_field]: [&[Field]; 2] = match setup.side {
            Side::A => [&[Field::RingsA], &[Field::CassetteA]],
            Side::B => [&[Field::RingsB], &[Field::CassetteB]],
        };
        block.row_of(setup.side, words::sheet::RINGS, drivetrain.chainset.to_string());
        block.on(rings);
        block.row_of(setup.side, words::sheet::CASSETTE, cassette(setup));
        block.on(cassette_field);
    }
    let sides: &[Option<Side>] =
        if report.rings.has_one_wheel() { &[None] } else { &[Some(Side::A), Some(Side::B)] };
    for &side in sides {
        let wheel = report.rings.wheel(side.unwrap_or(Side::A));
        block.row_for(side, words::sheet::ROLL_OUT, roll_out(wheel));
        block.on(if wheel.measured.is_some() { &[Field::RollOut] } else { &[Field::Tyre] });
    }
    limit::for_the_sheet(report, &mut block);
    for setup in &report.rings.setups {
        block.grid_of(setup.side, &words::sheet::development(), development_grid(report, setup));
    }
    block.row(words::sheet::IN_THE_TABLES, legend(report).to_owned());
    block.on(&[]);
    block
}

fn roll_out(wheel: &Wheel) -> String {
    match wheel.measured {
        Some(measured) => words::sheet::measured(&with_unit(measured.mm(), 0, "mm")),
        None => words::sheet::by_size(&words::wheel::by_size(wheel)),
    }
}

/// The cage's crosses go by the capacity of the derailleur, which must be the rider's.
fn knows_cage(report: &RingsSection) -> bool {
    let is_known = |&side: &Side| {
        report.owners.get(report.owners.standing_for(Some(side), Field::Capacity)) < Owner::Demo
    };
    report.owners.is_example || Side::BOTH.iter().all(is_known)
}

fn legend(report: &RingsSection) -> &'static str {
    if knows_cage(report) { words::sheet::LEGEND } else { words::sheet::LEGEND_WITHOUT_CAGE }
}

/// The sprockets; of a cassette typed by its name that they are to be counted.
fn cassette(setup: &SetupReport) -> String {
    let cassette = &setup.drivetrain.cassette;
    match usual_name(setup) {
        Some(name) => words::sheet::usual_for(&name.to_string(), &cassette.to_string()),
        None => cassette.to_string(),
    }
}

/// Sprockets down, rings across.
fn development_grid(report: &RingsSection, setup: &SetupReport) -> Vec<Vec<String>> {
    let avoid = if knows_cage(report) { setup.cage.avoid } else { setup.cage.switched_off };
    let (rings, sprockets) = (setup.drivetrain.chainset.rings(), setup.drivetrain.cassette.sprockets());
    let head = std::iter::once(String::new()).chain(rings.iter().map(ToString::to_string)).collect();
    let cell = |line: &GearLine| {
        let development = report.rings.gear_number(setup.side, line.development, 2);
        match (avoid.holds(&setup.drivetrain, line.gear), line.crossed) {
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
    let rings = &report.rings;
    let low = rings.setup(Side::A).lowest();
    let (gear, development) = (low.gear, units::distances().print(low.development.m(), 3));
    html! {
        @if rings.has_one_wheel() { (wheel(rings.wheel(Side::A))) }
        @else { @for side in Side::BOTH { p { (pieces::name(side)) } (wheel(rings.wheel(side))) } }
        (worked(words::working::DEVELOPMENT, &format!(
            "{} ÷ {} × {} = {development}", gear.ring, gear.sprocket, units::distances().print(rings.wheel(Side::A).roll_out().mm() / 1000.0, 4))))
        (gear_inches(rings, low))
        (worked([words::working::SPEED, &words::working::speed()], &format!(
            "{development} × {} × {} = {}", trimmed(rings.window.low.rpm()), words::working::per_minute(), units::speeds().print(low.speed_low.km_per_h(), 2))))
        (worked(words::working::STEP, &step(rings)))
        p { (words::working::crossed(&rings.setups)) }
        p { (words::working::useful(&percent(rings.tolerance.percent(), 1))) }
        p { (words::working::SOURCES) }
    }
}

fn worked([what, formula]: [&str; 2], numbers: &str) -> Markup {
    pieces::worked(what, formula, numbers)
}

fn wheel(wheel: &Wheel) -> Markup {
    let (seat, width) = (wheel.tyre.bead_seat.mm(), wheel.tyre.width.mm());
    let remark = match wheel.measured {
        Some(measured) => words::working::measured(&with_unit(measured.mm(), 0, "mm")),
        None => words::working::by_size(&percent(wheel.estimate().error.percent(), 1)),
    };
    html! {
        (worked(words::working::CIRCUMFERENCE, &format!(
            "π × ({seat} + 2 × {width}) = {}", with_unit(wheel.estimate().circumference.mm(), 0, "mm"))))
        p { (remark) }
    }
}

fn gear_inches(rings: &RingsReport, low: &GearLine) -> Markup {
    let result = with_unit(low.inches.inches(), 2, "in");
    if rings.nominal_inches {
        let (gear, wheel) = (low.gear, Ratio::NOMINAL_WHEEL_INCHES);
        let numbers = format!("{} ÷ {} × {wheel} in = {result}", gear.ring, gear.sprocket);
        worked([words::working::GEAR_INCHES, &words::working::by_nominal_wheel()], &numbers)
    } else {
        let [way, inch] = [(low.development.m(), 3), (Development::METRES_PER_GEAR_INCH, 4)]
            .map(|(m, decimals)| units::distances().print(m, decimals));
        let numbers = format!("{way} ÷ {inch} = {result}");
        worked([words::working::GEAR_INCHES, &words::working::by_development()], &numbers)
    }
}

/// The largest step of A's cassette, worked out.
fn step(rings: &RingsReport) -> String {
    rings.setup(Side::A).drivetrain.cassette.largest_step().map_or_else(String::new, |step| {
        format!("{} ÷ {} − 1 = {}", step.larger, step.smaller, percent(step.step.percent(), 1))
    })
}
