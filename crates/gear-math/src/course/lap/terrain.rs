//! A course cut into short steps, with everything about each that does not depend on the gears.

use crate::course::course::Course;
use crate::course::lap::motion::{Motion, Stretch};
use crate::course::lap::setup::{Begin, LapSetup};
use crate::course::lap::uncertainty::Moved;
use crate::course::quantity::{CornerSpeed, Step};
use crate::course::segment::Segment;
use crate::physics::GRAVITY;
use crate::rider::{
    Air, BalanceSpeed, Bike, FASTEST_ON_FOOT, Gradient, Ground, Headwind, LegStrength, PowerBelowStanding,
    RideOrRun, Rider, RoadLoad, Stance, Surface,
};
use core::ops::Range;

/// How far before the line a flying lap is begun, m: how it was begun hardly shows at the line, by less than a tenth of a
/// second with a strong rider on tarmac.
const RUN_IN_M: f64 = 600.0;
/// How far beyond the line the rider looks ahead on a flying lap, m.
const RUN_OUT_M: f64 = 200.0;
/// Part of a step that a stretch may be longer without another step, against rounding.
const ROUNDING: f64 = 1e-9;

/// One step of the course.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Cell {
    /// What holds and drives the bike.
    pub(in crate::course) stretch: Stretch,
    /// Height gained, m.
    pub(in crate::course) rise: f64,
    /// Highest speed round the corner it lies in, m/s.
    pub(in crate::course) corner: f64,
    /// Highest speed at its end, for this corner or a coming one, m/s.
    pub(in crate::course) ceiling: f64,
    /// Time to cover it on foot, obstacle included, s.
    pub(in crate::course) foot_time: f64,
    /// Speed on foot, m/s.
    pub(in crate::course) foot_speed: f64,
    /// Whether an obstacle stands on it.
    pub(in crate::course) blocked: bool,
    /// Which stretch of the course it belongs to.
    pub(in crate::course) segment: u32,
}

/// Power at the rear wheel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Drive {
    /// What the rider holds, W.
    pub(in crate::course) power: f64,
    /// Leg strength: power at the top of the parabola in W, and the crank speed at which it is zero in 1/s.
    pub(in crate::course) strength: Option<(f64, f64)>,
}

impl Drive {
    /// Power at a crank speed in turns per second: what is held, or what the legs can give if that is less.
    #[inline]
    pub(in crate::course) fn at(&self, turns: f64) -> f64 {
        let Some((peak, fastest)) = self.strength else { return self.power };
        let share = turns / fastest;
        self.power.min(4.0 * peak * share * (1.0 - share).max(0.0))
    }
}

/// The course in steps, for one rider.
///
/// A flying lap is one of many: the end of the lap before and the beginning of the one after are part of the way, so
/// that it is begun and ended as the quickest rider would.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::course) struct Terrain {
    pub(in crate::course) cells: Vec<Cell>,
    /// The steps that make the lap.
    pub(in crate::course) lap: Range<usize>,
    pub(in crate::course) motion: Motion,
    pub(in crate::course) drive: Drive,
    /// Weight of everything that is moved, N.
    pub(in crate::course) weight: f64,
    /// Constant bearing force, N.
    pub(in crate::course) bearing: f64,
    /// Drivetrain efficiency.
    pub(in crate::course) efficiency: f64,
    /// Slowest crank, turns per second.
    pub(in crate::course) slowest_crank: f64,
    /// Fastest crank, turns per second.
    pub(in crate::course) fastest_crank: f64,
    /// Slowest speed in balance, m/s.
    pub(in crate::course) balance: f64,
    /// Time lost getting off and getting on, s.
    pub(in crate::course) off: f64,
    pub(in crate::course) on: f64,
}

