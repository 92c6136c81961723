//! What must hold of a box of parts.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::cage::CageFinding;
use gear_math::chain::{Cage, CageMeasures, ChainDefaults, PulleyCentres};
use gear_math::course::{Fineness, ReserveSearch, ReserveSetup};
use gear_math::gears::RingDifference;
use gear_math::parts::{
    BareBike, BoxLaps, BoxRider, BoxRides, Buying, Combined, Combining, Condition, CourseWeight, Fit,
    FitVerdict, FrontDerailleur, Lack, Outing, PartsBox, RearDerailleur, Regret, Robust, SortedBox,
};
use gear_math::rider::{
    Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve,
};
use gear_math::{
    Bike, CageVerdict, Cassette, ChainLinks, ChainSetup, Chainring, Chainset, Circumference, Course,
    Derailleur, Drivetrain, Gear, Lap, LapSetup, Power, Rider, Sprocket, TotalCapacity,
};
use proptest::prelude::*;
use proptest::sample::subsequence;

fn rider() -> ReserveSetup {
    let rider =
        Rider::new(BodyMass::new(66.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(240.0).unwrap());
    let own = Drivetrain { chainset: "40".parse().unwrap(), cassette: Cassette::named(11, 30, 11).unwrap() };
    let bike = Bike::new(BikeMass::new(9.0).unwrap(), own, Circumference::new(2130.0).unwrap());
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body)).unwrap();
    ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
}

/// Short, with a bank that asks for a low gear.
fn course() -> Course {
    "70; 0; firm grass\n30; 15; firm grass\n60; -7; firm grass".parse().unwrap()
}

fn rear(capacity: Option<u16>, largest: Option<u16>) -> RearDerailleur {
    let figures = Derailleur {
        total_capacity: capacity.map(|it| TotalCapacity::new(it).unwrap()),
        largest_sprocket: largest.map(|it| Sprocket::new(it).unwrap()),
        ring_difference: RingDifference::new(16).ok(),
        ..Derailleur::default()
    };
    RearDerailleur { figures, pulley_centres: None }
}

fn small() -> PartsBox {
    PartsBox {
        chainsets: ["50/34", "44/32", "40"].map(|it| it.parse().unwrap()).to_vec(),
        cassettes: [(11, 30), (11, 34), (11, 42)].map(|(a, b)| Cassette::named(a, b, 11).unwrap()).to_vec(),
        derailleurs: vec![rear(Some(35), Some(34)), rear(Some(39), Some(36))],
        chains: [106, 110].map(|it| ChainLinks::new(it).unwrap()).to_vec(),
        ..PartsBox::default()
    }
}

fn outing(bike: &BareBike, rider: &BoxRider) -> Outing {
    Outing { course: course(), rider: *rider, bike: bike.clone() }
}

fn combined(parts: &PartsBox) -> Vec<Combined> {
    combined_on(&BareBike::usual(), &BoxRider::Reserve(rider()), parts)
}

fn combined_on(bike: &BareBike, rider: &BoxRider, parts: &PartsBox) -> Vec<Combined> {
    let mut combining = Combining::new(&outing(bike, rider), parts.clone());
    while combining.advance(7).unwrap() {
        assert!(combining.done() <= combining.total());
    }
    assert_eq!(combining.done(), combining.total());
    combining.quickest()
}

fn planned_s(fit: &Fit) -> f64 {
    let mut setup = rider();
    (setup.lap.bike.drivetrain, setup.lap.bike.avoid) = (fit.drivetrain, fit.avoid);
    Lap::on_reserve(&course(), &setup, Fineness::QUICK).time_s
}

/// What every row is, by its parts alone.
fn names(parts: &PartsBox, rows: &[Combined]) -> Vec<String> {
    let mut names: Vec<String> = rows
        .iter()
        .map(|it| {
            let Drivetrain { chainset, cassette } = parts.drivetrain(it.combination);
            let rear = parts.derailleur(it.combination);
            format!("{:.6} {chainset} {cassette} {rear:?} {}", it.lap.time_s, it.fit.links.count())
        })
        .collect();
    names.sort();
    names
}

