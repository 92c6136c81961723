//! What is said of rings, sprockets, cage and roll-out, held against counts by hand.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::cage::{CageFinding, FrontConcern, FrontLimits};
use gear_math::chain::{Cage, CageMeasures, ChainDefaults, Change, EffortPart, GearState, PulleyCentres};
use gear_math::gears::{GearSet, RollOutLimit};
use gear_math::wheel::TyreKind;
use gear_math::{
    CageVerdict, Cassette, ChainAdvice, ChainLinks, ChainSetup, Chainring, Chainset, Circumference, Compared,
    Derailleur, Drivetrain, Gear, Setup, Sprocket, TotalCapacity, Wheel,
};
use proptest::prelude::*;

const CASSETTE: &str = "11-13-15-18-21-24-28-32";
const WIDE: &str = "11-13-15-17-19-21-24-28-32-37-42";

fn bike(rings: &str, sprockets: &str) -> Drivetrain {
    Drivetrain { chainset: rings.parse().unwrap(), cassette: sprockets.parse().unwrap() }
}

fn wheel(mm: f64) -> Circumference {
    Circumference::new(mm).unwrap()
}

#[test]
fn rings_too_far_apart_too_close_or_off_the_curve_are_named() {
    let limits = FrontLimits { most_difference: 16, least_difference: 10, made_for: Chainring::new(46).ok() };
    let concerns = |rings: &str| limits.concerns(&rings.parse().unwrap());
    let curve = |ring: u16| FrontConcern::CurveDiffers {
        ring: Chainring::new(ring).unwrap(),
        made_for: Chainring::new(46).unwrap(),
    };
    assert_eq!([concerns("46/30"), concerns("46/36"), concerns("46/33")], [[], [], []]);
    assert_eq!(concerns("46/29"), [FrontConcern::DifferenceTooLarge { teeth: 17, most: 16 }]);
    assert_eq!(concerns("46/37"), [FrontConcern::DifferenceTooSmall { teeth: 9, least: 10 }]);
    let allowed = FrontLimits::CURVE_TOLERANCE;
    for off in 0..=allowed + 2 {
        let rings = format!("{}/{}", 46 + off, 34 + off);
        let expected = if off > allowed { vec![curve(46 + off)] } else { Vec::new() };
        assert_eq!(concerns(&rings), expected, "{rings}");
    }
    assert_eq!(concerns("60"), []);
    assert_eq!(FrontLimits { made_for: None, ..limits }.concerns(&"58/44".parse().unwrap()), []);
}

/// Of three rings the closest neighbours count.
#[test]
fn the_closest_neighbours_count() {
    let limits = FrontLimits { most_difference: 22, least_difference: 10, made_for: None };
    let concerns = limits.concerns(&"48/39/26".parse().unwrap());
    assert_eq!(concerns, [FrontConcern::DifferenceTooSmall { teeth: 9, least: 10 }]);
}

/// What a limit of 6.10 m allows within a roll-out that may be 1.5 % off: 40 × 14 on 2.135 m is 6.10 m.
#[test]
fn a_gear_near_the_limit_is_undecided() {
    let limit = RollOutLimit::new(6.1).unwrap();
    let estimate =
        Wheel { tyre: "30-622".parse().unwrap(), kind: TyreKind::CycloCross, measured: None }.estimate();
    let undecided = |ring, sprocket| limit.is_undecided(Gear::new(ring, sprocket).unwrap(), &estimate);
    assert!(undecided(40, 14), "2.1426 m: 6.03 to 6.21 m");
    assert!(!undecided(40, 13) && !undecided(40, 15) && !undecided(34, 11));
}

