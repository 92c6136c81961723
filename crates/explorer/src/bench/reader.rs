//! From text to values, field by field. What fails keeps its last good value and says what to type.

use crate::bench::bench::Bench;
use crate::bench::cadence_window::CadenceWindow;
use crate::bench::complaint::Complaint;
use crate::bench::field::{Field, Kind};
use crate::bench::field_text::{dotted, is_bare};
use crate::bench::of_b::OfB;
use crate::bench::owner::Owner;
use crate::bench::words::{TEETH, complaints as words};
use crate::number::trimmed;
use crate::side::Side;
use crate::words::listed;
use gear_math::gears::GearSet;
use gear_math::rider::Climb;
use gear_math::typed::{decimal_in, meant, slope_percent};
use gear_math::{Cadence, ChainLinks, Drivetrain, Limits, Measured, OutOfLimits, Pressure, Speed};
use std::fmt::Display;
use std::str::FromStr;

/// Reads a bench and gathers complaints.
pub(crate) struct Reader<'b> {
    bench: &'b Bench,
    /// The last good text of every field, A's where B left it to A.
    good: Bench,
    complaints: Vec<Complaint>,
    /// What is known of neither the rider nor anybody else.
    unknown: Vec<Field>,
}

impl<'b> Reader<'b> {
    pub(crate) fn new(bench: &'b Bench, good: &Bench) -> Self {
        Self { bench, good: good.with_b_filled(), complaints: Vec::new(), unknown: Vec::new() }
    }