#[test]
fn a_small_box_is_ridden_as_by_hand() {
    let parts = small();
    let rows = combined(&parts);
    let sorted = SortedBox::of(&BareBike::usual(), &parts);
    assert_eq!((rows.len(), rows.len() + sorted.not_fitting.len()), (sorted.fitting.len(), 18));
    assert!(rows.iter().all(|it| it.lap.planned && (it.lap.time_s - planned_s(&it.fit)).abs() < 1e-9));
    let best = sorted.fitting.iter().map(|(_, fit)| planned_s(fit)).fold(f64::INFINITY, f64::min);
    assert!(
        (rows[0].lap.time_s - best).abs() < 1e-9 && rows.is_sorted_by(|a, b| a.lap.time_s <= b.lap.time_s)
    );
    let lacking: usize = sorted.lacking().iter().map(|it| it.1).sum();
    assert_eq!(lacking, sorted.not_fitting.len());
    assert!(sorted.lacking().iter().any(|it| it.0 == Lack::LargestSprocket));
    let avoiding = rows.iter().find(|it| it.fit.verdict == FitVerdict::AvoidingGears).unwrap();
    assert!(!avoiding.fit.avoid.is_empty() && avoiding.fit.spare < Some(0));
}

/// Each sorts the box and rides every other lap; one gathers what they find.
#[test]
fn workers_find_what_one_does() {
    let (parts, bike) = (small(), BareBike::usual());
    let laps = || BoxLaps::new(SortedBox::of(&bike, &parts));
    let mut gathered = laps();
    let workers = [0, 1].map(|_| {
        let laps = laps().laps().to_vec();
        (BoxRides::new(&course(), &BoxRider::Reserve(rider()), &laps).unwrap(), laps)
    });
    let share = |all: Vec<usize>| all.into_iter().enumerate().map(|(place, lap)| (place % 2, lap));
    assert_eq!(gathered.to_look_at().count(), 0, "so few are planned at once");
    let looked = workers[0].0.look(&workers[0].1[0]);
    assert!(!looked.planned && (looked.time_s - workers[0].0.plan(&workers[0].1[0]).time_s).abs() < 0.5);
    for (worker, lap) in share(gathered.to_plan()) {
        gathered.take(lap, workers[worker].0.plan(&workers[worker].1[lap]));
    }
    gathered.take(999, combined(&parts)[0].lap);
    assert_eq!((gathered.done(), gathered.to_plan()), (gathered.total(), vec![]));
    assert_eq!(gathered.quickest(), combined(&parts));
}

/// One set-up has gears for the bank and the flat; the others have none for either.
#[test]
fn a_planted_best_is_found() {
    let parts = PartsBox {
        chainsets: ["60", "58", "42", "20"].map(|it| it.parse().unwrap()).to_vec(),
        cassettes: ["11-12-13-14-15", "9-10-11-12-13", "13-16-19-23-28", "11-12"]
            .map(|it| it.parse().unwrap())
            .to_vec(),
        ..PartsBox::default()
    };
    let best = combined(&parts)[0];
    assert_eq!((best.combination.chainset, best.combination.cassette), (2, 2));
    assert_eq!(best.combination.derailleur, None);
}

#[test]
fn the_order_of_the_box_does_not_matter() {
    let parts = small();
    let mut turned = parts.clone();
    turned.chainsets.reverse();
    turned.cassettes.rotate_left(1);
    turned.derailleurs.reverse();
    turned.chains.reverse();
    assert_eq!(names(&parts, &combined(&parts)), names(&turned, &combined(&turned)));
}

#[test]
fn one_part_more_makes_nothing_slower() {
    let parts = small();
    let best = |parts: &PartsBox| combined(parts)[0].lap.time_s;
    let before = best(&parts);
    let mut more = [parts.clone(), parts.clone(), parts.clone(), parts];
    more[0].chainsets.push("46/34".parse().unwrap());
    more[1].cassettes.push(Cassette::named(11, 36, 11).unwrap());
    more[2].derailleurs.push(rear(Some(47), Some(46)));
    more[3].chains.push(ChainLinks::new(116).unwrap());
    for parts in &more {
        assert!(best(parts) <= before + 1e-9);
    }
}

