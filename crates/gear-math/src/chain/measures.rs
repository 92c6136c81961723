//! Lengths, angles and counts of the chain's path that a workshop can measure or read off.

use crate::quantity::{Limits, OutOfLimits};
use crate::quantity::{known, measured, nearest};
use core::fmt;

measured! {
    /// Bottom-bracket axle to rear axle, centre to centre, in millimetres.
    ChainstayLength(mm): "chainstay length", "mm", 350.0 ..= 550.0;
    /// How far the bottom-bracket axle lies below the rear axle, in millimetres; negative when above it.
    BottomBracketDrop(mm): "bottom-bracket drop", "mm", -40.0 ..= 120.0;
    /// Guide pulley axle to tension pulley axle, in millimetres: the length of the cage.
    PulleyCentres(mm): "distance between pulley centres", "mm", 10.0 ..= 150.0;
    /// Pitch circle of the guide pulley to pitch circle of the sprocket, in millimetres.
    PulleyGap(mm): "gap between guide pulley and sprocket", "mm", 0.0 ..= 40.0;
    /// Direction from rear axle to guide pulley, in degrees forward of straight down.
    GuideAngle(degrees): "guide pulley direction", "degrees", -20.0 ..= 45.0;
    /// Direction from guide pulley to tension pulley, in degrees forward of straight down.
    CageAngle(degrees): "cage angle", "degrees", -90.0 ..= 90.0;
    /// The cage angle furthest back, where the cage no longer takes up slack, in degrees (negative: backward).
    RearStop(degrees): "rest position of the cage", "degrees", -90.0 ..= 0.0;
    /// The cage angle furthest forward that is asked of the cage, in degrees. Beyond 78 chain lengths set by
    /// rule of thumb never go, see [`GearState::TightButUsual`](crate::chain::gear_state::GearState::TightButUsual).
    ForeStop(degrees): "forward limit of the cage", "degrees", 10.0 ..= 78.0;
    /// Distance of the rings' or the cassette's middle from the frame's mid-plane, in millimetres.
    Chainline(mm): "chainline", "mm", 25.0 ..= 75.0;
    /// Middle of one chainring to middle of the next, in millimetres.
    RingSpacing(mm): "ring spacing", "mm", 3.0 ..= 15.0;
    /// Middle of one sprocket to middle of the next, in millimetres.
    SprocketPitch(mm): "sprocket pitch", "mm", 3.0 ..= 6.0;
    /// How far the derailleur's mounting point lies below the rear axle, in millimetres, square to the line
    /// from the axle to the bottom bracket.
    HangerDrop(mm): "hanger drop", "mm", 15.0 ..= 80.0;
    /// How far the derailleur's mounting point lies behind the rear axle, in millimetres, along the line from
    /// the axle to the bottom bracket.
    HangerSetback(mm): "hanger setback", "mm", -10.0 ..= 40.0;
}

known! {
    ChainstayLength, BottomBracketDrop, PulleyCentres, PulleyGap, GuideAngle, RearStop, ForeStop, Chainline,
    RingSpacing, SprocketPitch, HangerDrop, HangerSetback,
}

nearest! { CageAngle, PulleyCentres, RearStop }

/// Length of a closed chain in links of one pitch, inner and outer links counted alike; always even.
///
/// Inner and outer links alternate and the ends join only inner to outer, so an odd count cannot close.
///
/// # Example
/// ```
/// use gear_math::ChainLinks;
/// use gear_math::chain::ChainLinksError;
/// assert_eq!(ChainLinks::new(114).unwrap().count(), 114);
/// assert_eq!(ChainLinks::new(113), Err(ChainLinksError::Odd { links: 113 }));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ChainLinks(u16);

impl ChainLinks {
    /// What this count may be.
    pub const LIMITS: Limits = Limits { name: "number of links", unit: "", min: 60.0, max: 190.0 };
    /// How much longer than new a chain is replaced, in per cent (common practice for ten and more sprockets, and on the safe
    /// side of the 0.75 for fewer).
    pub const WORN_PERCENT: f64 = 0.5;

    /// Takes a number of links.
    ///
    /// # Errors
    /// - [`ChainLinksError::OutOfLimits`] when the count lies outside [`Self::LIMITS`];
    /// - [`ChainLinksError::Odd`] when it is odd.
    pub fn new(links: u16) -> Result<Self, ChainLinksError> {
        const LIMITS: &Limits = &ChainLinks::LIMITS;
        LIMITS.check(f64::from(links)).map_err(ChainLinksError::OutOfLimits)?;
        if links.is_multiple_of(2) { Ok(Self(links)) } else { Err(ChainLinksError::Odd { links }) }
    }

    /// The number of links.
    #[must_use]
    pub const fn count(self) -> u16 {
        self.0
    }

    /// The shortest closed chain that is not shorter than `links`.
    pub(super) fn even_up(links: f64) -> Self {
        Self(2 * whole((links / 2.0 - EVEN_TOLERANCE).ceil()))
    }

    /// The longest closed chain that is not longer than `links`.
    pub(super) fn even_down(links: f64) -> Self {
        Self(2 * whole((links / 2.0 + EVEN_TOLERANCE).floor()))
    }

    pub(super) const fn plus(self, links: u16) -> Self {
        Self(self.0 + links)
    }

    pub(super) const fn minus(self, links: u16) -> Self {
        Self(self.0.saturating_sub(links))
    }
}

/// Rounding noise that must not cost a pair of links; far below any length a chain can show.
const EVEN_TOLERANCE: f64 = 1e-9;

/// A checked path is some hundred links long, so nothing is cut off.
const fn whole(links: f64) -> u16 {
    links as u16
}

/// Why a number of links cannot be a chain.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum ChainLinksError {
    /// The count is odd.
    Odd {
        /// The count that was given.
        links: u16,
    },
    /// The count is out of limits.
    OutOfLimits(OutOfLimits),
}

impl fmt::Display for ChainLinksError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Odd { links } => write!(
                f,
                "a chain of {links} links cannot be closed: count inner and outer links alike and type an even number"
            ),
            Self::OutOfLimits(limits) => limits.fmt(f),
        }
    }
}

impl core::error::Error for ChainLinksError {}
