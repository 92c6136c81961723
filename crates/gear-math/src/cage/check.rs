//! Whether a derailleur takes a drivetrain.

use crate::cage::derailleur::{Derailleur, DerailleurFigure};
use crate::gears::{Drivetrain, Gear, RingDifference, Sprocket};

/// The answer to "will the cage take it?", by the makers' figures alone.
///
/// # Example
/// ```
/// use gear_math::{CageVerdict, Derailleur, Drivetrain, Sprocket, TotalCapacity};
/// use gear_math::cage::CageFinding;
/// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let derailleur = Derailleur {
///     total_capacity: Some(TotalCapacity::new(33)?),
///     largest_sprocket: Some(Sprocket::new(34)?),
///     ..Derailleur::default()
/// };
/// let check = derailleur.check(&bike);
/// assert_eq!((check.needed, check.spare), (34, Some(-1)));
/// assert_eq!(check.verdict, CageVerdict::FitsIfGearsAvoided);
/// assert!(matches!(&check.findings[0], CageFinding::AvoidGears { gears, .. } if gears[0].to_string() == "31×11"));
/// assert_eq!(check.unknown.len(), 2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct CageCheck {
    /// Total capacity the drivetrain asks for, in teeth.
    pub needed: u16,
    /// Capacity left over, in teeth; negative when short, none when the derailleur's is not known.
    pub spare: Option<i32>,
    /// The worst of the findings.
    pub verdict: CageVerdict,
    /// Everything found wrong, in the order of [`CageFinding`]; empty when nothing is.
    pub findings: Vec<CageFinding>,
    /// Figures that were not checked because they are not known.
    pub unknown: Vec<DerailleurFigure>,
}

/// The answer in one word, from best to worst.
///
/// # Example
/// ```
/// use gear_math::CageVerdict;
/// assert!(CageVerdict::Fits < CageVerdict::FitsIfGearsAvoided);
/// assert_eq!([CageVerdict::Fits, CageVerdict::Unknown].into_iter().max(), Some(CageVerdict::Unknown));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CageVerdict {
    /// Every figure is kept, total capacity and largest sprocket among them.
    Fits,
    /// The figures that are known are kept, but total capacity or largest sprocket is not known.
    FitsAsFarAsKnown,
    /// No figure is known, so nothing can be said.
    Unknown,
    /// It fits if some gears are never used: see [`CageFinding::AvoidGears`].
    FitsIfGearsAvoided,
    /// At least one figure is broken.
    DoesNotFit,
}

/// One thing found wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CageFinding {
    /// The largest sprocket is too large for the guide pulley to clear. A longer cage does not help.
    SprocketTooLarge {
        /// Largest of the cassette.
        sprocket: Sprocket,
        /// Largest the maker allows.
        limit: Sprocket,
    },
    /// The smallest sprocket is too small.
    SprocketTooSmall {
        /// Smallest of the cassette.
        sprocket: Sprocket,
        /// Smallest the maker allows.
        limit: Sprocket,
    },
    /// The rings differ by more than the front derailleur spans.
    RingDifferenceTooLarge {
        /// Of the chainset, in teeth.
        difference: u16,
        /// Most the maker allows.
        limit: RingDifference,
    },
    /// The cage is short of capacity, but the chain goes slack only in crossed gears of the smallest ring.
    AvoidGears {
        /// How many teeth the capacity falls short.
        short_by: u16,
        /// The gears never to be used, in the order of [`Drivetrain::gears`].
        gears: Vec<Gear>,
    },
    /// The cage is so short of capacity that the chain goes slack in gears that are wanted.
    LongerCage {
        /// How many teeth the capacity falls short.
        short_by: u16,
        /// Total capacity to ask for, in teeth.
        ask_for: u16,
        /// The gears in which the chain would hang, in the order of [`Drivetrain::gears`].
        slack_gears: Vec<Gear>,
    },
}

impl CageFinding {
    fn verdict(&self) -> CageVerdict {
        match self {
            Self::AvoidGears { .. } => CageVerdict::FitsIfGearsAvoided,
            _ => CageVerdict::DoesNotFit,
        }
    }
}

impl Derailleur {
    /// Checks a drivetrain against every known figure.
    ///
    /// A shortage of capacity is always taken in the gears with the smallest wheels; largest ring with largest sprocket
    /// is never given away (see [`Drivetrain::slack`]). When all gears that would hang slack are
    /// [crossed](Drivetrain::crossed_rule) anyway, the answer is to never use them; when others would too, it is a
    /// longer cage. On a single ring no gear is crossed, so any shortage asks for a longer cage.
    ///
    /// The figures say nothing of the frame, the hanger or the chain's length: a check by hand, largest with largest
    /// and smallest with smallest, comes before riding.
    #[must_use]
    pub fn check(&self, drivetrain: &Drivetrain) -> CageCheck {
        let needed = drivetrain.needed_capacity();
        let findings: Vec<CageFinding> = [
            self.too_large_sprocket(drivetrain),
            self.too_small_sprocket(drivetrain),
            self.too_large_difference(drivetrain),
            self.too_little_capacity(drivetrain),
        ]
        .into_iter()
        .flatten()
        .collect();
        CageCheck {
            needed,
            spare: self.total_capacity.map(|capacity| i32::from(capacity.teeth()) - i32::from(needed)),
            verdict: self.verdict(&findings),
            findings,
            unknown: self.unknown().collect(),
        }
    }

