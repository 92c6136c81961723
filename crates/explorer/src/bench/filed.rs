//! A bench as plain names and texts: what a file holds of it.

use crate::bench::bench::Bench;
use crate::bench::field::Field;

/// A bench as texts by the keys of their fields.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FiledBench {
    /// What is the rider's.
    pub mine: Vec<(String, String)>,
    /// What is not: the demo's or usual.
    pub not_mine: Vec<(String, String)>,
}

impl FiledBench {
    /// Every field of a bench, so that the file says the same once the page starts with something else.
    #[must_use]
    pub fn of(bench: &Bench) -> Self {
        let mut filed = Self::default();
        for &field in Field::ALL {
            let list = if bench.is_riders(field) { &mut filed.mine } else { &mut filed.not_mine };
            list.push((field.spec().key.to_owned(), bench.text(field).to_owned()));
        }
        filed
    }

    /// The bench that the texts describe, with what it starts with where nothing is said; names that say nothing and fields
    /// that were cut are put with the others.
    #[must_use]
    pub fn bench(&self, strange: &mut Vec<String>, cut: &mut Vec<&'static str>) -> Bench {
        let mut bench = Bench::default();
        for (list, is_riders) in [(&self.not_mine, false), (&self.mine, true)] {
            for (key, text) in list {
                let Some(field) = Field::by_key(key) else {
                    strange.push(key.clone());
                    continue;
                };
                if text.chars().count() > field.longest() {
                    cut.push(field.spec().key);
                }
                bench.put(field, text, is_riders);
            }
        }
        bench
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Names that the committed schema lists behind a mark, each in quotation marks.
    fn listed(after: &str) -> Vec<String> {
        let schema = include_str!("../../../../www/scenario.schema.json");
        let list = schema.split_once(after).unwrap().1.split_once("\"enum\": [").unwrap().1;
        let names = list.split_once(']').unwrap().0.split(',');
        names.map(|name| name.trim().trim_matches('"').to_owned()).collect()
    }

    #[test]
    fn the_schema_names_every_field_and_every_part() {
        assert_eq!(
            listed("\"fields\": {"),
            Field::ALL.iter().map(|field| field.spec().key).collect::<Vec<_>>()
        );
        assert_eq!(listed("\"parts\": {\n"), Field::of_bike().map(Field::part_name).collect::<Vec<_>>());
    }

    proptest! {
        #[test]
        fn a_bench_goes_through_a_file_with_its_owners(
            texts in prop::collection::vec(("\\PC{0,20}", any::<bool>()), Field::ALL.len()),
        ) {
            let mut bench = Bench::default();
            for (&field, (text, is_riders)) in Field::ALL.iter().zip(&texts) {
                bench.put(field, text, *is_riders);
            }
            let (mut strange, mut cut) = (Vec::new(), Vec::new());
            prop_assert_eq!(FiledBench::of(&bench).bench(&mut strange, &mut cut), bench);
            prop_assert!(strange.is_empty() && cut.is_empty());
        }

        #[test]
        fn any_texts_are_a_bench(texts in prop::collection::vec(("(rings-a|sketch|__proto__|\\PC{0,9})", "\\PC{0,4100}"), 0..6)) {
            let filed = FiledBench { mine: texts.clone(), not_mine: texts };
            let (mut strange, mut cut) = (Vec::new(), Vec::new());
            let bench = filed.bench(&mut strange, &mut cut);
            prop_assert!(Field::ALL.iter().all(|&field| bench.text(field).chars().count() <= field.longest() + 1));
        }
    }
}
