//! The bench in the address: `#r=3&ra=50/34&ca=11-12-…`, versioned, only what is the rider's
//! or has changed places.
//!
//! Version 1 (`#remount=1&rings-a=50/34&…`) names fields by their keys, later ones by short names where there are any. All are
//! read, so that a link once kept goes on opening. Up to version 2 a lap was ridden at a steady power: such a link says that its
//! answer has changed.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::bench::sketch::{packed, unpacked};
use crate::bench::words::link as words;
use std::borrow::Cow;
use std::collections::BTreeSet;

/// Names and numbers of the format, the newest first. A new one is due when a field's starting value or meaning changes.
const MARKS: [(&str, &str); 3] = [("r", "3"), ("r", "2"), ("remount", "1")];

/// Links that are met in use stay below so many characters: a message or an address bar of long standing takes no more
/// (common practice).
pub(crate) const LONGEST: usize = 2000;
/// Stretches of a sketch that such a link carries when nearly every other field is changed.
pub(crate) const STRETCHES_WITH_ALL_CHANGED: usize = 19;

/// Lines of what a link could not tell.
const MOST_COMPLAINTS: usize = 8;

/// Names under which these fields stand in the short notation of [`crate::bench::sketch`], where that loses nothing.
const PACKED: [(&str, Field); 2] = [("sq", Field::Sketch), ("pq", Field::Paint)];

/// Longest link that is read at all: every field full of letters that take twelve characters each, and its name.
fn longest_link() -> usize {
    Field::ALL.iter().map(|field| 12 * field.longest() + 24).sum()
}

/// The field of this name, short as in version 2 or its key as in version 1.
fn by_name(name: &str) -> Option<Field> {
    let is_its = |field: &&Field| [field.spec().key, field.spec().short].contains(&name);
    Field::ALL.iter().find(is_its).copied()
}

/// A bench read from a link, and what in the link could not be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Opened {
    /// The bench: the demo, overwritten by every part of the link that was understood. What a link names is the rider's.
    pub bench: Bench,
    /// One plain sentence for each part that was not.
    pub complaints: Vec<String>,
}

/// Writes the bench as the part of an address behind `#`.
#[must_use]
pub fn write(bench: &Bench) -> String {
    let [(mark, version), ..] = MARKS;
    let mut link = format!("{mark}={version}");
    for &field in Field::ALL {
        if !bench.is_as_started(field) {
            let (name, text) = part(field, bench.text(field));
            link.push('&');
            link.push_str(name);
            link.push('=');
            escape(&text, &mut link);
        }
    }
    link
}

/// Reads the part of an address behind `#`; an empty one is the demo.
#[must_use]
pub fn read(link: &str) -> Opened {
    let mut opened = Opened { bench: Bench::default(), complaints: Vec::new() };
    let link = link.strip_prefix('#').unwrap_or(link);
    if link.len() > longest_link() {
        opened.complaints.push(words::FAR_TOO_LONG.to_owned());
        return opened;
    }
    let mut marked = link.is_empty();
    for (name, text) in form_urlencoded::parse(link.as_bytes()) {
        if MARKS.iter().any(|(mark, _)| *mark == name) {
            marked = true;
            opened.take_version(&name, &text);
        } else {
            opened.take_part(&name, &text);
        }
    }
    if !marked {
        opened.complaints.insert(0, words::UNMARKED.to_owned());
    }
    opened.sum_up();
    opened
}

impl Opened {
    fn take_version(&mut self, mark: &str, text: &str) {
        match MARKS.iter().position(|known| *known == (mark, text)) {
            Some(0) => {}
            Some(_) => self.complaints.push(words::SINCE_RIDDEN_ON_RESERVE.to_owned()),
            None => self.complaints.push(words::other_version(mark, &shorten(text))),
        }
    }

    fn take_part(&mut self, name: &str, text: &str) {
        let packed = PACKED.iter().find(|(packed, _)| *packed == name);
        match packed.map(|&(_, field)| field).or_else(|| by_name(name)) {
            Some(field) if packed.is_some() => self.take(field, &unpacked(text)),
            Some(field) => self.take(field, text),
            None => self.complaints.push(words::unknown(&shorten(name))),
        }
    }

    fn take(&mut self, field: Field, text: &str) {
        if text.chars().count() > field.longest() {
            self.complaints.push(words::cut(field.spec().label));
        }
        self.bench.write(field, text);
    }

    /// Says everything once, and counts what would be too many complaints.
    fn sum_up(&mut self) {
        let mut said = BTreeSet::new();
        self.complaints.retain(|complaint| said.insert(complaint.clone()));
        if self.complaints.len() > MOST_COMPLAINTS {
            let more = self.complaints.split_off(MOST_COMPLAINTS - 1).len();
            self.complaints.push(words::more(more));
        }
    }
}

