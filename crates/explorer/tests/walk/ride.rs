//! “Ride or run?”: where riding ends, where running wins, and one advice on this climb, wherever it is told.

use crate::climb::{SIDES, Side};
use crate::facts::Facts;
use crate::page::Page;
use crate::ride_shown::brief;
use crate::{has, ride_shown};
use gear_math::rider::{
    Advice, ClimbLength, LowerGear, OnBike, Reason, RunningWins, SecondsLost, Slope, Time, Verdict,
};

pub(crate) fn check(facts: &Facts, page: &Page) -> [&'static str; 2] {
    let answer = page.text("ride-answer");
    let sides = [0, 1].map(|side| Side::of(facts, side, page.prices()[side]));
    let running = [0, 1].map(|side| {
        facts.questions[side].running_wins(&facts.grounds[side], ClimbLength::LONGEST, SecondsLost::NONE)
    });
    check_speeds(facts, &answer, &sides);
    check_ends(facts, page, &answer, &sides);
    check_running_of_each(&answer, &running);
    check_spinning(facts, &answer, &sides, &running);
    let told = told(&answer);
    for side in [0, 1] {
        check_advice(facts, &sides[side], &told[side]);
        check_against_slopes(facts, &sides[side], &told[side], &running[side]);
        check_lower_gear(&sides[side], SIDES[side], &answer, &sides);
        check_otherwise(&sides[side], SIDES[side], &answer);
        check_cadence(facts, &answer);
    }
    check_difference(facts, &answer, &sides, &told);
    ride_shown::check(facts, page, &sides, &told);
    sides.map(|it| it.verb())
}

/// What is said of this climb with A and with B.
fn told(answer: &str) -> [String; 2] {
    let (_, climb) = answer.split_once("This climb, ").unwrap();
    let (_, climb) = climb.split_once(": with ").unwrap();
    let (climb, _) = climb.split_once("Running takes ").unwrap();
    let climb = climb.trim_end_matches([' ', '|']).trim_end_matches('.');
    if let Some(both) = climb.strip_prefix("both ") {
        return [both.to_owned(), both.to_owned()];
    }
    let (a, b) = climb.split_once("; with B ").unwrap();
    [a.strip_prefix("A ").unwrap().to_owned(), b.to_owned()]
}

fn check_speeds(facts: &Facts, answer: &str, sides: &[Side; 2]) {
    let [a, b] = [0, 1].map(|side| facts.speed(facts.lowest_speed(side)));
    has(
        answer,
        &if a == b {
            format!("with A and B alike no gear is low enough below {a}.")
        } else {
            format!("with A no gear is low enough below {a}, with B below {b}.")
        },
    );
    let over = |time: Time| facts.length.m() / time.s() * if facts.is_mph { 1.0 / 0.44704 } else { 3.6 };
    let unit = if facts.is_mph { "mph" } else { "km/h" };
    let [a, b] = [&sides[0], &sides[1]].map(|side| {
        let ascent = &side.ascent;
        [ascent.foot, ascent.foot_at_worst, ascent.foot_at_best].map(|it| format!("{:.1}", over(it)))
    });
    let [best, low, high] = &a;
    has(answer, &format!("wins below {best} {unit} on this bank (likely {low} to {high})"));
    if a != b {
        let [best, low, high] = &b;
        has(answer, &format!("with A, below {best} {unit} (likely {low} to {high}) with B."));
    }
}

fn check_ends(facts: &Facts, page: &Page, answer: &str, sides: &[Side; 2]) {
    for (name, side) in SIDES.iter().zip(sides) {
        let ends = match side.flip {
            None => "nothing ends riding up to 45 %".to_owned(),
            Some(flip) if flip.reason == Reason::Energy => {
                "nothing ends riding before running wins".to_owned()
            }
            Some(flip) if flip.gradient.percent() < 0.5 => "riding ends on the level already".to_owned(),
            Some(flip) => format!("riding ends from about {:.0} % up", flip.gradient.percent()),
        };
        let alone = format!("{} {name} {ends}", if *name == "A" { "with" } else { "With" });
        assert!(
            answer.contains(&alone) || answer.contains(&format!("with A and B {ends}")),
            "{alone}: {answer}"
        );
        check_end_on_sheet(facts, page, name, side);
        if let (Some(best), Some(high)) = (side.end.best, side.end.high) {
            assert!(side.end.low <= best && best <= high, "{:?}", side.end);
        }
    }
}

