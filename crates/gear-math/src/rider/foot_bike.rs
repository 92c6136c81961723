//! How the bike goes along on foot.

/// How the bike goes along on foot. Over obstacles and steps it is always carried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum FootBike {
    /// Carried: its mass, times what carrying costs, counts as that of the body does.
    #[default]
    Carried,
    /// Pushed: the arms overcome its weight along the slope and its rolling resistance.
    Pushed,
    /// Whichever of the two is quicker for the same energy, on every slope and ground anew. Nobody has measured which that is in
    /// mud.
    Quicker,
}
