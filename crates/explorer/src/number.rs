//! Numbers as the page prints them.

use gear_math::course::Precision;
use gear_math::{Cadence, LIKELY_SHARE};

/// `value` with `decimals` places, a true minus sign, and no “−0”.
#[must_use]
pub(crate) fn plain(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.bytes().all(|byte| matches!(byte, b'0' | b'.')) => digits.to_owned(),
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

/// The same with a plus sign in front of what is above zero.
#[must_use]
pub(crate) fn signed(value: f64, decimals: usize) -> String {
    let text = plain(value, decimals);
    if text.starts_with('−') || text.bytes().all(|byte| matches!(byte, b'0' | b'.')) {
        text
    } else {
        format!("+{text}")
    }
}

/// A number and its unit, kept on one line.
#[must_use]
pub(crate) fn with_unit(value: f64, decimals: usize, unit: &str) -> String {
    format!("{}\u{a0}{unit}", plain(value, decimals))
}

/// A length, to a tenth where there is one: a tape shows half millimetres at best.
#[must_use]
pub(crate) fn mm(mm: f64) -> String {
    with_unit(mm, usize::from((mm - mm.round()).abs() >= 0.05), "mm")
}

/// Words with their first letter in capital, if it is a plain one: those of all alphabets would take a table of 12 kB.
#[must_use]
pub(crate) fn capital(words: &str) -> String {
    let mut words = words.to_owned();
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    words
}

/// A number with as many places as it needs, at most three.
#[must_use]
pub(crate) fn trimmed(value: f64) -> String {
    let text = plain(value, 3);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A cadence as it was typed.
#[must_use]
pub(crate) fn rpm(cadence: Cadence) -> String {
    format!("{}\u{a0}rpm", trimmed(cadence.rpm()))
}

/// A percentage.
#[must_use]
pub(crate) fn percent(value: f64, decimals: usize) -> String {
    with_unit(value, decimals, "%")
}

/// From this long on a time is told in minutes, s.
const LONG_S: f64 = 180.0;

/// Seconds, or minutes and seconds when there are many.
#[must_use]
pub(crate) fn duration(time_s: f64, decimals: usize) -> String {
    if time_s < LONG_S { with_unit(time_s, decimals, "s") } else { in_minutes(time_s) + "\u{a0}min" }
}

/// A time as its length asks for: tenths below ten seconds, minutes when there are many.
#[must_use]
pub(crate) fn brief(time_s: f64) -> String {
    duration(time_s, usize::from(time_s < 9.95))
}

/// A span of time, both ends in the unit that the longer one asks for: “148 to 174 s”, “2:28 to 3:14 min”.
#[must_use]
pub(crate) fn span_of_time(low_s: f64, high_s: f64, decimals: usize) -> String {
    let high = duration(high_s, decimals);
    let low = if high_s < LONG_S { plain(low_s, decimals) } else { in_minutes(low_s) };
    format!("{low} to {high}")
}

/// A lap time as on a watch, as finely as its band allows: “6:12.3”, “10:37”, “21:40”.
#[must_use]
pub(crate) fn clock(time_s: f64, precision: Precision) -> String {
    let step = (10.0 * precision.step_s()).round();
    let tenths = (10.0 * time_s / step).round() * step;
    let minutes = (tenths / 600.0).floor();
    let seconds = (tenths - minutes * 600.0) / 10.0;
    let (wide, decimals) = if precision == Precision::Tenth { (4, 1) } else { (2, 0) };
    format!("{minutes:.0}:{seconds:0wide$.decimals$}")
}

/// The same, with a word where it is told in tens of seconds: “about 21:40”.
#[must_use]
pub(crate) fn about_clock(time_s: f64, precision: Precision) -> String {
    let about = if precision == Precision::TenSeconds { "about " } else { "" };
    format!("{about}{}", clock(time_s, precision))
}

/// Seconds of a difference, as finely as its band allows, without the unit.
#[must_use]
pub(crate) fn seconds_in(time_s: f64, precision: Precision) -> String {
    let step = precision.step_s();
    plain((time_s / step).round() * step, usize::from(precision == Precision::Tenth))
}

fn in_minutes(time_s: f64) -> String {
    let seconds = time_s.round();
    let minutes = (seconds / 60.0).floor();
    format!("{minutes:.0}:{:02.0}", seconds - 60.0 * minutes)
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
        assert_eq!(duration(179.9, 0), "180\u{a0}s");
    }

    #[test]
    fn times_are_read_as_on_a_watch_and_no_finer_than_they_are_known() {
        let tenths = [59.96, 372.34, 0.0, 63.06].map(|s| clock(s, Precision::Tenth));
        assert_eq!(tenths, ["1:00.0", "6:12.3", "0:00.0", "1:03.1"]);
        assert_eq!([59.6, 637.5, 5.0].map(|s| clock(s, Precision::Second)), ["1:00", "10:38", "0:05"]);
        assert_eq!(about_clock(1296.0, Precision::TenSeconds), "about 21:40");
        let told =
            [Precision::Tenth, Precision::Second, Precision::TenSeconds].map(|it| seconds_in(-45.26, it));
        assert_eq!(told, ["−45.3", "−45", "−50"]);
    }

    #[test]
    fn signs_are_typographic_and_zero_has_none() {
        assert_eq!(plain(-1.25, 1), "−1.2");
        assert_eq!(plain(-0.04, 1), "0.0");
        assert_eq!(signed(0.6, 0), "+1");
        assert_eq!([trimmed(100.0), trimmed(55.5), trimmed(0.0)], ["100", "55.5", "0"]);
        assert_eq!(signed(-0.04, 1), "0.0");
        assert_eq!(listed(&["34×11", "34×12", "34×13"]), "34×11, 34×12 and 34×13");
    }
}
