//! Checks that are modules of one program: a file that it does not name would never run.

use std::fs;
use std::path::Path;

fn no_file_is_left_out(folder: &str) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(folder);
    let main = fs::read_to_string(folder.join("main.rs")).unwrap_or_default();
    let mut count = 0;
    for file in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name =
            file.path().file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        assert!(name == "main" || main.contains(&format!("mod {name};")), "{name}");
        count += 1;
    }
    assert!(count > 5);
}

#[test]
fn gear_maths_program_names_every_file() {
    no_file_is_left_out("crates/gear-math/tests/all");
}

#[test]
fn the_reference_checks_program_names_every_file() {
    no_file_is_left_out("tests/reference/tests/all");
}
