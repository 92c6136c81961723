//! What must hold for every gear, every set-up and every two set-ups.

#![expect(
    clippy::unwrap_used,
    reason = "strategies draw from the limits, and a draw outside them must fail the run"
)]

use gear_math::gears::{EndDifference, GearSet, RidingOrder, RollOutLimit, SharedGear, Shift, ShiftKind};
use gear_math::{
    Cadence, Cassette, Chainring, Chainset, Circumference, Compared, Comparison, Derailleur, Drivetrain,
    DuplicateTolerance, Gear, Setup, Sprocket, TotalCapacity,
};
use proptest::prelude::*;
use proptest::sample::subsequence;

/// Relative error that a handful of rounded operations may leave.
const ROUNDING: f64 = 1e-14;

fn gears() -> impl Strategy<Value = Gear> {
    (20..=60_u16, 9..=60_u16).prop_map(|(ring, sprocket)| Gear::new(ring, sprocket).unwrap())
}

fn chainsets() -> impl Strategy<Value = Chainset> {
    subsequence((20..=60).collect::<Vec<u16>>(), 1..=3).prop_map(|teeth| Chainset::new(teeth).unwrap())
}

fn cassettes() -> impl Strategy<Value = Cassette> {
    subsequence((9..=60).collect::<Vec<u16>>(), 1..=14).prop_map(|teeth| Cassette::new(teeth).unwrap())
}

fn drivetrains() -> impl Strategy<Value = Drivetrain> {
    (chainsets(), cassettes()).prop_map(|(chainset, cassette)| Drivetrain { chainset, cassette })
}

/// Whole millimetres, and few enough of them that two set-ups often roll on the same wheel.
fn wheels() -> impl Strategy<Value = Circumference> {
    prop_oneof![2090_u16..2200, Just(2150), 500_u16..=3000]
        .prop_map(|mm| Circumference::new(mm.into()).unwrap())
}

fn set_ups() -> impl Strategy<Value = Setup> {
    (drivetrains(), wheels()).prop_map(|(drivetrain, wheel)| Setup::new(drivetrain, wheel))
}

fn tolerances() -> impl Strategy<Value = DuplicateTolerance> {
    (0.0..=10.0).prop_map(|percent| DuplicateTolerance::new(percent).unwrap())
}

fn is_close(a: f64, b: f64) -> bool {
    (a - b).abs() <= ROUNDING * a.abs().max(b.abs())
}

fn exchanged(comparison: Comparison) -> Comparison {
    let other_side = |difference: EndDifference| EndDifference {
        longer: difference.longer.map(|side| if side == Compared::A { Compared::B } else { Compared::A }),
        ..difference
    };
    Comparison {
        a: comparison.b,
        b: comparison.a,
        shared: comparison.shared.iter().map(|pair| SharedGear { a: pair.b, b: pair.a, ..*pair }).collect(),
        only_a: comparison.only_b,
        only_b: comparison.only_a,
        lowest: other_side(comparison.lowest),
        highest: other_side(comparison.highest),
    }
}

fn rises(mut gears: impl Iterator<Item = Gear>) -> bool {
    let first = gears.next().unwrap();
    gears.try_fold(first, |before, gear| gear.cmp_ratio(before).is_gt().then_some(gear)).is_some()
}

