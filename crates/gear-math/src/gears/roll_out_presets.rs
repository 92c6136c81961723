//! Roll-out limits of federations.

use crate::gears::roll_out_limit::RollOutLimit;

/// A limit from a federation's rule book.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RollOutPreset {
    /// Whose rule it is.
    pub federation: &'static str,
    /// Kind of racing.
    pub discipline: &'static str,
    /// Riders it holds for.
    pub category: &'static str,
    /// The limit.
    pub limit: RollOutLimit,
    /// Article of the rule book, where known.
    pub article: Option<&'static str>,
    /// Year of the text and how far it is known to be in force.
    pub status: &'static str,
}

const KNWU_TABLE: &str = "federation table as reprinted by a club, year not stated: ask before relying on it";
const KNWU_NEWCOMERS: &str = "as printed for a youth stage race, year not stated: ask before relying on it";
const KEPT_2023: &str = "kept for national races in 2023";
const AUSTRALIA_2020: &str = "technical regulations of 2020";
const USA_TABLE: &str = "text of about 2014 to 2018: ask before relying on it";

impl RollOutPreset {
    /// Limits that nothing known here has withdrawn or changed; the cyclo-cross ones first.
    ///
    /// Left out: UCI 2.2.023 (juniors, 7.93 m), withdrawn on 1 January 2023; the UCI trial of 10.46 m, stopped in
    /// October 2025; the youth limits of British Cycling, whose rule was rewritten on 1 March 2025. Apart from the
    /// Dutch youth table, no rule book is known to limit the gears of cyclo-cross bicycles.
    pub const ALL: &'static [Self] = &[
        Self::new("KNWU", "cyclo-cross", "youth 1-2", 5.22, None, KNWU_TABLE),
        Self::new("KNWU", "cyclo-cross", "youth 3-4", 5.52, None, KNWU_TABLE),
        Self::new("KNWU", "cyclo-cross", "youth 5-6", 5.87, None, KNWU_TABLE),
        Self::new("KNWU", "cyclo-cross", "youth 7", 6.26, None, KNWU_TABLE),
        Self::new("KNWU and Belgian Cycling", "road", "junior", 7.93, None, KEPT_2023),
        Self::new("Cycling Australia", "road and track", "U19", 7.93, Some("3.6.01"), AUSTRALIA_2020),
        Self::new("Cycling Australia", "road and track", "U17", 7.0, Some("3.6.01"), AUSTRALIA_2020),
        Self::new("Cycling Australia", "road and track", "U15", 6.0, Some("3.6.01"), AUSTRALIA_2020),
        Self::new("Cycling Australia", "road and track", "U13", 5.5, Some("3.6.01"), AUSTRALIA_2020),
        Self::new("Cycling Australia", "road and track", "U11", 5.5, Some("3.6.01"), AUSTRALIA_2020),
        Self::new("USA Cycling", "road", "10-18", 7.93, None, USA_TABLE),
        Self::new("USA Cycling", "track", "15-16", 6.78, None, USA_TABLE),
        Self::new("USA Cycling", "track", "13-14", 6.36, None, USA_TABLE),
        Self::new("USA Cycling", "track", "10-12", 6.0, None, USA_TABLE),
        Self::new("KNWU", "road and track", "youth 1-2", 5.46, None, KNWU_TABLE),
        Self::new("KNWU", "road and track", "youth 3-4", 5.78, None, KNWU_TABLE),
        Self::new("KNWU", "road and track", "youth 5-6", 6.14, None, KNWU_TABLE),
        Self::new("KNWU", "road and track", "youth 7", 6.55, None, KNWU_TABLE),
        Self::new("KNWU", "road", "newcomers (15-16)", 7.01, None, KNWU_NEWCOMERS),
    ];

    const fn new(
        federation: &'static str,
        discipline: &'static str,
        category: &'static str,
        limit_m: f64,
        article: Option<&'static str>,
        status: &'static str,
    ) -> Self {
        Self { federation, discipline, category, limit: RollOutLimit::listed(limit_m), article, status }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_preset_is_a_limit_that_could_be_typed() {
        for preset in RollOutPreset::ALL {
            assert_eq!(RollOutLimit::new(preset.limit.m()), Ok(preset.limit));
        }
    }
}
