//! The cassettes and chainsets in common use: figures computed apart from this crate.

use gear_math::gears::{CassetteName, GearStep};
use gear_math::{Cassette, Chainset};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

#[derive(Deserialize)]
struct CassetteRow {
    speeds: usize,
    name: String,
    teeth: String,
    range_pct: f64,
    largest_step_pct: f64,
    equal_step_pct: f64,
}

/// Range and largest step are tabulated to one decimal, the equal step to two.
const ONE_DECIMAL: f64 = 0.0501;
const TWO_DECIMALS: f64 = 0.00501;

#[test]
fn range_largest_and_equal_step() {
    let rows: Vec<CassetteRow> = rows("cassettes.csv");
    check_all("cassettes.csv", &rows, 51, |row| {
        let cassette: Cassette = row.teeth.parse().map_err(|error| format!("{}: {error}", row.teeth))?;
        let name = format!("{}-{}", cassette.smallest(), cassette.largest());
        if (cassette.sprockets().len(), &name) != (row.speeds, &row.name) {
            return Err(format!("{name} of {} is called {}", cassette.sprockets().len(), row.name));
        }
        let largest = cassette.largest_step().ok_or("no step")?.step;
        close("range", cassette.range().percent(), row.range_pct, ONE_DECIMAL)?;
        close("largest step", largest.percent(), row.largest_step_pct, ONE_DECIMAL)?;
        close(
            "equal step",
            cassette.equal_step().map_or(0.0, GearStep::percent),
            row.equal_step_pct,
            TWO_DECIMALS,
        )
    });
}

#[test]
fn the_same_cassettes_are_offered() {
    let rows: Vec<CassetteRow> = rows("cassettes.csv");
    let expected: Vec<String> = rows.iter().map(|row| row.teeth.replace(' ', "-")).collect();
    let offered: Vec<String> = Cassette::common().map(|cassette| cassette.to_string()).collect();
    assert_eq!(offered, expected);
}

#[test]
fn a_name_and_a_number_of_sprockets_give_the_sequence() {
    let rows: Vec<CassetteRow> = rows("cassettes.csv");
    check_all("cassettes.csv", &rows, 51, |row| {
        let typed = format!("{} {}s", row.name, row.speeds);
        let name = CassetteName::read(&typed).ok_or("no name")?;
        let taken = name.beside(None).ok_or("no cassette")?.to_string();
        if taken == row.teeth.replace(' ', "-") { Ok(()) } else { Err(format!("{typed} gives {taken}")) }
    });
}

#[derive(Deserialize)]
struct ChainsetRow {
    large: u16,
    small: Option<u16>,
    difference: u16,
    ratio_large_to_small_pct: Option<f64>,
}

#[test]
fn the_same_chainsets_are_offered() {
    let rows: Vec<ChainsetRow> = rows("chainrings.csv");
    let offered: Vec<Chainset> = Chainset::common().collect();
    assert_eq!(offered.len(), rows.len());
    check_all("chainrings.csv", &rows, 23, |row| {
        let chainset =
            Chainset::new(row.small.into_iter().chain([row.large])).map_err(|error| error.to_string())?;
        if !offered.contains(&chainset) || chainset.difference() != row.difference {
            return Err(format!("{chainset}, which differs by {}, is not offered", row.difference));
        }
        let front = row.ratio_large_to_small_pct.map_or(Ok(()), |percent| front_step(chainset, percent));
        front.map_err(|error| format!("{chainset}: {error}"))
    });
}

fn front_step(chainset: Chainset, percent: f64) -> Result<(), String> {
    let cassette = Cassette::new([18]).map_err(|error| error.to_string())?;
    let drivetrain = gear_math::Drivetrain { chainset, cassette };
    let change = drivetrain.front_changes().next().ok_or("no change")?;
    close("front step", change.step().percent(), percent, ONE_DECIMAL)
}