proptest! {
    #[test]
    fn an_end_is_so_much_longer_or_shorter(a in 1500.0..2500.0_f64, b in 1500.0..2500.0_f64) {
        let set_up = |mm| Setup { drivetrain: bike("40", CASSETTE), wheel: wheel(mm), avoid: GearSet::NONE };
        let comparison = set_up(a).compare(&set_up(b), gear_math::DuplicateTolerance::default());
        for end in [comparison.lowest, comparison.highest] {
            prop_assert!((end.b_against_a_percent() - 100.0 * (b / a - 1.0)).abs() < 1e-9);
            prop_assert_eq!(end.longer, Some(if a > b { Compared::A } else { Compared::B }));
        }
    }

    /// Gears in common are within the tolerance, and told as B against A.
    #[test]
    fn gears_in_common_are_told_as_far_apart_as_they_are(a in 2000.0..2200.0_f64, b in 2000.0..2200.0_f64) {
        let set_up = |mm, rings| Setup { drivetrain: bike(rings, CASSETTE), wheel: wheel(mm), avoid: GearSet::NONE };
        let (first, second) = (set_up(a, "44/31"), set_up(b, "40"));
        let comparison = first.compare(&second, gear_math::DuplicateTolerance::default());
        for shared in &comparison.shared {
            let [in_a, in_b] = [shared.a.development(wheel(a)).m(), shared.b.development(wheel(b)).m()];
            let apart = 100.0 * (in_a.max(in_b) / in_a.min(in_b) - 1.0);
            prop_assert!(apart <= 2.0 + 1e-9);
        }
    }

    #[test]
    fn a_front_change_is_made_up_for_by_the_nearest_gear(
        small in 26_u16..40, more in 4_u16..18, sprockets in prop::collection::btree_set(11_u16..=42, 3..=12),
    ) {
        let drivetrain = Drivetrain {
            chainset: Chainset::new([small + more, small]).unwrap(),
            cassette: Cassette::new(sprockets.iter().copied()).unwrap(),
        };
        let teeth: Vec<u64> = sprockets.iter().map(|&teeth| u64::from(teeth)).collect();
        let (small, large) = (u64::from(small), u64::from(small + more));
        let factor = |at: usize, to: usize| (large * teeth[at], small * teeth[to]);
        let closer = |(p, q): (u64, u64), (r, s): (u64, u64)| (p.max(q) * r.min(s)).cmp(&(r.max(s) * p.min(q)));
        let made_up = (0..teeth.len()).filter(|&at| large * teeth[at] <= small * teeth[teeth.len() - 1]);
        let moves: Vec<usize> = made_up
            .map(|at| (at..teeth.len()).min_by(|&a, &b| closer(factor(at, a), factor(at, b))).unwrap() - at)
            .collect();
        let expected = moves.iter().min().copied().zip(moves.iter().max().copied());
        let found = drivetrain.front_changes().next().unwrap().rear_shifts.map(|range| (*range.start(), *range.end()));
        prop_assert_eq!(found, expected);
    }

    #[test]
    fn a_riding_order_counts_its_own_gears(small in 26_u16..36, more in 8_u16..18) {
        let set_up = Setup { drivetrain: bike(&format!("{}/{small}", small + more), WIDE), wheel: wheel(2100.0), avoid: GearSet::NONE };
        let summary = set_up.summary(gear_math::DuplicateTolerance::default());
        for order in [&summary.riding_order, &summary.useful_order] {
            let gears: Vec<Gear> = order.gears().collect();
            prop_assert_eq!(order.gear_count(), gears.len());
            let both = |pair: &[Gear]| pair[0].ring != pair[1].ring && pair[0].sprocket != pair[1].sprocket;
            prop_assert_eq!(order.double_shifts(), gears.windows(2).filter(|pair| both(pair)).count());
            let ratio = |gear: &Gear| f64::from(gear.ring.teeth()) / f64::from(gear.sprocket.teeth());
            let steps: Vec<f64> =
                gears.windows(2).map(|pair| 100.0 * (ratio(&pair[1]) / ratio(&pair[0]) - 1.0)).collect();
            let spread = order.step_spread().unwrap();
            let mean = steps.iter().sum::<f64>() / steps.len() as f64;
            prop_assert!((spread.mean.percent() - mean).abs() < 1e-9);
            let equal = (ratio(&gears[gears.len() - 1]) / ratio(&gears[0])).powf(1.0 / steps.len() as f64);
            prop_assert!((spread.equal.percent() - 100.0 * (equal - 1.0)).abs() < 1e-9);
        }
        prop_assert_eq!(summary.useful(), summary.useful_order.gears().count());
        prop_assert!(summary.useful() <= summary.gears - summary.crossed);
    }
}

