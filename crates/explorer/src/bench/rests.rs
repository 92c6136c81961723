//! Fields that several answers rest on.

use crate::bench::field::{Field, Group};

/// Whether a field says which rings and sprockets there are.
pub(crate) fn is_drivetrain(field: Field) -> bool {
    matches!(field.spec().group, Group::SetupA | Group::SetupB)
}

/// Whether everything that is ridden rests on a field.
pub(crate) fn is_ridden(field: Field) -> bool {
    is_drivetrain(field) || field == Field::CrossCrank || field.spec().group == Group::Wheel
}
