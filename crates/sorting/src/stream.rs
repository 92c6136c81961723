//! What the bytes of a module are sorted by.

/// Bytes that are alike. A sorted module has the lengths of all, then all, in this order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stream {
    /// The module as far as its functions.
    Before,
    /// How many functions there are, and their local variables.
    Locals,
    /// Which instruction it is.
    Instructions,
    /// Types of blocks.
    Blocks,
    /// How far out is branched to.
    Branches,
    /// Functions called.
    Calls,
    /// Local variables read and written.
    Variables,
    /// Offsets in memory.
    Offsets,
    /// Numbers of 32 bits.
    Integers,
    /// The longer ones of them, most of which are addresses.
    Addresses,
    /// Numbers of 64 bits.
    LongIntegers,
    /// Numbers with a point.
    Floats,
    /// What there is little of.
    Others,
    /// The module after its functions.
    After,
}

impl Stream {
    /// How many there are.
    pub(crate) const COUNT: usize = Self::After as usize + 1;
}
