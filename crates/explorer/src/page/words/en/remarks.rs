//! What fields in order lead to.

use crate::number::{percent, shows_nothing, with_unit};
use crate::parts::inputs::BoxText;
use crate::rings::cassettes::{TypedCassette, WhySoMany};
use crate::rings::setup::SetupReport;
use crate::words::counted;
use gear_math::wheel::{MeasuredRollOut, Wheel};

/// How many sprockets there are; of a cassette typed by its name what was taken for it and why.
pub(crate) fn cassette(setup: &SetupReport) -> String {
    let cassette = &setup.drivetrain.cassette;
    let sprockets = counted(cassette.sprockets().len(), "sprocket", "sprockets");
    match setup.typed.name {
        Some((name, why)) => {
            let why = why_so_many(why, &name.to_string(), &setup.side.other().to_string());
            let doubt = if why.is_empty() { "" } else { "; makers differ in the middle" };
            format!("{sprockets}{why}: {cassette}{doubt}")
        }
        None if cassette.sprockets().len() > 1 => {
            format!("{sprockets}, {} to {}", cassette.smallest(), cassette.largest())
        }
        None => sprockets,
    }
}

fn why_so_many(why: WhySoMany, name: &str, other: &str) -> String {
    match why {
        WhySoMany::Said | WhySoMany::NoneSuch => String::new(),
        WhySoMany::OnlyOne => format!(" taken, the only usual {name}"),
        WhySoMany::AsOther => format!(" taken, as {other} has"),
        WhySoMany::BothNames => " taken, the most usual number that A and B can both have".to_owned(),
        WhySoMany::NearestTo(count) => format!(" taken, the nearest to {other}’s {count}"),
        WhySoMany::Usual => " taken, the most usual".to_owned(),
    }
}

/// The line of help, and behind it what lines that are names are tried as.
pub(crate) fn further_cassettes<'t>(help: &str, typed: impl Iterator<Item = &'t TypedCassette>) -> String {
    let tried = typed.filter_map(tried_as);
    std::iter::once(help.to_owned()).chain(tried).collect::<Vec<_>>().join(". ")
}

/// The line of help, or what single rings came to, and whether the link gets long.
pub(crate) fn box_parts(help: &str, read: BoxText) -> String {
    let made = match read.rings {
        0 => help.to_owned(),
        rings => format!(
            "Rings of one crank: {rings} single and {} of them; 44/31 stays a pair; behind “crank 2:” rings go on another crank",
            counted(read.pairs, "pair", "pairs")
        ),
    };
    if read.is_long {
        format!(
            "{made}. With so much in it the link is too long for some messages; the rack’s file takes it whole"
        )
    } else {
        made
    }
}

fn tried_as(typed: &TypedCassette) -> Option<String> {
    let (name, why) = typed.name?;
    let (cassette, count) = (&typed.cassette, typed.cassette.sprockets().len());
    let why = why_so_many(why, &name.to_string(), "A");
    Some(format!("{name} is tried as {cassette}, {count} sprockets{why}"))
}

/// What a tyre's size comes to.
pub(crate) fn tyre_size(wheel: &Wheel) -> String {
    let (tyre, estimate) = (&wheel.tyre, wheel.estimate());
    let about = with_unit(estimate.circumference.mm(), 0, "mm");
    let off = with_unit(estimate.give_or_take_mm(), 0, "mm");
    format!("{tyre}: circumference about {about}, ±{off}")
}

/// A measured roll-out against the estimate.
pub(crate) fn roll_out(measured: &MeasuredRollOut) -> String {
    let deviation = measured.deviation.percent();
    if shows_nothing(deviation, 1) {
        return "Used everywhere; the same as the estimate".to_owned();
    }
    let by = percent(deviation.abs(), 1);
    let doubt = if measured.is_likely { "" } else { "; more than a tyre explains, so check both" };
    if deviation < 0.0 {
        format!("Used everywhere; {by} shorter than the estimate{doubt}")
    } else {
        format!("Used everywhere; {by} longer than the estimate{doubt}")
    }
}
