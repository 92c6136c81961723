//! Properties of gear-math, in one program: linking one is what a test run waits for.

mod chain_properties;
mod climb_properties;
mod course_properties;
mod crossed_gears;
mod doubt_properties;
mod drivetrain_decisions;
mod drivetrain_properties;
mod effort_properties;
mod lap_accounts;
mod lap_budget;
mod neighbour_properties;
mod parts_properties;
mod position_decisions;
mod position_properties;
mod priced_climb;
mod reserve_properties;
mod ride_or_run_properties;
mod rider_decisions;
mod text_properties;
mod tyre_properties;
mod wheel_decisions;
