//! The workshop sheet round what the sections give to it.

use crate::side::Side;

/// What the page to print is called.
pub(crate) const PAPER: &str = "Workshop sheet";
/// Over a sheet that is nobody's.
pub(crate) const EXAMPLE: &str = "EXAMPLE: the demo’s bike and rider, not yours";
/// What is written in by hand.
pub(crate) const BLANKS: [&str; 3] = ["Bike", "Rider", "Date"];
/// Over what to check.
pub(crate) const CHECKS: &str = "Before riding";
/// What comes before any number.
pub(crate) const LIMITS: &str = "Makers’ limits, your organiser’s rules and a mechanic’s look at the real bike come before any number here.";
/// Where the paper had no room for all of it.
pub(crate) const SPARED: &str =
    "To keep this on one page, what is open or least needed was left out; it is on the page and in the text.";
/// Before the address that holds the bench.
pub(crate) const LINK: &str = "This set-up again: ";
/// In place of the page's address, where the page is a file.
pub(crate) const BEHIND_ADDRESS: &str = "put this behind the address of the Remount page: ";
/// What that address does not hold.
pub(crate) const NOT_IN_LINK: &str = "The recorded course is not in that link: keep its file.";

/// The set-ups it is for.
pub(crate) const fn setups(chosen: Option<Side>) -> &'static str {
    match chosen {
        None => "Set-ups A and B",
        Some(Side::A) => "Set-up A",
        Some(Side::B) => "Set-up B",
    }
}
