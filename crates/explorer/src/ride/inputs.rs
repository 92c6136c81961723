//! Riding against going on foot: the rider, the bike, the ground and the climb.

use crate::bench::cadence_window::CadenceWindow;
use crate::bench::field::{Field, Group};
use crate::bench::reader::Reader;
use crate::number::trimmed;
use crate::ride::words::complaints as words;
use crate::side::Side;
use crate::tyre::inputs::Burden;
use gear_math::gears::GearSet;
use gear_math::rider::{
    Air, BalanceSpeed, BikeMass, BodyMass, Climb, ClimbLength, CrankLength, CriticalPower, EffortAccount,
    EffortBudget, EffortPrice, FootBike, FootFactor, Friction, Gaits, KitMass, LegStrength, Level, MarkKind,
    PeakPower, Reason, RepaidShare, ReserveShare, RidingLimits, RollingCoefficient, SecondsLost, SlopeShare,
    Spending, Stance, StrengthShare, WorkReserve,
};
use gear_math::wheel::{MountedWidth, WidthFactor};
use gear_math::{Bike, Circumference, Drivetrain, Ground, Power, RideOrRun, Rider, Speed, Surface};

/// The groups of fields that stand in the section on riding or running.
pub(crate) const GROUPS: &[Group] = &[
    Group::Ride,
    Group::RideRider,
    Group::RideGround,
    Group::RideLimits,
    Group::RideEffort,
    Group::RideProbe,
];

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

/// What the rest of the bench has already come to.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Given {
    pub(crate) drivetrains: [Drivetrain; 2],
    /// Gears that are not to be used.
    pub(crate) avoid: [GearSet; 2],
    pub(crate) wheels: [Circumference; 2],
    pub(crate) window: CadenceWindow,
    pub(crate) crank: CrankLength,
    /// The tyre as mounted.
    pub(crate) tyres: [MountedWidth; 2],
    /// Whether the lap is ridden on the reserve over and over.
    pub(crate) is_repeated: bool,
}

/// What a joule of the reserve is taken to be worth on this climb.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum LapPrice {
    /// What it usually is: no lap has told yet.
    #[default]
    Usual,
    /// The same for now: the lap that is to tell is on its way.
    Awaited,
    /// What it is on the lap with either bike.
    Found([EffortPrice; 2]),
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
    /// The bikes, A and B.
    pub bikes: [Bike; 2],
    /// Air, wind and posture.
    pub air: Air,
    /// The kind of ground.
    pub surface: Surface,
    /// What is known better of it.
    pub own: OwnGround,
    /// What both come to under A's and B's tyres.
    pub grounds: [Ground; 2],
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
    /// Peak power of one pedal turn as typed; an estimate from the power takes its place when it is left empty.
    pub typed_peak: Option<PeakPower>,
    /// What it comes to.
    pub peak: PeakPower,
    /// Work in reserve as typed; an estimate from body and power takes its place when it is left empty.
    pub typed_reserve: Option<WorkReserve>,
    /// What it comes to.
    pub reserve: WorkReserve,
    /// Share of it for this climb, at most.
    pub share: ReserveShare,
    /// Whether the lap is ridden on the reserve over and over, so that a joule has the price that it has there; else all of the share
    /// is spent.
    pub is_repeated: bool,
    /// What the lap of this bench says that a joule is worth; read from no field.
    pub lap_price: LapPrice,
    /// What of the power left unused below the sustainable one comes back to it.
    pub repaid: RepaidShare,
    /// Speed into the climb.
    pub entry: Speed,
    /// A and B, ready to be asked.
    pub questions: [RideOrRun; 2],
}