#[test]
fn crossed_gears_are_those_of_the_rule() {
    let double = bike("44/31", WIDE);
    let crossed: Vec<Gear> = double.gears().filter(|&gear| double.is_crossed(gear)).collect();
    assert_eq!(crossed, double.crossed_rule().gears().collect::<Vec<_>>());
    assert!(!crossed.is_empty() && crossed.len() < 11);
    let single = bike("40", WIDE);
    assert!(!single.gears().any(|gear| single.is_crossed(gear)));
}

/// A short cage that only hangs slack in crossed gears fits if they are avoided; any other shortage does not fit.
#[test]
fn what_avoided_gears_mend_is_no_refusal() {
    let check = |capacity| {
        let derailleur =
            Derailleur { total_capacity: TotalCapacity::new(capacity).ok(), ..Derailleur::default() };
        derailleur.check(&bike("44/31", CASSETTE))
    };
    assert!(matches!(check(33).findings[..], [CageFinding::AvoidGears { short_by: 1, .. }]));
    assert_eq!(check(33).verdict, CageVerdict::FitsIfGearsAvoided);
    assert_eq!(check(28).verdict, CageVerdict::DoesNotFit);
}

/// A figure that is just met is met.
#[test]
fn a_figure_that_is_just_met_is_met() {
    let teeth = |teeth| Sprocket::new(teeth).ok();
    let derailleur = Derailleur {
        largest_sprocket: teeth(32),
        smallest_sprocket: teeth(11),
        ring_difference: gear_math::gears::RingDifference::new(13).ok(),
        total_capacity: TotalCapacity::new(34).ok(),
    };
    assert_eq!(derailleur.check(&bike("44/31", CASSETTE)).findings, []);
}

fn setup(drivetrain: Drivetrain, centres: f64) -> ChainSetup {
    let cage = CageMeasures { pulley_centres: PulleyCentres::new(centres).unwrap(), ..ChainDefaults::CAGE };
    ChainSetup {
        chainline: ChainDefaults::chainline(&drivetrain),
        drivetrain,
        frame: ChainDefaults::FRAME,
        cage: Cage::new(cage).unwrap(),
    }
}

fn advice(setup: &ChainSetup) -> ChainAdvice {
    setup.advise(None, &Derailleur::default(), &ChainDefaults::HANGER).unwrap()
}

/// Some hundred bikes on cages too short for most of them.
fn short_cages() -> Vec<ChainSetup> {
    let rings = ["44/31", "48/32", "50/34", "42/28", "48/38/26"];
    let cassettes = [CASSETTE, WIDE, "11-12-13-14-15-17-19-21-24-27-30"];
    let centres = [47.0, 50.0, 55.0, 60.0, 65.0, 70.0, 75.0];
    let bikes = rings.iter().flat_map(|rings| cassettes.map(|cassette| bike(rings, cassette)));
    bikes.flat_map(|bike| centres.map(|centres| setup(bike, centres))).collect()
}

fn is_open(setup: &ChainSetup) -> bool {
    setup.window().is_ok_and(|window| window.is_open())
}

fn with_rings(setup: &ChainSetup, rings: &[u16]) -> ChainSetup {
    let chainset = Chainset::new(rings.iter().copied()).unwrap();
    ChainSetup { drivetrain: Drivetrain { chainset, ..setup.drivetrain }, ..*setup }
}

