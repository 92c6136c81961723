//! Sentences on riding or running that must not contradict each other, each held on the address that once made them.

use explorer::bench::field::Field;
use explorer::bench::link;
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::page::sections::fragments;
use explorer::ride::report::{Difference, RunningFrom};
use explorer::side::Side;
use gear_math::rider::{Advice, LowerGear, OnBike, Slope, Verdict};

/// The report of an address, and a fragment of its page, when all that stands there is the rider's.
fn opened(address: &str, fragment: &str) -> (Report, String) {
    let mut opened = link::read(address);
    assert_eq!(opened.complaints, Vec::<String>::new(), "{address}");
    Field::ALL.iter().for_each(|&field| opened.bench.claim(field));
    let read = Scenario::read(&opened.bench, &Scenario::default());
    assert_eq!(read.complaints, [], "{address}");
    let report = Report::of(&read.scenario);
    let fragments = crate::common::in_full(fragments(&report, &[], &[], &opened.bench, address));
    let found = fragments.into_iter().find(|(id, _)| id == fragment);
    (report, crate::common::words(&found.map(|(_, html)| html).unwrap_or_default()))
}

fn answer(address: &str) -> (Report, String) {
    opened(address, "ride-answer")
}

#[track_caller]
fn has(answer: &str, words: &str) {
    assert!(answer.contains(words), "“{words}” is not in “{answer}”");
}

#[track_caller]
fn lacks(answer: &str, words: &str) {
    assert!(!answer.contains(words), "“{words}” is in “{answer}”");
}

const S2: [&str; 2] = [
    "#r=3&bm=40",
    "#r=3&ra=46/33&ca=11-13-15-17-19-21-23-25-28-32-36&rb=42&cb=11-12-13-14-15-17-19-21-24-27-30-34&ty=30-622&ro=2200&cl=50&bm=40&bi=7.2&pw=300&gr=tarmac&sl=18",
];
const S4: &str = "#r=3&ra=48/35&ca=12-13-14-15-17-19-21-24-27&rb=48/35&cb=11-13-15-17-19-21-23-26-30-34&ty=30-622&ro=2095&cl=40&bm=78&pw=420&gr=loose-sand&sl=16&le=400&ef=0.24&bs=1.5&lg=5s";
const S5: &str = "#r=3&bm=78&pw=500&gr=loose-sand&sl=10&le=200&cl=45&ra=46/34&ca=11-12-13-14-15-17-19-21-23-25-28&rb=40&cb=11-12-13-14-15-17-19-21-23-25-28";

const ALL: [&str; 16] = [
    "#r=3",
    S2[0],
    S2[1],
    "#r=3&pw=500",
    S4,
    S5,
    "#r=3&le=300",
    "#r=3&bm=140&gr=mud",
    "#r=3&wi=10",
    "#r=3&pw=102",
    "#r=3&pw=100",
    "#r=3&pw=316&gr=firm-grass",
    "#r=3&gr=mud&sl=12&le=40&bm=58&pw=&rv=",
    "#r=3&sl=9&le=60&gr=wet-grass",
    "#r=3&sl=14&le=45&gr=firm-grass&es=18",
    "#r=3&sl=11&le=35&gr=wet-grass&es=16",
];

/// S2: “change little” beside “2.7 points steeper”.
#[test]
fn a_lower_gear_does_not_change_little_where_the_other_rings_change_much() {
    for address in S2 {
        let (report, words) = answer(address);
        let Difference::Further { points, .. } = report.ride.difference() else { panic!("{address}") };
        assert!(points > 2.5);
        has(&words, &format!("on slopes up to {points:.1} points steeper"));
        lacks(&words, "change little");
    }
}

/// S3: “never pays, however long” inside the band.
#[test]
fn running_never_pays_only_where_the_whole_band_says_so() {
    for address in ["#r=3&pw=500", "#r=3&bm=40"] {
        let (report, words) = answer(address);
        assert_eq!(report.ride.sides[0].plan.answer.verdict, Verdict::TooClose);
        lacks(&words, "does not pay");
    }
}

