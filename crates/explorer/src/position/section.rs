//! What the section is written and drawn from.

use crate::bench::field::{Field, Group};
use crate::bench::owner::Owner;
use crate::bench::owners::Owners;
use crate::layout::line::Look;
use crate::position::report::PositionReport;
use std::rc::Rc;

/// The section on the position, before it is put in words.
#[derive(Debug)]
pub struct PositionSection {
    /// The position.
    pub position: Rc<PositionReport>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

impl PositionSection {
    /// Words, marked where one of `fields` holds the demo's value.
    pub(crate) fn marked(&self, fields: &[Field], words: &str) -> String {
        if self.owners.least(fields) == Owner::Demo { Look::Demo.part(words) } else { words.to_owned() }
    }

    /// How a verdict that is well stands out.
    pub(crate) fn well(&self) -> Look {
        Look::well(self.owners.rests_on_demo(rests_on))
    }
}

/// Whether the answer rests on a field.
pub(crate) fn rests_on(field: Field) -> bool {
    matches!(field.spec().group, Group::RoadBike | Group::CrossBike | Group::CrossFrame)
}
