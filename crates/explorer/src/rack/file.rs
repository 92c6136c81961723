//! A rack as plain names and texts: what a file holds, and what the browser keeps of each bike.

use crate::bench::field::Field;
use crate::bench::whole_bike::{Part, WholeBike};
use crate::rack::rack::{KeptBike, Rack, RackFault};

/// A bike of a file: texts by the names of their parts.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FiledBike {
    /// Its name.
    pub name: String,
    /// Its place on the rack.
    pub order: u32,
    /// What is the rider's.
    pub parts: Vec<(String, String)>,
    /// What is not: the demo's or usual.
    pub not_mine: Vec<(String, String)>,
}

/// A rack of a file, and what in the file is no part of a rack.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct RackFile {
    /// Its bikes.
    pub bikes: Vec<FiledBike>,
    /// Names that say nothing here.
    pub strange: Vec<String>,
}

/// What became of a file.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Opened {
    /// Bikes that were put on the rack.
    pub taken: Vec<String>,
    /// Those among them that another bike had the name of, with the name they were given.
    pub renamed: Vec<(String, String)>,
    /// Bikes that were there already, just so.
    pub known: Vec<String>,
    /// Bikes that were not taken, and why.
    pub refused: Vec<(String, RackFault)>,
    /// Names that say nothing here.
    pub strange: Vec<String>,
    /// Parts whose texts were cut.
    pub cut: Vec<&'static str>,
}

impl RackFile {
    /// Bytes of a file at most: 40 bikes with every part as long as it may be come to less.
    pub const LARGEST_BYTES: usize = 1_000_000;
}

impl Field {
    /// Name of the part of a bike that one of A's fields holds.
    #[must_use]
    pub fn part_name(self) -> &'static str {
        let key = self.twin().spec().key;
        key.strip_suffix("-b").unwrap_or(key)
    }
}

impl FiledBike {
    /// The bike as texts, without what would be read the same where nothing is said.
    #[must_use]
    pub fn of(kept: &KeptBike) -> Self {
        let mut filed = Self { name: kept.name.clone(), order: kept.order, ..Self::default() };
        let open = WholeBike::default();
        for ((of_a, part), (_, unsaid)) in kept.bike.parts().zip(open.parts()) {
            if part != unsaid {
                let list = if part.is_riders { &mut filed.parts } else { &mut filed.not_mine };
                list.push((of_a.part_name().to_owned(), part.text.clone()));
            }
        }
        filed
    }

    /// The bike that the texts describe; names that say nothing and parts that were cut are put with the others.
    pub fn bike(&self, strange: &mut Vec<String>, cut: &mut Vec<&'static str>) -> WholeBike {
        let mut bike = WholeBike::default();
        for (list, is_riders) in [(&self.not_mine, false), (&self.parts, true)] {
            for (name, text) in list {
                let Some(of_a) = Field::of_bike().find(|of_a| of_a.part_name() == name) else {
                    strange.push(name.clone());
                    continue;
                };
                if text.chars().count() > of_a.longest() {
                    cut.push(of_a.part_name());
                }
                let text: String = text.trim().chars().take(of_a.longest()).collect();
                bike.put(of_a, Part { text: text.trim_end().to_owned(), is_riders });
            }
        }
        bike
    }
}

impl Rack {
    /// The rack as texts.
    #[must_use]
    pub fn filed(&self) -> Vec<FiledBike> {
        self.bikes().iter().map(FiledBike::of).collect()
    }

