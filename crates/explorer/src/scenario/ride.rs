//! Riding against going on foot: the rider, the bike, the ground and the climb.

use super::Scenario;
use super::parse::Reader;
use crate::field::Field;
use crate::report::Side;
use gear_math::{
    Air, AirDensity, BalanceSpeed, Bike, BikeMass, BodyMass, Circumference, Climb, ClimbLength, CrankLength,
    DragArea, Drivetrain, DrivetrainEfficiency, FootCostFactor, FootFactor, Friction, Gaits, GrossEfficiency,
    Ground, Headwind, KitMass, LegStrength, Level, LoadFactor, MarkKind, PeakPower, Power, RearShare, Reason,
    ReserveShare, RideOrRun, Rider, RidingLimits, RollingCoefficient, SecondsLost, SlopeShare, Speed, Stance,
    StandingMetabolism, StrengthShare, Surface, WorkReserve,
};

/// What the rider knows of the ground better than the table of surfaces does.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct OwnGround {
    /// Rolling resistance.
    pub rolling: Option<RollingCoefficient>,
    /// Cost on foot.
    pub foot: Option<FootFactor>,
    /// Grip of the tyre.
    pub friction: Option<Friction>,
}

impl OwnGround {
    /// Whether anything is known better.
    #[must_use]
    pub fn any(&self) -> bool {
        *self != Self::default()
    }
}

/// Everything the question of riding or running is worked out from.
#[derive(Debug, Clone, PartialEq)]
pub struct RideInputs {
    /// The rider in this effort.
    pub rider: Rider,
    /// Power as typed; an estimate from the level takes its place when it is left empty.
    pub typed_power: Option<Power>,
    /// The rider's standard.
    pub level: Level,
    /// The bike, with set-up A; B differs only in rings and sprockets.
    pub bike: Bike,
    /// Air, wind and posture.
    pub air: Air,
    /// The kind of ground.
    pub surface: Surface,
    /// What is known better of it.
    pub own: OwnGround,
    /// What both come to.
    pub ground: Ground,
    /// The slope.
    pub climb: Climb,
    /// Its length.
    pub length: ClimbLength,
    /// Time lost in getting off and on.
    pub lost: SecondsLost,
    /// Slowest speed in balance, where it counts.
    pub balance: Option<BalanceSpeed>,
    /// How the rider sits.
    pub stance: Stance,
    /// Whether the grip of the rear wheel counts.
    pub grip_counts: bool,
    /// Share of the leg strength that lasts, where it counts.
    pub legs: Option<StrengthShare>,
    /// Peak power of one pedal turn.
    pub peak: PeakPower,
    /// Work in reserve.
    pub reserve: WorkReserve,
    /// Share of it for this climb.
    pub share: ReserveShare,
    /// Speed into the climb.
    pub entry: Speed,
    /// A and B, ready to be asked.
    pub questions: [RideOrRun; 2],
}

impl RideInputs {
    /// Understands the fields; `scenario` holds what the rest of the bench has already come to.
    pub(super) fn read(reader: &mut Reader<'_>, good: &Self, scenario: &Scenario) -> Self {
        let surface = reader.choice(Field::Ground, good.surface, &SURFACES);
        let own = OwnGround::read(reader, good.own);
        let level = reader.choice(Field::Level, good.level, &LEVELS);
        let typed_power = reader.optional_quantity(Field::Power, good.typed_power, Power::new, Power::watts);
        let mut inputs = Self {
            rider: rider(reader, good, scenario),
            typed_power,
            level,
            bike: bike(reader, &good.bike, scenario),
            air: air(reader, good.air),
            surface,
            own,
            ground: own.on(surface, good.ground.slope_share),
            climb: reader.climb(Field::Slope, good.climb),
            length: reader.quantity(Field::ClimbLength, good.length, ClimbLength::new, ClimbLength::m),
            lost: reader.quantity(Field::SecondsLost, good.lost, SecondsLost::new, SecondsLost::s),
            ..limits(reader, good)
        };
        inputs.ground.slope_share =
            reader.quantity(Field::SlopeShare, good.ground.slope_share, SlopeShare::new, SlopeShare::value);
        inputs.rider.power = typed_power.unwrap_or_else(|| level.power(inputs.rider.body));
        inputs.ask(reader, good, scenario);
        inputs
    }

    /// Puts rider and bikes together; where the power does not even carry the rider, the last good rider stands in.
    fn ask(&mut self, reader: &mut Reader<'_>, good: &Self, scenario: &Scenario) {
        let drivetrains = [scenario.drivetrain(Side::A), scenario.drivetrain(Side::B)];
        self.keep_within_strength(reader, good);
        if let Err(error) = self.put_together(drivetrains) {
            let kept = format!("{}\u{a0}W at {}\u{a0}kg", good.rider.power.watts(), good.rider.body.kg());
            reader.complain(Field::Power, &error, kept);
            let Rider { body, power, efficiency, standing, .. } = good.rider;
            self.rider = Rider { body, power, efficiency, standing, ..self.rider };
            self.typed_power = good.typed_power;
            // Cannot fail: whether a power carries a rider depends on nothing but what was just put back.
            let _ = self.put_together(drivetrains);
        }
    }

