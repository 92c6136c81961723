//! “Will the cage take it?”: one verdict in the answer, in the table, on the sheet and beside the lap.

use crate::facts::{Facts, MEASURED, cage_questions};
use crate::has;
use crate::page::{Page, text};
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::side::Side;
use gear_math::chain::{CageAnswer, CageOutcome, CageQuestion, ChainDefaults, ChainMeasure};
use gear_math::gears::GearSet;

const SIDES: [&str; 2] = ["A", "B"];

/// The verdicts in words; each stands at the head of its paragraph and nowhere else in it.
const VERDICTS: [&str; 7] = [
    "fits if you never use",
    "fits by the figures",
    "fits",
    "needs a shorter chain",
    "needs a longer chain",
    "is not known to fit",
    "does not fit",
];

fn verdict(answer: &CageAnswer) -> &'static str {
    VERDICTS[match answer.outcome {
        CageOutcome::FitsAvoidingGears => 0,
        CageOutcome::FitsOnPaper => 1,
        CageOutcome::Fits => 2,
        CageOutcome::OtherChain { .. } if answer.too_short.is_empty() => 3,
        CageOutcome::OtherChain { .. } => 4,
        CageOutcome::NotKnown(_) => 5,
        CageOutcome::DoesNotFit(_) => 6,
    }]
}

pub(crate) fn check(bench: &Bench, facts: &Facts, page: &Page) -> [&'static str; 2] {
    let answer = page.html("cage-answer");
    let paragraphs: Vec<&str> = answer.split("<p class=\"verdict\">").skip(1).collect();
    assert_eq!(paragraphs.len(), 2, "{answer}");
    for (side, html) in paragraphs.iter().enumerate() {
        let (cage, said) = (&facts.cages[side], text(html.split("</p>").next().unwrap()));
        check_verdict(side, cage, &said);
        check_numbers(facts, side, &said);
        check_sheet(facts, page, side, &said);
        check_kept(bench, side, &said);
    }
    let fits = facts.cages.iter().any(|it| it.outcome == CageOutcome::Fits);
    let is_green = answer.contains("class=\"good\"");
    assert!(if facts.is_riders { is_green == fits } else { fits || !is_green }, "{answer}");
    check_sums(facts, page);
    check_green(bench, facts);
    check_crosses(bench, facts, page);
    [verdict(&facts.cages[0]), verdict(&facts.cages[1])]
}

fn check_verdict(side: usize, cage: &CageAnswer, said: &str) {
    let head = format!("{} {}", SIDES[side], verdict(cage));
    assert!(said.starts_with(&head), "“{head}” is not at the head of “{said}”");
    let told = VERDICTS.iter().find(|it| said.starts_with(&format!("{} {it}", SIDES[side])));
    assert_eq!(told, Some(&verdict(cage)), "{said}");
    let fails = matches!(cage.outcome, CageOutcome::DoesNotFit(_));
    assert_eq!(said.contains("does not fit"), fails, "{said}");
    assert!(!fails || !said.to_lowercase().contains("keep the derailleur"), "{said}");
}

/// Teeth to spare or short by the makers' sum, worked out here; links as gear-math counts them.
fn check_numbers(facts: &Facts, side: usize, said: &str) {
    let (bike, cage) = (&facts.bikes[side], &facts.cages[side]);
    let needed = i32::from(bike.chainset.largest().teeth() - bike.chainset.smallest().teeth())
        + i32::from(bike.cassette.largest().teeth() - bike.cassette.smallest().teeth());
    let spare = facts.derailleurs[side].total_capacity.map(|it| i32::from(it.teeth()) - needed);
    let teeth = |count: i32| format!("{count} {}", if count == 1 { "tooth" } else { "teeth" });
    match (said.contains("to spare"), said.contains("short of capacity")) {
        (true, true) => panic!("{said}"),
        (true, _) if spare == Some(0) => has(said, "with nothing to spare"),
        (true, _) => has(said, &format!("{} ", teeth(spare.unwrap()))),
        (_, true) => has(said, &format!("{} short of capacity", teeth(-spare.unwrap()))),
        _ => assert!(spare.is_none() || !said.contains(" capacity to spare"), "{said}"),
    }
    if let Some((_, rest)) = said.split_once("chain of ") {
        let links: u16 = rest.split(' ').next().unwrap().parse().unwrap();
        let known = [cage.links, cage.fitted].into_iter().flatten().map(gear_math::ChainLinks::count);
        assert!(known.into_iter().any(|it| it == links), "{links} {cage:?} {said}");
    }
    if let CageOutcome::DoesNotFit(need) = &cage.outcome
        && let Some(need) = &need.derailleur
    {
        assert!(
            said.contains(&format!(" {} ", need.largest)) && said.contains(&teeth(i32::from(need.capacity))),
            "{said}"
        );
        assert!(i32::from(need.capacity) >= needed, "{need:?} {needed}");
    }
}