#[test]
fn a_chain_is_cut_from_the_shortest_that_is_long_enough() {
    let of = |chains: &[u16]| {
        let chains = chains.iter().map(|it| ChainLinks::new(*it).unwrap()).collect();
        let parts = PartsBox { chains, derailleurs: vec![rear(Some(39), Some(36))], ..small() };
        let fit = SortedBox::of(&BareBike::usual(), &parts).fitting[0].1;
        (fit.links.count(), fit.chain)
    };
    let (needed, none) = of(&[]);
    assert_eq!((of(&[116, needed + 2, 120]), none), ((needed, Some(1)), None));
    assert_eq!(of(&[60, 80]), (needed, None));
}

#[test]
fn the_bike_has_its_say() {
    let lacks = |bike: BareBike, parts: PartsBox| SortedBox::of(&bike, &parts).lacking();
    let free = || PartsBox { derailleurs: Vec::new(), ..small() };
    let ring = BareBike { largest_ring: Chainring::new(44).ok(), ..BareBike::usual() };
    assert_eq!(lacks(ring, free()), [(Lack::Frame, 3)]);
    let clicks = BareBike { sprockets: Some(10), ..BareBike::usual() };
    assert_eq!(lacks(clicks, free()), [(Lack::SprocketCount, 9)]);
    let front = |ring, teeth| FrontDerailleur {
        largest_ring: Chainring::new(ring).ok(),
        difference: RingDifference::new(teeth).ok(),
    };
    let shifted = |fronts: &[FrontDerailleur]| PartsBox { front_derailleurs: fronts.to_vec(), ..free() };
    assert_eq!(lacks(BareBike::usual(), shifted(&[front(50, 12)])), [(Lack::Rings, 6)]);
    assert_eq!(lacks(BareBike::usual(), shifted(&[front(50, 16), front(46, 12)])), []);
}

#[test]
fn gears_that_are_switched_off_are_not_ridden() {
    let off = BareBike { switched_off: vec![Gear::new(40, 30).unwrap()], ..BareBike::usual() };
    let parts = PartsBox {
        chainsets: vec!["40".parse().unwrap()],
        cassettes: vec![Cassette::named(11, 30, 11).unwrap()],
        ..PartsBox::default()
    };
    let [with, without] =
        [BareBike::usual(), off].map(|bike| combined_on(&bike, &BoxRider::Reserve(rider()), &parts)[0]);
    assert_eq!((with.fit.avoid.count(), without.fit.avoid.count()), (0, 1));
    assert!(
        without.lap.time_s > with.lap.time_s && (without.lap.time_s - planned_s(&without.fit)).abs() < 1e-9
    );
}

#[test]
fn a_steady_power_rides_every_lap_in_full() {
    let setup = rider().lap;
    let parts = small();
    let rows = combined_on(&BareBike::usual(), &BoxRider::Steady(setup), &parts);
    for row in &rows {
        let bike = Bike { drivetrain: row.fit.drivetrain, avoid: row.fit.avoid, ..setup.bike };
        let lap = Lap::in_steps(&course(), &LapSetup { bike, ..setup }, gear_math::Search::STEP).unwrap();
        assert!(row.lap.planned && (row.lap.time_s - lap.time_s).abs() < 1e-9);
    }
    let mut combining = Combining::new(&outing(&BareBike::usual(), &BoxRider::Steady(setup)), parts);
    while combining.advance(50).unwrap() {}
    let [first, last] = [rows[0].timed(), rows[rows.len() - 1].timed()];
    let lost = combining.rides().unwrap().gains(&first, &[last])[0];
    assert!(lost.time_s < 0.0 && (lost.time_s - (first.1 - last.1)).abs() < 1e-9);
    let [lead, over_bike] = combining.leads().map(Option::unwrap);
    let own = Lap::in_steps(&course(), &setup, gear_math::Search::STEP).unwrap().time_s;
    assert!(lead.time_s >= 0.0 && (over_bike.time_s - (own - first.1)).abs() < 1e-9);
}