/// A field's name and text in a link.
fn part(field: Field, text: &str) -> (&'static str, Cow<'_, str>) {
    let packed =
        PACKED.iter().find(|it| it.1 == field).and_then(|(name, _)| Some((*name, packed(text)?.into())));
    packed.unwrap_or_else(|| (field.spec().short, text.into()))
}

/// Form encoding, but with the characters that set-ups are written in left readable.
fn escape(text: &str, link: &mut String) {
    for part in form_urlencoded::byte_serialize(text.as_bytes()) {
        match part {
            "%2F" => link.push('/'),
            "%2C" => link.push(','),
            "%3A" => link.push(':'),
            "%3B" => link.push(';'),
            other => link.push_str(other),
        }
    }
}

fn shorten(text: &str) -> String {
    text.chars().take(24).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::{Group, Kind};
    use proptest::prelude::*;

    #[test]
    fn the_demo_is_short_and_readable() {
        let link = write(&Bench::default());
        assert_eq!(link, "r=3");
        let typed = "r=3&ra=50/34&cb=11-13-15";
        assert_eq!(write(&read(typed).bench), typed);
    }

    #[test]
    fn what_has_changed_places_is_not_lost() {
        let swapped = Bench::default().swapped();
        let opened = read(&write(&swapped)).bench;
        for &field in Field::ALL {
            assert_eq!(opened.text(field), swapped.text(field), "{field:?}");
        }
    }

    #[test]
    fn no_two_fields_share_a_name() {
        for &field in Field::ALL {
            assert_eq!(by_name(field.spec().short), Some(field), "{}", field.spec().short);
            assert_eq!(by_name(field.spec().key), Some(field));
        }
        assert!(MARKS.iter().chain([&("sq", ""), &("pq", "")]).all(|(mark, _)| by_name(mark).is_none()));
    }

    fn all_changed() -> Bench {
        let mut bench = Bench::default();
        for (place, &field) in Field::ALL.iter().enumerate().filter(|(_, field)| !field.is_look()) {
            let text = match (field.spec().kind, field.spec().group) {
                (Kind::Text, Group::SetupA | Group::SetupB) if !field.spec().start.is_empty() => {
                    format!("10-11-12-13-15-17-19-21-24-28-32-38-45-{}", 50 + place)
                }
                (Kind::Choice(choices), _) => choices
                    .iter()
                    .map(|choice| choice.0)
                    .max_by_key(|text| text.len())
                    .unwrap_or("")
                    .to_owned(),
                _ => format!("{}.25", 100 + place),
            };
            bench.write(field, &text);
        }
        bench
    }

    /// Characters of a link to this bench with the address of a page before it.
    fn length(bench: &Bench) -> usize {
        "https://example.org/workshop/remount/#".len() + write(bench).len()
    }

    #[test]
    fn every_field_of_a_link_comes_back_as_its_own() {
        let opened = read(&write(&all_changed()));
        assert_eq!(opened.complaints, Vec::<String>::new());
        for &field in Field::ALL.iter().filter(|field| !field.is_look()) {
            assert_eq!(opened.bench.text(field), all_changed().text(field), "{}", field.spec().key);
        }
    }

    #[test]
    fn a_link_with_every_field_changed_stays_short() {
        assert!(length(&all_changed()) < LONGEST, "{} characters", length(&all_changed()));
    }

    /// A sketch of so many stretches, each of the kind that is longest to write.
    fn stretches(count: usize) -> String {
        (0..count).map(|it| format!("{}.5; -12.5; wet soft grass\n", 10 + it)).collect()
    }

    #[test]
    fn a_sketch_travels_in_a_short_link() {
        let mut bench = Bench::default();
        bench.write(Field::Sketch, &stretches(110));
        assert!(length(&bench) < LONGEST, "{} characters", length(&bench));
        let mut bench = all_changed();
        bench.write(Field::Sketch, &stretches(STRETCHES_WITH_ALL_CHANGED));
        bench.write(Field::Paint, "310; 355; deep mud\n400; 412; corner 14\n500; 503; foot 2");
        assert!(length(&bench) < LONGEST, "{} characters", length(&bench));
    }

    #[test]
    fn a_sketch_is_packed_only_where_nothing_is_lost() {
        let linked = |text: &str| {
            let mut bench = Bench::default();
            bench.write(Field::Sketch, text);
            let link = write(&bench);
            assert_eq!(read(&link).bench, bench, "{link}");
            link
        };
        let short = linked("12.5; -3; firm grass; corner 15\n1; 0; mud; foot\n4; 0; mud; foot 1.5\n");
        assert!(short.ends_with("&sq=12.5_-3_fg_c15*1_0_mu_foot*4_0_mu_f1.5*"), "{short}");
        for text in ["12_5; 0; mud", "5; 0; mud # a*b", "5; 0; fg", "5; 0; mud; f1", "*"] {
            assert!(!linked(text).contains("sq="), "{text}");
        }
    }

    /// A link kept from version 1 means what it meant: its own texts, and that version's demo for all it leaves out.
    #[test]
    fn a_link_of_version_1_still_opens() {
        const KEPT: &str = "#remount=1&rings-a=48/34&cassette-a=11-12-13-14-15-17-19-21-24-27-30&rings-b=42&cassette-b=11-13-15-17-19-21-24-28-32-37-42&tyre=700x35c&roll-out=2150&cadence-low=57,5+rpm&limit=6.10&at-speed=18.5";
        const DEMO: [(&str, &str); 14] = [
            ("cadence-usual", "85"),
            ("cadence-high", "110"),
            ("capacity", "33"),
            ("largest-sprocket", "34"),
            ("smallest-sprocket", "11"),
            ("ring-difference", "16"),
            ("same-within", "2"),
            ("inches", "real"),
            ("speed-unit", "kmh"),
            ("at-cadence", "85"),
            ("rings-a", "48/34"),
            ("cadence-low", "57,5 rpm"),
            ("tyre", "700x35c"),
            ("at-speed", "18.5"),
        ];
        let opened = read(KEPT);
        assert_eq!(opened.complaints, [words::SINCE_RIDDEN_ON_RESERVE]);
        for (key, text) in DEMO {
            assert_eq!(Field::by_key(key).map(|field| opened.bench.text(field)), Some(text), "{key}");
        }
        assert_eq!(read(&write(&opened.bench)).bench, opened.bench);
    }

    #[test]
    fn a_link_of_version_2_says_what_has_changed_and_is_written_anew() {
        let opened = read("#r=2&ra=46/30");
        assert_eq!(opened.bench.text(Field::RingsA), "46/30");
        assert_eq!(opened.complaints, [words::SINCE_RIDDEN_ON_RESERVE]);
        let now = write(&opened.bench);
        assert_eq!((now.as_str(), read(&now).complaints.len()), ("r=3&ra=46/30", 0));
    }

    #[test]
    fn a_mangled_part_is_named_and_the_rest_kept() {
        let opened = read("#remount=9&rings-a=42&colour=red&<script>=1");
        assert_eq!(opened.bench.text(Field::RingsA), "42");
        assert_eq!(opened.complaints.len(), 3, "{:?}", opened.complaints);
    }

    #[test]
    fn thousands_of_unknown_names_are_counted_each_once() {
        let names: String = (0..80_000).map(|it| format!("&x{}=1", it % 40_000)).collect();
        let opened = read(&format!("r=3{names}"));
        assert_eq!(opened.complaints.len(), MOST_COMPLAINTS);
        assert_eq!(opened.complaints.last(), Some(&words::more(40_000 - (MOST_COMPLAINTS - 1))));
    }

    proptest! {
        #[test]
        fn a_link_round_trips(texts in prop::collection::vec("\\PC{0,60}", Field::ALL.len())) {
            let mut bench = Bench::default();
            for (field, text) in Field::ALL.iter().zip(&texts) {
                bench.write(*field, text);
            }
            let opened = read(&write(&bench));
            prop_assert_eq!(opened.bench, bench);
            prop_assert!(opened.complaints.is_empty());
        }

        #[test]
        fn a_link_carries_what_is_the_riders_and_nothing_else(
            owned in prop::collection::vec(any::<bool>(), Field::ALL.len()),
        ) {
            let mut bench = Bench::default();
            Field::ALL.iter().zip(&owned).filter(|it| *it.1).for_each(|(field, _)| bench.claim(*field));
            let link = write(&bench);
            prop_assert_eq!(link.matches('&').count(), owned.iter().filter(|it| **it).count());
            prop_assert_eq!(read(&link).bench, bench);
        }

        #[test]
        fn a_sketch_round_trips(text in "([0-9.; _*#fc-]|; |\n|firm grass|mud|fg|mu|foot |corner ){0,40}") {
            let mut bench = Bench::default();
            bench.write(Field::Sketch, &text);
            bench.write(Field::Paint, &text);
            prop_assert_eq!(read(&write(&bench)).bench, bench);
        }

        #[test]
        fn what_is_read_from_any_link_can_be_kept(link in "\\PC{0,400}") {
            let opened = read(&link).bench;
            prop_assert_eq!(read(&write(&opened)).bench, opened);
        }

        /// The format's own signs, so that parts of the link are met.
        #[test]
        fn what_is_read_from_a_mangled_link_can_be_kept(
            link in "#r=3(&(ra|ca|ty|sh|sq|pq|zz|)(=|)([0-9/,.*_%+-]|%[0-9A-F]{2}|fg|mu|é){0,12}){0,8}",
        ) {
            let opened = read(&link).bench;
            prop_assert_eq!(read(&write(&opened)).bench, opened);
        }
    }
}
