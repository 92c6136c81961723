//! The checks against published values, in one program: linking one is what a test run waits for.

mod air_spring;
mod capacity;
mod cassettes;
mod chain_path;
mod chainline;
mod course;
mod effort;
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
