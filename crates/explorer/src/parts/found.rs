//! What was found of a box so far: what goes together, the laps of that in order, and what they gain.

use crate::lap::found::{Standing, TESTED_S, Tested};
use crate::number::is_level;
use crate::parts::asked::BoxAsked;
use crate::parts::choice::Choice;
use crate::parts::column::Column;
use crate::parts::offer::Offer;
use crate::parts::regrets::Regrets;
use crate::side::Side;
use gear_math::Drivetrain;
use gear_math::course::TimeBand;
use gear_math::parts::{BoxLaps, Combination, Combined, Fit, FoundLap, Lack, SortedBox};

/// Laps within the quickest that are ridden once more, with everything doubtful moved.
const TESTED: usize = 12;
/// Outlines of what does not fit that are drawn at most.
const OUTLINED: usize = 60;
/// Rows of the table.
pub const LISTED: usize = 30;

/// What was found of a box so far.
#[derive(Debug, Clone)]
pub struct BoxFound {
    /// What was asked.
    pub asked: BoxAsked,
    /// Name of the course.
    pub course: String,
    /// Whether something else would be asked now.
    pub is_stale: bool,
    /// Whether it has ended.
    pub is_done: bool,
    sorted: SortedBox,
    laps: Option<BoxLaps>,
    /// The different laps, the quickest first.
    pub order: Vec<Choice>,
    /// Places of those that none beats on both time and lowest gear, the quickest first.
    pub front: Vec<usize>,
    /// What laps gain over the first, by their numbers.
    bands: Vec<(usize, TimeBand)>,
    /// What of it stands up to another day, once that was asked.
    pub regret: Option<Regrets>,
    /// Time of the quickest on every tyre of the box, s.
    pub on_tyres_s: Vec<f64>,
    /// Kept courses that count for that, with their weights.
    pub courses: Vec<(String, f64)>,
    /// The column that its table is in the order of, and whether that falls; by time where there is none.
    pub by: Option<(Column, bool)>,
    /// What is worth buying; none before that was asked.
    pub offers: Option<Vec<Offer>>,
}

impl BoxFound {
    /// Nothing yet.
    #[must_use]
    pub fn of(asked: BoxAsked, course: String, courses: Vec<(String, f64)>) -> Self {
        Self {
            asked,
            course,
            is_stale: false,
            is_done: false,
            sorted: SortedBox::default(),
            laps: None,
            order: Vec::new(),
            front: Vec::new(),
            bands: Vec::new(),
            regret: None,
            on_tyres_s: Vec::new(),
            courses,
            by: None,
            offers: None,
        }
    }

    /// Tries the next `count` combinations; whether there are more.
    pub fn sort(&mut self, count: usize) -> bool {
        let is_more = self.sorted.advance(&self.asked.outing.bike, &self.asked.parts, count);
        if !is_more {
            self.laps = Some(BoxLaps::new(self.sorted.clone()));
        }
        is_more
    }

    /// What goes together, and what does not.
    #[must_use]
    pub const fn sorted(&self) -> &SortedBox {
        &self.sorted
    }

    /// Takes what was found of laps: a number, then time, shifts at the rear and front, and whether it was worked out in full.
    pub fn take(&mut self, rows: &[f64]) {
        let Some(laps) = &mut self.laps else { return };
        for row in rows.chunks_exact(ROW) {
            let found =
                FoundLap { time_s: row[1], shifts: [row[2] as u32, row[3] as u32], planned: row[4] > 0.0 };
            laps.take(row[0] as usize, found);
        }
    }

    /// Puts in order what was taken.
    pub fn rank(&mut self) {
        let wheel = self.asked.bike().wheel;
        let all = self.laps.as_ref().map(BoxLaps::quickest).unwrap_or_default();
        let mut seen = vec![false; self.laps.as_ref().map_or(0, |laps| laps.laps().len())];
        let is_new = |it: &Combined| !std::mem::replace(&mut seen[it.number], true);
        let choice = |parts: Combined| {
            let lowest = parts.fit.avoid.lowest(&parts.fit.drivetrain);
            Choice { parts, lowest_m: lowest.development(wheel).m() }
        };
        self.order = all.into_iter().filter(is_new).map(choice).collect();
        let mut lowest = f64::INFINITY;
        let beats = |place: &usize| {
            let own = self.order[*place].lowest_m;
            let is_lower = own < lowest;
            lowest = lowest.min(own);
            is_lower
        };
        self.front = (0..self.order.len()).filter(beats).collect();
    }

