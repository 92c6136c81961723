//! The chain's way round ring, tension pulley, guide pulley and sprocket.

use crate::chain::cage::Cage;
use crate::chain::frame::FrameMeasures;
use crate::chain::measures::{CageAngle, RearStop};
use crate::chain::path_error::{PathError, WheelRole};
use crate::chain::pitch_circle::{ChainPitch, PitchCircle};
use crate::chain::point::PathPoint;
use crate::gears::Gear;
use crate::solve::{Near, halved, rising_root};
use core::f64::consts::{FRAC_PI_2, TAU};

/// One wheel of a traced path.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PathWheel {
    /// Its part in the path.
    pub role: WheelRole,
    /// Its axle.
    pub centre: PathPoint,
    /// Its teeth and radii.
    pub circle: PitchCircle,
    /// Whether it turns clockwise when seen from the drive side; the guide pulley alone does not.
    pub clockwise: bool,
    /// How far the chain goes round it, in degrees: from where the run before ends to where the next begins.
    pub wrap_degrees: f64,
    /// Chain lying on it, in millimetres.
    pub chain_mm: f64,
}

/// A straight stretch of chain between two wheels, in the direction of travel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StraightRun {
    /// Where the chain leaves the wheel behind.
    pub from: PathPoint,
    /// Where it meets the wheel ahead.
    pub to: PathPoint,
    /// Length in millimetres.
    pub length_mm: f64,
}

impl StraightRun {
    /// How far below its straight line a run hangs when it is `surplus` links longer, in millimetres; 0 when it is
    /// not longer.
    ///
    /// # Formula
    /// √(⅜ · length · surplus · p), with pitch p: the arc of a shallow parabola. An estimate, for drawing: chain that
    /// hangs by more than a quarter of its length hangs less deep than this.
    #[must_use]
    pub fn sag_mm(&self, surplus: f64) -> f64 {
        (0.375 * self.length_mm * surplus.max(0.0) * ChainPitch::BICYCLE.mm()).sqrt()
    }
}

/// The whole path of the chain in one gear at one cage angle, true to scale.
///
/// Order of travel: chainring, tension pulley, guide pulley, sprocket. Run `i` goes from wheel `i` to the next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainPath {
    /// Direction of the cage.
    pub cage_angle: CageAngle,
    /// The wheels.
    pub wheels: [PathWheel; 4],
    /// The straight runs; the last is the upper run, from sprocket to ring.
    pub runs: [StraightRun; 4],
    /// Length of the whole path, in millimetres.
    pub length_mm: f64,
    /// Clear distance from the lower run to the guide pulley's pitch circle, in millimetres. Where it comes
    /// down to some 8, chain touches chain: half a plate's height on either side (an estimate).
    pub lower_run_clearance_mm: f64,
}

impl ChainPath {
    /// Traces the chain of `gear` with the cage held at `angle`.
    ///
    /// # Formula
    /// For neighbours i, j at distance D and bearing φ, turning s = ±1 with radius r: k = s_j r_j − s_i r_i, run
    /// √(D² − k²), heading θ = φ − asin(k/D); a wheel with N teeth takes N p/2π per radian of s (θ_out − θ_in).
    /// Derived from common tangents; with ring and sprocket alone it is the exact two-wheel length.
    ///
    /// # Errors
    /// [`PathError::WheelsOverlap`] when the swinging tension pulley could run into the chainring.
    ///
    /// # Example
    /// ```
    /// use gear_math::Gear;
    /// use gear_math::chain::{Cage, CageAngle, ChainDefaults, ChainPath};
    /// let cage = Cage::new(ChainDefaults::CAGE)?;
    /// let path = ChainPath::trace(Gear::new(44, 32)?, &ChainDefaults::FRAME, &cage, CageAngle::new(20.0)?)?;
    /// assert!((path.links() - 113.85).abs() < 0.01);
    /// assert!(path.runs[0].length_mm < path.runs[3].length_mm);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn trace(
        gear: Gear,
        frame: &FrameMeasures,
        cage: &Cage,
        angle: CageAngle,
    ) -> Result<Self, PathError> {
        GearPath::new(gear, frame, cage).map(|path| path.trace(angle))
    }

    /// Length of the whole path in links of one pitch.
    #[must_use]
    pub fn links(&self) -> f64 {
        self.length_mm / ChainPitch::BICYCLE.mm()
    }
}