fn check_end_on_sheet(facts: &Facts, page: &Page, name: &str, side: &Side) {
    let row = page.sheet(&format!("{name} Lowest gear")).unwrap();
    let Some((_, row)) = row.split_once("; riding ends ") else {
        assert!(!facts.is_riders && row.starts_with("not known"), "{row}");
        return;
    };
    match side.flip {
        None => has(row, "nowhere up to 45 %"),
        Some(flip) if flip.reason == Reason::Energy => has(row, "not before running wins"),
        Some(flip) if flip.gradient.percent() < 0.5 => has(row, "on the level already"),
        Some(flip) => has(row, &format!("from about {:.0} % up", flip.gradient.percent())),
    }
}

/// The lowest cadence is told as it was typed.
fn check_cadence(facts: &Facts, answer: &str) {
    for (before, _) in answer.match_indices(" rpm is too tall") {
        let told = answer[..before].rsplit(' ').next().unwrap();
        assert_eq!(told, facts.cadences[0].rpm().to_string(), "{answer}");
    }
}

/// With a bike of its own B is told by itself.
fn check_running_of_each(answer: &str, running: &[RunningWins; 2]) {
    match answer.split_once(" With B: ") {
        Some((of_a, of_b)) => {
            assert_ne!(running[0], running[1], "{answer}");
            check_running(of_a.split_once("With A: ").unwrap().1, &running[0]);
            check_running(of_b, &running[1]);
        }
        None => running.iter().for_each(|running| check_running(answer, running)),
    }
}

fn check_running(answer: &str, running: &RunningWins) {
    let percent = |slope: Option<Slope>| slope.map(Slope::percent);
    match (percent(running.earliest), percent(running.gradient), percent(running.latest)) {
        (None, ..) => has(answer, "riding stays quicker than running up to 45 %"),
        (_, Some(_), Some(latest)) if latest < 0.5 => has(answer, "Running is quicker from the level on"),
        (_, Some(best), Some(_)) if best < 0.5 => {
            has(answer, "Running wins from the level up (likely 0 to ");
        }
        (_, Some(best), Some(_)) => {
            has(answer, &format!("Running wins from about {best:.0} % up"));
        }
        _ => has(answer, "too close to call from"),
    }
}

/// A gear too low for the legs is told wherever it costs the sure lead on running this climb.
fn check_spinning(facts: &Facts, answer: &str, sides: &[Side; 2], running: &[RunningWins; 2]) {
    let here = facts.climb.percent();
    let is_open = |it: &RunningWins| it.earliest.is_none_or(|from| here < from.percent() - 0.5);
    let is_told = |it: &Side| it.plan.answer.spins_out() && !it.plan.answer.limits.any();
    for (side, _) in sides.iter().zip(running).filter(|(side, running)| is_open(running) && is_told(side)) {
        if side.plan.answer.verdict != Verdict::Ride {
            let spun = format!("The {} spins out at ", side.plan.answer.riding.gear);
            let (_, rest) = answer.split_once(&spun).unwrap_or_else(|| panic!("{spun}: {answer}"));
            let until = rest
                .split_once("may better on slopes up to about ")
                .map_or(0.0, |(_, slope)| slope.split(' ').next().unwrap().parse().unwrap());
            assert!(here < until + 1.0, "{answer}");
        }
    }
}

