//! The fields of the first screen.

use crate::bench::field::Field;

/// Parts of both bikes: A's field and B's.
pub(crate) const PARTS: [[Field; 2]; 6] = [
    [Field::RingsA, Field::RingsB],
    [Field::CassetteA, Field::CassetteB],
    [Field::Capacity, Field::CapacityB],
    [Field::LargestSprocket, Field::LargestSprocketB],
    [Field::Tyre, Field::TyreB],
    [Field::ChainLinks, Field::ChainLinksB],
];
/// The rider.
pub(crate) const RIDER: [Field; 4] = [Field::BodyMass, Field::Power, Field::CadenceLow, Field::CadenceUsual];
/// The bank.
pub(crate) const BANK: [Field; 3] = [Field::Ground, Field::Slope, Field::ClimbLength];
/// The lap.
pub(crate) const LAP: [Field; 1] = [Field::Course];

impl Field {
    /// Whether it stands on the first screen, and so in no other form.
    pub(crate) fn is_first(self) -> bool {
        PARTS.as_flattened().contains(&self)
            || RIDER.contains(&self)
            || BANK.contains(&self)
            || LAP.contains(&self)
    }
}
