//! Measuring rims, mounted widths, race limits and rims.
//!
//! Labels and rims: ETRTO and ISO 5775-1 as quoted by makers and reprints. Linear rule: UN tyre regulations, 6.1.1.1.
//! Arc model: computed independently. Readings and rules: as published, each row with its source.

use gear_math::OutOfLimits;
use gear_math::wheel::{
    HOOKED_RIMS, HOOKLESS_RIMS, LabelEdition, MEASURING_RIMS_2020, NominalWidth, RACE_RULES, RaceLimit,
    RimCaution, RimInnerWidth, RimRow, TyreWidth, WidthVerdict, rim_cautions,
};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

/// Tables in tenths of a millimetre or finer; the sums are exact.
const ROUNDING_MM: f64 = 0.0051;

#[derive(Deserialize)]
struct MeasuringRim {
    section_from_mm: f64,
    section_to_mm: f64,
    measuring_rim_inner_mm: String,
    edition: String,
}

impl MeasuringRim {
    fn check(&self) -> Result<(), String> {
        match self.measuring_rim_inner_mm.split_once(" x section") {
            None => self.check_table(),
            Some((factor, _)) => self.check_ends(LabelEdition::OlderIso, |section| {
                factor.parse().map(|factor: f64| factor * section)
            }),
        }
    }

    fn check_table(&self) -> Result<(), String> {
        let expected: f64 = self.measuring_rim_inner_mm.parse().map_err(|_| "rim is not a number")?;
        let row = MEASURING_RIMS_2020
            .iter()
            .find(|row| close("from", row.from_mm, self.section_from_mm, 0.0).is_ok())
            .ok_or_else(|| format!("no row from {}", self.section_from_mm))?;
        close("to", row.to_mm, self.section_to_mm, 0.0)?;
        close("rim", row.rim.mm(), expected, 0.0)?;
        self.check_ends(LabelEdition::Etrto2020, |_| Ok(expected))
    }

    /// Looks up both ends of the row, as far as tyres of that width can be typed.
    fn check_ends(
        &self,
        edition: LabelEdition,
        expected: impl Fn(f64) -> Result<f64, std::num::ParseFloatError>,
    ) -> Result<(), String> {
        assert!(!self.edition.is_empty());
        [self.section_from_mm, self.section_to_mm].into_iter().try_for_each(|section| {
            let Ok(width) = NominalWidth::new(section) else { return Ok(()) };
            let rim = expected(section).map_err(|error| error.to_string())?;
            close("measuring rim", edition.measuring_rim(width).mm(), rim, 1e-9)
        })
    }
}

#[test]
fn knows_the_measuring_rims() {
    const FILE: &str = "tyre-measuring-rims.csv";
    check_all(FILE, &rows(FILE), 10, MeasuringRim::check);
}

#[derive(Deserialize)]
struct Width {
    construction: String,
    label_mm: f64,
    measuring_rim_mm: Option<f64>,
    rim_inner_mm: Option<f64>,
    limit_mm: f64,
    linear_mm: f64,
    arc_mm: f64,
    verdict: String,
    chance_over_estimate: f64,
}

impl Width {
    fn width(&self) -> Result<TyreWidth, String> {
        let label = NominalWidth::new(self.label_mm).map_err(said)?;
        match (self.construction.as_str(), self.rim_inner_mm, self.measuring_rim_mm) {
            ("tubular", None, None) => Ok(TyreWidth::tubular(label)),
            ("wired", Some(rim), Some(measuring_rim)) => on_rim(label, rim, measuring_rim),
            other => Err(format!("no such tyre: {other:?}")),
        }
    }

    fn check(&self) -> Result<(), String> {
        let width = self.width()?;
        close("linear", width.mounted.mm(), self.linear_mm, ROUNDING_MM)?;
        close("arc", width.arc.mm(), self.arc_mm, 0.00051)?;
        let verdict = width.verdict(RaceLimit::new(self.limit_mm).map_err(said)?);
        let (expected, chances) = match self.verdict.as_str() {
            "likely within" => (WidthVerdict::LikelyWithin, 0.0..=0.2),
            "measure" => (WidthVerdict::Measure, 0.1..=0.8),
            "likely over" => (WidthVerdict::LikelyOver, 0.8..=1.0),
            other => return Err(format!("no such verdict: {other}")),
        };
        if verdict == expected && chances.contains(&self.chance_over_estimate) {
            Ok(())
        } else {
            Err(format!("found {verdict:?}, expected {expected:?}"))
        }
    }
}

fn on_rim(label: NominalWidth, rim: f64, measuring_rim: f64) -> Result<TyreWidth, String> {
    let rim = RimInnerWidth::new(rim).map_err(said)?;
    let measuring_rim = RimInnerWidth::new(measuring_rim).map_err(said)?;
    TyreWidth::on_rim(label, rim, measuring_rim).map_err(|error| error.to_string())
}

fn said(error: OutOfLimits) -> String {
    error.to_string()
}

