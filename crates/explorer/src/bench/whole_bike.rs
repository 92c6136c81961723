//! A whole bike, apart from the bench and the side that it stood on.

use crate::bench::bench::Bench;
use crate::bench::field::{Field, Kind};
use crate::bench::of_b::{NOT_KNOWN, OfB};
use crate::bench::owner::Owner;
use crate::side::Side;

/// What stands in every field that makes up a bike, as typed, empty where it is not known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WholeBike(Vec<(Field, Part)>);

/// What stands in one of them.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Part {
    /// As typed.
    pub text: String,
    /// Whether the rider put it there; else it is what the field started with.
    pub is_riders: bool,
}

impl Part {
    fn new(text: &str, is_riders: bool) -> Self {
        Self { text: text.to_owned(), is_riders }
    }

    /// Nothing and the sign for what is not known are the same of what need not be known.
    fn of_field(bench: &Bench, field: Field, may_be_unknown: bool) -> Self {
        let text = bench.text(field).trim();
        let is_nothing = may_be_unknown && text == NOT_KNOWN;
        Self::new(if is_nothing { "" } else { text }, bench.is_riders(field))
    }
}

impl Default for WholeBike {
    /// A bike of which nothing is known. Of a choice it has what the field starts with, since one of them must hold.
    fn default() -> Self {
        let part = |field: Field| {
            let spec = field.spec();
            let is_open = spec.start_owner == Owner::Demo && !matches!(spec.kind, Kind::Choice(_));
            if is_open { Part::new("", true) } else { Part::new(spec.start, false) }
        };
        Self(Field::of_bike().map(|field| (field, part(field))).collect())
    }
}

impl WholeBike {
    /// Its parts by A's fields, in the order of [`Field::of_bike`].
    pub fn parts(&self) -> impl Iterator<Item = (Field, &Part)> {
        self.0.iter().map(|(field, part)| (*field, part))
    }

    /// What stands in a field of A's that makes up a bike; nothing in any other.
    #[must_use]
    pub fn text(&self, of_a: Field) -> &str {
        self.0.iter().find(|(field, _)| *field == of_a).map_or("", |(_, part)| &part.text)
    }

    /// Puts a part on it.
    pub fn put(&mut self, of_a: Field, part: Part) {
        if let Some((_, now)) = self.0.iter_mut().find(|(field, _)| *field == of_a) {
            *now = part;
        }
    }
}

impl Bench {
    /// The bike that stands on a side; what B has as A has it is B's too.
    #[must_use]
    pub fn bike(&self, side: Side) -> WholeBike {
        let part =
            |of_a: Field| Part::of_field(self, self.standing_for(side, of_a), of_a.own_of_b().is_some());
        WholeBike(Field::of_bike().map(|of_a| (of_a, part(of_a))).collect())
    }

    /// The bench with a bike put on a side; the bike on the other side stays what it was.
    #[must_use]
    pub fn with_bike(&self, side: Side, bike: &WholeBike) -> Self {
        let mut bench = self.clone();
        match side {
            Side::A => {
                bike.parts().for_each(|(of_a, part)| bench.put(of_a, &part.text, part.is_riders));
                bench.put_on_b(&self.bike(Side::B));
            }
            Side::B => bench.put_on_b(bike),
        }
        bench
    }

    fn put_on_b(&mut self, bike: &WholeBike) {
        for (of_a, part) in bike.parts() {
            match of_a.own_of_b() {
                Some(of_b) => self.put_own(of_a, of_b, part),
                None => self.put(of_a.twin(), &part.text, part.is_riders),
            }
        }
    }

