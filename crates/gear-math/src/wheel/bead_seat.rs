//! Where the tyre's bead sits on the rim.

/// A bead seat diameter in common use, which alone names a wheel size without doubt.
///
/// Numbers: ISO 5775 and common practice. Inch and letter names say less: 26 and 28 inch each stand for several.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BeadSeat(u16);

impl BeadSeat {
    /// Every bead seat known here, largest first.
    pub const ALL: [Self; 13] = [
        Self(635),
        Self(630),
        Self(622),
        Self(590),
        Self(584),
        Self(571),
        Self(559),
        Self(540),
        Self(507),
        Self(451),
        Self(406),
        Self(349),
        Self(305),
    ];

    /// The bead seat of cyclo-cross and road wheels: 622 mm.
    pub const ROAD: Self = Self(622);

    /// The bead seat with this diameter in millimetres, if it is one in common use.
    #[must_use]
    pub fn from_mm(mm: u16) -> Option<Self> {
        Self::ALL.into_iter().find(|seat| seat.0 == mm)
    }

    /// Diameter in millimetres.
    #[must_use]
    pub const fn mm(self) -> u16 {
        self.0
    }
}
