//! “Ride or run?”, lap, search and sheet of one bench, which must not contradict each other.

use crate::dice::{Dice, chosen, random_bench};
use crate::has;
use crate::lap::clock;
use crate::page::Page;
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::lap::report::LapReport;
use explorer::lap::search::Hunt;
use explorer::page::scenario::Scenario;
use explorer::ride::inputs::RideInputs;
use explorer::ride::side::RideSide;
use gear_math::course::Mode;
use gear_math::rider::{Advice, Ascent, OnBike, WheelInertia};
use gear_math::{Lap, Speed, Surface};

/// Benches of one part.
const STRIDE: u64 = 125;
/// Every so many benches the search is asked, too; every so many are settled.
const SEARCHED: u64 = 10;
const SETTLED: u64 = 25;
/// Level ground before the climb, m.
const FLAT: f64 = 200.0;
/// How much of a pace the lap's speed into the climb may change.
const ALIKE: f64 = 0.25;

/// One in so many may be ridden otherwise; one in 19 to 25 is, by the part of the walk. An even pace gets nothing from speed where joules are dear, and speed is not
/// counted on a climb too steep for grip, which a lap rides up with what it brings.
const OTHERWISE: usize = 18;
/// One in so many may be forced otherwise, one in 22 is: as much speed is brought that it need not be forced all the way up.
const FORCED_OTHERWISE: usize = 16;

/// What is typed so that a lap is flat, up the climb that is asked about, and down again.
const CLIMB: [(Field, &[&str]); 3] = [
    (Field::Slope, &["2", "4", "6", "8", "10", "12", "15", "18"]),
    (Field::ClimbLength, &["40", "60", "80", "100"]),
    (
        Field::Ground,
        &["tarmac", "gravel", "firm-grass", "wet-grass", "mud", "deep-mud", "wet-sand", "loose-sand"],
    ),
];
/// What the lap does not know, as it usually is.
const USUAL: [Field; 6] =
    [Field::Rolling, Field::FootGround, Field::Friction, Field::Headwind, Field::Legs, Field::SlopeShare];
fn bench(seed: u64) -> Bench {
    let mut bench = random_bench(seed);
    let mut dice = Dice::new(seed + 77);
    USUAL.iter().for_each(|&field| bench.write(field, field.spec().start));
    CLIMB.iter().for_each(|(field, texts)| bench.write(*field, dice.pick(texts)));
    let [slope, length] = [Field::Slope, Field::ClimbLength].map(|field| bench.text(field).to_owned());
    let ground = Surface::ALL[chosen(&bench, Field::Ground)].name();
    let sketch =
        format!("{FLAT}; 0; firm grass\n{length}; {slope}; {ground}\n{length}; -{slope}; firm grass");
    for (field, text) in [
        (Field::LapModel, "reserve"),
        (Field::LapBudget, dice.pick(&["0", "0", "0", "2"])),
        (Field::ReserveShare, dice.pick(&["0.2", "1"])),
        (Field::Course, "sketch"),
        (Field::Sketch, &sketch),
    ] {
        bench.write(field, text);
    }
    bench
}

/// What was found alike, and what not.
#[derive(Debug, Default)]
struct Tally {
    advised: usize,
    forced: usize,
    apart: Vec<String>,
    other_power: Vec<String>,
}

impl Tally {
    /// Whether a lap does what is advised on its climb.
    fn advice(&mut self, seed: u64, side: &RideSide, lap: &Lap, inputs: &RideInputs) {
        let length = inputs.length.m();
        let ascent = at_speed_of(lap, side, inputs);
        if ascent.advice == Advice::TooClose {
            return;
        }
        self.advised += 1;
        let (from, to) = (FLAT, FLAT + length);
        let on_foot = lap.plan.iter().filter(|part| part.mode == Mode::Foot);
        let metres: f64 = on_foot.map(|part| (part.to_m.min(to) - part.from_m.max(from)).max(0.0)).sum();
        let is_half = (metres - 0.5 * length).abs() < 1e-6;
        if !is_half && (metres > 0.5 * length) != (ascent.advice == Advice::Run) {
            let price = lap.reserve.as_ref().unwrap().price_s_per_j;
            self.apart.push(format!(
                "{seed} {:?} {:?} lap {metres:.0} of {length} on foot at {price:.5}",
                side.side, ascent
            ));
        }
    }

