//! All bikes side by side.

use crate::chain::words::verdict::SHOULD_FIT;
use crate::number::{plain, signed_seconds_in};
use crate::rack::behind::Behind;
use crate::rack::column::Column;
use crate::rack::compared::Compared;
use crate::rack::row::{EndGear, Row, Whose};
use crate::units;
use crate::words::{capital, gears_by, listed};
use gear_math::chain::CageOutcome;
use gear_math::course::Precision;
use gear_math::rider::Reason;

/// Its name among the sections.
pub(crate) const NAME: &str = "All bikes";
/// The question.
pub(crate) const TITLE: &str = "Which of all the bikes?";
/// The button that saves the table.
pub(crate) const SAVE: &str = "Save the table as CSV";
/// The table.
pub(crate) const TABLE: &str = "A, B and every bike of the rack";
/// How the table is read.
pub(crate) const REMARK: &str = "Every figure leads to its section with that bike as A. A head orders by its column, pressed again the other way round.";
/// Where nothing is known.
pub(crate) const NONE: &str = "–";
/// On a bike that no other beats.
pub(crate) const UNBEATEN: &str = "unbeaten";
/// Before the comparison is worked out.
pub(crate) const NOT_YET: &str = "The bikes are compared once this section is in sight.";
/// What the picture shows.
pub(crate) const PICTURE: &str = "Every bike’s gears on one scale";
/// How it is read.
pub(crate) const CAPTION: &str = "One upright for each bike, in the order of the table, under its letter or its number on the rack; a long mark is a gear on the largest ring, shorter ones are on smaller rings. Behind them, in grey, how much of A’s lap is ridden in each development.";
/// The rail’s unit.
pub(crate) use crate::words::developments_in;

/// More names than this are not read in a sentence.
const MOST_NAMED: usize = 4;

/// What a column is headed by.
pub(crate) const fn head(column: Column) -> &'static str {
    match column {
        Column::Bike => "Bike",
        Column::Lowest => "Lowest gear",
        Column::Highest => "Highest gear",
        Column::Mean => "Mean step",
        Column::Largest => "Largest step",
        Column::Useful => "Useful gears",
        Column::Links => "Cage and links",
        Column::Ends => "Riding ends",
        Column::Lap => "Lap",
        Column::Pressure => "Pressures",
    }
}

/// Which bike it is.
pub(crate) fn bike(whose: &Whose) -> String {
    match whose {
        Whose::Bench(side) => side.to_string(),
        Whose::Kept { name, place } => format!("{}. {name}", place + 1),
    }
}

/// The same within a sentence.
fn named(row: &Row) -> String {
    match &row.whose {
        Whose::Bench(side) => side.to_string(),
        Whose::Kept { name, .. } => format!("“{name}”"),
    }
}

/// A gear at the end of the range.
pub(crate) fn end_gear(end: &EndGear) -> String {
    format!(
        "{}, {}, {}",
        units::speed(end.speed),
        end.gear,
        units::developments().print(end.development.m(), 2)
    )
}

/// Whether the cage takes it, and the chain.
pub(crate) fn cage(row: &Row) -> String {
    let verdict = match row.cage {
        CageOutcome::Fits => "fits",
        CageOutcome::FitsOnPaper => SHOULD_FIT,
        CageOutcome::FitsAvoidingGears => "fits without some gears",
        CageOutcome::OtherChain { .. } => "needs another chain",
        CageOutcome::NotKnown(_) => "not known to fit",
        CageOutcome::DoesNotFit(_) => "does not fit",
    };
    row.links.map_or_else(|| verdict.to_owned(), |links| format!("{verdict}, {links} links"))
}

/// Where riding ends, and why.
pub(crate) fn ends(row: &Row) -> String {
    let Some((slope, reason)) = row.ends else { return "nowhere".to_owned() };
    let why = match reason {
        Reason::Gear => "no gear low enough",
        Reason::Force => "legs",
        Reason::Grip => "grip",
        Reason::Balance => "balance",
        Reason::Energy => "running wins",
    };
    format!("{} %, {why}", plain(slope.percent(), 0))
}

/// The lap against the best, with its likely edges.
pub(crate) fn lap(compared: &Compared, row: &Row, best: Option<&Row>) -> String {
    let (Some(time_s), Some(behind)) = (row.lap_s, best.and_then(|best| compared.behind(row, best))) else {
        return if compared.kept() == 0 { NONE } else { "…" }.to_owned();
    };
    let clock = crate::number::clock(time_s, Precision::Second);
    if behind.time.time_s == 0.0 {
        return format!("{clock}, the best");
    }
    format!("{clock}, {}", lost(&behind))
}