    /// Numbers of the laps that are to be looked at, or once all are, to be planned in full.
    #[must_use]
    pub fn to_ride(&self) -> (Vec<usize>, bool) {
        let Some(laps) = &self.laps else { return (Vec::new(), false) };
        let to_look_at: Vec<usize> = laps.to_look_at().collect();
        if to_look_at.is_empty() { (laps.to_plan(), true) } else { (to_look_at, false) }
    }

    /// Pieces of work that are done, and how many there are.
    #[must_use]
    pub fn progress(&self) -> [usize; 2] {
        self.laps
            .as_ref()
            .map_or([self.sorted.done(), self.asked.parts.count()], |it| [it.done(), it.total()])
    }

    /// Numbers and times of the laps that are ridden once more, the first in front: the next ones, those of A and B, and the
    /// quickest without a new chain.
    #[must_use]
    pub fn leading(&self) -> Vec<(usize, f64)> {
        let first = self.order.first().map_or(0.0, |it| it.parts.lap.time_s);
        let near = (0..self.order.len().min(TESTED))
            .filter(|&at| self.order[at].parts.lap.time_s - first <= TESTED_S);
        let others =
            Side::BOTH.into_iter().filter_map(|side| self.place(side)).chain(self.without_new_chain());
        let mut places: Vec<usize> = near.chain(others).collect();
        places.sort_unstable();
        places.dedup();
        places.into_iter().map(|at| (self.order[at].parts.number, self.order[at].parts.lap.time_s)).collect()
    }

    /// Takes what the laps of [`leading`](Self::leading) gain over the first.
    pub fn take_bands(&mut self, bands: Vec<TimeBand>) {
        self.bands = self.leading().into_iter().map(|it| it.0).zip(bands).collect();
    }

    /// Numbers of the laps whose regret is asked for: those planned in full, the first in front.
    #[must_use]
    pub fn planned(&self) -> Vec<usize> {
        self.order.iter().filter(|it| it.parts.lap.planned).take(LISTED).map(|it| it.parts.number).collect()
    }

    /// Takes what each of [`planned`](Self::planned) is behind under every condition, s.
    pub fn take_regrets(&mut self, behind_s: &[f64]) {
        self.regret = Regrets::of(&self.planned(), behind_s);
    }

    /// Puts the table in the order of a column; once more turns it round.
    pub fn order_by(&mut self, column: Column) {
        let falls = self.by.is_some_and(|(by, falls)| by == column && !falls);
        self.by = Some((column, falls));
    }

    /// Places in the order of the table, as many as it has rows.
    #[must_use]
    pub fn listed(&self) -> Vec<usize> {
        let (count, listed) = (self.order.len(), self.order.len().min(LISTED));
        let mut places: Vec<usize> = (0..count).collect();
        if let Some((column, falls)) = self.by {
            let figure = |place: usize| {
                let figure = column.figure(&self.order[place]);
                if falls { -figure } else { figure }
            };
            for at in 0..listed {
                let next = (at..count).min_by(|a, b| figure(places[*a]).total_cmp(&figure(places[*b])));
                places[at..=next.unwrap_or(at)].rotate_right(1);
            }
        }
        places.truncate(listed);
        places
    }

    /// The place of a set-up of the bench, where it goes together as it stands.
    #[must_use]
    pub fn place(&self, side: Side) -> Option<usize> {
        let own = self.asked.bench[side as usize]?;
        let (_, fit) = self.sorted.fitting.iter().find(|it| it.0 == own)?;
        self.order.iter().position(|it| it.parts.fit.ridden() == fit.ridden())
    }

    /// The set-ups of the bench that a place holds.
    pub fn sides_at(&self, place: usize) -> impl Iterator<Item = Side> {
        Side::BOTH.into_iter().filter(move |&side| self.place(side) == Some(place))
    }

    /// The place of a lap by its number.
    #[must_use]
    pub fn place_of(&self, number: usize) -> Option<usize> {
        self.order.iter().position(|it| it.parts.number == number)
    }

    /// The place of the quickest that a chain of the box or of the bench will do for.
    #[must_use]
    pub fn without_new_chain(&self) -> Option<usize> {
        self.order.iter().position(|it| it.parts.fit.chain.is_some())
    }