    /// Teeth of slack in `gear` beyond the total capacity: there the chain hangs. None when the capacity is not known.
    #[must_use]
    pub fn slack_beyond(&self, drivetrain: &Drivetrain, gear: Gear) -> u16 {
        self.total_capacity.map_or(0, |capacity| drivetrain.slack(gear).saturating_sub(capacity.teeth()))
    }

    fn verdict(&self, findings: &[CageFinding]) -> CageVerdict {
        let without_findings = match (self.total_capacity, self.largest_sprocket) {
            (Some(_), Some(_)) => CageVerdict::Fits,
            _ if *self == Self::default() => CageVerdict::Unknown,
            _ => CageVerdict::FitsAsFarAsKnown,
        };
        findings.iter().map(CageFinding::verdict).max().unwrap_or(without_findings)
    }

    fn too_large_sprocket(&self, drivetrain: &Drivetrain) -> Option<CageFinding> {
        let sprocket = drivetrain.cassette.largest();
        let limit = self.largest_sprocket.filter(|&limit| sprocket > limit)?;
        Some(CageFinding::SprocketTooLarge { sprocket, limit })
    }

    fn too_small_sprocket(&self, drivetrain: &Drivetrain) -> Option<CageFinding> {
        let sprocket = drivetrain.cassette.smallest();
        let limit = self.smallest_sprocket.filter(|&limit| sprocket < limit)?;
        Some(CageFinding::SprocketTooSmall { sprocket, limit })
    }

    fn too_large_difference(&self, drivetrain: &Drivetrain) -> Option<CageFinding> {
        let difference = drivetrain.chainset.difference();
        let limit = self.ring_difference.filter(|limit| difference > limit.teeth())?;
        Some(CageFinding::RingDifferenceTooLarge { difference, limit })
    }

    fn too_little_capacity(&self, drivetrain: &Drivetrain) -> Option<CageFinding> {
        let capacity = self.total_capacity?.teeth();
        let ask_for = drivetrain.needed_capacity();
        let short_by = ask_for.checked_sub(capacity).filter(|&short_by| short_by > 0)?;
        let slack_gears: Vec<Gear> =
            drivetrain.gears().filter(|&gear| self.slack_beyond(drivetrain, gear) > 0).collect();
        let may_be_avoided = slack_gears.iter().all(|&gear| drivetrain.may_be_avoided(gear));
        Some(if may_be_avoided {
            CageFinding::AvoidGears { short_by, gears: slack_gears }
        } else {
            CageFinding::LongerCage { short_by, ask_for, slack_gears }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gears::TotalCapacity;

    fn check(chainset: &str, cassette: &str, derailleur: Derailleur) -> CageCheck {
        derailleur
            .check(&Drivetrain { chainset: chainset.parse().unwrap(), cassette: cassette.parse().unwrap() })
    }

    fn with_capacity(teeth: u16) -> Derailleur {
        Derailleur { total_capacity: TotalCapacity::new(teeth).ok(), ..Derailleur::default() }
    }

    #[test]
    fn nothing_known_says_nothing() {
        let check = check("44/31", "11-13-15-18-21-24-28-32", Derailleur::default());
        assert_eq!((check.verdict, check.spare, check.unknown.len()), (CageVerdict::Unknown, None, 4));
    }

    #[test]
    fn capacity_just_enough_fits() {
        let check = check("44/31", "11-13-15-18-21-24-28-32", with_capacity(34));
        assert_eq!((check.verdict, check.spare), (CageVerdict::FitsAsFarAsKnown, Some(0)));
        assert_eq!(check.findings.len(), 0);
    }

    #[test]
    fn capacity_and_largest_sprocket_known_and_kept_fit() {
        let derailleur = Derailleur { largest_sprocket: Sprocket::new(32).ok(), ..with_capacity(36) };
        assert_eq!(check("44/31", "11-13-15-18-21-24-28-32", derailleur).verdict, CageVerdict::Fits);
    }

    #[test]
    fn slack_in_a_wanted_gear_asks_for_a_longer_cage() {
        let check = check("44/31", "11-13-15-18-21-24-28-32", with_capacity(29));
        let CageFinding::LongerCage { short_by: 5, ask_for: 34, slack_gears } = &check.findings[0] else {
            panic!("{:?}", check.findings);
        };
        assert_eq!(slack_gears.len(), 3);
        assert_eq!(check.verdict, CageVerdict::DoesNotFit);
    }

    #[test]
    fn a_single_ring_has_no_gear_to_give_away() {
        let check = check("40", "11-13-15-18-21-24-28-32", with_capacity(20));
        assert!(matches!(check.findings[0], CageFinding::LongerCage { ask_for: 21, .. }));
    }

    #[test]
    fn every_broken_figure_is_reported() {
        let derailleur = Derailleur {
            largest_sprocket: Sprocket::new(30).ok(),
            smallest_sprocket: Sprocket::new(12).ok(),
            ring_difference: RingDifference::new(12).ok(),
            ..with_capacity(33)
        };
        let check = check("44/31", "11-13-15-18-21-24-28-32", derailleur);
        assert_eq!((check.findings.len(), check.verdict), (4, CageVerdict::DoesNotFit));
    }
}
