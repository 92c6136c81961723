//! What the workshop sheet has of the gears.

use crate::units::{self, GearScale, Units};
use crate::words::{capital, gears_by};

pub(crate) const TITLE: &str = "Gears";
pub(crate) const RINGS: &str = "Rings";
pub(crate) const CASSETTE: &str = "Cassette";
pub(crate) const ROLL_OUT: &str = "Roll-out";
pub(crate) const IN_THE_TABLES: &str = "In the tables";
pub(crate) const LEGEND: &str = "( ) cross-chained, × never use";
pub(crate) const LEGEND_WITHOUT_CAGE: &str =
    "( ) cross-chained, × switched off; what the cage forbids is not known";

/// Over the gears, what they are told by.
pub(crate) fn development() -> String {
    let (by, unit) = (capital(gears_by(Units::now().gears)), units::gear_unit());
    if Units::now().gears == GearScale::Development { format!("{by}, {unit}") } else { by }
}

/// A roll-out that was measured.
pub(crate) fn measured(roll_out: &str) -> String {
    format!("{roll_out} measured")
}

/// A roll-out that was not.
pub(crate) fn by_size(roll_out: &str) -> String {
    format!("{roll_out}, by the tyre’s size")
}

/// A cassette typed by its name.
pub(crate) fn usual_for(name: &str, cassette: &str) -> String {
    format!("{cassette}, usual for {name}: count yours")
}
