//! What gear-math says of a bench: built from the typed texts alone, past the page's own scenario and report.

use crate::dice::chosen;
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::side::Side;
use gear_math::chain::{
    Cage, CageAnswer, CageMeasures, CageQuestion, ChainDefaults, ChainMeasure, FrameMeasures,
};
use gear_math::course::{Demo, MountTime, Mounting, Shifting};
use gear_math::gears::{CassetteName, GearSet, Pulley, RingDifference};
use gear_math::rider::{
    Air, Climb, ClimbLength, CriticalPower, EffortAccount, EffortBudget, EffortPrice, FootBike, Gaits,
    LegStrength, Level, PeakPower, RidingLimits, SecondsLost, Spending, Stance, StrengthShare, WorkReserve,
};
use gear_math::wheel::{
    Construction, FrontShare, LabelEdition, MountedWidth, PressureCase, PressureMarks, RimInnerWidth,
    TyreGround, TyreSection, TyreWidth, WheelStyle, WidthFactor,
};
use gear_math::{
    Bike, Cadence, Cassette, ChainLinks, ChainSetup, Course, Derailleur, Drivetrain, DuplicateTolerance,
    Ground, LapSetup, Measured, Power, RideOrRun, Rider, Setup, Speed, Sprocket, Surface, TotalCapacity,
    TyreSize, Wheel,
};

/// A bench as gear-math sees it.
pub(crate) struct Facts {
    pub(crate) bikes: [Drivetrain; 2],
    pub(crate) derailleurs: [Derailleur; 2],
    pub(crate) cages: [CageAnswer; 2],
    pub(crate) set_ups: [Setup; 2],
    pub(crate) tolerance: DuplicateTolerance,
    /// Lowest and highest cadence.
    pub(crate) cadences: [Cadence; 2],
    pub(crate) is_mph: bool,
    pub(crate) questions: [RideOrRun; 2],
    pub(crate) surface: Surface,
    pub(crate) grounds: [Ground; 2],
    pub(crate) climb: Climb,
    pub(crate) length: ClimbLength,
    pub(crate) lost: SecondsLost,
    pub(crate) entry: Speed,
    /// What forcing spends, unless the power is one of seconds.
    pub(crate) effort: Option<CriticalPower>,
    pub(crate) share: gear_math::rider::ReserveShare,
    /// What climbs are charged by, and what this one may take.
    pub(crate) account: EffortAccount,
    pub(crate) budget: EffortBudget,
    /// Whether a lap may take nothing from the reserve in the end.
    pub(crate) is_repeated: bool,
    pub(crate) laps: [LapSetup; 2],
    pub(crate) pressures: [PressureCase; 2],
    pub(crate) course: Course,
    /// Whether nothing is left of the demo.
    pub(crate) is_riders: bool,
}

/// The number in a text, in the field's own unit.
fn number(text: &str) -> f64 {
    let text = text.replace(',', ".").replace('−', "-");
    if let Some((_, far)) = text.split_once(':') {
        return 100.0 / far.parse::<f64>().unwrap();
    }
    let (value, unit) = text.split_once(' ').unwrap_or((text.trim_end_matches('t'), ""));
    let times = match unit {
        "" | "teeth" | "links" => 1.0,
        "lb" => 0.453_592_37,
        "ft" => 0.3048,
        "cm" => 10.0,
        "mph" => 1.609_344,
        _ => panic!("{unit}"),
    };
    times * value.parse::<f64>().unwrap()
}

fn maybe<T: Measured>(bench: &Bench, field: Field) -> Option<T> {
    let text = bench.text(field);
    (!text.is_empty()).then(|| T::measured(number(text)).unwrap())
}

fn known<T: Measured>(bench: &Bench, field: Field) -> T {
    maybe(bench, field).unwrap()
}

fn count(bench: &Bench, field: Field) -> Option<u16> {
    Some(bench.text(field)).filter(|text| !text.is_empty()).map(|text| number(text) as u16)
}

