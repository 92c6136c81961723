//! What set-up B has of its own, and what it has as A has it.

use crate::bench::bench::Bench;
use crate::bench::field::{Field, Group};
use crate::side::Side;

/// What B's rider types where A's value is known and B's is not.
pub const NOT_KNOWN: &str = "?";

/// What B has of something that A has too.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OfB<'b> {
    /// The same as A.
    AsOnA,
    /// Its own, as typed.
    Own(&'b str),
    /// Its own, which nobody has measured or said.
    NotKnown,
}

impl Bench {
    /// What B has in one of the fields that it may leave to A. A measure of A's part says nothing of a part that B has of its
    /// own: a roll-out measured on A's tyre is none of B's other tyre.
    #[must_use]
    pub fn of_b(&self, field: Field) -> OfB<'_> {
        let has_own_part = || field.measures().is_some_and(|part| self.of_b(part) != OfB::AsOnA);
        match self.text(field).trim() {
            "" if has_own_part() => OfB::NotKnown,
            "" => OfB::AsOnA,
            NOT_KNOWN => OfB::NotKnown,
            text => OfB::Own(text),
        }
    }

    /// The field that one of A's stands in for a side: A's own field for A, and for B as far as B has it as A.
    #[must_use]
    pub fn standing_for(&self, side: Side, of_a: Field) -> Field {
        match (side, of_a.own_of_b()) {
            (Side::B, Some(of_b)) if self.of_b(of_b) != OfB::AsOnA => of_b,
            (Side::B, None) => of_a.twin(),
            _ => of_a,
        }
    }

    /// What a side has in a field of A's, empty where it is not known.
    #[must_use]
    pub fn text_of(&self, side: Side, of_a: Field) -> &str {
        let field = self.standing_for(side, of_a);
        Some(self.text(field)).filter(|text| field == of_a || text.trim() != NOT_KNOWN).unwrap_or_default()
    }

    /// Exchanges set-up A and set-up B. What B has as A has it stays where it is.
    #[must_use]
    pub fn swapped(&self) -> Self {
        let mut swapped = self.rearranged(Field::twin);
        for of_b in Group::BikeB.fields() {
            let of_a = of_b.twin();
            match self.of_b(of_b) {
                OfB::AsOnA => {
                    swapped.copy(of_a, self, of_a);
                    swapped.copy(of_b, self, of_b);
                }
                OfB::NotKnown => swapped.put(of_a, "", swapped.is_riders(of_a)),
                OfB::Own(_) => {}
            }
        }
        for of_b in Group::BikeB.fields().filter(|&field| self.of_b(field) != OfB::AsOnA) {
            if swapped.text(of_b).trim().is_empty() && swapped.of_b(of_b) == OfB::AsOnA {
                swapped.put(of_b, NOT_KNOWN, swapped.is_riders(of_b));
            }
        }
        swapped
    }

    /// Gives every field of B that is empty what A has there.
    #[must_use]
    pub fn with_b_filled(&self) -> Self {
        let mut filled = self.clone();
        for of_b in Group::BikeB.fields().filter(|&field| self.of_b(field) == OfB::AsOnA) {
            filled.copy(of_b, self, of_b.twin());
        }
        filled
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn bench(edits: &[(Field, &str)]) -> Bench {
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        bench
    }

    #[test]
    fn swapping_twice_changes_nothing() {
        let bench = Bench::default();
        assert_ne!(bench.swapped(), bench);
        assert_eq!(bench.swapped().swapped(), bench);
    }

    #[test]
    fn a_copied_to_b_makes_both_alike() {
        let bench = Bench::default().with_a_copied_to_b();
        assert_eq!(bench, bench.swapped());
        assert_eq!(bench.text(Field::RingsB), Field::RingsA.spec().start);
    }

    #[test]
    fn what_b_leaves_empty_is_as_on_a() {
        let bench = bench(&[(Field::Capacity, "39"), (Field::CapacityB, ""), (Field::BikeMassB, "9.4")]);
        assert_eq!(bench.text_of(Side::B, Field::Capacity), "39");
        assert_eq!(bench.text_of(Side::B, Field::BikeMass), "9.4");
        assert_eq!(bench.text_of(Side::B, Field::RingsA), Field::RingsB.spec().start);
        assert_eq!(bench.standing_for(Side::B, Field::Capacity), Field::Capacity);
    }

    #[test]
    fn a_measure_of_as_tyre_is_none_of_bs_own() {
        let measured = (Field::RollOut, "2090");
        assert_eq!(bench(&[measured]).text_of(Side::B, Field::RollOut), "2090");
        assert_eq!(bench(&[measured, (Field::TyreB, "40-622")]).text_of(Side::B, Field::RollOut), "");
        let unknown = bench(&[measured, (Field::RollOutB, NOT_KNOWN)]);
        assert_eq!(unknown.text_of(Side::B, Field::RollOut), "");
        let centres = bench(&[(Field::PulleyCentres, "75"), (Field::CapacityB, "47")]);
        assert_eq!(centres.of_b(Field::PulleyCentresB), OfB::NotKnown);
    }

    #[test]
    fn what_is_not_known_of_a_is_not_known_of_b_once_they_change_places() {
        let known = bench(&[(Field::Capacity, ""), (Field::CapacityB, "47")]);
        let swapped = known.swapped();
        assert_eq!(swapped.text_of(Side::A, Field::Capacity), "47");
        assert_eq!(swapped.of_b(Field::CapacityB), OfB::NotKnown);
        assert_eq!(swapped.swapped(), known);
    }

    /// Texts of all fields of B that it may leave to A, and of A's.
    fn texts() -> impl Strategy<Value = Vec<(Field, String)>> {
        let fields: Vec<Field> = Group::BikeB.fields().flat_map(|field| [field, field.twin()]).collect();
        let text = prop_oneof![Just(String::new()), Just(NOT_KNOWN.to_owned()), "[1-9][0-9]{0,2}"];
        prop::collection::vec(text, fields.len())
            .prop_map(move |texts| fields.iter().copied().zip(texts).collect())
    }

    proptest! {
        #[test]
        fn swapping_swaps(texts in texts()) {
            let mut bench = Bench::default();
            for (field, text) in texts.iter().filter(|(field, text)| field.as_on_a().is_some() || text != NOT_KNOWN) {
                bench.write(*field, text);
            }
            let swapped = bench.swapped();
            for of_a in Field::of_bike() {
                for side in Side::BOTH {
                    prop_assert_eq!(swapped.text_of(side, of_a), bench.text_of(side.other(), of_a), "{:?} {:?}", side, of_a);
                }
            }
        }

        #[test]
        fn b_filled_has_what_it_had(texts in texts()) {
            let mut bench = Bench::default();
            texts.iter().for_each(|(field, text)| bench.write(*field, text));
            let filled = bench.with_b_filled();
            for of_a in Field::of_bike() {
                prop_assert_eq!(filled.text_of(Side::B, of_a).trim(), bench.text_of(Side::B, of_a).trim().trim_matches('?'));
            }
        }

        #[test]
        fn owners_move_with_their_values(written in prop::collection::vec(any::<bool>(), Field::ALL.len())) {
            let mut bench = Bench::default();
            Field::ALL.iter().zip(&written).filter(|it| *it.1).for_each(|(field, _)| bench.claim(*field));
            let (swapped, copied) = (bench.swapped(), bench.with_a_copied_to_b());
            for &field in Field::ALL {
                let is_as_on_a = |field: Field| field.as_on_a().is_some() && bench.of_b(field) == OfB::AsOnA;
                let stays = is_as_on_a(field) || is_as_on_a(field.twin());
                let now = if stays { field } else { field.twin() };
                prop_assert_eq!(swapped.is_riders(now), bench.is_riders(field));
                let expected = match field.spec().group {
                    Group::SetupB => bench.is_riders(field.twin()),
                    Group::BikeB => false,
                    _ => bench.is_riders(field),
                };
                prop_assert_eq!(copied.is_riders(field), expected);
            }
        }

    }
}