/// Of more laps than are planned the first of the order has been.
#[test]
fn of_a_large_box_the_first_is_planned() {
    let eleven = Cassette::common().filter(|it| it.sprockets().len() == 11);
    let parts = PartsBox {
        chainsets: Chainset::made(8..=16).step_by(6).collect(),
        cassettes: eleven.collect(),
        ..PartsBox::default()
    };
    let rows = combined(&parts);
    let planned = rows.iter().filter(|it| it.lap.planned).count();
    // All planned in full: what is ordered by the first look alone holds nothing quicker.
    let best = rows.iter().map(|it| planned_s(&it.fit)).fold(f64::INFINITY, f64::min);
    assert!((rows[0].lap.time_s - best).abs() < 1e-9, "{} s, {best} s", rows[0].lap.time_s);
    assert!(
        rows[0].lap.planned && (ReserveSearch::PLANNED..rows.len()).contains(&planned),
        "{planned} of {}",
        rows.len()
    );
}

fn bought(parts: &PartsBox, bike: &BareBike, budget: usize) -> (Vec<Combined>, Buying) {
    let outing = outing(bike, &BoxRider::Reserve(rider()));
    let mut combining = Combining::new(&outing, parts.clone());
    while combining.advance(50).unwrap() {}
    let best = combining.quickest().first().map(Combined::timed);
    let mut buying = Buying::new(&outing, parts, best, budget);
    while buying.advance(40).unwrap() {
        assert!(buying.done() <= buying.total());
    }
    (combining.quickest(), buying)
}

/// A box that lacks everything for a bank.
fn tall() -> PartsBox {
    PartsBox {
        chainsets: vec!["52".parse().unwrap()],
        cassettes: vec![Cassette::named(11, 23, 11).unwrap()],
        derailleurs: vec![rear(Some(33), Some(28))],
        ..PartsBox::default()
    }
}

#[test]
fn more_to_spend_buys_nothing_slower() {
    let mut before = f64::INFINITY;
    for budget in 0..=3 {
        let (rows, buying) = bought(&tall(), &BareBike::usual(), budget);
        let purchases = buying.purchases();
        assert_eq!(purchases.is_empty(), budget == 0);
        let Some(best) = purchases.first() else { continue };
        assert!(best.time_s <= before + 0.3, "{} s after {before}", best.time_s);
        before = before.min(best.time_s);
        assert!(purchases.is_sorted_by(|a, b| a.time_s <= b.time_s) && purchases.len() <= Buying::NAMED);
        for it in purchases {
            assert!((1..=budget).contains(&it.parts.len()) && it.time_s < rows[0].lap.time_s);
            assert!((it.time_s - planned_s(&it.fit)).abs() < 1e-9);
            let gained = it.gained.unwrap();
            assert!((gained.time_s - (rows[0].lap.time_s - it.time_s)).abs() < 1e-9);
            assert!(gained.low_s <= gained.time_s && gained.time_s <= gained.high_s);
        }
    }
}

/// Every single part by hand: the best is the best of all boxes with one usual part more.
#[test]
fn the_part_worth_buying_is_the_best_of_all() {
    let (own, bike) = (tall(), BareBike { largest_ring: Chainring::new(44).ok(), ..BareBike::usual() });
    let usual = own.usual_beside(None);
    let mut all = Vec::new();
    let mut with = |more: PartsBox| {
        let chainsets = [&own.chainsets[..], &more.chainsets].concat();
        let cassettes = [&own.cassettes[..], &more.cassettes].concat();
        let derailleurs = [&own.derailleurs[..], &more.derailleurs].concat();
        let parts = PartsBox { chainsets, cassettes, derailleurs, ..PartsBox::default() };
        all.extend(SortedBox::of(&bike, &parts).fitting.iter().map(|(_, fit)| planned_s(fit)));
    };
    usual.chainsets.iter().for_each(|it| with(PartsBox { chainsets: vec![*it], ..PartsBox::default() }));
    usual.cassettes.iter().for_each(|it| with(PartsBox { cassettes: vec![*it], ..PartsBox::default() }));
    usual.derailleurs.iter().for_each(|it| with(PartsBox { derailleurs: vec![*it], ..PartsBox::default() }));
    let best = all.into_iter().fold(f64::INFINITY, f64::min);
    let (rows, buying) = bought(&own, &bike, 1);
    assert!(rows.is_empty(), "the frame clears no ring of the box");
    let first = &buying.purchases()[0];
    assert!((first.time_s - best).abs() < 0.05 && first.gained.is_none(), "{} s, {best} s", first.time_s);
}