fn is_at(bench: &Bench, field: Field, value: &str) -> bool {
    bench.text(field) == value
}

/// The cassettes: as listed, or usual ones of their names beside each other.
fn cassettes(bench: &Bench) -> [Cassette; 2] {
    let texts = [Field::CassetteA, Field::CassetteB].map(|field| bench.text(field));
    let names = texts.map(CassetteName::read);
    [0, 1].map(|side| {
        let Some(name) = names[side] else { return texts[side].parse().unwrap() };
        let beside = match names[1 - side] {
            Some(other) => name.count_with(other),
            None => Some(texts[1 - side].parse::<Cassette>().unwrap().sprockets().len())
                .filter(|&count| count >= 3),
        };
        name.beside(beside).unwrap()
    })
}

pub(crate) fn derailleur(bench: &Bench) -> Derailleur {
    Derailleur {
        total_capacity: count(bench, Field::Capacity).map(|it| TotalCapacity::new(it).unwrap()),
        largest_sprocket: count(bench, Field::LargestSprocket).map(|it| Sprocket::new(it).unwrap()),
        smallest_sprocket: count(bench, Field::SmallestSprocket).map(|it| Sprocket::new(it).unwrap()),
        ring_difference: count(bench, Field::RingDifference).map(|it| RingDifference::new(it).unwrap()),
    }
}

fn cage(bench: &Bench, capacity: Option<TotalCapacity>) -> Cage {
    let usual = ChainDefaults::CAGE;
    let pulley = |field, usual| count(bench, field).map_or(usual, |it| Pulley::new(it).unwrap());
    let mut measures = CageMeasures {
        guide: pulley(Field::GuideTeeth, usual.guide),
        tension: pulley(Field::TensionTeeth, usual.tension),
        gap: maybe(bench, Field::PulleyGap).unwrap_or(usual.gap),
        guide_angle: maybe(bench, Field::GuideAngle).unwrap_or(usual.guide_angle),
        rear_stop: maybe(bench, Field::RearStop).unwrap_or(usual.rear_stop),
        ..usual
    };
    let assumed = capacity.map_or(usual.pulley_centres, |it| measures.centres_for(it));
    measures.pulley_centres = maybe(bench, Field::PulleyCentres).unwrap_or(assumed);
    Cage::new(measures).unwrap()
}

/// The fields for a measure of cage and frame.
pub(crate) const MEASURED: [(ChainMeasure, &[Field]); 8] = [
    (ChainMeasure::Chainstay, &[Field::Chainstay]),
    (ChainMeasure::BottomBracketDrop, &[Field::BottomBracketDrop]),
    (ChainMeasure::PulleyCentres, &[Field::PulleyCentres]),
    (ChainMeasure::PulleyTeeth, &[Field::GuideTeeth, Field::TensionTeeth]),
    (ChainMeasure::PulleyGap, &[Field::PulleyGap]),
    (ChainMeasure::GuideAngle, &[Field::GuideAngle]),
    (ChainMeasure::RearStop, &[Field::RearStop]),
    (ChainMeasure::ForeStop, &[Field::ForeStop]),
];

/// The measures that are not known, in the order in which they are assumed.
pub(crate) fn unmeasured(bench: &Bench) -> Vec<ChainMeasure> {
    let by_capacity = is_at(bench, Field::StopBy, "capacity");
    let is_empty = |measure: &ChainMeasure| {
        let fields = MEASURED.iter().find(|it| it.0 == *measure).unwrap().1;
        let stopped = *measure == ChainMeasure::RearStop && by_capacity;
        !stopped && fields.iter().any(|&field| bench.text(field).is_empty())
    };
    ChainDefaults::ASSUMPTIONS.map(|it| it.measure).into_iter().filter(is_empty).collect()
}

