//! Chainset and cassette together.

use crate::gears::cassette::Cassette;
use crate::gears::chainset::Chainset;
use crate::gears::gear::Gear;

/// The rings and sprockets of one bicycle: every gear it has.
///
/// # Example
/// ```
/// use gear_math::Drivetrain;
/// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// assert_eq!(bike.gears().count(), 16);
/// assert_eq!(bike.lowest().to_string(), "31×32");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Drivetrain {
    /// The rings.
    pub chainset: Chainset,
    /// The sprockets.
    pub cassette: Cassette,
}

impl Drivetrain {
    /// Every gear, ring by ring from the largest, each from the smallest sprocket to the largest.
    pub fn gears(&self) -> impl Iterator<Item = Gear> + '_ {
        self.chainset
            .rings()
            .iter()
            .flat_map(|&ring| self.cassette.sprockets().iter().map(move |&sprocket| Gear { ring, sprocket }))
    }

    /// Rings × sprockets.
    #[must_use]
    pub fn gear_count(&self) -> usize {
        self.chainset.rings().len() * self.cassette.sprockets().len()
    }

    /// Smallest ring with largest sprocket.
    #[must_use]
    pub fn lowest(&self) -> Gear {
        Gear { ring: self.chainset.smallest(), sprocket: self.cassette.largest() }
    }

    /// Largest ring with smallest sprocket.
    #[must_use]
    pub fn highest(&self) -> Gear {
        Gear { ring: self.chainset.largest(), sprocket: self.cassette.smallest() }
    }
}
