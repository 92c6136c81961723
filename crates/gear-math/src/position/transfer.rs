//! A road position carried over to another bike.

use crate::position::bar_target::bar_from_saddle;
use crate::position::limits::{PositionCaution, saddle_cautions};
use crate::position::point::BikePoint;
use crate::position::quantity::{BarCloser, BarDrop, BarRaise, SaddleLowering, SeatAngle, TipToBar};
use crate::position::saddle::{Footing, Saddle, on_seat_line};

/// A position that fits, as measured on the road bike.
///
/// # Example
/// ```
/// use gear_math::{CrossBike, RoadPosition};
/// use gear_math::position::{BarDrop, Footing, PositionChanges, Saddle, SaddleHeight, SeatAngle, Setback, SoleStack, TipToBar};
/// use gear_math::rider::CrankLength;
/// let footing = |stack| Ok::<_, gear_math::OutOfLimits>(Footing {
///     crank: CrankLength::new(172.5)?,
///     sole_stack: SoleStack::new(stack)?,
/// });
/// let road = RoadPosition {
///     saddle: Saddle {
///         height: SaddleHeight::new(725.0)?,
///         setback: Setback::new(58.0)?,
///         seat_angle: SeatAngle::new(73.5)?,
///     },
///     footing: footing(14.0)?,
///     tip_to_bar: TipToBar::new(545.0)?,
///     bar_drop: BarDrop::new(70.0)?,
/// };
/// let cross = CrossBike { seat_angle: SeatAngle::new(73.5)?, footing: footing(20.0)? };
/// let carried = road.carried_to(&cross, &PositionChanges::default());
/// assert_eq!(carried.saddle_height_mm.round(), 731.0);
/// assert_eq!(carried.bar_drop_mm, 55.0);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoadPosition {
    /// Where the saddle is.
    pub saddle: Saddle,
    /// Crank, pedal and shoe.
    pub footing: Footing,
    /// Saddle tip to bar centre in a straight line.
    pub tip_to_bar: TipToBar,
    /// Saddle top down to bar centre.
    pub bar_drop: BarDrop,
}

/// What is known of the bike that the position goes to.
///
/// # Example
/// ```
/// use gear_math::CrossBike;
/// use gear_math::position::{Footing, SeatAngle, SoleStack};
/// use gear_math::rider::CrankLength;
/// let footing = Footing { crank: CrankLength::new(170.0)?, sole_stack: SoleStack::new(20.0)? };
/// let bike = CrossBike { seat_angle: SeatAngle::new(73.5)?, footing };
/// assert_eq!(bike.footing.crank.mm(), 170.0);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrossBike {
    /// Its seat angle.
    pub seat_angle: SeatAngle,
    /// Its crank and the pedals and shoes used with it.
    pub footing: Footing,
}

/// What is meant to differ from the road position.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PositionChanges {
    /// Saddle lower by this much.
    pub lower_by: SaddleLowering,
    /// Bar higher by this much, relative to the saddle: a lowered saddle takes the bar down with it.
    pub bar_up_by: BarRaise,
    /// Way from saddle tip to bar shorter by this much. Taken level instead of straight, the bar would come
    /// 1 to 4 mm nearer still.
    pub bar_closer_by: BarCloser,
    /// With cranks of another length, also move the saddle so that the knee keeps its place over the pedal (common
    /// practice of some; usually off).
    pub keep_knee_over_pedal: bool,
}

/// A position carried over to the other bike. Lengths in millimetres.
#[derive(Debug, Clone, PartialEq)]
pub struct CarriedPosition {
    /// Saddle height along a seat tube of the road bike's angle.
    pub saddle_height_road_angle_mm: f64,
    /// Saddle height along the new bike's own seat tube: the number to measure off.
    pub saddle_height_mm: f64,
    /// Saddle top above the bottom bracket.
    pub saddle_vertical_mm: f64,
    /// Saddle tip behind the bottom bracket.
    pub setback_mm: f64,
    /// How far the same saddle slides on the same seat post; negative is backward.
    pub rail_shift_forward_mm: f64,
    /// Saddle top down to bar centre.
    pub bar_drop_mm: f64,
    /// Saddle tip to bar centre in a straight line.
    pub tip_to_bar_mm: f64,
    /// Where the centre of the bar must be.
    pub target: BikePoint,
    /// Sole to saddle when the leg is longest.
    pub leg_extension_mm: f64,
    /// What to draw.
    pub view: PositionView,
    /// What to look at before riding.
    pub cautions: Vec<PositionCaution>,
}

impl CarriedPosition {
    /// What a tape measure on a bike is good to, either way, in millimetres (common practice).
    pub const TAPE_MM: f64 = 3.0;

    /// Saddle tip to the centre of a bar at `bar`, in a straight line, in millimetres.
    #[must_use]
    pub fn tape_mm(&self, bar: BikePoint) -> f64 {
        (bar.x_mm + self.setback_mm).hypot(self.saddle_vertical_mm - bar.y_mm)
    }
}

