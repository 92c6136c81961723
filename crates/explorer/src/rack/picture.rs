//! Every bike as one upright of its gears on a shared scale of development, with what the course asks for behind them.

use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Anchor, Pen, Point, Size, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::number::with_unit;
use crate::rack::compared::Compared;
use crate::rack::row::{Row, Whose};
use crate::rack::section::BikesSection;
use crate::rack::words::compared as words;
use crate::units;
use plotters::style::RGBColor;

/// The uprights.
pub(crate) const UPRIGHTS: Drawing<BikesSection> = Drawing {
    name: "uprights",
    title: words::PICTURE,
    caption: words::CAPTION,
    height: |section, _| {
        if section.compared.as_deref().is_some_and(Compared::has_kept) { HEIGHT } else { 0.0 }
    },
    draw,
    says: |section| words::says(section.compared.as_deref()),
    spots,
    label: |section| words::label(section.compared.as_deref()),
    words: Spot::own_words,
};

const HEIGHT: f64 = 420.0;
const TOP: f64 = 30.0;
const FOOT: f64 = 26.0;
const LEFT: f64 = 44.0;
/// Farther apart than this uprights look lost.
const WIDEST: f64 = 70.0;
/// Half the length of a mark on the largest ring, and what each smaller ring takes off, as shares of the room for a bike.
const LONGEST: f64 = 0.4;
const SHORTER: f64 = 0.16;
const TICKS: [f64; 16] = [1.0, 1.4, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0];

struct Layout {
    scale: Scale,
    room: f64,
    right: f64,
}

impl Layout {
    fn of(compared: &Compared, (width, height): Size) -> Self {
        let ends =
            compared.rows.iter().flat_map(|row| [row.lowest.development.m(), row.highest.development.m()]);
        let (low, high) = ends.fold((f64::MAX, 0.0), |(low, high), m| (f64::min(low, m), f64::max(high, m)));
        let room = ((width - LEFT) / compared.rows.len().max(1) as f64).min(WIDEST);
        let scale = Scale::ratio((low / 1.1, high * 1.1), (height - FOOT, TOP));
        Self { scale, room, right: LEFT + room * compared.rows.len() as f64 }
    }

    fn x(&self, place: usize) -> f64 {
        LEFT + self.room * (place as f64 + 0.5)
    }

    /// Both ends of an upright.
    fn upright(&self, place: usize, row: &Row) -> (Point, Point) {
        let at = |m: f64| (self.x(place), self.scale.at(m));
        (at(row.highest.development.m()), at(row.lowest.development.m()))
    }
}

fn draw(pen: &mut Pen, look: &Palette, section: &BikesSection, size: Size) {
    let Some(compared) = section.compared.as_deref() else { return };
    let layout = Layout::of(compared, size);
    draw_needs(pen, look, compared, &layout);
    draw_scale(pen, look, &layout);
    for (place, row) in compared.rows.iter().enumerate() {
        draw_bike(pen, look, row, place, &layout);
    }
}

/// How much of the lap is ridden in each development: the more, the farther the bar reaches across.
fn draw_needs(pen: &mut Pen, look: &Palette, compared: &Compared, layout: &Layout) {
    let most = compared.needs.iter().map(|(_, share)| *share).fold(0.0, f64::max);
    for &(m, share) in compared.needs.iter().filter(|_| most > 0.0) {
        let (y, reach) = (layout.scale.at(m), (layout.right - LEFT) * share / most);
        pen.fill((LEFT, y - 4.0), (LEFT + reach, y + 4.0), look.rule);
    }
}

fn draw_scale(pen: &mut Pen, look: &Palette, layout: &Layout) {
    for (tick, y) in layout.scale.developments(&TICKS, 20.0) {
        pen.line((LEFT - 5.0, y), (LEFT, y), look.soft, 1.0);
        let decimals = usize::from(tick.fract() > 0.0);
        pen.text(
            &with_unit(tick, decimals, units::developments().symbol()),
            (LEFT - 7.0, y),
            Type::new(look.soft, Anchor::End),
        );
    }
    pen.text(&words::developments_in(), (2.0, TOP - 18.0), Type::new(look.soft, Anchor::Start));
}

fn draw_bike(pen: &mut Pen, look: &Palette, row: &Row, place: usize, layout: &Layout) {
    let (from, to) = layout.upright(place, row);
    let ink = ink(look, &row.whose);
    pen.line(from, to, ink, 1.0);
    for &(m, rank) in &row.gears {
        let half = layout.room * (LONGEST - SHORTER * rank.min(2) as f64);
        let y = layout.scale.at(m);
        pen.line((from.0 - half, y), (from.0 + half, y), ink, 2.0);
    }
    // Where marks would touch, every second one stands a line lower.
    let lower = if layout.room < 16.0 && place % 2 == 1 { 13.0 } else { 0.0 };
    pen.text(&row.whose.mark(), (from.0, HEIGHT - FOOT + 8.0 + lower), Type::new(ink, Anchor::Middle));
}

fn ink(look: &Palette, whose: &Whose) -> RGBColor {
    match whose {
        Whose::Bench(side) => side.ink(look),
        Whose::Kept { .. } => look.ink,
    }
}

fn spots(section: &BikesSection, size: Size) -> Vec<Spot> {
    let Some(compared) = section.compared.as_deref() else { return Vec::new() };
    let layout = Layout::of(compared, size);
    let spot = |(place, row): (usize, &Row)| {
        let (from, to) = layout.upright(place, row);
        let half = layout.room * LONGEST;
        Spot::around((from.0 - half, from.1), (to.0 + half, to.1), 2.0, words::upright(row))
    };
    compared.rows.iter().enumerate().map(spot).collect()
}
