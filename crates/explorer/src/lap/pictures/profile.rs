//! The course from the side with the plan on it: height, ground by pattern, where to ride, and the gear beneath.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::looks::bar;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::lap::settled::Settled;
use crate::lap::words::pictures::profile as told;
use crate::lap::words::pictures::{NO_LAP, WAITING, none_yet};
use crate::number::with_unit;
use crate::ride::words::terms::surface_name;
use crate::side::Side;
use crate::units;
use crate::words::gears_by;
use gear_math::course::{Mode, ReserveUse, TracePoint};
use gear_math::typed::decimal_in;
use gear_math::{Gear, Lap, Speed, Surface};

/// The course with the plan and the gears on it.
pub(crate) const PROFILE: Drawing<LapSection> = Drawing {
    name: "profile",
    title: told::TITLE,
    caption: told::CAPTION,
    height,
    draw,
    says,
    spots,
    label,
    words,
};

const LEFT: f64 = 46.0;
const RIGHT: f64 = 14.0;
const LINE: f64 = 17.0;
const HILL: f64 = 120.0;
const GROUND: f64 = 16.0;
const STRIP: f64 = 12.0;
/// Room beneath a strip for what is too close to call.
const DOUBT: f64 = 9.0;
const GEARS: f64 = 130.0;
/// Room for the reserve with its heading, where there is one.
const RESERVE: f64 = 86.0;
/// Between the gears and that heading.
const GAP: f64 = 24.0;
const FOOT: f64 = 24.0;
/// B's gears are drawn this far beneath where they are, so that they can be seen beside A's, CSS pixels.
const BELOW: f64 = 3.5;
/// Part of the lap on foot at least this wide, so that a single barrier can be seen.
const LEAST: f64 = 5.0;
const DEVELOPMENTS: [f64; 12] = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0];

/// Distances along the lap, for this picture and that of the time gained.
pub(crate) fn across(laps: &LapReport, width: f64) -> Scale {
    Scale::even((0.0, laps.length_m()), (LEFT, width - RIGHT))
}

/// Places that can be looked at: every metre, and the line at the end.
pub(crate) fn metres(laps: &LapReport) -> impl Iterator<Item = f64> + '_ {
    (0..=laps.length_m().ceil() as usize).map(|index| metre(laps, index))
}

/// The place of this number.
pub(crate) fn metre(laps: &LapReport, index: usize) -> f64 {
    laps.length_m().min(index as f64)
}

/// Distances at the foot of a picture.
pub(crate) fn draw_distances(pen: &mut Pen, look: &Palette, laps: &LapReport, scale: Scale, y: f64) {
    let length = laps.length_m();
    let (unit, end) = (units::distances(), scale.at(length));
    let scale = scale.told(unit);
    for at in scale.even_ticks(64.0) {
        let anchor = match at {
            0.0 => Anchor::Start,
            at if end - scale.at(at) < 12.0 => Anchor::End,
            _ => Anchor::Middle,
        };
        pen.text(&with_unit(at, 0, unit.symbol()), (scale.at(at), y), Type::new(look.soft, anchor));
    }
}

/// A bar over the stretch on which the one ahead gains most, in its looks.
pub(crate) fn mark_stretch(pen: &mut Pen, look: &Palette, settled: &Settled, scale: Scale, y: f64) {
    let Some(part) = settled.stretch() else { return };
    let (from, to) = wide_enough(scale.at(part.span.from_m), scale.at(part.span.to_m), LEAST);
    bar(pen, look, settled.ahead(), (from, y - 3.0), (to, y + 3.0));
}

/// What stands where no lap has been worked out yet.
pub(crate) fn draw_waiting(pen: &mut Pen, look: &Palette, report: &LapSection) {
    pen.text(waiting(report), (4.0, 20.0), Type::new(look.soft, Anchor::Start));
}

/// Height while no lap has been worked out: none where there will be none.
pub(crate) fn waiting_height(report: &LapSection, height: f64) -> f64 {
    if report.lap_inputs.fault(report.lap.own.as_deref()).is_some() { 0.0 } else { height }
}

/// Why there is no lap to be seen.
pub(crate) fn waiting(report: &LapSection) -> &'static str {
    match report.lap_inputs.fault(report.lap.own.as_deref()) {
        Some(_) => NO_LAP,
        None => WAITING,
    }
}

