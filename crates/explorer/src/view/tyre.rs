//! “Which tyre, how hard?”: the answer, what moves it, and how it was worked out.

use super::sheet::{Block, Part};
use super::words::{link_to, marked_table, plain_table, worked};
use crate::field::Field;
use crate::number::{percent, plain, signed, with_unit};
use crate::report::{Gauge, GearOnBoth, OtherTyre, Report, SetupReport, TyreFit, TyreReport, WidthLine};
use gear_math::{
    BodyMass, Construction, HOW_TO_MEASURE, LoadedTyre, PressureAdvice, PressureCaution, RACE_RULES,
    RaceLimit, RaceRule, TyreGround, WheelPressure, WheelStyle, WidthVerdict,
};
use maud::{Markup, html};

/// The sentence that answers, what narrows it, and the cautions.
#[must_use]
pub(super) fn answer(report: &Report) -> Markup {
    let tyre = &report.tyre;
    match &tyre.fit {
        Err(error) => html! { p { b.stop { "This tyre cannot go on this rim. " } (error) } },
        Ok(fit) => html! {
            @for danger in tyre.dangers() { p { b.stop { (danger) } } }
            p { (width(tyre, fit)) " " (pressures(fit)) }
            p { (loaded_with(tyre)) }
            @if let Ok(start) = &fit.advice.start {
                @for (wheel, pressure) in [("Front", start.front), ("Rear", start.rear)] {
                    @if let Some(limit) = pressure.limited_by { p { (wheel) " " (limit.to_string()) "." } }
                }
            }
            @for caution in fit.advice.cautions.iter().filter(|caution| caution.tells_of_a_start()) { p { (caution) } }
            p.care { (PressureCaution::MarksFirst) }
        },
    }
}

/// Who rides and on what; those fields stand in another section.
fn loaded_with(tyre: &TyreReport) -> Markup {
    let inputs = &tyre.inputs;
    html! {
        "For a " (link_to(Field::BodyMass, &format!("rider of {} kg", inputs.rider.kg()))) " with "
        (link_to(Field::KitMass, &format!("{} kg of kit", inputs.kit.kg()))) " on a "
        (link_to(Field::BikeMass, &format!("bike of {} kg", inputs.bike.kg()))) ", and "
        (link_to(Field::RearWeight, &percent(100.0 * inputs.front_share.fraction(), 0))) " of the weight on the front wheel."
    }
}

fn width(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let (inputs, counts) = (&tyre.inputs, mm(fit.section.width().mm()));
    html! {
        @if inputs.measured.is_some() {
            "Measured, the tyre is " b { (counts) } " wide"
        } @else if inputs.construction == Construction::Tubular {
            "A tubular is about as wide as its label, " b { (counts) } " on any rim"
        } @else {
            "On a rim of " (typed(inputs.rim.mm())) " a tyre labelled " (tyre.size.width.mm()) " comes out about " b { (counts) } " wide, likely " (likely(fit))
        }
        @match inputs.limit {
            None => ".",
            Some(limit) => { (against(fit, limit)) }
        }
    }
}

fn against(fit: &TyreFit, limit: RaceLimit) -> Markup {
    let limit_mm = typed(limit.mm());
    html! {
        "; against the race limit of " (limit_mm) " that is "
        @if let Some(gauge) = fit.gauge { b class=(class(gauge)) { (gauge_words(gauge)) } }
        "."
    }
}

const fn class(gauge: Gauge) -> &'static str {
    match gauge {
        Gauge::Expected(WidthVerdict::LikelyWithin) | Gauge::Within => "good",
        Gauge::Expected(WidthVerdict::Measure) => "care",
        Gauge::Expected(WidthVerdict::LikelyOver) | Gauge::Over => "stop",
    }
}

/// What the gauge says, in a few words.
#[must_use]
pub(crate) fn gauge_words(gauge: Gauge) -> String {
    match gauge {
        Gauge::Expected(verdict) => verdict.to_string(),
        Gauge::Within => "within it by your calliper".to_owned(),
        Gauge::Over => "over it by your calliper".to_owned(),
    }
}

