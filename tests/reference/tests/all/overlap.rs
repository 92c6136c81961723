//! Overlap of two rings. 53/39 with 11-25: 14 gears inside and 8 outside, as a cycling magazine counted; the other
//! rows were computed apart from this crate, in floating point: 48×20 and 32×14 are exactly 5 % apart, and both that
//! computation and this crate find them a rounding error too far.

use gear_math::gears::RingOverlap;
use gear_math::{Cassette, Drivetrain, DuplicateTolerance};
use reference_checks::{check_all, rows};
use serde::Deserialize;

#[derive(Deserialize)]
struct Row {
    rings: String,
    cassette: String,
    gears_inside_shared_range: usize,
    gears_outside: usize,
    pairs_within_1pct: usize,
    pairs_within_2pct: usize,
    pairs_within_3pct: usize,
    pairs_within_5pct: usize,
}

#[test]
fn inside_outside_and_duplicates() {
    let rows: Vec<Row> = rows("overlap-checks.csv");
    check_all("overlap-checks.csv", &rows, 6, |row| {
        let counts = [0.0, 1.0, 2.0, 3.0, 5.0].map(|percent| row.overlap(percent));
        let [sharp, pairs @ ..] = counts;
        let sharp = sharp?;
        let found = (sharp.inside, sharp.outside);
        let expected = (row.gears_inside_shared_range, row.gears_outside);
        let pairs =
            pairs.map(|overlap| overlap.map(|overlap| overlap.duplicates.len()).unwrap_or(usize::MAX));
        let expected_pairs =
            [row.pairs_within_1pct, row.pairs_within_2pct, row.pairs_within_3pct, row.pairs_within_5pct];
        let agrees = found == expected && pairs == expected_pairs;
        agrees
            .then_some(())
            .ok_or(format!("{found:?} and {pairs:?}, expected {expected:?} and {expected_pairs:?}"))
    });
}

impl Row {
    fn overlap(&self, percent: f64) -> Result<RingOverlap, String> {
        let drivetrain = Drivetrain {
            chainset: self.rings.parse().map_err(|error| format!("{error}"))?,
            cassette: self.usual_cassette()?,
        };
        let tolerance = DuplicateTolerance::new(percent).map_err(|error| error.to_string())?;
        Ok(drivetrain.overlap(tolerance))
    }

    /// 11 sprockets if there is such a cassette, otherwise 12.
    fn usual_cassette(&self) -> Result<Cassette, String> {
        let named = |speeds| {
            Cassette::common().find(|cassette| {
                cassette.sprockets().len() == speeds
                    && format!("{}-{}", cassette.smallest(), cassette.largest()) == self.cassette
            })
        };
        named(11).or_else(|| named(12)).ok_or(format!("no cassette {}", self.cassette))
    }
}
