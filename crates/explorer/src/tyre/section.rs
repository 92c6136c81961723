//! What the section is written and drawn from.

use crate::bench::field::{Field, Group};
use crate::bench::owners::Owners;
use crate::layout::line::Look;
use crate::rings::report::RingsReport;
use crate::side::Side;
use crate::tyre::report::TyreReport;
use std::rc::Rc;

/// The section on tyre and pressure, before it is put in words.
#[derive(Debug)]
pub struct TyreSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Tyre, rim and pressure of the set-up that is spoken of.
    pub tyre: Rc<TyreReport>,
    /// The same of B where anything of it is not as on A.
    pub of_b: Option<Rc<TyreReport>>,
    /// The set-up that is spoken of; both where they are alike.
    pub side: Option<Side>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

impl TyreSection {
    /// What is said of both, or of each where they differ.
    pub(crate) fn each(&self) -> Vec<Self> {
        let Some(of_b) = &self.of_b else { return vec![self.of(None, &self.tyre)] };
        vec![self.of(Some(Side::A), &self.tyre), self.of(Some(Side::B), of_b)]
    }

    fn of(&self, side: Option<Side>, tyre: &Rc<TyreReport>) -> Self {
        let (rings, owners) = (Rc::clone(&self.rings), Rc::clone(&self.owners));
        Self { rings, tyre: Rc::clone(tyre), of_b: None, side, owners }
    }

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