impl RideInputs {
    /// Understands the fields.
    pub(crate) fn read(reader: &mut Reader<'_>, good: &Self, given: &Given) -> Self {
        let surface = reader.pick(Field::Ground, &Surface::ALL);
        let own = OwnGround::read(reader);
        let level = reader.pick(Field::Level, &Level::ALL);
        let typed_power = reader.quantity_or_none(Field::Power);
        let mut inputs = Self {
            rider: rider(reader, good, given),
            typed_power,
            level,
            bikes: bikes(reader, given),
            air: air(reader, good.air),
            surface,
            own,
            grounds: own.on(surface, given.tyres, reader.quantity(Field::SlopeShare)),
            climb: reader.climb(Field::Slope, good.climb),
            length: reader.quantity(Field::ClimbLength),
            is_repeated: given.is_repeated,
            lap_price: LapPrice::Usual,
            lost: reader.quantity(Field::SecondsLost),
            ..limits(reader, good)
        };
        inputs.rider.power = typed_power.unwrap_or_else(|| level.power(inputs.rider.body));
        inputs.ask(reader, good);
        inputs.tell_what_is_kept(reader);
        inputs
    }

    /// Puts rider and bikes together; where the power does not even carry the rider, the last good rider stands in.
    fn ask(&mut self, reader: &mut Reader<'_>, good: &Self) {
        self.settle_reserve();
        self.settle_peak(reader);
        if let Err(error) = self.put_together() {
            let kept = words::power_and_mass(good.rider.power, good.rider.body);
            reader.complain(Field::Power, words::power(error), kept);
            let Rider { body, power, efficiency, standing, .. } = good.rider;
            self.rider = Rider { body, power, efficiency, standing, ..self.rider };
            self.typed_power = good.typed_power;
            self.settle_reserve();
            self.settle_peak(reader);
            // Cannot fail: whether a power carries a rider depends on nothing but what was just put back.
            let _ = self.put_together();
        }
    }

    /// Takes the typed peak power, or an estimate. A peak from which the power is had at no cadence would put the rider
    /// on foot everywhere, and one no higher than the power leaves nothing above it; the estimate, which is always enough,
    /// stands in for it.
    fn settle_peak(&mut self, reader: &mut Reader<'_>) {
        let Rider { power, body, .. } = self.rider;
        let estimated = PeakPower::estimated(power, body);
        self.peak = self.typed_peak.unwrap_or(estimated);
        let Some(message) = self.fault_of_peak() else { return };
        (self.typed_peak, self.peak) = (None, estimated);
        reader.complain(Field::PeakPower, message, words::estimated(self.peak.watts(), "W"));
    }

    fn fault_of_peak(&self) -> Option<String> {
        let power = self.rider.power;
        let lasting = self.legs().map(|legs| legs.lasting_power());
        match lasting.filter(|lasting| power.watts() > lasting.watts()) {
            Some(lasting) => Some(words::peak_power(lasting, power)),
            None => CriticalPower::new(power, self.reserve, self.peak).err().map(words::peak_too_low),
        }
    }

    fn settle_reserve(&mut self) {
        let Rider { power, body, .. } = self.rider;
        self.reserve = self.typed_reserve.unwrap_or_else(|| WorkReserve::estimated(power, body));
    }

    /// Names the estimate that is used while an optional field is in error and never held anything good.
    fn tell_what_is_kept(&self, reader: &mut Reader<'_>) {
        let ground = self.ground(Side::A);
        let kept = [
            (Field::Power, words::estimated(self.rider.power.watts(), "W")),
            (Field::PeakPower, words::estimated(self.peak.watts(), "W")),
            (Field::Reserve, words::estimated(self.reserve.kj(), "kJ")),
            (Field::Rolling, trimmed(ground.rolling.value())),
            (Field::FootGround, trimmed(ground.foot.value())),
            (Field::Friction, trimmed(ground.friction.mu())),
        ];
        for (field, value) in kept {
            reader.keep_instead_of_none(field, value);
        }
    }

    /// What presses on the tyres.
    #[must_use]
    pub fn burdens(&self) -> [Burden; 2] {
        let Rider { body, kit, .. } = self.rider;
        self.bikes.map(|bike| Burden { rider: body, kit, bike: bike.mass, rear: self.stance.rear })
    }

    /// Whether all that the answer for a side hangs on is the same.
    pub(crate) fn is_alike_on(&self, side: Side, other: &Self) -> bool {
        let Self { bikes, grounds, questions, lap_price, .. } = other.clone();
        let shared = Self { bikes, grounds, questions, lap_price, ..self.clone() };
        shared == *other
            && self.bike(side) == other.bike(side)
            && self.ground(side) == other.ground(side)
            && self.question(side) == other.question(side)
            && self.spending(side) == other.spending(side)
            && self.awaited().is_some() == other.awaited().is_some()
    }

