//! “Which rings?”: who is lower and higher and by how much, whose steps are wider, what both have.

use crate::facts::Facts;
use crate::has;
use crate::page::Page;
use explorer::page::pictures::Picture;
use gear_math::Setup;
use gear_math::gears::{EndDifference, StepSpread};

const SIDES: [&str; 2] = ["A", "B"];

pub(crate) fn check(facts: &Facts, page: &Page) {
    let answer = page.text("rings-answer");
    let is_same = facts.set_ups[0] == facts.set_ups[1];
    assert_eq!(answer.contains("have the same rings and sprockets"), is_same, "{answer}");
    if !is_same {
        check_ends(facts, &answer);
        check_steps(facts, &answer);
        check_counts(facts, &answer);
    }
    check_tables(facts, page);
    check_reach(facts, page);
    check_overlap(facts, page);
    check_pictures(facts, page);
}

fn check_ends(facts: &Facts, answer: &str) {
    let [low, high] = facts.cadences.map(|it| format!("{} rpm", it.rpm()));
    let lowest = [0, 1].map(|side| facts.speed(facts.lowest_speed(side)));
    let highest = [0, 1].map(|side| facts.speed(facts.highest_speed(side)));
    let lower = usize::from(facts.lowest_speed(1) < facts.lowest_speed(0));
    let higher = usize::from(facts.highest_speed(1) > facts.highest_speed(0));
    let (l, h) = (1 - lower, 1 - higher);
    has(
        answer,
        &if lowest[0] == lowest[1] {
            format!("Both turn {low} down to {}.", lowest[0])
        } else {
            let (one, other) = (SIDES[lower], SIDES[l]);
            format!("{one} turns {low} down to {}, {other} only down to {}.", lowest[lower], lowest[l])
        },
    );
    has(
        answer,
        &if highest[0] == highest[1] {
            format!("At the top they are alike: {} at {high}.", highest[0])
        } else {
            format!(
                "At the top {} reaches {} against {} at {high}.",
                SIDES[higher], highest[higher], highest[h]
            )
        },
    );
}

/// Whoever is said to have wider steps has them, by the figures as they are printed.
fn check_steps(facts: &Facts, answer: &str) {
    let spread = |side: usize| facts.set_ups[side].summary(facts.tolerance).riding_order.step_spread();
    let (Some(a), Some(b)) = (spread(0), spread(1)) else {
        assert!(!answer.contains("steps"), "{answer}");
        return;
    };
    let whole = |of: fn(&StepSpread) -> f64| [&a, &b].map(|it| of(it).round_ties_even());
    let (mean, most) = (whole(|it| it.mean.percent()), whole(|it| it.largest.percent()));
    for side in [0, 1] {
        let (name, other) = (SIDES[side], 1 - side);
        let is_said = |words: &str| answer.contains(&words.replace('#', name));
        if is_said("# has the wider steps") {
            assert!(mean[side] > mean[other], "{mean:?} {answer}");
        }
        let largest = is_said("the largest is wider on #") || is_said("but the largest step is #’s");
        assert!(!largest || most[side] > most[other], "{most:?} {answer}");
        let both = is_said("# has the wider steps:");
        assert!(!both || most[side] > most[other], "{most:?} {answer}");
        has(answer, &format!("{} %", mean[side]));
        has(answer, &format!("{} %", most[side]));
    }
    assert_eq!(answer.contains("alike"), mean[0].total_cmp(&mean[1]).is_eq() || both_tops(facts), "{answer}");
}

fn both_tops(facts: &Facts) -> bool {
    facts.speed(facts.highest_speed(0)) == facts.speed(facts.highest_speed(1))
}

fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

fn check_counts(facts: &Facts, answer: &str) {
    for (name, set_up) in SIDES.iter().zip(&facts.set_ups) {
        let useful = counted(set_up.summary(facts.tolerance).useful(), "useful gear", "useful gears");
        let all = set_up.drivetrain.gears().count();
        has(answer, &format!("{name} has {useful} of {all}"));
        let left_out = format!(", and {} never to be used", set_up.avoid.count());
        let is_told = !set_up.avoid.is_empty() && !set_up.avoid.holds_all(&set_up.drivetrain);
        assert!(!is_told || answer.contains(&left_out), "{left_out}: {answer}");
    }
    let shared = facts.set_ups[0].compare(&facts.set_ups[1], facts.tolerance).shared.len();
    let shared = if shared == 0 { "no gear".to_owned() } else { counted(shared, "gear", "gears") };
    has(answer, &format!("They have {shared} in common"));
}

