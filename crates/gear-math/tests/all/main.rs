//! Properties of gear-math, in one program: linking one is what a test run waits for.

mod chain_properties;
mod course_properties;
mod drivetrain_properties;
mod position_properties;
mod ride_or_run_properties;
mod text_properties;
mod tyre_properties;
