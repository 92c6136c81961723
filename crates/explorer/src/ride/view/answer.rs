//! “Ride or run?”: the answer in sentences.

use crate::ride::section::RideSection;
use crate::ride::view::climb;
use crate::ride::words::{answer as words, width};
use crate::side::Side;
use maud::{Markup, html};

/// Below which speed no gear is low enough, below which running wins, and what to do on this climb.
#[must_use]
pub(crate) fn answer(report: &RideSection) -> Markup {
    html! {
        p { (words::gear_limit(report)) " " (words::running_limit(report)) }
        @if report.ride.may_turn() {
            p.stale aria-busy="true" { (climb::answer(report)) }
        } @else {
            p { (climb::answer(report)) }
        }
    }
}

/// The climb in full, and the same by slopes.
#[must_use]
pub(crate) fn why(report: &RideSection) -> Markup {
    let is_before = report.ride.may_turn();
    html! {
        p class=[is_before.then_some("stale")] aria-busy=[is_before.then_some("true")] { (climb::why(report)) }
        p { (by_slope(report)) }
        p.quiet { (width::counts(&report.ride)) }
    }
}

/// The same by slopes, at the sustained power.
fn by_slope(report: &RideSection) -> Markup {
    let ride = &report.ride;
    html! {
        (words::ends(report)) " "
        @for spun in ride.spun_out() { (words::spun_out(&spun)) " " }
        @if let Some(helps) = ride.lower_gear_helps() { (words::lower_gear(&helps)) " " }
        (words::running(Side::BOTH.map(|side| ride.running_from(side)))) " " (words::difference(ride.difference())) " " (words::doubt(report))
    }
}
