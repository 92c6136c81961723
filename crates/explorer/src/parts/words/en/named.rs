//! What parts are called.

use crate::lap::words::found::set_up;
use crate::words::counted;
use gear_math::Derailleur;
use gear_math::gears::{Sprocket, TotalCapacity};
use gear_math::parts::{Combined, Lack, PartsBox, RearDerailleur};

/// Rings, cassette and, where the box has several, the derailleur.
pub(crate) fn combination(it: &Combined, parts: &PartsBox) -> String {
    let gears = set_up(&it.fit.drivetrain);
    match it.combination.derailleur {
        Some(place) if parts.derailleurs.len() > 1 => on_derailleur(&gears, &parts.derailleurs[place]),
        _ => gears,
    }
}

/// Gears with the rear derailleur that shifts them.
pub(crate) fn on_derailleur(gears: &str, derailleur: &RearDerailleur) -> String {
    let Derailleur { total_capacity, largest_sprocket, .. } = derailleur.figures;
    if (total_capacity, largest_sprocket) == (None, None) {
        format!("{gears}, on the derailleur without makers’ figures, judged by geometry alone")
    } else {
        format!("{gears}, on the {} derailleur", rear(derailleur))
    }
}

/// A rear derailleur by total capacity and largest sprocket: “39/36”.
pub(crate) fn rear(it: &RearDerailleur) -> String {
    let shown = |figure: Option<u16>| figure.map_or_else(|| "?".to_owned(), |teeth| teeth.to_string());
    let capacity = it.figures.total_capacity.map(TotalCapacity::teeth);
    format!("{}/{}", shown(capacity), shown(it.figures.largest_sprocket.map(Sprocket::teeth)))
}

/// The chain that goes on: of which it is, or that it is new.
pub(crate) fn chain(it: &Combined, parts: &PartsBox) -> String {
    let links = it.fit.links.count();
    match it.fit.chain.map(|place| parts.chains[place].count()) {
        Some(whole) if whole == links => counted(usize::from(links), "link", "links"),
        Some(whole) => format!("{links} of {whole}\u{a0}links"),
        None => format!("new, {links}\u{a0}links"),
    }
}

/// What keeps combinations from going together.
pub(crate) const fn lack(lack: Lack) -> &'static str {
    match lack {
        Lack::Frame => "a ring that the frame does not clear",
        Lack::SprocketCount => "another number of sprockets",
        Lack::Rings => "rings that the front derailleur does not shift",
        Lack::LargestSprocket => "the largest sprocket",
        Lack::SmallestSprocket => "the smallest sprocket",
        Lack::Cage => "the cage",
        Lack::Wheels => "wheels that would touch",
    }
}
