//! What is best of the box.

use crate::bench::field::Field;
use crate::bench::words::choices::construction;
use crate::lap::found::Standing;
use crate::layout::line::{Line, link_to, name, strong};
use crate::number::{clock, plain, seconds_in};
use crate::parts::found::{BoxFound, is_tie};
use crate::parts::regrets::Regrets;
use crate::parts::words::named::{chain, combination, lack};
use crate::side::Side;
use crate::words::{counted, listed};
use gear_math::course::{Precision, TimeBand};
use gear_math::parts::{BoxTyre, Condition, PartsBox};

/// What lies in the box before anything was ridden.
pub(crate) fn lies_in(parts: &PartsBox, is_bench_only: bool) -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    let whose = if is_bench_only {
        format!("Only the parts of {a} and {b} lie in the box so far")
    } else {
        format!("With the parts of {a} and {b} there lie in the box")
    };
    let kinds = [
        counted(parts.chainsets.len(), "set of rings", "sets of rings"),
        counted(parts.cassettes.len(), "cassette", "cassettes"),
        counted(parts.derailleurs.len(), "rear derailleur", "rear derailleurs"),
    ];
    let all = counted(parts.count(), "combination", "combinations");
    let between = if is_bench_only { ":" } else { "" };
    format!("{whose}{between} {}, which make {all}.", listed(&kinds)).into()
}

/// Whether numbers of sprockets are compared.
pub(crate) fn sprockets(shifter: Option<usize>) -> String {
    match shifter {
        Some(count) => format!(
            "Only cassettes of {} go with the shifter, as A and B have.",
            counted(count, "sprocket", "sprockets")
        ),
        None => "Numbers of sprockets are not compared with the shifter, since A and B differ or any number was asked for in the search.".to_owned(),
    }
}

/// What no teeth and millimetres tell.
pub(crate) const MECHANIC: &str = "Whether a cassette goes on the freewheel body, a shifter pulls as far as a derailleur asks for, and a chain is narrow enough is the mechanic’s question: teeth and millimetres do not tell.";

/// That something else would be asked now.
pub(crate) const STALE: &str = "Ridden with the box, bike, rider and course as they were: ride again.";

/// While it goes on.
pub(crate) fn so_far(found: &BoxFound) -> String {
    found.order.first().map_or_else(
        || "Trying what goes together.".to_owned(),
        |first| format!("Ahead so far: {}.", combination(&first.parts, &found.asked.parts)),
    )
}

/// Where it was stopped before any was ridden, or nothing goes together.
pub(crate) fn none(found: &BoxFound) -> String {
    let [done, total] = found.progress();
    let is_sorted = found.sorted().done() == found.asked.parts.count();
    if is_sorted && found.sorted().fitting.is_empty() {
        "Nothing in the box goes together on this bike.".to_owned()
    } else {
        format!("Stopped after {done} of {total} before any was ridden.")
    }
}

/// The quickest, with its time.
pub(crate) fn quickest(found: &BoxFound) -> Line {
    let first = &found.order[0].parts;
    let [done, total] = found.progress();
    let (parts, time) =
        (combination(first, &found.asked.parts), clock(first.lap.time_s, Precision::WITHOUT_BAND));
    let stopped = if done < total {
        format!(" Stopped after {done} of {total} pieces of work.")
    } else {
        String::new()
    };
    let planned = found.order.iter().filter(|it| it.parts.lap.planned).count();
    let looked_at = if planned < found.order.len() {
        format!(
            " Of {} different laps the best {planned} by a first look are ridden in full; of what was tried it missed none.",
            found.order.len()
        )
    } else {
        String::new()
    };
    format!(
        "Quickest of the box round {}: {}, {time} a lap.{looked_at}{stopped}",
        found.course,
        strong(&parts)
    )
    .into()
}

/// What the first gains over the next.
pub(crate) fn lead(found: &BoxFound) -> Option<String> {
    let next = found.order.get(1)?;
    let band = found.gain(1)?;
    let next = combination(&next.parts, &found.asked.parts);
    Some(if is_tie(band) {
        format!("{next} ties with it: {}.", lead_of(band))
    } else {
        format!("Its lead over {next} is more than the doubt: {}.", lead_of(band))
    })
}

/// How many seconds another is behind, by the best guess and likely.
fn lead_of(band: &TimeBand) -> String {
    let seconds = |s: f64| seconds_in(s, band.precision());
    let (best, low, high) = (seconds(-band.time_s), seconds(-band.high_s), seconds(-band.low_s));
    format!("{best}\u{a0}s, likely {low} to {high}")
}

/// How a set-up of the bench stands.
pub(crate) fn standing(found: &BoxFound, side: Side) -> Line {
    let it = name(side);
    match (found.standing(side), found.lack(side)) {
        (Standing::First, _) => format!("{it} as it stands is the quickest.").into(),
        (Standing::Tie(band), _) => {
            format!("{it} as it stands ties with it: {} behind.", lead_of(&band)).into()
        }
        (Standing::Apart(band), _) => {
            format!("Over {it} as it stands it gains more than the doubt: {}.", lead_of(&band)).into()
        }
        (Standing::NotTried, Some(why)) => {
            format!("{it} does not go together as it stands, for {}.", lack(why)).into()
        }
        (Standing::NotTried, None) => match found.place(side) {
            Some(_) => format!("{it} as it stands was not ridden once more.").into(),
            None => format!("{it} as it stands is not among them.").into(),
        },
    }
}

