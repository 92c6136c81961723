//! Whose value every field of a bench holds.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::bench::owner::Owner;

/// Whose value every field holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Owners {
    all: Vec<Owner>,
    /// Whether nothing at all is the rider's: the bench is an example.
    pub is_example: bool,
}

impl Owners {
    /// The owners of a bench; nobody's are the fields that are `unknown`.
    #[must_use]
    pub fn of(bench: &Bench, unknown: &[Field]) -> Self {
        let owner =
            |field: &Field| if unknown.contains(field) { Owner::Unknown } else { bench.owner(*field) };
        Self { all: Field::ALL.iter().map(owner).collect(), is_example: bench.is_nobodys() }
    }

    /// Whose value a field holds.
    #[must_use]
    pub fn get(&self, field: Field) -> Owner {
        self.all[field as usize]
    }

    /// Whose value decides what rests on all of `fields`: the least sure of them.
    #[must_use]
    pub fn least(&self, fields: &[Field]) -> Owner {
        fields.iter().map(|&field| self.get(field)).max().unwrap_or(Owner::Rider)
    }

    /// Whether an answer that rests on some fields rests on a value of the demo's.
    #[must_use]
    pub fn rests_on_demo(&self, rests_on: impl Fn(Field) -> bool) -> bool {
        let is_demos = |&field: &Field| self.get(field) == Owner::Demo && rests_on(field);
        Field::ALL.iter().any(is_demos)
    }

    /// The fields among `asked_for` whose value is not the rider's and not usual either, in the order of the bench.
    pub fn lacking(&self, asked_for: impl Fn(Field) -> bool) -> impl Iterator<Item = Field> {
        let lacks = move |field: &Field| self.get(*field) >= Owner::Demo && asked_for(*field);
        Field::ALL.iter().copied().filter(lacks)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Group;

    #[test]
    fn what_is_the_demos_counts_somewhere_and_is_no_blank() {
        for &field in Field::ALL.iter().filter(|field| field.start_owner() == Owner::Demo) {
            assert!(!field.spec().start.is_empty(), "{field:?}");
            assert!(crate::page::questions::all().any(|it| it.rests_on(field)), "{field:?}");
        }
    }

    #[test]
    fn the_least_sure_value_decides() {
        let mut bench = Bench::default();
        bench.write(Field::Stack, "580");
        let owners = Owners::of(&bench, &[Field::Reach]);
        assert_eq!(owners.least(&[]), Owner::Rider);
        assert_eq!(owners.least(&[Field::Stack]), Owner::Rider);
        assert_eq!(owners.least(&[Field::Stack, Field::ClampHeight]), Owner::Usual);
        assert_eq!(owners.least(&[Field::HeadAngle, Field::ClampHeight]), Owner::Demo);
        assert_eq!(owners.least(&[Field::HeadAngle, Field::Reach]), Owner::Unknown);
        let lacking: Vec<Field> = owners.lacking(|field| field.spec().group == Group::CrossFrame).collect();
        assert_eq!(lacking, [Field::Reach, Field::HeadAngle, Field::Headset]);
    }
}