/// The bench with what one side is made of, apart from rings and sprockets, in A's fields.
fn of_side(bench: &Bench, side: Side) -> Bench {
    let mut flat = bench.clone();
    let shared = [Field::RingsA, Field::CassetteA, Field::GearsOffA];
    for field in Field::of_bike().filter(|field| !shared.contains(field)) {
        flat.write(field, bench.text_of(side, field));
    }
    flat
}

/// What the cage section is asked.
pub(crate) fn cage_questions(bench: &Bench) -> [CageQuestion; 2] {
    let usual = ChainDefaults::FRAME;
    let bikes = drivetrains(bench);
    let switched_off = [Field::GearsOffA, Field::GearsOffB];
    [0, 1].map(|side| {
        let bench = &of_side(bench, Side::BOTH[side]);
        let derailleur = derailleur(bench);
        let drivetrain = bikes[side];
        let setup = ChainSetup {
            chainline: ChainDefaults::chainline(&drivetrain),
            drivetrain,
            frame: FrameMeasures {
                chainstay: maybe(bench, Field::Chainstay).unwrap_or(usual.chainstay),
                bottom_bracket_drop: maybe(bench, Field::BottomBracketDrop)
                    .unwrap_or(usual.bottom_bracket_drop),
            },
            cage: cage(bench, derailleur.total_capacity),
        };
        let stated = derailleur.total_capacity.filter(|_| is_at(bench, Field::StopBy, "capacity"));
        let moved = stated.and_then(|it| setup.with_stated_capacity(it.teeth()).ok().flatten());
        CageQuestion {
            setup: moved.unwrap_or(setup),
            derailleur,
            links: count(bench, Field::ChainLinks).map(|it| ChainLinks::new(it).unwrap()),
            unmeasured: unmeasured(bench),
            switched_off: GearSet::parse(bench.text(switched_off[side]), &drivetrain).unwrap(),
        }
    })
}

fn drivetrains(bench: &Bench) -> [Drivetrain; 2] {
    let cassettes = cassettes(bench);
    let rings = [Field::RingsA, Field::RingsB];
    [0, 1].map(|side| Drivetrain {
        chainset: bench.text(rings[side]).parse().unwrap(),
        cassette: cassettes[side],
    })
}

fn pressure_case(bench: &Bench, size: TyreSize, width: MountedWidth) -> PressureCase {
    PressureCase {
        rider: known(bench, Field::BodyMass),
        kit_and_bike: Some((known(bench, Field::KitMass), known(bench, Field::BikeMass))),
        width,
        label: Some(size.width),
        construction: Construction::ALL[chosen(bench, Field::Construction)],
        ground: TyreGround::ALL[chosen(bench, Field::TyreGround)],
        style: WheelStyle::ALL[chosen(bench, Field::WheelStyle)],
        front_share: FrontShare::beside(known(bench, Field::RearWeight)),
        marks: PressureMarks::default(),
    }
}

fn tyre_width(bench: &Bench, size: TyreSize) -> MountedWidth {
    let (label, rim) = (size.width, known::<RimInnerWidth>(bench, Field::Rim));
    let by_calliper = maybe::<MountedWidth>(bench, Field::TyreWidthMeasured);
    let by_calliper = by_calliper.filter(|it| TyreSection::new(*it, rim).is_ok());
    by_calliper.unwrap_or_else(|| match Construction::ALL[chosen(bench, Field::Construction)] {
        Construction::Tubular => TyreWidth::tubular(label).mounted,
        _ => TyreWidth::on_rim(label, rim, LabelEdition::Etrto2020.measuring_rim(label)).unwrap().mounted,
    })
}

fn rider(bench: &Bench) -> Rider {
    let body = known(bench, Field::BodyMass);
    let level = Level::ALL[chosen(bench, Field::Level)];
    let power: Power = maybe(bench, Field::Power).unwrap_or_else(|| level.power(body));
    Rider {
        efficiency: known(bench, Field::Efficiency),
        standing: known(bench, Field::Standing),
        foot_cost: known(bench, Field::FootCost),
        foot_bike: match bench.text(Field::FootBike) {
            "pushed" => FootBike::Pushed,
            "quicker" => FootBike::Quicker,
            _ => FootBike::Carried,
        },
        gaits: if is_at(bench, Field::OnFoot, "run") { Gaits::RunOnly } else { Gaits::RunOrWalk },
        lowest_cadence: known(bench, Field::CadenceLow),
        highest_cadence: known(bench, Field::CadenceHigh),
        crank: known(bench, Field::CrossCrank),
        ..Rider::new(body, known(bench, Field::KitMass), power)
    }
}

