//! English.

use crate::number::{LONG_S, clock, duration, in_minutes, plain};
use crate::units::{self, GearScale};
use gear_math::LIKELY_SHARE;
use gear_math::course::Precision;

/// Words with their first letter in capital, if it is a plain one: those of all alphabets would take a table of 12 kB.
#[must_use]
pub(crate) fn capital(words: &str) -> String {
    with_first(words, str::to_ascii_uppercase)
}

/// Words with their first letter small, as they stand within a sentence.
#[must_use]
pub(crate) fn small(words: &str) -> String {
    with_first(words, str::to_ascii_lowercase)
}

fn with_first(words: &str, changed: fn(&str) -> String) -> String {
    words.split_at_checked(1).map_or_else(|| words.to_owned(), |(first, rest)| changed(first) + rest)
}

/// A span of time, both ends in the unit that the longer one asks for: “148 to 174 s”, “2:28 to 3:14 min”.
#[must_use]
pub(crate) fn span_of_time(low_s: f64, high_s: f64, decimals: usize) -> String {
    let high = duration(high_s, decimals);
    let low = if high_s < LONG_S { plain(low_s, decimals) } else { in_minutes(low_s) };
    format!("{low} to {high}")
}

/// A lap time, with a word where it is told in tens of seconds: “about 21:40”.
#[must_use]
pub(crate) fn about_clock(time_s: f64, precision: Precision) -> String {
    let about = if precision == Precision::TenSeconds { "about " } else { "" };
    format!("{about}{}", clock(time_s, precision))
}

/// What “likely” means on this page: “about 3 in 4”.
#[must_use]
pub(crate) fn likely_share() -> String {
    format!("about {} in 4", plain(4.0 * LIKELY_SHARE, 0))
}

/// A count and its noun, “1 gear” or “3 gears”.
#[must_use]
pub(crate) fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count}\u{a0}{}", if count == 1 { one } else { many })
}

/// Items in a sentence: “a”, “a and b”, “a, b and c”.
#[must_use]
pub(crate) fn listed<T: ToString>(items: &[T]) -> String {
    let words: Vec<String> = items.iter().map(ToString::to_string).collect();
    match words.as_slice() {
        [] => String::new(),
        [one] => one.clone(),
        [front @ .., last] => format!("{} and {last}", front.join(", ")),
    }
}

/// What gears are told by.
#[must_use]
pub(crate) const fn gears_by(scale: GearScale) -> &'static str {
    match scale {
        GearScale::Development => "development",
        GearScale::Inches | GearScale::NominalInches => "gear inches",
        GearScale::Ratio => "ratio",
    }
}

/// What ways are counted in.
#[must_use]
pub(crate) fn ways_in() -> &'static str {
    if units::distances().is_other() { "feet" } else { "metres" }
}

/// What developments are told by where no wheel is at hand, with their unit where that says nothing of it.
#[must_use]
pub(crate) fn developments_in() -> String {
    match units::developments_by() {
        GearScale::Development => format!("development, {}", units::developments().symbol()),
        scale => gears_by(scale).to_owned(),
    }
}

/// What holds for both set-ups, said once, or for each its own.
pub(crate) fn alike_or_each(of_a: &str, of_b: &str) -> String {
    if of_a == of_b { of_a.to_owned() } else { format!("{of_a} with A, {of_b} with B") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_span_of_time_has_one_unit() {
        assert_eq!(span_of_time(28.4, 35.6, 0), "28 to 36\u{a0}s");
        assert_eq!(span_of_time(8.24, 12.0, 1), "8.2 to 12.0\u{a0}s");
        assert_eq!(span_of_time(148.0, 179.4, 0), "148 to 179\u{a0}s");
        assert_eq!(span_of_time(148.0, 180.0, 0), "2:28 to 3:00\u{a0}min");
        assert_eq!(span_of_time(9.6, 253.0, 1), "0:10 to 4:13\u{a0}min");
        assert_eq!(span_of_time(179.9, 239.7, 0), "3:00 to 4:00\u{a0}min");
    }

    #[test]
    fn words_begin_as_their_place_asks_for() {
        assert_eq!(
            [capital("rear stop"), small("Rear stop"), capital("é"), small("")],
            ["Rear stop", "rear stop", "é", ""]
        );
    }

    #[test]
    fn items_are_listed_and_a_rough_time_is_called_so() {
        assert_eq!(listed(&["34×11", "34×12", "34×13"]), "34×11, 34×12 and 34×13");
        assert_eq!(about_clock(1296.0, Precision::TenSeconds), "about 21:40");
    }
}
