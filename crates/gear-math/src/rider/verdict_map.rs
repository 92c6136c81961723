//! The verdict on many grounds and slopes at once.

use crate::rider::energy::{Band, Energy, Speeds};
use crate::rider::ground::Ground;
use crate::rider::limits::LimitsHeld;
use crate::rider::on_foot::Incline;
use crate::rider::quantity::Climb;
use crate::rider::ride_or_run::RideOrRun;
use crate::rider::verdict::Verdict;
use crate::solve::halved;

/// One part of an [`Answer`](crate::rider::verdict::Answer) on a map of slopes and grounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cell {
    /// Foot over ride.
    pub ratio: Band,
    /// Limits that hold.
    pub limits: LimitsHeld,
    /// The judgement.
    pub verdict: Verdict,
}

/// Judges every ground on every slope for several riders or bikes at once.
///
/// Returns one list per question, ground by ground, each from the first gradient to the last. What two questions
/// share is worked out once: two set-ups of one bike differ only in their gears.
#[must_use]
pub fn verdict_map(questions: &[RideOrRun], grounds: &[Ground], gradients: &[Climb]) -> Vec<Vec<Cell>> {
    let inclines: Vec<Incline> = gradients.iter().map(|&gradient| Incline::new(gradient)).collect();
    let mut maps = vec![Vec::with_capacity(grounds.len() * inclines.len()); questions.len()];
    for ground in grounds {
        for incline in &inclines {
            let mut known: Option<(&Energy, Speeds, Band)> = None;
            for (question, map) in questions.iter().zip(&mut maps) {
                let (_, speeds, ratio) = known
                    .filter(|(energy, _, _)| **energy == question.energy)
                    .unwrap_or_else(|| question.compared(ground, incline));
                known = Some((&question.energy, speeds, ratio));
                map.push(question.cell(&speeds, ratio, ground, incline));
            }
        }
    }
    maps
}

/// Halvings of half a per cent that leave less than the tenth a page shows.
const HALVINGS: u32 = 5;

impl RideOrRun {
    /// Where the verdict of `from` ends, between it and a steeper gradient with another verdict.
    #[must_use]
    pub fn verdict_end(&self, ground: &Ground, from: Climb, to: Climb) -> Climb {
        let judged = |gradient: Climb| {
            let incline = Incline::new(gradient);
            let (_, speeds, ratio) = self.compared(ground, &incline);
            self.cell(&speeds, ratio, ground, &incline).verdict
        };
        let verdict = judged(from);
        let is_below = |percent: f64| judged(Climb::nearest(percent)) == verdict;
        let (_, other) = halved(from.percent(), to.percent(), HALVINGS, is_below);
        Climb::nearest(other)
    }

    fn compared(&self, ground: &Ground, incline: &Incline) -> (&Energy, Speeds, Band) {
        let speeds = self.energy.speeds(ground, incline);
        (&self.energy, speeds, self.energy.band(&speeds, ground, incline))
    }

    fn cell(&self, speeds: &Speeds, ratio: Band, ground: &Ground, incline: &Incline) -> Cell {
        let limits = self.limits_held(speeds, ground, incline);
        let riding = self.gearing.riding(speeds.ride);
        let verdict = Verdict::of(ratio, limits, &riding, speeds.ride);
        Cell { ratio, limits, verdict }
    }
}