fn check_tables(facts: &Facts, page: &Page) {
    let row = |head: &str| page.row("rings-summary", head);
    let usable = |side: usize| {
        let set_up = &facts.set_ups[side];
        [set_up.avoid.lowest(&set_up.drivetrain), set_up.avoid.highest(&set_up.drivetrain)]
    };
    let [low, high] = [0, 1].map(|end| [0, 1].map(|side| usable(side)[end]));
    assert_eq!(row("Lowest gear")[..2], low.map(|it| it.to_string()));
    assert_eq!(row("Highest gear")[..2], high.map(|it| it.to_string()));
    let comparison = facts.set_ups[0].compare(&facts.set_ups[1], facts.tolerance);
    let percent = |it: &EndDifference| it.b_against_a_percent();
    for (cadence, end, speed) in [
        (0, percent(&comparison.lowest), Facts::lowest_speed as fn(&Facts, usize) -> _),
        (1, percent(&comparison.highest), Facts::highest_speed),
    ] {
        let speeds = [speed(facts, 0), speed(facts, 1)];
        let exact = 100.0 * (speeds[1].m_per_s() / speeds[0].m_per_s() - 1.0);
        assert!((exact - end).abs() < 1e-9, "{exact} {end}");
        let said = row(&format!("Its speed at {} rpm", facts.cadences[cadence].rpm()));
        assert_eq!(said[..2], speeds.map(|it| facts.speed(it)));
        let number: f64 = said[2].trim_end_matches(" %").replace('−', "-").parse().unwrap();
        assert!((number - exact).abs() < 0.051, "{said:?} {exact}");
    }
    check_marks(facts, page);
}

/// The gears that a table marks as never to be used are those that gear-math avoids.
fn check_marks(facts: &Facts, page: &Page) {
    let mut marked: Vec<String> = Vec::new();
    for row in page.rows("rings-gears").into_iter().filter(|row| row.last().unwrap().contains("never use")) {
        marked.push(row[0].clone());
    }
    let mut avoided: Vec<String> =
        [0, 1].iter().flat_map(|&side| facts.named(side, facts.cages[side].avoid)).collect();
    marked.sort();
    avoided.sort();
    assert_eq!(marked, avoided);
}

fn check_reach(facts: &Facts, page: &Page) {
    let tables = page.text("rings-overlap");
    let comparison = facts.set_ups[0].compare(&facts.set_ups[1], facts.tolerance);
    for (name, reach) in SIDES.iter().zip([comparison.only_a, comparison.only_b]) {
        let ends = [reach.below, reach.above];
        let told = tables.matches(&format!("Only {name} reaches ")).count();
        assert_eq!(told, ends.iter().flatten().count(), "{tables}");
        for span in ends.iter().flatten() {
            has(&tables, &format!("{:.2} m", span.from.m()));
        }
    }
}

/// Gears that another usable ring reaches too, and those of one ring alone, counted here.
fn check_overlap(facts: &Facts, page: &Page) {
    let count = |set_up: &Setup| {
        let gears: Vec<(u16, f64)> =
            set_up.avoid.rest(&set_up.drivetrain).map(|it| (it.ring.teeth(), it.ratio().value())).collect();
        let is_inside = |&&(ring, ratio): &&(u16, f64)| {
            set_up.drivetrain.chainset.rings().iter().filter(|it| it.teeth() != ring).any(|other| {
                let on = || gears.iter().filter(|it| it.0 == other.teeth()).map(|it| it.1);
                on().any(|it| it <= ratio + 1e-12) && on().any(|it| it >= ratio - 1e-12)
            })
        };
        let inside = gears.iter().filter(is_inside).count();
        [inside, gears.len() - inside]
    };
    let counts = [count(&facts.set_ups[0]), count(&facts.set_ups[1])];
    for (place, head) in ["Gears another ring reaches too", "Gears of one ring alone"].into_iter().enumerate()
    {
        assert_eq!(page.row("rings-overlap", head), counts.map(|it| it[place].to_string()));
    }
}

fn check_pictures(facts: &Facts, page: &Page) {
    let ladder = Picture::by_name("ladder").unwrap().label(&page.report).replace('\u{a0}', " ");
    for (side, name) in SIDES.iter().enumerate() {
        let set_up = &facts.set_ups[side];
        let count = set_up.avoid.rest(&set_up.drivetrain).count();
        let [low, high] = [set_up.avoid.lowest(&set_up.drivetrain), set_up.avoid.highest(&set_up.drivetrain)]
            .map(|gear| set_up.row(gear).development.m());
        has(
            &ladder,
            &format!(
                "{name} reaches from {low:.2} to {high:.2} m of development in {}",
                counted(count, "gear", "gears")
            ),
        );
    }
}
