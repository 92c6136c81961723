//! One step of the way: what holds the bike and what going on foot takes.

/// One step of the way, for one rider on one bike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cell {
    pub(super) length: f64,
    pub(super) rise: f64,
    pub(super) gravity: f64,
    pub(super) rolling: f64,
    pub(super) bearing: f64,
    pub(super) bearing_growth: f64,
    pub(super) air: f64,
    pub(super) wind: f64,
    /// Largest mean drive force before the wheel slips, N.
    pub(super) grip: f64,
    pub(super) corner: f64,
    pub(super) blocked: bool,
    /// Seconds beside what the length takes on foot.
    pub(super) extra: f64,
    /// Speed lost in getting on, m/s.
    pub(super) set_off_loss: f64,
    pub(super) segment: usize,
}

impl Cell {
    #[inline(always)]
    pub(super) fn air_force(&self, speed: f64) -> f64 {
        let against = speed + self.wind;
        self.air * against * against.abs()
    }

    #[inline(always)]
    pub(super) fn force(&self, speed: f64) -> f64 {
        self.gravity + self.rolling + self.bearing + self.bearing_growth * speed + self.air_force(speed)
    }

    #[inline(always)]
    pub(super) fn force_growth(&self, speed: f64) -> f64 {
        self.bearing_growth + 2.0 * self.air * (speed + self.wind).abs()
    }
}