/// The derailleur is to be kept only where it is known to take the chain that belongs there.
fn check_kept(bench: &Bench, side: usize, said: &str) {
    if said.contains("eep the derailleur") {
        let then = CageQuestion { links: None, ..cage_questions(bench)[side].clone() }.answer();
        let fails = matches!(then.outcome, CageOutcome::NotKnown(_) | CageOutcome::DoesNotFit(_));
        assert!(!fails, "{said} {then:?}");
    }
}

/// The sheet says the same verdict and the same next step.
fn check_sheet(facts: &Facts, page: &Page, side: usize, said: &str) {
    let row = |what: &str| page.sheet(&format!("{} {what}", SIDES[side]));
    let verdict = row("Derailleur").unwrap();
    if verdict.starts_with("not known ___") {
        assert!(!facts.is_riders);
        return;
    }
    let start = said.trim_start_matches(SIDES[side]).trim_start_matches(" is").trim_start();
    assert!(start.starts_with(&verdict), "“{verdict}” is not in “{said}”");
    let step = row("Next").unwrap();
    assert_eq!(start.strip_prefix(&verdict).unwrap(), format!(". {step}."));
}

/// The crosses in the sheet's tables: of the cage only where its capacity is the rider's.
fn check_crosses(bench: &Bench, facts: &Facts, page: &Page) {
    let sheet = page.html("sheet-page");
    let is_told = bench.is_riders(Field::Capacity) || bench.is_nobodys();
    for (name, cage) in SIDES.iter().zip(&facts.cages) {
        let Some((_, table)) =
            sheet.split_once(&format!("<caption><b class=\"{name}\">{name}</b> Development"))
        else {
            continue;
        };
        let crosses = table.split("</table>").next().unwrap().matches('×').count();
        assert_eq!(crosses, if is_told { cage.avoid } else { cage.switched_off }.count(), "{table}");
    }
}

/// Slack of every gear beyond the capacity, by the makers' sum.
fn check_sums(facts: &Facts, page: &Page) {
    let mut expected = Vec::new();
    for (side, (name, bike)) in SIDES.iter().zip(&facts.bikes).enumerate() {
        for gear in bike.gears() {
            let slack = bike.chainset.largest().teeth() - gear.ring.teeth() + bike.cassette.largest().teeth()
                - gear.sprocket.teeth();
            let over =
                facts.derailleurs[side].total_capacity.map_or(0, |it| slack.saturating_sub(it.teeth()));
            if over > 0 {
                let teeth = |count| format!("{count} {}", if count == 1 { "tooth" } else { "teeth" });
                expected.push(vec![format!("{name} {gear}"), teeth(slack), teeth(over)]);
            }
        }
    }
    let mut rows: Vec<_> = page.rows("cage-loose").into_iter().skip(1).collect();
    rows.sort();
    expected.sort();
    assert_eq!(rows, expected);
}

/// A verdict of “fits” stays one, without gears to avoid, at either end of what is usual of a measure left empty.
fn check_green(bench: &Bench, facts: &Facts) {
    let green: Vec<usize> =
        [0, 1].into_iter().filter(|&it| facts.cages[it].outcome == CageOutcome::Fits).collect();
    if green.is_empty() {
        return;
    }
    let by_capacity = facts.derailleurs.each_ref().map(|it| it.total_capacity.is_some());
    for assumed in ChainDefaults::ASSUMPTIONS.iter().filter(|it| it.measure != ChainMeasure::ForeStop) {
        let fields = MEASURED.iter().find(|it| it.0 == assumed.measure).unwrap().1;
        let is_known = |side: usize| {
            let measured = |&field: &Field| !bench.text_of(Side::BOTH[side], field).is_empty();
            let by_capacity = by_capacity[side] && assumed.measure == ChainMeasure::PulleyCentres;
            fields.iter().all(measured) || by_capacity
        };
        for end in [assumed.low, assumed.high] {
            let mut moved = bench.clone();
            fields.iter().for_each(|&field| {
                let both = [Some(field), field.own_of_b()];
                both.into_iter().flatten().for_each(|it| moved.write(it, &end.to_string()));
            });
            let then = cage_questions(&moved).map(|it: CageQuestion| it.answer());
            for &side in green.iter().filter(|&&side| !is_known(side)) {
                let fails = then[side].does_not_fit() || then[side].avoid_by_cage() != GearSet::NONE;
                assert!(!fails, "{:?} {end}: {:?}", assumed.measure, then[side]);
            }
        }
    }
    assert!(bench.text(Field::Capacity).is_empty() || by_capacity[0]);
}
