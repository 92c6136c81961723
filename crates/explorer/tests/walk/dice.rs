//! Benches that look random and are the same every time.

use explorer::bench::bench::Bench;
use explorer::bench::field::{Field, Kind};
use gear_math::{Cassette, Chainset, Drivetrain};

/// A linear congruential generator.
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        let mut dice = Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15));
        dice.throw(2);
        dice
    }

    fn throw(&mut self, sides: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % sides as u64) as usize
    }

    pub(crate) fn pick<T: Copy>(&mut self, items: &[T]) -> T {
        items[self.throw(items.len())]
    }
}

type Texts = (Field, &'static [&'static str]);

/// What may be typed on cage and chain.
const CAGE: [Texts; 14] = [
    (Field::Capacity, &["", "", "20", "29", "33", "35", "37 teeth", "39", "43", "47"]),
    (Field::LargestSprocket, &["", "28", "34", "36t", "42", "52"]),
    (Field::SmallestSprocket, &["", "10", "11"]),
    (Field::RingDifference, &["", "14", "16", "22"]),
    (Field::PulleyCentres, &["", "", "50", "55", "74", "86", "100"]),
    (Field::ChainLinks, &["", "", "", "104", "108", "112", "116 links"]),
    (Field::Chainstay, &["", "405", "425", "435", "43 cm"]),
    (Field::BottomBracketDrop, &["", "65", "70"]),
    (Field::GuideTeeth, &["", "11", "12"]),
    (Field::TensionTeeth, &["", "11", "12"]),
    (Field::PulleyGap, &["", "12.5"]),
    (Field::GuideAngle, &["", "10"]),
    (Field::RearStop, &["", "-80", "−70", "-75"]),
    (Field::StopBy, &["usual", "usual", "capacity"]),
];

/// What may be typed on wheel, rider, ground and climb.
const RIDE: [Texts; 44] = [
    (Field::Tyre, &["33-622", "32-622", "38-622", "30-622", "28-622"]),
    (Field::RollOut, &["", "", "2060", "2155"]),
    (Field::Construction, &["tubular", "clincher", "tubeless"]),
    (Field::Rim, &["17", "21", "23"]),
    (Field::TyreWidthMeasured, &["", "", "34.5"]),
    (Field::CadenceLow, &["40", "45", "55", "62.5", "70"]),
    (Field::CadenceUsual, &["75", "85", "92"]),
    (Field::CadenceHigh, &["95", "110", "125"]),
    (Field::Tolerance, &["0", "1", "2", "3.5"]),
    (Field::SpeedUnit, &["kmh", "mph"]),
    (Field::Inches, &["real", "nominal"]),
    (Field::BodyMass, &["40", "55", "78", "95", "140", "130 lb"]),
    (Field::KitMass, &["1", "3"]),
    (Field::BikeMass, &["7.2", "8,9", "12"]),
    (Field::Power, &["", "110", "153", "220", "300", "420", "500"]),
    (Field::Level, &["occasional", "club", "racing", "national"]),
    (
        Field::Ground,
        &["tarmac", "gravel", "firm-grass", "wet-grass", "mud", "deep-mud", "wet-sand", "loose-sand"],
    ),
    (Field::Slope, &["0", "2", "4.5", "6", "7", "9", "1:8", "14", "16", "18", "22", "30", "45"]),
    (Field::ClimbLength, &["6", "15", "35", "60", "120", "300", "900", "3000", "200 ft"]),
    (Field::Headwind, &["-4", "0", "2", "10"]),
    (Field::SecondsLost, &["1", "3", "8"]),
    (Field::Efficiency, &["0.2", "0.23", "0.25"]),
    (Field::Standing, &["1.2", "1.7"]),
    (Field::FootCost, &["0.92", "1.08"]),
    (Field::OnFoot, &["run-or-walk", "run"]),
    (Field::FootBike, &["carried", "pushed", "quicker"]),
    (Field::Carry, &["1", "1.5"]),
    (Field::DrivetrainShare, &["0.976", "0.92"]),
    (Field::Rolling, &["", "0.006", "0.03"]),
    (Field::FootGround, &["", "1.1", "1.8"]),
    (Field::Friction, &["", "0.3", "0.7"]),
    (Field::SlopeShare, &["0", "0.5", "1"]),
    (Field::DragArea, &["0.32", "0.5"]),
    (Field::AirDensity, &["1.17", "1.27"]),
    (Field::Balance, &["", "1", "1.8"]),
    (Field::GripCounts, &["on", "off"]),
    (Field::RearWeight, &["0.5", "0.6"]),
    (Field::Legs, &["minutes", "30s", "15s", "5s", "off"]),
    (Field::PeakPower, &["", "", "1500"]),
    (Field::Reserve, &["", "10", "25"]),
    (Field::ReserveShare, &["0.1", "0.2", "1"]),
    (Field::Repaid, &["0.3", "0.7"]),
    (Field::EntrySpeed, &["8", "20", "35", "12 mph"]),
    (Field::CrossCrank, &["165", "170", "175"]),
];

/// What may be typed on the lap.
const LAP: [Texts; 7] = [
    (Field::LapModel, &["reserve", "steady", "steady", "steady"]),
    (Field::LapBudget, &["0", "0", "2.5"]),
    (Field::Course, &["meadow", "sand-pit", "sketch", "sketch", "sketch"]),
    (Field::ShiftRear, &["0", "0.4"]),
    (Field::ShiftFront, &["0", "1"]),
    (Field::CadenceSpread, &["0.1", "0.25"]),
    (Field::Braking, &["2", "4"]),
];

