//! “Which tyre, how hard?”: what to heed, and how width, pressure and gears move.

use crate::layout::pieces::{marked_table, plain_table};
use crate::number::{percent, plain, signed, with_unit};
use crate::rings::setup::SetupReport;
use crate::rings::words::wheel::by_size;
use crate::tyre::report::{GearOnBoth, OtherTyre, TyreFit, TyreReport, WidthLine};
use crate::tyre::section::TyreSection;
use crate::tyre::view::answer::{both_units, gauge_words, mm, range, rows, start_of, typed};
use gear_math::Wheel;
use gear_math::rider::BodyMass;
use gear_math::wheel::{
    CLEARANCE_CHECK, Construction, HOW_TO_MEASURE, LoadedTyre, PressureAdvice, PressureCaution, RACE_RULES,
    RaceRule, TyreGround, WheelPressure, WheelStyle,
};
use maud::{Markup, html};

/// Everything under the picture.
#[must_use]
pub(crate) fn tables(report: &TyreSection) -> Markup {
    let tyre = &report.tyre;
    html! {
        (cautions(tyre))
        @if let Ok(fit) = &tyre.fit {
            @if tyre.danger().is_none() { (start(fit)) }
            (widths(tyre))
            @if tyre.danger().is_none() { (riders(tyre)) (grounds(tyre)) }
        }
        @if let Some(other) = &tyre.other { (other_gears(report, other)) }
        (rules(tyre))
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
                @for caution in tyre.cautions.iter().filter(|&&caution| Some(caution) != tyre.first_of_all()) { li.care { (caution) } }
                @if let Ok(fit) = &tyre.fit {
                    @for caution in fit.advice.cautions.iter().filter(|caution| !told(caution)) { li { (caution) } }
                }
                li { (CLEARANCE_CHECK) }
                li { (HOW_TO_MEASURE) }
            }
        }
    }
}

fn rim_advice(tyre: &TyreReport) -> Markup {
    if tyre.inputs.construction == Construction::Tubular {
        return html! { "The bed of a tubular rim has to match the curve of the tyre’s base: the makers of both say which go together." };
    }
    html! {
        "Rims that suit a " (tyre.size.width.mm()) ": " b { (plain(tyre.rims.narrowest_mm, 1)) " to " (mm(tyre.rims.widest_mm)) }
        " inside, by the workshop’s rule of thumb. A rider of 85 kg or more does better from " (mm(tyre.heavy_rims.narrowest_mm)) " up: a wider rim keeps a soft tyre from squirming."
    }
}

fn start(fit: &TyreFit) -> Markup {
    let Some((start, loaded)) = fit.advice.start.as_ref().ok().zip(fit.loaded) else { return html! {} };
    let row = |what: &str, of: fn(&WheelPressure, &LoadedTyre) -> String| {
        vec![what.to_owned(), of(&start.front, &loaded.front), of(&start.rear, &loaded.rear)]
    };
    let rows = [
        row("Start", |wheel, _| start_of(wheel)),
        row("Try between", |wheel, _| range(wheel)),
        row("Tyre drop, % of height", |_, tyre| percent(tyre.drop * 100.0, 0)),
        row("Load that bottoms the rim, × yours", |_, tyre| plain(tyre.bottoming_reserve, 1)),
        row("Contact with firm ground", |_, tyre| with_unit(tyre.contact_area_cm2, 0, "cm²")),
    ];
    plain_table(
        "Pressures to start from",
        "The last three rows explain and rank, they do not promise: a casing is stiffer than its air, and a sharp edge bottoms a tyre far sooner than flat ground.",
        &["", "Front", "Rear"],
        &rows,
    )
}

/// What the signs beside a pressure in a table mean.
const SIGNS: &str = "“↑” was raised to the lowest usual pressure or the marked minimum, “↓” cut to the highest allowed; “*” is outside what the formula was made for.";
/// Heads of two columns of pressures.
const FRONT_AND_REAR: [&str; 2] = ["Front, psi (bar)", "Rear, psi (bar)"];

fn widths(tyre: &TyreReport) -> Markup {
    let row = |line: &WidthLine| {
        let roll_out = by_size(&Wheel::by_size(line.size, None));
        let gauge = line.gauge.map_or_else(|| "no limit".to_owned(), gauge_words);
        let ([front, rear], gauge) = match line.danger {
            Some(danger) => (["none".to_owned(), "none".to_owned()], danger.to_string()),
            None => (start_cells(&line.advice), gauge),
        };
        vec![line.size.to_string(), mm(line.width.mm()), front, rear, gauge, roll_out, change(tyre, line)]
    };
    marked_table(
        "Other widths on this rim",
        &format!(
            "Same rider, ground and kind of tyre. The widest tyre that frame and fork makers name comes before this table. {SIGNS} Gears against the tyre on the bench, both by their size."
        ),
        &[
            "Tyre",
            "On this rim",
            FRONT_AND_REAR[0],
            FRONT_AND_REAR[1],
            "|Against the limit",
            "Roll-out",
            "Gears",
        ],
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
        Err(_) => ["none".to_owned(), "none".to_owned()],
    }
}

