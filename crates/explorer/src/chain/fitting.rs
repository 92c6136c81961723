//! The chain to fit to a set-up, beside the one that it is compared with.

use crate::chain::section::ChainSection;
use crate::rings::setup::SetupReport;
use crate::side::Side;

/// A chain to fit.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fitting {
    /// Its links.
    pub(crate) links: u16,
    /// The chain it is compared with, and how many links more it has than that; nothing where they are alike.
    pub(crate) change: Option<(Beside, i32)>,
}

/// What a chain is compared with.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Beside {
    /// The chain that is fitted now.
    Now,
    /// The chain to fit to A.
    ThatOfA,
}

impl Fitting {
    /// Of one set-up; none where no chain can be told.
    pub(crate) fn of(report: &ChainSection, setup: &SetupReport) -> Option<Self> {
        let links = setup.cage.links?.count();
        let of_a = || report.rings.setup(Side::A).cage.links.filter(|_| setup.side == Side::B);
        let now = setup.cage.fitted.map(|other| (Beside::Now, other));
        let other = now.or_else(|| of_a().map(|other| (Beside::ThatOfA, other)));
        let change = other.map(|(beside, other)| (beside, i32::from(links) - i32::from(other.count())));
        Some(Self { links, change: change.filter(|(_, more)| *more != 0) })
    }
}
