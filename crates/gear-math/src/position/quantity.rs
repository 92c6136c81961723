//! What is measured on a bike, each measure with the limits a bicycle can plausibly have (estimates).

use crate::quantity::{Limits, OutOfLimits, measured};

measured! {
    /// Bottom bracket centre to saddle top along the seat tube line, in millimetres.
    SaddleHeight(mm): "saddle height", "mm", 450.0 ..= 950.0;
    /// Saddle tip behind a plumb line through the bottom bracket, in millimetres; negative is ahead of it.
    Setback(mm): "saddle setback", "mm", -50.0 ..= 150.0;
    /// Seat tube line from the horizontal, in degrees.
    SeatAngle(degrees): "seat angle", "degrees", 65.0 ..= 82.0;
    /// Pedal axle to the sole of the foot: pedal body, cleat and shoe sole, in millimetres.
    SoleStack(mm): "pedal and shoe stack", "mm", 0.0 ..= 60.0;
    /// Saddle tip to the centre of the bar at the stem, in a straight line, in millimetres.
    TipToBar(mm): "saddle tip to bar", "mm", 400.0 ..= 750.0;
    /// Saddle top down to the centre of the bar, in millimetres; negative when the bar is the higher of the two.
    BarDrop(mm): "drop from saddle to bar", "mm", -100.0 ..= 250.0;
    /// How much lower the saddle is set than on the road bike, in millimetres.
    SaddleLowering(mm): "saddle lower by", "mm", -20.0 ..= 40.0;
    /// How much higher the bar is set relative to the saddle, in millimetres.
    BarRaise(mm): "bar higher by", "mm", -40.0 ..= 60.0;
    /// How much shorter the way from saddle tip to bar becomes, in millimetres.
    BarCloser(mm): "bar closer by", "mm", -40.0 ..= 60.0;
    /// Reach of the handlebar itself: bar centre forward to the hoods, in millimetres.
    BarReach(mm): "reach of the handlebar", "mm", 50.0 ..= 130.0;
    /// Drop of the handlebar itself: bar centre down to the drops, in millimetres.
    BarDepth(mm): "drop of the handlebar", "mm", 80.0 ..= 180.0;
    /// Bottom bracket up to the top centre of the head tube, in millimetres.
    FrameStack(mm): "frame stack", "mm", 400.0 ..= 750.0;
    /// Bottom bracket forward to the top centre of the head tube, in millimetres.
    FrameReach(mm): "frame reach", "mm", 280.0 ..= 520.0;
    /// Steering axis from the horizontal, in degrees.
    HeadAngle(degrees): "head angle", "degrees", 60.0 ..= 90.0;
    /// Headset parts above the head tube, which the frame's stack leaves out, in millimetres.
    TopCap(mm): "headset above the head tube", "mm", 0.0 ..= 60.0;
    /// Spacers under the stem, in millimetres.
    Spacers(mm): "spacers under the stem", "mm", 0.0 ..= 80.0;
    /// Height of the stem's clamp on the steerer, in millimetres.
    ClampHeight(mm): "stem clamp height", "mm", 0.0 ..= 60.0;
    /// Stem from steerer centre to bar centre along the stem, in millimetres.
    StemLength(mm): "stem length", "mm", 20.0 ..= 160.0;
    /// Stem against square to the steerer, in degrees: 0 is square to it, positive points up.
    StemAngle(degrees): "stem angle", "degrees", -45.0 ..= 45.0;
    /// How far the bar may miss its target, forward and upward each, in millimetres.
    BarTolerance(mm): "bar tolerance", "mm", 0.0 ..= 30.0;
    /// Bottom bracket centre to front axle in a straight line, in millimetres.
    FrontCentre(mm): "front centre", "mm", 500.0 ..= 750.0;
    /// Front axle ahead of the steering axis, square to it, in millimetres.
    ForkRake(mm): "fork rake", "mm", 20.0 ..= 60.0;
    /// Centre of the pedal from the bicycle's mid-plane, in millimetres.
    PedalOffset(mm): "pedal centre from the mid-plane", "mm", 80.0 ..= 150.0;
}

impl SaddleLowering {
    /// The saddle as on the road bike. Riders who lower it for mounting take about 5 mm (common practice).
    pub const NONE: Self = Self(0.0);
}

impl BarRaise {
    /// The bar as on the road bike.
    pub const NONE: Self = Self(0.0);
    /// 15 mm, the middle of the usual 10 to 20 mm (common practice).
    pub const USUAL: Self = Self(15.0);
}

impl BarCloser {
    /// The bar as on the road bike.
    pub const NONE: Self = Self(0.0);
    /// 10 mm (common practice).
    pub const USUAL: Self = Self(10.0);
}

impl BarTolerance {
    /// 5 mm: a fair result, since two bikes can hardly be measured more closely (estimate).
    pub const USUAL: Self = Self(5.0);
}

impl Spacers {
    /// 30 mm, about the most under a stem on a carbon steerer (common practice; the fork maker's figure comes first).
    pub const CARBON_STEERER: Self = Self(30.0);
    /// 40 mm, about the most under a stem on an alloy or steel steerer (common practice; the fork maker's figure
    /// comes first).
    pub const METAL_STEERER: Self = Self(40.0);
}

impl Spacers {
    /// Spacers come in steps of 5 mm (common practice).
    pub(crate) const STEP_MM: f64 = 5.0;

    /// None, one step, two steps and so on, up to `most`.
    pub(crate) fn steps_up_to(most: Self) -> impl Iterator<Item = Self> {
        (0_u8..).map(|step| Self(f64::from(step) * Self::STEP_MM)).take_while(move |spacers| *spacers <= most)
    }
}

impl StemLength {
    /// The lengths that are sold (common practice).
    pub const SOLD: [Self; 9] = [
        Self(60.0),
        Self(70.0),
        Self(80.0),
        Self(90.0),
        Self(100.0),
        Self(110.0),
        Self(120.0),
        Self(130.0),
        Self(140.0),
    ];
}

impl StemAngle {
    /// The angles that are sold, each mounted either way up (common practice).
    pub const SOLD: [Self; 10] = [
        Self(-17.0),
        Self(-12.0),
        Self(-10.0),
        Self(-8.0),
        Self(-6.0),
        Self(6.0),
        Self(8.0),
        Self(10.0),
        Self(12.0),
        Self(17.0),
    ];
}
