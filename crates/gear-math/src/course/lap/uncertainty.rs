//! The inputs nobody knows exactly, moved one at a time.

use crate::course::lap::costs::Mounting;
use crate::course::quantity::MountTime;
use crate::quantity::Cadence;
use crate::rider::{
    Bike, FootCostFactor, FootFactor, GrossEfficiency, Ground, LoadFactor, Rider, RollingCoefficient,
};
use crate::rider::{CADENCE_RPM, EFFICIENCY, GROUND, LOAD, PERSON};

/// How far the time lost by getting off and on may be off, both together, s. Estimate.
pub(in crate::course) const MOUNTING_S: f64 = 1.0;

/// How the uncertain inputs are moved: those of the [`Band`](crate::rider::Band) of ride or run by the same amounts, and the two
/// that decide where a gear gives out and what that costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Moved {
    /// Added to gross efficiency.
    efficiency: f64,
    /// To the lower (−1) or the higher edge (1) of rolling resistance.
    rolling: f64,
    /// Added to the carried load factor.
    load: f64,
    /// Factor on what the ground adds on foot.
    ground: f64,
    /// Factor on a person's cost on foot.
    person: f64,
    /// Added to the lowest cadence, rpm.
    cadence: f64,
    /// Added to the time lost by getting off and on, both together, s.
    mounting: f64,
}

impl Moved {
    /// As given.
    pub(in crate::course) const NOT: Self = Self {
        efficiency: 0.0,
        rolling: 0.0,
        load: 0.0,
        ground: 1.0,
        person: 1.0,
        cadence: 0.0,
        mounting: 0.0,
    };

    /// Each input alone, both ways.
    pub(in crate::course) const EACH: [Self; 14] = [
        Self { efficiency: -EFFICIENCY, ..Self::NOT },
        Self { efficiency: EFFICIENCY, ..Self::NOT },
        Self { rolling: -1.0, ..Self::NOT },
        Self { rolling: 1.0, ..Self::NOT },
        Self { load: LOAD[0], ..Self::NOT },
        Self { load: LOAD[1], ..Self::NOT },
        Self { ground: GROUND[0], ..Self::NOT },
        Self { ground: GROUND[1], ..Self::NOT },
        Self { person: PERSON[0], ..Self::NOT },
        Self { person: PERSON[1], ..Self::NOT },
        Self { cadence: -CADENCE_RPM, ..Self::NOT },
        Self { cadence: CADENCE_RPM, ..Self::NOT },
        Self { mounting: -MOUNTING_S, ..Self::NOT },
        Self { mounting: MOUNTING_S, ..Self::NOT },
    ];

    pub(in crate::course) fn rider(&self, given: &Rider) -> Rider {
        Rider {
            efficiency: GrossEfficiency::nearest(given.efficiency.share() + self.efficiency),
            foot_cost: FootCostFactor::nearest(given.foot_cost.value() * self.person),
            lowest_cadence: self.lowest_cadence(given),
            ..*given
        }
    }

    /// No lower than a cadence may be, and no higher than the highest.
    fn lowest_cadence(&self, given: &Rider) -> Cadence {
        let rpm = (given.lowest_cadence.rpm() + self.cadence).min(given.highest_cadence.rpm());
        Cadence::new(rpm.max(Cadence::LIMITS.min)).unwrap_or(given.lowest_cadence)
    }

    /// Half of it falls to getting off and half to getting on; neither takes less than no time.
    pub(in crate::course) fn mounting(&self, given: &Mounting) -> Mounting {
        let moved =
            |time: MountTime| MountTime::new((time.s() + self.mounting / 2.0).max(0.0)).unwrap_or(time);
        Mounting { off: moved(given.off), on: moved(given.on), ..*given }
    }

    pub(in crate::course) fn bike(&self, given: &Bike) -> Bike {
        Bike { load: LoadFactor::nearest(given.load.value() + self.load), ..*given }
    }

    pub(in crate::course) fn ground(&self, given: &Ground) -> Ground {
        Ground {
            rolling: RollingCoefficient::nearest(given.rolling_moved(self.rolling)),
            foot: FootFactor::nearest(1.0 + (given.foot.value() - 1.0) * self.ground),
            ..*given
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    use crate::rider::{Air, BikeMass, BodyMass, KitMass, RidingLimits};
    use crate::wheel::MountedWidth;
    use crate::{Circumference, Drivetrain, Power, RideOrRun, Surface};

    fn rider() -> Rider {
        Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(230.0).unwrap())
    }

    fn bike() -> Bike {
        let drivetrain =
            Drivetrain { chainset: "44".parse().unwrap(), cassette: "13-17-25".parse().unwrap() };
        Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap())
    }

    fn ground() -> Ground {
        Surface::Mud.ground_under(MountedWidth::CROSS)
    }

