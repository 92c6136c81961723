//! Whose value stands in a field.
//!
//! A field is the rider's once it was typed in, claimed, or named by a link. Until then it holds what it started with: a usual
//! value, or one that only the demo's bike and rider have.

/// Whose value a field holds, the surest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Owner {
    /// The rider's own.
    Rider,
    /// Common practice or an estimate, as the field's help says, or left open.
    Usual,
    /// The demo's, which is true of no other bike and rider.
    Demo,
    /// Nobody's: left empty or not understood, with nothing of the rider's to go on with.
    Unknown,
}
