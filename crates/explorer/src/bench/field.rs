//! The fields of the bench: one table row each, read by the form, the link, the messages and the tests.

use crate::bench::offered::{
    CONSTRUCTIONS, COUNTS, COURSES, GAITS, GROUNDS, HOOKS, INCHES, KNEES, LABEL_EDITIONS, LEGS, LEVELS,
    RINGS, SHEETS, SPEED_UNITS, SPROCKETS, STOPS, TYRE_GROUNDS, WHEEL_STYLES, WIDTH_LIMITS,
};
use crate::bench::words::{TEETH, fields};

/// Where on the bench a field stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Set-up A.
    SetupA,
    /// Set-up B.
    SetupB,
    /// The wheel both set-ups share.
    Wheel,
    /// The rider's legs.
    Rider,
    /// The rear derailleur both set-ups share.
    Derailleur,
    /// Rules of counting, units and race rules.
    Reckoning,
    /// The cadence and the speed being looked at, beside their picture.
    Probes,
    /// Frame, cage and chain, beside what is worked out from them.
    Chain,
    /// The same, seldom measured.
    ChainFiner,
    /// The gears being drawn, beside their picture.
    GearsShown,
    /// Ride or run: the rider, the bike and the climb.
    Ride,
    /// Ride or run, finer: what the rider burns and carries.
    RideRider,
    /// Ride or run, finer: ground and air.
    RideGround,
    /// Ride or run, finer: what ends riding.
    RideLimits,
    /// Ride or run, finer: short efforts.
    RideEffort,
    /// Ride or run: the speed to look up a slope for.
    RideProbe,
    /// Round the lap: which course.
    Lap,
    /// Round the lap: the course sketched by hand, and what is painted over any course.
    LapSketch,
    /// Round the lap: how a file is read.
    LapFile,
    /// Round the lap, finer: shifting and braking.
    LapHabits,
    /// Round the lap: what is searched.
    LapSearch,
    /// Tyre, rim, their marks, and what loads them.
    Tyre,
    /// Rim type, labels and measures of the tyre that few need.
    TyreFiner,
    /// The position as measured on the road bike.
    RoadBike,
    /// The cross bike's cranks and pedals, and what is meant to differ on it.
    CrossBike,
    /// The cross bike's frame and headset.
    CrossFrame,
    /// What the stem search may use, handlebars of two shapes, and toe overlap.
    PositionFiner,
    /// Whom the workshop sheet is for.
    Sheet,
}

impl Group {
    /// The groups of the section on the cage and its chain.
    pub const CHAIN: [Self; 3] = [Self::Chain, Self::ChainFiner, Self::GearsShown];

    /// The groups of the section on riding or running.
    pub const RIDE: [Self; 6] =
        [Self::Ride, Self::RideRider, Self::RideGround, Self::RideLimits, Self::RideEffort, Self::RideProbe];

    /// The groups of the section on tyre and pressure.
    pub const TYRE: [Self; 2] = [Self::Tyre, Self::TyreFiner];

    /// The groups of the section on the position.
    pub const POSITION: [Self; 4] = [Self::RoadBike, Self::CrossBike, Self::CrossFrame, Self::PositionFiner];

    /// The groups of the section on the lap.
    pub const LAP: [Self; 5] = [Self::Lap, Self::LapSketch, Self::LapFile, Self::LapHabits, Self::LapSearch];

    /// Whether every section depends on it.
    #[must_use]
    pub fn on_bench(self) -> bool {
        let of_sections: [&[Self]; 6] =
            [&Self::CHAIN, &Self::RIDE, &Self::LAP, &Self::TYRE, &Self::POSITION, &[Self::Sheet]];
        !of_sections.iter().any(|groups| groups.contains(&self))
    }
}