    /// What the one at a place gains over the first, where that was asked.
    #[must_use]
    pub fn gain(&self, place: usize) -> Option<&TimeBand> {
        let number = self.order.get(place)?.parts.number;
        self.bands.iter().find(|it| it.0 == number).map(|it| &it.1)
    }

    /// Seconds that the one at a place is behind the first.
    #[must_use]
    pub fn behind_s(&self, place: usize) -> f64 {
        self.order[place].parts.lap.time_s - self.order[0].parts.lap.time_s
    }

    /// How the one at a place compares with the first.
    #[must_use]
    pub fn tested(&self, place: usize) -> Tested {
        match self.gain(place) {
            _ if place == 0 => Tested::Best,
            Some(band) if is_tie(band) => Tested::Tie,
            None => Tested::No,
            Some(_) => Tested::Apart,
        }
    }

    /// How a set-up of the bench stands.
    #[must_use]
    pub fn standing(&self, side: Side) -> Standing {
        match self.place(side).map(|place| (place, self.gain(place))) {
            Some((0, _)) => Standing::First,
            Some((_, Some(band))) if is_tie(band) => Standing::Tie(*band),
            Some((_, Some(band))) => Standing::Apart(*band),
            _ => Standing::NotTried,
        }
    }

    /// Places that are drawn and named: the first, the front, and A and B.
    #[must_use]
    pub fn shown(&self) -> Vec<usize> {
        let bench = Side::BOTH.into_iter().filter_map(|side| self.place(side));
        let mut shown: Vec<usize> = self.front.iter().copied().chain(bench).collect();
        shown.sort_unstable();
        shown.dedup();
        shown
    }

    /// Why a set-up of the bench does not go together as it stands, where its parts all lie in the box.
    #[must_use]
    pub fn lack(&self, side: Side) -> Option<Lack> {
        let own = self.asked.bench[side as usize]?;
        self.sorted.not_fitting.iter().find(|it| it.0 == own).map(|it| it.1)
    }

    /// Rings and cassettes that go on no derailleur of the box, by their lowest gears, m, with why not.
    #[must_use]
    pub fn outlined(&self) -> Vec<(f64, Drivetrain, Vec<Lack>)> {
        let fits = |it: &Drivetrain| self.sorted.fitting.iter().any(|(_, fit)| fit.drivetrain == *it);
        let mut outlined: Vec<(Drivetrain, Vec<Lack>)> = Vec::new();
        for (combination, why) in &self.sorted.not_fitting {
            let drivetrain = self.asked.parts.drivetrain(*combination);
            match outlined.iter().position(|it| it.0 == drivetrain) {
                Some(place) if !outlined[place].1.contains(why) => outlined[place].1.push(*why),
                None if outlined.len() < OUTLINED && !fits(&drivetrain) => {
                    outlined.push((drivetrain, vec![*why]));
                }
                _ => {}
            }
        }
        let wheel = self.asked.bike().wheel;
        let lowest = |it: &Drivetrain| it.lowest().development(wheel).m();
        outlined.into_iter().map(|(drivetrain, why)| (lowest(&drivetrain), drivetrain, why)).collect()
    }

    /// The combination that goes by this name, where it goes together.
    #[must_use]
    pub fn by_key(&self, key: &str) -> Option<(Combination, Fit)> {
        self.sorted.fitting.iter().copied().find(|it| self::key(it.0) == key)
    }
}

/// Whether one that gains this over the first ties with it: also where its least lag is printed as nothing.
#[must_use]
pub fn is_tie(band: &TimeBand) -> bool {
    band.is_tie() || is_level(band.high_s, band.precision())
}

/// By which name a combination goes between the page and its buttons.
#[must_use]
pub fn key(it: Combination) -> String {
    let derailleur = it.derailleur.map_or_else(String::new, |place| place.to_string());
    format!("{}-{}-{derailleur}", it.chainset, it.cassette)
}

/// Numbers in a row of [`BoxFound::take`].
pub const ROW: usize = 5;

/// A lap as a row of [`BoxFound::take`].
#[must_use]
pub fn row(number: usize, it: &FoundLap) -> [f64; ROW] {
    [
        number as f64,
        it.time_s,
        f64::from(it.shifts[0]),
        f64::from(it.shifts[1]),
        f64::from(u8::from(it.planned)),
    ]
}
