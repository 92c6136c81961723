//! The fields of the bench: one table row each, read by the form, the link, the messages and the tests.

/// Where on the bench a field stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Set-up A.
    SetupA,
    /// Set-up B.
    SetupB,
    /// The wheel both set-ups share.
    Wheel,
    /// The rider's legs.
    Rider,
    /// The rear derailleur both set-ups share.
    Derailleur,
    /// Rules of counting, units and race rules.
    Reckoning,
    /// Controls that stand inside a section, beside the picture they move.
    Section,
}

/// How a field is filled in.
#[derive(Debug, Clone, Copy)]
pub enum Kind {
    /// Free text, read by a parser.
    Text,
    /// One number.
    Number,
    /// One of several values, each with the words shown for it.
    Choice(&'static [(&'static str, &'static str)]),
    /// A number on a slider: smallest, largest, step.
    Slider(f64, f64, f64),
}

/// One row of the field table.
#[derive(Debug)]
pub struct Spec {
    /// Name in the link and in the page's element ids.
    pub key: &'static str,
    /// Where it stands.
    pub group: Group,
    /// Label beside it.
    pub label: &'static str,
    /// Unit behind it; empty when the value says it itself.
    pub unit: &'static str,
    /// How it is filled in.
    pub kind: Kind,
    /// What the demo starts with. Part of the link's version: a link leaves out what equals it.
    pub start: &'static str,
    /// One line of help; empty when the label says all.
    pub help: &'static str,
}

macro_rules! fields {
    ($($name:ident: $key:literal, $group:ident, $label:literal, $unit:literal, $kind:expr, $start:literal, $help:literal;)+) => {
        /// A field of the bench.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Field {
            $(#[doc = $label] $name,)+
        }

        impl Field {
            /// Every field, in the order of the bench.
            pub const ALL: &'static [Field] = &[$(Field::$name,)+];

            /// The field's row of the table.
            #[must_use]
            pub fn spec(self) -> &'static Spec {
                const SPECS: &[Spec] = &[$(Spec {
                    key: $key, group: Group::$group, label: $label, unit: $unit, kind: $kind, start: $start, help: $help,
                },)+];
                &SPECS[self as usize]
            }
        }
    };
}

fields! {
    RingsA: "rings-a", SetupA, "Chainrings", "", Kind::Text, "50/34", "";
    CassetteA: "cassette-a", SetupA, "Cassette", "", Kind::Text, "11-12-13-14-15-17-19-21-24-27-30", "";
    RingsB: "rings-b", SetupB, "Chainrings", "", Kind::Text, "44/32", "";
    CassetteB: "cassette-b", SetupB, "Cassette", "", Kind::Text, "11-12-13-14-16-18-20-22-25-28-32", "";
    Tyre: "tyre", Wheel, "Tyre", "", Kind::Text, "33-622", "ISO 5775 size as on the sidewall, width first";
    RollOut: "roll-out", Wheel, "Roll-out measured", "mm", Kind::Number, "", "One turn of the wheel, rider aboard; it wins over the estimate";
    CadenceLow: "cadence-low", Rider, "Lowest cadence", "rpm", Kind::Number, "55", "Slowest you still turn the crank on a climb";
    CadenceUsual: "cadence-usual", Rider, "Usual cadence", "rpm", Kind::Number, "85", "";
    CadenceHigh: "cadence-high", Rider, "Highest cadence", "rpm", Kind::Number, "110", "";
    Capacity: "capacity", Derailleur, "Total capacity", "teeth", Kind::Number, "33", "As its maker states it; may be left empty";
    LargestSprocket: "largest-sprocket", Derailleur, "Largest sprocket", "teeth", Kind::Number, "34", "";
    SmallestSprocket: "smallest-sprocket", Derailleur, "Smallest sprocket", "teeth", Kind::Number, "11", "";
    RingDifference: "ring-difference", Derailleur, "Chainring difference", "teeth", Kind::Number, "16", "Of the front derailleur";
    Tolerance: "same-within", Reckoning, "Same gear within", "%", Kind::Number, "2", "Gears closer than this count as one";
    Inches: "inches", Reckoning, "Gear inches on", "", Kind::Choice(INCHES), "real", "";
    SpeedUnit: "speed-unit", Reckoning, "Speeds in", "", Kind::Choice(SPEED_UNITS), "kmh", "";
    RollOutLimit: "limit", Reckoning, "Roll-out limit", "m", Kind::Number, "", "Of your race, if it has one";
    ProbeCadence: "at-cadence", Section, "At a cadence of", "rpm", Kind::Slider(30.0, 130.0, 1.0), "85", "";
    ProbeSpeed: "at-speed", Section, "At a speed of", "", Kind::Slider(4.0, 60.0, 0.5), "15", "";
}

const INCHES: &[(&str, &str)] =
    &[("real", "this wheel's diameter"), ("nominal", "nominal 27 in, as in track tables")];
const SPEED_UNITS: &[(&str, &str)] = &[("kmh", "km/h"), ("mph", "mph")];

impl Field {
    /// The field with this key.
    #[must_use]
    pub fn by_key(key: &str) -> Option<Field> {
        Field::ALL.iter().copied().find(|field| field.spec().key == key)
    }

    /// The same field of the other set-up; a shared field is its own twin.
    #[must_use]
    pub fn twin(self) -> Field {
        match self {
            Field::RingsA => Field::RingsB,
            Field::RingsB => Field::RingsA,
            Field::CassetteA => Field::CassetteB,
            Field::CassetteB => Field::CassetteA,
            shared => shared,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_unique_and_need_no_escaping() {
        for (index, field) in Field::ALL.iter().enumerate() {
            let key = field.spec().key;
            assert!(key.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-'), "{key}");
            assert_eq!(Field::by_key(key), Some(*field));
            assert_eq!(*field as usize, index);
        }
    }

    #[test]
    fn twins_come_in_pairs() {
        for field in Field::ALL {
            assert_eq!(field.twin().twin(), *field);
        }
    }
}
