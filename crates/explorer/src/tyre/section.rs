//! What the section is written and drawn from.

use crate::bench::field::{Field, Group};
use crate::bench::owners::Owners;
use crate::layout::line::Look;
use crate::rings::report::RingsReport;
use crate::tyre::report::TyreReport;
use std::rc::Rc;

/// The section on tyre and pressure, before it is put in words.
#[derive(Debug)]
pub struct TyreSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Tyre, rim and pressure.
    pub tyre: Rc<TyreReport>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

impl TyreSection {
    /// How a verdict that is well stands out.
    pub(crate) fn well(&self) -> Look {
        Look::well(self.owners.rests_on_demo(rests_on))
    }
}

/// Whether the answer rests on a field.
pub(crate) fn rests_on(field: Field) -> bool {
    let weighs = matches!(field, Field::BodyMass | Field::KitMass | Field::BikeMass);
    weighs || matches!(field.spec().group, Group::Wheel | Group::Tyre)
}
