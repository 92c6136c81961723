//! From text to values, field by field. What fails keeps its last good value and says what to type.

use super::{CadenceWindow, Complaint, Probe};
use crate::bench::Bench;
use crate::field::Field;
use crate::number::with_unit;
use crate::speed_unit::SpeedUnit;
use gear_math::{
    Cadence, Circumference, Derailleur, OutOfLimits, Pressure, RollOutLimit, Speed, TyreKind, TyreSize, Wheel,
};
use std::fmt::Display;
use std::str::FromStr;

/// How a quantity is made from a number, and the number taken from it again.
pub(super) type Quantity<T> = (fn(f64) -> Result<T, OutOfLimits>, fn(T) -> f64);

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
        self.read(field, good, kept, |text| {
            number(text, field).and_then(|value| new(value).map_err(|error| sentence(&error)))
        })
    }

    /// A number within the limits of its quantity; `None` for `good` stands for the field's starting value.
    pub(super) fn quantity<T: Copy>(
        &mut self,
        field: Field,
        good: Option<T>,
        (new, value): Quantity<T>,
    ) -> T {
        let typed = number(self.bench.text(field).trim(), field)
            .and_then(|value| new(value).map_err(|error| sentence(&error)));
        match typed {
            Ok(typed) => typed,
            Err(message) => {
                let good = good.unwrap_or_else(|| started(field, new));
                self.complain(field, message, Some(value(good)));
                good
            }
        }
    }

    /// The same for a field that may be left empty.
    pub(super) fn quantity_or_none<T: Copy>(
        &mut self,
        field: Field,
        good: Option<T>,
        quantity: Quantity<T>,
    ) -> Option<T> {
        if self.bench.text(field).trim().is_empty() {
            return None;
        }
        let typed = number(self.bench.text(field).trim(), field)
            .and_then(|value| (quantity.0)(value).map_err(|error| sentence(&error)));
        typed.map(Some).unwrap_or_else(|message| {
            self.complain(field, message, good.map(quantity.1));
            good
        })
    }

    /// A pressure that may be left empty, in bar, or in psi when that stands behind it.
    pub(super) fn pressure_or_none(&mut self, field: Field, good: Option<Pressure>) -> Option<Pressure> {
        let text = self.bench.text(field).trim();
        let Some(psi) = text.strip_suffix("psi") else {
            return self.quantity_or_none(field, good, (Pressure::new, Pressure::bar));
        };
        let typed = number(psi.trim_end(), field)
            .and_then(|value| Pressure::from_psi(value).map_err(|error| sentence(&error)));
        typed.map(Some).unwrap_or_else(|message| {
            self.complain(field, message, good.map(Pressure::bar));
            good
        })
    }

    fn complain(&mut self, field: Field, message: String, kept: Option<f64>) {
        let kept = match kept.map(|kept| (kept * 1000.0).round() / 1000.0) {
            Some(kept) => format!("{kept}\u{a0}{}", field.spec().unit).trim_end().to_owned(),
            None => "none".to_owned(),
        };
        self.complaints.push(Complaint { field, message, kept });
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
            number(text, field).and_then(|value| new(value).map(Some).map_err(|error| sentence(&error)))
        })
    }

    /// Whole teeth that may be left out.
    fn teeth<T: Copy>(
        &mut self,
        field: Field,
        good: Option<T>,
        new: impl Fn(u16) -> Result<T, OutOfLimits>,
        count: impl Fn(T) -> u16,
    ) -> Option<T> {
        let kept = |good: Option<T>| {
            good.map_or("none".to_owned(), |value| with_unit(f64::from(count(value)), 0, "teeth"))
        };
        self.read(field, good, kept, |text| {
            if text.is_empty() {
                return Ok(None);
            }
            let whole = text
                .parse::<u32>()
                .map_err(|_| format!("Type a whole number of teeth, or leave it empty{}", example(field)))?;
            new(u16::try_from(whole).unwrap_or(u16::MAX)).map(Some).map_err(|error| sentence(&error))
        })
    }

    /// One of the values a choice offers; a link may hold any text.
    pub(super) fn choice<T: Copy + PartialEq>(&mut self, field: Field, good: T, choices: &[(&str, T)]) -> T {
        let name = |kept: T| {
            choices.iter().find(|(_, value)| *value == kept).map_or("", |(name, _)| name).to_owned()
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
            } else {
                (Field::CadenceUsual, "Type a number between the lowest and the highest cadence.")
            };
            let kept =
                [good.low, good.usual, good.high].map(|kept| kept.rpm().to_string()).join(", ") + "\u{a0}rpm";
            self.complaints.push(Complaint { field, message: message.to_owned(), kept });
        }
        good
    }

    fn cadence(&mut self, field: Field, good: Cadence) -> Cadence {
        self.measured(field, good, Cadence::new, |kept| with_unit(kept.rpm(), 0, "rpm"))
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
        let from_unit = |value: f64| match unit {
            SpeedUnit::KmPerH => Speed::from_km_per_h(value),
            SpeedUnit::MilesPerH => Speed::from_miles_per_h(value),
        };
        Probe {
            cadence: self.cadence(Field::ProbeCadence, good.cadence),
            speed: self.measured(Field::ProbeSpeed, good.speed, from_unit, |kept| unit.print(kept)),
        }
    }
}

/// The quantity that a field starts with. A test reads every one.
#[expect(clippy::expect_used, reason = "fixed texts, each read by a test")]
fn started<T>(field: Field, new: fn(f64) -> Result<T, OutOfLimits>) -> T {
    new(number(field.spec().start, field).expect("a number")).expect("a value within its limits")
}

/// A typed number: a decimal comma and the field's own unit behind it are understood.
fn number(text: &str, field: Field) -> Result<f64, String> {
    let bare = text.strip_suffix(field.spec().unit).unwrap_or(text).trim_end();
    let dotted = if bare.contains('.') { bare.to_owned() } else { bare.replacen(',', ".", 1) };
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

/// An error of gear-math as a sentence.
fn sentence(error: &impl Display) -> String {
    let text = error.to_string();
    let mut letters = text.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
    let end = if text.ends_with(['.', '?']) { "" } else { "." };
    format!("{first}{}{end}", letters.as_str())
}