/// A path length and how fast it changes with the cage angle in radians; both in millimetres.
#[derive(Debug, Clone, Copy)]
pub(super) struct LengthAt {
    pub(super) length: f64,
    pub(super) slope: f64,
}

/// A wheel that a chain runs on: `turning` is +1 anticlockwise, −1 clockwise.
#[derive(Debug, Clone, Copy)]
struct TurningWheel {
    centre: PathPoint,
    circle: PitchCircle,
    radius: f64,
    per_radian: f64,
    turning: f64,
}

impl TurningWheel {
    fn new(centre: PathPoint, circle: PitchCircle, turning: f64) -> Self {
        Self { centre, circle, radius: circle.radius_mm(), per_radian: circle.mm_per_radian(), turning }
    }

    /// Radians of wrap between two headings, from a quarter turn below zero up: a wrap that has just vanished stays a
    /// small negative one instead of jumping to a full turn. With the cage straight down none of the four exceeds 270
    /// degrees, and no two headings differ by more than a turn and a quarter, so one turn more or less brings it
    /// there. Those of the pulleys go on from there by what the cage has swung: far back they pass 270 degrees.
    fn wrap(&self, heading_in: f64, heading_out: f64) -> f64 {
        let turned = self.turning * (heading_out - heading_in);
        if turned < -FRAC_PI_2 {
            turned + TAU
        } else if turned >= 3.0 * FRAC_PI_2 {
            turned - TAU
        } else {
            turned
        }
    }

    /// Where chain of this heading touches the wheel.
    fn touch(&self, heading: f64) -> PathPoint {
        let (sin, cos) = heading.sin_cos();
        let reach = self.turning * self.radius;
        PathPoint { x_mm: self.centre.x_mm + reach * sin, y_mm: self.centre.y_mm - reach * cos }
    }

    fn traced(&self, role: WheelRole, wrap: f64) -> PathWheel {
        PathWheel {
            role,
            centre: self.centre,
            circle: self.circle,
            clockwise: self.turning < 0.0,
            wrap_degrees: wrap.to_degrees(),
            chain_mm: wrap * self.per_radian,
        }
    }
}

/// The straight run between two wheels: its length, its heading in radians, and the distance it was taken over.
#[derive(Debug, Clone, Copy)]
struct Tangent {
    length: f64,
    heading: f64,
    offset: [f64; 2],
    lean: f64,
}

impl Tangent {
    fn between(from: &TurningWheel, to: &TurningWheel) -> Self {
        let offset = from.centre.to(to.centre);
        let [dx, dy] = offset;
        let lean = to.turning * to.radius - from.turning * from.radius;
        let length = (dx * dx + dy * dy - lean * lean).max(0.0).sqrt();
        let heading = (dy * length - dx * lean).atan2(dx * length + dy * lean);
        Self { length, heading, offset, lean }
    }

    /// How length and heading change when the wheel ahead moves by `step`.
    fn change(&self, step: [f64; 2]) -> [f64; 2] {
        let [dx, dy] = self.offset;
        let squared = dx * dx + dy * dy;
        let stretch = (dx * step[0] + dy * step[1]) / self.length;
        let turn = (dx * step[1] - dy * step[0] + self.lean * stretch) / squared;
        [stretch, turn]
    }
}

