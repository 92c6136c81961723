//! A search for the set-up that is quickest round the lap: what is tried, by whom, and what was found.

use super::Side;
use super::chain::set_up;
use super::lap::{LapQuestion, OwnCourse, setup};
use crate::field::Group;
use crate::scenario::{Rings, Scenario, SearchInputs};
use gear_math::{
    Bike, CageCheck, Candidate, Cassette, Chainring, Chainset, Course, Drivetrain, Finalist, Finals,
    LapSetup, PowerBelowStanding, Ranked, Search, SearchSpace, TimeBand, Weighting, ranked,
};
use std::rc::Rc;

/// Pairs of rings that a search tries differ by so many teeth.
const DIFFERENCES: std::ops::RangeInclusive<u16> = 8..=16;

impl Scenario {
    /// Set-ups that a search tries: the rings of its fields and those of the bench among them with every usual cassette,
    /// those typed and those of the bench; and A and B as they are. Frame, derailleur and chain must take them.
    #[must_use]
    pub fn search_space(&self) -> Vec<Drivetrain> {
        let SearchInputs { rings: [least, most], kinds, frame_ring, cassettes: typed } = &self.lap.search;
        let rings: Vec<Chainring> =
            (least.teeth()..=most.teeth()).filter_map(|teeth| Chainring::new(teeth).ok()).collect();
        let bench = Side::BOTH.map(|side| self.drivetrain(side));
        let within = |it: &Chainset| it.rings().iter().all(|ring| (least..=most).contains(&ring));
        let wanted = |pair: bool| match kinds {
            Rings::Both => true,
            Rings::Single => !pair,
            Rings::Pair => pair,
        };
        let mut chainsets = SearchSpace::rings(&rings, DIFFERENCES);
        let mut cassettes: Vec<Cassette> = Cassette::common().collect();
        add(&mut chainsets, bench.iter().map(|it| it.chainset).filter(within));
        chainsets.retain(|chainset| wanted(chainset.difference() > 0));
        add(&mut cassettes, typed.iter().map(|it| it.1.cassette).chain(bench.map(|it| it.cassette)));
        let space = SearchSpace {
            chainsets,
            cassettes,
            derailleur: self.derailleur,
            largest_ring: *frame_ring,
            with_gears_to_avoid: false,
        };
        let mut all: Vec<Drivetrain> = space.set_ups().collect();
        add(&mut all, bench.into_iter().filter(|drivetrain| space.allows(drivetrain)));
        all.retain(|&drivetrain| self.has_chain(drivetrain));
        all
    }

    /// Whether a chain can run there. The wheels must clear; the chain counted on the bike must suit, and where the maker
    /// does not state what the cage takes up, some chain.
    fn has_chain(&self, drivetrain: Drivetrain) -> bool {
        let Ok(window) = set_up(drivetrain, self).and_then(|(setup, _)| setup.window()) else { return false };
        let suits = |links| (window.shortest..=window.longest.max(window.shortest)).contains(&links);
        let by_maker = self.derailleur.total_capacity.is_some();
        (by_maker || window.is_open()) && self.chain.links.is_none_or(suits)
    }
}

/// Adds what is not yet there.
fn add<T: PartialEq>(all: &mut Vec<T>, more: impl Iterator<Item = T>) {
    for one in more {
        if !all.contains(&one) {
            all.push(one);
        }
    }
}

/// One worker's part of a search.
#[derive(Debug)]
pub struct Hunt {
    search: Search,
    finals: Finals,
    all: Vec<Drivetrain>,
    next: usize,
    every: usize,
}

impl Hunt {
    /// Takes every `every`th set-up from number `first` on, so that all workers have the same mixture.
    ///
    /// # Errors
    /// When the rider does not even move on foot.
    pub fn new(
        scenario: &Scenario,
        course: &Course,
        first: usize,
        every: usize,
    ) -> Result<Self, PowerBelowStanding> {
        let setup = setup(scenario, Side::A);
        let all = scenario.search_space();
        let mine = all.iter().skip(first).step_by(every.max(1)).copied().collect();
        Ok(Self {
            search: Search::new(course, &setup, scenario.derailleur, mine)?,
            finals: Finals::new(course, &setup)?,
            all,
            next: first,
            every: every.max(1),
        })
    }

