//! Putting the set-ups of a search in order.

use crate::course::search::search::Candidate;
use crate::order::places;

/// What counts besides the time of the lap, each in seconds of lap time it is worth. Estimates,
/// because they are matters of taste: whoever ranks may set others.
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

    /// Time of the lap plus what the rest is worth; lower is better.
    ///
    /// # Formula
    /// t + rear·n_r + front·n_f + step·s − spare·min(c, 4), t to a tenth of a second and c the capacity left over, zero
    /// when not known.
    #[must_use]
    pub fn score_s(&self, candidate: &Candidate) -> f64 {
        let spare = candidate.spare_capacity.unwrap_or(0).min(Self::ENOUGH_SPARE);
        tenths(candidate) / 10.0
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

/// Times closer than a tenth of a second are one: a search is no surer.
fn tenths(candidate: &Candidate) -> f64 {
    (candidate.time_s * 10.0).round()
}

/// Sorts candidates by the weighting, best first and of equals an unbeaten one, and marks those that no other beats on every count: time to a
/// tenth of a second, shifts at the front and at the rear, largest step, lowest gear and spare capacity.
#[must_use]
pub fn ranked(candidates: &[Candidate], weighting: &Weighting) -> Vec<Ranked> {
    let scores: Vec<f64> = candidates.iter().map(|candidate| weighting.score_s(candidate)).collect();
    let ranked =
        |place: usize| Ranked { candidate: candidates[place], score_s: scores[place], unbeaten: false };
    let mut order: Vec<Ranked> = places(&scores).into_iter().map(ranked).collect();
    mark_unbeaten(&mut order);
    // With weights that are not negative the first is then unbeaten: whatever beats another scores no worse.
    order.chunk_by_mut(|a, b| a.score_s >= b.score_s).for_each(|equals| {
        let unbeaten = equals.iter().position(|it| it.unbeaten).unwrap_or(0);
        equals[..=unbeaten].rotate_right(1);
    });
    order
}

/// Places of those than which no other is both as quick, to a tenth of a second, and as low geared: the quickest first, then
/// each with a lower gear than all that are quicker.
#[must_use]
pub fn front(order: &[Ranked]) -> Vec<usize> {
    let counts =
        |place: &usize| (tenths(&order[*place].candidate), order[*place].candidate.lowest_development_m);
    let mut by_time: Vec<usize> = (0..order.len()).collect();
    by_time.sort_by(|one, other| {
        let ((time, lowest), (other_time, other_lowest)) = (counts(one), counts(other));
        time.total_cmp(&other_time).then(lowest.total_cmp(&other_lowest))
    });
    let mut lowest = f64::INFINITY;
    by_time.retain(|place| {
        let lower = counts(place).1 < lowest;
        lowest = lowest.min(counts(place).1);
        lower
    });
    by_time
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
        tenths(candidate),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gears::{Cassette, Chainset, Drivetrain};

    const TIME_ONLY: Weighting =
        Weighting { rear_shift_s: 0.0, front_shift_s: 0.0, step_percent_s: 0.0, spare_tooth_s: 0.0 };

    fn candidate(time_s: f64, lowest_development_m: f64) -> Candidate {
        let drivetrain = Drivetrain {
            chainset: "44/31".parse::<Chainset>().unwrap(),
            cassette: "11-13-15-18-21-24-28-32".parse::<Cassette>().unwrap(),
        };
        Candidate {
            drivetrain,
            time_s,
            shifts_rear: 4,
            shifts_front: 0,
            largest_step_percent: 15.0,
            lowest_development_m,
            spare_capacity: None,
        }
    }

    #[test]
    fn the_front_holds_the_quickest_and_whatever_is_lower_geared_than_all_quicker() {
        let found = [(400.0, 2.4), (399.9, 2.6), (400.04, 2.3), (401.0, 2.3), (402.0, 1.9), (403.0, 2.0)];
        let order = ranked(&found.map(|(time, lowest)| candidate(time, lowest)), &TIME_ONLY);
        let front: Vec<_> =
            front(&order).into_iter().map(|it| order[it].candidate.lowest_development_m).collect();
        assert_eq!(front, [2.6, 2.3, 1.9]);
    }

    #[test]
    fn what_comes_first_is_unbeaten() {
        let found =
            [candidate(400.0, 2.4), candidate(400.04, 2.2), candidate(400.01, 2.3), candidate(399.9, 2.5)];
        let lowest = |order: &[Ranked]| -> Vec<f64> {
            order.iter().map(|it| it.candidate.lowest_development_m).collect()
        };
        let order = ranked(&found[..3], &Weighting::USUAL);
        assert_eq!((lowest(&order), order[0].unbeaten), (vec![2.2, 2.4, 2.3], true));
        assert_eq!(lowest(&ranked(&found, &Weighting::USUAL)), [2.5, 2.2, 2.4, 2.3]);
    }

    /// 400 s to a tenth, 4 shifts at the rear and 2 at the front, steps of 15 % and 3 of 4 teeth left over.
    #[test]
    fn a_score_is_the_time_and_what_the_rest_is_worth() {
        let of = |spare_capacity| Candidate { shifts_front: 2, spare_capacity, ..candidate(400.04, 2.4) };
        let score = |spare| Weighting::USUAL.score_s(&of(spare));
        let rest = 0.02 * 4.0 + 0.5 * 2.0 + 0.05 * 15.0;
        for (spare, worth) in [(None, 0.0), (Some(3), 0.75), (Some(4), 1.0), (Some(9), 1.0), (Some(-2), -0.5)]
        {
            assert!((score(spare) - (400.0 + rest - worth)).abs() < 1e-9, "{spare:?}");
        }
        assert!((TIME_ONLY.score_s(&of(Some(3))) - 400.0).abs() < 1e-9);
    }

    #[test]
    fn a_set_up_is_beaten_only_by_one_as_good_on_every_count() {
        let given = candidate(400.0, 2.4);
        let better: [Candidate; 6] = [
            Candidate { time_s: 399.8, ..given },
            Candidate { lowest_development_m: 2.3, ..given },
            Candidate { shifts_rear: 3, ..given },
            Candidate { shifts_front: 0, shifts_rear: 3, ..given },
            Candidate { largest_step_percent: 14.0, ..given },
            Candidate { spare_capacity: Some(2), ..given },
        ];
        let unbeaten = |found: &[Candidate]| -> Vec<bool> {
            let order = ranked(found, &TIME_ONLY);
            found
                .iter()
                .map(|it| order.iter().any(|ranked| ranked.candidate == *it && ranked.unbeaten))
                .collect()
        };
        for other in better {
            assert_eq!(unbeaten(&[given, other]), [false, true], "{other:?}");
            let traded = Candidate { time_s: other.time_s + 1.0, ..other };
            assert!(unbeaten(&[given, traded])[0], "{traded:?}");
        }
        let alike = ranked(&[given, given], &TIME_ONLY);
        assert!(alike.iter().all(|ranked| ranked.unbeaten), "neither of two alike is better");
    }
}
