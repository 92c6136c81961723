//! Units that can be chosen are told by `units`, and written out nowhere else.

use room_rules::literals::literals;
use std::fs;
use std::path::{Path, PathBuf};

/// What has another unit in its place; bar and psi stand beside one another.
const CHOSEN: [&str; 5] = ["kg", "km", "km/h", "m", "m/s"];
/// Where units are named, not told: the table of fields, what can be chosen, and the module, which is metric.
const NAMED: [&str; 3] = ["bench/", "units/", "api"];
/// Files that name one all the same, and why.
const EXCEPT: [(&str, &str); 5] = [
    ("lap/body.rs", "the brush over a course is in metres"),
    ("lap/words/en/stroke.rs", "rows of a course have bends in km/h"),
    ("lap/stroke.rs", "rows of a course are in metres"),
    ("lap/pictures/profile.rs", "the ends of a stretch, as the brush has them"),
    ("layout/words/en/picks.rs", "rule books have roll-outs in metres"),
];
fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for path in fs::read_dir(folder).into_iter().flatten().flatten().map(|entry| entry.path()) {
        if path.is_dir() {
            files(&path, found);
        } else {
            found.push(path);
        }
    }
}

/// Whether a text is a unit, or has one behind a number that is put in.
fn tells(text: &str) -> bool {
    let text = text.replace("\\u{a0}", " ");
    let behind = |part: &str| part.split([' ', ',', '.', ';', ')', ':']).nth(1).map(str::to_owned);
    let is_chosen = |unit: &str| CHOSEN.contains(&unit);
    is_chosen(text.trim())
        || text
            .split('}')
            .skip(1)
            .any(|part| part.starts_with(' ') && behind(part).is_some_and(|it| is_chosen(&it)))
}

#[test]
fn units_that_can_be_chosen_are_told_in_one_place() {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../crates/explorer/src");
    let (mut all, mut told, mut met) = (Vec::new(), Vec::new(), Vec::new());
    files(&top, &mut all);
    for path in all {
        let name = path.strip_prefix(&top).unwrap_or(&path).to_string_lossy().replace('\\', "/");
        let is_left = NAMED[..2].iter().any(|start| name.starts_with(start));
        if is_left || name.split(['/', '.']).any(|part| part == NAMED[2]) {
            continue;
        }
        let text = fs::read_to_string(&path).unwrap_or_default();
        if text.contains("#[test]") && !text.contains("#[cfg(test)]") {
            continue;
        }
        for literal in literals(&text).iter().filter(|it| tells(&it.text)) {
            match EXCEPT.iter().find(|it| it.0 == name) {
                Some(it) => met.push(it.0),
                None => told.push(format!("{name}:{}: {:?}", literal.line, literal.text)),
            }
        }
    }
    assert!(told.is_empty(), "{told:#?}");
    let idle = EXCEPT.iter().filter(|it| !met.contains(&it.0)).map(|it| it.0).collect::<Vec<_>>();
    assert!(idle.is_empty(), "these need no exception: {idle:?}");
}

#[test]
fn a_unit_written_out_is_found() {
    assert!(
        ["kg", "{mass} kg", "from {low} to {high}\\u{a0}m.", "at {at} km/h, or"].iter().all(|it| tells(it))
    );
    assert!(["kg/m³", "{power} W", "m²", "am", "{m}", "{side} m/s²"].iter().all(|it| !tells(it)));
}
