//! What a search has found: in its order, what is shown of it, and how A and B stand in it.

use crate::bench::field::Group;
use crate::chain::inputs::GEARS_OFF;
use crate::lap::basis::Basis;
use crate::lap::own_course::OwnCourse;
use crate::lap::report::{LapQuestion, Spread};
use crate::lap::search::LeftOut;
use crate::side::Side;
use gear_math::cage::DerailleurFigure;
use gear_math::course::{Candidate, Ranked, ReserveSearch, TimeBand, Weighting, front, ranked};
use gear_math::gears::GearSet;
use gear_math::{Bike, CageCheck, Cassette, Chainring, Course, Drivetrain, LapSetup};
use std::rc::Rc;

/// What a search depends on besides the set-ups on the bench.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Asked {
    course: Course,
    /// Rider and bike, whatever its gears.
    setup: LapSetup,
    /// How effort is spread.
    spread: Spread,
    /// What is typed about derailleur, chain, frame and search.
    texts: String,
}

/// Fields that decide what is tried, besides those of the bench's own set-ups.
const SEARCHED: [Group; 4] = [Group::Derailleur, Group::Chain, Group::ChainFiner, Group::LapSearch];

impl Asked {
    fn of(basis: &Basis<'_>, own: Option<&OwnCourse>, gears: Drivetrain) -> Self {
        let LapQuestion { course, setups: [setup, _], spread } = LapQuestion::of(basis, own);
        let bike = Bike { drivetrain: gears, avoid: GearSet::NONE, ..setup.bike };
        let texts = basis.texts.of_groups(&SEARCHED)
            + &GEARS_OFF.map(|(field, _)| basis.texts.text(field)).join("\0");
        Self { course, setup: LapSetup { bike, ..setup }, spread, texts }
    }
}

/// Whether B has anything of its own that a search asks for, rings and cassette aside.
fn is_b_its_own(basis: &Basis<'_>) -> bool {
    let [a, b] = Side::BOTH.map(|side| basis.setup(side));
    let with_gears_of_a = Bike { drivetrain: a.bike.drivetrain, avoid: a.bike.avoid, ..b.bike };
    let chain = basis.chain;
    let [cage, links] = [chain.cages[0] != chain.cages[1], chain.links[0] != chain.links[1]];
    with_gears_of_a != a.bike || chain.derailleurs[0] != chain.derailleurs[1] || cage || links
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
    /// Whether B has anything of its own but rings and cassette: it is tried with what A has.
    pub is_b_its_own: bool,
    /// Why A and B were not tried, where they were not: what A's derailleur says, and the ring that the frame clears where it
    /// is smaller than theirs.
    pub untried: [Option<(CageCheck, Option<Chainring>)>; 2],
    /// Makers' figures that were not given, so that nothing was held against them.
    pub unchecked: Vec<DerailleurFigure>,
    /// What was left out, and why.
    pub left_out: LeftOut,
    /// Cassettes that were typed and go with no rings that were to be tried.
    pub unfit: Vec<Cassette>,
    /// Set-ups to be tried, by number.
    pub all: Rc<[Drivetrain]>,
    /// What was found of each.
    pub(crate) candidates: Vec<Option<Candidate>>,
    /// The best first.
    pub order: Vec<Ranked>,
    /// Places of those that none beats on both time and lowest gear, the quickest first.
    pub front: Vec<usize>,
    /// What those of [`Self::leading`] gain over the first, once that was asked, by their numbers.
    pub finals: Vec<(usize, TimeBand)>,
    /// A and B as they were searched, where they are among those tried.
    pub bench: [Drivetrain; 2],
    /// Whether it has ended.
    pub done: bool,
}

/// How a set-up of the bench stands in what a search found, by time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Standing {
    /// It was not tried, or not ridden once more.
    NotTried,
    /// It is the first.
    First,
    /// It ties with the first: what it gains over it lies on both sides of zero.
    Tie(TimeBand),
    /// It does not: what it gains over the first.
    Apart(TimeBand),
}

