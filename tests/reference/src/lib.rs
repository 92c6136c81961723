//! Reads the sourced tables in `data/` and runs every row against gear-math.

pub mod ride_or_run;

use serde::de::DeserializeOwned;
use std::path::Path;

/// Reads one table of `data/` into typed rows; columns are matched by name, lines that begin with `#` are left aside.
///
/// # Panics
/// When the file is missing or a row does not fit `T`: a reference that cannot be read must fail the run.
#[must_use]
pub fn rows<T: DeserializeOwned>(file: &str) -> Vec<T> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(file);
    let parsed: Result<Vec<T>, csv::Error> = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_path(&path)
        .and_then(|mut reader| reader.deserialize().collect());
    match parsed {
        Ok(rows) => rows,
        Err(error) => fail(&format!("{}: {error}", path.display())),
    }
}

/// Runs `check` on every row, reports all failures at once, and fails when fewer rows than `at_least` ran.
///
/// # Panics
/// When a row fails, or when fewer rows were checked than before.
pub fn check_all<T>(file: &str, rows: &[T], at_least: usize, check: impl Fn(&T) -> Result<(), String>) {
    let failures: Vec<String> = rows
        .iter()
        .enumerate()
        .filter_map(|(index, row)| check(row).err().map(|why| format!("{file} row {}: {why}", index + 1)))
        .collect();
    println!("{file}: {} rows checked, {} failed", rows.len(), failures.len());
    if !failures.is_empty() {
        fail(&failures.join("\n"));
    }
    if rows.len() < at_least {
        fail(&format!("{file}: only {} rows checked, at least {at_least} were checked before", rows.len()));
    }
}

/// `Ok` when `found` lies within `tolerance` of `expected`; otherwise a line that says how far off it is.
///
/// # Errors
/// When the two differ by more than `tolerance`, or `found` is not a number.
pub fn close(what: &str, found: f64, expected: f64, tolerance: f64) -> Result<(), String> {
    if (found - expected).abs() <= tolerance {
        Ok(())
    } else {
        Err(format!("{what}: found {found}, expected {expected} within {tolerance}"))
    }
}

#[expect(clippy::panic, reason = "this crate exists to fail test runs")]
fn fail(message: &str) -> ! {
    panic!("{message}")
}