/// The path of one gear, prepared so that each cage angle costs one tangent: `cage_down` is the heading of the run from
/// tension to guide pulley and `guide_down` the guide pulley's wrap while the cage hangs straight down.
#[derive(Debug, Clone, Copy)]
pub(super) struct GearPath {
    ring: TurningWheel,
    guide: TurningWheel,
    sprocket: TurningWheel,
    tension: PitchCircle,
    tension_radius: f64,
    tension_per_radian: f64,
    pulley_centres: f64,
    cage_run: f64,
    cage_down: f64,
    guide_down: f64,
    guide_run: Tangent,
    upper_run: Tangent,
    fixed: f64,
}

impl GearPath {
    pub(super) fn new(gear: Gear, frame: &FrameMeasures, cage: &Cage) -> Result<Self, PathError> {
        let ring =
            TurningWheel::new(frame.bottom_bracket(), PitchCircle::of_bicycle(gear.ring.teeth()), -1.0);
        let sprocket =
            TurningWheel::new(PathPoint::REAR_AXLE, PitchCircle::of_bicycle(gear.sprocket.teeth()), -1.0);
        let guide = TurningWheel::new(cage.guide_axle(sprocket.radius), cage.guide_circle(), 1.0);
        let path = Self::of_wheels(ring, sprocket, guide, cage);
        if ring.centre.distance_mm(guide.centre) - path.pulley_centres <= ring.radius + path.tension_radius {
            let [first, second] = [WheelRole::Chainring, WheelRole::TensionPulley];
            return Err(PathError::WheelsOverlap { first, second });
        }
        Ok(path)
    }

    fn of_wheels(ring: TurningWheel, sprocket: TurningWheel, guide: TurningWheel, cage: &Cage) -> Self {
        let tension = cage.tension_circle();
        let pulley_centres = cage.measures().pulley_centres.mm();
        let lean = guide.radius + tension.radius_mm();
        let cage_run = (pulley_centres * pulley_centres - lean * lean).max(0.0).sqrt();
        let guide_run = Tangent::between(&guide, &sprocket);
        let upper_run = Tangent::between(&sprocket, &ring);
        let cage_down = FRAC_PI_2 - lean.atan2(cage_run);
        let guide_down = guide.wrap(cage_down, guide_run.heading);
        let on_sprocket = sprocket.wrap(guide_run.heading, upper_run.heading) * sprocket.per_radian;
        let on_guide = guide_down * guide.per_radian;
        Self {
            ring,
            guide,
            sprocket,
            tension,
            tension_radius: tension.radius_mm(),
            tension_per_radian: tension.mm_per_radian(),
            pulley_centres,
            cage_run,
            cage_down,
            guide_down,
            guide_run,
            upper_run,
            fixed: cage_run + guide_run.length + upper_run.length + on_sprocket + on_guide,
        }
    }

    /// Path length and its slope with the cage `angle` radians forward of straight down.
    pub(super) fn length_at(&self, angle: f64) -> LengthAt {
        let (sin, cos) = angle.sin_cos();
        let reach = self.pulley_centres;
        let tension = self.tension_wheel(PathPoint {
            x_mm: self.guide.centre.x_mm + reach * sin,
            y_mm: self.guide.centre.y_mm - reach * cos,
        });
        let lower = Tangent::between(&self.ring, &tension);
        let length = self.fixed
            + lower.length
            + self.ring.wrap(self.upper_run.heading, lower.heading) * self.ring.per_radian
            + (tension.wrap(lower.heading, self.cage_down) - angle) * tension.per_radian
            - angle * self.guide.per_radian;
        let [stretch, turn] = lower.change([reach * cos, reach * sin]);
        let slope =
            stretch - turn * self.ring.per_radian - (1.0 - turn) * tension.per_radian - self.guide.per_radian;
        LengthAt { length, slope }
    }