/// Two parts together by hand, from a box in which a frame and a cage leave little to choose.
#[test]
fn two_parts_worth_buying_are_the_best_of_all() {
    let own = tall();
    let bike = BareBike { largest_ring: Chainring::new(36).ok(), ..BareBike::usual() };
    let usual = own.usual_beside(None);
    let all = PartsBox {
        chainsets: [&own.chainsets[..], &usual.chainsets].concat(),
        cassettes: [&own.cassettes[..], &usual.cassettes].concat(),
        derailleurs: [&own.derailleurs[..], &usual.derailleurs].concat(),
        ..PartsBox::default()
    };
    let bought = |it: &gear_math::parts::Combination| {
        usize::from(it.chainset > 0) + usize::from(it.cassette > 0) + usize::from(it.derailleur > Some(0))
    };
    let fitting = SortedBox::of(&bike, &all).fitting;
    let mut laps: Vec<Fit> = Vec::new();
    for (_, fit) in fitting.iter().filter(|(it, _)| bought(it) == 2) {
        if !laps.iter().any(|it| it.ridden() == fit.ridden()) {
            laps.push(*fit);
        }
    }
    let best = laps.iter().map(planned_s).fold(f64::INFINITY, f64::min);
    let (_, buying) = self::bought(&own, &bike, 2);
    let first = &buying.purchases()[0];
    assert!(first.time_s <= best + 0.05, "{} s, {best} s of {}", first.time_s, laps.len());
}

#[test]
fn a_box_that_has_it_all_buys_nothing() {
    let all = tall().usual_beside(None);
    let parts = PartsBox { derailleurs: vec![rear(Some(47), Some(46))], ..all };
    let parts = PartsBox { chainsets: parts.chainsets.into_iter().step_by(12).collect(), ..parts };
    let clicks = BareBike { largest_ring: Some(parts.chainsets[0].largest()), ..BareBike::usual() };
    let (rows, buying) = bought(&parts, &clicks, 1);
    let gains = |it: &gear_math::parts::Purchase| it.gained.is_some_and(|gained| gained.time_s > 0.0);
    assert!(!rows.is_empty() && buying.purchases().iter().all(gains));
}

fn robust(parts: &PartsBox, rider: BoxRider, more: &[(&str, f64)]) -> (Vec<Combined>, Robust) {
    let outing = outing(&BareBike::usual(), &rider);
    let mut combining = Combining::new(&outing, parts.clone());
    while combining.advance(50).unwrap() {}
    let more = more.iter().map(|(text, it)| (text.parse().unwrap(), CourseWeight::new(*it).unwrap()));
    let mut robust = Robust::new(&outing, combining.laps().unwrap().best(), more.collect());
    while robust.advance().unwrap() {}
    assert_eq!(robust.done(), robust.total());
    (combining.quickest(), robust)
}

/// Against laps ridden one by one, on two courses.
#[test]
fn regrets_are_what_laps_are_behind() {
    let setup = rider().lap;
    let other = "80; 0; loose sand\n40; 6; mud";
    let (rows, robust) = robust(&small(), BoxRider::Steady(setup), &[(other, 3.0)]);
    let regrets = robust.regrets();
    let laps: Vec<_> = regrets.iter().map(|it| it.lap).collect();
    assert!(laps.iter().all(|lap| rows.iter().any(|row| row.fit.ridden() == *lap)));
    let time = |course: &str, lap: &(Drivetrain, _), watts: f64| {
        let bike = Bike { drivetrain: lap.0, avoid: lap.1, ..setup.bike };
        let rider = Rider { power: Power::new(watts).unwrap(), ..setup.rider };
        let course = course.parse().unwrap();
        Lap::in_steps(&course, &LapSetup { bike, rider, ..setup }, gear_math::Search::STEP).unwrap().time_s
    };
    let own = "70; 0; firm grass\n30; 15; firm grass\n60; -7; firm grass";
    let wet = "70; 0; wet soft grass\n30; 15; wet soft grass\n60; -7; wet soft grass";
    let other_wet = "80; 0; wet packed sand\n40; 6; deep mud";
    for (place, pair, watts) in [
        (0, [own, other], 240.0),
        (1, [wet, other_wet], 240.0),
        (2, [own, other], 216.0),
        (3, [own, other], 264.0),
    ] {
        let mean = |lap| 0.25 * time(pair[0], lap, watts) + 0.75 * time(pair[1], lap, watts);
        let means: Vec<f64> = laps.iter().map(mean).collect();
        let least = means.iter().copied().fold(f64::INFINITY, f64::min);
        for (regret, mean) in regrets.iter().zip(&means) {
            assert!((regret.behind_s[place] - (mean - least)).abs() < 1e-9);
        }
    }
    let least = robust.least().unwrap();
    let worst = |it: &Regret| it.behind_s.iter().copied().fold(0.0, f64::max);
    assert!(regrets.iter().all(|it| (it.worst_s - worst(it)).abs() < 1e-12 && it.worst_s >= least.worst_s));
}