/// Grounds of the course in the order of the table, with their places in the key.
fn key(laps: &LapReport, width: f64) -> (Vec<(Surface, Point)>, f64) {
    let used = |surface: &&Surface| laps.question.course.segments().iter().any(|it| it.surface == **surface);
    let (mut x, mut y) = (0.0, 8.0);
    let place = |surface: &Surface| {
        let wide = 42.0 + plain_width(surface_name(*surface));
        if x > 0.0 && x + wide > width {
            (x, y) = (0.0, y + LINE);
        }
        let at = (x, y);
        x += wide;
        (*surface, at)
    };
    let places = Surface::ALL.iter().filter(used).map(place).collect();
    (places, y + 10.0)
}

/// Upper edges of the parts, from the key down.
struct Layout {
    scale: Scale,
    hill: f64,
    ground: f64,
    strips: f64,
    gears: f64,
    floor: f64,
    /// Lower edge of all, beneath the reserve where there is one.
    end: f64,
}

impl Layout {
    fn new(laps: &LapReport, width: f64) -> Self {
        let hill = key(laps, width).1 + 12.0;
        let ground = hill + HILL;
        let strips = ground + GROUND + 8.0;
        let gears = strips + 2.0 * (STRIP + DOUBT) + 14.0;
        let floor = gears + GEARS;
        let has_reserve = laps.laps.iter().any(|lap| lap.reserve.is_some());
        let end = floor + if has_reserve { GAP + RESERVE } else { 0.0 };
        Self { scale: across(laps, width), hill, ground, strips, gears, floor, end }
    }

    fn strip(&self, side: Side) -> f64 {
        self.strips + side as usize as f64 * (STRIP + DOUBT)
    }
}

fn height(report: &LapSection, width: f64) -> f64 {
    report
        .lap
        .laps
        .as_ref()
        .map_or_else(|| waiting_height(report, 400.0), |laps| Layout::new(laps, width).end + FOOT)
}

fn label(report: &LapSection) -> String {
    let Some(laps) = &report.lap.laps else { return none_yet(told::TITLE, waiting(report)) };
    let places = laps.laps.each_ref().map(|lap| lap.dismounts().len());
    told::label(laps.length_m(), laps.question.course.climb_m(), places)
}

fn says(report: &LapSection) -> String {
    let Some(laps) = &report.lap.laps else { return waiting(report).to_owned() };
    told::says(
        laps.settled.as_ref().filter(|_| !laps.is_of_one_bike()),
        laps.laps.each_ref().map(|lap| lap.dismounts().len()),
    )
}

fn draw(pen: &mut Pen, look: &Palette, report: &LapSection, size: Size) {
    let Some(laps) = &report.lap.laps else { return draw_waiting(pen, look, report) };
    let layout = Layout::new(laps, size.0);
    for (surface, (x, y)) in key(laps, size.0).0 {
        draw_ground(pen, look, surface, (x, y - 6.0), (x + 18.0, y + 6.0));
        pen.text(surface_name(surface), (x + 23.0, y), Type::new(look.ink, Anchor::Start));
    }
    draw_hill(pen, look, laps, &layout);
    if let Some(settled) = laps.settled.as_ref().filter(|_| !laps.is_of_one_bike()) {
        mark_stretch(pen, look, settled, layout.scale, layout.hill - 7.0);
    }
    for side in [Side::A, Side::B] {
        draw_plan(pen, look, laps, side, &layout);
    }
    draw_gears(pen, look, laps, &layout);
    draw_reserve(pen, look, laps, &layout);
    draw_distances(pen, look, laps, layout.scale, layout.end + 13.0);
}