fn legs(bench: &Bench, peak: PeakPower) -> Option<LegStrength> {
    let usable = match bench.text(Field::Legs) {
        "minutes" => StrengthShare::MINUTES,
        "30s" => StrengthShare::SECONDS_30,
        "15s" => StrengthShare::SECONDS_15,
        "5s" => StrengthShare::SECONDS_5,
        _ => return None,
    };
    Some(LegStrength { peak, usable, ..LegStrength::ENDURING })
}

fn ground(bench: &Bench, surface: Surface, tyre: MountedWidth) -> Ground {
    let typical = surface.ground_under(tyre);
    let rolling = maybe(bench, Field::Rolling);
    Ground {
        rolling: rolling.unwrap_or(typical.rolling),
        width: if rolling.is_some() { WidthFactor::NONE } else { typical.width },
        foot: maybe(bench, Field::FootGround).unwrap_or(typical.foot),
        friction: maybe(bench, Field::Friction).unwrap_or(typical.friction),
        slope_share: known(bench, Field::SlopeShare),
    }
}

fn course(bench: &Bench) -> Course {
    match bench.text(Field::Course) {
        "meadow" => Demo::Meadow.course(),
        "sand-pit" => Demo::SandPit.course(),
        _ => bench.text(Field::Sketch).parse::<Course>().unwrap().as_lap().unwrap(),
    }
}

