//! The choice of units.

use crate::units::Units;

/// What units are called together.
pub(crate) const METRIC: &str = "metric";
/// What units are called together.
pub(crate) const IMPERIAL: &str = "imperial";

/// On the button that opens the choice of units.
pub(crate) fn units(units: Units) -> String {
    let chosen = match units {
        _ if units.are_those_of(Units::METRIC) => METRIC,
        _ if units.are_those_of(Units::IMPERIAL) => IMPERIAL,
        _ => "own mix",
    };
    format!("Units: {chosen}")
}