/// Every condition moves laps on a reserve, or the regrets of one would be those of another.
#[test]
fn every_condition_counts_on_a_reserve() {
    let (rows, robust) = robust(&small(), BoxRider::Reserve(rider()), &[]);
    let regrets = robust.regrets();
    assert_eq!(regrets[0].lap, rows[0].fit.ridden());
    for place in 1..Condition::ALL.len() {
        assert!(regrets.iter().any(|it| (it.behind_s[place] - it.behind_s[0]).abs() > 1e-3), "{place}");
    }
}

#[test]
fn nothing_is_regretted_of_nothing() {
    let parts = PartsBox { derailleurs: vec![rear(Some(10), Some(20))], ..small() };
    let (rows, robust) = robust(&parts, BoxRider::Reserve(rider()), &[]);
    assert!(rows.is_empty() && robust.least().is_none());
}

fn some<T: Clone + std::fmt::Debug + 'static>(all: Vec<T>, most: usize) -> impl Strategy<Value = Vec<T>> {
    subsequence(all, 1..=most)
}

fn figures() -> impl Strategy<Value = RearDerailleur> {
    let capacity = proptest::option::of(22_u16..48);
    let sprockets = (proptest::option::of(26_u16..47), proptest::option::of(10_u16..13));
    let more = (
        proptest::option::of(10_u16..18),
        proptest::option::of((500_u16..950).prop_map(|it| f64::from(it) / 10.0)),
    );
    (capacity, sprockets, more).prop_map(|(capacity, (largest, smallest), (difference, mm))| RearDerailleur {
        figures: Derailleur {
            smallest_sprocket: smallest.map(|it| Sprocket::new(it).unwrap()),
            ring_difference: difference.map(|it| RingDifference::new(it).unwrap()),
            ..rear(capacity, largest).figures
        },
        pulley_centres: mm.map(|it| PulleyCentres::new(it).unwrap()),
    })
}

fn boxes() -> impl Strategy<Value = PartsBox> {
    let links = proptest::collection::vec((48_u16..62).prop_map(|it| ChainLinks::new(2 * it).unwrap()), 0..3);
    (
        some(Chainset::made(8..=16).collect(), 3),
        some(Cassette::common().collect(), 3),
        proptest::collection::vec(figures(), 0..3),
        links,
    )
        .prop_map(|(chainsets, cassettes, derailleurs, chains)| PartsBox {
            chainsets,
            cassettes,
            derailleurs,
            chains,
            ..PartsBox::default()
        })
}