#[test]
fn computes_mounted_widths_and_verdicts() {
    const FILE: &str = "tyre-width-examples.csv";
    check_all(FILE, &rows(FILE), 18, Width::check);
}

#[derive(Deserialize)]
struct Reading {
    label_mm: f64,
    rim_inner_mm: f64,
    measured_mm: f64,
    measuring_rim_assumed_mm: f64,
    linear_0p4_mm: f64,
    measured_minus_linear_mm: f64,
    arc_mm: f64,
    measured_minus_arc_mm: f64,
    source: String,
}

impl Reading {
    fn width(&self) -> Result<TyreWidth, String> {
        let label = NominalWidth::new(self.label_mm).map_err(said)?;
        on_rim(label, self.rim_inner_mm, self.measuring_rim_assumed_mm)
    }

    fn excess_mm(&self) -> f64 {
        self.width().map_or(f64::NAN, |width| self.measured_mm - width.mounted.mm())
    }

    fn check(&self) -> Result<(), String> {
        let width = self.width()?;
        close("linear", width.mounted.mm(), self.linear_0p4_mm, ROUNDING_MM)?;
        close("arc", width.arc.mm(), self.arc_mm, ROUNDING_MM)?;
        close("over linear", self.excess_mm(), self.measured_minus_linear_mm, ROUNDING_MM)?;
        close("over arc", self.measured_mm - width.arc.mm(), self.measured_minus_arc_mm, 2.0 * ROUNDING_MM)
    }
}

/// Readings in print exceed the rule; the bias that the answers name is theirs.
#[test]
fn reports_how_much_wider_published_readings_are() {
    const FILE: &str = "tyre-width-published.csv";
    let readings: Vec<Reading> = rows(FILE);
    check_all(FILE, &readings, 6, Reading::check);
    let excess: Vec<f64> = readings.iter().map(Reading::excess_mm).collect();
    for (reading, excess) in readings.iter().zip(&excess) {
        println!("{} on {}: {excess:+.2} mm, {}", reading.label_mm, reading.rim_inner_mm, reading.source);
    }
    let mean = excess.iter().sum::<f64>() / 6.0;
    close("mean excess", mean, 1.6, 0.05).unwrap();
    close("smallest excess", excess.iter().copied().fold(f64::INFINITY, f64::min), 0.3, 0.05).unwrap();
    close("largest excess", excess.iter().copied().fold(0.0, f64::max), 3.1, 0.05).unwrap();
}

#[derive(Deserialize)]
struct Combination {
    rim_inner_mm: f64,
    tyre_min_mm: f64,
    tyre_max_mm: Option<f64>,
    edition: String,
}

impl Combination {
    fn check(&self) -> Result<(), String> {
        let hookless = self.edition.contains("hookless");
        let table: &[RimRow] = if hookless { &HOOKLESS_RIMS } else { &HOOKED_RIMS };
        let row = table
            .iter()
            .find(|row| close("rim", row.rim.mm(), self.rim_inner_mm, 0.0).is_ok())
            .ok_or_else(|| format!("no row for rim {}", self.rim_inner_mm))?;
        close("narrowest", row.tyre_min_mm, self.tyre_min_mm, 0.0)?;
        if row.tyre_max_mm != self.tyre_max_mm {
            return Err(format!("widest: found {:?}, expected {:?}", row.tyre_max_mm, self.tyre_max_mm));
        }
        let tyre = NominalWidth::new(self.tyre_min_mm).map_err(said)?;
        let cautions = rim_cautions(tyre, row.rim, hookless);
        if cautions.contains(&RimCaution::NotForeseen) { Err("not foreseen".to_owned()) } else { Ok(()) }
    }
}

#[test]
fn knows_which_tyre_goes_on_which_rim() {
    const FILE: &str = "tyre-rim-combinations.csv";
    check_all(FILE, &rows(FILE), 7, Combination::check);
}

#[derive(Deserialize)]
struct Rule {
    body: String,
    limit_mm: Option<f64>,
    year: String,
}

impl Rule {
    /// A limit in print must be on offer, and a rule that may still hold must be listed.
    fn check(&self) -> Result<(), String> {
        let Some(limit_mm) = self.limit_mm else { return Ok(()) };
        let limit = RaceLimit::new(limit_mm).map_err(said)?;
        if !RaceLimit::CHOICES.contains(&limit) {
            return Err(format!("{limit_mm} mm cannot be chosen"));
        }
        let listed = RACE_RULES.iter().any(|rule| self.body.contains(rule.body) && rule.limit == limit);
        let past = self.year.starts_with("to ") || self.year.ends_with("-2019");
        let draft = self.year.contains("draft");
        if listed || past || draft {
            Ok(())
        } else {
            Err(format!("{} {limit_mm} mm is not listed", self.body))
        }
    }
}

#[test]
fn offers_every_limit_in_print() {
    const FILE: &str = "tyre-rules.csv";
    check_all(FILE, &rows(FILE), 10, Rule::check);
}
