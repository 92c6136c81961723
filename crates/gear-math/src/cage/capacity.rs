//! How much chain the cage of the rear derailleur has to take up.

use crate::gears::{Drivetrain, Gear};

impl Drivetrain {
    /// Total capacity that keeps the chain tight in every gear, in teeth.
    ///
    /// # Formula
    /// (largest ring − smallest ring) + (largest sprocket − smallest sprocket).
    ///
    /// The chain runs half-way round each toothed wheel, so a tooth more or less on either takes or frees half a link:
    /// 6.35 mm. Against the full geometry of the chain's path the sum is right to about half a tooth. Whole links
    /// cost more: only with four teeth to spare is there surely a whole, even number of links that suits every gear.
    ///
    /// # Example
    /// ```
    /// use gear_math::Drivetrain;
    /// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    /// assert_eq!(bike.needed_capacity(), 13 + 21);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn needed_capacity(&self) -> u16 {
        self.chainset.difference() + self.cassette.spread()
    }

    /// Teeth of slack the cage has to take up in `gear`, counted from largest ring with largest sprocket, where it
    /// takes up none: (largest ring − ring) + (largest sprocket − sprocket).
    ///
    /// Largest with largest is where the count starts because the chain's length is set there and that gear is never
    /// to be given away: a chain too short for it locks, and tears off the derailleur or bends the hanger, whereas one
    /// too long for smallest with smallest only hangs and rattles.
    #[must_use]
    pub fn slack(&self, gear: Gear) -> u16 {
        let front = self.chainset.largest().teeth().saturating_sub(gear.ring.teeth());
        front + self.cassette.largest().teeth().saturating_sub(gear.sprocket.teeth())
    }
}