/// The range that the mounted width likely lies in.
fn likely(fit: &TyreFit) -> String {
    let (low, high) = fit.width.range_mm();
    format!("{} to {}", plain(low, 1), plain(high, 1))
}

fn pressures(fit: &TyreFit) -> Markup {
    match &fit.advice.start {
        Ok(start) => html! {
            "Start with " b { (start_of(&start.front)) } " in front and " b { (start_of(&start.rear)) } " behind."
        },
        Err(conflict) => html! { b.stop { (conflict) } },
    }
}

/// What has to be said beside the rim's field.
#[must_use]
pub(super) fn rim_remark(report: &Report, help: &str) -> String {
    match &report.tyre.fit {
        Err(error) => error.to_string(),
        Ok(_) => help.to_owned(),
    }
}

/// Everything under the picture.
#[must_use]
pub(super) fn tables(report: &Report) -> Markup {
    let tyre = &report.tyre;
    html! {
        (cautions(tyre))
        @if let Ok(fit) = &tyre.fit {
            (start(fit))
            (widths(tyre))
            (riders(tyre))
            (grounds(tyre))
        }
        @if let Some(other) = &tyre.other { (other_gears(report, other)) }
        (rules())
    }
}

fn cautions(tyre: &TyreReport) -> Markup {
    let told =
        |caution: &&PressureCaution| caution.tells_of_a_start() || **caution == PressureCaution::MarksFirst;
    html! {
        div.prose {
            p { (rim_advice(tyre)) }
            ul {
                @for caution in &tyre.cautions { li.care { (caution) } }
                @if let Ok(fit) = &tyre.fit {
                    @for caution in fit.advice.cautions.iter().filter(|caution| !told(caution)) { li { (caution) } }
                }
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
        " inside, by the trade’s rule of thumb. A rider of 85 kg or more does better from " (mm(tyre.heavy_rims.narrowest_mm)) " up: a wider rim keeps a soft tyre from squirming."
    }
}

fn start(fit: &TyreFit) -> Markup {
    let Some((start, loaded)) = fit.advice.start.as_ref().ok().zip(fit.loaded) else { return html! {} };
    let row = |what: &str, of: fn(&WheelPressure, &LoadedTyre) -> String| {
        vec![what.to_owned(), of(&start.front, &loaded.front), of(&start.rear, &loaded.rear)]
    };
    let rows = [
        row("Start", |wheel, _| start_of(wheel)),
        row("Look for your own from", |wheel, _| range(wheel)),
        row("The tyre gives, of its height", |_, tyre| percent(tyre.drop * 100.0, 0)),
        row("Load it bears before the rim touches", |_, tyre| {
            format!("{}\u{a0}×", plain(tyre.bottoming_reserve, 1))
        }),
        row("Contact with firm ground", |_, tyre| with_unit(tyre.contact_area_cm2, 0, "cm²")),
    ];
    plain_table(
        "Pressures to start from",
        "The last three rows explain and rank, they do not promise: a casing is stiffer than its air, and a sharp edge bottoms a tyre far sooner than flat ground.",
        &["", "Front", "Rear"],
        &rows,
    )
}

/// Where to look for one's own pressure, “22 (the lowest) to 28 psi (1.52 to 1.93 bar)”.
fn range(wheel: &WheelPressure) -> String {
    let [low, high] = [wheel.low, wheel.high].map(|pressure| wheel.in_whole_psi(pressure));
    let lowest = if wheel.low <= wheel.floor { " (the lowest)" } else { "" };
    format!(
        "{}{lowest} to {} ({} to {})",
        plain(low.psi(), 0),
        with_unit(high.psi(), 0, "psi"),
        plain(low.bar(), 2),
        with_unit(high.bar(), 2, "bar")
    )
}

fn widths(tyre: &TyreReport) -> Markup {
    let row = |line: &WidthLine| {
        let [front, rear] = start_cells(&line.advice);
        let gauge = line.gauge.map_or_else(|| "no limit".to_owned(), gauge_words);
        let roll_out = with_unit(line.size.circumference().mm(), 0, "mm");
        vec![line.size.to_string(), mm(line.width.mm()), front, rear, gauge, roll_out, change(tyre, line)]
    };
    marked_table(
        "Other widths on this rim",
        "Same rider, ground and kind of tyre. Pressures in psi; gears against the tyre on the bench, both by their size.",
        &["Tyre", "On this rim", "Front", "Rear", "|At the gauge", "Roll-out", "Gears"],
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
        Ok(start) => [psi(start.front), psi(start.rear)],
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
        "Body mass; kit and bike stay. psi. “↑” was raised to the lowest safe pressure, “↓” cut to the highest allowed.",
        &["Rider", "Front", "Rear"],
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
        "psi, front / rear.",
        &["Ground", &smooth, &normal, &hard],
        &rows(&tyre.grounds, row),
        tyre.grounds.iter().position(|(ground, _)| *ground == tyre.inputs.ground),
    )
}

/// What the tyre to compare with does to every gear.
fn other_gears(report: &Report, other: &OtherTyre) -> Markup {
    let wheel = &report.wheel;
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
            div.pair { @for (setup, gears) in report.setups.iter().zip(&other.gears) { (gears_on_both(report, setup, other, gears)) } }
        }
    }
}

