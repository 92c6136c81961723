//! Why parts do not go together.

/// The first thing that keeps parts from going together, in the order in which they are asked: what no other derailleur would mend
/// comes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Lack {
    /// The largest ring does not clear the frame.
    Frame,
    /// The shifter has another number of clicks than the cassette has sprockets.
    SprocketCount,
    /// No front derailleur of the box shifts the rings, or they differ by more than is stated with the rear derailleur.
    Rings,
    /// The derailleur does not reach over the largest sprocket.
    LargestSprocket,
    /// It does not come near enough to the smallest.
    SmallestSprocket,
    /// Its cage is too short: the chain would hang in gears that are wanted.
    Cage,
    /// Wheels would run into each other, so no chain can run there.
    Wheels,
}

impl Lack {
    /// Every one, as they are asked.
    pub const ALL: [Self; 7] = [
        Self::Frame,
        Self::SprocketCount,
        Self::Rings,
        Self::LargestSprocket,
        Self::SmallestSprocket,
        Self::Cage,
        Self::Wheels,
    ];
}
