//! What was ridden of the box: time behind the best against lowest gear, with what does not fit and what could be bought.

use crate::drawing::cloud::{Axes, Beside, Cloud, HEIGHT, Marked};
use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Pen, Size};
use crate::drawing::spot::Spot;
use crate::lap::words::pictures::found as axes;
use crate::parts::found::BoxFound;
use crate::parts::section::BoxSection;
use crate::parts::words::picture as words;

/// What was ridden of the box.
pub(crate) const RIDDEN: Drawing<BoxSection> = Drawing {
    name: "box-laps",
    title: words::TITLE,
    caption: words::CAPTION,
    height: |section, _| if found(section).is_some() { HEIGHT } else { 0.0 },
    draw,
    says: |section| found(section).map_or_else(String::new, words::says),
    spots,
    label: |section| found(section).map_or_else(String::new, words::label),
    words: Spot::own_words,
};

fn found(section: &BoxSection) -> Option<&BoxFound> {
    section.found.as_deref().filter(|found| !found.order.is_empty())
}

fn cloud(found: &BoxFound) -> Cloud {
    let marked = |place: usize| Marked {
        place,
        sides: found.sides_at(place).collect(),
        name: words::name(found, place),
        says: words::spot(found, place),
    };
    let best_s = found.order[0].parts.lap.time_s;
    let bought = found.offers.iter().flatten().take(1).map(|offer| Beside {
        lowest_m: offer.lowest_m,
        behind_s: Some(offer.time_s - best_s),
        name: words::BOUGHT,
        says: words::bought(offer),
    });
    let not_fitting = found.outlined().into_iter().map(|(lowest_m, drivetrain, why)| Beside {
        lowest_m,
        behind_s: None,
        name: "",
        says: words::not_fitting(&drivetrain, &why),
    });
    Cloud {
        points: (0..found.order.len())
            .map(|place| (found.order[place].lowest_m, found.behind_s(place)))
            .collect(),
        best_s,
        front: found.front.clone(),
        marked: found.shown().into_iter().map(marked).collect(),
        beside: bought.chain(not_fitting).collect(),
        axes: Axes { up: axes::UP, across: axes::across(), tick: axes::tick },
    }
}

fn draw(pen: &mut Pen, look: &Palette, section: &BoxSection, size: Size) {
    if let Some(found) = found(section) {
        cloud(found).draw(pen, look, size);
    }
}

fn spots(section: &BoxSection, size: Size) -> Vec<Spot> {
    found(section).map_or_else(Vec::new, |found| cloud(found).spots(size))
}
