//! Step sizes in riding order, over development: A above, B below, on one scale.

use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::{Scale, round_values};
use crate::drawing::spot::Spot;
use crate::number::plain;
use crate::rings::section::RingsSection;
use crate::rings::setup::{RideStep, SetupReport};
use crate::rings::words;
use crate::side::Side;
use crate::units::{self, GearScale, Units};
use gear_math::gears::ShiftKind;
use gear_math::{Circumference, Wheel};

/// Step sizes in riding order.
pub(crate) const STEPS: Drawing<RingsSection> = Drawing {
    name: "steps",
    title: words::steps::PICTURE,
    caption: words::steps::CAPTION,
    height,
    draw,
    says: words::steps::says,
    spots,
    label,
    words: Spot::own_words,
};

const PANEL: f64 = 150.0;
const TOP: f64 = 26.0;
const FOOT: f64 = 24.0;
const LEFT: f64 = 42.0;
const STEP_TICKS: [f64; 9] = [5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 60.0, 80.0, 100.0];
const APART: f64 = 34.0;
const DEVELOPMENT_TICKS: [f64; 21] = [
    0.4, 0.6, 0.8, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 14.0,
    16.0,
];

struct Layout {
    across: Scale,
    wheels: [Circumference; 2],
    highest_step: f64,
    right: f64,
}

impl Layout {
    fn new(report: &RingsSection, width: f64) -> Self {
        let highest = report
            .rings
            .setups
            .iter()
            .flat_map(|setup| &setup.riding)
            .map(|step| step.step.percent())
            .fold(5.0, f64::max);
        let right = width - 6.0;
        Self {
            across: Scale::ratio(report.rings.gear_span(), (LEFT, right)),
            wheels: report.rings.wheels.each_ref().map(Wheel::roll_out),
            highest_step: highest * 1.08,
            right,
        }
    }

    fn floor(side: Side) -> f64 {
        let panels = match side {
            Side::A => 1.0,
            Side::B => 2.0,
        };
        panels * (TOP + PANEL)
    }

    fn up(&self, side: Side) -> Scale {
        let floor = Self::floor(side);
        Scale::even((0.0, self.highest_step), (floor, floor - PANEL))
    }

    fn column(&self, setup: &SetupReport, step: &RideStep) -> (Point, Point) {
        let wheel = self.wheels[setup.side as usize];
        let x = |index: usize| self.across.at(units::gear_value(setup.gears[index].development, wheel));
        ((x(step.from), self.up(setup.side).at(step.step.percent())), (x(step.to), Self::floor(setup.side)))
    }
}

/// None where neither has a step.
fn height(report: &RingsSection, _: f64) -> f64 {
    if report.rings.steps().is_none() { 0.0 } else { 2.0 * (TOP + PANEL) + FOOT }
}

fn label(report: &RingsSection) -> String {
    words::steps::label(&report.rings)
}

fn draw(pen: &mut Pen, look: &Palette, report: &RingsSection, size: Size) {
    let layout = Layout::new(report, size.0);
    for setup in &report.rings.setups {
        draw_panel(pen, look, &layout, setup);
    }
    let y = size.1 - FOOT + 12.0;
    for tick in ticks(&layout.across) {
        pen.text(
            &plain(tick, usize::from(tick.fract() != 0.0)),
            (layout.across.at(tick), y),
            Type::new(look.soft, Anchor::Middle),
        );
    }
    pen.text(units::gear_unit(), (LEFT - 10.0, y), Type::new(look.soft, Anchor::End));
}

fn ticks(across: &Scale) -> Vec<f64> {
    if Units::now().gears == GearScale::Development {
        across.ticks(&DEVELOPMENT_TICKS, APART)
    } else {
        across.ticks(&round_values(), APART)
    }
}

fn draw_panel(pen: &mut Pen, look: &Palette, layout: &Layout, setup: &SetupReport) {
    let (floor, up, ink) = (Layout::floor(setup.side), layout.up(setup.side), setup.side.ink(look));
    let title = format!("{} · {}, {}", setup.side, setup.drivetrain.chainset, words::steps::doubles(setup));
    pen.text(&title, (LEFT, floor - PANEL - 8.0), Type::new(ink, Anchor::Start).bold());
    for tick in up.ticks(&STEP_TICKS, 26.0) {
        pen.line((LEFT, up.at(tick)), (layout.right, up.at(tick)), look.rule, 1.0);
        pen.text(&format!("{tick} %"), (LEFT - 6.0, up.at(tick)), Type::new(look.soft, Anchor::End));
    }
    for step in &setup.riding {
        draw_column(pen, look, setup.side, step, layout.column(setup, step));
    }
    if let Some(ideal) = setup.steps.map(|steps| steps.equal.percent()) {
        pen.dashes((LEFT, up.at(ideal)), (layout.right, up.at(ideal)), look.ink, 1.0, 4.0);
    }
    pen.line((LEFT, floor), (layout.right, floor), look.ink, 1.0);
}

fn draw_column(pen: &mut Pen, look: &Palette, side: Side, step: &RideStep, (from, to): (Point, Point)) {
    let (from, to) = ((from.0 + 0.5, from.1), (to.0 - 0.5, to.1));
    pen.fill(from, to, side.wash(look));
    match side {
        Side::A => pen.fill(from, (to.0, from.1 + 4.0), side.ink(look)),
        Side::B => pen.frame(from, to, side.ink(look), 1.5),
    }
    if step.kind != ShiftKind::Rear && to.1 - from.1 > 20.0 {
        let centre = ((from.0 + to.0) / 2.0, from.1 + 12.0);
        diamond(pen, look, centre, step.kind == ShiftKind::Double);
    }
}

/// Marks a step that moves the front derailleur: full when the rear one moves with it.
fn diamond(pen: &mut Pen, look: &Palette, (x, y): Point, full: bool) {
    let corners = [(x, y - 4.5), (x + 4.5, y), (x, y + 4.5), (x - 4.5, y), (x, y - 4.5)];
    if full { pen.shape(&corners, look.ink) } else { pen.path(&corners, look.ink, 1.0) }
}

fn spots(report: &RingsSection, size: Size) -> Vec<Spot> {
    let layout = Layout::new(report, size.0);
    report
        .rings
        .setups
        .iter()
        .flat_map(|setup| setup.riding.iter().map(move |step| (setup, step)))
        .map(|(setup, step)| {
            let (from, to) = layout.column(setup, step);
            Spot::around(from, to, 1.0, words::steps::step(setup, step))
        })
        .collect()
}
