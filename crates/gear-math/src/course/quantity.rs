//! Quantities that belong to the course alone.

use crate::quantity::{Limits, OutOfLimits, known, measured, nearest};
use crate::rider::{Climb, Compass, Gradient};

measured! {
    /// Length of a stretch of course along the ground, in metres.
    StretchLength(m): "stretch length", "m", 0.1 ..= 20000.0;
    /// Time an obstacle costs on top of covering its length on foot, in seconds.
    ObstacleTime(s): "time at the obstacle", "s", 0.0 ..= 60.0;
    /// Fastest speed a stretch can be ridden at, because it bends or is narrow, in metres per second.
    CornerSpeed(m_per_s): "corner speed", "m/s", 0.8 ..= 25.0;
    /// Place on a recorded track, in metres from its start.
    TrackPlace(m): "place on the track", "m", 0.0 ..= 1e6;
    /// Wavelength at which smoothing leaves half the height of a wave in the elevations, in metres.
    SmoothingLength(m): "smoothing length", "m", 10.0 ..= 300.0;
    /// Part of its value by which cadence may leave the preferred one before the rider shifts. A pure number.
    ShiftWindow(share): "cadence window", "", 0.05 ..= 0.4;
    /// Time without drive while the chain changes sprocket or ring, in seconds.
    ShiftTime(s): "time of a shift", "s", 0.0 ..= 5.0;
    /// Time that getting off, or getting on, costs by itself, in seconds.
    MountTime(s): "time to get off or on", "s", 0.0 ..= 30.0;
    /// Speed at which a lap is begun, in metres per second.
    StartSpeed(m_per_s): "starting speed", "m/s", 0.5 ..= 20.0;
    /// How hard the rider brakes before a corner, in metres per second squared.
    Braking(m_per_s2): "braking", "m/s²", 0.5 ..= 6.0;
    /// Length of the steps a lap is worked out in, in metres.
    Step(m): "step", "m", 0.01 ..= 5.0;
}

known! { StretchLength, ObstacleTime, CornerSpeed, ShiftWindow, ShiftTime, MountTime, Braking, Step }
nearest! { MountTime }

impl Gradient {
    /// The same slope met from the other side.
    #[must_use]
    pub fn reversed(self) -> Self {
        Self::nearest(-self.percent())
    }

    /// The slope uphill; level ground for a descent.
    pub(super) fn uphill(self) -> Climb {
        Climb::new(self.percent().max(Climb::LIMITS.min)).unwrap_or(Climb::LEVEL)
    }

    /// sin θ of the slope angle: height per metre along the ground.
    #[must_use]
    pub fn sine(self) -> f64 {
        let i = self.rise_over_run();
        i / i.hypot(1.0)
    }
}

impl Compass {
    /// The way back.
    pub(super) fn back(self) -> Self {
        Self::nearest((self.degrees() + 180.0) % 360.0)
    }
}
