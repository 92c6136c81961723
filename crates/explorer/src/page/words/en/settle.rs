//! What to find out next.

use crate::bench::field::Field;
use crate::layout::line::{Line, link_to};
use crate::side::Side;
use crate::words::small;

/// Over the list.
pub(crate) const TITLE: &str = "What would settle most";

/// A field, and what it decides.
pub(crate) fn link(field: Field, what: &str) -> Line {
    let label = small(field.spec().label);
    format!("{}: {what}", link_to(field, &label)).into()
}

/// The cage.
pub(crate) fn cage(side: Side) -> String {
    format!("decides {side}’s cage")
}

/// The race's gauge.
pub(crate) fn tyre() -> String {
    "decides the race limit".to_owned()
}

/// What only the rider knows.
pub(crate) fn rider(field: Field) -> String {
    match field {
        Field::Power => "decides where riding pays, and the lap",
        Field::BodyMass => "climb, lap and pressure go by it",
        Field::Course => "the lap is of an invented course",
        _ => "the position is not yours",
    }
    .to_owned()
}
