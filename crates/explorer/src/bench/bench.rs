//! The bench as typed: one text per field, right or wrong, and whether it is the rider's.

use crate::bench::field::{Field, Group};
use crate::bench::offered::SKETCH_COURSE;
use crate::bench::owner::Owner;
use gear_math::course::Demo;

/// What stands in every field, exactly as typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bench(Vec<Entry>);

/// What stands in one field.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Entry {
    text: String,
    /// Whether the rider, or a link, put it there; else it is what the field started with.
    is_riders: bool,
}

impl Default for Bench {
    /// The demo: a road-minded bike and the parts that might make it a cyclo-cross bike.
    fn default() -> Self {
        Self(Field::ALL.iter().copied().map(Entry::started).collect())
    }
}

impl Bench {
    /// What stands in `field`.
    #[must_use]
    pub fn text(&self, field: Field) -> &str {
        &self.0[field as usize].text
    }

    /// Whether the rider, or a link, put it there, be it the very text that the field starts with.
    #[must_use]
    pub fn is_riders(&self, field: Field) -> bool {
        self.0[field as usize].is_riders
    }

    /// Whose value stands in `field`.
    #[must_use]
    pub fn owner(&self, field: Field) -> Owner {
        let counts = match field {
            Field::Level => self.text(Field::Power).trim().is_empty(),
            Field::Sketch => self.text(Field::Course) == SKETCH_COURSE,
            _ => true,
        };
        let started = match field.as_on_a().filter(|_| !self.text(field).is_empty()) {
            Some(of_a) => of_a.start_owner(),
            None => field.start_owner(),
        };
        match started {
            _ if self.is_riders(field) => Owner::Rider,
            Owner::Demo if counts => Owner::Demo,
            _ => Owner::Usual,
        }
    }

    /// What stands in all fields of some groups, to see whether any has changed.
    #[must_use]
    pub fn of_groups(&self, groups: &[Group]) -> String {
        let fields = Field::ALL.iter().filter(|field| groups.contains(&field.spec().group));
        fields.fold(String::new(), |all, field| all + self.text(*field) + "\0")
    }

    /// Writes the rider's `text` into `field`. Of one too long just so much is kept that its reader sees that it is. An
    /// invented course that is put into the sketch stays the demo's.
    pub fn write(&mut self, field: Field, text: &str) {
        let is_riders = field != Field::Sketch || Demo::ALL.iter().all(|demo| demo.course().sketch() != text);
        self.put(field, text, is_riders);
    }

    /// Puts a text into `field` as the rider's or as nobody's. Of one too long as much is kept as [`Bench::write`] keeps.
    pub(crate) fn put(&mut self, field: Field, text: &str, is_riders: bool) {
        self.0[field as usize] = Entry { text: text.chars().take(field.longest() + 1).collect(), is_riders };
    }

    /// Takes what stands in `field` for the rider's own.
    pub fn claim(&mut self, field: Field) {
        self.0[field as usize].is_riders = true;
    }

    /// Takes text and owner of one field from another bench.
    pub fn take(&mut self, field: Field, from: &Self) {
        self.copy(field, from, field);
    }

    /// Whether it is the demo's, whatever is being looked at and in which units.
    #[must_use]
    pub fn is_demo(&self) -> bool {
        self.is_nobodys() && Field::ALL.iter().all(|&field| field.is_setting() || self.is_as_started(field))
    }

    /// Whether nothing is the rider's, though the demo's values may have changed places.
    #[must_use]
    pub fn is_nobodys(&self) -> bool {
        Field::ALL.iter().all(|&field| field.is_setting() || !self.is_riders(field))
    }

    /// Whether it holds what it started with, as nobody's.
    #[must_use]
    pub fn is_as_started(&self, field: Field) -> bool {
        !self.is_riders(field) && self.text(field) == field.spec().start
    }

    /// Gives set-up B what set-up A has.
    #[must_use]
    pub fn with_a_copied_to_b(&self) -> Self {
        let mut copied =
            self.rearranged(|field| if field.spec().group == Group::SetupB { field.twin() } else { field });
        Group::BikeB.fields().for_each(|field| copied.0[field as usize] = Entry::started(field));
        copied
    }

    /// Takes text and owner of one field from another field of another bench.
    pub(crate) fn copy(&mut self, field: Field, from: &Self, of: Field) {
        self.0[field as usize].clone_from(&from.0[of as usize]);
    }

    /// Every field as another one was, its owner with it.
    pub(crate) fn rearranged(&self, source: fn(Field) -> Field) -> Self {
        Self(Field::ALL.iter().map(|&field| self.0[source(field) as usize].clone()).collect())
    }
}

impl Entry {
    /// What a field starts with.
    fn started(field: Field) -> Self {
        Self { text: field.spec().start.to_owned(), is_riders: false }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_demos_very_text_is_the_riders_once_typed() {
        let mut bench = Bench::default();
        assert_eq!((bench.is_demo(), bench.owner(Field::Stack)), (true, Owner::Demo));
        bench.write(Field::Stack, Field::Stack.spec().start);
        assert_eq!((bench.is_demo(), bench.owner(Field::Stack)), (false, Owner::Rider));
    }

    #[test]
    fn an_invented_course_in_the_sketch_is_the_demos_until_changed() {
        let mut bench = Bench::default();
        bench.write(Field::Course, "sketch");
        let sketch = Demo::Meadow.course().sketch();
        bench.write(Field::Sketch, &sketch);
        assert_eq!(bench.owner(Field::Sketch), Owner::Demo);
        bench.write(Field::Sketch, &format!("{sketch}40; 0; tarmac"));
        assert_eq!(bench.owner(Field::Sketch), Owner::Rider);
    }

    #[test]
    fn a_level_counts_only_while_the_power_is_left_open() {
        let mut bench = Bench::default();
        assert_eq!(bench.owner(Field::Level), Owner::Usual);
        bench.write(Field::Power, "");
        assert_eq!((bench.owner(Field::Power), bench.owner(Field::Level)), (Owner::Rider, Owner::Demo));
    }
}
