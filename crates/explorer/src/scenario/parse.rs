//! From text to values, field by field. What fails keeps its last good value and says what to type.

use super::{CadenceWindow, Complaint, Probe};
use crate::bench::Bench;
use crate::field::Field;
use crate::number::{rpm, trimmed, with_unit};
use crate::speed_unit::SpeedUnit;
use gear_math::{
    Cadence, ChainLinks, Circumference, Climb, Derailleur, OutOfLimits, RollOutLimit, Speed, TyreKind,
    TyreSize, Wheel,
};
use std::fmt::Display;
use std::str::FromStr;

/// Reads a bench and gathers complaints.
pub(super) struct Reader<'b> {
    bench: &'b Bench,
    complaints: Vec<Complaint>,
}

impl<'b> Reader<'b> {
    pub(super) const fn new(bench: &'b Bench) -> Self {
        Self { bench, complaints: Vec::new() }
    }

    pub(super) fn complaints(self) -> Vec<Complaint> {
        self.complaints
    }

    /// The value of a field, or `good` and a complaint that names it as `kept`.
    fn read<T: Copy>(
        &mut self,
        field: Field,
        good: T,
        kept: impl Fn(T) -> String,
        read: impl Fn(&str) -> Result<T, String>,
    ) -> T {
        read(self.bench.text(field).trim()).unwrap_or_else(|message| {
            self.complaints.push(Complaint { field, message, kept: kept(good) });
            good
        })
    }

    /// A field that a type of gear-math reads by itself.
    pub(super) fn parsed<T>(&mut self, field: Field, good: T) -> T
    where
        T: FromStr + Display + Copy,
        T::Err: Display,
    {
        self.read(
            field,
            good,
            |kept| kept.to_string(),
            |text| text.parse().map_err(|error: T::Err| sentence(&error)),
        )
    }

    /// A number within the limits of its quantity.
    pub(super) fn measured<T: Copy>(
        &mut self,
        field: Field,
        good: T,
        new: impl Fn(f64) -> Result<T, OutOfLimits>,
        kept: impl Fn(T) -> String,
    ) -> T {
        self.read(field, good, kept, |text| number(text, field).and_then(|value| new(value).map_err(within)))
    }

    /// A number that may be left out.
    fn optional<T: Copy>(
        &mut self,
        field: Field,
        good: Option<T>,
        new: impl Fn(f64) -> Result<T, OutOfLimits>,
        kept: impl Fn(T) -> String,
    ) -> Option<T> {
        let kept = |good: Option<T>| good.map_or("none".to_owned(), &kept);
        self.read(field, good, kept, |text| {
            if text.is_empty() {
                return Ok(None);
            }
            number(text, field).and_then(|value| new(value).map(Some).map_err(within))
        })
    }

    /// Whole teeth that may be left out.
    #[inline(never)]
    pub(super) fn teeth<T: Copy>(
        &mut self,
        field: Field,
        good: Option<T>,
        new: fn(u16) -> Result<T, OutOfLimits>,
        count: fn(T) -> u16,
    ) -> Option<T> {
        let kept = |good: Option<T>| {
            good.map_or("none".to_owned(), |value| with_unit(f64::from(count(value)), 0, "teeth"))
        };
        self.read(field, good, kept, |text| match whole(text, &["teeth", "t", "T"]) {
            Ok(count) => count.map(new).transpose().map_err(within),
            Err(NotWhole) => {
                Err(format!("Type a whole number of teeth, or leave it empty{}", example(field)))
            }
        })
    }

    /// One of the values a choice offers; a link may hold any text.
    pub(super) fn choice<T: Copy + PartialEq>(&mut self, field: Field, good: T, choices: &[(&str, T)]) -> T {
        let name = |kept: T| {
            let name = choices.iter().find(|(_, value)| *value == kept).map_or("", |(name, _)| name);
            field.spec().words_for(name).to_owned()
        };
        self.read(field, good, name, |text| {
            let found = choices.iter().find(|(name, _)| *name == text);
            found.map(|&(_, value)| value).ok_or_else(|| "Choose one of the values offered.".to_owned())
        })
    }

