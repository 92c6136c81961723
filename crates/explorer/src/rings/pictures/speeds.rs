//! Speed of every gear over the cadence window, with the chosen cadence and speed marked.

use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::number::plain;
use crate::rings::pictures::gear_looks::gear_bar;
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::words;
use crate::side::Side;
use crate::units;

/// Speed of every gear over the cadence window.
pub(crate) const SPEEDS: Drawing<RingsSection> = Drawing {
    name: "speeds",
    title: words::speeds::TITLE,
    caption: words::speeds::CAPTION,
    height,
    draw,
    says: words::speeds::says,
    spots,
    label,
    words: Spot::own_words,
};

const ROW: f64 = 15.0;
const BAR: f64 = 7.0;
const TOP: f64 = 34.0;
const FOOT: f64 = 26.0;
const LABEL_ROOM: f64 = 58.0;
const GUTTER: f64 = 28.0;
/// From this width on the two set-ups stand side by side.
const WIDE: f64 = 640.0;
const TICKS: [f64; 21] = [
    1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0,
    80.0, 100.0, 150.0,
];

/// One set-up's part of the picture.
struct Panel {
    side: Side,
    left: f64,
    right: f64,
    top: f64,
    scale: Scale,
}

impl Panel {
    fn bottom(&self, setup: &SetupReport) -> f64 {
        self.top + TOP + setup.gears.len() as f64 * ROW
    }

    /// Upper left and lower right of a gear's bar; the highest gear stands on top.
    fn bar(&self, setup: &SetupReport, index: usize) -> (Point, Point) {
        let row = &setup.gears[index];
        let y = self.top + TOP + (setup.gears.len() - 1 - index) as f64 * ROW + (ROW - BAR) / 2.0;
        let x = |speed| self.scale.at(units::speed_value(speed));
        ((x(row.speed_low), y), (x(row.speed_high), y + BAR))
    }
}

fn panels(report: &RingsSection, width: f64) -> [Panel; 2] {
    let side_by_side = width >= WIDE;
    let each = if side_by_side { (width - GUTTER) / 2.0 } else { width };
    let span = report.rings.speed_span();
    let panel = |side: Side, left: f64, top: f64| {
        let (from, right) = (left + LABEL_ROOM, left + each);
        Panel { side, left, right, top, scale: Scale::ratio(span, (from, right - 6.0)) }
    };
    let below = TOP + report.rings.setup(Side::A).gears.len() as f64 * ROW + FOOT + 10.0;
    let (left, top) = if side_by_side { (each + GUTTER, 0.0) } else { (0.0, below) };
    [panel(Side::A, 0.0, 0.0), panel(Side::B, left, top)]
}

fn height(report: &RingsSection, width: f64) -> f64 {
    let bottoms = panels(report, width).map(|panel| panel.bottom(report.rings.setup(panel.side)) + FOOT);
    bottoms[0].max(bottoms[1])
}

fn label(report: &RingsSection) -> String {
    words::speeds::label(&report.rings)
}

fn draw(pen: &mut Pen, look: &Palette, report: &RingsSection, size: Size) {
    for panel in panels(report, size.0) {
        draw_panel(pen, look, report, &panel);
    }
}

fn draw_panel(pen: &mut Pen, look: &Palette, report: &RingsSection, panel: &Panel) {
    let setup = report.rings.setup(panel.side);
    let bottom = panel.bottom(setup);
    let title = format!("{} · {}", panel.side, setup.drivetrain.chainset);
    pen.text(&title, (panel.left, panel.top + 10.0), Type::new(panel.side.ink(look), Anchor::Start).bold());
    draw_axis(pen, look, report, panel, bottom);
    draw_probe(pen, look, report, panel, bottom);
    for (index, row) in setup.gears.iter().enumerate() {
        draw_gear(pen, look, report, panel, index, row);
    }
}

fn draw_axis(pen: &mut Pen, look: &Palette, report: &RingsSection, panel: &Panel, bottom: f64) {
    for tick in panel.scale.ticks(&TICKS, 30.0) {
        let x = panel.scale.at(tick);
        pen.line((x, panel.top + TOP), (x, bottom), look.rule, 1.0);
        pen.text(&plain(tick, 0), (x, bottom + 10.0), Type::new(look.soft, Anchor::Middle));
    }
    pen.line((panel.scale.at(report.rings.speed_span().0), bottom), (panel.right, bottom), look.ink, 1.0);
    pen.text(units::speeds().symbol(), (panel.left, bottom + 10.0), Type::new(look.soft, Anchor::Start));
}

/// The upright line at the chosen speed.
fn draw_probe(pen: &mut Pen, look: &Palette, report: &RingsSection, panel: &Panel, bottom: f64) {
    let (speed, span) = (units::speed_value(report.rings.probe.speed), report.rings.speed_span());
    let words = units::speed(report.rings.probe.speed);
    let top = panel.top + TOP - 8.0;
    if speed < span.0 {
        return pen.text(
            &format!("← {words}"),
            (panel.scale.at(span.0), top),
            Type::new(look.ink, Anchor::Start),
        );
    }
    if speed > span.1 {
        return pen.text(&format!("{words} →"), (panel.right, top), Type::new(look.ink, Anchor::End));
    }
    let x = panel.scale.at(speed);
    pen.line((x, top), (x, bottom), look.ink, 1.5);
    let fits_right = x + 60.0 < panel.right;
    let (anchor, x) = if fits_right { (Anchor::Start, x + 4.0) } else { (Anchor::End, x - 4.0) };
    pen.text(&words, (x, top), Type::new(look.ink, anchor));
}

fn draw_gear(
    pen: &mut Pen,
    look: &Palette,
    report: &RingsSection,
    panel: &Panel,
    index: usize,
    row: &GearLine,
) {
    let (from, to) = panel.bar(report.rings.setup(panel.side), index);
    gear_bar(pen, look, panel.side, row, from, to);
    let notch = panel.scale.at(units::speed_value(row.speed_probe));
    if (from.0..=to.0).contains(&notch) {
        pen.fill((notch - 1.5, from.1 - 3.0), (notch + 1.5, to.1 + 3.0), look.ink);
    }
    let ink = if row.crossed || row.avoid { look.soft } else { look.ink };
    let label = (from.0 - 6.0, (from.1 + to.1) / 2.0);
    let (left, half) = (label.0 - LABEL_ROOM + 8.0, ROW / 2.0);
    pen.fill((left, label.1 - half), (label.0 + 2.0, label.1 + half), look.paper);
    pen.text(&words::gears::label(row), label, Type::new(ink, Anchor::End));
}

fn spots(report: &RingsSection, size: Size) -> Vec<Spot> {
    panels(report, size.0)
        .iter()
        .flat_map(|panel| {
            let setup = report.rings.setup(panel.side);
            (0..setup.gears.len()).rev().map(move |index| {
                let (from, to) = panel.bar(setup, index);
                Spot::around(from, to, 4.0, describe(report, panel.side, &setup.gears[index]))
            })
        })
        .collect()
}

fn describe(report: &RingsSection, side: Side, line: &GearLine) -> String {
    let rings = &report.rings;
    words::speeds::gear(side, line, &words::gears::speeds(rings, line), &units::speed(rings.probe.speed))
}