/// The same remedy with half the change is none: one tooth closer to what there is leaves no chain for every gear.
fn is_the_least(setup: &ChainSetup, change: &Change) -> bool {
    let before: Vec<u16> = setup.drivetrain.chainset.rings().iter().map(|ring| ring.teeth()).collect();
    match change {
        Change::LongerCage(enough) => {
            let shorter = enough.mm() - 1.0;
            let measures = setup.cage.measures();
            let cage = CageMeasures { pulley_centres: PulleyCentres::new(shorter).unwrap(), ..*measures };
            shorter < measures.pulley_centres.mm()
                || !is_open(&ChainSetup { cage: Cage::new(cage).unwrap(), ..*setup })
        }
        Change::CloserRings(chainset) => {
            let after: Vec<u16> = chainset.rings().iter().map(|ring| ring.teeth()).collect();
            let nearer: Vec<u16> = before
                .iter()
                .zip(&after)
                .map(|(&before, &after)| if after < before { after + 1 } else { after.max(before + 1) - 1 })
                .collect();
            let moved = before.iter().zip(&after).filter(|(before, after)| before != after).count();
            let rings: Vec<u16> = before
                .iter()
                .zip(&after)
                .zip(nearer)
                .map(|((b, a), n)| if b == a { *b } else { n })
                .collect();
            moved == 1 && (rings == before || !is_open(&with_rings(setup, &rings)))
        }
        Change::SmallerSprocket(largest) => {
            let kept = setup.drivetrain.cassette.sprockets().iter().map(|sprocket| sprocket.teeth());
            let teeth = largest.teeth() + 1;
            let cassette = Cassette::new(kept.filter(|&kept| kept < teeth).chain([teeth])).unwrap();
            let drivetrain = Drivetrain { cassette, ..setup.drivetrain };
            teeth >= setup.drivetrain.cassette.largest().teeth()
                || !is_open(&ChainSetup { drivetrain, ..*setup })
        }
        _ => true,
    }
}

#[test]
fn every_short_cage_has_remedies_and_each_is_the_least_that_helps() {
    let (mut short, mut longer, mut raised, mut lowered, mut sprockets, mut avoided) = (0, 0, 0, 0, 0, 0);
    for setup in short_cages() {
        let advice = advice(&setup);
        if advice.fit.all_usable() {
            assert!(advice.remedies.is_empty());
            continue;
        }
        short += 1;
        assert!(
            advice.remedies.iter().any(|remedy| matches!(remedy.change, Change::LongerCage(_))),
            "{setup:?}"
        );
        for remedy in &advice.remedies {
            assert!(is_the_least(&setup, &remedy.change), "{:?} for {setup:?}", remedy.change);
            match &remedy.change {
                Change::LongerCage(enough) => {
                    longer += 1;
                    let before = setup.cage.measures().pulley_centres.mm();
                    assert!((remedy.effort.share - (enough.mm() / before - 1.0)).abs() < 1e-9);
                }
                Change::CloserRings(chainset) => {
                    let before = setup.drivetrain.chainset;
                    let ends = [before.smallest(), before.largest(), chainset.smallest(), chainset.largest()];
                    let [small, large, after_small, after_large] = ends.map(|ring| f64::from(ring.teeth()));
                    raised += u16::from(after_small > small);
                    lowered += u16::from(after_large < large);
                    let share = (after_small - small) / small + (large - after_large) / large;
                    assert!((remedy.effort.share - share).abs() < 1e-9);
                    assert_eq!(chainset.rings().len(), before.rings().len());
                }
                Change::SmallerSprocket(largest) => {
                    sprockets += 1;
                    let all = setup.drivetrain.cassette.sprockets();
                    let kept = all.iter().filter(|sprocket| *sprocket < largest).count() + 1;
                    assert_eq!(remedy.fit.gears.len(), setup.drivetrain.chainset.rings().len() * kept);
                    let before = f64::from(setup.drivetrain.cassette.largest().teeth());
                    let share = (before - f64::from(largest.teeth())) / before;
                    assert!((remedy.effort.share - share).abs() < 1e-9);
                }
                Change::AvoidGears(gears) => {
                    avoided += 1;
                    let fit = &remedy.fit;
                    assert!(!gears.is_empty());
                    assert_eq!(gears, &fit.in_state(GearState::Slack).collect::<Vec<_>>());
                    assert!(gears.iter().all(|&gear| setup.drivetrain.is_crossed(gear)));
                    assert_eq!(remedy.effort.part, EffortPart::Nothing, "the chain is the recommended one");
                    let share = gears.len() as f64 / fit.gears.len() as f64;
                    assert!((remedy.effort.share - share).abs() < 1e-9);
                }
                _ => {}
            }
        }
    }
    assert!(short > 20 && longer == short, "{short} short cages, {longer} longer ones");
    assert!(raised > 10 && lowered > 10, "{raised} {lowered}");
    assert!(sprockets > 10 && avoided > 3, "{sprockets} {avoided}");
}