    pub(super) fn wheel(&mut self, good: Wheel) -> Wheel {
        let tyre: TyreSize = self.parsed(Field::Tyre, good.tyre);
        let measured = self.optional(Field::RollOut, good.measured, Circumference::new, |kept| {
            with_unit(kept.mm(), 0, "mm")
        });
        Wheel { tyre, kind: TyreKind::CycloCross, measured }
    }

    pub(super) fn window(&mut self, good: CadenceWindow) -> CadenceWindow {
        let before = self.complaints.len();
        let low = self.cadence(Field::CadenceLow, good.low);
        let usual = self.cadence(Field::CadenceUsual, good.usual);
        let high = self.cadence(Field::CadenceHigh, good.high);
        let ascending = low < usual && usual < high;
        if ascending {
            return CadenceWindow { low, usual, high };
        }
        if self.complaints.len() == before {
            let (field, message) = if low < usual {
                (Field::CadenceHigh, "Type a number above the usual cadence.")
            } else if usual < high {
                (Field::CadenceLow, "Type a number below the usual cadence.")
            } else {
                (Field::CadenceUsual, "Type a number between the lowest and the highest cadence.")
            };
            let kept =
                [good.low, good.usual, good.high].map(|kept| trimmed(kept.rpm())).join(", ") + "\u{a0}rpm";
            self.complaints.push(Complaint { field, message: message.to_owned(), kept });
        }
        good
    }

    fn cadence(&mut self, field: Field, good: Cadence) -> Cadence {
        self.measured(field, good, Cadence::new, rpm)
    }

    pub(super) fn derailleur(&mut self, good: Derailleur) -> Derailleur {
        use gear_math::{RingDifference, Sprocket, TotalCapacity};
        Derailleur {
            total_capacity: self.teeth(
                Field::Capacity,
                good.total_capacity,
                TotalCapacity::new,
                TotalCapacity::teeth,
            ),
            largest_sprocket: self.teeth(
                Field::LargestSprocket,
                good.largest_sprocket,
                Sprocket::new,
                Sprocket::teeth,
            ),
            smallest_sprocket: self.teeth(
                Field::SmallestSprocket,
                good.smallest_sprocket,
                Sprocket::new,
                Sprocket::teeth,
            ),
            ring_difference: self.teeth(
                Field::RingDifference,
                good.ring_difference,
                RingDifference::new,
                RingDifference::teeth,
            ),
        }
    }

    pub(super) fn limit(&mut self, good: Option<RollOutLimit>) -> Option<RollOutLimit> {
        self.optional(Field::RollOutLimit, good, RollOutLimit::new, |kept| with_unit(kept.m(), 2, "m"))
    }

    pub(super) fn probe(&mut self, good: Probe, unit: SpeedUnit) -> Probe {
        Probe {
            cadence: self.cadence(Field::ProbeCadence, good.cadence),
            speed: self
                .measured(Field::ProbeSpeed, good.speed, Speed::from_km_per_h, |kept| unit.print(kept)),
        }
    }

    /// A quantity in the unit of its field.
    pub(super) fn quantity<T: Copy>(
        &mut self,
        field: Field,
        good: T,
        new: fn(f64) -> Result<T, OutOfLimits>,
        value: fn(T) -> f64,
    ) -> T {
        let read = self.number_within(field, Some(value(good)), &|typed| new(typed).err());
        new(read).unwrap_or(good)
    }

    /// The same for a field that may be left out.
    pub(super) fn optional_quantity<T: Copy>(
        &mut self,
        field: Field,
        good: Option<T>,
        new: fn(f64) -> Result<T, OutOfLimits>,
        value: fn(T) -> f64,
    ) -> Option<T> {
        if self.bench.text(field).trim().is_empty() {
            return None;
        }
        new(self.number_within(field, good.map(value), &|typed| new(typed).err())).ok()
    }

