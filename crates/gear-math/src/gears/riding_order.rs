//! The order in which a rider goes through the gears, and the shifts it takes.

use crate::gears::drivetrain::Drivetrain;
use crate::gears::gear::Gear;
use crate::gears::gear_set::GearSet;
use crate::gears::quantity::{DuplicateTolerance, GearRange, GearStep};
use crate::order::ascending;

/// Gears from low to high, one shift after the other.
#[derive(Debug, Clone, PartialEq)]
pub struct RidingOrder {
    /// The gear it starts in: the lowest of the drivetrain that may be used.
    pub start: Gear,
    /// Every shift up from there.
    pub shifts: Vec<Shift>,
}

/// One shift to the next gear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shift {
    /// The gear before.
    pub from: Gear,
    /// The gear after.
    pub to: Gear,
    /// Which derailleurs move.
    pub kind: ShiftKind,
    /// Sprockets the chain moves across; 0 for a front shift.
    pub sprockets: usize,
    /// How much higher the gear after is.
    pub step: GearStep,
}

/// Which derailleurs a shift moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShiftKind {
    /// Another sprocket on the same ring.
    Rear,
    /// Another ring on the same sprocket.
    Front,
    /// Another ring and another sprocket at once.
    Double,
}

/// The steps of one order taken together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepSpread {
    /// Arithmetic mean.
    pub mean: GearStep,
    /// The largest.
    pub largest: GearStep,
    /// What every step would be if as many gears were spaced evenly over the same range.
    pub equal: GearStep,
}

impl ShiftKind {
    /// The shift in words: “a rear shift”.
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Rear => "a rear shift",
            Self::Front => "a front shift",
            Self::Double => "front and rear shifted together",
        }
    }
}

impl RidingOrder {
    /// Stays on each ring as long as it can: the order most riders follow, with one change of ring.
    ///
    /// The rule: begin with the smallest ring on the largest sprocket; go through the sprockets until the next
    /// would be [crossed](Drivetrain::crossed_rule); change to the next ring, on its lowest gear that is not crossed
    /// and lies above the last one by more than `tolerance`; go on so to the highest gear. A ring without such a
    /// gear is left out, and so are the gears to avoid. Going down is the same list read backwards.
    ///
    /// # Example
    /// ```
    /// use gear_math::Drivetrain;
    /// use gear_math::gears::{GearSet, RidingOrder, ShiftKind};
    /// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    /// let order = RidingOrder::ring_by_ring(&bike, GearSet::NONE, Default::default());
    /// let change = order.shifts.iter().find(|shift| shift.kind == ShiftKind::Double).unwrap();
    /// assert_eq!(format!("{} to {}", change.from, change.to), "31×15 to 44×18");
    /// assert_eq!(order.double_shifts(), 1);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn ring_by_ring(drivetrain: &Drivetrain, avoid: GearSet, tolerance: DuplicateTolerance) -> Self {
        let good = good_gears(drivetrain, avoid);
        let mut gears: Vec<Gear> = Vec::with_capacity(drivetrain.gear_count());
        for &ring in drivetrain.chainset.rings().iter().rev() {
            let last = gears.last().copied();
            let on_ring =
                drivetrain.cassette.sprockets().iter().rev().map(|&sprocket| Gear { ring, sprocket });
            gears.extend(on_ring.filter(|gear| good.contains(gear) && adds_to(last, *gear, tolerance)));
        }
        Self::through(drivetrain, avoid, &gears)
    }

    /// Takes every useful gear in turn, whatever shifts that asks for.
    ///
    /// The rule: sort all gears that are neither [crossed](Drivetrain::crossed_rule) nor to avoid by ratio; from the lowest up, keep
    /// each that lies above the last one kept by more than `tolerance`. So duplicates count once.
    #[must_use]
    pub fn every_useful_gear(drivetrain: &Drivetrain, avoid: GearSet, tolerance: DuplicateTolerance) -> Self {
        let mut gears = good_gears(drivetrain, avoid);
        ascending(&mut gears, |gear| f64::from(gear.ring.teeth()));
        ascending(&mut gears, |gear| gear.ratio().value());
        let mut kept = None;
        gears.retain(|&gear| {
            let adds = adds_to(kept, gear, tolerance);
            kept = if adds { Some(gear) } else { kept };
            adds
        });
        Self::through(drivetrain, avoid, &gears)
    }

    fn through(drivetrain: &Drivetrain, avoid: GearSet, gears: &[Gear]) -> Self {
        let shifts = gears.windows(2).map(|pair| Shift::between(drivetrain, pair[0], pair[1])).collect();
        let start = gears.first().copied().unwrap_or_else(|| avoid.lowest(drivetrain));
        Self { start, shifts }
    }

    /// The gears it goes through, lowest first.
    pub fn gears(&self) -> impl Iterator<Item = Gear> + '_ {
        core::iter::once(self.start).chain(self.shifts.iter().map(|shift| shift.to))
    }

    /// How many gears it goes through.
    #[must_use]
    pub fn gear_count(&self) -> usize {
        self.shifts.len() + 1
    }

    /// How many of its shifts move both derailleurs at once.
    #[must_use]
    pub fn double_shifts(&self) -> usize {
        self.shifts.iter().filter(|shift| shift.kind == ShiftKind::Double).count()
    }

    /// Mean, largest and ideal step; none when there is only one gear.
    #[must_use]
    pub fn step_spread(&self) -> Option<StepSpread> {
        let steps = || self.shifts.iter().map(|shift| shift.step.percent());
        let last = self.shifts.last()?.to;
        let range = GearRange::between(self.start.ratio().value(), last.ratio().value());
        Some(StepSpread {
            mean: GearStep::new(steps().sum::<f64>() / self.shifts.len() as f64),
            largest: GearStep::new(steps().fold(0.0, f64::max)),
            equal: GearStep::equal(range, self.shifts.len())?,
        })
    }
}

