//! What an empty field of B stands for, said in the field itself.

use crate::bench::bench::Bench;
use crate::bench::field::{Field, Group};
use crate::bench::of_b::OfB;
use crate::page::words::notices as words;
use crate::side::Side;

/// Every field that B may leave to A, and what it stands for while it is empty.
pub(crate) fn fields(bench: &Bench) -> Vec<(&'static str, String)> {
    Group::BikeB.fields().map(|field| (field.spec().key, stands_for(bench, field))).collect()
}

fn stands_for(bench: &Bench, field: Field) -> String {
    let of_a = field.twin();
    let is_of_another_part = field.measures().is_some_and(|part| bench.of_b(part) != OfB::AsOnA);
    if is_of_another_part {
        return words::NOT_KNOWN.to_owned();
    }
    words::as_a(&of_a.shown(of_a.spec().words_for(bench.text_of(Side::A, of_a).trim())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_field_says_what_it_has_from_a() {
        let mut bench = Bench::default();
        bench.write(Field::Capacity, "39");
        let said = |bench: &Bench, of: Field| {
            fields(bench).into_iter().find(|(key, _)| *key == of.spec().key).map(|(_, text)| text)
        };
        assert_eq!(said(&bench, Field::CapacityB).as_deref(), Some("as A: 39"));
        assert_eq!(said(&bench, Field::ConstructionB).as_deref(), Some("as A: tubeless"));
        assert_eq!(said(&bench, Field::RollOutB).as_deref(), Some("as A"));
        bench.write(Field::TyreB, "40-622");
        assert_eq!(said(&bench, Field::RollOutB).as_deref(), Some("not known"));
    }
}
