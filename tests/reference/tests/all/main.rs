//! The checks against published values, in one program: linking one is what a test run waits for.

mod air_spring;
mod capacity;
mod cassettes;
mod chain_path;
mod chainline;
mod course;
mod gears;
mod on_foot;
mod overlap;
mod pedalling;
mod plane_vectors;
mod position;
mod ride_or_run;
mod road_load;
mod rollout_limits;
mod soft_ground;
mod stem;
mod toe_clearance;
mod traction;
mod two_sprocket;
mod tyre_circumference;
mod tyre_pressure;
mod tyre_roll_out;
mod tyre_width;

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