    /// Efficiency, cost on foot and lowest cadence; load; rolling and what the ground adds on foot; off and on.
    fn values(moved: &Moved) -> [f64; 8] {
        let (rider, mounting, ground) =
            (moved.rider(&rider()), moved.mounting(&Mounting::USUAL), moved.ground(&ground()));
        [
            rider.efficiency.share(),
            rider.foot_cost.value(),
            rider.lowest_cadence.rpm(),
            moved.bike(&bike()).load.value(),
            ground.rolling.value(),
            ground.foot.value(),
            mounting.off.s(),
            mounting.on.s(),
        ]
    }

    /// Which of the values stands apart from what was given, and by how much.
    fn apart(moved: &Moved) -> Vec<(usize, f64)> {
        let pairs = values(&Moved::NOT).into_iter().zip(values(moved)).enumerate();
        let changes = pairs.map(|(at, (given, moved))| (at, moved - given));
        changes.filter(|(_, change)| change.abs() > 1e-12).collect()
    }

    #[test]
    fn what_is_not_moved_stays_as_given() {
        let not = Moved::NOT;
        assert_eq!((not.rider(&rider()), not.bike(&bike())), (rider(), bike()));
        assert_eq!(not.mounting(&Mounting::USUAL), Mounting::USUAL);
        let (given, kept) = (ground(), not.ground(&ground()));
        assert!((given.foot.value() - kept.foot.value()).abs() < 1e-12);
        assert_eq!(Ground { foot: given.foot, ..kept }, given);
    }

    /// Mud adds half as much again on foot, its rolling is 0.08, and a bike is carried for 1.2 of its mass.
    #[test]
    fn each_doubt_moves_one_input_by_as_much_as_is_said() {
        let expected = [
            vec![(0, -0.02)],
            vec![(0, 0.02)],
            vec![(4, -0.3 * 0.08)],
            vec![(4, 0.3 * 0.08)],
            vec![(3, -0.2)],
            vec![(3, 0.3)],
            vec![(5, -0.25)],
            vec![(5, 0.25)],
            vec![(1, -0.08)],
            vec![(1, 0.08)],
            vec![(2, -5.0)],
            vec![(2, 5.0)],
            vec![(6, -0.5), (7, -0.5)],
            vec![(6, 0.5), (7, 0.5)],
        ];
        for (moved, expected) in Moved::EACH.iter().zip(expected) {
            let found = apart(moved);
            let is_as_said = |(found, said): (&(usize, f64), &(usize, f64))| {
                found.0 == said.0 && (found.1 - said.1).abs() < 1e-9
            };
            assert!(
                found.len() == expected.len() && found.iter().zip(&expected).all(is_as_said),
                "{moved:?}: {found:?}"
            );
        }
    }

    /// Half a cost on foot more is half more, not half of one.
    #[test]
    fn factors_multiply_what_is_given() {
        let costly = Rider { foot_cost: FootCostFactor::new(1.1).unwrap(), ..rider() };
        let moved = Moved { person: 1.08, ..Moved::NOT };
        assert!((moved.rider(&costly).foot_cost.value() - 1.1 * 1.08).abs() < 1e-12);
    }

    #[test]
    fn nothing_is_moved_beyond_what_can_be() {
        let moved = Moved { cadence: 5.0, mounting: -1.0, ..Moved::NOT };
        let slow =
            Rider { highest_cadence: Cadence::new(rider().lowest_cadence.rpm() + 2.0).unwrap(), ..rider() };
        assert_eq!(moved.rider(&slow).lowest_cadence, slow.highest_cadence);
        let lowest = Rider { lowest_cadence: Cadence::new(Cadence::LIMITS.min).unwrap(), ..rider() };
        assert_eq!(Moved { cadence: -5.0, ..Moved::NOT }.rider(&lowest), lowest);
        let quick = MountTime::new(0.2).unwrap();
        let mounting = moved.mounting(&Mounting { off: quick, ..Mounting::USUAL });
        assert_eq!((mounting.off.s(), mounting.on.s()), (0.0, 1.0));
    }

    /// More efficient, less is left to run with; who costs more on foot is slower there.
    #[test]
    fn doubts_slow_on_the_side_they_are_doubts_of() {
        let foot = |moved: &Moved| {
            let rider = moved.rider(&rider());
            let question =
                RideOrRun::new(rider, moved.bike(&bike()), Air::STILL, RidingLimits::GEAR_ONLY).unwrap();
            question.foot_speed(&moved.ground(&ground()), crate::rider::Climb::new(8.0).unwrap()).m_per_s()
        };
        let given = foot(&Moved::NOT);
        for (less, more) in [(0, 1), (4, 5), (6, 7), (8, 9)] {
            let [quicker, slower] = [less, more].map(|at: usize| foot(&Moved::EACH[at]));
            assert!(quicker > given && given > slower, "{less}: {quicker} {given} {slower}");
        }
    }
}
