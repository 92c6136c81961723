//! What there is to mark on the axis of gradients.

use gear_math::Speed;
use gear_math::order::ascending;
use gear_math::rider::{Climb, Crossover, Mark, MarkKind, Reason, RunningWins};

/// The marks of a side, those of running for a climb of this length.
pub(crate) fn marks(
    crossover: &Crossover,
    running: &RunningWins,
    ride: impl Fn(Climb) -> Speed,
) -> Vec<Mark> {
    let of_running = [
        (MarkKind::TooCloseFrom, running.earliest),
        (MarkKind::Ends(Reason::Energy), running.latest.and(running.gradient)),
        (MarkKind::FootFrom, running.latest),
    ];
    let mut marks = crossover.marks.clone();
    marks.retain(|mark| of_running.iter().all(|(kind, _)| *kind != mark.kind));
    marks.extend(of_running.iter().filter_map(|&(kind, gradient)| {
        let gradient = gradient?;
        Some(Mark { kind, gradient, speed: ride(Climb::new(gradient.percent()).ok()?) })
    }));
    ascending(&mut marks, |mark| mark.gradient.percent());
    marks
}
