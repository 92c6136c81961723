//! “Which rings?” on the board.

use crate::layout::decision::{Decision, Standing, Verdict};
use crate::rings::section::RingsSection;
use crate::rings::words::decision as words;
use crate::units;
use gear_math::gears::EndDifference;

/// From how slow to how fast, how finely, and how far B's ends lie from A's.
pub(crate) fn decision(report: &RingsSection) -> Decision {
    let rings = &report.rings;
    let bike = |side| {
        let setup = rings.setup(side);
        let (low, high) = (setup.lowest().speed_low, setup.highest().speed_high);
        Verdict {
            standing: Standing::Told,
            words: words::from_to(&units::speed_number(low), &units::speed(high)),
            detail: words::gears(setup),
        }
    };
    let ends = [&rings.comparison.lowest, &rings.comparison.highest].map(EndDifference::b_against_a_percent);
    Decision::of(bike, words::ends(ends))
}