fn gears_on_both(report: &Report, setup: &SetupReport, other: &OtherTyre, gears: &[GearOnBoth]) -> Markup {
    let (now, then) = (report.wheel.tyre.to_string(), other.size.to_string());
    let row = |gear: &GearOnBoth| {
        vec![gear.gear.to_string(), with_unit(gear.now.m(), 3, "m"), with_unit(gear.then.m(), 3, "m")]
    };
    let title = format!("{} on {now} and {then}", setup.side);
    plain_table(&title, "", &["Gear", &now, &then], &rows(gears, row))
}

fn rules() -> Markup {
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
    html! { details id="tyre-rules" { summary { (title) } (table) } }
}

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(super) fn working(report: &Report) -> Markup {
    let tyre = &report.tyre;
    let Ok(fit) = &tyre.fit else { return html! {} };
    html! {
        (width_worked(tyre, fit))
        p { (fit.width.accuracy) }
        (pressure_worked(tyre, fit))
        p { "Mass and width follow from one aim, the same drop of the tyre; the starting figures and floors are the trade’s, the factors for ground and style are chosen to meet them." }
        @if let Some(loaded) = fit.loaded {
            (worked("Drop and reserve", "F = 4/3 k₀ (1 − 0.45 f) p √(2R) d^1.5, f = d ÷ h; reserve = 0.487 ÷ ((1 − 0.45 f) f^1.5)", &format!(
                "rear: {} on h = {} gives d = {}", with_unit(fit.case.loads().rear.newtons(), 0, "N"), mm(fit.section.height_mm()), mm(loaded.rear.deflection_mm))))
        }
        p { "The law d^1.5 is that of Renart and Roura-Grabulosa, Am. J. Phys. 87, 102 (2019); its constant follows from the drawn arc." }
    }
}

fn width_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    match tyre.inputs.construction {
        Construction::Tubular => html! {},
        _ => worked(
            "Width on the rim",
            "label + 0.4 × (rim − measuring rim)",
            &format!(
                "{} + 0.4 × ({} − {}) = {}; with the casing as an arc {}",
                tyre.size.width.mm(),
                tyre.inputs.rim.mm(),
                plain(tyre.measuring_rim.mm(), 1),
                mm(fit.width.mounted.mm()),
                mm(fit.width.arc.mm())
            ),
        ),
    }
}

fn pressure_worked(tyre: &TyreReport, fit: &TyreFit) -> Markup {
    let (inputs, share) = (&tyre.inputs, plain(fit.case.front_share.fraction(), 2));
    worked(
        "Pressure, mean of both wheels",
        "p₀ × (mass ÷ 79 kg) × (33 mm ÷ width)^1.5 × ground × style; front × (0.5 + x), rear × (1.5 − x)",
        &format!(
            "{} × ({} ÷ 79) × (33 ÷ {})^1.5 × {} × {} = {}, with x = {share}",
            plain(inputs.construction.base_psi(), 0),
            plain(fit.case.total_kg(), 1),
            plain(fit.section.width().mm(), 1),
            inputs.ground.factor(),
            inputs.style.factor(),
            with_unit(fit.advice.mean.psi(), 1, "psi"),
        ),
    )
}

