//! What moves the end of riding most: one bar for each doubtful input, A above B.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::looks::bar;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::number::trimmed;
use crate::ride::section::RideSection;
use crate::ride::swing::Swing;
use crate::ride::words::pictures::tornado as words;
use crate::side::Side;
use gear_math::rider::Slope;

/// What moves the end of riding most.
pub(crate) const TORNADO: Drawing<RideSection> = Drawing {
    name: "tornado",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: |report| words::says(shown(report).next()),
    spots,
    label,
    words: Spot::own_words,
};

/// The widest swings; the table has them all.
const MOST: usize = 6;
/// Swings that no one would see are left out, points of gradient.
const LEAST: f64 = 0.2;
const LEFT: f64 = 4.0;
const RIGHT: f64 = 30.0;
const TOP: f64 = 24.0;
const ROW: f64 = 46.0;
const BAR: f64 = 8.0;
const STEEPEST: f64 = 45.0;

fn shown(report: &RideSection) -> impl Iterator<Item = &Swing> {
    let seen = |swing: &&Swing| swing.bars.iter().any(|bar| bar.swing_points >= LEAST);
    report.ride.swings.iter().filter(seen).take(MOST)
}

fn percent_of(slope: Option<Slope>) -> f64 {
    slope.map_or(STEEPEST, Slope::percent)
}

fn across(report: &RideSection, width: f64) -> Scale {
    let ends = shown(report)
        .flat_map(|swing| &swing.bars)
        .flat_map(|bar| [percent_of(bar.at_low), percent_of(bar.at_high)]);
    let (low, high) =
        ends.fold((STEEPEST, 0.0), |(low, high), end| (f64::min(low, end), f64::max(high, end)));
    Scale::even((low, high.max(low + 1.0)), (LEFT + 16.0, width - RIGHT))
}

/// Where a bar runs from the low value's end to the high value's.
fn ends(scale: Scale, row: usize, side: Side, swing: &Swing) -> (Point, Point) {
    let y = TOP + row as f64 * ROW + 16.0 + side as usize as f64 * (BAR + 4.0);
    let bar = &swing.bars[side as usize];
    ((scale.at(percent_of(bar.at_low)), y), (scale.at(percent_of(bar.at_high)), y))
}

fn height(report: &RideSection, _: f64) -> f64 {
    match shown(report).count() {
        0 => 0.0,
        count => TOP + count as f64 * ROW + 24.0,
    }
}

fn label(report: &RideSection) -> String {
    words::label(shown(report).next())
}

fn draw(pen: &mut Pen, look: &Palette, report: &RideSection, size: Size) {
    let scale = across(report, size.0);
    let floor = size.1 - 22.0;
    for tick in scale.even_ticks(40.0) {
        let x = scale.at(tick);
        pen.line((x, TOP), (x, floor), look.rule, 1.0);
        pen.text(&format!("{} %", trimmed(tick)), (x, floor + 12.0), Type::new(look.soft, Anchor::Middle));
    }
    for side in &report.ride.sides {
        let x = scale.at(percent_of(side.flip().map(|flip| flip.gradient)));
        pen.line((x, TOP - 4.0), (x, floor), side.side.ink(look), 1.5);
        let anchor = if side.side == Side::A { Anchor::End } else { Anchor::Start };
        pen.text(&format!(" {} ", side.side), (x, TOP - 12.0), Type::new(side.side.ink(look), anchor).bold());
    }
    for (row, swing) in shown(report).enumerate() {
        draw_swing(pen, look, scale, row, swing);
    }
}

fn draw_swing(pen: &mut Pen, look: &Palette, scale: Scale, row: usize, swing: &Swing) {
    let y = TOP + row as f64 * ROW + 6.0;
    let name = words::input(swing);
    let wide = plain_width(&name);
    pen.fill((LEFT, y - 7.0), (LEFT + wide, y + 7.0), look.paper);
    pen.text(&name, (LEFT, y), Type::new(look.ink, Anchor::Start));
    for side in Side::BOTH {
        let (low, high) = ends(scale, row, side, swing);
        let (from, to) = (low.0.min(high.0), low.0.max(high.0));
        bar(pen, look, side, (from, low.1), (to.max(from + 2.0), low.1 + BAR));
        if side == Side::A && to - from > 4.0 {
            let signs = if low.0 < high.0 { ("−", "+") } else { ("+", "−") };
            pen.text(signs.0, (from - 6.0, low.1 + BAR / 2.0), Type::new(look.ink, Anchor::End));
            pen.text(signs.1, (to + 6.0, low.1 + BAR / 2.0), Type::new(look.ink, Anchor::Start));
        }
    }
}

fn spots(report: &RideSection, size: Size) -> Vec<Spot> {
    let scale = across(report, size.0);
    let each = |(row, swing)| {
        Side::BOTH.map(|side| {
            let (low, high) = ends(scale, row, side, swing);
            let (from, to) = (low.0.min(high.0), low.0.max(high.0));
            Spot::around((from, low.1), (to, low.1 + BAR), 3.0, words::bar_spot(side, swing))
        })
    };
    shown(report).enumerate().flat_map(each).collect()
}
