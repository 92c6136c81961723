//! From text to values, field by field. What fails keeps its last good value and says what to type.

use super::{CadenceWindow, Complaint, Probe};
use crate::bench::Bench;
use crate::field::{Field, Kind};
use crate::number::{rpm, trimmed, with_unit};
use crate::speed_unit::SpeedUnit;
use gear_math::{
    Cadence, ChainLinks, Circumference, Derailleur, Limits, OutOfLimits, Pressure, RollOutLimit, Speed,
    TyreKind, TyreSize, Wheel,
};
use std::fmt::Display;
use std::str::FromStr;

/// What a quantity may be, and how it is made from a number.
pub(super) type Quantity<T> = (&'static Limits, fn(f64) -> Result<T, OutOfLimits>);

/// Reads a bench and gathers complaints.
pub(super) struct Reader<'b> {
    bench: &'b Bench,
    /// The last good text of every field.
    good: &'b Bench,
    complaints: Vec<Complaint>,
}

impl<'b> Reader<'b> {
    pub(super) const fn new(bench: &'b Bench, good: &'b Bench) -> Self {
        Self { bench, good, complaints: Vec::new() }
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

    /// A quantity. A field in error keeps what its last good text meant.
    #[expect(clippy::expect_used, reason = "the number lies within the limits that `new` checks")]
    pub(super) fn quantity<T>(&mut self, field: Field, (limits, new): Quantity<T>) -> T {
        new(self.number_within(field, limits)).expect("a number within its limits")
    }

    /// A quantity that may be left empty.
    pub(super) fn quantity_or_none<T>(&mut self, field: Field, (limits, new): Quantity<T>) -> Option<T> {
        self.number_or_none(field, limits).and_then(|number| new(number).ok())
    }

    /// One of `values`, in the order in which the field offers them.
    pub(super) fn pick<T: Copy>(&mut self, field: Field, values: &[T]) -> T {
        values[self.chosen(field).min(values.len() - 1)]
    }

    fn number_within(&mut self, field: Field, limits: &'static Limits) -> f64 {
        self.number_or(field, self.bench.text(field), limits).unwrap_or_else(|| {
            let kept = [self.good.text(field), field.spec().start];
            kept.into_iter().find_map(|text| checked(text, field, limits).ok()).unwrap_or(limits.min)
        })
    }

    fn number_or_none(&mut self, field: Field, limits: &'static Limits) -> Option<f64> {
        let text = self.bench.text(field).trim();
        if text.is_empty() {
            return None;
        }
        self.number_or(field, text, limits).or_else(|| checked(self.good.text(field), field, limits).ok())
    }

    fn number_or(&mut self, field: Field, text: &str, limits: &'static Limits) -> Option<f64> {
        checked(text, field, limits).map_err(|message| self.refuse(field, message)).ok()
    }

    fn chosen(&mut self, field: Field) -> usize {
        let Kind::Choice(choices) = field.spec().kind else { return 0 };
        let place = |text: &str| choices.iter().position(|(value, _)| *value == text.trim());
        place(self.bench.text(field)).unwrap_or_else(|| {
            self.refuse(field, "Choose one of the values offered.".to_owned());
            place(self.good.text(field)).unwrap_or(0)
        })
    }

    fn refuse(&mut self, field: Field, message: String) {
        let kept = match self.good.text(field).trim() {
            "" => "none".to_owned(),
            text => format!("{text}\u{a0}{}", field.spec().unit).trim_end().to_owned(),
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
        self.read(field, good, kept, |text| {
            if text.is_empty() {
                return Ok(None);
            }
            let whole = text
                .parse::<u32>()
                .map_err(|_| format!("Type a whole number of teeth, or leave it empty{}", example(field)))?;
            new(u16::try_from(whole).unwrap_or(u16::MAX)).map(Some).map_err(within)
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

    /// A quantity in the unit of its field that may be left out. Taking functions rather than closures, and staying a
    /// function of its own, keeps the compiled code of all quantities one and the same.
    #[inline(never)]
    pub(super) fn optional_quantity<T: Copy>(
        &mut self,
        field: Field,
        good: Option<T>,
        new: fn(f64) -> Result<T, OutOfLimits>,
        value: fn(T) -> f64,
    ) -> Option<T> {
        self.optional(field, good, new, |kept| in_unit(value(kept), field))
    }

    /// A number of links that may be left out.
    pub(super) fn links(&mut self, field: Field, good: Option<ChainLinks>) -> Option<ChainLinks> {
        let kept =
            |good: Option<ChainLinks>| good.map_or("none".to_owned(), |links| links.count().to_string());
        self.read(field, good, kept, |text| {
            if text.is_empty() {
                return Ok(None);
            }
            let whole =
                text.parse::<u32>().map_err(|_| "Type a whole number of links, or leave it empty.")?;
            let links = ChainLinks::new(u16::try_from(whole).unwrap_or(u16::MAX));
            links.map(Some).map_err(|error| sentence(&error))
        })
    }

    /// Notes what is wrong beyond a single field.
    pub(super) fn complain(&mut self, field: Field, error: &impl Display, kept: String) {
        self.complaints.push(Complaint { field, message: sentence(error), kept });
    }
}

/// A number within its limits. A pressure may have psi behind it.
fn checked(text: &str, field: Field, limits: &'static Limits) -> Result<f64, String> {
    let text = text.trim();
    match text.strip_suffix("psi").filter(|_| field.spec().unit == "bar") {
        Some(psi) => number(psi.trim_end(), field)
            .and_then(|psi| Pressure::from_psi(psi).map(Pressure::bar).map_err(within)),
        None => number(text, field).and_then(|value| limits.check(value).map_err(within)),
    }
}

/// A value with the unit of its field.
fn in_unit(value: f64, field: Field) -> String {
    format!("{value}\u{a0}{}", field.spec().unit).trim_end().to_owned()
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