/// The verb, and the times behind it.
fn check_advice(facts: &Facts, side: &Side, told: &str) {
    let foot = brief(side.ascent.foot);
    assert!(told.starts_with(&format!("{}: ", side.verb())), "{} is not “{told}”", side.verb());
    match (side.ascent.advice, side.ascent.bike) {
        (Advice::Force, Some((OnBike::Forced(power), time))) => {
            let ride = side.paced.ride.unwrap();
            let (gear, rpm) = (ride.gear, ride.cadence.rpm());
            has(
                told,
                &format!("force it: {:.0} W in {gear} at {rpm:.0} rpm for {}", power.watts(), brief(time)),
            );
        }
        (Advice::Run, Some((_, time))) => {
            has(told, &format!("run: {foot} ("));
            has(told, &format!(" takes {}", brief(time)));
            assert!(
                costs(side, time) >= side.ascent.foot.s() && has_dearer(told) == (time < side.ascent.foot)
            );
        }
        (Advice::Run, None) => has(told, &format!("run: {foot}, because ")),
        (Advice::TooClose, Some((_, time))) => {
            has(told, &foot);
            has(told, &brief(time));
        }
        (_, Some((_, time))) => {
            has(told, &format!("{}: {}", side.verb(), brief(time)));
            assert!(costs(side, time) < side.ascent.foot.s(), "{told}");
            assert_eq!(has_dearer(told), time > side.ascent.foot, "{told}");
        }
        (_, None) => panic!("{told}"),
    }
    check_speed_of(facts, side, told);
    let better = side.ascent.bike.filter(|&(_, time)| costs(side, time) < side.ascent.foot.s());
    assert_eq!(better.map_or(side.ascent.foot, |(_, time)| time), side.ascent.better());
}

/// Time on the bike, and what it takes more from the reserve than going on foot at its price.
fn costs(side: &Side, time: Time) -> f64 {
    let ride = match side.ascent.bike {
        Some((OnBike::Carried, _)) => 0.0,
        _ => side.paced.ride.map_or(0.0, |ride| ride.drawn.j().max(0.0)),
    };
    time.s() + side.paced.spending.price.s_per_j() * (ride - side.paced.foot.drawn.j().max(0.0))
}

/// Whether the quicker way is said to take more from the reserve.
fn has_dearer(told: &str) -> bool {
    told.contains(" more of your reserve")
}

/// Nobody draws more than the climb's share, or rides more slowly than balance allows; forced is what is well above the power that lasts.
fn check_speed_of(facts: &Facts, side: &Side, told: &str) {
    let Some(ride) = side.paced.ride else {
        assert!(!told.contains("your reserve"), "{told}");
        return;
    };
    assert!(ride.drawn.j() < facts.budget.j() + 1e-3, "{told}");
    assert!((ride.speed.m_per_s() * ride.time.s() - facts.length.m()).abs() < 1e-6 * facts.length.m());
    let lasting = facts.laps[0].rider.power.watts();
    match side.ascent.bike {
        Some((OnBike::Forced(power), time)) => {
            assert!(power.watts() > 1.1 * lasting && time == ride.time, "{told}");
        }
        Some((OnBike::Ridden, time)) => {
            assert!(ride.power.watts() <= 1.1 * lasting && time == ride.time, "{told}");
        }
        _ => {}
    }
}

/// The advice on this climb, what is said of others as long, and what is said of slopes that are held for long.
fn check_against_slopes(facts: &Facts, side: &Side, told: &str, running: &RunningWins) {
    let here = facts.climb.percent();
    let end = side.pays_up_to.map_or(45.0, Slope::percent);
    let way = side.paced.ascent(facts.lost, None);
    let is_better = way.is_better_on_bike();
    assert!(
        (here - end).abs() < 0.25 || is_better == (here < end),
        "riding pays up to {end}: {way:?}, and “{told}”"
    );
    let limits = side.plan.answer.limits;
    let is_past = side.limited_to().is_some_and(|end| here > end + 0.01);
    let is_before = side.flip.is_none_or(|end| here < end.gradient.percent() - 0.01);
    assert!(!is_past || limits.any(), "past the end of riding, and yet “{told}”");
    assert!(!is_before || !limits.any(), "before the end of riding, and yet “{told}”");
    if !limits.any() && !side.plan.answer.spins_out() {
        let (low, high) = (running.earliest, running.latest);
        let verdict = side.plan.answer.verdict;
        assert!(low.is_some_and(|it| here > it.percent() - 0.01) || verdict == Verdict::Ride, "{told}");
        assert!(high.is_none_or(|it| here < it.percent() + 0.01) || verdict == Verdict::Foot, "{told}");
    }
}