/// How a set-up that was found compares with the first, by time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tested {
    /// It is the first.
    Best,
    /// It ties with it.
    Tie,
    /// It does not, or nothing has been ridden once more yet.
    Apart,
    /// Others were ridden once more, it was not.
    No,
}

/// Places of the order that are listed; of the next up to [`LOOKED_AT`] only the unbeaten ones are.
pub(crate) const LISTED: usize = 40;
pub(crate) const LOOKED_AT: usize = 100;
/// Listed set-ups within this much of the first are ridden once more, with every doubt moved, s. Estimate: farther off few tie.
pub const TESTED_S: f64 = 10.0;

impl Found {
    /// Nothing yet.
    #[must_use]
    pub fn of(basis: &Basis<'_>, own: Option<&OwnCourse>) -> Self {
        let (all, left_out) = basis.search_plan();
        let all: Rc<[Drivetrain]> = all.into();
        let bench = basis.rings.drivetrains();
        let typed = basis.lap.search.cassettes.iter().map(|it| it.1.cassette);
        let untried = |side: Side| {
            let drivetrain = bench[side as usize];
            let limit = basis.lap.search.frame_ring.filter(|&most| drivetrain.chainset.largest() > most);
            (!all.contains(&drivetrain)).then(|| (basis.chain.derailleur(Side::A).check(&drivetrain), limit))
        };
        Self {
            asked: Asked::of(basis, own, bench[0]),
            course: basis.lap.course_name(own),
            is_stale: false,
            is_b_its_own: is_b_its_own(basis),
            untried: Side::BOTH.map(untried),
            unchecked: basis.chain.derailleur(Side::A).unknown().collect(),
            left_out,
            unfit: typed.filter(|cassette| !all.iter().any(|it| it.cassette == *cassette)).collect(),
            candidates: vec![None; all.len()],
            all,
            order: Vec::new(),
            front: Vec::new(),
            finals: Vec::new(),
            bench,
            done: false,
        }
    }

    /// How many are done.
    #[must_use]
    pub fn count(&self) -> usize {
        self.candidates.iter().flatten().count()
    }

    /// Takes what a worker found, in place of what was found of the same set-up before: a number, then time, shifts at the rear and front, largest step, lowest development
    /// and spare capacity, the last no number where it is not known.
    pub fn take(&mut self, rows: &[f64]) {
        for row in rows.chunks_exact(ROW) {
            if let Some(&drivetrain) = self.all.get(row[0] as usize) {
                let found = Candidate {
                    drivetrain,
                    time_s: row[1],
                    shifts_rear: row[2] as u32,
                    shifts_front: row[3] as u32,
                    largest_step_percent: row[4],
                    lowest_development_m: row[5],
                    spare_capacity: row[6].is_finite().then_some(row[6] as i32),
                };
                self.candidates[row[0] as usize] = Some(found);
            }
        }
    }

    /// Numbers of those that are planned in full, by what was found so far: the best, and A and B however far off. None where every
    /// set-up rides in full.
    #[must_use]
    pub fn to_plan(&self) -> Vec<usize> {
        if matches!(self.asked.spread, Spread::Even(_)) {
            return Vec::new();
        }
        let best = self.order.iter().take(ReserveSearch::PLANNED).map(|it| it.candidate.drivetrain);
        let all: Vec<Drivetrain> = best.chain(self.bench).collect();
        let mut numbers: Vec<usize> = all.iter().filter_map(|it| self.number(it)).collect();
        numbers.sort_unstable();
        numbers.dedup();
        numbers
    }

    /// Times of the set-ups of these numbers, in seconds.
    #[must_use]
    pub fn times_s(&self, numbers: &[usize]) -> Vec<f64> {
        let found = |number: &usize| self.candidates.get(*number).copied().flatten();
        numbers.iter().map(|number| found(number).map_or(0.0, |it| it.time_s)).collect()
    }