    /// The complaints, and the fields that are not known.
    pub(crate) fn findings(self) -> (Vec<Complaint>, Vec<Field>) {
        (self.complaints, self.unknown)
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
            self.complain(field, message, kept(good));
            good
        })
    }

    /// A field that a type of gear-math reads by itself; `said` puts into words why it cannot.
    pub(crate) fn parsed<T>(&mut self, field: Field, good: T, said: fn(&T::Err) -> String) -> T
    where
        T: FromStr + Display + Copy,
    {
        self.read(
            field,
            good,
            |kept| kept.to_string(),
            |text| text.parse().map_err(|error: T::Err| said(&error)),
        )
    }

    /// A quantity. A field in error keeps what its last good text meant.
    pub(crate) fn quantity<T: Measured>(&mut self, field: Field) -> T {
        sure(T::measured(self.number_within(field, T::BOUNDS)))
    }

    /// A quantity that is not known while its field is empty, or in error with nothing good of the rider's to go on with.
    /// What is given then only fills its place.
    pub(crate) fn known<T: Measured>(&mut self, field: Field) -> T {
        let number = self.number_or_unknown(field, T::BOUNDS);
        sure(T::measured(number))
    }

    /// A quantity that may be left empty.
    pub(crate) fn quantity_or_none<T: Measured>(&mut self, field: Field) -> Option<T> {
        self.number_or_none(field, T::BOUNDS).and_then(|number| T::measured(number).ok())
    }

    /// A speed in km/h, whatever unit speeds are shown in.
    pub(crate) fn speed(&mut self, field: Field) -> Speed {
        sure(Speed::from_km_per_h(self.number_within(field, &Speed::KM_PER_H_LIMITS)))
    }

    /// One of `values`, in the order in which the field offers them; a link may hold any text.
    pub(crate) fn pick<T: Copy>(&mut self, field: Field, values: &[T]) -> T {
        debug_assert!(matches!(field.spec().kind, Kind::Choice(choices) if choices.len() == values.len()));
        values[self.chosen(field).min(values.len() - 1)]
    }

    /// Whole teeth that may be left out.
    pub(crate) fn teeth<T>(&mut self, field: Field, new: fn(u16) -> Result<T, OutOfLimits>) -> Option<T> {
        let refused = |count| new(count).err().map(|error| words::outside(&error.limits.range()));
        self.whole_or_none(field, &[TEETH, "t", "T"], &refused).and_then(|count| new(count).ok())
    }

    /// A number of links that may be left out.
    pub(crate) fn links(&mut self, field: Field) -> Option<ChainLinks> {
        let refused = |count| ChainLinks::new(count).err().map(|error| words::chain_links(&error));
        self.whole_or_none(field, &[words::LINKS], &refused).and_then(|count| ChainLinks::new(count).ok())
    }

    // What follows has one body for all quantities, which keeps the compiled code small.

    /// The number of a field, of the last good text, or of the starting value.
    pub(crate) fn number_within(&mut self, field: Field, limits: &'static Limits) -> f64 {
        self.number_or_complaint(field, self.bench.text(field), limits).unwrap_or_else(|| {
            let kept = [self.good.text(field), field.spec().start];
            kept.into_iter().find_map(|text| checked(text, field, limits).ok()).unwrap_or(limits.min)
        })
    }

    fn number_or_unknown(&mut self, field: Field, limits: &'static Limits) -> f64 {
        let text = self.bench.text(field).trim();
        let start = checked(field.spec().start, field, limits).unwrap_or(limits.min);
        if text.is_empty() {
            self.unknown.push(field);
            return start;
        }
        self.number_or_complaint(field, text, limits).unwrap_or_else(|| {
            let good = &self.good;
            let own = checked(good.text(field), field, limits).ok().filter(|_| good.is_riders(field));
            own.unwrap_or_else(|| {
                self.unknown.push(field);
                start
            })
        })
    }

    fn number_or_none(&mut self, field: Field, limits: &'static Limits) -> Option<f64> {
        let text = self.bench.text(field).trim();
        if text.is_empty() {
            return None;
        }
        self.number_or_complaint(field, text, limits)
            .or_else(|| checked(self.good.text(field), field, limits).ok())
    }

    fn number_or_complaint(&mut self, field: Field, text: &str, limits: &'static Limits) -> Option<f64> {
        let refused = |fault| {
            let offer = meant(text, limits).map(|number| as_marked(trimmed(number), text));
            let offer = offer.or_else(|| field.meant_metric(text, limits));
            self.refuse(field, number_refused(fault, field), offer);
        };
        checked(text, field, limits).map_err(refused).ok()
    }

    fn whole_or_none(
        &mut self,
        field: Field,
        units: &[&str],
        refused: &dyn Fn(u16) -> Option<String>,
    ) -> Option<u16> {
        let read = |text: &str| match whole(text.trim(), units) {
            Ok(None) => Ok(None),
            Ok(Some(count)) => refused(count).map_or(Ok(Some(count)), Err),
            Err(NotWhole) => Err(words::not_whole(units.first().unwrap_or(&""), field.spec().start)),
        };
        read(self.bench.text(field)).unwrap_or_else(|message| {
            self.refuse(field, message, None);
            if self.is_demos_so_far(field) {
                self.unknown.push(field);
                return None;
            }
            read(self.good.text(field)).unwrap_or(None)
        })
    }

    /// Whether there is nothing good in a field but what only the demo's bike has.
    fn is_demos_so_far(&self, field: Field) -> bool {
        field.as_on_a().unwrap_or(field).start_owner() == Owner::Demo && !self.good.is_riders(field)
    }

    fn chosen(&mut self, field: Field) -> usize {
        let Kind::Choice(choices) = field.spec().kind else { return 0 };
        let place = |text: &str| choices.iter().position(|(value, _)| *value == text.trim());
        place(self.bench.text(field)).unwrap_or_else(|| {
            self.refuse(field, words::NONE_OF_THESE.to_owned(), None);
            place(self.good.text(field)).unwrap_or(0)
        })
    }

    /// Complains of a field and names its last good text as kept.
    fn refuse(&mut self, field: Field, message: String, offer: Option<String>) {
        let kept = match field.spec().words_for(self.good.text(field).trim()) {
            "" => None,
            text if is_bare(text) => Some(field.told(text)),
            text => Some(text.to_owned()),
        };
        self.complaints.push(Complaint { field, message, kept, offer });
    }

    pub(crate) fn window(&mut self, good: CadenceWindow) -> CadenceWindow {
        let [low, usual, high] = [Field::CadenceLow, Field::CadenceUsual, Field::CadenceHigh]
            .map(|field| self.quantity::<Cadence>(field));
        if low < usual && usual < high {
            return CadenceWindow { low, usual, high };
        }
        self.set_aside(Field::CadenceLow, low, good.low, words::CADENCE_NOT_LOWEST);
        self.set_aside(Field::CadenceUsual, usual, good.usual, words::CADENCE_NOT_BETWEEN);
        self.set_aside(Field::CadenceHigh, high, good.high, words::CADENCE_NOT_HIGHEST);
        good
    }

    /// Complains of a cadence that gives way to `kept`, unless something is wrong with it already.
    fn set_aside(&mut self, field: Field, typed: Cadence, kept: Cadence, message: &str) {
        if typed != kept && self.complaints.iter().all(|complaint| complaint.field != field) {
            let kept = as_marked(trimmed(kept.rpm()), self.bench.text(field));
            self.complain(field, message.to_owned(), field.told(&kept));
        }
    }

    /// Gears that the rider never uses. Those that the drivetrain does not have are told and left out.
    pub(crate) fn gears_off(&mut self, field: Field, drivetrain: &Drivetrain) -> GearSet {
        GearSet::parse(self.bench.text(field), drivetrain).unwrap_or_else(|error| {
            let good = GearSet::parse(self.good.text(field), drivetrain).unwrap_or_default();
            let kept: Vec<String> = good.gears(drivetrain).map(|gear| gear.to_string()).collect();
            let kept = (!kept.is_empty()).then(|| listed(&kept));
            self.complaints.push(Complaint { field, message: words::gear_set(&error), kept, offer: None });
            good
        })
    }

    /// A slope that riding and going on foot can be compared on.
    pub(crate) fn climb(&mut self, field: Field, good: Climb) -> Climb {
        let typed = self.bench.text(field).to_owned();
        let kept = |kept: Climb| field.told(&as_marked(trimmed(kept.percent()), &typed));
        self.read(field, good, kept, |text| {
            let percent = slope_percent(&dotted(text))
                .ok_or_else(|| words::not_a_number(&field.shown(field.spec().start)))?;
            Climb::new(percent).map_err(|error| words::no_climb(error.limits, percent < 0.0))
        })
    }

    /// Says what goes on in the place of a field in error that may be empty, where nothing good ever stood in it.
    pub(crate) fn keep_instead_of_none(&mut self, field: Field, value: String) {
        if let Some(complaint) = self.complaints.iter_mut().find(|it| it.field == field && it.kept.is_none())
        {
            complaint.kept = Some(value);
        }
    }

    /// What stands in a field.
    pub(crate) fn of_b(&self, field: Field) -> OfB<'b> {
        self.bench.of_b(field)
    }

    pub(crate) fn text(&self, field: Field) -> &str {
        self.bench.text(field)
    }

    /// Notes what is wrong beyond a single field.
    pub(crate) fn standing_for(&self, side: Side, of_a: Field) -> Field {
        self.bench.standing_for(side, of_a)
    }

    /// Complains of a field of which nothing was complained before.
    pub(crate) fn complain_once(&mut self, field: Field, message: String, kept: String) {
        if self.complaints.iter().all(|complaint| complaint.field != field) {
            self.complain(field, message, kept);
        }
    }

    pub(crate) fn complain(&mut self, field: Field, message: String, kept: String) {
        self.complaints.push(Complaint { field, message, kept: Some(kept), offer: None });
    }
}

