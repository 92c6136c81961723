//! What a chain of a given length does in one gear.

use crate::chain::cage::Cage;
use crate::chain::measures::{CageAngle, ChainLinks};
use crate::chain::path::GearPath;
use crate::chain::pitch_circle::ChainPitch;
use crate::gears::{ChainAngle, Gear};

/// How a gear runs, told by where the cage stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum GearState {
    /// The cage stands between its stops, no further forward than [`Self::COMFORTABLE_TO_DEGREES`].
    Comfortable,
    /// The cage stands further forward than that or than its forward limit, but no further than
    /// [`Self::TIGHT_TO_DEGREES`]: where chains cut by the rule "big to big plus two links" often end up.
    TightButUsual,
    /// The chain would have to be longer: forcing it breaks the derailleur or its hanger.
    TooTight,
    /// The cage stands at its rest position and the chain hangs: it rattles, and may be left alone.
    Slack,
}

impl GearState {
    /// Furthest forward that counts as comfortable, in degrees. An estimate: [`Self::COMFORTABLE_OF_100`]
    /// combinations of usual parts stay within it when the chain is cut by the workshop rule.
    pub const COMFORTABLE_TO_DEGREES: f64 = 65.0;
    /// Of 100 combinations of usual parts so many stay comfortable when the chain is cut by the workshop rule, by this
    /// geometry.
    pub const COMFORTABLE_OF_100: u8 = 71;
    /// Furthest forward that the workshop rule leads to with usual parts (50 to 77 degrees), in degrees.
    pub const TIGHT_TO_DEGREES: f64 = 78.0;

    /// Whether the gear can be ridden: all but too tight and slack.
    #[must_use]
    pub const fn is_usable(self) -> bool {
        matches!(self, Self::Comfortable | Self::TightButUsual)
    }
}

/// One gear with a chain of a given length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GearFit {
    /// The gear.
    pub gear: Gear,
    /// Where the cage stands; `None` when that is not between its stops.
    pub cage_angle: Option<CageAngle>,
    /// 0 where the cage stands between its stops; else links too many (positive) or too few (negative), counted
    /// from the stop that the cage has reached. A gear can be short by this count and still be
    /// [tight but usual](GearState::TightButUsual).
    pub links_over: f64,
    /// Links that could still come off before the cage reaches its forward limit; negative beyond it.
    pub to_fore_stop: f64,
    /// Links that could still be added before the cage reaches its rest position; negative beyond it.
    pub to_rear_stop: f64,
    /// How it runs.
    pub state: GearState,
    /// The angle at which to draw the cage: where it stands, also beyond the forward limit while that is usual; at
    /// the rest position when slack; where it can go no further when too tight.
    pub drawn_angle: CageAngle,
    /// Sideways angle of the upper run.
    pub chain_angle: ChainAngle,
}

/// Where the cage stands, before the sideways view is added.
pub(super) struct CagePose {
    pub(super) cage_angle: Option<CageAngle>,
    pub(super) links_over: f64,
    pub(super) state: GearState,
    pub(super) drawn_angle: CageAngle,
}

/// A gear's path with the lengths it has at both stops.
pub(super) struct Swing {
    path: GearPath,
    rear: f64,
    fore: f64,
    longest: f64,
    shortest: f64,
}

impl Swing {
    pub(super) fn new(path: GearPath, cage: &Cage) -> Self {
        let rear = cage.measures().rear_stop.degrees().to_radians();
        let (fore, shortest) = path.tightest(cage.measures().fore_stop.degrees().to_radians());
        Self { path, rear, fore, longest: path.length_at(rear).length, shortest }
    }

    /// Links of the path at the forward limit: the fewest that let the cage stay behind it.
    pub(super) fn fewest_links(&self) -> f64 {
        self.shortest / ChainPitch::BICYCLE.mm()
    }

    /// Links of the path at the rest position: the most that are still taut.
    pub(super) fn most_links(&self) -> f64 {
        self.longest / ChainPitch::BICYCLE.mm()
    }

    pub(super) fn pose(&self, links: ChainLinks) -> CagePose {
        let chain = f64::from(links.count()) * ChainPitch::BICYCLE.mm();
        if chain > self.longest {
            self.slack(chain)
        } else if chain < self.shortest {
            self.beyond_fore_stop(chain)
        } else {
            self.between_stops(chain)
        }
    }

    fn slack(&self, chain: f64) -> CagePose {
        CagePose {
            cage_angle: None,
            links_over: (chain - self.longest) / ChainPitch::BICYCLE.mm(),
            state: GearState::Slack,
            drawn_angle: CageAngle::nearest(self.rear.to_degrees()),
        }
    }

    fn between_stops(&self, chain: f64) -> CagePose {
        let share = (self.longest - chain) / (self.longest - self.shortest);
        let angle = self.angle_for(chain, self.rear, self.fore, share);
        let comfortable = angle.degrees() <= GearState::COMFORTABLE_TO_DEGREES;
        let state = if comfortable { GearState::Comfortable } else { GearState::TightButUsual };
        CagePose { cage_angle: Some(angle), links_over: 0.0, state, drawn_angle: angle }
    }

    fn beyond_fore_stop(&self, chain: f64) -> CagePose {
        let (end, least) = self.path.tightest(GearState::TIGHT_TO_DEGREES.to_radians());
        let (state, drawn_angle) = if chain >= least {
            (GearState::TightButUsual, self.angle_for(chain, self.fore, end, 0.5))
        } else {
            (GearState::TooTight, CageAngle::nearest(end.to_degrees()))
        };
        let links_over = (chain - self.shortest) / ChainPitch::BICYCLE.mm();
        CagePose { cage_angle: None, links_over, state, drawn_angle }
    }

    /// The angle between two others at which the path is as long as the chain; the search starts at `share`.
    fn angle_for(&self, chain: f64, low: f64, high: f64, share: f64) -> CageAngle {
        let start = low + share * (high - low);
        CageAngle::nearest(self.path.angle_of(chain, (low, high), start).to_degrees())
    }
}