/// A chain that was cut wrongly is first answered with the right one.
#[test]
fn a_wrong_chain_is_answered_with_the_right_one() {
    let setup = setup(bike("44/31", CASSETTE), 90.0);
    let recommended = setup.fit(None).unwrap().recommended;
    for off in [-8_i32, 12] {
        let links = u16::try_from(i32::from(recommended.count()) + off).unwrap();
        let present = ChainLinks::new(links).unwrap();
        let advice = setup.advise(Some(present), &Derailleur::default(), &ChainDefaults::HANGER).unwrap();
        let other =
            advice.remedies.iter().find(|remedy| remedy.change == Change::OtherLinks(recommended)).unwrap();
        assert_eq!(other.effort.part, EffortPart::Chain);
        assert!((other.effort.share - f64::from(off.abs()) / f64::from(links)).abs() < 1e-9);
    }
}

/// A hanger lets the guide pulley clear a larger sprocket, by no more than can be had.
#[test]
fn a_larger_sprocket_than_the_makers_asks_for_a_longer_hanger() {
    let extension = |largest: Option<u16>| {
        let maker = Derailleur {
            largest_sprocket: largest.map(|teeth| Sprocket::new(teeth).unwrap()),
            ..Derailleur::default()
        };
        let setup = setup(bike("44/31", WIDE), 95.0);
        let advice = setup.advise(None, &maker, &ChainDefaults::HANGER).unwrap();
        advice.remedies.iter().find_map(|remedy| match remedy.change {
            Change::LongerHanger { extension_mm } => Some(extension_mm),
            _ => None,
        })
    };
    assert_eq!([extension(None), extension(Some(42)), extension(Some(46))], [None; 3]);
    let [far, near] = [36, 40].map(|teeth| extension(Some(teeth)).unwrap());
    assert!(far > near && near > 0.0 && far < 40.0, "{far}, {near}");
    assert_eq!(extension(Some(20)), None, "further than hangers reach");
}

#[test]
fn a_chain_suits_from_the_shortest_to_the_longest() {
    let window = setup(bike("44/31", CASSETTE), 90.0).window().unwrap();
    let suits = |links: u16| window.suits(ChainLinks::new(links).unwrap());
    let [shortest, longest] = [window.shortest.count(), window.longest.count()];
    assert!(window.is_open() && suits(shortest) && suits(longest));
    assert!(!suits(shortest - 2) && !suits(longest + 2));
}

/// Up to 65° of cage angle is comfortable; the fore stop is put beyond to tell the two apart.
#[test]
fn a_cage_pulled_far_forward_is_tight() {
    let mut seen = [0, 0];
    for setup in short_cages() {
        let measures = CageMeasures {
            fore_stop: gear_math::chain::ForeStop::new(75.0).unwrap(),
            ..*setup.cage.measures()
        };
        let setup = ChainSetup { cage: Cage::new(measures).unwrap(), ..setup };
        let recommended = setup.fit(None).unwrap().recommended.count();
        for links in [recommended - 2, recommended] {
            for gear in setup.fit(ChainLinks::new(links).ok()).unwrap().gears {
                let Some(angle) = gear.cage_angle else { continue };
                let comfortable = angle.degrees() <= GearState::COMFORTABLE_TO_DEGREES;
                seen[usize::from(comfortable)] += 1;
                let expected = if comfortable { GearState::Comfortable } else { GearState::TightButUsual };
                assert_eq!(gear.state, expected, "{angle:?}");
            }
        }
    }
    assert!(seen[0] > 10 && seen[1] > 100, "{seen:?}");
}