/// How a field is filled in.
#[derive(Debug, Clone, Copy)]
pub enum Kind {
    /// Free text, read by a parser.
    Text,
    /// One number.
    Number,
    /// One of several values, each with the words shown for it.
    Choice(&'static [(&'static str, &'static str)]),
    /// A number on a slider: smallest, largest, step.
    Slider(f64, f64, f64),
    /// Several lines of text, so many of them in view.
    Lines(u8),
}

/// One row of the field table.
#[derive(Debug)]
pub struct Spec {
    /// Name in the link and in the page's element ids.
    pub key: &'static str,
    /// Where it stands.
    pub group: Group,
    /// Label beside it.
    pub label: &'static str,
    /// Unit behind it; empty when the value says it itself.
    pub unit: &'static str,
    /// How it is filled in.
    pub kind: Kind,
    /// What the demo starts with. Part of the link's version: a link leaves out what equals it.
    pub start: &'static str,
    /// One line of help; empty when the label says all.
    pub help: &'static str,
}

macro_rules! fields {
    ($($name:ident: $key:literal, $group:ident, $words:ident, $unit:expr, $kind:expr, $start:expr;)+) => {
        /// A field of the bench.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Field {
            $(#[doc = concat!("Its key is `", $key, "`.")] $name,)+
        }

        impl Field {
            /// Every field, in the order of the bench.
            pub const ALL: &'static [Field] = &[$(Field::$name,)+];

            /// The field's row of the table.
            #[must_use]
            pub fn spec(self) -> &'static Spec {
                const SPECS: &[Spec] = &[$(Spec {
                    key: $key,
                    group: Group::$group,
                    label: fields::$words.label,
                    unit: $unit,
                    kind: $kind,
                    start: $start,
                    help: fields::$words.help,
                },)+];
                &SPECS[self as usize]
            }
        }
    };
}

