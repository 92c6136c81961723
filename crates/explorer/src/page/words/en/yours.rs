//! What is not the rider's.

use crate::bench::field::{Field, Group};
use crate::layout::line::{Line, link_to};
use crate::words::small;

/// A part of the bench, as it is listed.
pub(crate) const SETUP_A: &str = "set-up A";
/// A part of the bench, as it is listed.
pub(crate) const SETUP_B: &str = "set-up B";
/// A part of the bench, as it is listed.
pub(crate) const WHEEL: &str = "wheel";
/// A part of the bench, as it is listed.
pub(crate) const DERAILLEURS: &str = "derailleurs";
/// A part of the bench, as it is listed.
pub(crate) const RIDE: &str = "rider and climb";
/// A part of the bench, as it is listed.
pub(crate) const COURSE: &str = "course";
/// A part of the bench, as it is listed.
pub(crate) const TYRE: &str = "tyre and rim";
/// A part of the bench, as it is listed.
pub(crate) const POSITION: &str = "position";

/// Beside a field that holds the demo's value.
pub(crate) const DEMOS: &str = "demo’s";
/// Beside a field whose value nobody knows.
pub(crate) const NOT_KNOWN: &str = "not known";
/// Beside a field that holds what is usual.
pub(crate) const USUAL: &str = "usual";
/// On the button that takes the demo's course, which nobody has ridden, for the rider's.
pub(crate) const TAKE_THIS_COURSE: &str = "Take this invented course";

/// On the button that makes the demo's values in a part of the bench the rider's.
pub(crate) fn these_are_mine(part: &str) -> String {
    format!("These are mine: {part}")
}

/// A part, with the number of its fields that are not the rider's, and a way to the first.
pub(crate) fn part(name: &str, fields: &[Field]) -> String {
    let link = link_to(fields[0], name);
    format!("{link} ({})", fields.len())
}

/// Parts or fields in a row.
pub(crate) fn in_a_row(parts: &[String]) -> String {
    parts.join(", ")
}

/// That so many more are not named.
pub(crate) fn and_more(named: &str, more: usize) -> String {
    format!("{named} and {more} more")
}

/// The parts of the bench that are not all the rider's.
pub(crate) fn parts(parts: &str) -> Line {
    format!("Not yours yet: {parts}.").into()
}

/// Below an answer: the fields that nobody knows.
pub(crate) fn unknown(fields: &str) -> Line {
    format!("Not known: {fields}.").into()
}

/// Below an answer: the fields that hold the demo's values.
pub(crate) fn demos(fields: &str) -> Line {
    format!("Not yours yet: {fields}. Hatched figures rest on the demo’s.").into()
}

/// A field's label as it reads in a sentence, with a way there.
pub(crate) fn field(field: Field) -> String {
    link_to(field, &of_whom(field, &small(field.spec().label)))
}

/// A field's label, with the set-up or the bike it belongs to.
pub(crate) fn named(field: Field) -> String {
    of_whom(field, field.spec().label)
}

fn of_whom(field: Field, label: &str) -> String {
    match field.spec().group {
        Group::SetupA => format!("A’s {}", small(label)),
        Group::SetupB | Group::BikeB => format!("B’s {}", small(label)),
        Group::CrossBike => format!("cross bike’s {}", small(label)),
        _ => label.to_owned(),
    }
}
