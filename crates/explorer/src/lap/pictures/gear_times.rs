//! Time in every gear and on foot: A's bars to the left, B's to the right, on one axis of development.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::looks::bar;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::lap::pictures::profile::{draw_waiting, waiting, waiting_height};
use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::lap::words::pictures::{gear_times as words, none_yet};
use crate::side::Side;
use crate::units;
use gear_math::order::ascending;

/// How long in each gear.
pub(crate) const GEAR_TIMES: Drawing<LapSection> = Drawing {
    name: "gear-times",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says,
    spots,
    label,
    words: Spot::own_words,
};

const TOP: f64 = 26.0;
const ROW: f64 = 16.0;
const BAR: f64 = 10.0;
/// Half the room for a development between the two sides.
const AXIS: f64 = 18.0;
/// Room for the name of a gear.
const NAME: f64 = 54.0;
/// From a bar to its time.
const BESIDE: f64 = 5.0;
/// Gears in use for less than this share of the lap are left out; estimate: a bar so short is not seen.
const TOUCHED: f64 = 0.01;
/// What is said of them stands in lines as high.
const LINE: f64 = 16.0;

/// Time and way in one gear, or on foot.
struct Share {
    side: Side,
    what: String,
    /// The gear's development as it stands on the axis; none on foot.
    development: Option<String>,
    time_s: f64,
    way_m: f64,
}

/// What one side has in a row.
type Row = [Option<Share>; 2];

/// The gears of one side from the highest, with their developments in metres, and how many are left out for how long.
fn gears(laps: &LapReport, side: Side) -> (Vec<(f64, Share)>, (usize, f64)) {
    let (lap, wheel) = (&laps.laps[side as usize], laps.question.setups[side as usize].bike.wheel);
    let (mut kept, mut touched) = (Vec::new(), (0, 0.0));
    for used in &lap.gears {
        if used.time_s < TOUCHED * lap.time_s {
            touched = (touched.0 + 1, touched.1 + used.time_s);
            continue;
        }
        let development = used.gear.development(wheel).m();
        let share = Share {
            side,
            what: laps.gear_name(side, used.gear),
            development: Some(words::development(development)),
            time_s: used.time_s,
            way_m: used.distance_m,
        };
        kept.push((development, share));
    }
    (kept, touched)
}

fn on_foot(laps: &LapReport, side: Side) -> Option<Share> {
    let lap = &laps.laps[side as usize];
    let (time_s, way_m) = (lap.on_foot_s(), lap.on_foot_m());
    let share = Share { side, what: words::ON_FOOT.to_owned(), development: None, time_s, way_m };
    (way_m > 0.0).then_some(share)
}

/// From the highest gear down, gears of A and B that come out alike on the axis in one row; then what is gone on foot.
fn rows(laps: &LapReport) -> Vec<Row> {
    let mut all: Vec<(f64, Share)> = Side::BOTH.into_iter().flat_map(|side| gears(laps, side).0).collect();
    ascending(&mut all, |(development, _)| -development);
    let mut rows: Vec<Row> = Vec::new();
    for (_, share) in all {
        let place = share.side as usize;
        let joins = |row: &&mut Row| {
            row[place].is_none() && row.iter().flatten().all(|other| other.development == share.development)
        };
        match rows.last_mut().filter(joins) {
            Some(row) => row[place] = Some(share),
            None => {
                let mut row = [None, None];
                row[place] = Some(share);
                rows.push(row);
            }
        }
    }
    let feet = Side::BOTH.map(|side| on_foot(laps, side));
    rows.extend(feet.iter().any(Option::is_some).then_some(feet));
    rows
}

/// The middle of the axis, and how far a time reaches from the end of the names on either side.
fn across(rows: &[Row], width: f64) -> (f64, Scale) {
    let longest = rows.iter().flatten().flatten().map(|share| share.time_s).fold(1.0, f64::max);
    let times = rows.iter().flatten().flatten().map(|share| plain_width(&words::time(share.time_s)));
    let beside = AXIS + NAME + BESIDE + times.fold(0.0, f64::max);
    (width / 2.0, Scale::even((0.0, longest), (0.0, (width / 2.0 - beside).max(12.0))))
}

/// Corners of a bar, and where its name and its time stand.
struct Place {
    from: Point,
    to: Point,
    name: Point,
    time: Point,
}

fn place(share: &Share, row: usize, (middle, scale): (f64, Scale)) -> Place {
    let (top, long) = (TOP + row as f64 * ROW, scale.at(share.time_s).max(1.5));
    let outward = match share.side {
        Side::A => -1.0,
        Side::B => 1.0,
    };
    let x = |distance: f64| middle + outward * (AXIS + distance);
    let (near, far, centre) = (x(NAME), x(NAME + long), top + BAR / 2.0);
    Place {
        from: (near.min(far), top),
        to: (near.max(far), top + BAR),
        name: (x(4.0), centre),
        time: (x(NAME + long + BESIDE), centre),
    }
}

/// What is said of the gears left out, broken where there is too little room.
fn left_out(laps: &LapReport, width: f64) -> Vec<String> {
    let said: Vec<String> = Side::BOTH
        .into_iter()
        .map(|side| (side, gears(laps, side).1))
        .filter(|(_, (count, _))| *count > 0)
        .map(|(side, (count, time_s))| words::left_out(side, count, time_s))
        .collect();
    let one = said.join("; ");
    if plain_width(&one) <= width { vec![one] } else { said }
}

fn height(report: &LapSection, width: f64) -> f64 {
    let Some(laps) = &report.lap.laps else { return waiting_height(report, 200.0) };
    let left_out = left_out(laps, width).iter().filter(|line| !line.is_empty()).count();
    TOP + rows(laps).len() as f64 * ROW + left_out as f64 * LINE + 4.0
}

