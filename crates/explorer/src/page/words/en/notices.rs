//! What is wrong beside a field, and what that leaves out.

use crate::bench::field::{Group, Spec};
use crate::bench::owner::Owner;
use crate::bench::words::complaints::NONE;
use crate::words::small;

/// Whose bench the demo's is.
pub(crate) const DEMO: &str = "The demo: Marit’s road-minded bike as it came (A) and the rings and cassette from her box of parts (B), for a lap of the Autumn meadow. Type your own over it.";

/// Above a bench that was kept when the page was left.
pub(crate) const AS_LEFT: &str = "This is your bench as you left it in this browser. “Start fresh” brings back the demo; Undo takes that back.";

/// On the button that makes a field of B as A’s again.
pub(crate) const AS_ON_A: &str = "as on A";

/// The same read aloud.
pub(crate) fn as_on_a(label: &str) -> String {
    format!("B’s {}: as on A", small(label))
}

/// Of a field of B that is empty.
pub(crate) const AS_A: &str = "as A";

/// Of any other field that is empty.
pub(crate) const LEFT_EMPTY: &str = "left empty";

/// In a field of B that is empty: what it has from A.
pub(crate) fn as_a(value: &str) -> String {
    if value.is_empty() { AS_A.to_owned() } else { format!("as A: {value}") }
}

/// In an empty field of B for a measure of a part that is not A’s.
pub(crate) const NOT_KNOWN: &str = "not known";

/// Above an answer that goes on without a field.
pub(crate) fn left_aside(field: &Spec, kept: &str) -> String {
    let label = label(field);
    format!("“{label}” is left aside; this goes on {kept}.")
}

/// A field's label, with the set-up or the bike it belongs to.
fn label(field: &Spec) -> String {
    let label = field.label;
    match field.group {
        Group::SetupA => format!("A: {label}"),
        Group::SetupB | Group::BikeB => format!("B: {label}"),
        Group::RoadBike => format!("Road bike: {label}"),
        Group::CrossBike => format!("Cross bike: {label}"),
        _ => label.to_owned(),
    }
}

/// Beside a field in error.
pub(crate) fn goes_on(kept: &str) -> String {
    format!("The page goes on {kept}.")
}

/// What the page goes on with in place of a field in error, and whose that is.
pub(crate) fn kept(owner: Owner, kept: Option<&str>) -> String {
    let kept = kept.unwrap_or(NONE);
    match owner {
        Owner::Unknown => "without it".to_owned(),
        Owner::Demo => format!("with {kept}, the demo’s"),
        Owner::Rider => format!("with {kept}, your last"),
        Owner::Usual => format!("with {kept}"),
    }
}

/// A value that was perhaps meant, on the button that writes it.
pub(crate) fn offer(value: &str) -> String {
    format!("{value}?")
}

/// How many sprockets a cassette has, on the button that writes it.
pub(crate) fn sprockets(count: usize) -> String {
    format!("{count} sprockets")
}

/// A cassette of two, on the button that writes it.
pub(crate) fn only(smallest: &str, largest: &str) -> String {
    format!("only {smallest} and {largest}")
}