/// The points that a side view of a riding position is drawn from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PositionView {
    /// Tip of the saddle.
    pub saddle_tip: BikePoint,
    /// The place on the saddle's top where the seat tube line meets it.
    pub saddle_top: BikePoint,
    /// Pedal axle when the leg is longest.
    pub pedal: BikePoint,
    /// Sole of the foot when the leg is longest.
    pub sole: BikePoint,
    /// Centre of the bar.
    pub bar: BikePoint,
}

impl Default for PositionChanges {
    /// The trade's usual changes: saddle as it was, bar 15 mm higher and 10 mm closer.
    fn default() -> Self {
        Self {
            lower_by: SaddleLowering::NONE,
            bar_up_by: BarRaise::USUAL,
            bar_closer_by: BarCloser::USUAL,
            keep_knee_over_pedal: false,
        }
    }
}

impl PositionChanges {
    /// The road position as it is.
    #[must_use]
    pub fn none() -> Self {
        Self { bar_up_by: BarRaise::NONE, bar_closer_by: BarCloser::NONE, ..Self::default() }
    }
}

impl RoadPosition {
    /// Carries the position over to another bike.
    ///
    /// # Formula
    /// The leg keeps its extension, and the saddle its place in space:
    /// ```text
    /// SH' = SH + (CL − CL_x) + (k_x − k) − lower      along the road bike's seat angle σ
    /// Hs  = SH' sin σ,  SH_x = Hs ÷ sin σ_x           along the new bike's seat angle σ_x
    /// rails = (SH_x cos σ_x − SB_x) − (SH cos σ − SB)
    /// X = −SB_x + √(G_x² − D_x²),  Y = Hs − D_x       with D_x = D − up, G_x = G − closer
    /// ```
    /// Derived from the geometry; the saddle is taken as level. All of it is good to [`CarriedPosition::TAPE_MM`] either way.
    #[must_use]
    pub fn carried_to(&self, cross: &CrossBike, changes: &PositionChanges) -> CarriedPosition {
        let height_road_angle = self.carried_height_mm(cross, changes);
        let vertical = on_seat_line(self.saddle.seat_angle, height_road_angle).y_mm;
        let height = vertical / cross.seat_angle.degrees().to_radians().sin();
        let setback = self.carried_setback_mm(cross, changes);
        let bar_drop = self.bar_drop.mm() - changes.bar_up_by.mm();
        let tip_to_bar = self.tip_to_bar.mm() - changes.bar_closer_by.mm();
        let tip = BikePoint { x_mm: -setback, y_mm: vertical };
        let target = bar_from_saddle(tip, tip_to_bar, bar_drop);
        let view = PositionView::new(tip, height, cross.seat_angle, &cross.footing, target);
        let rail_shift = view.rail_place_mm() - self.view().rail_place_mm();
        CarriedPosition {
            saddle_height_road_angle_mm: height_road_angle,
            saddle_height_mm: height,
            saddle_vertical_mm: vertical,
            setback_mm: setback,
            rail_shift_forward_mm: rail_shift,
            bar_drop_mm: bar_drop,
            tip_to_bar_mm: tip_to_bar,
            target,
            leg_extension_mm: cross.footing.leg_extension_mm(height_road_angle),
            view,
            cautions: saddle_cautions(setback, rail_shift),
        }
    }

    /// The points to draw the road position from.
    #[must_use]
    pub fn view(&self) -> PositionView {
        let Saddle { height, seat_angle, .. } = self.saddle;
        let tip = self.saddle.tip();
        let bar = bar_from_saddle(tip, self.tip_to_bar.mm(), self.bar_drop.mm());
        PositionView::new(tip, height.mm(), seat_angle, &self.footing, bar)
    }

    fn carried_height_mm(&self, cross: &CrossBike, changes: &PositionChanges) -> f64 {
        self.footing.leg_extension_mm(self.saddle.height.mm())
            - cross.footing.longest_mm()
            - changes.lower_by.mm()
    }

    fn carried_setback_mm(&self, cross: &CrossBike, changes: &PositionChanges) -> f64 {
        let longer_crank = cross.footing.crank.mm() - self.footing.crank.mm();
        let knee = if changes.keep_knee_over_pedal { longer_crank } else { 0.0 };
        self.saddle.setback.mm() - knee
    }
}

impl PositionView {
    fn new(tip: BikePoint, height_mm: f64, seat_angle: SeatAngle, footing: &Footing, bar: BikePoint) -> Self {
        Self {
            saddle_tip: tip,
            saddle_top: on_seat_line(seat_angle, height_mm),
            pedal: on_seat_line(seat_angle, -footing.crank.mm()),
            sole: on_seat_line(seat_angle, -footing.longest_mm()),
            bar,
        }
    }

    /// How far the tip is ahead of the seat tube line at the saddle's height: what sliding on the rails changes.
    fn rail_place_mm(&self) -> f64 {
        self.saddle_tip.x_mm - self.saddle_top.x_mm
    }
}
