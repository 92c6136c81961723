//! “Which tyre, how hard?”: what to heed, and how width, pressure and gears move.

use crate::bench::words::choices::{tyre_ground, wheel_style};
use crate::layout::head::Head;
use crate::layout::line::Line;
use crate::layout::pieces::{for_every_bike, marked_table, plain_table};
use crate::number::{percent, plain, signed, with_unit};
use crate::rings::setup::SetupReport;
use crate::rings::words::wheel::by_size;
use crate::side::Side;
use crate::tyre::report::{GearOnBoth, OtherTyre, TyreFit, TyreReport, WidthLine};
use crate::tyre::section::TyreSection;
use crate::tyre::view::answer::{of_each, rows};
use crate::tyre::words::answer::{TUBULAR_RIM, rims};
use crate::tyre::words::pressure::{both_units, range, start_of};
use crate::tyre::words::width::{gauge, mm};
use crate::tyre::words::{gears, rules, said, tables as words};
use crate::units;
use gear_math::rider::BodyMass;
use gear_math::wheel::{
    Construction, LoadedTyre, PressureAdvice, PressureCaution, RACE_RULES, TyreGround, WheelPressure,
    WheelStyle,
};
use gear_math::{Development, Wheel};
use maud::{Markup, html};

/// Everything under the picture.
#[must_use]
pub(crate) fn tables(report: &TyreSection) -> Markup {
    html! { (of_each(report, tables_of)) (rules_table(&report.tyre)) }
}

fn tables_of(report: &TyreSection) -> Markup {
    let tyre = &report.tyre;
    html! {
        (cautions(tyre))
        @if let Ok(fit) = &tyre.fit {
            @if tyre.danger().is_none() { (start(fit)) }
            (widths(tyre))
            @if tyre.danger().is_none() { (riders(tyre)) (grounds(tyre)) }
        }
        @if let Some(other) = &tyre.other { (other_gears(report, other)) }
    }
}

fn cautions(tyre: &TyreReport) -> Markup {
    let told = |caution: &&PressureCaution| {
        caution.tells_of_a_start() || caution.is_beyond_the_formula() || caution.is_about_marks()
    };
    html! {
        div.prose {
            p { (rim_advice(tyre)) }
            ul {
                @for caution in tyre.cautions.iter().filter(|&&caution| Some(caution) != tyre.first_of_all()) { li.care { (said::rim_caution(*caution)) } }
                @if let Ok(fit) = &tyre.fit {
                    @for caution in fit.advice.cautions.iter().filter(|caution| !told(caution)) { li { (said::caution(*caution)) } }
                }
                li { (said::CLEARANCE_CHECK) }
                li { (said::HOW_TO_MEASURE) }
            }
        }
    }
}

fn rim_advice(tyre: &TyreReport) -> Line {
    if tyre.inputs.construction == Construction::Tubular {
        return TUBULAR_RIM.into();
    }
    let (narrowest, heavy) = (plain(tyre.rims.narrowest_mm, 1), mm(tyre.heavy_rims.narrowest_mm));
    rims(tyre.size.width.mm(), &narrowest, &mm(tyre.rims.widest_mm), &heavy)
}

fn start(fit: &TyreFit) -> Markup {
    let Some((start, loaded)) = fit.advice.start.as_ref().ok().zip(fit.loaded) else { return html! {} };
    let row = |what: &str, of: fn(&WheelPressure, &LoadedTyre) -> String| {
        vec![what.to_owned(), of(&start.front, &loaded.front), of(&start.rear, &loaded.rear)]
    };
    let rows = [
        row(words::START, |wheel, _| start_of(wheel)),
        row(words::TRY, |wheel, _| range(wheel)),
        row(words::DROP, |_, tyre| percent(tyre.drop * 100.0, 0)),
        row(words::BOTTOMING, |_, tyre| plain(tyre.bottoming_reserve, 1)),
        row(words::CONTACT, |_, tyre| with_unit(tyre.contact_area_cm2, 0, "cm²")),
    ];
    plain_table(
        words::PRESSURES,
        words::PRESSURES_REMARK,
        &[Head::Empty, Head::Figures(words::FRONT), Head::Figures(words::REAR)],
        &rows,
    )
}

fn widths(tyre: &TyreReport) -> Markup {
    let row = |line: &WidthLine| {
        let roll_out = by_size(&Wheel::by_size(line.size, None));
        let said = line.gauge.map_or_else(|| words::NO_LIMIT.to_owned(), gauge);
        let ([front, rear], said) = match line.danger {
            Some(danger) => ([words::NONE.to_owned(), words::NONE.to_owned()], said::rim_caution(danger)),
            None => (start_cells(&line.advice), said),
        };
        vec![line.size.to_string(), mm(line.width.mm()), front, rear, said, roll_out, change(tyre, line)]
    };
    let [size, rim, limit, roll_out, gears] = words::WIDTHS_HEADS;
    let [front, rear] = words::pressures();
    let [size, rim, front, rear, roll_out, gears] =
        [size, rim, &front, &rear, roll_out, gears].map(Head::Figures);
    marked_table(
        words::WIDTHS,
        words::WIDTHS_REMARK,
        &[size, rim, front, rear, Head::Words(limit), roll_out, gears],
        &rows(&tyre.widths, row),
        tyre.widths.iter().position(|line| line.size == tyre.size),
    )
}

