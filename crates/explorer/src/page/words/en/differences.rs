//! What differs between A and B.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::page::report::Report;
use crate::side::Side;
use crate::words::{listed, small};

/// What differs between A and B beyond the parts on the first screen, which are seen there; and whether nothing does.
pub(crate) fn between(report: &Report, bench: &Bench) -> String {
    let differing = |of_a: Field| Some((of_a, part(report, bench, of_a)?));
    let parts: Vec<(Field, String)> = Field::of_bike().filter_map(differing).collect();
    if parts.is_empty() {
        return "A and B are alike.".to_owned();
    }
    let folded: Vec<String> =
        parts.into_iter().filter(|(of_a, _)| !of_a.is_first()).map(|(_, words)| words).collect();
    if folded.is_empty() {
        return String::new();
    }
    format!("B also differs in what is folded away: {}.", listed(&folded))
}

fn part(report: &Report, bench: &Bench, of_a: Field) -> Option<String> {
    let [a, b] = Side::BOTH.map(|side| value(report, bench, side, of_a));
    let (label, unit) = (small(of_a.spec().label), of_a.unit());
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
        _ => of_a.shown(of_a.spec().words_for(bench.text_of(side, of_a).trim())).into_owned(),
    }
}
