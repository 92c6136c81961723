//! Properties of gear-math, in one program: linking one is what a test run waits for.

mod chain_properties;
mod climb_properties;
mod course_properties;
mod drivetrain_decisions;
mod drivetrain_properties;
mod lap_accounts;
mod position_decisions;
mod position_properties;
mod ride_or_run_properties;
mod rider_decisions;
mod text_properties;
mod tyre_properties;
mod wheel_decisions;

/// A file that is not named above would be compiled by nobody.
#[test]
fn no_file_is_left_out() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/all");
    let mut count = 0;
    for file in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let name =
            file.path().file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        assert!(name == "main" || include_str!("main.rs").contains(&format!("mod {name};")), "{name}");
        count += 1;
    }
    assert!(count > 5);
}
