//! Whatever units are chosen, nothing is left in others: neither in words and tables nor in a picture.

use super::{demo, picture, svg, texts};
use explorer::bench::bench::Bench;
use explorer::bench::link;
use explorer::page::message::message;
use explorer::page::pictures::Picture;
use explorer::page::report::Report;
use explorer::page::sections::fragments;
use explorer::units::{GearScale, Units};
use std::collections::BTreeMap;

/// Units that have another one in their place; bar and psi stand beside one another.
const METRIC: [&str; 6] = ["kg", "km", "km/h", "m", "m/s", "metres"];
const IMPERIAL: [&str; 4] = ["lb", "mi", "mph", "ft"];
/// Where these are no units: the mass of a formula; a word; what the rows of a course are typed in; rules in metres.
const NO_UNITS: [&str; 5] = ["½ m (", "turning in m;", "length in m;", "from m; to m;", "and its km/h"];
/// A paragraph.
const NO_DECIMAL: &str = "1512.15";
/// Constants of published formulas, which stay as they were published.
const FORMULAS: [&str; 2] = ["lap-working", "ride-working"];

/// Everything that is said and drawn, by its place.
fn all(report: &Report, bench: &Bench) -> BTreeMap<String, String> {
    let said = fragments(report, &[], &[], bench, &link::write(bench));
    let mut all: BTreeMap<String, String> = said.into_iter().map(|(id, html)| (id, plain(&html))).collect();
    all.insert("message".to_owned(), message(report, ""));
    for picture in Picture::all() {
        let size = (700.0, picture.height(report, 700.0).max(1.0));
        let drawn = texts(&svg(report, picture, size.0));
        let spots = picture.spots(report, size);
        let spots = spots.iter().enumerate().map(|(index, spot)| picture.words(report, spot, index));
        let words = drawn.into_iter().map(|it| it.words).chain(spots).chain([picture.label(report)]);
        all.insert(picture.name().to_owned(), words.collect::<Vec<_>>().join(" | "));
    }
    all
}

/// The words of a fragment.
fn plain(html: &str) -> String {
    html.split('<').map(|piece| piece.split_once('>').map_or(piece, |it| it.1)).collect::<Vec<_>>().join(" ")
}

/// Words that are one of some units, each with what stands before it.
fn met(text: &str, units: &[&str]) -> Vec<String> {
    let text = NO_UNITS.iter().fold(text.replace('\u{a0}', " "), |text, no| text.replace(no, ""));
    let words: Vec<&str> = text.split_whitespace().collect();
    let is_unit = |word: &str| units.contains(&word.trim_matches(|it| ".,;:()–!?".contains(it)));
    let before = |at: usize| words[at.saturating_sub(4)..=at].join(" ");
    (0..words.len()).filter(|&at| is_unit(words[at])).map(before).collect()
}

#[test]
fn nothing_is_left_in_another_unit_and_all_comes_back() {
    let (bench, metric) = (Bench::default(), demo());
    let imperial = Report { units: Units::IMPERIAL, ..metric.clone() };
    let before = all(&metric, &bench);
    let mut left = Vec::new();
    for (place, text) in all(&imperial, &bench) {
        left.extend(met(&text, &METRIC).into_iter().map(|it| format!("{place}: {it}")));
    }
    assert!(left.is_empty(), "{left:#?}");
    assert_eq!(all(&metric, &bench), before);
    let told = before.values().flat_map(|text| met(text, &METRIC)).count();
    assert!(told > 300, "only {told} metric units were met");
    let strange: Vec<String> = before.values().flat_map(|text| met(text, &IMPERIAL)).collect();
    assert!(strange.is_empty(), "{strange:?}");
}

#[test]
fn a_comma_is_the_decimal_sign_everywhere() {
    let bench = Bench::default();
    let report = Report { units: Units { comma: true, ..Units::METRIC }, ..demo() };
    let is_number = |word: &&str| {
        let mut digits = word.split('.');
        let is_count = |part: Option<&str>| {
            part.is_some_and(|it| !it.is_empty() && it.bytes().all(|at| at.is_ascii_digit()))
        };
        is_count(digits.next()) && is_count(digits.next()) && digits.next().is_none()
    };
    let mut left = Vec::new();
    for (place, text) in all(&report, &bench).iter().filter(|it| !FORMULAS.contains(&it.0.as_str())) {
        let words = text.split(|it: char| it.is_whitespace() || "()–;|".contains(it));
        left.extend(
            words.filter(|word| is_number(word) && *word != NO_DECIMAL).map(|it| format!("{place}: {it}")),
        );
    }
    assert!(left.is_empty(), "{left:#?}");
}

#[test]
fn ladder_and_steps_are_drawn_by_what_gears_are_told_by() {
    let metric = demo();
    let drawn = |gears: GearScale| {
        let report = Report { units: Units { gears, ..Units::METRIC }, ..metric.clone() };
        ["ladder", "steps"].map(|name| svg(&report, picture(name), 700.0))
    };
    let all =
        [GearScale::Development, GearScale::Inches, GearScale::NominalInches, GearScale::Ratio].map(drawn);
    for (place, one) in all.iter().enumerate() {
        for other in &all[..place] {
            assert!(one[0] != other[0] && one[1] != other[1]);
        }
    }
}