fn label(report: &LapSection) -> String {
    let Some(laps) = &report.lap.laps else { return none_yet(words::TITLE, waiting(report)) };
    words::label(&laps.laps)
}

fn says(report: &LapSection) -> String {
    report.lap.laps.as_ref().map_or_else(|| waiting(report).to_owned(), |laps| words::says(&laps.laps))
}

fn draw(pen: &mut Pen, look: &Palette, report: &LapSection, size: Size) {
    let Some(laps) = &report.lap.laps else { return draw_waiting(pen, look, report) };
    let rows = rows(laps);
    let axis = across(&rows, size.0);
    for (side, x, anchor) in
        [(Side::A, axis.0 - AXIS - 4.0, Anchor::End), (Side::B, axis.0 + AXIS + 4.0, Anchor::Start)]
    {
        pen.text(&side.to_string(), (x, 9.0), Type::new(side.ink(look), anchor).bold());
    }
    pen.text(units::developments().symbol(), (axis.0, 9.0), Type::new(look.soft, Anchor::Middle));
    for (index, row) in rows.iter().enumerate() {
        let middle = TOP + index as f64 * ROW + BAR / 2.0;
        if let Some(development) = row.iter().flatten().find_map(|share| share.development.as_deref()) {
            pen.text(development, (axis.0, middle), Type::new(look.soft, Anchor::Middle));
        }
        for share in row.iter().flatten() {
            draw_share(pen, look, share, &place(share, index, axis));
        }
    }
    for (index, line) in left_out(laps, size.0).iter().enumerate() {
        let y = TOP + rows.len() as f64 * ROW + (index as f64 + 0.5) * LINE;
        pen.text(line, (0.0, y), Type::new(look.soft, Anchor::Start));
    }
}

fn draw_share(pen: &mut Pen, look: &Palette, share: &Share, at: &Place) {
    let anchor = match share.side {
        Side::A => Anchor::End,
        Side::B => Anchor::Start,
    };
    bar(pen, look, share.side, at.from, at.to);
    pen.text(&share.what, at.name, Type::new(look.ink, anchor));
    pen.text(&words::time(share.time_s), at.time, Type::new(look.soft, anchor));
}

/// A's bars from the top, then B's.
fn spots(report: &LapSection, size: Size) -> Vec<Spot> {
    let Some(laps) = &report.lap.laps else { return Vec::new() };
    let rows = rows(laps);
    let axis = across(&rows, size.0);
    let of = |side: Side| {
        let lap_s = laps.laps[side as usize].time_s;
        let shares =
            rows.iter().enumerate().filter_map(move |(row, it)| Some((row, it[side as usize].as_ref()?)));
        shares.map(move |(row, share)| {
            let Place { from, to, .. } = place(share, row, axis);
            Spot::around(from, to, 2.0, words::spot(side, &share.what, share.time_s, share.way_m, lap_s))
        })
    };
    of(Side::A).chain(of(Side::B)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::desk::Desk;

    #[test]
    fn the_bars_and_what_is_left_out_make_up_the_lap() {
        let mut desk = Desk::default();
        desk.lap(true);
        let report = desk.report();
        let laps = report.lap.laps.as_ref().unwrap();
        for side in Side::BOTH {
            let shown: f64 =
                rows(laps).iter().filter_map(|row| row[side as usize].as_ref()).map(|it| it.time_s).sum();
            let (count, touched_s) = gears(laps, side).1;
            let lap = &laps.laps[side as usize];
            assert!(
                (shown + touched_s - lap.time_s).abs() < 0.1,
                "{shown} and {touched_s} of {}",
                lap.time_s
            );
            assert!(lap.on_foot_s() > 10.0 && touched_s <= TOUCHED * lap.time_s * count as f64);
        }
    }

    /// Down the axis no development is larger than one above it, and each stands for both sides of its row.
    #[test]
    fn the_axis_falls_and_holds_for_both() {
        let mut desk = Desk::default();
        desk.lap(true);
        let report = desk.report();
        let rows = rows(report.lap.laps.as_ref().unwrap());
        let on_axis = |row: &Row| row.iter().flatten().find_map(|it| it.development.clone());
        let read: Vec<f64> = rows.iter().filter_map(on_axis).map(|it| it.parse().unwrap()).collect();
        assert!(read.len() > 5 && read.windows(2).all(|pair| pair[0] >= pair[1]), "{read:?}");
        for row in &rows {
            if let [Some(a), Some(b)] = row {
                assert_eq!(a.development, b.development);
            }
        }
        assert!(rows.iter().filter(|row| row.iter().all(Option::is_some)).count() > 1);
    }

    #[test]
    fn crossed_gears_stand_in_brackets() {
        let mut desk = Desk::default();
        desk.edit(&[("rings-a".into(), "46/30".into()), ("cassette-a".into(), "11-13-15-17-19".into())]);
        desk.lap(false);
        let report = desk.report();
        let laps = report.lap.laps.as_ref().unwrap();
        let in_brackets = gears(laps, Side::A)
            .0
            .iter()
            .filter(|(_, it)| it.what.starts_with('('))
            .map(|(_, it)| it.time_s)
            .sum::<f64>();
        let left_out_s = gears(laps, Side::A).1.1;
        let crossed_s = laps.crossed_s(Side::A);
        assert!(in_brackets > 0.0 && in_brackets <= crossed_s + 1e-9, "{in_brackets} of {crossed_s}");
        assert!(
            crossed_s - in_brackets <= left_out_s + 1e-9,
            "{crossed_s} less {in_brackets}, {left_out_s} left out"
        );
    }
}