fn draw_hill(pen: &mut Pen, look: &Palette, laps: &LapReport, layout: &Layout) {
    let heights = laps.profile.iter().map(|point| point.height_m);
    let (low, high) = heights.fold((0.0, 0.0), |(low, high), at| (f64::min(low, at), f64::max(high, at)));
    let up = Scale::even((low, high.max(low + 8.0)), (layout.ground - 4.0, layout.hill));
    let x = |at: f64| layout.scale.at(at);
    let line: Vec<Point> = laps.profile.iter().map(|it| (x(it.at_m), up.at(it.height_m))).collect();
    let mut area = line.clone();
    area.extend([(x(laps.length_m()), layout.ground), (x(0.0), layout.ground)]);
    pen.shape(&area, look.rule);
    pen.path(&line, look.ink, 2.0);
    let set = Type::new(look.soft, Anchor::End);
    if up.at(high) < up.at(low) - 14.0 {
        pen.text(&units::distances().print(high, 0), (LEFT - 6.0, up.at(high)), set);
    }
    pen.text(&units::distances().print(low, 0), (LEFT - 6.0, up.at(low)), set);
    let segments = laps.question.course.segments();
    let mut start = 0;
    for (index, segment) in segments.iter().enumerate() {
        if segments.get(index + 1).is_none_or(|next| next.surface != segment.surface) {
            let (from, to) = (x(laps.profile[start].at_m), x(laps.profile[index + 1].at_m));
            draw_ground(pen, look, segment.surface, (from, layout.ground), (to, layout.ground + GROUND));
            start = index + 1;
        }
    }
    for (segment, from) in
        segments.iter().zip(&laps.profile).filter(|(segment, _)| segment.obstacle.is_some())
    {
        let middle = (x(from.at_m) + x(from.at_m + segment.length.m())) / 2.0;
        let y = up.at(from.height_m);
        pen.line((middle, y - 12.0), (middle, y), look.stop, 3.0);
    }
}

/// A piece of ground: paved ones are plain, grass has blades, mud lies in layers, sand is grains.
fn draw_ground(pen: &mut Pen, look: &Palette, surface: Surface, from: Point, to: Point) {
    let ink = look.soft;
    let each = |gap: f64, put: &mut dyn FnMut(f64)| {
        let mut x = (from.0 / gap).ceil() * gap;
        while x < to.0 {
            put(x);
            x += gap;
        }
    };
    let (top, floor) = (from.1, to.1);
    match surface {
        Surface::Tarmac => pen.fill(from, to, ink),
        Surface::PackedGravel => each(5.0, &mut |x| {
            pen.line((x, top + 4.0), (x + 2.0, top + 4.0), ink, 2.0);
            pen.line((x + 2.0, floor - 4.0), (x + 4.0, floor - 4.0), ink, 2.0);
        }),
        Surface::FirmGrass => each(6.0, &mut |x| pen.line((x, floor - 6.0), (x, floor), ink, 1.0)),
        Surface::WetSoftGrass => each(4.0, &mut |x| pen.line((x, top + 2.0), (x, floor), ink, 1.0)),
        Surface::Mud => [0.3, 0.75].into_iter().for_each(|share| layer(pen, look, from, to, share)),
        Surface::DeepMud => {
            [0.1, 0.35, 0.6, 0.85].into_iter().for_each(|share| layer(pen, look, from, to, share));
        }
        Surface::WetPackedSand => each(7.0, &mut |x| pen.dot((x, (top + floor) / 2.0), 1.4, ink)),
        Surface::LooseSand => each(5.0, &mut |x| {
            pen.dot((x, top + 4.0), 1.4, ink);
            pen.dot((x + 2.5, floor - 4.0), 1.4, ink);
        }),
    }
    pen.line((from.0, floor), (to.0, floor), ink, 1.0);
}

fn layer(pen: &mut Pen, look: &Palette, from: Point, to: Point, share: f64) {
    let y = from.1 + share * (to.1 - from.1);
    pen.line((from.0, y), (to.0, y), look.soft, 2.0);
}

/// Ridden is a bar, on foot are footsteps, too close to call is hatched beneath.
fn draw_plan(pen: &mut Pen, look: &Palette, laps: &LapReport, side: Side, layout: &Layout) {
    let (top, ink) = (layout.strip(side), side.ink(look));
    let x = |at: f64| layout.scale.at(at);
    pen.text(&side.to_string(), (LEFT - 8.0, top + STRIP / 2.0), Type::new(ink, Anchor::End).bold());
    let (start, end) = ((x(0.0), top), (x(laps.length_m()), top + STRIP));
    match side {
        Side::A => pen.fill(start, end, ink),
        Side::B => pen.frame(start, end, ink, 1.5),
    }
    for part in laps.laps[side as usize].plan.iter().filter(|part| part.mode == Mode::Foot) {
        let (from, to) = wide_enough(x(part.from_m), x(part.to_m), LEAST);
        pen.fill((from, top - 1.0), (to, top + STRIP + 1.0), look.paper);
        let count = ((to - from) / 5.0).floor().max(1.0);
        for step in 0..count as usize {
            let at = from + (step as f64 + 0.5) * (to - from) / count;
            let foot = if step % 2 == 0 { 0.3 } else { 0.7 };
            pen.dot((at, top + STRIP * foot), 1.8, ink);
        }
    }
    let Some(settled) = &laps.settled else { return };
    for span in &settled.too_close[side as usize] {
        let (from, to) = wide_enough(x(span.from_m), x(span.to_m), LEAST);
        let mut at = from;
        while at <= to {
            pen.line((at, top + STRIP + 6.0), (at + 3.0, top + STRIP + 1.0), look.care, 1.5);
            at += 3.0;
        }
    }
}