    /// The next few, each with its number; none when all are done.
    pub fn advance(&mut self, count: usize) -> Vec<(usize, Candidate)> {
        let found = self.search.advance(count);
        let numbered = found.into_iter().enumerate().map(|(i, it)| (self.next + i * self.every, it));
        let numbered: Vec<_> = numbered.collect();
        self.next += numbered.len() * self.every;
        numbered
    }

    /// What each of the set-ups of these numbers gains over the first of them.
    #[must_use]
    pub fn finals(&self, numbers: &[usize]) -> Vec<TimeBand> {
        let known = numbers.iter().filter_map(|&number| self.all.get(number));
        let ridden: Vec<Finalist> = known.map(|drivetrain| self.finals.ride(drivetrain)).collect();
        ridden.iter().map(|finalist| finalist.gained_over(&ridden[0])).collect()
    }
}

/// What a search depends on besides the set-ups on the bench.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Asked {
    course: Course,
    /// Rider and bike, whatever its gears.
    setup: LapSetup,
    /// What is typed about derailleur, chain, frame and search.
    texts: String,
}

/// Fields that decide what is tried, besides those of the bench's own set-ups.
const SEARCHED: [Group; 4] = [Group::Derailleur, Group::Chain, Group::ChainFiner, Group::LapSearch];

impl Asked {
    fn of(scenario: &Scenario, own: Option<&OwnCourse>, gears: Drivetrain) -> Self {
        let LapQuestion { course, setups: [setup, _] } = LapQuestion::of(scenario, own);
        let setup = LapSetup { bike: Bike { drivetrain: gears, ..setup.bike }, ..setup };
        Self { course, setup, texts: scenario.texts_of(&SEARCHED) }
    }
}

/// What a search has found so far.
#[derive(Debug, Clone)]
pub struct Found {
    /// What was asked.
    pub(crate) asked: Asked,
    /// Name of the course.
    pub course: String,
    /// Whether something else would be asked now.
    pub is_stale: bool,
    /// Why A and B were not tried, where they were not: what the derailleur says, and the ring that the frame clears where it
    /// is smaller than theirs.
    pub untried: [Option<(CageCheck, Option<Chainring>)>; 2],
    /// Cassettes that were typed and go with no rings that were to be tried.
    pub unfit: Vec<Cassette>,
    /// Set-ups to be tried, by number.
    pub all: Rc<[Drivetrain]>,
    pub(crate) candidates: Vec<Candidate>,
    /// The best first.
    pub order: Vec<Ranked>,
    /// What those of [`Self::leading`] gain over the first, once that was asked, by their numbers.
    pub finals: Vec<(usize, TimeBand)>,
    /// A and B as they were searched, where they are among those tried.
    pub bench: [Drivetrain; 2],
    /// Whether it has ended.
    pub done: bool,
}

/// Places of the order that are listed; of the next up to [`LOOKED_AT`] only the unbeaten ones are.
const LISTED: usize = 40;
const LOOKED_AT: usize = 100;
/// Listed set-ups within this much of the first are ridden once more, with every doubt moved, s. Estimate: farther off few tie.
pub const TESTED_S: f64 = 10.0;

impl Found {
    /// Nothing yet.
    #[must_use]
    pub fn of(scenario: &Scenario, own: Option<&OwnCourse>) -> Self {
        let all: Rc<[Drivetrain]> = scenario.search_space().into();
        let bench = Side::BOTH.map(|side| scenario.drivetrain(side));
        let typed = scenario.lap.search.cassettes.iter().map(|it| it.1.cassette);
        let untried = |drivetrain: Drivetrain| {
            let limit = scenario.lap.search.frame_ring.filter(|&most| drivetrain.chainset.largest() > most);
            (!all.contains(&drivetrain)).then(|| (scenario.derailleur.check(&drivetrain), limit))
        };
        Self {
            asked: Asked::of(scenario, own, bench[0]),
            course: scenario.lap.course_name(own),
            is_stale: false,
            untried: bench.map(untried),
            unfit: typed.filter(|cassette| !all.iter().any(|it| it.cassette == *cassette)).collect(),
            all,
            candidates: Vec::new(),
            order: Vec::new(),
            finals: Vec::new(),
            bench,
            done: false,
        }
    }