/// Where this climb and its slope in general are answered apart, a sentence says so and why, and nowhere else.
fn check_otherwise(side: &Side, name: &str, answer: &str) {
    let on_foot = |verdict| matches!(verdict, Verdict::Foot | Verdict::FootForced);
    let steady = side.plan.answer.verdict;
    let is_other = match side.ascent.advice {
        Advice::Carry => false,
        Advice::Ride | Advice::Force => steady != Verdict::Ride,
        Advice::TooClose => steady != Verdict::TooClose,
        Advice::Run => !on_foot(steady),
    };
    let said = |whose: &str| answer.contains(&format!("went on and on, the answer with {whose} would be “"));
    assert_eq!(said("both") || said(name), is_other, "{name}: {answer}");
}

/// What a lower gear is worth here, and up to where one is praised.
fn check_lower_gear(side: &Side, name: &str, answer: &str, sides: &[Side; 2]) {
    let words = match side.ascent.lower_gear {
        LowerGear::Needless => None,
        LowerGear::Saves(_) => Some("would save about"),
        LowerGear::Spares => Some("would save effort, but no time"),
        LowerGear::Useless(Reason::Grip) => Some("would not help: the rear wheel slips"),
        LowerGear::Useless(Reason::Balance) => Some("would not help: it is too slow to balance"),
        LowerGear::Useless(_) => Some("would not help: by the best guess running is quicker"),
    };
    let here = |words: &str| {
        answer.contains(&format!(" A lower gear {words}"))
            || answer.contains(&format!(" With {name} a lower gear {words}"))
    };
    assert!(words.is_none_or(here), "{words:?} {answer}");
    let alike = sides[0].ascent.lower_gear == sides[1].ascent.lower_gear;
    assert!(!alike || !answer.contains(" With B a lower gear would save"), "{answer}");
}

/// What B changes: who is ridden on steeper slopes and by how much, or that nothing differs.
fn check_difference(facts: &Facts, answer: &str, sides: &[Side; 2], told: &[String; 2]) {
    let ends = [0, 1].map(|side| sides[side].limited_to());
    for (lower, other) in [(1, 0), (0, 1)] {
        let told = format!("{} instead of {} keeps you riding ", SIDES[lower], SIDES[other]);
        let Some((_, how)) = answer.split_once(&told) else { continue };
        match (ends[lower], ends[other]) {
            (Some(one), Some(two)) => {
                assert!(one > two, "{answer}");
                has(how, &format!("on slopes up to {:.1} points steeper", one - two));
            }
            (None, Some(_)) => assert!(!how.starts_with("on slopes up to"), "{answer}"),
            _ => panic!("{answer}"),
        }
    }
    let is_said = answer.contains("instead of A keeps you") || answer.contains("instead of B keeps you");
    let differ = match ends {
        [Some(a), Some(b)] => (a - b).abs() > 0.05 + 1e-9,
        [a, b] => a.is_some() != b.is_some(),
    };
    assert_eq!(is_said, differ, "{ends:?} {answer}");
    if answer.contains("makes no difference") {
        assert_eq!(told[0], told[1], "{answer}");
        assert_eq!(sides[0].ascent, sides[1].ascent);
        assert!((facts.lowest_speed(0).km_per_h() - facts.lowest_speed(1).km_per_h()).abs() < 0.05);
    }
}