/// What was made of a number within its limits.
#[expect(clippy::expect_used, reason = "whoever calls this has checked the number against the same limits")]
fn sure<T>(made: Result<T, OutOfLimits>) -> T {
    made.expect("a number within its limits")
}

/// What keeps a text from being a number within its limits.
#[derive(Clone, Copy)]
enum NumberFault {
    NotANumber,
    Outside(&'static Limits),
}

impl From<OutOfLimits> for NumberFault {
    fn from(error: OutOfLimits) -> Self {
        Self::Outside(error.limits)
    }
}

fn number_refused(fault: NumberFault, field: Field) -> String {
    match fault {
        NumberFault::NotANumber => words::not_a_number(&field.shown(field.spec().start)),
        NumberFault::Outside(limits) => words::outside(&field.range(limits)),
    }
}

/// A number within its limits. A pressure may have psi behind it.
fn checked(text: &str, field: Field, limits: &'static Limits) -> Result<f64, NumberFault> {
    let text = text.trim();
    let small = text.to_ascii_lowercase();
    match small.strip_suffix("psi").filter(|_| field.is_pressure()) {
        Some(psi) => Ok(Pressure::from_psi(number(psi.trim_end(), field)?)?.bar()),
        None => Ok(limits.check(number(text, field)?)?),
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

/// A typed number: a decimal comma, a true minus sign and a unit of the same kind behind it are understood.
fn number(text: &str, field: Field) -> Result<f64, NumberFault> {
    decimal_in(&dotted(text), field.spec().unit).ok_or(NumberFault::NotANumber)
}

/// A number with the decimal mark that its field was typed with.
fn as_marked(number: String, typed: &str) -> String {
    if typed.contains(',') { number.replace('.', ",") } else { number }
}