impl Terrain {
    /// Cuts `course` into steps no longer than `step`, with the uncertain inputs moved as `moved` says.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    pub(in crate::course) fn new(
        course: &Course,
        setup: &LapSetup,
        step: Step,
        moved: &Moved,
    ) -> Result<Self, PowerBelowStanding> {
        let person = Person::new(setup, moved)?;
        let mut cells = Vec::with_capacity((course.length_m() / step.m()) as usize + course.segments().len());
        for (segment, number) in course.segments().iter().zip(0..) {
            person.cut(segment, number, step, &mut cells);
        }
        let mut terrain = person.terrain(cells);
        if setup.begin == Begin::Flying {
            terrain.surround();
        }
        terrain.brake_ahead(setup.mounting.braking.m_per_s2());
        Ok(terrain)
    }

    /// Puts the end of the lap in front and its beginning behind.
    fn surround(&mut self) {
        let lap = core::mem::take(&mut self.cells);
        let before = steps_for(RUN_IN_M, lap.iter().rev());
        let after = steps_for(RUN_OUT_M, lap.iter());
        let first = (lap.len() - before % lap.len()) % lap.len();
        let count = before + lap.len() + after;
        self.lap = before..before + lap.len();
        self.cells = lap.iter().cycle().skip(first).take(count).copied().collect();
    }

    /// Distance of the end of every step of the lap from the line, m.
    pub(in crate::course) fn ends(&self) -> Vec<f64> {
        let mut at = 0.0;
        let end = |cell: &Cell| {
            at += cell.stretch.length;
            at
        };
        self.cells[self.lap.clone()].iter().map(end).collect()
    }

    /// Lowers every ceiling so that braking at `braking` m/s² in front of a corner suffices.
    fn brake_ahead(&mut self, braking: f64) {
        let mut ahead = f64::INFINITY;
        for cell in self.cells.iter_mut().rev() {
            cell.ceiling = cell.corner.min(ahead);
            let braked = (cell.ceiling * cell.ceiling + 2.0 * braking * cell.stretch.length).sqrt();
            ahead = cell.corner.min(braked);
        }
    }
}

/// How many steps, taken round and round, make up a way.
fn steps_for<'a>(way_m: f64, lap: impl Iterator<Item = &'a Cell> + Clone) -> usize {
    let mut left = way_m;
    let on_the_way = |cell: &&Cell| {
        let more = left > 0.0;
        left -= cell.stretch.length;
        more
    };
    lap.cycle().take_while(on_the_way).count()
}

/// Rider, bike and air as they are on every part of the course.
struct Person<'a> {
    setup: &'a LapSetup,
    moved: &'a Moved,
    rider: Rider,
    bike: Bike,
    air: Air,
    on_foot: RideOrRun,
    /// The same where the bike is carried, as over obstacles.
    carrying: RideOrRun,
}

impl<'a> Person<'a> {
    fn new(setup: &'a LapSetup, moved: &'a Moved) -> Result<Self, PowerBelowStanding> {
        let (rider, bike) = (moved.rider(&setup.rider), moved.bike(&setup.bike));
        let air = Air { headwind: Headwind::NONE, ..setup.air };
        let on_foot = RideOrRun::new(rider, bike, air, setup.limits)?;
        let carrying = RideOrRun::new(rider.carrying(), bike, air, setup.limits)?;
        Ok(Self { setup, moved, rider, bike, air, on_foot, carrying })
    }

    fn load(&self, ground: &Ground) -> RoadLoad {
        let load =
            RoadLoad::new(self.rider.with(&self.bike), ground.rolling, &self.air, self.bike.efficiency);
        RoadLoad { wheels: self.setup.wheels, ..load }
    }

    fn cut(&self, segment: &Segment, number: u32, step: Step, cells: &mut Vec<Cell>) {
        let count = (segment.length.m() / step.m() - ROUNDING).ceil().max(1.0);
        let cell = Cell { segment: number, ..self.cell(segment, count) };
        cells.resize(cells.len() + count as usize, cell);
    }

    /// One of `count` equal steps of a stretch.
    fn cell(&self, segment: &Segment, count: f64) -> Cell {
        let ground = self.moved.ground(&segment.surface.ground_under(self.bike.tyre));
        let resistance = self.load(&ground).resistance(segment.gradient);
        let foot_speed = self.foot_speed(segment, &ground);
        let length = segment.length.m() / count;
        let obstacle = segment.obstacle.map_or(0.0, |obstacle| obstacle.time.s()) / count;
        let corner = segment.corner.map_or(f64::INFINITY, CornerSpeed::m_per_s);
        Cell {
            stretch: Stretch {
                length,
                resistance: resistance.gravity + resistance.rolling + resistance.bearing,
                grip: self.grip(&ground, segment.gradient),
            },
            rise: segment.rise_m() / count,
            corner,
            ceiling: corner,
            foot_time: length / foot_speed + obstacle,
            foot_speed,
            blocked: segment.obstacle.is_some(),
            segment: 0,
        }
    }

    /// Downhill nobody is taken to run faster than on the level: an estimate, as nothing was measured with a bike.
    fn foot_speed(&self, segment: &Segment, ground: &Ground) -> f64 {
        let climb = segment.gradient.uphill();
        let question = if segment.obstacle.is_some() { &self.carrying } else { &self.on_foot };
        question.foot_speed(ground, climb).m_per_s().min(FASTEST_ON_FOOT)
    }