/// Short invented courses, which a lap of is quickly worked out.
const SKETCHES: [&str; 4] = [
    "150; 0; firm grass\n12; 0; firm grass; corner 15\n1; 0; firm grass; foot 1\n24; 22; mud\n60; -9; packed gravel",
    "80; 0; firm grass\n60; 9; wet soft grass\n40; -8; wet soft grass\n1; 0; firm grass; foot 1\n90; 3; mud",
    "120; 0; tarmac\n30; 18; firm grass\n50; -6; packed gravel; corner 12\n70; 2; loose dry sand",
    "300; 1; packed gravel",
];

/// A bench; of what is not typed some is the demo's, unless all was claimed.
pub(crate) fn random_bench(seed: u64) -> Bench {
    let mut dice = Dice::new(seed);
    let mut bench = Bench::default();
    set_ups(&mut bench, &mut dice);
    for (fields, often) in [(&CAGE[..], 2), (&RIDE[..], 3), (&LAP[..], 2)] {
        for (field, texts) in fields {
            if dice.throw(often) == 0 {
                bench.write(*field, dice.pick(texts));
            }
        }
    }
    own_of_b(&mut bench, &mut dice);
    if bench.text(Field::Course) == "sketch" {
        bench.write(Field::Sketch, dice.pick(&SKETCHES));
    }
    if dice.throw(2) == 0 {
        Field::ALL.iter().for_each(|&field| bench.claim(field));
    }
    bench
}

/// What B may have of its own, on one bench in three.
const OF_B: [Texts; 11] = [
    (Field::CapacityB, &["29", "37", "43", "47", "?"]),
    (Field::LargestSprocketB, &["34", "42", "?"]),
    (Field::SmallestSprocketB, &["10", "11"]),
    (Field::PulleyCentresB, &["55", "86", "?"]),
    (Field::ChainLinksB, &["106", "112", "?"]),
    (Field::TyreB, &["33-622", "40-622", "30-622", "28-622"]),
    (Field::RollOutB, &["2040", "2170", "?"]),
    (Field::ConstructionB, &["tubular", "clincher", "tubeless"]),
    (Field::RimB, &["17", "20", "23"]),
    (Field::TyreWidthB, &["31.5", "36", "?"]),
    (Field::BikeMassB, &["6.8", "8,4", "13"]),
];

fn own_of_b(bench: &mut Bench, dice: &mut Dice) {
    if dice.throw(3) == 0 {
        for (field, texts) in OF_B {
            if dice.throw(2) == 0 {
                bench.write(field, dice.pick(texts));
            }
        }
    }
}

const SET_UPS: [[Field; 3]; 2] = [
    [Field::RingsA, Field::CassetteA, Field::GearsOffA],
    [Field::RingsB, Field::CassetteB, Field::GearsOffB],
];

fn set_ups(bench: &mut Bench, dice: &mut Dice) {
    let [a, b] = SET_UPS.map(|fields| set_up(bench, dice, fields));
    // One bench in eight has the same rings and sprockets twice, be it with other gears switched off.
    if dice.throw(8) == 0 {
        for (from, to) in [(Field::RingsA, Field::RingsB), (Field::CassetteA, Field::CassetteB)] {
            let text = bench.text(from).to_owned();
            bench.write(to, &text);
        }
        bench.write(Field::GearsOffB, "");
        switch_off(bench, dice, Field::GearsOffB, a);
    } else {
        switch_off(bench, dice, Field::GearsOffB, b);
    }
    switch_off(bench, dice, Field::GearsOffA, a);
}

/// Rings and sprockets of one side: none typed, every sprocket, or the name that the cassette goes by.
fn set_up(bench: &mut Bench, dice: &mut Dice, [rings, cassette, _]: [Field; 3]) -> Option<Drivetrain> {
    let chainsets: Vec<Chainset> = Chainset::common().collect();
    let singles: Vec<Chainset> = chainsets.iter().copied().filter(|it| it.rings().len() == 1).collect();
    let chainset = if dice.throw(3) == 0 { dice.pick(&singles) } else { dice.pick(&chainsets) };
    let drivetrain = Drivetrain { chainset, cassette: dice.pick(&Cassette::common().collect::<Vec<_>>()) };
    let sprockets = drivetrain.cassette.sprockets();
    let name = format!("{}-{}", drivetrain.cassette.smallest(), drivetrain.cassette.largest());
    let typed = match dice.throw(10) {
        0 => return None,
        1 => name,
        2 => format!("{name} {}s", sprockets.len()),
        3 => sprockets[dice.throw(sprockets.len())].to_string(),
        4 => format!("{}, {}", drivetrain.cassette.smallest(), drivetrain.cassette.largest()),
        _ => drivetrain.cassette.to_string(),
    };
    bench.write(rings, &drivetrain.chainset.to_string());
    bench.write(cassette, &typed);
    (typed == drivetrain.cassette.to_string()).then_some(drivetrain)
}

/// Switches off a gear or two, now and then all.
fn switch_off(bench: &mut Bench, dice: &mut Dice, off: Field, of: Option<Drivetrain>) {
    let Some(drivetrain) = of.filter(|_| dice.throw(4) == 0) else { return };
    let gears: Vec<String> = drivetrain.gears().map(|gear| gear.to_string()).collect();
    let text = match dice.throw(12) {
        0 => gears.join(" "),
        1 => format!("{}, {}", gears[0], gears[gears.len() - 1]),
        _ => format!(
            "{}, {}",
            dice.pick(&gears.iter().map(String::as_str).collect::<Vec<_>>()),
            gears[dice.throw(gears.len())]
        ),
    };
    bench.write(off, &text);
}

/// Whether a field is one of choices.
pub(crate) fn chosen(bench: &Bench, field: Field) -> usize {
    let Kind::Choice(choices) = field.spec().kind else { panic!("{field:?} is no choice") };
    choices.iter().position(|(value, _)| *value == bench.text(field)).unwrap()
}