    /// Reads the number of a quantity, or gives `good`, which is not a number when there is none. One body for all
    /// quantities keeps the compiled code small.
    fn number_within(
        &mut self,
        field: Field,
        good: Option<f64>,
        refuse: &dyn Fn(f64) -> Option<OutOfLimits>,
    ) -> f64 {
        let text = self.bench.text(field).trim();
        let read = number(text, field).and_then(|value| match refuse(value) {
            Some(error) => Err(sentence(&error)),
            None => Ok(value),
        });
        read.unwrap_or_else(|message| {
            let kept = good.map_or("none".to_owned(), |good| in_unit(good, field));
            self.complaints.push(Complaint { field, message, kept });
            good.unwrap_or(f64::NAN)
        })
    }

    /// A number of links that may be left out.
    pub(super) fn links(&mut self, field: Field, good: Option<ChainLinks>) -> Option<ChainLinks> {
        let kept =
            |good: Option<ChainLinks>| good.map_or("none".to_owned(), |links| links.count().to_string());
        self.read(field, good, kept, |text| match whole(text, &["links"]) {
            Ok(count) => count.map(ChainLinks::new).transpose().map_err(|error| sentence(&error)),
            Err(NotWhole) => Err("Type a whole number of links, or leave it empty.".to_owned()),
        })
    }

    /// A slope that riding and going on foot can be compared on.
    pub(super) fn climb(&mut self, field: Field, good: Climb) -> Climb {
        let kept = |kept: Climb| in_unit(kept.percent(), field);
        self.read(field, good, kept, |text| {
            let percent = number(text, field)?;
            Climb::new(percent).map_err(|_| {
                let refused =
                    if percent < 0.0 { "downhill" } else { "steeper than 45 %" };
                format!(
                    "Nobody measured riding against running {refused}, so this page does not guess: type 0 to 45 %."
                )
            })
        })
    }

    /// What stands in a field.
    pub(super) fn text(&self, field: Field) -> &str {
        self.bench.text(field)
    }

    /// Notes what is wrong beyond a single field.
    pub(super) fn complain(&mut self, field: Field, error: &impl Display, kept: String) {
        self.complaints.push(Complaint { field, message: sentence(error), kept });
    }
}

/// What is no whole number.
struct NotWhole;

/// A whole number that may be left out, with or without one of `units` behind it. One too large to store comes out as the
/// largest that can be, which no limit allows.
fn whole(text: &str, units: &[&str]) -> Result<Option<u16>, NotWhole> {
    if text.is_empty() {
        return Ok(None);
    }
    let bare = units.iter().find_map(|unit| text.strip_suffix(unit)).unwrap_or(text).trim_end();
    let count: u32 = bare.parse().map_err(|_| NotWhole)?;
    Ok(Some(u16::try_from(count).unwrap_or(u16::MAX)))
}

/// A value with the unit of its field.
fn in_unit(value: f64, field: Field) -> String {
    format!("{}\u{a0}{}", trimmed(value), field.spec().unit).trim_end().to_owned()
}

/// A typed number: a decimal comma, a true minus sign and the field's own unit behind it are understood.
fn number(text: &str, field: Field) -> Result<f64, String> {
    let bare = text.strip_suffix(field.spec().unit).unwrap_or(text).trim_end().replace('−', "-");
    let dotted = if bare.contains('.') { bare } else { bare.replacen(',', ".", 1) };
    let digits =
        dotted.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'-' | b'+' | b'e' | b'E'));
    dotted.parse().ok().filter(|_| digits).ok_or_else(|| format!("Type a number{}", example(field)))
}

/// “, such as 55.” with the field's starting value, where it has one.
fn example(field: Field) -> String {
    match field.spec().start {
        "" => ".".to_owned(),
        start => format!(", such as {start}."),
    }
}

/// What to type instead of a number outside its limits.
fn within(error: OutOfLimits) -> String {
    format!("Type {}.", error.limits.range())
}

/// An error of gear-math as a sentence.
fn sentence(error: &impl Display) -> String {
    let text = error.to_string();
    let mut letters = text.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
    let end = if text.ends_with(['.', '?']) { "" } else { "." };
    format!("{first}{}{end}", letters.as_str())
}