/// Where A or B is as good as anything.
pub(crate) const NOTHING_TO_CHANGE: &str = "Nothing to change for this lap.";

/// Which chain the first needs, and which needs none.
pub(crate) fn chains(found: &BoxFound) -> Line {
    let parts = &found.asked.parts;
    if parts.chains.is_empty() {
        let typed = link_to(Field::ChainLinks, "links on the bike");
        return format!("Which needs no new chain is not known before the {typed} are counted, or a chain lies in the box.").into();
    }
    let first = &found.order[0].parts;
    match found.without_new_chain() {
        Some(0) => format!("It needs no new chain: {} will do.", chain(first, parts)).into(),
        Some(place) => {
            let other = combination(&found.order[place].parts, parts);
            let behind = behind(found, place);
            let links = first.fit.links.count();
            format!("It needs a new chain of {links}\u{a0}links; the quickest that needs none is {other}, {behind}.").into()
        }
        None => "Each of them needs a new chain.".into(),
    }
}

fn behind(found: &BoxFound, place: usize) -> String {
    match found.gain(place) {
        Some(band) if is_tie(band) => {
            format!("a tie ({}\u{a0}s)", seconds_in(-band.time_s, band.precision()))
        }
        Some(band) => format!("{} behind", lead_of(band)),
        None => format!("{}\u{a0}s behind", plain(found.behind_s(place), 1)),
    }
}

/// The quickest on every tyre of the box; nothing where there is none.
pub(crate) fn tyres(found: &BoxFound) -> Option<String> {
    let tyres = found.asked.parts.tyres.iter().zip(&found.on_tyres_s);
    let said = |(tyre, time_s): (&BoxTyre, &f64)| {
        let kind = tyre.construction.map_or_else(String::new, |it| format!(" {}", construction(it)));
        format!("{}{kind} {}", tyre.size, clock(*time_s, Precision::WITHOUT_BAND))
    };
    let said: Vec<String> = tyres.map(said).collect();
    (!said.is_empty()).then(|| {
        format!("On the tyres of the box: {}. That is roll-out and how deep they sink, by their size; their kind, grip and mass are not in it.", listed(&said))
    })
}

/// What does not go together, counted by reason; nothing where all does.
pub(crate) fn not_fitting(found: &BoxFound) -> Option<String> {
    let count = found.sorted().not_fitting.len();
    let reasons: Vec<String> =
        found.sorted().lacking().iter().map(|&(why, count)| format!("{count} for {}", lack(why))).collect();
    let verb = if count == 1 { "does" } else { "do" };
    (count > 0).then(|| format!("{count} {verb} not fit: {}.", reasons.join(", ")))
}

/// Which is least regretted if the day is not as entered.
pub(crate) fn regret(found: &BoxFound) -> Option<String> {
    let Regrets { least, worst_s, ahead } = found.regret.as_ref()?;
    let place = found.place_of(*least)?;
    let seconds = |s: f64| plain(s, 1);
    let [worst, first] = worst_s.map(seconds);
    let all = if found.courses.is_empty() { "" } else { "over all courses " };
    let said = if place == 0 {
        format!("It is least regretted {all}on another day, too: at most {first}\u{a0}s behind.")
    } else {
        let other = combination(&found.order[place].parts, &found.asked.parts);
        format!(
            "Least regretted {all}on another day: {other}, at most {worst}\u{a0}s behind, the quickest {first}\u{a0}s."
        )
    };
    let (mut leads, mut stays) = (String::new(), Vec::new());
    for (day, number, behind_s) in ahead {
        match found.place_of(*number) {
            Some(place) if !is_nothing(*behind_s) => {
                let other = combination(&found.order[place].parts, &found.asked.parts);
                let (ahead, day) = (seconds(*behind_s), condition(*day));
                leads.push_str(&format!(" {other} is ahead of the quickest by {ahead}\u{a0}s {day}."));
            }
            _ => stays.push(condition(*day)),
        }
    }
    if !stays.is_empty() {
        leads.push_str(&format!(" The quickest stays so {}.", listed(&stays)));
    }
    Some(format!("{said}{leads}{}", courses(found)))
}

/// Whether seconds are printed as none.
fn is_nothing(s: f64) -> bool {
    s < 0.05
}

const fn condition(condition: Condition) -> &'static str {
    match condition {
        Condition::AsEntered => "as entered",
        Condition::WetterGround => "on ground one step wetter",
        Condition::LessPower => "with 10\u{a0}% less power",
        Condition::MorePower => "with 10\u{a0}% more power",
        Condition::LowerCadence => "at 5\u{a0}rpm less",
        Condition::HigherCadence => "at 5\u{a0}rpm more",
    }
}

/// Which kept courses count beside the one that is ridden.
fn courses(found: &BoxFound) -> String {
    let named = |(name, weight): &(String, f64)| format!("{name}, weight {weight}");
    let named: Vec<String> = found.courses.iter().map(named).collect();
    match named.as_slice() {
        [] => String::new(),
        all => format!(" All courses: {}, weight 1; {}.", found.course, all.join("; ")),
    }
}

/// How many combinations were tried and laps ridden, and for how many seconds it goes on.
pub(crate) fn left(done: usize, total: usize, seconds: f64) -> String {
    format!("{done} of {total}, about {seconds:.0}\u{a0}s more")
}

/// While it is looked for what is worth buying.
pub(crate) const SHOPPING: &str = "Looking how sure that is, and what would be worth buying.";
