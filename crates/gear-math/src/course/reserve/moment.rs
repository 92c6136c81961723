//! One step of a lap as it went.

/// Where a rider stands at the beginning of a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum State {
    /// Riding at a speed, in m/s, in a gear.
    Riding(f64, usize),
    /// Beside the bike.
    OnFoot,
}

impl State {
    /// Whether a lap that began as one and ended as the other can be repeated: speeds apart by less than a thousandth, which is
    /// worth less than a hundredth of a second.
    pub(super) fn is_like(self, other: Self) -> bool {
        match (self, other) {
            (Self::OnFoot, Self::OnFoot) => true,
            (Self::Riding(one, gear), Self::Riding(two, same)) => {
                gear == same && (one - two).abs() < 1e-3 * one
            }
            _ => false,
        }
    }
}

/// One step of a lap as it went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moment {
    /// The gear, when riding.
    pub(super) gear: Option<usize>,
    /// Speed at its beginning, after a shift or after getting on, m/s.
    pub(super) entry: f64,
    /// Speed at its end, m/s.
    pub(super) exit: f64,
    /// At the crank, or what costs as much on foot, W.
    pub(super) power: f64,
    /// Charge, W.
    pub(super) charge: f64,
    /// Time for which that is charged, s.
    pub(super) charged: f64,
    /// Time of getting off before the step, and of getting on, s.
    pub(super) off: f64,
    pub(super) on: f64,
    /// Further time on foot, s.
    pub(super) extra: f64,
    /// The gear before a shift.
    pub(super) shifted_from: Option<usize>,
}

impl Moment {
    /// With all that belongs to it, s.
    pub(super) fn time(&self) -> f64 {
        self.charged + self.off + self.on + self.extra
    }
}

/// A lap as it went.
#[derive(Debug, Clone)]
pub(super) struct Ridden {
    pub(super) moments: Vec<Moment>,
    pub(super) begin: State,
    pub(super) end: State,
    /// s/J.
    pub(super) price: f64,
    /// What it is worth, in s, that the lap begins better than it ends; none where it ends as it begins.
    pub(super) unclosed: f64,
    /// What its gears count for beside their charge where laps are chosen, J.
    pub(super) reluctance: f64,
}

impl Ridden {
    /// No lap, which stands for none where one must be.
    pub(super) const NONE: Self = Self {
        moments: Vec::new(),
        begin: State::OnFoot,
        end: State::OnFoot,
        price: 0.0,
        unclosed: 0.0,
        reluctance: 0.0,
    };

    pub(super) fn time(&self) -> f64 {
        self.moments.iter().map(Moment::time).sum()
    }

    /// What the lap took from the reserve in the end, J.
    pub(super) fn net_charge(&self) -> f64 {
        self.moments.iter().map(|moment| moment.charge * moment.charged).sum()
    }
}