fields! {
    RingsA: "rings-a", SetupA, RINGS, "", Kind::Text, "50/34";
    CassetteA: "cassette-a", SetupA, CASSETTE, "", Kind::Text, "11-12-13-14-15-17-19-21-24-27-30";
    GearsOffA: "gears-off-a", SetupA, GEARS_OFF, "", Kind::Text, "";
    RingsB: "rings-b", SetupB, RINGS, "", Kind::Text, "44/32";
    CassetteB: "cassette-b", SetupB, CASSETTE, "", Kind::Text, "11-12-13-14-16-18-20-22-25-28-32";
    GearsOffB: "gears-off-b", SetupB, GEARS_OFF, "", Kind::Text, "";
    Tyre: "tyre", Wheel, TYRE, "", Kind::Text, "33-622";
    RollOut: "roll-out", Wheel, ROLL_OUT, "mm", Kind::Number, "";
    CadenceLow: "cadence-low", Rider, CADENCE_LOW, "rpm", Kind::Number, "55";
    CadenceUsual: "cadence-usual", Rider, CADENCE_USUAL, "rpm", Kind::Number, "85";
    CadenceHigh: "cadence-high", Rider, CADENCE_HIGH, "rpm", Kind::Number, "110";
    Capacity: "capacity", Derailleur, CAPACITY, TEETH, Kind::Number, "33";
    LargestSprocket: "largest-sprocket", Derailleur, LARGEST_SPROCKET, TEETH, Kind::Number, "34";
    SmallestSprocket: "smallest-sprocket", Derailleur, SMALLEST_SPROCKET, TEETH, Kind::Number, "11";
    RingDifference: "ring-difference", Derailleur, RING_DIFFERENCE, TEETH, Kind::Number, "16";
    Tolerance: "same-within", Reckoning, TOLERANCE, "%", Kind::Number, "2";
    Inches: "inches", Reckoning, INCHES, "", Kind::Choice(INCHES), "real";
    SpeedUnit: "speed-unit", Reckoning, SPEED_UNIT, "", Kind::Choice(SPEED_UNITS), "kmh";
    RollOutLimit: "limit", Reckoning, ROLL_OUT_LIMIT, "m", Kind::Number, "";
    ProbeCadence: "at-cadence", Probes, PROBE_CADENCE, "rpm", Kind::Slider(30.0, 130.0, 1.0), "85";
    ProbeSpeed: "at-speed", Probes, PROBE_SPEED, "km/h", Kind::Slider(4.0, 80.0, 0.5), "15";
    Chainstay: "chainstay", Chain, CHAINSTAY, "mm", Kind::Number, "";
    PulleyCentres: "pulley-centres", Chain, PULLEY_CENTRES, "mm", Kind::Number, "";
    BottomBracketDrop: "bracket-drop", Chain, BOTTOM_BRACKET_DROP, "mm", Kind::Number, "";
    ChainLinks: "links", Chain, CHAIN_LINKS, "", Kind::Number, "";
    GuideTeeth: "guide-teeth", ChainFiner, GUIDE_TEETH, TEETH, Kind::Number, "";
    TensionTeeth: "tension-teeth", ChainFiner, TENSION_TEETH, TEETH, Kind::Number, "";
    PulleyGap: "pulley-gap", ChainFiner, PULLEY_GAP, "mm", Kind::Number, "";
    GuideAngle: "guide-angle", ChainFiner, GUIDE_ANGLE, "°", Kind::Number, "";
    RearStop: "rear-stop", ChainFiner, REAR_STOP, "°", Kind::Number, "";
    ForeStop: "fore-stop", ChainFiner, FORE_STOP, "°", Kind::Number, "";
    StopBy: "stop-by", ChainFiner, STOP_BY, "", Kind::Choice(STOPS), "usual";
    HangerDrop: "hanger-drop", ChainFiner, HANGER_DROP, "mm", Kind::Number, "";
    HangerSetback: "hanger-setback", ChainFiner, HANGER_SETBACK, "mm", Kind::Number, "";
    FrontMadeFor: "front-ring", ChainFiner, FRONT_MADE_FOR, TEETH, Kind::Number, "";
    GearA: "gear-a", GearsShown, GEAR_A, "", Kind::Slider(1.0, 42.0, 1.0), "1";
    GearB: "gear-b", GearsShown, GEAR_B, "", Kind::Slider(1.0, 42.0, 1.0), "1";
    BodyMass: "body-mass", Ride, BODY_MASS, "kg", Kind::Number, "62";
    KitMass: "kit-mass", Ride, KIT_MASS, "kg", Kind::Number, "2";
    BikeMass: "bike-mass", Ride, BIKE_MASS, "kg", Kind::Number, "8.9";
    Power: "power", Ride, POWER, "W", Kind::Number, "220";
    Level: "level", Ride, LEVEL, "", Kind::Choice(LEVELS), "club";
    Ground: "ground", Ride, GROUND, "", Kind::Choice(GROUNDS), "wet-grass";
    Slope: "slope", Ride, SLOPE, "%", Kind::Number, "9";
    ClimbLength: "climb-length", Ride, CLIMB_LENGTH, "m", Kind::Number, "60";
    Headwind: "headwind", Ride, HEADWIND, "m/s", Kind::Number, "0";
    SecondsLost: "seconds-lost", Ride, SECONDS_LOST, "s", Kind::Number, "3";
    Efficiency: "efficiency", RideRider, EFFICIENCY, "", Kind::Number, "0.23";
    Standing: "standing", RideRider, STANDING, "W/kg", Kind::Number, "1.5";
    FootCost: "foot-cost", RideRider, FOOT_COST, "×", Kind::Number, "1";
    OnFoot: "on-foot", RideRider, ON_FOOT, "", Kind::Choice(GAITS), "run-or-walk";
    Carry: "carry", RideRider, CARRY, "×", Kind::Number, "1.2";
    DrivetrainShare: "drivetrain", RideRider, DRIVETRAIN_SHARE, "", Kind::Number, "0.96";
    Rolling: "rolling", RideGround, ROLLING, "", Kind::Number, "";
    FootGround: "foot-ground", RideGround, FOOT_GROUND, "×", Kind::Number, "";
    Friction: "friction", RideGround, FRICTION, "", Kind::Number, "";
    SlopeShare: "ground-on-slopes", RideGround, SLOPE_SHARE, "", Kind::Number, "0";
    DragArea: "drag-area", RideGround, DRAG_AREA, "m²", Kind::Number, "0.40";
    AirDensity: "air-density", RideGround, AIR_DENSITY, "kg/m³", Kind::Number, "1.20";
    Balance: "balance", RideLimits, BALANCE, "m/s", Kind::Number, "1.2";
    GripCounts: "grip-limit", RideLimits, GRIP_COUNTS, "", Kind::Choice(COUNTS), "on";
    RearWeight: "rear-weight", RideLimits, REAR_WEIGHT, "", Kind::Number, "0.55";
    Legs: "leg-limit", RideLimits, LEGS, "", Kind::Choice(LEGS), "minutes";
    PeakPower: "peak-power", RideLimits, PEAK_POWER, "W", Kind::Number, "";
    Reserve: "reserve", RideEffort, RESERVE, "kJ", Kind::Number, "18";
    ReserveShare: "reserve-share", RideEffort, RESERVE_SHARE, "", Kind::Number, "0.2";
    SlopeSpeed: "slope-speed", RideProbe, SLOPE_SPEED, "km/h", Kind::Slider(2.0, 40.0, 0.5), "9";
    EntrySpeed: "entry-speed", RideEffort, ENTRY_SPEED, "km/h", Kind::Number, "20";
    Course: "course", Lap, COURSE, "", Kind::Choice(COURSES), "meadow";
    Smoothing: "smoothing", LapFile, SMOOTHING, "m", Kind::Number, "40";
    TrackGround: "track-ground", LapFile, TRACK_GROUND, "", Kind::Choice(GROUNDS), "firm-grass";
    TrackFrom: "track-from", LapFile, TRACK_FROM, "m", Kind::Number, "";
    TrackTo: "track-to", LapFile, TRACK_TO, "m", Kind::Number, "";
    Sketch: "sketch", LapSketch, SKETCH, "", Kind::Lines(8), SKETCH;
    Paint: "paint", LapSketch, PAINT, "", Kind::Lines(3), "";
    ShiftRear: "shift-rear", LapHabits, SHIFT_REAR, "s", Kind::Number, "0.2";
    ShiftFront: "shift-front", LapHabits, SHIFT_FRONT, "s", Kind::Number, "0.6";
    CadenceSpread: "cadence-spread", LapHabits, CADENCE_SPREAD, "", Kind::Number, "0.15";
    Braking: "braking", LapHabits, BRAKING, "m/s²", Kind::Number, "3";
    SearchSmall: "search-small", LapSearch, SEARCH_SMALL, TEETH, Kind::Number, "28";
    SearchLarge: "search-large", LapSearch, SEARCH_LARGE, TEETH, Kind::Number, "50";
    SearchPairs: "search-rings", LapSearch, SEARCH_PAIRS, "", Kind::Choice(RINGS), "both";
    SearchSprockets: "search-sprockets", LapSearch, SEARCH_SPROCKETS, "", Kind::Choice(SPROCKETS), "bench";
    FrameRing: "frame-ring", LapSearch, FRAME_RING, TEETH, Kind::Number, "";
    MoreCassettes: "more-cassettes", LapSearch, MORE_CASSETTES, "", Kind::Lines(2), "";
    Construction: "tyre-kind", Tyre, CONSTRUCTION, "", Kind::Choice(CONSTRUCTIONS), "tubeless";
    Rim: "rim", Tyre, RIM, "mm", Kind::Number, "21";
    TyreMark: "tyre-mark", Tyre, TYRE_MARK, "bar", Kind::Number, "";
    RimMark: "rim-mark", Tyre, RIM_MARK, "bar", Kind::Number, "";
    LeastMark: "least-mark", Tyre, LEAST_MARK, "bar", Kind::Number, "";
    WidthLimit: "width-limit", Tyre, WIDTH_LIMIT, "", Kind::Choice(WIDTH_LIMITS), "33";
    TyreGround: "tyre-ground", Tyre, TYRE_GROUND, "", Kind::Choice(TYRE_GROUNDS), "soft";
    WheelStyle: "wheel-style", Tyre, WHEEL_STYLE, "", Kind::Choice(WHEEL_STYLES), "normal";
    OtherTyre: "other-tyre", Tyre, OTHER_TYRE, "mm", Kind::Number, "38";
    Hookless: "hooks", TyreFiner, HOOKLESS, "", Kind::Choice(HOOKS), "hooked";
    TyreWidthMeasured: "tyre-width", TyreFiner, TYRE_WIDTH_MEASURED, "mm", Kind::Number, "";
    LabelEdition: "label-rule", TyreFiner, LABEL_EDITION, "", Kind::Choice(LABEL_EDITIONS), "2020";
    MeasuringRim: "measuring-rim", TyreFiner, MEASURING_RIM, "mm", Kind::Number, "";
    SaddleHeight: "saddle-height", RoadBike, SADDLE_HEIGHT, "mm", Kind::Number, "728";
    Setback: "setback", RoadBike, SETBACK, "mm", Kind::Number, "56";
    TipToBar: "tip-to-bar", RoadBike, TIP_TO_BAR, "mm", Kind::Number, "545";
    BarDrop: "bar-drop", RoadBike, BAR_DROP, "mm", Kind::Number, "72";
    SeatAngle: "seat-angle", RoadBike, SEAT_ANGLE, "°", Kind::Number, "73.5";
    RoadCrank: "road-crank", RoadBike, ROAD_CRANK, "mm", Kind::Number, "172.5";
    RoadStack: "road-sole", RoadBike, ROAD_STACK, "mm", Kind::Number, "15";
    CrossSeatAngle: "cross-seat-angle", CrossBike, CROSS_SEAT_ANGLE, "°", Kind::Number, "73";
    CrossCrank: "cross-crank", CrossBike, CROSS_CRANK, "mm", Kind::Number, "172.5";
    CrossStack: "cross-sole", CrossBike, CROSS_STACK, "mm", Kind::Number, "21";
    LowerBy: "lower", CrossBike, LOWER_BY, "mm", Kind::Number, "0";
    BarUpBy: "bar-up", CrossBike, BAR_UP_BY, "mm", Kind::Number, "15";
    BarCloserBy: "bar-closer", CrossBike, BAR_CLOSER_BY, "mm", Kind::Number, "10";
    Stack: "stack", CrossFrame, STACK, "mm", Kind::Number, "578";
    Reach: "reach", CrossFrame, REACH, "mm", Kind::Number, "383";
    HeadAngle: "head-angle", CrossFrame, HEAD_ANGLE, "°", Kind::Number, "72";
    Headset: "headset", CrossFrame, HEADSET, "mm", Kind::Number, "12";
    ClampHeight: "clamp", PositionFiner, CLAMP_HEIGHT, "mm", Kind::Number, "40";
    BarWithin: "bar-within", PositionFiner, BAR_WITHIN, "mm", Kind::Number, "5";
    SpacersMost: "spacers-most", PositionFiner, SPACERS_MOST, "mm", Kind::Number, "30";
    Knee: "knee", PositionFiner, KNEE, "", Kind::Choice(KNEES), "saddle";
    RoadBarReach: "road-bar-reach", PositionFiner, ROAD_BAR_REACH, "mm", Kind::Number, "";
    RoadBarDepth: "road-bar-drop", PositionFiner, ROAD_BAR_DEPTH, "mm", Kind::Number, "";
    CrossBarReach: "cross-bar-reach", PositionFiner, CROSS_BAR_REACH, "mm", Kind::Number, "";
    CrossBarDepth: "cross-bar-drop", PositionFiner, CROSS_BAR_DEPTH, "mm", Kind::Number, "";
    FrontCentre: "front-centre", PositionFiner, FRONT_CENTRE, "mm", Kind::Number, "";
    ForkRake: "rake", PositionFiner, FORK_RAKE, "mm", Kind::Number, "47";
    PedalOffset: "pedal-offset", PositionFiner, PEDAL_OFFSET, "mm", Kind::Number, "125";
    SheetFor: "sheet-for", Sheet, SHEET_FOR, "", Kind::Choice(SHEETS), "both";
}