    /// Leaves a part of B's to A where A has the very same, of the same owner.
    fn put_own(&mut self, of_a: Field, of_b: Field, part: &Part) {
        self.put(of_b, "", false);
        let would_be_as_on_a = self.of_b(of_b) == OfB::AsOnA;
        if would_be_as_on_a && *part == Part::of_field(self, of_a, true) {
            return;
        }
        let text = if would_be_as_on_a && part.text.is_empty() { NOT_KNOWN } else { &part.text };
        self.put(of_b, text, part.is_riders);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::link;
    use proptest::prelude::*;

    #[test]
    fn a_bike_of_a_on_b_is_as_on_a() {
        let bench = Bench::default();
        let both = bench.with_bike(Side::B, &bench.bike(Side::A));
        assert_eq!(both, bench.with_a_copied_to_b());
        assert!(both.is_nobodys());
    }

    #[test]
    fn another_bike_on_a_leaves_b_what_it_was() {
        let mut kept = Bench::default();
        kept.write(Field::Tyre, "40-622");
        kept.write(Field::RollOut, "2200");
        let bench = Bench::default().with_bike(Side::A, &kept.bike(Side::A));
        assert_eq!(bench.text_of(Side::A, Field::Tyre), "40-622");
        assert_eq!((bench.text(Field::TyreB), bench.owner(Field::TyreB)), ("33-622", Owner::Demo));
        assert_eq!(bench.text_of(Side::B, Field::RollOut), "");
        assert_eq!(bench.of_b(Field::CapacityB), OfB::AsOnA);
    }

    #[test]
    fn what_is_not_known_of_the_bike_is_not_taken_from_a() {
        let bench = Bench::default().with_bike(Side::B, &WholeBike::default());
        assert_eq!(bench.text(Field::CapacityB), NOT_KNOWN);
        assert_eq!(bench.text_of(Side::B, Field::Construction), Field::Construction.spec().start);
    }

    /// A bench with any mixture of own and shared, known and unknown, the rider's and the demo's.
    fn benches() -> impl Strategy<Value = Bench> {
        let fields: Vec<Field> = Field::of_bike().flat_map(|field| [field, field.twin()]).collect();
        let text = prop_oneof![
            3 => Just(None),
            3 => "[1-3]".prop_map(Some),
            3 => "( ?[1-9][0-9]{0,2} ?)|\\?| |".prop_map(Some),
        ];
        prop::collection::vec((text, any::<bool>()), fields.len()).prop_map(move |texts| {
            let mut bench = Bench::default();
            for (&field, (text, is_riders)) in fields.iter().zip(&texts) {
                let text = text.as_deref().unwrap_or(field.spec().start);
                bench.put(field, text, *is_riders);
            }
            bench
        })
    }

    proptest! {
        #[test]
        fn a_bike_put_on_either_side_is_the_same_bike(from in benches(), onto in benches()) {
            for side in Side::BOTH {
                let bike = from.bike(side);
                for there in Side::BOTH {
                    let bench = onto.with_bike(there, &bike);
                    prop_assert_eq!(&bench.bike(there), &bike);
                    prop_assert_eq!(bench.bike(there.other()), onto.bike(there.other()));
                    prop_assert_eq!(&bench.with_bike(there, &bike), &bench);
                }
            }
        }

        #[test]
        fn nothing_but_the_bike_changes(from in benches(), onto in benches()) {
            for side in Side::BOTH {
                let bench = onto.with_bike(side, &from.bike(side.other()));
                let others = Field::ALL.iter().filter(|field| !Field::of_bike().any(|it| [it, it.twin()].contains(*field)));
                for &field in others {
                    prop_assert_eq!(bench.text(field), onto.text(field));
                }
            }
        }

        #[test]
        fn a_bike_goes_through_a_link(from in benches(), onto in benches()) {
            for side in Side::BOTH {
                let bench = onto.with_bike(side, &from.bike(side));
                let opened = link::read(&link::write(&bench)).bench;
                let (came, went) = (opened.bike(side), bench.bike(side));
                for of_a in Field::of_bike() {
                    prop_assert_eq!(came.text(of_a), went.text(of_a), "{:?}", of_a);
                }
            }
        }
    }
}