    /// Puts the bikes of a file behind all others. One whose name another bike has gets the next free name.
    pub fn open(&mut self, file: RackFile) -> Opened {
        let mut opened = Opened { strange: file.strange, ..Opened::default() };
        for filed in file.bikes {
            let bike = filed.bike(&mut opened.strange, &mut opened.cut);
            let name = crate::rack::rack::tidy(&filed.name);
            if self.bike(&name).is_some_and(|kept| kept.bike == bike) {
                opened.known.push(name);
                continue;
            }
            let free = if self.bike(&name).is_some() { self.next_name(&name) } else { name.clone() };
            match self.keep(&free, bike) {
                Err(why) => opened.refused.push((name, why)),
                Ok(kept) => {
                    if kept != name {
                        opened.renamed.push((name, kept.clone()));
                    }
                    opened.taken.push(kept);
                }
            }
        }
        opened.strange.sort_unstable();
        opened.strange.dedup();
        opened.cut.sort_unstable();
        opened.cut.dedup();
        opened
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::side::Side;
    use proptest::prelude::*;

    const NAMES: [&str; 15] = [
        "rings",
        "cassette",
        "gears-off",
        "tyre",
        "roll-out",
        "rim",
        "tyre-kind",
        "tyre-width",
        "capacity",
        "largest-sprocket",
        "smallest-sprocket",
        "ring-difference",
        "pulley-centres",
        "links",
        "bike-mass",
    ];

    #[test]
    fn parts_have_the_names_of_the_readme() {
        assert!(Field::of_bike().map(Field::part_name).eq(NAMES));
    }

    fn filed(name: &str, parts: &[(&str, &str)]) -> FiledBike {
        let parts = parts.iter().map(|&(name, text)| (name.to_owned(), text.to_owned())).collect();
        FiledBike { name: name.to_owned(), parts, ..FiledBike::default() }
    }

    #[test]
    fn what_a_file_leaves_out_is_not_known_and_what_is_strange_is_named() {
        let file = RackFile {
            bikes: vec![filed(
                "Mud",
                &[("rings", " 40 "), ("colour", "red"), ("cassette", &"1".repeat(500))],
            )],
            strange: vec!["wheels".to_owned(), "colour".to_owned()],
        };
        let mut rack = Rack::default();
        let opened = rack.open(file);
        assert_eq!(
            (opened.strange, opened.cut),
            (vec!["colour".to_owned(), "wheels".to_owned()], vec!["cassette"])
        );
        let bike = &rack.bikes()[0].bike;
        assert_eq!(
            [bike.text(Field::RingsA), bike.text(Field::Tyre), bike.text(Field::Capacity)],
            ["40", "", ""]
        );
        assert_eq!(bike.text(Field::CassetteA).len(), Field::CassetteA.longest());
    }

    #[test]
    fn no_bike_is_put_in_the_place_of_another() {
        let mut rack = Rack::default();
        let open =
            |rack: &mut Rack, bikes: Vec<FiledBike>| rack.open(RackFile { bikes, strange: Vec::new() });
        let (mud, bog) = (filed("Mud", &[("rings", "40")]), filed(" Mud", &[("rings", "42")]));
        let opened = open(&mut rack, vec![mud.clone(), mud, bog, filed("", &[])]);
        assert_eq!(
            (opened.taken, opened.known),
            (vec!["Mud".to_owned(), "Mud 2".to_owned()], vec!["Mud".to_owned()])
        );
        assert_eq!(opened.renamed, [("Mud".to_owned(), "Mud 2".to_owned())]);
        assert_eq!(opened.refused, [(String::new(), RackFault::NoName)]);
        let many = (0..50).map(|number| filed(&number.to_string(), &[])).collect();
        let opened = open(&mut rack, many);
        assert_eq!((rack.bikes().len(), opened.refused.len()), (Rack::MOST, 12));
    }

    proptest! {
        #[test]
        fn a_bike_goes_through_a_file(
            texts in prop::collection::vec(("( ?[0-9]{1,3}|\\?|)", any::<bool>()), 2 * NAMES.len()),
        ) {
            let mut bench = Bench::default();
            for (field, (text, is_riders)) in Field::of_bike().flat_map(|field| [field, field.twin()]).zip(&texts) {
                bench.put(field, text, *is_riders);
            }
            for side in Side::BOTH {
                let mut rack = Rack::default();
                prop_assert!(rack.keep("It", bench.bike(side)).is_ok());
                let mut other = Rack::default();
                let opened = other.open(RackFile { bikes: rack.filed(), strange: Vec::new() });
                prop_assert_eq!(&other, &rack);
                prop_assert!(opened.strange.is_empty() && opened.cut.is_empty());
            }
        }

        #[test]
        fn any_texts_are_a_bike(
            bikes in prop::collection::vec(("\\PC{0,70}", prop::collection::vec(("(rings|tyre|\\PC{0,9})", "\\PC{0,450}"), 0..6)), 0..5),
        ) {
            let bikes = bikes.into_iter().map(|(name, parts)| FiledBike { name, parts, ..FiledBike::default() });
            let mut rack = Rack::default();
            rack.open(RackFile { bikes: bikes.collect(), strange: Vec::new() });
            let mut again = Rack::default();
            again.open(RackFile { bikes: rack.filed(), strange: Vec::new() });
            prop_assert_eq!(again, rack);
        }
    }
}
