//! Heads of the form.

/// What unfolds the finer settings of riding and running.
pub(crate) const FINER: &str = "Finer settings: your body, the ground, the limits";
/// Part of riding and running.
pub(crate) const RIDER: &str = "Rider and burden";
/// Part of riding and running.
pub(crate) const GROUND: &str = "Ground and air";
/// Part of riding and running.
pub(crate) const LIMITS: &str = "What ends riding";
/// Part of riding and running.
pub(crate) const EFFORT: &str = "Short efforts";
