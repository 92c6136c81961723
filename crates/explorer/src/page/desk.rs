//! The desk: one bench, the sheet worked out from it, and every way to change them.

use crate::bench::bench::Bench;
use crate::bench::complaint::Complaint;
use crate::bench::field::{Field, Group};
use crate::bench::link;
use crate::chain::report::ChainReport;
use crate::lap::refusal::Refusal;
use crate::lap::report::LapQuestion;
use crate::lap::room::LapRoom;
use crate::page::comparing::Comparing;
use crate::page::empty;
use crate::page::history::History;
use crate::page::notices;
use crate::page::report::Report;
use crate::page::reported::Reported;
use crate::page::scenario::Scenario;
use crate::page::sections::{self, Written};
use crate::page::was::Was;
use crate::page::words::notices as words;
use crate::rack::room::RackRoom;
use crate::rack::view as rack_view;
use crate::units::InForce;
use gear_math::course::LapSettling;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// What changed on the page.
#[derive(Debug, Default)]
pub struct Update {
    /// Element ids with their new content.
    pub html: Vec<(String, String)>,
    /// Field keys with the value to put in; only where it was not typed there.
    pub values: Vec<(&'static str, String)>,
    /// Keys of all fields in error.
    pub wrong: Vec<&'static str>,
    /// Fields that mean something while they are empty, with what.
    pub empty: Vec<(&'static str, String)>,
    /// Whether there is something to undo.
    pub undo: bool,
    /// The new link, when the bench is no longer what the address holds.
    pub link: Option<String>,
    /// Sliders with their highest value, where that depends on what was typed; put in place before the values.
    pub most: Vec<(&'static str, usize)>,
}

/// The state of the page.
#[derive(Default)]
pub struct Desk {
    pub(crate) bench: Bench,
    pub(crate) good: Scenario,
    pub(crate) report: Reported,
    pub(crate) history: History,
    pub(crate) notices: Vec<String>,
    pub(crate) rack: RackRoom,
    complaints: Vec<Complaint>,
    shown: BTreeMap<String, String>,
    was: Was,
    /// Ids of the panels that are open.
    open: BTreeSet<String>,
    /// Ids of the sections that are out of sight.
    away: BTreeSet<String>,
    /// The lap that workers were sent for.
    pub(crate) ordered: Option<LapQuestion>,
    /// An even lap that is being settled, ride by ride.
    pub(crate) settling: Option<(LapQuestion, LapSettling)>,
    /// All bikes, while they are worked out for the bench as it stands.
    pub(crate) comparing: Option<Comparing>,
}

impl Desk {
    /// What everything on the page is drawn from.
    #[must_use]
    pub fn report(&self) -> Rc<Report> {
        Rc::clone(&*self.report)
    }

    /// Puts the units that everything is told in in force.
    fn enter_units(&self) -> InForce {
        self.report.units.enter()
    }

    /// Opens the bench that a link holds; the address stays as it is.
    pub fn open(&mut self, address: &str) -> Update {
        let opened = link::read(address);
        if !self.shown.is_empty() {
            self.remember(None);
        }
        self.notices = opened.complaints;
        self.lay_out(opened.bench, Scenario::default())
    }

    /// Opens the bench as it was when the page was left, and says so.
    pub fn reopen(&mut self, address: &str) -> Update {
        let opened = link::read(address);
        self.notices = vec![words::AS_LEFT.to_owned()];
        self.notices.extend(opened.complaints);
        self.lay_out(opened.bench, Scenario::default())
    }

    /// Takes what was typed, in the units that the fields show: pairs of field key and text. A key that no field has is a fault
    /// of the page; it is passed over.
    pub fn edit(&mut self, edits: &[(String, String)]) -> Update {
        let in_force = self.good.units.enter();
        let known = |(key, text): &'_ (String, String)| {
            let field = Field::by_key(key);
            debug_assert!(field.is_some(), "no field has the key {key}");
            Some((field?, field?.kept(text).into_owned()))
        };
        let edits: Vec<(Field, String)> = edits.iter().filter_map(known).collect();
        drop(in_force);
        let changes_units = edits.iter().any(|(field, _)| field.spec().group == Group::Units);
        self.take(&edits, if changes_units { Field::ALL } else { &[] })
    }

    /// Puts a text of the bench into a field, which then shows it.
    pub fn put(&mut self, key: &str, text: &str) -> Update {
        let Some(field) = Field::by_key(key) else { return self.refresh(Vec::new(), false) };
        self.take(&[(field, text.to_owned())], &[field])
    }

    /// Takes new texts, and shows some fields anew.
    fn take(&mut self, edits: &[(Field, String)], shown: &[Field]) -> Update {
        let typing_in = match edits {
            [(field, _)] => Some(*field),
            _ => None,
        };
        let only_looks = edits.iter().all(|(field, _)| field.is_look());
        if !only_looks {
            self.remember(typing_in);
        }
        for (field, text) in edits {
            self.bench.write(*field, text);
        }
        self.notices.clear();
        self.update(shown, !only_looks)
    }

    /// Ends a run of typing, so that undo takes it back as one step.
    pub fn pause(&mut self) {
        self.history.pause();
    }

    /// The bench as a link.
    #[must_use]
    pub fn link(&self) -> String {
        link::write(&self.bench)
    }

    /// The bench as it is understood, as a link: of a field in error the last good text.
    #[must_use]
    pub fn understood(&self) -> String {
        link::write(self.good.texts())
    }

    /// Remembers what is on the desk before it is changed.
    pub(crate) fn remember(&mut self, typing_in: Option<Field>) {
        let own = self.report.lap.own.as_ref();
        if self.history.remember(&self.bench, &self.good, own, typing_in) {
            self.look_back();
        }
    }

    /// Remembers what the board says now, before something else is said.
    pub(crate) fn look_back(&mut self) {
        let _in_force = self.enter_units();
        self.was = Was::now(&self.report).or(&self.was);
    }

    /// Notes that the panel with this id is open or closed, and so whether it is written from now on.
    pub fn unfold(&mut self, panel: &str, is_open: bool) {
        if is_open {
            self.open.insert(panel.to_owned());
        } else {
            self.open.remove(panel);
        }
    }

    /// Notes that the section with this id is in sight or not, and so whether a change is written there at once.
    pub fn see(&mut self, section: &str, in_sight: bool) {
        if in_sight {
            self.away.remove(section);
        } else {
            self.away.insert(section.to_owned());
        }
    }

    /// Writes what was not written while its panel was closed or its section out of sight, in one section or in all.
    pub fn write_unfolded(&mut self, section: Option<&str>) -> Update {
        let fragments = self.fragments(&|panel| self.open.contains(panel), &is_of(section));
        self.written(fragments)
    }

    /// Writes what is folded away too, in one section or in all, for whoever looks for a word in it, or prints it.
    pub fn rest(&mut self, section: Option<&str>) -> Update {
        let fragments = self.fragments(&|_| true, &is_of(section));
        self.written(fragments)
    }

    fn written(&mut self, fragments: Vec<(String, String)>) -> Update {
        Update { html: self.changed(fragments), ..self.unchanged() }
    }

    /// Puts a whole bench on the desk, so that every field must be shown anew.
    pub(crate) fn lay_out(&mut self, bench: Bench, good: Scenario) -> Update {
        (self.bench, self.good) = (bench, good);
        self.update(Field::ALL, false)
    }

    fn update(&mut self, shown: &[Field], with_link: bool) -> Update {
        self.comparing = None;
        let mut read = Scenario::read(&self.bench, &self.good);
        let _in_force = read.scenario.units.enter();
        if self.report.so_far().is_some_and(|before| read.scenario.units != before.units) {
            // What was said is told in other units.
            self.was = Was::default();
        }
        let mut room = self.report.so_far().map_or_else(LapRoom::default, |before| before.lap.clone());
        match room.own.as_ref().and_then(|own| own.read_again(&read.scenario.lap)) {
            Some(Ok(again)) => (room.own, room.refused) = (Some(Rc::new(again)), None),
            Some(Err(why)) => room.refused = Some(Refusal::Part(why)),
            None => {}
        }
        let course = read.scenario.lap.course(room.own.as_deref());
        read.complaints.extend(course.and_then(|course| read.scenario.lap.idle_paint(course)));
        if let Some(found) = &mut room.found {
            Rc::make_mut(found).compare(&read.scenario.basis(), room.own.as_deref());
        }
        let question = LapQuestion::of(&read.scenario.basis(), room.own.as_deref());
        room.is_stale = room.laps.as_ref().is_some_and(|laps| laps.is_before(&question));
        read.scenario.ride.lap_price = room.price(&question);
        let report = match self.report.so_far() {
            Some(before) => Report::after(&read.scenario, before),
            None => Report::of(&read.scenario),
        };
        self.report = Report { lap: room, ..report }.into();
        self.good = read.scenario;
        self.compare_box();
        self.complaints = read.complaints;
        let value = |field: &Field| (field.spec().key, field.shown(self.bench.text(*field)).into_owned());
        let values = shown.iter().map(value).collect();
        let mut update = self.refresh(values, with_link);
        if shown == Field::ALL {
            update.html.extend(notices::units());
        }
        update
    }

    /// Shows what the report now says where it is in sight.
    pub(crate) fn refresh(&mut self, values: Vec<(&'static str, String)>, with_link: bool) -> Update {
        let fragments =
            self.fragments(&|panel| self.open.contains(panel), &|section| !self.away.contains(section));
        let html = self.changed(fragments);
        let mut update = Update { html, link: with_link.then(|| self.link()), ..self.unchanged() };
        update.values.splice(0..0, values);
        update
    }

    fn fragments(
        &self,
        is_open: &dyn Fn(&str) -> bool,
        is_seen: &dyn Fn(&str) -> bool,
    ) -> Vec<(String, String)> {
        let mut fragments = self.with_written(is_open, |page| sections::unfolded(page, is_seen));
        fragments.extend(rack_view::fragments(&self.rack));
        fragments
    }

    /// What `write` makes of what lies on the desk.
    fn with_written<T>(&self, is_open: &dyn Fn(&str) -> bool, write: impl FnOnce(&Written<'_>) -> T) -> T {
        let _in_force = self.enter_units();
        write(&Written {
            report: &self.report,
            notices: &self.notices,
            complaints: &self.complaints,
            bench: &self.bench,
            link: &|| self.link(),
            was: &self.was,
            is_open,
        })
    }

    /// The state of fields and buttons, with no text that differs.
    fn unchanged(&self) -> Update {
        let _in_force = self.enter_units();
        let chains = || self.report.chain.solved();
        let key = |chain: &ChainReport| chain.shown_field().spec().key;
        Update {
            html: Vec::new(),
            values: chains().map(|chain| (key(chain), (chain.shown + 1).to_string())).collect(),
            most: chains().map(|chain| (key(chain), chain.stations.len())).collect(),
            wrong: wrong_fields(&self.complaints),
            empty: empty::fields(&self.bench),
            undo: !self.history.is_empty(),
            link: None,
        }
    }

    /// Shows what the report now says of all bikes, and nothing else.
    pub fn refresh_bikes(&mut self) -> Update {
        self.refresh_section(sections::of_bikes)
    }

    /// Shows what the report now says in one section, and nothing else.
    pub(crate) fn refresh_section(&mut self, write: fn(&Written<'_>) -> Vec<(String, String)>) -> Update {
        let fragments = self.with_written(&|panel| self.open.contains(panel), write);
        self.written(fragments)
    }

    /// Keeps only the fragments that differ from what the page already shows.
    fn changed(&mut self, mut fragments: Vec<(String, String)>) -> Vec<(String, String)> {
        fragments.retain(|(id, html)| self.shown.get(id) != Some(html));
        self.shown.extend(fragments.iter().cloned());
        fragments
    }
}

fn is_of(section: Option<&str>) -> impl Fn(&str) -> bool {
    move |other| section.is_none_or(|section| section == other)
}

fn wrong_fields(complaints: &[Complaint]) -> Vec<&'static str> {
    let mut keys: Vec<_> = complaints.iter().map(|complaint| complaint.field.spec().key).collect();
    keys.dedup();
    keys
}
