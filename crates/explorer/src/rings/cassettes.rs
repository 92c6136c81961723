//! Cassettes as typed: every sprocket, or the name that a cassette goes by.

use crate::bench::field::Field;
use crate::bench::reader::Reader;
use crate::rings::no_cassette::NoCassette;
use crate::rings::words::complaints as words;
use gear_math::Cassette;
use gear_math::gears::{CassetteName, CassetteNameError};

/// A cassette, and the name that it was typed by, if it was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TypedCassette {
    /// Its sprockets: those typed, or the usual ones of the name; where there are none such, the last good ones.
    pub cassette: Cassette,
    /// The name, and why just so many sprockets were taken for it.
    pub name: Option<(CassetteName, WhySoMany)>,
}

/// Why a cassette known by its name is taken to have so many sprockets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhySoMany {
    /// It was said.
    Said,
    /// There is no usual one of that name with another number.
    OnlyOne,
    /// The other set-up has so many.
    AsOther,
    /// Of the numbers that the names of both set-ups allow, it is the most usual.
    BothNames,
    /// It is the nearest to that of the other set-up.
    NearestTo(usize),
    /// It is the most usual.
    Usual,
    /// There is no usual cassette of that name, or none with the number said.
    NoneSuch,
}

impl From<Cassette> for TypedCassette {
    fn from(cassette: Cassette) -> Self {
        Self { cassette, name: None }
    }
}

/// Fewer sprockets on the other set-up, such as the one of a single-speed, say nothing about this one. Estimate.
const LEAST_GUIDE: usize = 3;

/// The cassettes of A and B. One that is only named takes after the other.
pub(crate) fn read(reader: &mut Reader<'_>, good: [TypedCassette; 2]) -> [TypedCassette; 2] {
    let fields = [Field::CassetteA, Field::CassetteB];
    let names = fields.map(|field| CassetteName::read(reader.text(field)));
    let listed = [0, 1].map(|side| match names[side] {
        Some(_) => good[side].cassette,
        None => reader.parsed(fields[side], good[side].cassette, words::cassette),
    });
    [0, 1].map(|side| {
        let Some(name) = names[side] else { return listed[side].into() };
        let beside =
            names[1 - side].map_or(Beside::Listed(listed[1 - side].sprockets().len()), Beside::Named);
        let (cassette, why) = beside.take(name);
        let cassette = cassette.unwrap_or_else(|| {
            reader.complain(
                fields[side],
                words::cassette_name(&CassetteNameError::NoneSuch(name)),
                good[side].cassette.to_string(),
            );
            good[side].cassette
        });
        TypedCassette { cassette, name: Some((name, why)) }
    })
}

/// What the other set-up says of the number of sprockets.
#[derive(Clone, Copy)]
enum Beside {
    Named(CassetteName),
    Listed(usize),
}

impl Beside {
    fn take(self, name: CassetteName) -> (Option<Cassette>, WhySoMany) {
        let wanted = match self {
            Self::Named(other) => name.count_with(other),
            Self::Listed(count) => Some(count).filter(|count| *count >= LEAST_GUIDE),
        };
        let cassette = name.beside(wanted);
        let taken = cassette.map(|cassette| cassette.sprockets().len());
        let why = match (self, wanted) {
            _ if taken.is_none() => WhySoMany::NoneSuch,
            _ if name.count().is_some() => WhySoMany::Said,
            (Self::Listed(_), _) if taken == wanted => WhySoMany::AsOther,
            _ if name.cassettes().count() == 1 => WhySoMany::OnlyOne,
            (Self::Named(_), Some(_)) => WhySoMany::BothNames,
            (Self::Listed(_), Some(count)) => WhySoMany::NearestTo(count),
            (_, None) => WhySoMany::Usual,
        };
        (cassette, why)
    }
}

