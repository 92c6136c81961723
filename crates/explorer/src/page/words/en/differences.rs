//! What differs between A and B.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::page::report::Report;
use crate::side::Side;
use crate::words::{listed, small};

/// What differs between A and B beyond the parts on the first screen, which are seen there; and whether nothing does.
pub(crate) fn between(report: &Report, bench: &Bench) -> String {
    let differing = |of_a: &Field| part(report, bench, *of_a).map(|words| (of_a.is_first(), words));
    let (first, other): (Vec<_>, Vec<_>) =
        Field::of_bike().filter_map(|of_a| differing(&of_a)).partition(|(is_first, _)| *is_first);
    let other: Vec<String> = other.into_iter().map(|(_, words)| words).collect();
    match (first.is_empty(), other.is_empty()) {
        (true, true) => "A and B are alike.".to_owned(),
        (false, true) => String::new(),
        (_, false) => format!("B also differs in what is folded away: {}.", listed(&other)),
    }
}

fn part(report: &Report, bench: &Bench, of_a: Field) -> Option<String> {
    let [a, b] = Side::BOTH.map(|side| value(report, bench, side, of_a));
    let (label, unit) = (small(of_a.spec().label), of_a.spec().unit);
    let known = |value: String| if value.is_empty() { "not known".to_owned() } else { value };
    (a != b).then(|| format!("{label} {} for {} {unit}", known(b), known(a)).trim_end().to_owned())
}

/// What a bike has, in short.
fn value(report: &Report, bench: &Bench, side: Side, of_a: Field) -> String {
    let setup = report.rings.setup(side);
    match of_a {
        Field::RingsA => setup.drivetrain.chainset.to_string(),
        Field::CassetteA => {
            let cassette = &setup.drivetrain.cassette;
            format!("{}–{} ({})", cassette.smallest(), cassette.largest(), cassette.sprockets().len())
        }
        _ => of_a.spec().words_for(bench.text_of(side, of_a).trim()).to_owned(),
    }
}