    /// The largest mean drive force before the wheel slips: what holds the bike on the slope where it just does.
    fn grip(&self, ground: &Ground, gradient: Gradient) -> f64 {
        let normal = self.weight() / gradient.rise_over_run().hypot(1.0);
        let drive = |stance: Stance| stance.drive_n(ground.friction, ground.rolling, normal);
        self.setup.limits.grip.map_or(f64::INFINITY, drive)
    }

    fn weight(&self) -> f64 {
        self.rider.with(&self.bike).kg() * GRAVITY
    }

    fn terrain(&self, cells: Vec<Cell>) -> Terrain {
        let level = self.load(&Surface::Tarmac.ground());
        let resistance = level.resistance(Gradient::LEVEL);
        let efficiency = self.bike.efficiency.share();
        let mounting = self.moved.mounting(&self.setup.mounting);
        Terrain {
            lap: 0..cells.len(),
            cells,
            motion: Motion {
                mass: level.effective_mass(self.setup.inertia, self.bike.wheel).kg(),
                air: resistance.air,
                bearing: resistance.bearing_growth,
            },
            drive: Drive {
                power: efficiency * self.rider.power.watts(),
                strength: self.setup.limits.force.map(|legs| strength(&legs, efficiency)),
            },
            weight: self.weight(),
            bearing: resistance.bearing,
            efficiency,
            slowest_crank: self.rider.lowest_cadence.rpm() / 60.0,
            fastest_crank: self.rider.highest_cadence.rpm() / 60.0,
            balance: self.setup.limits.balance.map_or(0.0, BalanceSpeed::m_per_s),
            off: mounting.off.s(),
            on: mounting.on.s(),
        }
    }
}

