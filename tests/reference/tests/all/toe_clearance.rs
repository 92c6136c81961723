//! Toe clearance against exact three-dimensional geometry, computed independently.

use gear_math::OutOfLimits;
use gear_math::chain::BottomBracketDrop;
use gear_math::position::{ForkRake, FrontCentre, HeadAngle, PedalOffset, ToeRoom};
use gear_math::rider::CrankLength;
use gear_math::wheel::WheelRadius;
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

/// The table has one decimal.
const ROUNDING_MM: f64 = 0.051;

#[derive(Deserialize)]
struct Example {
    front_centre_mm: f64,
    bb_drop_mm: f64,
    wheel_radius_mm: f64,
    head_angle_deg: f64,
    fork_rake_mm: f64,
    pedal_lateral_mm: f64,
    crank_mm: f64,
    straight_ahead_mm: f64,
    simple_swept_mm: f64,
    exact_swept_mm: f64,
}

impl Example {
    fn room(&self) -> Result<ToeRoom, OutOfLimits> {
        Ok(ToeRoom {
            front_centre: FrontCentre::new(self.front_centre_mm)?,
            bottom_bracket_drop: BottomBracketDrop::new(self.bb_drop_mm)?,
            wheel_radius: WheelRadius::new(self.wheel_radius_mm)?,
            head_angle: HeadAngle::new(self.head_angle_deg)?,
            fork_rake: ForkRake::new(self.fork_rake_mm)?,
            pedal_offset: PedalOffset::new(self.pedal_lateral_mm)?,
            crank: CrankLength::new(self.crank_mm)?,
        })
    }

    fn check(&self) -> Result<(), String> {
        let toe = self.room().map_err(|error| error.to_string())?.clearance();
        close("straight ahead", toe.straight_ahead_mm, self.straight_ahead_mm, ROUNDING_MM)?;
        close("swept", toe.swept_mm, self.simple_swept_mm, ROUNDING_MM)?;
        let short_by = self.exact_swept_mm - toe.swept_mm;
        close("less than exact geometry by", short_by, 2.05, 0.35 + 2.0 * ROUNDING_MM)
    }
}

#[test]
fn leaves_the_room_that_exact_geometry_leaves_or_less() {
    const FILE: &str = "toe-clearance-examples.csv";
    check_all(FILE, &rows(FILE), 5, Example::check);
}