proptest! {
    #[test]
    fn ratio_development_and_gear_inches_agree(gear in gears(), wheel in wheels()) {
        let development = gear.development(wheel);
        let inches = gear.gear_inches(wheel);
        prop_assert!(is_close(development.m() * 1000.0, gear.ratio().value() * wheel.mm()));
        prop_assert!(is_close(inches.inches() * 25.4, gear.ratio().value() * wheel.diameter().mm()));
        prop_assert!(is_close(inches.development().m(), development.m()));
        prop_assert!(is_close(gear.nominal_gear_inches().inches(), gear.ratio().value() * 27.0));
    }

    #[test]
    fn cadence_comes_back_from_speed(gear in gears(), wheel in wheels(), rpm in 20.0..=200.0) {
        let development = gear.development(wheel);
        let speed = development.speed_at(Cadence::new(rpm).unwrap());
        prop_assert!(is_close(development.cadence_at(speed).rpm(), rpm));
    }

    #[test]
    fn exchanging_the_set_ups_exchanges_the_answer(a in set_ups(), b in set_ups(), tolerance in tolerances()) {
        prop_assert_eq!(a.compare(&b, tolerance), exchanged(b.compare(&a, tolerance)));
    }

    #[test]
    fn a_set_up_shares_every_gear_with_itself(set_up in set_ups(), tolerance in tolerances()) {
        let comparison = set_up.compare(&set_up, tolerance);
        prop_assert_eq!(comparison.shared.len(), set_up.drivetrain.gear_count());
        prop_assert!(comparison.shared.iter().all(|pair| pair.a == pair.b));
        prop_assert_eq!(comparison.only_a.below.or(comparison.only_a.above), None);
    }

    #[test]
    fn shared_gears_are_near_and_used_once(a in set_ups(), b in set_ups(), tolerance in tolerances()) {
        let shared = a.compare(&b, tolerance).shared;
        prop_assert!(shared.iter().all(|pair| pair.step.is_within(tolerance)));
        for (at, pair) in shared.iter().enumerate() {
            prop_assert!(shared[..at].iter().all(|before| before.a != pair.a && before.b != pair.b));
        }
    }

    /// A cassette with some sprockets left out shares at least those it keeps.
    #[test]
    fn kept_sprockets_are_shared(set_up in set_ups(), keep in 1_usize..14, tolerance in tolerances()) {
        let kept: Vec<u16> =
            set_up.drivetrain.cassette.sprockets().iter().take(keep).map(|sprocket| sprocket.teeth()).collect();
        let fewer = Drivetrain { cassette: Cassette::new(kept).unwrap(), ..set_up.drivetrain };
        let comparison = set_up.compare(&Setup { drivetrain: fewer, ..set_up }, tolerance);
        prop_assert_eq!(comparison.shared.len(), fewer.gear_count());
        prop_assert_eq!(comparison.only_b.below.or(comparison.only_b.above), None);
    }

    /// One gear each, at least 16 % apart: what the lower and the higher reach alone is exactly that gear.
    #[test]
    fn own_reach_is_a_lone_gear(
        (low_ring, low_sprocket) in (20..40_u16, 34..=60_u16),
        (high_ring, high_sprocket) in (40..=60_u16, 9..=30_u16),
        wheel in wheels(),
    ) {
        let low = Gear::new(low_ring, low_sprocket).unwrap();
        let high = Gear::new(high_ring, high_sprocket).unwrap();
        let single = |gear: Gear| {
            let chainset = Chainset::new([gear.ring.teeth()]).unwrap();
            let cassette = Cassette::new([gear.sprocket.teeth()]).unwrap();
            Setup::new(Drivetrain { chainset, cassette }, wheel)
        };
        let comparison = single(low).compare(&single(high), DuplicateTolerance::default());
        let below = comparison.only_a.below.unwrap();
        prop_assert_eq!((below.from, below.to), (low.development(wheel), low.development(wheel)));
        prop_assert_eq!(comparison.only_a.above, None);
        prop_assert_eq!(comparison.only_b.below, None);
        prop_assert_eq!(comparison.only_b.above.map(|span| span.from), Some(high.development(wheel)));
    }

    #[test]
    fn riding_orders_rise_from_the_lowest_gear(drivetrain in drivetrains(), tolerance in tolerances()) {
        let order = RidingOrder::ring_by_ring(&drivetrain, GearSet::NONE, tolerance);
        let useful = RidingOrder::every_useful_gear(&drivetrain, GearSet::NONE, tolerance);
        for order in [&order, &useful] {
            prop_assert_eq!(order.start, drivetrain.lowest());
            prop_assert!(rises(order.gears()));
            prop_assert!(order.gears().all(|gear| !drivetrain.is_crossed(gear)));
        }
        let is_wanted = |shift: &Shift| !shift.step.is_within(tolerance);
        prop_assert!(useful.shifts.iter().all(is_wanted));
        prop_assert!(order.shifts.iter().filter(|shift| shift.kind != ShiftKind::Rear).all(is_wanted));
    }

    /// Without a tolerance nothing is left out, so both orders end in the highest gear, and one change of ring is
    /// enough for two rings.
    #[test]
    fn riding_orders_reach_the_highest_gear(drivetrain in drivetrains()) {
        let none = DuplicateTolerance::new(0.0).unwrap();
        let order = RidingOrder::ring_by_ring(&drivetrain, GearSet::NONE, none);
        let useful = RidingOrder::every_useful_gear(&drivetrain, GearSet::NONE, none);
        prop_assert_eq!(order.gears().last(), Some(drivetrain.highest()));
        prop_assert!(useful.gears().last().unwrap().cmp_ratio(drivetrain.highest()).is_eq());
        prop_assert!(order.double_shifts() < drivetrain.chainset.rings().len());
    }

    #[test]
    fn every_gear_lies_inside_or_outside(drivetrain in drivetrains(), tolerance in tolerances()) {
        let overlap = drivetrain.overlap(tolerance);
        prop_assert_eq!(overlap.inside + overlap.outside, drivetrain.gear_count());
        let is_sound = |pair: &gear_math::gears::DuplicatePair| {
            pair.on_larger.ring > pair.on_smaller.ring && pair.step.is_within(tolerance)
        };
        prop_assert!(overlap.duplicates.iter().all(is_sound));
    }

    #[test]
    fn capacity_grows_by_the_teeth_added(drivetrain in drivetrains(), ring in 20..=60_u16, sprocket in 9..=60_u16) {
        let needed = drivetrain.needed_capacity();
        let (ring, sprocket) = (Chainring::new(ring).unwrap(), Sprocket::new(sprocket).unwrap());
        if sprocket > drivetrain.cassette.largest() && drivetrain.cassette.sprockets().len() < 14 {
            let teeth = drivetrain.cassette.sprockets().iter().copied().chain([sprocket]).map(Sprocket::teeth);
            let wider = Drivetrain { cassette: Cassette::new(teeth).unwrap(), ..drivetrain };
            let added = sprocket.teeth() - drivetrain.cassette.largest().teeth();
            prop_assert_eq!(wider.needed_capacity(), needed + added);
        }
        if !drivetrain.chainset.rings().contains(&ring) && drivetrain.chainset.rings().len() < 3 {
            let teeth = drivetrain.chainset.rings().iter().copied().chain([ring]).map(Chainring::teeth);
            let wider = Drivetrain { chainset: Chainset::new(teeth).unwrap(), ..drivetrain };
            prop_assert!(wider.needed_capacity() >= needed);
        }
    }

    /// The largest slack of any gear is the capacity needed, and largest with largest is never slack.
    #[test]
    fn slack_runs_from_nothing_to_the_capacity_needed(drivetrain in drivetrains()) {
        let slack = || drivetrain.gears().map(|gear| drivetrain.slack(gear));
        prop_assert_eq!(slack().max(), Some(drivetrain.needed_capacity()));
        prop_assert_eq!(slack().min(), Some(0));
        let big_big = Gear { ring: drivetrain.chainset.largest(), sprocket: drivetrain.cassette.largest() };
        prop_assert_eq!(drivetrain.slack(big_big), 0);
    }

    /// A larger capacity never makes the verdict worse, and exactly the capacity needed is enough.
    #[test]
    fn more_capacity_is_never_worse(drivetrain in drivetrains(), teeth in 5..91_u16) {
        let check = |teeth| {
            let total_capacity = Some(TotalCapacity::new(teeth).unwrap());
            Derailleur { total_capacity, ..Derailleur::default() }.check(&drivetrain)
        };
        prop_assert!(check(teeth + 1).verdict <= check(teeth).verdict);
        prop_assert_eq!(check(teeth).findings.is_empty(), teeth >= drivetrain.needed_capacity());
    }

    #[test]
    fn limits_split_the_sprockets(set_up in set_ups(), metres in 1.0..=20.0) {
        let limit = RollOutLimit::new(metres).unwrap();
        for ring in limit.test(&set_up.drivetrain, set_up.wheel) {
            let allowed = |&sprocket: &Sprocket| {
                limit.allows(Gear { ring: ring.ring, sprocket }.development(set_up.wheel))
            };
            prop_assert!(ring.passes.iter().all(allowed));
            prop_assert!(!ring.too_long.iter().any(allowed));
            prop_assert_eq!([ring.too_long, ring.passes].concat(), set_up.drivetrain.cassette.sprockets());
        }
    }
}