    /// A power that the legs give at no cadence would put the rider on foot everywhere; the last good one stands in.
    fn keep_within_strength(&mut self, reader: &mut Reader<'_>, good: &Self) {
        let Some(lasting) = self.legs().map(|legs| legs.lasting_power()) else { return };
        if self.rider.power.watts() <= lasting.watts() {
            return;
        }
        let message = format!(
            "this is more than the {:.0}\u{a0}W that your legs give for that long: type less, or choose a shorter effort or a higher peak power among the finer settings",
            lasting.watts()
        );
        let kept_legs = good.legs().map_or(f64::INFINITY, |legs| legs.lasting_power().watts());
        let legs = if kept_legs.is_finite() {
            format!(", from legs that give {kept_legs:.0}\u{a0}W")
        } else {
            String::new()
        };
        reader.complain(Field::Power, &message, format!("{:.0}\u{a0}W{legs}", good.rider.power.watts()));
        self.rider.power = good.rider.power;
        (self.typed_power, self.legs, self.peak) = (good.typed_power, good.legs, good.peak);
    }

    fn legs(&self) -> Option<LegStrength> {
        self.legs.map(|usable| LegStrength { peak: self.peak, usable, ..LegStrength::ENDURING })
    }

    fn put_together(&mut self, drivetrains: [Drivetrain; 2]) -> Result<(), gear_math::PowerBelowStanding> {
        let limits = self.limits();
        let ask = |drivetrain| RideOrRun::new(self.rider, Bike { drivetrain, ..self.bike }, self.air, limits);
        self.questions = [ask(drivetrains[0])?, ask(drivetrains[1])?];
        Ok(())
    }

    /// Whether the limit behind a mark counts.
    #[must_use]
    pub fn looks_at(&self, kind: MarkKind) -> bool {
        match kind {
            MarkKind::Ends(Reason::Force) => self.legs.is_some(),
            MarkKind::Ends(Reason::Balance) => self.balance.is_some(),
            MarkKind::Ends(Reason::Grip) | MarkKind::SlipsInJerks | MarkKind::FrontLifts => self.grip_counts,
            _ => true,
        }
    }

    /// What forces the rider off the bike.
    #[must_use]
    pub fn limits(&self) -> RidingLimits {
        RidingLimits {
            balance: self.balance,
            grip: self.grip_counts.then_some(self.stance),
            force: self.legs(),
        }
    }

    /// Something to read the demo bench with.
    #[expect(clippy::expect_used, reason = "fixed values within every limit, run by every test")]
    pub(super) fn bare(drivetrain: Drivetrain) -> Self {
        let fixed = "within its limits";
        let power = Power::new(200.0).expect(fixed);
        let rider = Rider::new(BodyMass::new(60.0).expect(fixed), KitMass::new(2.0).expect(fixed), power);
        let wheel = Circumference::new(2100.0).expect(fixed);
        let bike = Bike::new(BikeMass::new(9.0).expect(fixed), drivetrain, wheel);
        let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::ALL).expect(fixed);
        Self {
            rider,
            typed_power: Some(power),
            level: Level::Club,
            bike,
            air: Air::STILL,
            surface: Surface::FirmGrass,
            own: OwnGround::default(),
            ground: Surface::FirmGrass.ground(),
            climb: Climb::LEVEL,
            length: ClimbLength::new(50.0).expect(fixed),
            lost: SecondsLost::PRACTISED,
            balance: Some(BalanceSpeed::USUAL),
            stance: Stance::SEATED,
            grip_counts: true,
            legs: Some(StrengthShare::MINUTES),
            peak: LegStrength::ENDURING.peak,
            reserve: WorkReserve::USUAL,
            share: ReserveShare::EACH_LAP,
            entry: Speed::from_km_per_h(20.0).expect(fixed),
            questions: [question.clone(), question],
        }
    }
}

impl OwnGround {
    fn read(reader: &mut Reader<'_>, good: Self) -> Self {
        Self {
            rolling: reader.optional_quantity(
                Field::Rolling,
                good.rolling,
                RollingCoefficient::new,
                RollingCoefficient::value,
            ),
            foot: reader.optional_quantity(Field::FootGround, good.foot, FootFactor::new, FootFactor::value),
            friction: reader.optional_quantity(Field::Friction, good.friction, Friction::new, Friction::mu),
        }
    }