    /// Puts in order what was taken.
    pub fn rank(&mut self) {
        let found: Vec<Candidate> = self.candidates.iter().flatten().copied().collect();
        self.order = ranked(&found, &Weighting::USUAL);
        self.front = front(&self.order);
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

    /// Places that are shown first: the best, the front, and A and B.
    #[must_use]
    pub fn shown(&self) -> Vec<usize> {
        let bench = Side::BOTH.into_iter().filter_map(|side| self.place(side));
        let mut shown: Vec<usize> =
            core::iter::once(0).chain(self.front.iter().copied()).chain(bench).collect();
        shown.sort_unstable();
        shown.dedup();
        shown.retain(|&place| place < self.order.len());
        shown
    }

    /// Place of a set-up of the bench, where it was tried.
    #[must_use]
    pub fn place(&self, side: Side) -> Option<usize> {
        self.order.iter().position(|it| it.candidate.drivetrain == self.bench[side as usize])
    }

    /// The set-ups of the bench that a place holds.
    pub fn sides_at(&self, place: usize) -> impl Iterator<Item = Side> {
        Side::BOTH.into_iter().filter(move |&side| self.place(side) == Some(place))
    }

    /// How a set-up of the bench stands in what was found.
    #[must_use]
    pub fn standing(&self, side: Side) -> Standing {
        match self.place(side) {
            None => Standing::NotTried,
            Some(0) => Standing::First,
            Some(_) => self.gain(&self.bench[side as usize]).map_or(Standing::NotTried, |band| {
                if band.is_tie() { Standing::Tie(*band) } else { Standing::Apart(*band) }
            }),
        }
    }

    /// How many tie with the first, it aside.
    #[must_use]
    pub fn ties(&self) -> usize {
        self.finals.iter().skip(1).filter(|(_, band)| band.is_tie()).count()
    }

    /// Numbers of those that are ridden once more, the first in front: the listed ones that are close to it by time, the front,
    /// and A and B however far off.
    #[must_use]
    pub fn leading(&self) -> Vec<usize> {
        let first = self.order.first().map_or(0.0, |it| it.candidate.time_s);
        let close = |it: &Ranked| (it.candidate.time_s - first).abs() <= TESTED_S;
        let listed = self.listed().filter(|(_, it)| close(it)).map(|(place, _)| place);
        let mut places: Vec<usize> = listed.collect();
        let more = self.shown().into_iter().filter(|&place| {
            !places.contains(&place) && (close(&self.order[place]) || self.sides_at(place).next().is_some())
        });
        let more: Vec<usize> = more.collect();
        places.extend(more);
        places.into_iter().filter_map(|place| self.number(&self.order[place].candidate.drivetrain)).collect()
    }

    /// What a set-up gains over the first, where that was asked.
    #[must_use]
    pub fn gain(&self, drivetrain: &Drivetrain) -> Option<&TimeBand> {
        let number = self.number(drivetrain)?;
        self.finals.iter().find(|(tested, _)| *tested == number).map(|(_, band)| band)
    }

    /// Seconds that the set-up at a place is behind the first.
    #[must_use]
    pub fn behind_s(&self, place: usize) -> f64 {
        self.order[place].candidate.time_s - self.order[0].candidate.time_s
    }

    /// How the set-up at a place compares with the first.
    #[must_use]
    pub fn tested(&self, place: usize) -> Tested {
        match self.gain(&self.order[place].candidate.drivetrain) {
            _ if place == 0 => Tested::Best,
            Some(band) if band.is_tie() => Tested::Tie,
            None if !self.finals.is_empty() => Tested::No,
            _ => Tested::Apart,
        }
    }

    /// Takes note of whether something else would be asked now.
    pub fn compare(&mut self, basis: &Basis<'_>, own: Option<&OwnCourse>) {
        self.is_stale = Asked::of(basis, own, self.asked.setup.bike.drivetrain) != self.asked;
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