fn riders(tyre: &TyreReport) -> Markup {
    let row = |(rider, advice): &(BodyMass, PressureAdvice)| {
        let [front, rear] = start_cells(advice);
        vec![with_unit(rider.kg(), 0, "kg"), front, rear]
    };
    marked_table(
        "Other riders on this tyre",
        "Body mass; kit and bike stay.",
        &["Rider", FRONT_AND_REAR[0], FRONT_AND_REAR[1]],
        &rows(&tyre.riders, row),
        tyre.riders.iter().position(|(rider, _)| *rider == tyre.inputs.rider),
    )
}

fn grounds(tyre: &TyreReport) -> Markup {
    let row = |(ground, styles): &(TyreGround, Vec<PressureAdvice>)| {
        let cells = styles.iter().map(|advice| start_cells(advice).join(" / "));
        std::iter::once(ground.to_string()).chain(cells).collect()
    };
    let [smooth, normal, hard] = WheelStyle::ALL.map(|style| style.to_string());
    marked_table(
        "Other ground and style",
        &format!("Front / rear, psi (bar).{}", on_rocks(tyre)),
        &["Ground", &smooth, &normal, &hard],
        &rows(&tyre.grounds, row),
        tyre.grounds.iter().position(|(ground, _)| *ground == tyre.inputs.ground),
    )
}

/// Why a tube’s pressure rises at once from mixed ground to rocks, where it does.
fn on_rocks(tyre: &TyreReport) -> String {
    tyre.formula_on_rocks().map_or_else(String::new, |formula| {
        let [front, rear] = [formula.front, formula.rear].map(|pressure| with_unit(pressure.psi(), 0, "psi"));
        format!(" On rocks workshop custom for tubes, the same under every rider, stands in for the formula’s {front} and {rear}.")
    })
}

/// What the tyre to compare with does to every gear.
fn other_gears(report: &TyreSection, other: &OtherTyre) -> Markup {
    let wheel = &report.rings.wheel;
    if other.size == wheel.tyre {
        return html! {};
    }
    let direction = if other.size.width > wheel.tyre.width { "longer" } else { "shorter" };
    html! {
        div.prose {
            p {
                "With " (other.size) " every gear is " b { (percent(other.step.percent(), 1)) " " (direction) } ": it rolls "
                (with_unit(other.size.circumference().mm(), 0, "mm")) " where " (wheel.tyre) " rolls " (with_unit(wheel.tyre.circumference().mm(), 0, "mm")) ", both by their size."
                @if wheel.measured.is_some() { " Your measured roll-out is left aside here." }
            }
        }
        details id="tyre-gears" {
            summary { "Every gear on both tyres" }
            div.pair { @for (setup, gears) in report.rings.setups.iter().zip(&other.gears) { (gears_on_both(report, setup, other, gears)) } }
        }
    }
}

fn gears_on_both(
    report: &TyreSection,
    setup: &SetupReport,
    other: &OtherTyre,
    gears: &[GearOnBoth],
) -> Markup {
    let (now, then) = (report.rings.wheel.tyre.to_string(), other.size.to_string());
    let row = |gear: &GearOnBoth| {
        vec![gear.gear.to_string(), with_unit(gear.now.m(), 3, "m"), with_unit(gear.then.m(), 3, "m")]
    };
    let title = format!("{} on {now} and {then}", setup.side);
    plain_table(&title, "", &["Gear", &now, &then], &rows(gears, row))
}

fn rules(tyre: &TyreReport) -> Markup {
    let (size, diameter) = (tyre.size, tyre.size.nominal_diameter());
    let row = |rule: &RaceRule| {
        vec![rule.body.to_owned(), rule.who.to_owned(), typed(rule.limit.mm()), rule.seen.to_owned()]
    };
    let title = "Width limits found in print";
    let table = plain_table(
        title,
        "They change, and local ones differ: your organiser has the last word. The gauge measures the mounted tyre, not its label.",
        &["Rule of", "|For", "Widest", "|Seen in"],
        &rows(&RACE_RULES, row),
    );
    html! {
        details id="tyre-rules" { summary { (title) } (table) }
        p.prose {
            "UCI 1.3.018 also forbids spikes and studs and asks for wheels of 550 to 700\u{a0}mm over the tyre: " (size) " measures "
            (with_unit(diameter.mm(), 0, "mm")) ", " @if size.is_race_diameter() { "within that" } @else { b.stop { "outside that" } }
            ". Leave it room for " (with_unit(size.clearance_diameter().mm(), 0, "mm")) " in frame and fork: tyres grow."
        }
    }
}