    /// The bike of one set-up.
    #[must_use]
    pub const fn bike(&self, side: Side) -> &Bike {
        &self.bikes[side as usize]
    }

    /// The ground under one set-up's tyres.
    #[must_use]
    pub const fn ground(&self, side: Side) -> &Ground {
        &self.grounds[side as usize]
    }

    /// One set-up, ready to be asked.
    #[must_use]
    pub const fn question(&self, side: Side) -> &RideOrRun {
        &self.questions[side as usize]
    }

    /// What climb and lap, riding and running take from the reserve.
    ///
    /// Strength that lasts and repaid share are the rider's where typed; where strength is left out, all of it lasts.
    #[must_use]
    pub fn account(&self) -> EffortAccount {
        let lasting = self.legs.unwrap_or(StrengthShare::SECONDS_5);
        EffortAccount { lasting, repaid: self.repaid, ..EffortAccount::new(self.effort()) }
    }

    /// What is spent on this climb: what pays at the lap's own price once that is known, before what usually pays on every lap, or all
    /// that it may take where the lap is no such one.
    #[must_use]
    pub fn spending(&self, side: Side) -> Spending {
        let price = match self.lap_price {
            LapPrice::Found(prices) => prices[side as usize],
            _ if self.is_repeated => self.account().usual_price(),
            _ => EffortPrice::NONE,
        };
        Spending { price, most: self.budget() }
    }

    /// What may be spent on it once a lap that is on its way has told its price; nothing where none is.
    pub(crate) fn awaited(&self) -> Option<[Spending; 2]> {
        let most = self.budget();
        let prices = || self.account().usual_prices().map(|price| Spending { price, most });
        (self.lap_price == LapPrice::Awaited).then(prices)
    }

    /// What this climb may take from the reserve; nothing where the power is one for seconds, which is out of it already.
    #[must_use]
    pub fn budget(&self) -> EffortBudget {
        if self.power_lasts() { EffortBudget::share(&self.effort(), self.share) } else { EffortBudget::NONE }
    }

    fn effort(&self) -> CriticalPower {
        let Rider { power, body, .. } = self.rider;
        // A peak too low is replaced where it is read.
        CriticalPower::new(power, self.reserve, self.peak)
            .unwrap_or_else(|_| CriticalPower::of_body(power, self.reserve, body))
    }

    /// Whether the power is one for minutes rather than for seconds.
    #[must_use]
    pub fn power_lasts(&self) -> bool {
        self.legs.is_none_or(|usable| usable == StrengthShare::MINUTES)
    }

    fn legs(&self) -> Option<LegStrength> {
        self.legs.map(|usable| LegStrength { peak: self.peak, usable, ..LegStrength::ENDURING })
    }

    fn put_together(&mut self) -> Result<(), gear_math::rider::PowerBelowStanding> {
        let limits = self.limits();
        let ask = |bike| {
            let asked = RideOrRun::new(self.rider, bike, self.air, limits)?;
            Ok(if self.typed_power.is_none() { asked.with_power_off(Level::OFF) } else { asked })
        };
        self.questions = [ask(self.bikes[0])?, ask(self.bikes[1])?];
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
    pub(crate) fn bare(drivetrain: Drivetrain) -> Self {
        let fixed = "within its limits";
        let power = Power::new(200.0).expect(fixed);
        let rider = Rider::new(BodyMass::new(60.0).expect(fixed), KitMass::new(2.0).expect(fixed), power);
        let wheel = Circumference::new(2100.0).expect(fixed);
        let bike = Bike::new(BikeMass::new(9.0).expect(fixed), drivetrain, wheel);
        let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider)).expect(fixed);
        Self {
            rider,
            typed_power: Some(power),
            level: Level::Club,
            bikes: [bike; 2],
            air: Air::STILL,
            surface: Surface::FirmGrass,
            own: OwnGround::default(),
            grounds: [Surface::FirmGrass.ground(); 2],
            climb: Climb::LEVEL,
            length: ClimbLength::new(50.0).expect(fixed),
            lost: SecondsLost::PRACTISED,
            balance: Some(BalanceSpeed::USUAL),
            stance: Stance::SEATED,
            grip_counts: true,
            legs: Some(StrengthShare::MINUTES),
            typed_peak: None,
            peak: PeakPower::estimated(power, rider.body),
            typed_reserve: None,
            reserve: WorkReserve::USUAL,
            share: ReserveShare::EACH_LAP,
            is_repeated: true,
            lap_price: LapPrice::Usual,
            repaid: RepaidShare::USUAL,
            entry: Speed::from_km_per_h(20.0).expect(fixed),
            questions: [question.clone(), question],
        }
    }
}

