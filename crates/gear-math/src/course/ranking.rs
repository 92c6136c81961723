//! Putting the set-ups of a search in order.

use crate::Candidate;
use crate::order::places;

/// What counts besides the time of the lap, each in seconds of lap time it is worth. Matters of taste: estimates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weighting {
    /// A shift from sprocket to sprocket.
    pub rear_shift_s: f64,
    /// A shift from ring to ring, which in mud may drop the chain.
    pub front_shift_s: f64,
    /// A per cent of the largest step between sprockets.
    pub step_percent_s: f64,
    /// A tooth of the cage's capacity that is left over, up to [`Weighting::ENOUGH_SPARE`].
    pub spare_tooth_s: f64,
}

impl Weighting {
    /// Capacity left over beyond this is of no further use: four teeth leave room for a whole pair of links.
    pub const ENOUGH_SPARE: i32 = 4;
    /// A front shift half a second, a rear shift a fiftieth, a per cent of step a twentieth, a spare tooth a quarter.
    pub const USUAL: Self =
        Self { rear_shift_s: 0.02, front_shift_s: 0.5, step_percent_s: 0.05, spare_tooth_s: 0.25 };
    /// Nothing but the time.
    pub const TIME_ONLY: Self =
        Self { rear_shift_s: 0.0, front_shift_s: 0.0, step_percent_s: 0.0, spare_tooth_s: 0.0 };

    /// Time of the lap plus what the rest is worth; lower is better.
    ///
    /// # Formula
    /// t + rear·n_r + front·n_f + step·s − spare·min(c, 4), c the capacity left over, zero when not known.
    #[must_use]
    pub fn score_s(&self, candidate: &Candidate) -> f64 {
        let spare = candidate.spare_capacity.unwrap_or(0).min(Self::ENOUGH_SPARE);
        candidate.time_s
            + self.rear_shift_s * f64::from(candidate.shifts_rear)
            + self.front_shift_s * f64::from(candidate.shifts_front)
            + self.step_percent_s * candidate.largest_step_percent
            - self.spare_tooth_s * f64::from(spare)
    }
}

/// A set-up in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ranked {
    /// The set-up.
    pub candidate: Candidate,
    /// What it is ranked by, in seconds.
    pub score_s: f64,
    /// Whether no other is at least as good on every count and better on one.
    pub unbeaten: bool,
}

/// Sorts candidates by the weighting, best first, and marks those that no other beats on every count: time to a
/// tenth of a second, shifts at the front and at the rear, largest step, lowest gear and spare capacity.
#[must_use]
pub fn ranked(candidates: &[Candidate], weighting: &Weighting) -> Vec<Ranked> {
    let scores: Vec<f64> = candidates.iter().map(|candidate| weighting.score_s(candidate)).collect();
    let ranked =
        |place: usize| Ranked { candidate: candidates[place], score_s: scores[place], unbeaten: false };
    let mut order: Vec<Ranked> = places(&scores).into_iter().map(ranked).collect();
    mark_unbeaten(&mut order);
    order
}

/// A set-up can only be beaten by one that comes no later than it by time, and if by any then by an unbeaten one.
fn mark_unbeaten(order: &mut [Ranked]) {
    let counts: Vec<Counts> = order.iter().map(|ranked| counts(&ranked.candidate)).collect();
    let times: Vec<f64> = counts.iter().map(|counts| counts[0]).collect();
    let mut front: Vec<usize> = Vec::new();
    for place in places(&times) {
        if !front.iter().any(|&other| beats(&counts[other], &counts[place])) {
            // Of those equally quick one that comes later may beat one that came before.
            front.retain(|&other| !beats(&counts[place], &counts[other]));
            front.push(place);
        }
    }
    for place in front {
        order[place].unbeaten = true;
    }
}

/// Counts of a set-up, each better when lower.
type Counts = [f64; 6];

fn counts(candidate: &Candidate) -> Counts {
    [
        (candidate.time_s * 10.0).round(),
        f64::from(candidate.shifts_front),
        f64::from(candidate.shifts_rear),
        candidate.largest_step_percent,
        candidate.lowest_development_m,
        -f64::from(candidate.spare_capacity.unwrap_or(0).min(Weighting::ENOUGH_SPARE)),
    ]
}

fn beats(a: &Counts, b: &Counts) -> bool {
    a.iter().zip(b).all(|(x, y)| x <= y) && a.iter().zip(b).any(|(x, y)| x < y)
}
