//! How it was worked out.

use crate::layout::line::{Line, name, strong};
use crate::number::{plain, trimmed};
use crate::rings::setup::SetupReport;
use crate::units;
use gear_math::{Development, Ratio};

pub(crate) const CIRCUMFERENCE: [&str; 2] =
    ["Circumference", "π × (bead seat + 2 × width), ISO 5775-1 sizes"];
pub(crate) const DEVELOPMENT: [&str; 2] = ["Development", "ring ÷ sprocket × circumference"];
pub(crate) const GEAR_INCHES: &str = "Gear inches";
pub(crate) const SPEED: &str = "Speed";
pub(crate) const STEP: [&str; 2] =
    ["Step", "larger ÷ smaller − 1, of two developments or of two sprockets on one ring"];
pub(crate) const SOURCES: &str = "Ratio, development, gear inches and step are the trade’s own definitions, checked against handbooks of 1916 and 1921 and published gear tables. Lowest and highest cadence, useful and cross-chained gears are common practice.";

/// How the speed follows from the development.
pub(crate) fn speed() -> String {
    format!("development × cadence × {}", per_minute())
}

/// The speed of one metre, or one foot, a minute.
pub(crate) fn per_minute() -> String {
    let (speeds, ways) = (units::speeds(), units::distances());
    let factor = speeds.value(KM_PER_H) / ways.value(1.0);
    if speeds.is_other() || ways.is_other() { plain(factor, 5) } else { trimmed(factor) }
}

/// One metre a minute.
const KM_PER_H: f64 = 0.06;

/// How gear inches follow from the development.
pub(crate) fn by_development() -> String {
    format!("development ÷ (π × {})", units::distances().print(Development::METRES_PER_INCH, 4))
}

/// How they follow from a nominal wheel.
pub(crate) fn by_nominal_wheel() -> String {
    format!("ring ÷ sprocket × {} in", Ratio::NOMINAL_WHEEL_INCHES)
}

/// The roll-out was measured.
pub(crate) fn measured(roll_out: &str) -> String {
    format!("Your roll-out of {roll_out} is used instead.")
}

/// The roll-out is that of the tyre's size.
pub(crate) fn by_size(error: &str) -> String {
    format!("A soft cyclo-cross tyre may roll {error} more or less than that; a measured roll-out is better.")
}

/// Which gears count as crossed.
pub(crate) fn crossed([a, b]: &[SetupReport; 2]) -> Line {
    let what = strong("Cross-chained gears ");
    let [a, b] = [a, b].map(|setup| format!("{} {}", name(setup.side), setup.crossed));
    format!("{what}by common practice, where the chain runs at its steepest: {a}. {b}. ").into()
}

/// Which gears count as useful.
pub(crate) fn useful(tolerance: &str) -> Line {
    let what = strong("Useful gears ");
    format!("{what}are those left when the cross-chained ones are taken out and gears within {tolerance} of one another count once.").into()
}