const SKETCH: &str = "150; 0; firm grass
12; 0; firm grass; corner 15
60; -4; firm grass
1; 0; firm grass; foot 1
90; 1; wet soft grass
24; 22; mud
160; -2; packed gravel
";
impl Spec {
    /// The words shown for a value of a choice; the value itself when there are none.
    #[must_use]
    pub fn words_for<'v>(&self, value: &'v str) -> &'v str {
        match self.kind {
            Kind::Choice(choices) => {
                choices.iter().find(|(name, _)| *name == value).map_or(value, |(_, words)| words)
            }
            _ => value,
        }
    }
}

impl Field {
    /// The field with this key.
    #[must_use]
    pub fn by_key(key: &str) -> Option<Field> {
        Field::ALL.iter().copied().find(|field| field.spec().key == key)
    }

    /// Longest text the field keeps, far beyond anything a parser accepts but a sketch or what is painted.
    #[must_use]
    pub fn longest(self) -> usize {
        if matches!(self.spec().kind, Kind::Lines(_)) { 4000 } else { 400 }
    }

    /// Whether it only says what is looked at, so that it is nothing to undo and no reason to write a new link.
    #[must_use]
    pub fn is_look(self) -> bool {
        self.spec().group == Group::GearsShown
    }

    /// The same field of the other set-up; a shared field is its own twin.
    #[must_use]
    pub fn twin(self) -> Field {
        match self {
            Field::RingsA => Field::RingsB,
            Field::RingsB => Field::RingsA,
            Field::CassetteA => Field::CassetteB,
            Field::CassetteB => Field::CassetteA,
            Field::GearsOffA => Field::GearsOffB,
            Field::GearsOffB => Field::GearsOffA,
            Field::GearA => Field::GearB,
            Field::GearB => Field::GearA,
            shared => shared,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_unique_and_need_no_escaping() {
        for (index, field) in Field::ALL.iter().enumerate() {
            let key = field.spec().key;
            assert!(key.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-'), "{key}");
            assert_eq!(Field::by_key(key), Some(*field));
            assert_eq!(*field as usize, index);
        }
    }

    #[test]
    fn twins_come_in_pairs() {
        for field in Field::ALL {
            assert_eq!(field.twin().twin(), *field);
        }
    }
}