fn wide_enough(from: f64, to: f64, least: f64) -> (f64, f64) {
    let lacking = (least - (to - from)).max(0.0) / 2.0;
    (from - lacking, to + lacking)
}

fn draw_gears(pen: &mut Pen, look: &Palette, laps: &LapReport, layout: &Layout) {
    let wheels = laps.question.setups.each_ref().map(|setup| setup.bike.wheel);
    let developments = laps.laps.iter().zip(wheels).map(|(lap, wheel)| (&lap.gears, wheel));
    let all = developments
        .flat_map(|(gears, wheel)| gears.iter().map(move |used| used.gear.development(wheel).m()));
    let (low, high) =
        all.fold((f64::INFINITY, 0.0), |(low, high), it| (f64::min(low, it), f64::max(high, it)));
    if high == 0.0 {
        return;
    }
    let up = Scale::ratio((low * 0.95, high * 1.05), (layout.floor, layout.gears));
    for (tick, y) in up.developments(&DEVELOPMENTS, 20.0) {
        pen.line((LEFT, y), (layout.scale.at(laps.length_m()), y), look.rule, 1.0);
        pen.text(
            &with_unit(tick, usize::from(tick.fract() > 0.0), units::developments().symbol()),
            (LEFT - 6.0, y),
            Type::new(look.soft, Anchor::End),
        );
    }
    pen.text(
        gears_by(units::developments_by()),
        (LEFT, layout.gears - 8.0),
        Type::new(look.soft, Anchor::Start),
    );
    for side in Side::BOTH {
        let wheel = wheels[side as usize];
        let at = |metre: f64, gear: Gear| (layout.scale.at(metre), up.at(gear.development(wheel).m()));
        let (mut line, mut from, mut last) = (Vec::new(), 0.0, None);
        for point in &laps.laps[side as usize].trace {
            if point.gear != last {
                line.extend([last, point.gear].into_iter().flatten().map(|gear| at(from, gear)));
                if point.gear.is_none() {
                    draw_gear_line(pen, look, side, &std::mem::take(&mut line));
                }
                last = point.gear;
            }
            from = point.at_m;
        }
        line.extend(last.map(|gear| at(from, gear)));
        draw_gear_line(pen, look, side, &line);
    }
}

/// What is drawn from the reserve against its fullest point on the lap: downwards, because that is where it goes.
fn draw_reserve(pen: &mut Pen, look: &Palette, laps: &LapReport, layout: &Layout) {
    let drawn = |lap: &Lap| lap.reserve.iter().flat_map(ReserveUse::drawn_j).map(|it| it / 1e3).collect();
    let all: [Vec<f64>; 2] = laps.laps.each_ref().map(drawn);
    let most = all.iter().flatten().fold(0.0, |most, &it| f64::max(most, it));
    if most <= 0.0 {
        return;
    }
    let down = Scale::even((0.0, most), (layout.floor + GAP, layout.end));
    for tick in down.even_ticks(22.0) {
        let y = down.at(tick);
        pen.line((LEFT, y), (layout.scale.at(laps.length_m()), y), look.rule, 1.0);
        pen.text(
            &with_unit(tick, usize::from(tick.fract() != 0.0), "kJ"),
            (LEFT - 6.0, y),
            Type::new(look.soft, Anchor::End),
        );
    }
    pen.text(told::RESERVE, (LEFT, layout.floor + GAP - 9.0), Type::new(look.soft, Anchor::Start));
    for side in Side::BOTH {
        let at = laps.laps[side as usize].trace.iter().map(|point| layout.scale.at(point.at_m));
        let drawn = all[side as usize].iter().map(|&drawn| down.at(drawn));
        let line: Vec<Point> = at.zip(drawn).collect();
        draw_reserve_line(pen, look, side, &line);
    }
}