/// What the workshop has to know.
#[must_use]
pub(super) fn block(report: &Report) -> Block {
    let tyre = &report.tyre;
    let inputs = &tyre.inputs;
    let mut block = Block::new("Tyre and pressure");
    block.row("Tyre", format!("{}, {}", tyre.size, inputs.construction));
    block.row(
        "Rim",
        format!(
            "{} inside, {}",
            typed(inputs.rim.mm()),
            match inputs.construction {
                Construction::Tubular => "bed of a tubular rim",
                _ if inputs.marks.hookless => "hookless",
                _ => "hooked",
            }
        ),
    );
    match &tyre.fit {
        Err(error) => block.row("Width", error.to_string()),
        Ok(fit) => {
            block.row("Width", width_for_the_sheet(tyre, fit));
            if fit.gauge == Some(Gauge::Expected(WidthVerdict::Measure)) {
                block.cautions.push(HOW_TO_MEASURE.to_owned());
            }
            block.row("Highest allowed", marks_for_the_sheet(fit));
            block.row("Reckoned for", reckoned_for(tyre, fit));
            pressures_for_the_sheet(&mut block, fit);
            block.cautions.extend(fit.advice.cautions.iter().map(ToString::to_string));
        }
    }
    block.cautions.extend(tyre.cautions.iter().map(ToString::to_string));
    block
}

fn width_for_the_sheet(tyre: &TyreReport, fit: &TyreFit) -> String {
    let counts = mm(fit.section.width().mm());
    let width = match tyre.inputs.measured {
        Some(_) => format!("{counts} measured"),
        None => format!("{counts} computed, likely {}", likely(fit)),
    };
    match tyre.inputs.limit.zip(fit.gauge) {
        Some((limit, gauge)) => format!("{width}; limit {}: {}", typed(limit.mm()), gauge_words(gauge)),
        None => width,
    }
}

fn marks_for_the_sheet(fit: &TyreFit) -> String {
    fit.advice.ceiling.map_or("read it off tyre and rim".to_owned(), |ceiling| ceiling.to_string())
}

fn reckoned_for(tyre: &TyreReport, fit: &TyreFit) -> String {
    let all = with_unit(fit.case.total_kg(), 1, "kg");
    format!("{all} in all, {} ground, rider {}", tyre.inputs.ground, tyre.inputs.style)
}

fn pressures_for_the_sheet(block: &mut Block, fit: &TyreFit) {
    match &fit.advice.start {
        Err(conflict) => block.row("Pressure", conflict.to_string()),
        Ok(start) => {
            for (wheel, pressure) in [("Front", start.front), ("Rear", start.rear)] {
                block.row(wheel, format!("{}; try {}", start_of(&pressure), range(&pressure)));
            }
            block.parts.push(Part::blank("Own pressure, front and rear"));
        }
    }
}

fn rows<T>(lines: &[T], row: impl Fn(&T) -> Vec<String>) -> Vec<Vec<String>> {
    lines.iter().map(row).collect()
}

fn psi(wheel: WheelPressure) -> String {
    use gear_math::LimitedBy;
    let mark = match wheel.limited_by {
        Some(LimitedBy::Floor(_)) => " ↑",
        Some(LimitedBy::Ceiling(_)) => " ↓",
        None => "",
    };
    format!("{}{mark}", plain(wheel.in_whole_psi(wheel.start).psi(), 0))
}

/// “24 psi (1.65 bar)”.
fn start_of(wheel: &WheelPressure) -> String {
    let start = wheel.in_whole_psi(wheel.start);
    format!("{} ({})", with_unit(start.psi(), 0, "psi"), with_unit(start.bar(), 2, "bar"))
}

/// A computed width, to a tenth.
fn mm(mm: f64) -> String {
    with_unit(mm, 1, "mm")
}

/// A width as it was typed or laid down.
fn typed(mm: f64) -> String {
    format!("{mm}\u{a0}mm")
}