/// The climb and its slope held for long may be answered apart, and then the page says why.
#[test]
fn a_climb_that_is_answered_otherwise_than_its_slope_says_why() {
    for address in ALL {
        let (report, words) = answer(address);
        for (side, name) in report.ride.sides.iter().zip(["A", "B"]) {
            let on_foot = |verdict| matches!(verdict, Verdict::Foot | Verdict::FootForced);
            let is_other = match side.ascent.advice {
                Advice::Carry => continue,
                Advice::Ride | Advice::Force => side.plan.answer.verdict != Verdict::Ride,
                Advice::TooClose => side.plan.answer.verdict != Verdict::TooClose,
                Advice::Run => !on_foot(side.plan.answer.verdict),
            };
            let said =
                |whose: &str| words.contains(&format!("went on and on, the answer with {whose} would be"));
            assert_eq!(said("both") || said(name), is_other, "{address}: {words}");
        }
    }
    has(
        &answer("#r=3").1,
        "If this slope went on and on, the answer with A would be “run”; this climb is short enough for what you can spend on it.",
    );
}

/// S4: running is said to win from a slope on, and a steeper climb is too close to call.
#[test]
fn no_climb_is_called_otherwise_than_its_slope() {
    lacks(&answer(S4).1, "wins from");
    for slope in (0..=45).step_by(3) {
        for ground in ["firm-grass", "wet-grass", "mud", "deep-mud", "loose-sand"] {
            let low = "rb=22&cb=11-14-18-24-34-50&cl=30&bs=&gc=off&lg=off";
            let address = format!("#r=3&sl={slope}&gr={ground}&le=400&{low}");
            let (report, words) = answer(&address);
            let side = &report.ride.sides[1];
            lacks(&words, "surely");
            let slope = f64::from(slope);
            if let (RunningFrom::Slope { low, high, .. }, Some(_)) =
                (report.ride.running_from(Side::A), side.plan.ride)
            {
                assert!(
                    slope > low || side.plan.answer.verdict == Verdict::Ride || side.plan.answer.spins_out()
                );
                assert!(slope < high || side.plan.answer.verdict == Verdict::Foot, "{address}: {words}");
            }
        }
    }
}

/// S5: “makes no difference”, and then two different pieces of advice.
#[test]
fn what_makes_no_difference_gets_one_piece_of_advice() {
    for address in ALL {
        let (report, words) = answer(address);
        let [a, b] = &report.ride.sides;
        if words.contains("makes no difference") {
            assert_eq!(a.ascent, b.ascent, "{address}: {words}");
            has(&words, "with both");
        }
    }
    let (report, words) = answer(S5);
    assert_eq!(report.ride.difference(), Difference::Elsewhere);
    assert_ne!(report.ride.sides[0].ascent, report.ride.sides[1].ascent);
    lacks(&words, "no difference");
}

/// S6: units mixed in a span of time.
#[test]
fn a_span_of_time_has_one_unit() {
    let (_, words) = answer("#r=3&le=300");
    has(&words, "Running takes 157 s (likely 2:12 to 3:03 min)");
    has(&opened("#r=3&le=300", "ride-climb").1, "2:12 to 3:03 min");
}

/// S8: “from there to about 0 % a lower gear would still be quicker”.
#[test]
fn a_lower_gear_is_not_praised_over_no_slope_at_all() {
    for address in ["#r=3&bm=140&gr=mud", "#r=3&bm=150&gr=deep-mud&pw=120"] {
        let (report, words) = answer(address);
        assert!(report.ride.sides[0].fails_on_the_level());
        has(&words, "riding ends on the level already");
        lacks(&words, "about 0 %");
    }
}

/// S12: the faster and the slower choice as equals.
#[test]
fn the_quicker_choice_is_the_advice_and_the_slower_one_what_is_left() {
    let (report, words) = answer("#r=3");
    has(
        &words,
        "with A force it: 310 W in 34×30 at 72 rpm for 21 s, 2.3 kJ of your reserve, or run: 25 s; with B force it: 310 W in 32×32 at 81 rpm for 21 s, 2.2 kJ of your reserve, or run: 25 s",
    );
    assert!(report.ride.sides[0].ascent.better() < report.ride.sides[0].ascent.foot);
    for address in ALL {
        let (report, words) = answer(address);
        lacks(&words, "as you like");
        for side in &report.ride.sides {
            match side.ascent.advice {
                Advice::Run => assert!(!side.ascent.is_better_on_bike(), "{address}"),
                Advice::TooClose => {}
                _ => assert!(side.ascent.is_better_on_bike(), "{address}"),
            }
        }
    }
}