/// B in dashes, each a step of the lap long, every other one left out.
fn draw_reserve_line(pen: &mut Pen, look: &Palette, side: Side, line: &[Point]) {
    match side {
        Side::A => pen.path(line, look.a, 1.5),
        Side::B => line.chunks(6).for_each(|dash| pen.path(&dash[..dash.len().min(4)], look.b, 2.0)),
    }
}

fn draw_gear_line(pen: &mut Pen, look: &Palette, side: Side, line: &[Point]) {
    if line.len() < 2 {
        return;
    }
    match side {
        Side::A => pen.path(line, look.a, 1.5),
        Side::B => {
            let lower = |point: Point| (point.0, point.1 + BELOW);
            for leg in line.windows(2) {
                pen.dashes(lower(leg[0]), lower(leg[1]), look.b, 2.0, 3.0);
            }
        }
    }
}

fn spots(report: &LapSection, size: Size) -> Vec<Spot> {
    let Some(laps) = &report.lap.laps else { return Vec::new() };
    let layout = Layout::new(laps, size.0);
    let spot = |at: f64| {
        let x = layout.scale.at(at);
        Spot::around((x, layout.hill), (x, layout.end), 2.0, String::new())
    };
    metres(laps).map(spot).collect()
}

/// The band over a stretch of the lap between two places as typed, whichever comes first; none where they cannot be read.
#[must_use]
pub fn stretch(report: &LapSection, size: Size, ends: &str) -> Option<Spot> {
    let laps = report.lap.laps.as_ref()?;
    let at = |end: &str| Some(decimal_in(end.trim(), "m")?.clamp(0.0, laps.length_m()));
    let (a, b) = ends.split_once(';')?;
    let (a, b) = (at(a)?, at(b)?);
    let (from, to) = (a.min(b), a.max(b));
    let layout = Layout::new(laps, size.0);
    let corner = |at: f64, y: f64| (layout.scale.at(at), y);
    Some(Spot::around(corner(from, layout.hill), corner(to, layout.end), 0.0, told::stretch(from, to)))
}

fn words(report: &LapSection, _: &Spot, index: usize) -> String {
    report.lap.laps.as_ref().map_or_else(String::new, |laps| describe(laps, metre(laps, index)))
}

fn describe(laps: &LapReport, at: f64) -> String {
    let (segment, height) = laps.segment_at(at);
    let obstacle = segment.obstacle.map(|_| told::OBSTACLE);
    let ground = obstacle.unwrap_or_else(|| surface_name(segment.surface));
    let [a, b] = laps.laps.each_ref().map(|lap| riding(lap, at));
    told::place(at, height, segment.gradient.percent(), ground, [&a, &b])
}

fn riding(lap: &Lap, at: f64) -> String {
    let index = lap.trace.partition_point(|point| point.at_m < at - 1e-6);
    let Some(point) = lap.trace.get(index).or(lap.trace.last()) else { return String::new() };
    let speed = speed(point);
    let riding = match (point.gear, point.cadence_rpm) {
        (Some(gear), Some(cadence)) => told::ridden(gear, cadence, &speed),
        _ => told::on_foot(&speed),
    };
    let on_reserve = |it: &ReserveUse| Some((it.trace.get(index)?.power_w, it.drawn_j().nth(index)?));
    match lap.reserve.as_ref().and_then(on_reserve) {
        Some((power_w, drawn_j)) => told::on_reserve(&riding, power_w, drawn_j),
        None => riding,
    }
}

fn speed(point: &TracePoint) -> String {
    Speed::from_km_per_h(point.speed_m_per_s * 3.6).map_or(String::new(), units::speed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::desk::Desk;

    #[test]
    fn a_stretch_is_marked_whichever_end_comes_first_and_no_farther_than_the_lap() {
        let mut desk = Desk::default();
        desk.lap(false);
        let section = desk.report().lap_section();
        let marked = |ends| stretch(&section, (700.0, 500.0), ends);
        let band = marked("420; 310 m").unwrap();
        let spots = spots(&section, (700.0, 500.0));
        let middle = |place: usize| (spots[place].from.0 + spots[place].to.0) / 2.0;
        assert!((band.from.0 - middle(310)).abs() < 1e-9 && (band.to.0 - middle(420)).abs() < 1e-9);
        assert_eq!(band.text, "A stretch from 310\u{a0}m to 420\u{a0}m.");
        assert!((marked("2900;9000").unwrap().to.0 - middle(3000)).abs() < 1e-9);
        assert!(marked("; 50").is_none() && marked("50; far").is_none());
    }
}