    /// How many are done.
    #[must_use]
    pub fn count(&self) -> usize {
        self.candidates.len()
    }

    /// Takes what a worker found: a number, then time, shifts at the rear and front, largest step, lowest development
    /// and spare capacity, the last no number where it is not known.
    pub fn take(&mut self, rows: &[f64]) {
        for row in rows.chunks_exact(ROW) {
            if let Some(&drivetrain) = self.all.get(row[0] as usize) {
                self.candidates.push(Candidate {
                    drivetrain,
                    time_s: row[1],
                    shifts_rear: row[2] as u32,
                    shifts_front: row[3] as u32,
                    largest_step_percent: row[4],
                    lowest_development_m: row[5],
                    spare_capacity: row[6].is_finite().then_some(row[6] as i32),
                });
            }
        }
    }

    /// Puts in order what was taken.
    pub fn rank(&mut self) {
        self.order = ranked(&self.candidates, &Weighting::USUAL);
    }

    /// Number of a set-up among those tried.
    #[must_use]
    pub fn number(&self, drivetrain: &Drivetrain) -> Option<usize> {
        self.all.iter().position(|one| one == drivetrain)
    }

    /// Those that are listed, each with its place: the first and every unbeaten one close behind.
    pub fn listed(&self) -> impl Iterator<Item = (usize, &Ranked)> {
        self.order.iter().take(LOOKED_AT).enumerate().filter(|(place, it)| *place < LISTED || it.unbeaten)
    }

    /// Numbers of the listed ones that are close to the first by time, the first in front.
    #[must_use]
    pub fn leading(&self) -> Vec<usize> {
        let first = self.order.first().map_or(0.0, |it| it.candidate.time_s);
        let close = self.listed().filter(|(_, it)| (it.candidate.time_s - first).abs() <= TESTED_S);
        close.filter_map(|(_, it)| self.number(&it.candidate.drivetrain)).collect()
    }

    /// What a set-up gains over the first, where that was asked.
    #[must_use]
    pub fn gain(&self, drivetrain: &Drivetrain) -> Option<&TimeBand> {
        let number = self.number(drivetrain)?;
        self.finals.iter().find(|(tested, _)| *tested == number).map(|(_, band)| band)
    }

    /// Takes note of whether something else would be asked now.
    pub fn compare(&mut self, scenario: &Scenario, own: Option<&OwnCourse>) {
        self.is_stale = Asked::of(scenario, own, self.asked.setup.bike.drivetrain) != self.asked;
    }
}

/// Numbers in a row of [`Found::take`].
pub const ROW: usize = 7;

