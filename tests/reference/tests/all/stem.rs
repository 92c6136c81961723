//! Stems: where they put the bar, which stem puts it there, and the search.
//!
//! Each case was computed twice: by angles, and by a chain of complex numbers up the steerer, agreeing to 1e-9 mm.

use gear_math::position::{
    BarTolerance, BikePoint, ClampHeight, FrameReach, FrameStack, FrontEnd, HeadAngle, Spacers, StemAngle,
    StemLength, StemSearchLimits, StemSetup, TopCap,
};
use gear_math::{OutOfLimits, StemSearch};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

/// Plane geometry: only the rounding of the tables' last figure is allowed for.
const TOLERANCE_MM: f64 = 0.001;

#[derive(Deserialize)]
struct Example {
    stack_mm: f64,
    reach_mm: f64,
    head_angle_deg: f64,
    top_cap_mm: f64,
    spacers_mm: f64,
    stem_clamp_height_mm: f64,
    stem_length_mm: f64,
    stem_angle_deg: f64,
    bar_x_mm: f64,
    bar_y_mm: f64,
}

impl Example {
    fn bar(&self) -> Result<BikePoint, OutOfLimits> {
        let frame = [self.stack_mm, self.reach_mm, self.head_angle_deg];
        let front = front_end(frame, self.top_cap_mm, self.stem_clamp_height_mm)?;
        Ok(front.bar(&StemSetup {
            length: StemLength::new(self.stem_length_mm)?,
            angle: StemAngle::new(self.stem_angle_deg)?,
            spacers: Spacers::new(self.spacers_mm)?,
        }))
    }

    fn check(&self) -> Result<(), String> {
        let bar = self.bar().map_err(said)?;
        close("x", bar.x_mm, self.bar_x_mm, TOLERANCE_MM)?;
        close("y", bar.y_mm, self.bar_y_mm, TOLERANCE_MM)
    }
}

#[derive(Deserialize)]
struct Exact {
    stem_angle_deg: f64,
    stem_length_mm: f64,
    spacers_mm: f64,
    buildable: String,
}

impl Exact {
    fn check(&self) -> Result<(), String> {
        let angle = StemAngle::new(self.stem_angle_deg).map_err(said)?;
        let exact = solved_frame().map_err(said)?.exact_stem(TARGET, angle);
        close("length", exact.length_mm, self.stem_length_mm, TOLERANCE_MM)?;
        close("spacers", exact.spacers_mm, self.spacers_mm, TOLERANCE_MM)?;
        match (exact.is_buildable(Spacers::CARBON_STEERER), self.buildable.as_str()) {
            (true, "yes") | (false, "no") => Ok(()),
            (found, expected) => Err(format!("buildable {found}, expected {expected}")),
        }
    }
}

#[derive(Deserialize)]
struct Answer {
    target_x_mm: f64,
    target_y_mm: f64,
    stack_mm: f64,
    reach_mm: f64,
    head_angle_deg: f64,
    top_cap_mm: f64,
    stem_clamp_height_mm: f64,
    stem_length_mm: f64,
    stem_angle_deg: f64,
    spacers_mm: f64,
    dx_mm: f64,
    dy_mm: f64,
    miss_mm: f64,
}

/// The target and frame of both worked searches.
const TARGET: BikePoint = BikePoint { x_mm: 486.146, y_mm: 642.666 };

fn solved_frame() -> Result<FrontEnd, OutOfLimits> {
    front_end([565.0, 378.0, 71.5], 15.0, 40.0)
}

fn front_end(frame: [f64; 3], top_cap_mm: f64, clamp_height_mm: f64) -> Result<FrontEnd, OutOfLimits> {
    let [stack, reach, head_angle] = frame;
    Ok(FrontEnd {
        stack: FrameStack::new(stack)?,
        reach: FrameReach::new(reach)?,
        head_angle: HeadAngle::new(head_angle)?,
        top_cap: TopCap::new(top_cap_mm)?,
        clamp_height: ClampHeight::new(clamp_height_mm)?,
    })
}

fn said(error: OutOfLimits) -> String {
    error.to_string()
}

#[test]
fn puts_the_bar_where_the_stem_says() {
    const FILE: &str = "stem-examples.csv";
    check_all(FILE, &rows(FILE), 10, Example::check);
}

#[test]
fn finds_the_exact_stem_of_each_angle() {
    const FILE: &str = "stem-exact-solutions.csv";
    check_all(FILE, &rows(FILE), 10, Exact::check);
}

/// The search answers with the table's rows, all of them, in the table's order.
#[test]
fn finds_the_same_stems_nearest_first() {
    const FILE: &str = "stem-solver-example.csv";
    let answers: Vec<Answer> = rows(FILE);
    let limits = StemSearchLimits {
        tolerance: BarTolerance::new(5.0).unwrap(),
        max_spacers: Spacers::new(30.0).unwrap(),
    };
    let StemSearch::Found(fits) = solved_frame().unwrap().search_stems(TARGET, &limits) else {
        panic!("the target is within reach");
    };
    assert_eq!(fits.len(), answers.len());
    let numbered: Vec<(usize, Answer)> = answers.into_iter().enumerate().collect();
    check_all(FILE, &numbered, 7, |(place, row)| {
        let fit = fits[*place];
        [
            ("target x", TARGET.x_mm, row.target_x_mm),
            ("target y", TARGET.y_mm, row.target_y_mm),
            ("stack", 565.0, row.stack_mm),
            ("reach", 378.0, row.reach_mm),
            ("head angle", 71.5, row.head_angle_deg),
            ("headset", 15.0, row.top_cap_mm),
            ("clamp", 40.0, row.stem_clamp_height_mm),
            ("length", fit.setup.length.mm(), row.stem_length_mm),
            ("angle", fit.setup.angle.degrees(), row.stem_angle_deg),
            ("spacers", fit.setup.spacers.mm(), row.spacers_mm),
            ("dx", fit.dx_mm, row.dx_mm),
            ("dy", fit.dy_mm, row.dy_mm),
            ("miss", fit.miss_mm, row.miss_mm),
        ]
        .into_iter()
        .try_for_each(|(what, found, expected)| close(what, found, expected, TOLERANCE_MM))
    });
}
