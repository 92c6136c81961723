//! What the section is written and drawn from.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::bench::owners::Owners;
use crate::chain::report::ChainsReport;
use crate::chain::section::ChainSection;
use crate::lap::inputs::{CourseChoice, LapInputs};
use crate::lap::report::LapReport;
use crate::lap::room::LapRoom;
use crate::ride::report::RideReport;
use crate::rings::report::RingsReport;
use std::rc::Rc;

/// “Round the lap”, before it is put in words.
#[derive(Debug)]
pub struct LapSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Derailleur and chains.
    pub chain: Rc<ChainsReport>,
    /// Riding against going on foot.
    pub ride: Rc<RideReport>,
    /// How the lap is to be ridden.
    pub lap_inputs: Rc<LapInputs>,
    /// The lap itself.
    pub lap: LapRoom,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

/// Why no lap can be told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoLap {
    /// The course cannot be used for one.
    NotOnThisTrack,
    /// The course is to come from a file that is not at hand.
    LacksFile,
    /// It is on its way.
    Awaited,
}

impl LapSection {
    /// The laps that were asked for, or why there are none.
    ///
    /// # Errors
    /// Where no lap can be told.
    pub fn laps(&self) -> Result<&LapReport, NoLap> {
        if self.lap_inputs.fault(self.lap.own.as_deref()).is_some() {
            return Err(NoLap::NotOnThisTrack);
        }
        if self.lacks_file() {
            return Err(NoLap::LacksFile);
        }
        self.lap.laps.as_deref().ok_or(NoLap::Awaited)
    }

    /// Whether the course is to come from a file that is not at hand.
    #[must_use]
    pub fn lacks_file(&self) -> bool {
        self.lap_inputs.choice == CourseChoice::Own && self.lap.own.is_none()
    }

    /// Whether the rider chose a course that nobody has ridden.
    #[must_use]
    pub fn is_on_invented_course(&self) -> bool {
        self.owners.get(Field::Course) == Owner::Rider
            && matches!(self.lap_inputs.choice, CourseChoice::Demo(_))
    }

    /// What is said of cage and chain beside the lap.
    #[must_use]
    pub fn chain_section(&self) -> ChainSection {
        let (rings, chain) = (Rc::clone(&self.rings), Rc::clone(&self.chain));
        ChainSection { rings, chain, owners: Rc::clone(&self.owners) }
    }
}
