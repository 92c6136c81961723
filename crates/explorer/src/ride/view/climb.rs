//! “Ride or run?”: what to do on the very climb that was asked about.

use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::climb as words;
use maud::{Markup, html};

/// The climb that was asked about.
#[must_use]
pub(crate) fn answer(report: &RideSection) -> Markup {
    let ride = &report.ride;
    html! {
        (words::advised(report))
        @if ride.sides.iter().any(RideSide::lap_may_differ) { " " (words::LAP_MAY_DIFFER) }
        @if let Some(from) = ride.slips_in_jerks_from() { " " (words::slips_in_jerks(from)) }
        @if let Some(from) = ride.lifts_in_jerks_from() { " " (words::lifts_in_jerks(from)) }
        @if ride.is_forced() { " " (words::FORCED) }
    }
}

/// What stands behind that.
#[must_use]
pub(crate) fn why(report: &RideSection) -> Markup {
    let ride = &report.ride;
    html! {
        (words::running(report)) " " (words::pays_up_to(report))
        @for why in words::otherwise(report) { " " (why) }
        @for worth in words::lower_gears(&ride.sides) { " " (worth) }
        @if ride.is_matter_of_momentum() { " " (words::RAMP) }
        @if let Some(wind) = ride.wind_m_s() { " " (words::wind(wind)) }
    }
}
