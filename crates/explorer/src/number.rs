//! Numbers as the page prints them.

use crate::units::chosen::signed_so;
use gear_math::Cadence;
use gear_math::course::Precision;

/// `value` with `decimals` places, the decimal sign in force, a true minus sign, and no “−0”.
#[must_use]
pub(crate) fn plain(value: f64, decimals: usize) -> String {
    let text = signed_so(format!("{value:.decimals$}"));
    match text.strip_prefix('-') {
        Some(digits) if is_nothing(digits) => digits.to_owned(),
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

fn is_nothing(digits: &str) -> bool {
    digits.bytes().all(|byte| matches!(byte, b'0' | b'.' | b','))
}

/// Whether nothing is left of `value` once it is rounded to `decimals` places.
#[must_use]
pub(crate) fn shows_nothing(value: f64, decimals: i32) -> bool {
    (value * 10_f64.powi(decimals)).round_ties_even() == 0.0
}

/// The same with a plus sign in front of what is above zero.
#[must_use]
pub(crate) fn signed(value: f64, decimals: usize) -> String {
    let text = plain(value, decimals);
    if text.starts_with('−') || is_nothing(&text) { text } else { format!("+{text}") }
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

/// A number with as many places as it needs, at most three.
#[must_use]
pub(crate) fn trimmed(value: f64) -> String {
    without_noughts(&plain(value, 3))
}

/// A number as it stands behind a minus: in brackets if it has one of its own.
pub(crate) fn bracketed(number: &str) -> String {
    if number.starts_with(['-', '−']) { format!("({number})") } else { number.to_owned() }
}

/// A number with decimals without those at its end that say nothing.
#[must_use]
pub(crate) fn without_noughts(text: &str) -> String {
    text.trim_end_matches('0').trim_end_matches(['.', ',']).to_owned()
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
pub(crate) const LONG_S: f64 = 180.0;

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

/// A lap time as on a watch, as finely as its band allows: “6:12.3”, “10:37”, “21:40”.
#[must_use]
pub(crate) fn clock(time_s: f64, precision: Precision) -> String {
    let step = (10.0 * precision.step_s()).round();
    let tenths = (10.0 * time_s / step).round() * step;
    let minutes = (tenths / 600.0).floor();
    let seconds = (tenths - minutes * 600.0) / 10.0;
    let (wide, decimals) = if precision == Precision::Tenth { (4, 1) } else { (2, 0) };
    signed_so(format!("{minutes:.0}:{seconds:0wide$.decimals$}"))
}

/// Seconds of a difference, as finely as its band allows, without the unit.
#[must_use]
pub(crate) fn seconds_in(time_s: f64, precision: Precision) -> String {
    let told = steps(time_s, precision) * precision.step_s();
    plain(told, usize::from(precision == Precision::Tenth))
}

/// The same with a plus sign in front of what is above zero.
#[must_use]
pub(crate) fn signed_seconds_in(time_s: f64, precision: Precision) -> String {
    let text = seconds_in(time_s, precision);
    if text.starts_with('−') || is_level(time_s, precision) { text } else { format!("+{text}") }
}

/// Whether nothing is left of a difference that is told so finely.
#[must_use]
pub(crate) fn is_level(time_s: f64, precision: Precision) -> bool {
    steps(time_s, precision) == 0.0
}

fn steps(time_s: f64, precision: Precision) -> f64 {
    (time_s / precision.step_s()).round()
}

/// “2:28”, rounded to seconds.
#[must_use]
pub(crate) fn in_minutes(time_s: f64) -> String {
    let seconds = time_s.round();
    let minutes = (seconds / 60.0).floor();
    format!("{minutes:.0}:{:02.0}", seconds - 60.0 * minutes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_read_as_on_a_watch_and_no_finer_than_they_are_known() {
        let tenths = [59.96, 372.34, 0.0, 63.06].map(|s| clock(s, Precision::Tenth));
        assert_eq!(tenths, ["1:00.0", "6:12.3", "0:00.0", "1:03.1"]);
        assert_eq!([59.6, 637.5, 5.0].map(|s| clock(s, Precision::Second)), ["1:00", "10:38", "0:05"]);
        assert_eq!(clock(1296.0, Precision::TenSeconds), "21:40");
        assert_eq!(duration(179.9, 0), "180\u{a0}s");
        let told =
            [Precision::Tenth, Precision::Second, Precision::TenSeconds].map(|it| seconds_in(-45.26, it));
        assert_eq!(told, ["−45.3", "−45", "−50"]);
    }

    #[test]
    fn what_shows_nothing_is_printed_as_nothing() {
        for hundredths in -300..=300 {
            let value = f64::from(hundredths) / 100.0 + 0.001;
            assert_eq!(shows_nothing(value, 0), plain(value, 0) == "0", "{value}");
            assert_eq!(shows_nothing(value, 1), plain(value, 1) == "0.0", "{value}");
            for precision in [Precision::Tenth, Precision::Second, Precision::TenSeconds] {
                let told = seconds_in(10.0 * value, precision);
                assert_eq!(is_level(10.0 * value, precision), ["0", "0.0"].contains(&told.as_str()));
            }
        }
        assert!(shows_nothing(0.5, 0) && plain(0.5, 0) == "0");
    }

    #[test]
    fn signs_are_typographic_and_zero_has_none() {
        assert_eq!(plain(-1.25, 1), "−1.2");
        assert_eq!(plain(-0.04, 1), "0.0");
        assert_eq!(signed(0.6, 0), "+1");
        assert_eq!([trimmed(100.0), trimmed(55.5), trimmed(0.0)], ["100", "55.5", "0"]);
        assert_eq!(signed(-0.04, 1), "0.0");
        assert_eq!(["−20", "-0", "5"].map(bracketed), ["(−20)", "(-0)", "5"]);
    }
}