/// The gears that are neither crossed nor to avoid.
fn good_gears(drivetrain: &Drivetrain, avoid: GearSet) -> Vec<Gear> {
    let crossed = drivetrain.crossed_rule();
    let mut good = Vec::with_capacity(drivetrain.gear_count());
    good.extend(avoid.rest(drivetrain).filter(|&gear| !crossed.covers(gear)));
    good
}

fn adds_to(last: Option<Gear>, gear: Gear, tolerance: DuplicateTolerance) -> bool {
    last.is_none_or(|last| gear.cmp_ratio(last).is_gt() && !gear.step_to(last).is_within(tolerance))
}

impl Shift {
    fn between(drivetrain: &Drivetrain, from: Gear, to: Gear) -> Self {
        let sprockets = drivetrain.cassette.sprockets_between(from.sprocket, to.sprocket);
        let kind = match (from.ring == to.ring, sprockets) {
            (true, _) => ShiftKind::Rear,
            (false, 0) => ShiftKind::Front,
            (false, _) => ShiftKind::Double,
        };
        Self { from, to, kind, sprockets, step: from.step_to(to) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn order(chainset: &str, cassette: &str) -> RidingOrder {
        let bike = Drivetrain { chainset: chainset.parse().unwrap(), cassette: cassette.parse().unwrap() };
        RidingOrder::ring_by_ring(&bike, GearSet::NONE, DuplicateTolerance::default())
    }

    #[test]
    fn one_gear_has_no_steps() {
        assert_eq!(order("42", "18").step_spread(), None);
    }

    #[test]
    fn two_rings_on_one_sprocket_are_a_front_shift() {
        assert_eq!(order("44/40", "18").shifts[0].kind, ShiftKind::Front);
    }

    #[test]
    fn a_ring_that_adds_nothing_is_left_out() {
        assert_eq!(order("60/59", "18").gear_count(), 1);
    }
}
