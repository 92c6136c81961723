//! “Ride or run?”: the answer in sentences.

use crate::ride::section::RideSection;
use crate::ride::words::{answer as words, width};
use crate::side::Side;
use maud::{Markup, html};

/// Below which speed no gear is low enough, below which running wins, this climb, and by which slopes.
#[must_use]
pub(crate) fn answer(report: &RideSection) -> Markup {
    html! {
        p { (words::gear_limit(report)) " " (words::running_limit(report)) }
        @if report.ride.may_turn() {
            p.stale aria-busy="true" { (crate::ride::view::climb::answer(report)) }
        } @else {
            p { (crate::ride::view::climb::answer(report)) }
        }
        p { (by_slope(report)) }
        p.quiet { (width::counts(&report.ride)) }
    }
}

/// The same by slopes, at the sustained power.
fn by_slope(report: &RideSection) -> Markup {
    let ride = &report.ride;
    html! {
        (words::ends(report)) " "
        @for spun in ride.spun_out() { (words::spun_out(report, &spun)) " " }
        @if let Some(helps) = ride.lower_gear_helps() { (words::lower_gear(&helps)) " " }
        (words::running(Side::BOTH.map(|side| ride.running_from(side)))) " " (words::difference(ride.difference())) " " (words::doubt(report))
    }
}