    /// Whether it is forced as hard.
    fn power(&mut self, seed: u64, side: &RideSide, laps: &LapReport, length: f64) {
        let Some((OnBike::Forced(power), _)) = side.ascent.bike else { return };
        if side.ascent.advice != Advice::Force {
            return;
        }
        let places = laps.forcings[side.side as usize].iter();
        let on_climb = places.filter(|it| it.from_m < FLAT + length && it.to_m > FLAT + 0.5 * length);
        for place in on_climb {
            self.forced += 1;
            let ratio = place.highest_power_w / power.watts();
            if (ratio - 1.0).abs() > ALIKE {
                self.other_power.push(format!("{seed} {:?} {ratio:.2} {place:?}", side.side));
            }
        }
    }
}

/// What to do on the climb with the speed that the lap brings into it.
fn at_speed_of(lap: &Lap, side: &RideSide, inputs: &RideInputs) -> Ascent {
    let before = lap.trace.iter().rev().find(|point| point.at_m <= FLAT + 1e-6).unwrap();
    let entry = Speed::from_km_per_h(3.6 * before.speed_m_per_s).unwrap();
    let question = &inputs.questions[side.side as usize];
    let carry = question.carry(inputs.ground(side.side), inputs.climb, entry, WheelInertia::USUAL);
    side.paced.ascent(inputs.lost, side.plan.carried(&carry))
}

fn walk(part: u64) {
    let mut tally = Tally::default();
    for seed in part * STRIDE..(part + 1) * STRIDE {
        let bench = bench(seed);
        let page = Page::of(&bench, seed % SETTLED == 0);
        let laps = page.report.lap.laps.as_ref().unwrap();
        let length = page.report.ride.inputs.length.m();
        for side in &page.report.ride.sides {
            tally.advice(seed, side, &laps.laps[side.side as usize], &page.report.ride.inputs);
            tally.power(seed, side, laps, length);
        }
        check_sheet(&page, laps);
        if seed % SEARCHED == 0 {
            check_search(&bench, laps);
        }
    }
    assert!(tally.advised > 80 && tally.forced > 10, "{tally:#?}");
    assert!(OTHERWISE * tally.apart.len() <= tally.advised, "{} {:#?}", tally.advised, tally.apart);
    assert!(
        FORCED_OTHERWISE * tally.other_power.len() <= tally.forced,
        "{} {:#?}",
        tally.forced,
        tally.other_power
    );
}

fn check_sheet(page: &Page, laps: &LapReport) {
    let answer = page.text("lap-answer");
    let [a, b] = [&laps.laps[0], &laps.laps[1]].map(|lap| clock(lap.time_s, 1.0));
    if laps.settled.is_none() {
        has(&answer, &format!("at first sight A takes {a} and B {b}."));
        return;
    }
    let Some(sheet) = page.sheet("Quicker").filter(|it| !it.starts_with("not known")) else { return };
    let ahead = ["A", "B"].into_iter().find(|name| answer.contains(&format!("{name} is quicker here")));
    assert_eq!(ahead.is_none(), !sheet.contains(" a lap"), "{sheet}: {answer}");
    assert!(ahead.is_none_or(|name| sheet.starts_with(name)), "{sheet}: {answer}");
}

/// The search's A, planned in full, takes as long as the lap's.
fn check_search(bench: &Bench, laps: &LapReport) {
    let scenario = Scenario::read(bench, &Scenario::default()).scenario;
    let basis = scenario.basis();
    let a = laps.question.setups[0].bike.drivetrain;
    let Some(number) = basis.search_space().iter().position(|it| *it == a) else { return };
    let hunt = Hunt::new(&basis, &laps.question.course, 0, 1).unwrap();
    let found = hunt.plans(&[number]);
    assert!((found[0].1.time_s - laps.laps[0].time_s).abs() < 1e-9, "{found:?}");
}

macro_rules! agree {
    ($($name:ident: $part:literal;)+) => { $(#[test] fn $name() { walk($part); })+ };
}

agree! {
    sections_agree_one_in_four: 0; sections_agree_two_in_four: 1;
    sections_agree_three_in_four: 2; sections_agree_four_in_four: 3;
}
