//! A tyre out of a box.

use crate::parts::rides::BoxRider;
use crate::wheel::{Construction, MountedWidth, TyreSize};

/// A tyre out of a box, on both wheels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoxTyre {
    /// By what it is called.
    pub size: TyreSize,
    /// How it holds its air, where that is said; it has no part in a lap.
    pub construction: Option<Construction>,
}

impl BoxTyre {
    /// The same rider on these tyres: another roll-out, and where the ground is soft another rolling resistance by their width, taken
    /// as what they are sold by. What they weigh and how they hold is not known.
    #[must_use]
    pub fn under(&self, rider: &BoxRider) -> BoxRider {
        let mut shod = *rider;
        let bike = match &mut shod {
            BoxRider::Reserve(setup) => &mut setup.lap.bike,
            BoxRider::Steady(setup) => &mut setup.bike,
        };
        bike.wheel = self.size.circumference();
        bike.tyre = MountedWidth::new(self.size.width.mm()).unwrap_or(bike.tyre);
        shod
    }
}