/// One line of further cassettes; a name takes after set-up A.
pub(crate) fn read_line(line: &str, beside: Cassette) -> Result<TypedCassette, NoCassette> {
    let Some(name) = CassetteName::read(line) else {
        return line.parse().map(Cassette::into).map_err(NoCassette::Sprockets);
    };
    let (cassette, why) = Beside::Listed(beside.sprockets().len()).take(name);
    let fault = || NoCassette::Name(CassetteNameError::NoneSuch(name));
    Ok(TypedCassette { cassette: cassette.ok_or_else(fault)?, name: Some((name, why)) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::page::scenario::{ReadBench, Scenario};
    use crate::side::Side;

    fn read(a: &str, b: &str) -> ReadBench {
        let mut bench = Bench::default();
        bench.write(Field::CassetteA, a);
        bench.write(Field::CassetteB, b);
        Scenario::read(&bench, &Scenario::default())
    }

    #[track_caller]
    fn taken(a: &str, b: &str, expected: [(usize, WhySoMany); 2]) {
        let ReadBench { scenario, complaints } = read(a, b);
        assert_eq!(complaints, []);
        for (side, expected) in Side::BOTH.into_iter().zip(expected) {
            let why = scenario.rings.typed_cassette(side).name.map_or(WhySoMany::Said, |(_, why)| why);
            let count = scenario.rings.drivetrain(side).cassette.sprockets().len();
            assert_eq!((count, why), expected, "{a} {b} {side}");
        }
    }

    #[test]
    fn the_other_set_up_says_how_many_sprockets() {
        use WhySoMany::{AsOther, BothNames, NearestTo, OnlyOne, Said, Usual};
        let eight = "11-13-15-18-21-24-28-32";
        taken("11-30", eight, [(8, AsOther), (8, Said)]);
        taken("11-30 9s", eight, [(9, Said), (8, Said)]);
        taken("11-42", eight, [(11, OnlyOne), (8, Said)]);
        taken("12-30", "11-13-15-17-19-21-24", [(10, OnlyOne), (7, Said)]);
        taken("11-34", eight, [(9, NearestTo(8)), (8, Said)]);
        taken("11-30", "11-32", [(11, BothNames), (11, BothNames)]);
        taken("11-30", "11-29", [(12, BothNames), (12, OnlyOne)]);
        taken("11-30", "17", [(11, Usual), (1, Said)]);
        taken("11-30", "16-18", [(11, Usual), (2, Said)]);
        taken("11-30", "11, 42", [(11, Usual), (2, Said)]);
    }

    #[test]
    fn a_name_of_nothing_usual_is_left_aside_and_the_last_good_cassette_goes_on() {
        for (typed, says) in [
            ("11-33", "No usual cassette is called 11-33: type every sprocket"),
            ("11-42 9s", "No usual 11-42 has 9 sprockets, only one of 11: type every sprocket"),
        ] {
            let ReadBench { scenario, complaints } = read(typed, "11-32");
            assert_eq!(complaints.len(), 1, "{typed}");
            assert!(complaints[0].message.starts_with(says), "{}", complaints[0].message);
            assert_eq!(complaints[0].kept.as_deref(), Some("11-12-13-14-15-17-19-21-24-27-30"));
            assert_eq!(scenario.rings.drivetrain(Side::A), Scenario::default().rings.drivetrain(Side::A));
        }
    }

    #[test]
    fn further_cassettes_take_after_a() {
        let beside = "11-13-15-18-21-24-28-32".parse().unwrap();
        let line = |line: &str| read_line(line, beside).map(|it| it.cassette.to_string());
        assert_eq!(line("11-30").as_deref(), Ok("11-13-15-17-20-23-26-30"));
        assert_eq!(line("11, 30").as_deref(), Ok("11, 30"));
        let told = words::no_cassette(&line("11-33").unwrap_err());
        assert!(told.starts_with("no usual cassette is called 11-33"));
        assert!(line("30-11").is_err());
    }
}
