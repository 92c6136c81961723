//! Positions carried over to another bike, each computed twice: by these formulae, and from coordinates with a numeric
//! intersection of circle and line, agreeing to 1e-6 mm.

use gear_math::position::{
    BarCloser, BarDrop, BarRaise, Footing, PositionChanges, Saddle, SaddleHeight, SaddleLowering, SeatAngle,
    Setback, SoleStack, TipToBar,
};
use gear_math::rider::CrankLength;
use gear_math::{CrossBike, OutOfLimits, RoadPosition};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

/// Plane geometry: only the rounding of the table's last figure is allowed for.
const TOLERANCE_MM: f64 = 0.001;

#[derive(Deserialize)]
struct Transfer {
    road_saddle_height_mm: f64,
    road_setback_mm: f64,
    road_seat_angle_deg: f64,
    road_crank_mm: f64,
    road_sole_stack_mm: f64,
    road_tip_to_bar_mm: f64,
    road_bar_drop_mm: f64,
    cx_crank_mm: f64,
    cx_sole_stack_mm: f64,
    lower_by_mm: f64,
    bar_up_by_mm: f64,
    bar_closer_by_mm: f64,
    cx_seat_angle_deg: f64,
    out_saddle_height_same_angle_mm: f64,
    out_saddle_vertical_mm: f64,
    out_saddle_height_cx_mm: f64,
    out_rail_shift_forward_mm: f64,
    out_bar_drop_mm: f64,
    out_tip_to_bar_mm: f64,
    out_target_x_mm: f64,
    out_target_y_mm: f64,
}

fn footing(crank_mm: f64, sole_stack_mm: f64) -> Result<Footing, OutOfLimits> {
    Ok(Footing { crank: CrankLength::new(crank_mm)?, sole_stack: SoleStack::new(sole_stack_mm)? })
}

impl Transfer {
    fn road(&self) -> Result<RoadPosition, OutOfLimits> {
        Ok(RoadPosition {
            saddle: Saddle {
                height: SaddleHeight::new(self.road_saddle_height_mm)?,
                setback: Setback::new(self.road_setback_mm)?,
                seat_angle: SeatAngle::new(self.road_seat_angle_deg)?,
            },
            footing: footing(self.road_crank_mm, self.road_sole_stack_mm)?,
            tip_to_bar: TipToBar::new(self.road_tip_to_bar_mm)?,
            bar_drop: BarDrop::new(self.road_bar_drop_mm)?,
        })
    }

    fn cross(&self) -> Result<CrossBike, OutOfLimits> {
        Ok(CrossBike {
            seat_angle: SeatAngle::new(self.cx_seat_angle_deg)?,
            footing: footing(self.cx_crank_mm, self.cx_sole_stack_mm)?,
        })
    }

    fn changes(&self) -> Result<PositionChanges, OutOfLimits> {
        Ok(PositionChanges {
            lower_by: SaddleLowering::new(self.lower_by_mm)?,
            bar_up_by: BarRaise::new(self.bar_up_by_mm)?,
            bar_closer_by: BarCloser::new(self.bar_closer_by_mm)?,
            keep_knee_over_pedal: false,
        })
    }

    fn check(&self) -> Result<(), String> {
        let (road, cross, changes) = (self.road(), self.cross(), self.changes());
        let carried = road.map_err(said)?.carried_to(&cross.map_err(said)?, &changes.map_err(said)?);
        [
            ("height, road angle", carried.saddle_height_road_angle_mm, self.out_saddle_height_same_angle_mm),
            ("vertical", carried.saddle_vertical_mm, self.out_saddle_vertical_mm),
            ("height", carried.saddle_height_mm, self.out_saddle_height_cx_mm),
            ("rails", carried.rail_shift_forward_mm, self.out_rail_shift_forward_mm),
            ("drop", carried.bar_drop_mm, self.out_bar_drop_mm),
            ("tape", carried.tip_to_bar_mm, self.out_tip_to_bar_mm),
            ("target x", carried.target.x_mm, self.out_target_x_mm),
            ("target y", carried.target.y_mm, self.out_target_y_mm),
        ]
        .into_iter()
        .try_for_each(|(what, found, expected)| close(what, found, expected, TOLERANCE_MM))
    }
}

fn said(error: OutOfLimits) -> String {
    error.to_string()
}

#[test]
fn carries_every_position() {
    const FILE: &str = "position-transfer-examples.csv";
    check_all(FILE, &rows(FILE), 8, Transfer::check);
}