impl Facts {
    pub(crate) fn of(bench: &Bench) -> Self {
        let bikes = drivetrains(bench);
        let cages = cage_questions(bench).map(|it| it.answer());
        let sides = Side::BOTH.map(|side| of_side(bench, side));
        let sizes: [TyreSize; 2] = sides.each_ref().map(|side| side.text(Field::Tyre).parse().unwrap());
        let wheels =
            [0, 1].map(|side| Wheel::by_size(sizes[side], maybe(&sides[side], Field::RollOut)).roll_out());
        let tyres = [0, 1].map(|side| tyre_width(&sides[side], sizes[side]));
        let rider = rider(bench);
        let peak =
            maybe(bench, Field::PeakPower).unwrap_or_else(|| PeakPower::estimated(rider.power, rider.body));
        let reserve =
            maybe(bench, Field::Reserve).unwrap_or_else(|| WorkReserve::estimated(rider.power, rider.body));
        let stance = Stance { rear: known(bench, Field::RearWeight), ..Stance::SEATED };
        let limits = RidingLimits {
            balance: maybe(bench, Field::Balance),
            grip: is_at(bench, Field::GripCounts, "on").then_some(stance),
            force: legs(bench, peak),
        };
        let air = Air {
            drag_area: known(bench, Field::DragArea),
            density: known(bench, Field::AirDensity),
            headwind: known(bench, Field::Headwind),
            ..Air::STILL
        };
        let surface = Surface::ALL[chosen(bench, Field::Ground)];
        let lost: SecondsLost = known(bench, Field::SecondsLost);
        let ridden = [0, 1].map(|side| Bike {
            avoid: cages[side].avoid,
            tyre: tyres[side],
            efficiency: known(bench, Field::DrivetrainShare),
            load: known(bench, Field::Carry),
            ..Bike::new(known(&sides[side], Field::BikeMass), bikes[side], wheels[side])
        });
        let each = MountTime::new(lost.s() / 2.0).unwrap();
        let effort = CriticalPower::new(rider.power, reserve, peak).unwrap();
        let lasts = matches!(bench.text(Field::Legs), "minutes" | "off");
        let account = EffortAccount {
            lasting: limits.force.map_or(StrengthShare::SECONDS_5, |legs| legs.usable),
            repaid: known(bench, Field::Repaid),
            ..EffortAccount::new(effort)
        };
        let most = Some(EffortBudget::share(&effort, known(bench, Field::ReserveShare))).filter(|_| lasts);
        let budget = most.unwrap_or(EffortBudget::NONE);
        let is_repeated = is_at(bench, Field::LapModel, "reserve") && is_at(bench, Field::LapBudget, "0");
        Self {
            pressures: [0, 1].map(|side| pressure_case(&sides[side], sizes[side], tyres[side])),
            derailleurs: sides.each_ref().map(derailleur),
            set_ups: [0, 1].map(|side| Setup {
                drivetrain: bikes[side],
                avoid: cages[side].avoid,
                wheel: wheels[side],
            }),
            tolerance: known(bench, Field::Tolerance),
            cadences: [known(bench, Field::CadenceLow), known(bench, Field::CadenceHigh)],
            is_mph: is_at(bench, Field::SpeedUnit, "mph"),
            questions: ridden.map(|bike| {
                let asked = RideOrRun::new(rider, bike, air, limits).unwrap();
                if bench.text(Field::Power).is_empty() { asked.with_power_off(Level::OFF) } else { asked }
            }),
            surface,
            grounds: tyres.map(|tyre| ground(bench, surface, tyre)),
            climb: Climb::new(number(bench.text(Field::Slope))).unwrap(),
            length: known(bench, Field::ClimbLength),
            lost,
            entry: Speed::from_km_per_h(number(bench.text(Field::EntrySpeed))).unwrap(),
            effort: Some(effort).filter(|_| lasts),
            share: known(bench, Field::ReserveShare),
            is_repeated,
            account,
            budget,
            laps: ridden.map(|bike| LapSetup {
                limits,
                shifting: Shifting {
                    preferred: known(bench, Field::CadenceUsual),
                    window: known(bench, Field::CadenceSpread),
                    rear: known(bench, Field::ShiftRear),
                    front: known(bench, Field::ShiftFront),
                },
                mounting: Mounting { off: each, on: each, braking: known(bench, Field::Braking) },
                ..LapSetup::new(rider, bike, air)
            }),
            course: course(bench),
            is_riders: Field::ALL.iter().all(|&field| bench.is_riders(field)),
            bikes,
            cages,
        }
    }

    /// What this climb may take, at the price that a joule has on the lap; at the usual one where the lap has none.
    pub(crate) fn spending(&self, price: Option<f64>) -> Spending {
        let price = price.map(|price| EffortPrice::new(price).unwrap());
        let usual = if self.is_repeated { self.account.usual_price() } else { EffortPrice::NONE };
        Spending { price: price.unwrap_or(usual), most: self.budget }
    }

    /// A speed as the page prints it.
    pub(crate) fn speed(&self, speed: Speed) -> String {
        if self.is_mph {
            format!("{:.1} mph", speed.miles_per_h())
        } else {
            format!("{:.1} km/h", speed.km_per_h())
        }
    }

    /// The speed of the lowest usable gear at the lowest cadence.
    pub(crate) fn lowest_speed(&self, side: usize) -> Speed {
        let set_up = &self.set_ups[side];
        set_up.row(set_up.avoid.lowest(&set_up.drivetrain)).speed_at(self.cadences[0])
    }

    /// The speed of the highest usable gear at the highest cadence.
    pub(crate) fn highest_speed(&self, side: usize) -> Speed {
        let set_up = &self.set_ups[side];
        set_up.row(set_up.avoid.highest(&set_up.drivetrain)).speed_at(self.cadences[1])
    }

    /// Names of gears.
    pub(crate) fn named(&self, side: usize, gears: GearSet) -> Vec<String> {
        gears.gears(&self.bikes[side]).map(|gear| gear.to_string()).collect()
    }
}