    fn on(self, surface: Surface, slope_share: SlopeShare) -> Ground {
        let typical = surface.ground();
        Ground {
            rolling: self.rolling.unwrap_or(typical.rolling),
            foot: self.foot.unwrap_or(typical.foot),
            friction: self.friction.unwrap_or(typical.friction),
            slope_share,
        }
    }
}

fn rider(reader: &mut Reader<'_>, good: &RideInputs, scenario: &Scenario) -> Rider {
    let good = good.rider;
    Rider {
        body: reader.quantity(Field::BodyMass, good.body, BodyMass::new, BodyMass::kg),
        kit: reader.quantity(Field::KitMass, good.kit, KitMass::new, KitMass::kg),
        power: good.power,
        efficiency: reader.quantity(
            Field::Efficiency,
            good.efficiency,
            GrossEfficiency::new,
            GrossEfficiency::share,
        ),
        standing: reader.quantity(
            Field::Standing,
            good.standing,
            StandingMetabolism::new,
            StandingMetabolism::w_per_kg,
        ),
        foot_cost: reader.quantity(
            Field::FootCost,
            good.foot_cost,
            FootCostFactor::new,
            FootCostFactor::value,
        ),
        gaits: reader.choice(
            Field::OnFoot,
            good.gaits,
            &[("run-or-walk", Gaits::RunOrWalk), ("run", Gaits::RunOnly)],
        ),
        lowest_cadence: scenario.window.low,
        highest_cadence: scenario.window.high,
        crank: reader.quantity(Field::Crank, good.crank, CrankLength::new, CrankLength::mm),
    }
}

fn bike(reader: &mut Reader<'_>, good: &Bike, scenario: &Scenario) -> Bike {
    Bike {
        mass: reader.quantity(Field::BikeMass, good.mass, BikeMass::new, BikeMass::kg),
        drivetrain: scenario.drivetrain(Side::A),
        wheel: scenario.wheel.roll_out(),
        efficiency: reader.quantity(
            Field::DrivetrainShare,
            good.efficiency,
            DrivetrainEfficiency::new,
            DrivetrainEfficiency::share,
        ),
        load: reader.quantity(Field::Carry, good.load, LoadFactor::new, LoadFactor::value),
    }
}

fn air(reader: &mut Reader<'_>, good: Air) -> Air {
    Air {
        drag_area: reader.quantity(Field::DragArea, good.drag_area, DragArea::new, DragArea::m2),
        density: reader.quantity(Field::AirDensity, good.density, AirDensity::new, AirDensity::kg_per_m3),
        headwind: reader.quantity(Field::Headwind, good.headwind, Headwind::new, Headwind::m_per_s),
        foot_drag: good.foot_drag,
    }
}

/// What ends riding, and short efforts; the rest as in `good`.
fn limits(reader: &mut Reader<'_>, good: &RideInputs) -> RideInputs {
    let rear = reader.quantity(Field::RearWeight, good.stance.rear, RearShare::new, RearShare::value);
    RideInputs {
        balance: reader.optional_quantity(
            Field::Balance,
            good.balance,
            BalanceSpeed::new,
            BalanceSpeed::m_per_s,
        ),
        stance: Stance { rear, ..good.stance },
        grip_counts: reader.choice(Field::GripCounts, good.grip_counts, &[("on", true), ("off", false)]),
        legs: reader.choice(Field::Legs, good.legs, &LEGS),
        peak: reader.quantity(Field::PeakPower, good.peak, PeakPower::new, PeakPower::watts),
        reserve: reader.quantity(Field::Reserve, good.reserve, WorkReserve::new, WorkReserve::kj),
        share: reader.quantity(Field::ReserveShare, good.share, ReserveShare::new, ReserveShare::value),
        entry: reader.quantity(Field::EntrySpeed, good.entry, Speed::from_km_per_h, Speed::km_per_h),
        ..good.clone()
    }
}

pub(super) const SURFACES: [(&str, Surface); 8] = [
    ("tarmac", Surface::Tarmac),
    ("gravel", Surface::PackedGravel),
    ("firm-grass", Surface::FirmGrass),
    ("wet-grass", Surface::WetSoftGrass),
    ("mud", Surface::Mud),
    ("deep-mud", Surface::DeepMud),
    ("wet-sand", Surface::WetPackedSand),
    ("loose-sand", Surface::LooseSand),
];

const LEVELS: [(&str, Level); 4] = [
    ("occasional", Level::Occasional),
    ("club", Level::Club),
    ("racing", Level::Racing),
    ("national", Level::National),
];

const LEGS: [(&str, Option<StrengthShare>); 5] = [
    ("minutes", Some(StrengthShare::MINUTES)),
    ("30s", Some(StrengthShare::SECONDS_30)),
    ("15s", Some(StrengthShare::SECONDS_15)),
    ("5s", Some(StrengthShare::SECONDS_5)),
    ("off", None),
];
