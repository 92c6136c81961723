//! Whose value every field of a bench holds.

use crate::bench::bench::Bench;
use crate::bench::field::{Field, Group};
use crate::bench::of_b::OfB;
use crate::bench::owner::Owner;
use crate::side::Side;

/// Whose value every field holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Owners {
    /// What B does not have as A.
    of_b_alone: Vec<Field>,
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
        let of_b_alone = Group::BikeB.fields().filter(|&field| bench.of_b(field) != OfB::AsOnA).collect();
        Self { of_b_alone, all: Field::ALL.iter().map(owner).collect(), is_example: bench.is_nobodys() }
    }

    /// Whose value a field holds.
    #[must_use]
    pub fn get(&self, field: Field) -> Owner {
        self.all[field as usize]
    }

    /// Whether anything that one set-up is made of, or both where no side is named, stands in a field.
    #[must_use]
    pub fn is_of(&self, side: Option<Side>, field: Field) -> bool {
        match side {
            None => true,
            Some(Side::A) => !matches!(field.spec().group, Group::SetupB | Group::BikeB),
            Some(Side::B) => {
                let of_a_alone = field.own_of_b().is_some_and(|of_b| self.is_bs_own(of_b));
                field.spec().group != Group::SetupA && !of_a_alone
            }
        }
    }

    /// The field in which a side has what A has in one of its fields.
    #[must_use]
    pub fn standing_for(&self, side: Option<Side>, of_a: Field) -> Field {
        let own = of_a.own_of_b().filter(|&of_b| side == Some(Side::B) && self.is_bs_own(of_b));
        own.unwrap_or(of_a)
    }

    /// Whether B has its own there rather than what A has.
    #[must_use]
    pub fn is_bs_own(&self, of_b: Field) -> bool {
        self.of_b_alone.contains(&of_b)
    }

    /// Whose value decides what rests on all of `fields`: the least sure of them.
    #[must_use]
    pub fn least(&self, fields: &[Field]) -> Owner {
        self.least_of(None, fields)
    }

    /// The same of a side, whatever of A's `fields` B has of its own.
    #[must_use]
    pub fn least_of(&self, side: Option<Side>, fields: &[Field]) -> Owner {
        let owner = |&field: &Field| self.get(self.standing_for(side, field));
        fields.iter().map(owner).max().unwrap_or(Owner::Rider)
    }

    /// Whether an answer that rests on some fields rests on a value of the demo's.
    #[must_use]
    pub fn rests_on_demo(&self, rests_on: impl Fn(Field) -> bool) -> bool {
        let is_demos =
            |&field: &Field| self.get(field) == Owner::Demo && rests_on(field.as_on_a().unwrap_or(field));
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
