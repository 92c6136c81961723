//! “Ride or run?” on the board.

use crate::layout::decision::{Decision, Standing, Verdict};
use crate::ride::section::RideSection;
use crate::ride::words::decision as words;
use crate::units;
use gear_math::rider::Advice;

/// What to do on the climb that was asked about, how long that takes, and below which speed running wins.
pub(crate) fn decision(report: &RideSection) -> Decision {
    let bike = |of| {
        let side = &report.ride.sides[of as usize];
        Verdict {
            standing: standing(side.ascent.advice),
            words: words::advised(side),
            detail: words::gear_limit(&units::speed(side.crossover.lowest_gear_speed)),
        }
    };
    Decision { is_before: report.ride.may_turn(), ..Decision::of(bike, words::running(report)) }
}

const fn standing(advice: Advice) -> Standing {
    match advice {
        Advice::Ride => Standing::Well,
        Advice::Carry | Advice::Force => Standing::Care,
        Advice::TooClose => Standing::Even,
        Advice::Run => Standing::Told,
    }
}
