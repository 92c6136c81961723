//! What there is to check by hand.

/// What a check is about, in the order in which they are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Concern {
    /// Chain, cage and spokes.
    Drivetrain,
    /// Tyre and rim.
    Wheels,
    /// Stem, post, bolts and brakes.
    Cockpit,
    /// The course and its ground.
    Course,
    /// How to measure, which is nothing to tick off.
    Measuring,
}

impl Concern {
    /// All of them.
    pub(crate) const ALL: [Self; 5] =
        [Self::Drivetrain, Self::Wheels, Self::Cockpit, Self::Course, Self::Measuring];

    /// Whether it is something to tick off.
    pub(crate) const fn is_ticked(self) -> bool {
        !matches!(self, Self::Measuring)
    }
}