/// A fit against what makers' figures and the chain's path say by themselves.
fn holds(parts: &PartsBox, combination: gear_math::parts::Combination, fit: Result<Fit, Lack>) {
    let (drivetrain, rear) = (parts.drivetrain(combination), parts.derailleur(combination));
    let check = rear.figures.check(&drivetrain);
    let breaks = |lack: Lack| {
        check.findings.iter().any(|it| match it {
            CageFinding::SprocketTooLarge { .. } => lack == Lack::LargestSprocket,
            CageFinding::SprocketTooSmall { .. } => lack == Lack::SmallestSprocket,
            CageFinding::RingDifferenceTooLarge { .. } => lack == Lack::Rings,
            CageFinding::LongerCage { .. } => lack == Lack::Cage,
            CageFinding::AvoidGears { .. } => false,
        })
    };
    let Ok(fit) = fit else {
        let lack = fit.unwrap_err();
        let by_geometry = rear.figures.total_capacity.is_none() && lack == Lack::Cage;
        assert!(breaks(lack) || by_geometry || lack == Lack::Wheels, "{lack:?}: {check:?}");
        return;
    };
    assert!(check.verdict != CageVerdict::DoesNotFit, "{check:?}");
    let hanging: Vec<Gear> = check
        .findings
        .iter()
        .flat_map(|it| if let CageFinding::AvoidGears { gears, .. } = it { &gears[..] } else { &[] })
        .copied()
        .collect();
    assert!(hanging.iter().all(|gear| fit.avoid.holds(&drivetrain, *gear)));
    assert_eq!(fit.spare, check.spare);
    let by_capacity = rear.figures.total_capacity.map(|it| ChainDefaults::CAGE.centres_for(it));
    let centres = rear.pulley_centres.or(by_capacity).unwrap_or(ChainDefaults::CAGE.pulley_centres);
    let cage = Cage::new(CageMeasures { pulley_centres: centres, ..ChainDefaults::CAGE }).unwrap();
    let chainline = ChainDefaults::chainline(&drivetrain);
    let window = ChainSetup { drivetrain, frame: ChainDefaults::FRAME, cage, chainline }.window().unwrap();
    let tight = if window.is_open() { 0 } else { 2 };
    assert!(fit.links.count() + tight >= window.shortest.count(), "{} of {window:?}", fit.links.count());
    let longest = parts.chains.iter().max();
    match fit.chain {
        Some(place) => assert!(parts.chains[place] >= fit.links),
        None => assert!(longest.is_none_or(|it| *it < window.shortest)),
    }
}

/// So many in every run; `PROPTEST_CASES=40` tries as many as are asked of it.
fn few() -> ProptestConfig {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|it| it.parse().ok());
    ProptestConfig { cases: asked.unwrap_or(6), ..ProptestConfig::default() }
}

fn fronts() -> impl Strategy<Value = FrontDerailleur> {
    let figures = (proptest::option::of(30_u16..55), proptest::option::of(8_u16..20));
    figures.prop_map(|(ring, difference)| FrontDerailleur {
        largest_ring: ring.map(|it| Chainring::new(it).unwrap()),
        difference: difference.map(|it| RingDifference::new(it).unwrap()),
    })
}

/// Pairs of single rings come behind what was typed.
fn rings_in_order(mut parts: PartsBox) -> PartsBox {
    parts.chainsets.sort_by_key(|it| it.rings().to_vec());
    parts
}

proptest! {
    #[test]
    fn a_box_reads_back_as_it_is_printed(
        parts in boxes(),
        fronts in proptest::collection::vec(fronts(), 0..3),
        odd in proptest::collection::btree_set(9_u16..40, 1..6),
        rings in proptest::collection::btree_set(30_u16..36, 0..4),
        without in 0..6,
    ) {
        let mut parts = PartsBox { front_derailleurs: fronts, ..parts };
        parts.chainsets.extend(rings.into_iter().map(|it| Chainset::new([it]).unwrap()));
        parts.cassettes.push(Cassette::new(odd).unwrap());
        match without {
            0 => parts.chainsets.clear(),
            1 => parts.cassettes.clear(),
            2 => parts.derailleurs.clear(),
            _ => {}
        }
        let printed = parts.to_string();
        let read = PartsBox::read(&printed, Some(9));
        prop_assert_eq!(&read.not_understood, &[]);
        prop_assert_eq!(rings_in_order(read.parts), rings_in_order(parts), "{}", printed);
    }

    #[test]
    fn no_text_is_too_strange(text in "\\PC{0,40}|[0-9 /,;?\n-]{0,40}") {
        let read = PartsBox::read(&text, None);
        let again = PartsBox::read(&read.parts.to_string(), None);
        prop_assert_eq!(rings_in_order(again.parts), rings_in_order(read.parts));
    }
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn random_boxes_agree_with_each_of_their_parts(parts in boxes()) {
        let bike = BareBike::usual();
        for combination in parts.combinations() {
            holds(&parts, combination, bike.fit(&parts, combination));
        }
        let rows = combined(&parts);
        let sorted = SortedBox::of(&bike, &parts);
        prop_assert_eq!(rows.len(), sorted.fitting.len());
        for row in &rows {
            prop_assert!(sorted.not_fitting.iter().all(|it| it.0 != row.combination));
            prop_assert!((row.lap.time_s - planned_s(&row.fit)).abs() < 1e-9);
        }
    }
}
