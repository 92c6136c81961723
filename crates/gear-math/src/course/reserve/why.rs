//! Why one goes on foot.

use crate::course::lap::lap::WhyOnFoot;
use crate::course::reserve::cell::Cell;
use crate::course::reserve::search::Search;
use crate::rider::Reason;

impl Search<'_> {
    /// Why a step that takes `pace` m/s on foot is gone so.
    pub(super) fn why_on_foot(&self, cell: &Cell, pace: f64) -> WhyOnFoot {
        if cell.blocked {
            return WhyOnFoot::Obstacle;
        }
        let speed = pace.max(self.way.balance);
        let needed = cell.force(speed);
        WhyOnFoot::Because(if needed > cell.grip {
            Reason::Grip
        } else {
            self.weakness(needed * speed / self.way.efficiency, speed)
        })
    }

    /// What is short where a power is needed at a speed: strength at any cadence, or a lower gear, or nothing.
    fn weakness(&self, power: f64, speed: f64) -> Reason {
        let account = &self.setup.account;
        let fastest = self.gearing.rpm.iter().fold(0.0, |most: f64, &rpm| most.max(rpm * speed));
        let lasting = power.min(account.sustainable_w());
        if power >= account.effort.peak().watts() {
            Reason::Force
        } else if fastest < account.optimal.rpm() && account.held_w(fastest) < lasting {
            Reason::Gear
        } else {
            Reason::Energy
        }
    }
}