/// Top of the parabola of usable power at the wheel in W, and the crank speed at which it is zero in 1/s.
fn strength(legs: &LegStrength, efficiency: f64) -> (f64, f64) {
    (efficiency * legs.usable.share() * legs.peak.watts(), 2.0 * legs.optimal.rpm() / 60.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    use crate::course::{Mounting, StartSpeed};
    use crate::rider::{BikeMass, BodyMass, KitMass, RidingLimits, Stance};
    use crate::{Cadence, Circumference, Drivetrain, Power};

    fn setup() -> LapSetup {
        let rider =
            Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(400.0).unwrap());
        let drivetrain =
            Drivetrain { chainset: "44".parse().unwrap(), cassette: "13-17-25".parse().unwrap() };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
        let begin = Begin::Rolling(StartSpeed::new(4.0).unwrap());
        LapSetup { begin, ..LapSetup::new(rider, bike, Air::STILL) }
    }

    fn terrain(rows: &str, step_m: f64, setup: &LapSetup) -> Terrain {
        Terrain::new(&rows.parse().unwrap(), setup, Step::new(step_m).unwrap(), &Moved::NOT).unwrap()
    }

    /// The legs' own parabola, up to what is held.
    #[test]
    fn the_drive_is_what_the_legs_give_or_what_is_held() {
        let setup = setup();
        let legs = LegStrength::ENDURING;
        let limits = RidingLimits { force: Some(legs), ..setup.limits };
        let drive = terrain("50; 0; mud", 1.0, &LapSetup { limits, ..setup }).drive;
        let efficiency = setup.bike.efficiency.share();
        for rpm in [20.0, 40.0, 60.0, 115.0, 180.0, 215.0] {
            let legs =
                legs.usable.share() * legs.power(Cadence::new(rpm).unwrap_or(Cadence::SPINNING)).watts();
            if Cadence::new(rpm).is_ok() {
                let expected = efficiency * legs.min(400.0);
                assert!((drive.at(rpm / 60.0) - expected).abs() < 1e-6, "{rpm}: {}", drive.at(rpm / 60.0));
            }
        }
        assert!(drive.at(300.0 / 60.0) <= 0.0, "nobody drives so fast");
        let tireless = LapSetup { limits: RidingLimits { force: None, ..setup.limits }, ..setup };
        let slow = terrain("50; 0; mud", 1.0, &tireless).drive.at(0.1);
        assert!((slow - efficiency * 400.0).abs() < 1e-9);
    }

    #[test]
    fn stretches_are_cut_into_equal_steps_no_longer_than_asked() {
        let cut = terrain("10; 0; mud\n0.3; 0; firm grass\n7; 3; mud; foot 4", 3.0, &setup());
        let lengths: Vec<f64> = cut.cells.iter().map(|cell| cell.stretch.length).collect();
        assert_eq!(lengths, [vec![2.5; 4], vec![0.3], vec![7.0 / 3.0; 3]].concat());
        let expected = [2.5, 5.0, 7.5, 10.0, 10.3, 10.3 + 7.0 / 3.0, 10.3 + 14.0 / 3.0, 17.3];
        let ends = cut.ends();
        assert_eq!(ends.len(), 8);
        assert!(ends.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-9), "{ends:?}");
        assert_eq!(terrain("0.3; 0; mud", 0.1, &setup()).cells.len(), 3, "rounding adds none");
        let last = &cut.cells[5..];
        let total = |of: fn(&Cell) -> f64| last.iter().map(of).sum::<f64>();
        assert!((total(|it| it.foot_time) - 4.0 - 7.0 / last[0].foot_speed).abs() < 1e-9);
        assert!((total(|it| it.rise) - 7.0 * 0.03 / 1.0009_f64.sqrt()).abs() < 1e-9);
        assert!(last.iter().all(|it| it.blocked && it.segment == 2));
    }

    /// v² = v_c² + 2 a d, d before a corner; behind it nothing holds back.
    #[test]
    fn braking_before_a_corner_begins_in_time() {
        let braking = Mounting::USUAL.braking.m_per_s2();
        let found =
            terrain("20; 0; firm grass\n4; 0; firm grass; corner 14.4\n6; 0; firm grass", 2.0, &setup());
        for (at, cell) in found.cells[..10].iter().enumerate() {
            let before = 20.0 - 2.0 * (at + 1) as f64;
            assert!(
                (cell.ceiling - (16.0 + 2.0 * braking * before).sqrt()).abs() < 1e-9,
                "{at}: {}",
                cell.ceiling
            );
        }
        assert!(found.cells[10..12].iter().all(|cell| (cell.ceiling - 4.0).abs() < 1e-9));
        assert!(found.cells[12..].iter().all(|cell| cell.ceiling == f64::INFINITY));
    }

    #[test]
    fn a_flying_lap_lies_between_the_one_before_and_the_one_after() {
        for rows in ["40; 1; mud\n30; -2; firm grass", "500; 1; mud\n230; -2; firm grass"] {
            let flying = LapSetup { begin: Begin::Flying, ..setup() };
            let [alone, between] = [setup(), flying].map(|setup| terrain(rows, 5.0, &setup));
            assert_eq!(alone.lap, 0..alone.cells.len());
            let (lap, count) = (between.lap.clone(), alone.cells.len());
            assert_eq!(&between.cells[lap.clone()], &alone.cells[..]);
            assert!(between.cells.iter().zip(&between.cells[count..]).all(|(one, next)| one == next));
            let way = |cells: &[Cell]| cells.iter().map(|cell| cell.stretch.length).sum::<f64>();
            let (before, after) = (way(&between.cells[..lap.start]), way(&between.cells[lap.end..]));
            assert!((600.0..605.0).contains(&before) && (200.0..205.0).contains(&after), "{before} {after}");
        }
    }

    /// Where the wheel just slips, grip is what holds the bike on the slope; steeper there is less of it.
    #[test]
    fn grip_holds_the_bike_up_to_where_it_slips() {
        let setup = setup();
        let ground = Surface::WetSoftGrass.ground_under(setup.bike.tyre);
        let slips_at = Stance::SEATED.slip(ground.friction, ground.rolling).unwrap();
        let cell =
            |percent: f64| terrain(&format!("9; {percent}; wet soft grass"), 5.0, &setup).cells[0].stretch;
        let there = cell((1e4 * slips_at.percent()).round() / 1e4);
        let bearing = terrain("9; 0; tarmac", 5.0, &setup).bearing;
        assert!((there.grip - there.resistance + bearing).abs() < 0.01, "{there:?}");
        assert!(cell(2.0).grip > cell(20.0).grip && cell(20.0).resistance > cell(20.0).grip);
        let any = LapSetup { limits: RidingLimits { grip: None, ..setup.limits }, ..setup };
        assert!(terrain("9; 30; mud", 5.0, &any).cells[0].stretch.grip.is_infinite());
    }

    #[test]
    fn wheel_bearings_may_be_left_out() {
        let without = terrain("9; 0; mud", 5.0, &LapSetup { wheels: false, ..setup() });
        let with = terrain("9; 0; mud", 5.0, &setup());
        assert!(with.bearing > 0.0 && with.motion.bearing > 0.0);
        assert_eq!((without.bearing, without.motion.bearing), (0.0, 0.0));
        let [little, much] = [&without, &with].map(|it| it.cells[0].stretch.resistance);
        assert!((much - little - with.bearing).abs() < 1e-9);
    }
}
