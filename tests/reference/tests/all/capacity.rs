//! Total capacity against printed examples, and the usual figures by cage length.

use gear_math::cage::CageClass;
use gear_math::{Cassette, Chainset, Drivetrain};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

struct Printed {
    rings: &'static str,
    smallest: u16,
    largest: u16,
    needed: u16,
    source: &'static str,
}

#[test]
fn printed_examples() {
    let printed =
        |rings, smallest, largest, needed, source| Printed { rings, smallest, largest, needed, source };
    let table = [
        printed("44/32/24", 12, 34, 42, "a Japanese cycling glossary"),
        printed("53/39", 12, 23, 25, "a shop page"),
        printed("53/39", 12, 25, 27, "a workshop weblog"),
    ];
    check_all("capacity", &table, 3, |row| {
        let chainset: Chainset = row.rings.parse().map_err(|error| format!("{error}"))?;
        let cassette = Cassette::new([row.smallest, row.largest]).map_err(|error| error.to_string())?;
        let drivetrain = Drivetrain { chainset, cassette };
        close(row.source, drivetrain.needed_capacity().into(), row.needed.into(), 0.0)?;
        let small_small = drivetrain.gears().map(|gear| drivetrain.slack(gear)).max().unwrap_or(0);
        close("slack in small with small", small_small.into(), row.needed.into(), 0.0)
    });
}

#[derive(Deserialize)]
struct Cage {
    class: String,
    pulley_centres_mm_low: f64,
    pulley_centres_mm_high: f64,
    published_capacity_teeth: String,
}

/// Published capacities lie within the range offered for their class, and its ends are published ones. The class
/// without any published capacity is not offered.
#[test]
fn cage_classes() {
    let mut rows: Vec<Cage> = rows("cage-lengths.csv");
    rows.retain(|row| !row.published_capacity_teeth.is_empty());
    let pairs: Vec<_> = rows.iter().zip(CageClass::ALL).collect();
    check_all("cage-lengths.csv", &pairs, 4, |(row, class)| {
        let capacities: Result<Vec<f64>, _> =
            row.published_capacity_teeth.split(['-', ';']).map(|teeth| teeth.trim().parse()).collect();
        let capacities = capacities.map_err(|error| format!("{}: {error}", row.class))?;
        let (least, most) = class.total_capacity;
        close("least", least.into(), capacities.iter().copied().fold(f64::INFINITY, f64::min), 0.0)?;
        close("most", most.into(), capacities.iter().copied().fold(0.0, f64::max), 0.0)?;
        close("shortest cage", class.pulley_centres_mm.0, row.pulley_centres_mm_low, 0.0)?;
        close("longest cage", class.pulley_centres_mm.1, row.pulley_centres_mm_high, 0.0)
    });
}