/// A candidate as a row of [`Found::take`].
#[must_use]
pub fn row((number, it): &(usize, Candidate)) -> [f64; ROW] {
    [
        *number as f64,
        it.time_s,
        f64::from(it.shifts_rear),
        f64::from(it.shifts_front),
        it.largest_step_percent,
        it.lowest_development_m,
        it.spare_capacity.map_or(f64::NAN, f64::from),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Bench;
    use crate::field::Field;
    use gear_math::Demo;

    #[test]
    fn workers_share_the_search_without_leaving_one_out() {
        let scenario = Scenario::default();
        let total = scenario.search_space().len();
        assert!(total > 100, "{total}");
        let mut seen = vec![0; total];
        for worker in 0..2 {
            let mut hunt = Hunt::new(&scenario, &Demo::Meadow.course(), worker, 2).unwrap();
            let found = hunt.advance(4);
            assert_eq!(found.len(), 4);
            for (number, candidate) in found {
                assert_eq!(candidate.drivetrain, scenario.search_space()[number]);
                seen[number] += 1;
            }
        }
        assert!(seen[..8].iter().all(|&count| count == 1));
    }

    fn space(edits: &[(Field, &str)]) -> (Scenario, Vec<String>) {
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        let read = Scenario::read(&bench, &Scenario::default());
        assert!(read.complaints.is_empty(), "{:?}", read.complaints);
        let all = read.scenario.search_space();
        let names = all.iter().map(|it| format!("{} {}", it.chainset, it.cassette)).collect();
        (read.scenario, names)
    }

    #[test]
    fn a_search_keeps_to_the_rings_and_tries_typed_cassettes() {
        const TYPED: &str = "11-13-15-17-19-22-25-29-34";
        let few = [(Field::SearchSmall, "38"), (Field::SearchLarge, "40"), (Field::MoreCassettes, TYPED)];
        let (scenario, all) = space(&few);
        let [a, b] = Side::BOTH.map(|side| scenario.drivetrain(side));
        let beyond = |it: &&String| !["38 ", "39 ", "40 "].iter().any(|ring| it.starts_with(ring));
        let own = [a, b].map(|it| format!("{} {}", it.chainset, it.cassette));
        assert_eq!(
            all.iter().filter(beyond).collect::<Vec<_>>(),
            [&own[1]],
            "the derailleur does not take A"
        );
        assert!(all.contains(&format!("40 {TYPED}")) && all.contains(&format!("38 {}", b.cassette)));
        let (_, cleared) = space(&[&few[..], &[(Field::FrameRing, "39")]].concat());
        assert!(cleared.contains(&format!("39 {TYPED}")) && !cleared.iter().any(|it| it.starts_with("40 ")));
        assert!(!cleared.contains(&own[1]), "B's ring is larger than the frame clears");
    }

    #[test]
    fn a_typed_cassette_that_nothing_takes_is_named() {
        const LARGE: &str = "10-12-14-16-18-21-24-28-33-39-45";
        let typed = [(Field::MoreCassettes, "11-13-15-17-19-22-25-29-34\n10-12-14-16-18-21-24-28-33-39-45")];
        let (scenario, _) = space(&typed);
        let unfit: Vec<String> = Found::of(&scenario, None).unfit.iter().map(ToString::to_string).collect();
        assert_eq!(unfit, [LARGE]);
    }

    #[test]
    fn a_search_keeps_to_the_chain() {
        let (scenario, all) = space(&[]);
        let (_, counted) = space(&[(Field::ChainLinks, "106")]);
        assert!(counted.len() > 20 && counted.len() < all.len(), "{} of {}", counted.len(), all.len());
        assert!(counted.iter().all(|it| all.contains(it)));
        let (_, by_geometry) = space(&[(Field::Capacity, ""), (Field::PulleyCentres, "56")]);
        let (_, longer) = space(&[(Field::Capacity, ""), (Field::PulleyCentres, "95")]);
        assert!(by_geometry.len() < longer.len(), "{} and {}", by_geometry.len(), longer.len());
        for name in counted {
            let (rings, cassette) = name.split_once(' ').unwrap();
            let drivetrain =
                Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
            let window = set_up(drivetrain, &scenario).unwrap().0.window().unwrap();
            assert!(window.shortest.count() <= 106, "{name} needs {:?}", window.shortest);
        }
    }

    #[test]
    fn rows_come_back_as_they_went() {
        let scenario = Scenario::default();
        let mut hunt = Hunt::new(&scenario, &Demo::Meadow.course(), 3, 5).unwrap();
        let sent = hunt.advance(2);
        let mut found = Found::of(&scenario, None);
        found.take(&sent.iter().flat_map(row).collect::<Vec<_>>());
        found.rank();
        let mut back: Vec<Candidate> = found.order.iter().map(|it| it.candidate).collect();
        back.sort_by_key(|it| found.number(&it.drivetrain));
        assert_eq!(back, sent.iter().map(|(_, it)| *it).collect::<Vec<_>>());
    }
}