/// By how much every gear is longer or shorter.
fn change(tyre: &TyreReport, line: &WidthLine) -> String {
    let longer = if line.size.width < tyre.size.width { -1.0 } else { 1.0 };
    format!("{}\u{a0}%", signed(longer * line.step.percent(), 1))
}

fn start_cells(advice: &PressureAdvice) -> [String; 2] {
    match &advice.start {
        Ok(start) => {
            let beyond = advice.cautions.iter().any(|caution| caution.is_beyond_the_formula());
            [start.front, start.rear].map(|wheel| both_units(&wheel) + if beyond { "\u{a0}*" } else { "" })
        }
        Err(_) => [words::NONE.to_owned(), words::NONE.to_owned()],
    }
}

fn riders(tyre: &TyreReport) -> Markup {
    let row = |(rider, advice): &(BodyMass, PressureAdvice)| {
        let [front, rear] = start_cells(advice);
        vec![units::masses().print(rider.kg(), 0), front, rear]
    };
    let [front, rear] = words::pressures();
    marked_table(
        words::RIDERS,
        words::RIDERS_REMARK,
        &[words::RIDER, &front, &rear].map(Head::Figures),
        &rows(&tyre.riders, row),
        tyre.riders.iter().position(|(rider, _)| *rider == tyre.inputs.rider),
    )
}

fn grounds(tyre: &TyreReport) -> Markup {
    let row = |(ground, styles): &(TyreGround, Vec<PressureAdvice>)| {
        let cells = styles.iter().map(|advice| start_cells(advice).join(" / "));
        std::iter::once(tyre_ground(*ground).to_owned()).chain(cells).collect()
    };
    let [smooth, normal, hard] = WheelStyle::ALL.map(wheel_style);
    marked_table(
        words::GROUNDS,
        &grounds_remark(tyre),
        &[words::GROUND, smooth, normal, hard].map(Head::Figures),
        &rows(&tyre.grounds, row),
        tyre.grounds.iter().position(|(ground, _)| *ground == tyre.inputs.ground),
    )
}

/// With why a tube’s pressure rises at once from mixed ground to rocks, where it does.
fn grounds_remark(tyre: &TyreReport) -> String {
    let Some(formula) = tyre.formula_on_rocks() else { return words::grounds_remark() };
    let [front, rear] =
        [formula.front, formula.rear].map(|pressure| units::pressures().print(pressure.bar(), 2));
    format!("{} {}", words::grounds_remark(), words::on_rocks(&front, &rear))
}

/// What the tyre to compare with does to every gear.
fn other_gears(report: &TyreSection, other: &OtherTyre) -> Markup {
    let wheel = report.rings.wheel(report.side.unwrap_or(Side::A));
    if other.size == wheel.tyre {
        return html! {};
    }
    html! {
        div.prose {
            p { (gears::other(wheel, other)) @if wheel.measured.is_some() { " " (gears::LEFT_ASIDE) } }
        }
        details id="tyre-gears" {
            summary { (gears::EVERY) }
            div.pair { @for (setup, gears) in report.rings.setups.iter().zip(&other.gears).filter(|it| report.side.is_none_or(|side| side == it.0.side)) { (gears_on_both(report, setup, other, gears)) } }
        }
    }
}

fn gears_on_both(
    report: &TyreSection,
    setup: &SetupReport,
    other: &OtherTyre,
    on_both: &[GearOnBoth],
) -> Markup {
    let (now, then) = (report.rings.wheel(setup.side).tyre.to_string(), other.size.to_string());
    let row = |gear: &GearOnBoth| {
        let told = |development: Development| units::developments().print(development.m(), 3);
        vec![gear.gear.to_string(), told(gear.now), told(gear.then)]
    };
    let title = gears::title(setup.side, &now, &then);
    plain_table(&title, "", &[gears::GEAR, &now, &then].map(Head::Figures), &rows(on_both, row))
}

fn rules_table(tyre: &TyreReport) -> Markup {
    let [body, who, widest, seen] = rules::HEADS;
    let heads = [Head::Figures(body), Head::Words(who), Head::Figures(widest), Head::Words(seen)];
    let table = plain_table(rules::TITLE, rules::REMARK, &heads, &rows(&RACE_RULES, rules::row));
    html! {
        details id="tyre-rules" { summary { (rules::TITLE) } (for_every_bike(&table)) }
        p.prose { (rules::wheels(tyre.size)) }
    }
}