impl OwnGround {
    fn read(reader: &mut Reader<'_>) -> Self {
        Self {
            rolling: reader.quantity_or_none(Field::Rolling),
            foot: reader.quantity_or_none(Field::FootGround),
            friction: reader.quantity_or_none(Field::Friction),
        }
    }

    /// A typed rolling resistance is that of the tyre as it is.
    fn on(self, surface: Surface, tyres: [MountedWidth; 2], slope_share: SlopeShare) -> [Ground; 2] {
        tyres.map(|tyre| {
            let typical = surface.ground_under(tyre);
            Ground {
                rolling: self.rolling.unwrap_or(typical.rolling),
                width: if self.rolling.is_some() { WidthFactor::NONE } else { typical.width },
                foot: self.foot.unwrap_or(typical.foot),
                friction: self.friction.unwrap_or(typical.friction),
                slope_share,
            }
        })
    }
}

fn rider(reader: &mut Reader<'_>, good: &RideInputs, given: &Given) -> Rider {
    let good = good.rider;
    Rider {
        body: reader.quantity(Field::BodyMass),
        kit: reader.quantity(Field::KitMass),
        power: good.power,
        efficiency: reader.quantity(Field::Efficiency),
        standing: reader.quantity(Field::Standing),
        foot_cost: reader.quantity(Field::FootCost),
        gaits: reader.pick(Field::OnFoot, &[Gaits::RunOrWalk, Gaits::RunOnly]),
        foot_bike: reader.pick(Field::FootBike, &[FootBike::Carried, FootBike::Pushed, FootBike::Quicker]),
        lowest_cadence: given.window.low,
        highest_cadence: given.window.high,
        crank: given.crank,
    }
}

fn bikes(reader: &mut Reader<'_>, given: &Given) -> [Bike; 2] {
    let masses = reader.each(Field::BikeMass, Reader::quantity);
    let (efficiency, load) = (reader.quantity(Field::DrivetrainShare), reader.quantity(Field::Carry));
    Side::BOTH.map(|side| side as usize).map(|side| Bike {
        mass: masses[side],
        drivetrain: given.drivetrains[side],
        avoid: given.avoid[side],
        wheel: given.wheels[side],
        tyre: given.tyres[side],
        efficiency,
        load,
    })
}

fn air(reader: &mut Reader<'_>, good: Air) -> Air {
    Air {
        drag_area: reader.quantity(Field::DragArea),
        density: reader.quantity(Field::AirDensity),
        headwind: reader.quantity(Field::Headwind),
        foot_drag: good.foot_drag,
    }
}

/// What ends riding, and short efforts; the rest as in `good`.
fn limits(reader: &mut Reader<'_>, good: &RideInputs) -> RideInputs {
    let rear = reader.quantity(Field::RearWeight);
    RideInputs {
        balance: reader.quantity_or_none(Field::Balance),
        stance: Stance { rear, ..good.stance },
        grip_counts: reader.pick(Field::GripCounts, &[true, false]),
        legs: reader.pick(Field::Legs, &LEGS),
        typed_peak: reader.quantity_or_none(Field::PeakPower),
        typed_reserve: reader.quantity_or_none(Field::Reserve),
        share: reader.quantity(Field::ReserveShare),
        repaid: reader.quantity(Field::Repaid),
        entry: reader.speed(Field::EntrySpeed),
        ..good.clone()
    }
}

const LEGS: [Option<StrengthShare>; 5] = [
    Some(StrengthShare::MINUTES),
    Some(StrengthShare::SECONDS_30),
    Some(StrengthShare::SECONDS_15),
    Some(StrengthShare::SECONDS_5),
    None,
];