    /// The largest angle, up to `limit`, at which the chain still touches the guide pulley and a pull on it
    /// still shortens the path, with the length there; beyond, no cage stands.
    pub(super) fn tightest(&self, limit: f64) -> (f64, f64) {
        let limit = limit.min(self.guide_down);
        let at = self.length_at(limit);
        if at.slope < 0.0 { (limit, at.length) } else { self.shortest_before(limit) }
    }

    fn shortest_before(&self, limit: f64) -> (f64, f64) {
        /// Of less than a right angle: what is left is below rounding.
        const HALVINGS: u32 = 50;
        let (falling, _) = halved(0.0, limit, HALVINGS, |angle| self.length_at(angle).slope < 0.0);
        (falling, self.length_at(falling).length)
    }

    /// The angle in radians, of those between two others, at which the path is as long as `chain` or nearest to it. It falls
    /// from `low` to `high`, as it does between the rest position and [`tightest`](Self::tightest).
    pub(super) fn angle_of(&self, chain: f64, (low, high): (f64, f64), start: f64) -> f64 {
        /// Millimetres of chain from which one more step ends the search: what that leaves is far below 1e-6 of a link.
        const CLOSE_ENOUGH_MM: f64 = 1e-4;
        rising_root((low, high), start, Near::Value(CLOSE_ENOUGH_MM), |angle| {
            let at = self.length_at(angle);
            (chain - at.length, -at.slope)
        })
    }

    /// The rest position at which the path is `links` long; `None` when it is that long at none.
    pub(super) fn rear_stop_for(&self, links: f64) -> Option<RearStop> {
        let chain = links * ChainPitch::BICYCLE.mm();
        let [low, high] = [RearStop::LIMITS.min, RearStop::LIMITS.max].map(f64::to_radians);
        let [most, least] = [low, high].map(|angle| self.length_at(angle).length);
        let angle = || self.angle_of(chain, (low, high), low.midpoint(high));
        (least..=most).contains(&chain).then(|| RearStop::nearest(angle().to_degrees()))
    }

    pub(super) fn trace(&self, angle: CageAngle) -> ChainPath {
        let radians = angle.degrees().to_radians();
        let tension = self.tension_wheel(self.guide.centre.below(radians, self.pulley_centres));
        let lower = Tangent::between(&self.ring, &tension);
        let cage = self.cage_down + radians;
        let [guide, upper] = [self.guide_run, self.upper_run];
        let wheels = [
            self.ring.traced(WheelRole::Chainring, self.ring.wrap(upper.heading, lower.heading)),
            tension.traced(WheelRole::TensionPulley, tension.wrap(lower.heading, self.cage_down) - radians),
            self.guide.traced(WheelRole::GuidePulley, self.guide_down - radians),
            self.sprocket.traced(WheelRole::Sprocket, self.sprocket.wrap(guide.heading, upper.heading)),
        ];
        let run = |from: &TurningWheel, to: &TurningWheel, heading, length_mm| StraightRun {
            from: from.touch(heading),
            to: to.touch(heading),
            length_mm,
        };
        let runs = [
            run(&self.ring, &tension, lower.heading, lower.length),
            run(&tension, &self.guide, cage, self.cage_run),
            run(&self.guide, &self.sprocket, guide.heading, guide.length),
            run(&self.sprocket, &self.ring, upper.heading, upper.length),
        ];
        ChainPath {
            cage_angle: angle,
            wheels,
            runs,
            length_mm: self.length_at(radians).length,
            lower_run_clearance_mm: self.clearance(&runs[0], lower.heading),
        }
    }

    fn tension_wheel(&self, centre: PathPoint) -> TurningWheel {
        TurningWheel {
            centre,
            circle: self.tension,
            radius: self.tension_radius,
            per_radian: self.tension_per_radian,
            turning: -1.0,
        }
    }

    fn clearance(&self, lower: &StraightRun, heading: f64) -> f64 {
        let [dx, dy] = lower.from.to(self.guide.centre);
        let (sin, cos) = heading.sin_cos();
        sin * dx - cos * dy - self.guide.radius
    }
}
