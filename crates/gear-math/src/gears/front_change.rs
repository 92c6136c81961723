//! What a change of ring alone does to the gear.

use crate::gears::cassette::Cassette;
use crate::gears::drivetrain::Drivetrain;
use crate::gears::gear::Gear;
use crate::gears::quantity::GearStep;
use crate::gears::toothed::{Chainring, Sprocket};
use core::cmp::Ordering;
use core::ops::RangeInclusive;

/// The change between two neighbouring rings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FrontChange {
    /// The ring with fewer teeth.
    pub smaller: Chainring,
    /// The ring with more teeth.
    pub larger: Chainring,
    /// Fewest and most sprockets by which the chain has to move to come back closest to the gear before the change,
    /// over all sprockets from which the cassette can make up for it fully; none when it cannot anywhere.
    pub rear_shifts: Option<RangeInclusive<usize>>,
}

impl FrontChange {
    /// How much higher the gear becomes on the same sprocket.
    #[must_use]
    pub fn step(&self) -> GearStep {
        GearStep::between(f64::from(self.smaller.teeth()), f64::from(self.larger.teeth()))
    }

    fn new(smaller: Chainring, larger: Chainring, cassette: &Cassette) -> Self {
        let counts = (0..cassette.sprockets().len()).filter_map(|at| make_up(smaller, larger, cassette, at));
        let rear_shifts = counts.fold(None, |range: Option<RangeInclusive<usize>>, n| {
            Some(range.map_or(n..=n, |range| n.min(*range.start())..=n.max(*range.end())))
        });
        Self { smaller, larger, rear_shifts }
    }
}

/// Sprockets to move after changing from `smaller` to `larger` on the sprocket at index `at`; of two that come back
/// equally close, the nearer.
fn make_up(smaller: Chainring, larger: Chainring, cassette: &Cassette, at: usize) -> Option<usize> {
    let before = Gear { ring: smaller, sprocket: cassette.sprockets()[at] };
    let after = |sprocket| Gear { ring: larger, sprocket };
    let further = &cassette.sprockets()[at..];
    after(cassette.largest()).cmp_ratio(before).is_le().then_some(())?;
    (0..further.len()).min_by(|&a, &b| cmp_distance(before, after(further[a]), after(further[b])))
}

/// Which of two gears lies further from `from` as a ratio, decided in whole teeth.
fn cmp_distance(from: Gear, a: Gear, b: Gear) -> Ordering {
    let (apart_a, apart_b) = (teeth_apart(from, a), teeth_apart(from, b));
    (apart_a.0 * apart_b.1).cmp(&(apart_b.0 * apart_a.1))
}

/// The factor between two gears, at least one, as a fraction of whole numbers.
fn teeth_apart(a: Gear, b: Gear) -> (u64, u64) {
    let product = |ring: Chainring, sprocket: Sprocket| u64::from(ring.teeth()) * u64::from(sprocket.teeth());
    let (first, second) = (product(a.ring, b.sprocket), product(b.ring, a.sprocket));
    (first.max(second), first.min(second))
}

impl Drivetrain {
    /// The changes between neighbouring rings, from the smallest ring up; none for a single ring.
    ///
    /// # Example
    /// ```
    /// use gear_math::Drivetrain;
    /// let bike = Drivetrain { chainset: "44/32".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    /// let change = bike.front_changes().next().unwrap();
    /// assert_eq!(change.step().percent(), 37.5);
    /// assert_eq!(change.rear_shifts, Some(2..=2));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn front_changes(&self) -> impl Iterator<Item = FrontChange> + '_ {
        self.chainset.rings().windows(2).rev().map(|pair| FrontChange::new(pair[1], pair[0], &self.cassette))
    }
}