fn lost(behind: &Behind) -> String {
    let Behind { time, is_banded, .. } = behind;
    let [low, best, high] =
        [time.low_s, time.time_s, time.high_s].map(|s| signed_seconds_in(s, time.precision()));
    if *is_banded { format!("{best} s ({low} to {high})") } else { format!("{best} s") }
}

/// Pressures to start from.
pub(crate) fn pressures(row: &Row) -> String {
    row.pressures.map_or_else(
        || NONE.to_owned(),
        |[front, rear]| {
            let unit = units::pressures();
            format!("{} / {}", unit.number(front.bar(), 2), unit.print(rear.bar(), 2))
        },
    )
}

/// The answer in a sentence or two.
pub(crate) fn answer(compared: &Compared) -> String {
    if compared.kept() == 0 {
        return "Nothing is on the rack: keep a bike under a name, with the set-ups, and it is compared here with A and B.".to_owned();
    }
    let unbeaten: Vec<String> = compared.bikes().filter(|row| compared.is_unbeaten(row)).map(named).collect();
    let unbeaten = match unbeaten.len() {
        0..=MOST_NAMED => listed(&unbeaten),
        count => format!("{count} of them, marked in the table"),
    };
    let unbeaten =
        format!("In lowest gear, highest gear, largest step and lap together nothing beats {unbeaten}.");
    format!("{}{unbeaten}", quickest(compared))
}

fn quickest(compared: &Compared) -> String {
    if compared.is_even {
        return "Laps are compared as riders ride them, not at a steady power. ".to_owned();
    }
    let ridden = compared.rows.iter().filter(|row| row.lap_s.is_some()).count();
    let Some(best) = compared.best().filter(|_| ridden == compared.rows.len()) else {
        return format!("{ridden} of {} laps are ridden. ", compared.rows.len());
    };
    let is_level = |row: &&Row| {
        row.rides != best.rides && compared.behind(row, best).is_some_and(|behind| behind.is_open)
    };
    let level: Vec<String> = compared.bikes().filter(is_level).map(named).collect();
    let best = named(best);
    if level.is_empty() {
        return format!("Round the course “{}”, {best} is ahead by the best guess. ", compared.course);
    }
    format!(
        "Round the course “{}”, {best} is ahead by the best guess, but {} may be as quick. ",
        compared.course,
        listed(&level)
    )
}

/// How it is worked out.
pub(crate) fn working() -> [String; 3] {
    [
        "Each bike is worked out by itself for the rider, the bank’s ground and the course that stand on the bench, with its own rings, cassette, derailleur, wheel, chain and mass; what one of them does not know is usual, as on the bench.".to_owned(),
        format!(
            "Its lap is planned as riders ride. How sure the time behind the best is comes from {} draws in which everything doubtful is moved at once, the same for every bike (estimate). Between A and B it is what the lap’s own section says, which takes more.",
            Compared::DRAWS
        ),
        "A bike is unbeaten where no other is at least as good in lowest gear, highest gear, largest step and lap, and better in one.".to_owned(),
    ]
}

/// One bike of the picture.
pub(crate) fn upright(row: &Row) -> String {
    let [low, high] = [row.lowest, row.highest].map(|end| end_gear(&end));
    format!("{}: from {low}, to {high}", bike(&row.whose))
}

/// The picture in a sentence.
pub(crate) fn label(compared: Option<&Compared>) -> String {
    let Some(compared) = compared else { return NOT_YET.to_owned() };
    let range = |row: &Row| {
        let [low, high] =
            [row.lowest, row.highest].map(|end| units::developments().print(end.development.m(), 2));
        format!("{} {low} to {high}", bike(&row.whose))
    };
    let by = capital(gears_by(units::developments_by()));
    format!("{by} of every bike: {}.", compared.rows.iter().map(range).collect::<Vec<_>>().join("; "))
}

/// Which bikes reach farthest down and up.
pub(crate) fn says(compared: Option<&Compared>) -> String {
    let rows = compared.map_or(&[][..], |compared| &compared.rows);
    let development = |end: &EndGear| end.development.m();
    let low = rows.iter().min_by(|a, b| development(&a.lowest).total_cmp(&development(&b.lowest)));
    let high = rows.iter().max_by(|a, b| development(&a.highest).total_cmp(&development(&b.highest)));
    let Some((low, high)) = low.zip(high) else { return String::new() };
    format!(
        "{} has the lowest gear, {}; {} the highest, {}.",
        named(low),
        units::developments().print(development(&low.lowest), 1),
        named(high),
        units::developments().print(development(&high.highest), 1)
    )
}
