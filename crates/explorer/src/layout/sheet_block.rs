//! What a section gives to the workshop sheet.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::bench::owners::Owners;
use crate::layout::concern::Concern;
use crate::layout::sheet_checks::Check;
use crate::layout::words::sheet as words;
use crate::side::Side;

/// What one section decided.
#[derive(Debug)]
pub(crate) struct Block {
    pub(crate) title: &'static str,
    /// What there is to know, in order.
    pub(crate) parts: Vec<Part>,
    /// What to check by hand. The same check from two sections is printed once.
    pub(crate) checks: Vec<Check>,
}

/// One thing on the sheet: of set-up A or B alone, or of both.
#[derive(Debug)]
pub(crate) struct Part {
    pub(crate) side: Option<Side>,
    pub(crate) what: String,
    pub(crate) body: Body,
    /// The fields it rests on, where it is not all of the section's.
    rests_on: Option<&'static [Field]>,
    /// Whether it warns of harm, so that it is never left out.
    pub(crate) is_warning: bool,
}

#[derive(Debug)]
pub(crate) enum Body {
    /// A value in words.
    Words(String),
    /// A small table; the first row is its head.
    Grid(Vec<Vec<String>>),
    /// Room to write in.
    Blank,
    /// What is not known, or not the rider's.
    Open,
}

impl Block {
    /// An empty block.
    pub(crate) const fn new(title: &'static str) -> Self {
        Self { title, parts: Vec::new(), checks: Vec::new() }
    }

    /// Adds something to check by hand, or how to measure it.
    pub(crate) fn check(&mut self, concern: Concern, words: impl Into<String>) {
        self.checks.push(Check::new(concern, words));
    }

    /// Adds a value that holds for both set-ups.
    pub(crate) fn row(&mut self, what: &str, value: String) {
        self.row_for(None, what, value);
    }

    /// Adds a value of one set-up.
    pub(crate) fn row_of(&mut self, side: Side, what: &str, value: String) {
        self.row_for(Some(side), what, value);
    }

    /// Adds a value of one set-up, or of both where no side is named.
    pub(crate) fn row_for(&mut self, side: Option<Side>, what: &str, value: String) {
        self.parts.push(Part::new(side, what, Body::Words(value)));
    }

    /// Adds a small table of one set-up; its first row is the head.
    pub(crate) fn grid_of(&mut self, side: Side, what: &str, rows: Vec<Vec<String>>) {
        self.parts.push(Part::new(Some(side), what, Body::Grid(rows)));
    }

    /// Says that the last part rests on nothing but these fields; without that it is all that the section's answer rests on.
    pub(crate) fn on(&mut self, fields: &'static [Field]) {
        if let Some(part) = self.parts.last_mut() {
            part.rests_on = Some(fields);
        }
    }

    /// Says that the last part warns of harm, whatever it rests on.
    pub(crate) fn warns(&mut self) {
        self.on(&[]);
        if let Some(part) = self.parts.last_mut() {
            part.is_warning = true;
        }
    }

    /// Leaves open what rests on values that are not the rider's, and calls usual what rests on those.
    pub(crate) fn leave_open(&mut self, owners: &Owners, rests_on: &dyn Fn(Field) -> bool) {
        for part in &mut self.parts {
            match part.owner(owners, rests_on) {
                Owner::Rider => {}
                Owner::Usual if part.is_usual() => part.call_usual(),
                Owner::Usual => {}
                Owner::Demo | Owner::Unknown => part.body = Body::Open,
            }
        }
    }
}

impl Part {
    fn new(side: Option<Side>, what: &str, body: Body) -> Self {
        Self { side, what: what.to_owned(), body, rests_on: None, is_warning: false }
    }

    /// Whose values it rests on; by default it is either the rider's or not, whatever is usual beside that.
    fn owner(&self, owners: &Owners, rests_on: &dyn Fn(Field) -> bool) -> Owner {
        if let Some(fields) = self.rests_on {
            return owners.least_of(self.side, fields);
        }
        let counts = |field: Field| rests_on(field) && owners.is_of(self.side, field);
        owners.lacking(counts).map(|field| owners.get(field)).max().unwrap_or(Owner::Rider)
    }

    /// Whether nothing but usual values are behind it.
    fn is_usual(&self) -> bool {
        self.rests_on.is_some_and(|fields| fields.iter().all(|field| field.start_owner() == Owner::Usual))
    }

    fn call_usual(&mut self) {
        if let Body::Words(value) = &mut self.body {
            *value = words::usual(value);
        }
    }

    /// Room to write something in by hand.
    pub(crate) fn blank(what: &str) -> Self {
        Self { rests_on: Some(&[]), ..Self::new(None, what, Body::Blank) }
    }

    pub(crate) fn is_for(&self, chosen: Option<Side>) -> bool {
        self.side.is_none() || chosen.is_none() || self.side == chosen
    }
}
