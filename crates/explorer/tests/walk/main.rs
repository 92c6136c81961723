//! A walk over two thousand benches: every answer of the page against what gear-math says of the typed values, and no two
//! sections against each other.
//!
//! `WALK_SEED=17 cargo test -p explorer --test walk` walks one bench alone.

#![allow(clippy::unwrap_used, clippy::panic, reason = "what a test looks for must be there")]

mod agree;
mod cage;
mod climb;
mod dice;
mod facts;
mod lap;
mod message;
mod page;
mod plurals;
mod ride;
mod ride_shown;
mod rings;
mod tyre;

use dice::random_bench;
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::bench::link;
use facts::Facts;
use page::Page;
use std::collections::BTreeSet;

/// Benches of one test.
const STRIDE: u64 = 250;

/// What every test has to have met, so that no check is idle.
const MET: [&str; 14] = [
    "fits",
    "fits by the figures",
    "fits if you never use",
    "needs a shorter chain",
    "needs a longer chain",
    "is not known to fit",
    "does not fit",
    "ride",
    "carry your speed",
    "force it",
    "too close to call",
    "run",
    "firm",
    "open",
];

/// Walks all, so that a failure tells every bench that it is met on.
fn walk(part: u64) {
    let all = part * STRIDE..(part + 1) * STRIDE;
    let one = std::env::var("WALK_SEED").ok().map(|it| it.parse::<u64>().unwrap());
    let (mut met, mut failed) = (BTreeSet::new(), Vec::new());
    for seed in all.filter(|seed| one.is_none_or(|one| one == *seed)) {
        match std::panic::catch_unwind(|| step(seed)) {
            Ok(found) => met.extend(found),
            Err(_) => failed.push(seed),
        }
    }
    assert!(failed.is_empty(), "{} benches, by their seeds: {failed:?}", failed.len());
    let missed: Vec<&str> = MET.into_iter().filter(|it| one.is_none() && !met.contains(it)).collect();
    assert!(missed.is_empty(), "{missed:?}");
}

fn step(seed: u64) -> Vec<&'static str> {
    let bench = random_bench(seed);
    let _told = Told(seed, &bench);
    // Every tenth lap is settled; those on a reserve are looked at elsewhere.
    let is_steady = bench.text(Field::LapModel) == "steady";
    let settled = is_steady && seed.is_multiple_of(10);
    let (facts, page) = (Facts::of(&bench), Page::of(&bench, settled));
    rings::check(&facts, &page);
    tyre::check(&facts, &page);
    plurals::check(&page);
    message::check(&bench, &page);
    [
        cage::check(&bench, &facts, &page).to_vec(),
        ride::check(&facts, &page).to_vec(),
        is_steady.then(|| lap::check(&facts, &page, settled)).flatten().into_iter().collect(),
    ]
    .concat()
}

/// Says which bench was walked when a check failed.
struct Told<'b>(u64, &'b Bench);

impl Drop for Told<'_> {
    fn drop(&mut self) {
        if std::thread::panicking() {
            eprintln!("WALK_SEED={} #{}", self.0, link::write(self.1));
        }
    }
}

macro_rules! walks {
    ($($name:ident: $part:literal;)+) => { $(#[test] fn $name() { walk($part); })+ };
}

walks! {
    one_in_eight: 0; two_in_eight: 1; three_in_eight: 2; four_in_eight: 3;
    five_in_eight: 4; six_in_eight: 5; seven_in_eight: 6; eight_in_eight: 7;
}

/// Asserts that a text holds some words.
#[track_caller]
fn has(text: &str, words: &str) {
    assert!(text.contains(words), "“{words}” is not in “{text}”");
}