/// S13: a wind typed here moves this answer and not the lap.
#[test]
fn a_wind_is_said_to_be_of_this_slope_only() {
    has(&answer("#r=3&wi=10").1, "The wind of 10.0 m/s counts on this slope only: the lap does not know it.");
    lacks(&crate::common::said("ride-answer", &[(Field::Headwind, "0")]), "wind");
}

/// The gear's limit is the bike's, the crossover the rider's.
#[test]
fn two_questions_have_two_numbers() {
    let (_, words) = answer("#r=3&gr=mud&sl=12&le=40&bm=58&pw=&rv=");
    has(
        &words,
        "with A no gear is low enough below 8.1 km/h, with B below 7.1 km/h. Running itself only wins below 4.8 km/h on this bank (likely 4.1 to 5.5).",
    );
    let (_, weaker) = answer("#r=3&gr=mud&sl=12&le=40&bm=58&pw=&rv=&lv=occasional");
    has(
        &weaker,
        "no gear is low enough below 8.1 km/h, with B below 7.1 km/h. Running itself only wins below 4.4 km/h",
    );
}

/// Answer, tables, pictures and sheet speak of one advice.
#[test]
fn one_climb_has_one_verdict_everywhere() {
    has(&opened("#r=3", "sheet-page").1, "9.0 %, 60 mforce it: 310 W in 34×30 at 72 rpm for 21 s");
    for address in ALL {
        let (report, words) = answer(address);
        let verbs = Side::BOTH.map(|side| match report.ride.sides[side as usize].ascent.advice {
            Advice::Ride => "ride",
            Advice::Carry => "carry your speed",
            Advice::Force => "force it",
            Advice::TooClose => "too close to call",
            Advice::Run => "run",
        });
        let climb = opened(address, "ride-climb").1;
        has(&climb, &format!("Advice{}{}", verbs[0], verbs[1]));
        has(&opened(address, "ride-speeds").1, &format!("this climb: {}this climb: {}", verbs[0], verbs[1]));
        let sheet = opened(address, "sheet-page").1;
        let short = match verbs {
            [a, b] if a == b => format!("A and B: {a}"),
            [a, b] => format!("A: {a}, B: {b}"),
        };
        for verb in verbs {
            has(&words, &format!("{verb}: "));
            has(&sheet, &format!("{verb}: "));
        }
        for picture in
            ["slopes", "verdicts"].map(|name| explorer::page::pictures::Picture::by_name(name).unwrap())
        {
            has(&picture.label(&report), &format!(": {short}."));
        }
    }
}

/// What a lower gear is worth on this climb agrees with the times.
#[test]
fn a_lower_gear_is_worth_what_the_times_say() {
    let (report, words) = answer("#r=3&gr=mud&sl=12&le=40&bm=58&pw=&rv=&ra=50&rb=44");
    let side = &report.ride.sides[0];
    let LowerGear::Saves(saved) = side.ascent.lower_gear else { panic!("{:?}", side.ascent) };
    let suited = side.paced.suited.unwrap().time.s();
    assert!((side.ascent.better().s() - suited - saved.s()).abs() < 1e-9);
    has(&words, "A lower gear would save about 8 s.");
}

/// The words of a text with every number left out, and the numbers.
fn parted(text: &str) -> (String, Vec<f64>) {
    let words = text.replace(|it: char| it.is_ascii_digit() || it == '.', " ");
    let numbers = text.split(|it: char| !it.is_ascii_digit() && it != '.');
    (words.split_whitespace().collect(), numbers.filter_map(|number| number.parse().ok()).collect())
}

/// A watt moves no printed gradient by more than a per cent, and none from a number to “none”.
#[test]
fn a_watt_does_not_move_what_is_printed() {
    for (one, more, ground) in [(316, 317, "firm-grass"), (350, 351, "firm-grass"), (153, 154, "wet-grass")] {
        let at = |watts: i32| {
            let words = answer(&format!("#r=3&pw={watts}&gr={ground}")).1;
            parted(
                words[words.find("On a slope so long").unwrap()..]
                    .trim_start_matches("On a slope so long that you hold it at"),
            )
        };
        let ((words, numbers), (other_words, others)) = (at(one), at(more));
        assert_eq!(words, other_words);
        assert!(numbers.iter().zip(&others).all(|(a, b)| (a - b).abs() <= 1.0), "{numbers:?} {others:?}");
    }
    has(
        &answer("#r=3").1,
        "with A riding ends from about 8 % up (likely 6 to 10): 34×30 at 55 rpm is too tall.",
    );
}

/// An estimated reserve follows mass and level, and is marked.
#[test]
fn the_reserve_follows_the_rider_once_it_is_left_empty() {
    let kj = |address: &str| answer(address).0.ride.inputs.reserve.kj();
    assert!((kj("#r=3") - 18.0).abs() < 1e-9);
    let [light, heavy] = ["#r=3&rv=&pw=&bm=50", "#r=3&rv=&pw=&bm=80"].map(kj);
    let strong = kj("#r=3&rv=&pw=&bm=80&lv=national");
    assert!(light < heavy && heavy < strong, "{light} {heavy} {strong}");
    let opened = link::read("#r=3&rv=");
    let read = Scenario::read(&opened.bench, &Scenario::default());
    assert!(read.scenario.ride.typed_reserve.is_none() && opened.bench.text(Field::Reserve).is_empty());
}

/// Strength that does not last for minutes may do for a short climb.
#[test]
fn a_short_climb_is_forced_where_only_lasting_strength_is_lacking() {
    let (report, words) = answer("#r=3&cl=40&pk=480&le=30");
    let side = &report.ride.sides[0];
    assert!(side.plan.answer.limits.is_force_alone());
    let Some((OnBike::Forced(power), time)) = side.ascent.bike else { panic!("{:?}", side.ascent) };
    assert!(power.watts() > 220.0 && time < side.ascent.foot, "{:?}", side.ascent);
    has(&words, "force it: ");
    lacks(&words, "your strength does not last");
}

/// A climb takes no more than its share of the reserve: all of it where a lap has a budget, no more than pays where it is repeated.
#[test]
fn forcing_ends_where_the_reserve_does() {
    for address in ALL {
        let (report, _) = answer(address);
        for ride in report.ride.sides.iter().filter_map(|side| side.paced.ride) {
            assert!(ride.drawn.j() < report.ride.inputs.budget().j() + 1e-6, "{address}: {ride:?}");
        }
    }
    let ride = answer("#r=3").0.ride.sides[0].paced.ride.unwrap();
    assert!(ride.drawn.j() < 3000.0 && ride.power.watts() > 1.3 * 220.0, "{ride:?}");
    for last_lap in ["#r=3&lb=4", "#r=3&ly=steady"] {
        let ride = answer(last_lap).0.ride.sides[0].paced.ride.unwrap();
        assert!((ride.drawn.j() - 3600.0).abs() < 1e-6, "{last_lap}");
    }
    let spent = answer("#r=3&lg=15s").0.ride.sides[0].paced.ride.unwrap();
    assert!(spent.drawn.j() < 1e-6 && spent.power.watts() <= 220.0, "{spent:?}");
}

/// Up to where riding as far pays agrees with the times on this climb.
#[test]
fn riding_pays_up_to_where_the_times_are_equal() {
    has(
        &answer("#r=3").1,
        "Riding a climb of 60 m pays, by the best guess, up to about 15 % with A, up to about 16 % with B.",
    );
    for address in ALL {
        let (report, _) = answer(address);
        let here = report.ride.inputs.climb.percent();
        for side in &report.ride.sides {
            let end = report.ride.pays_up_to(side.side).map_or(45.0, Slope::percent);
            let is_better = side.paced.ascent(report.ride.inputs.lost, None).is_better_on_bike();
            assert!((here - end).abs() < 0.25 || is_better == (here < end), "{address}: {end} {side:?}");
        }
    }
}

/// A lap may do otherwise where both ways are near: said then, and only then.
#[test]
fn where_the_lap_may_do_otherwise_is_said() {
    let mut told = 0;
    for address in ALL.into_iter().chain(["#r=3&sl=17&le=10&gr=mud"]) {
        let (report, answer) = answer(address);
        let near = |side: Side| {
            let ascent = &report.ride.sides[side as usize].ascent;
            ascent.lap_may_differ() && ascent.advice != Advice::TooClose
        };
        let is_near = Side::BOTH.into_iter().any(near);
        assert_eq!(answer.contains("its own plan goes first there"), is_near, "{address}: {answer}");
        told += usize::from(is_near);
    }
    assert!((1..ALL.len()).contains(&told), "{told}");
}
