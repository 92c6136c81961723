//! The fields of the bench: one table row each, read by the form, the link, the messages and the tests.

use crate::bench::offered::{
    BUDGETS, CONSTRUCTIONS, CONSTRUCTIONS_OF_B, COUNTS, COURSES, DECIMAL_MARKS, DISTANCE_UNITS, FOOT_BIKES,
    GAITS, GEAR_SCALES, GROUNDS, HOOKS, INCHES, KNEES, LABEL_EDITIONS, LAP_MODELS, LEGS, LENGTH_UNITS,
    LEVELS, MASS_UNITS, PRESSURE_UNITS, RINGS, SHEETS, SPEED_UNITS, SPROCKETS, STOPS, TYRE_GROUNDS,
    WHEEL_STYLES, WIDTH_LIMITS,
};
use crate::bench::owner::Owner;
use crate::bench::words::{TEETH, fields};

/// Where on the bench a field stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Set-up A.
    SetupA,
    /// Set-up B.
    SetupB,
    /// What set-up B has of its own where it is not as A: wheel, derailleur, chain and mass.
    BikeB,
    /// A's wheel.
    Wheel,
    /// The rider's legs.
    Rider,
    /// A's rear derailleur.
    Derailleur,
    /// Rules of counting and race rules.
    Reckoning,
    /// Units, what gears are told by, and the decimal sign.
    Units,
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
    /// The box of parts.
    Box,
    /// The box of parts: what may be bought beside it.
    BoxFiner,
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
    /// Whether every section depends on it.
    #[must_use]
    pub const fn on_bench(self) -> bool {
        matches!(
            self,
            Self::SetupA
                | Self::SetupB
                | Self::BikeB
                | Self::Wheel
                | Self::Rider
                | Self::Derailleur
                | Self::Reckoning
                | Self::Units
                | Self::Probes
        )
    }

    /// Its fields, in the order of the bench.
    pub fn fields(self) -> impl Iterator<Item = Field> {
        Field::ALL.iter().copied().filter(move |field| field.spec().group == self)
    }

    /// Where the button stands that claims what the demo put into it, named after its first field; none where it put nothing.
    pub(crate) fn claim_place(self) -> Option<String> {
        let has_demos = self.fields().any(|field| field.start_owner() == Owner::Demo);
        self.fields().next().filter(|_| has_demos).map(|first| format!("mine-{}", first.spec().key))
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
    /// Short name in the link, the key again where there is none. A name once given is never given to another field.
    pub short: &'static str,
    /// Where it stands.
    pub group: Group,
    /// Label beside it.
    pub label: &'static str,
    /// Unit behind it; empty when the value says it itself.
    pub unit: &'static str,
    /// How it is filled in.
    pub kind: Kind,
    /// Whose the value is that it starts with.
    pub start_owner: Owner,
    /// What the demo starts with. Part of the link's version: a link leaves out what equals it.
    pub start: &'static str,
    /// One line of help; empty when the label says all.
    pub help: &'static str,
}

macro_rules! fields {
    ($($name:ident: $key:literal, $short:literal, $group:ident, $words:ident, $unit:expr, $kind:expr, $owner:ident, $start:expr;)+) => {
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
                    short: $short,
                    group: Group::$group,
                    label: fields::$words.label,
                    unit: $unit,
                    kind: $kind,
                    start_owner: Owner::$owner,
                    start: $start,
                    help: fields::$words.help,
                },)+];
                &SPECS[self as usize]
            }
        }
    };
}

fields! {
    RingsA: "rings-a", "ra", SetupA, RINGS, "", Kind::Text, Demo, "50/34";
    CassetteA: "cassette-a", "ca", SetupA, CASSETTE, "", Kind::Text, Demo, "11-30 11s";
    GearsOffA: "gears-off-a", "na", SetupA, GEARS_OFF, "", Kind::Text, Usual, "";
    RingsB: "rings-b", "rb", SetupB, RINGS, "", Kind::Text, Demo, "44/32";
    CassetteB: "cassette-b", "cb", SetupB, CASSETTE, "", Kind::Text, Demo, "11-32 11s";
    GearsOffB: "gears-off-b", "nb", SetupB, GEARS_OFF, "", Kind::Text, Usual, "";
    TyreB: "tyre-b", "tyb", BikeB, TYRE, "", Kind::Text, Usual, "";
    RollOutB: "roll-out-b", "rob", BikeB, ROLL_OUT, "mm", Kind::Number, Usual, "";
    RimB: "rim-b", "rib", BikeB, RIM, "mm", Kind::Number, Usual, "";
    ConstructionB: "tyre-kind-b", "tkb", BikeB, CONSTRUCTION, "", Kind::Choice(CONSTRUCTIONS_OF_B), Usual, "";
    TyreWidthB: "tyre-width-b", "twb", BikeB, TYRE_WIDTH_MEASURED, "mm", Kind::Number, Usual, "";
    CapacityB: "capacity-b", "tcb", BikeB, CAPACITY, TEETH, Kind::Number, Usual, "";
    LargestSprocketB: "largest-sprocket-b", "lsb", BikeB, LARGEST_SPROCKET, TEETH, Kind::Number, Usual, "";
    SmallestSprocketB: "smallest-sprocket-b", "ssb", BikeB, SMALLEST_SPROCKET, TEETH, Kind::Number, Usual, "";
    RingDifferenceB: "ring-difference-b", "rdb", BikeB, RING_DIFFERENCE, TEETH, Kind::Number, Usual, "";
    PulleyCentresB: "pulley-centres-b", "pcb", BikeB, PULLEY_CENTRES, "mm", Kind::Number, Usual, "";
    ChainLinksB: "links-b", "lnb", BikeB, CHAIN_LINKS, "", Kind::Number, Usual, "";
    BikeMassB: "bike-mass-b", "bib", BikeB, BIKE_MASS, "kg", Kind::Number, Usual, "";
    Tyre: "tyre", "ty", Wheel, TYRE, "", Kind::Text, Demo, "33-622";
    RollOut: "roll-out", "ro", Wheel, ROLL_OUT, "mm", Kind::Number, Usual, "";
    CadenceLow: "cadence-low", "cl", Rider, CADENCE_LOW, "rpm", Kind::Number, Usual, "55";
    CadenceUsual: "cadence-usual", "cu", Rider, CADENCE_USUAL, "rpm", Kind::Number, Usual, "85";
    CadenceHigh: "cadence-high", "ch", Rider, CADENCE_HIGH, "rpm", Kind::Number, Usual, "110";
    Capacity: "capacity", "tc", Derailleur, CAPACITY, TEETH, Kind::Number, Demo, "33";
    LargestSprocket: "largest-sprocket", "ls", Derailleur, LARGEST_SPROCKET, TEETH, Kind::Number, Demo, "34";
    SmallestSprocket: "smallest-sprocket", "ss", Derailleur, SMALLEST_SPROCKET, TEETH, Kind::Number, Demo, "11";
    RingDifference: "ring-difference", "rd", Derailleur, RING_DIFFERENCE, TEETH, Kind::Number, Demo, "16";
    Tolerance: "same-within", "sw", Reckoning, TOLERANCE, "%", Kind::Number, Usual, "2";
    Inches: "inches", "in", Reckoning, INCHES, "", Kind::Choice(INCHES), Usual, "real";
    SpeedUnit: "speed-unit", "su", Units, SPEED_UNIT, "", Kind::Choice(SPEED_UNITS), Usual, "kmh";
    MassUnit: "mass-unit", "ua", Units, MASS_UNIT, "", Kind::Choice(MASS_UNITS), Usual, "kg";
    DistanceUnit: "distance-unit", "ud", Units, DISTANCE_UNIT, "", Kind::Choice(DISTANCE_UNITS), Usual, "m";
    LengthUnit: "length-unit", "ul", Units, LENGTH_UNIT, "", Kind::Choice(LENGTH_UNITS), Usual, "mm";
    PressureUnit: "pressure-unit", "up", Units, PRESSURE_UNIT, "", Kind::Choice(PRESSURE_UNITS), Usual, "bar";
    GearScale: "gear-scale", "ug", Units, GEAR_SCALE, "", Kind::Choice(GEAR_SCALES), Usual, "development";
    DecimalMark: "decimal-mark", "uc", Units, DECIMAL_MARK, "", Kind::Choice(DECIMAL_MARKS), Usual, "point";
    RollOutLimit: "limit", "li", Reckoning, ROLL_OUT_LIMIT, "m", Kind::Number, Usual, "";
    ProbeCadence: "at-cadence", "ac", Probes, PROBE_CADENCE, "rpm", Kind::Slider(30.0, 130.0, 1.0), Usual, "85";
    ProbeSpeed: "at-speed", "as", Probes, PROBE_SPEED, "km/h", Kind::Slider(4.0, 80.0, 0.5), Usual, "15";
    Chainstay: "chainstay", "cs", Chain, CHAINSTAY, "mm", Kind::Number, Usual, "";
    PulleyCentres: "pulley-centres", "pc", Chain, PULLEY_CENTRES, "mm", Kind::Number, Usual, "";
    BottomBracketDrop: "bracket-drop", "bb", Chain, BOTTOM_BRACKET_DROP, "mm", Kind::Number, Usual, "";
    ChainLinks: "links", "ln", Chain, CHAIN_LINKS, "", Kind::Number, Usual, "";
    GuideTeeth: "guide-teeth", "gt", ChainFiner, GUIDE_TEETH, TEETH, Kind::Number, Usual, "";
    TensionTeeth: "tension-teeth", "tt", ChainFiner, TENSION_TEETH, TEETH, Kind::Number, Usual, "";
    PulleyGap: "pulley-gap", "pg", ChainFiner, PULLEY_GAP, "mm", Kind::Number, Usual, "";
    GuideAngle: "guide-angle", "gu", ChainFiner, GUIDE_ANGLE, "°", Kind::Number, Usual, "";
    RearStop: "rear-stop", "rt", ChainFiner, REAR_STOP, "°", Kind::Number, Usual, "";
    ForeStop: "fore-stop", "fo", ChainFiner, FORE_STOP, "°", Kind::Number, Usual, "";
    StopBy: "stop-by", "sy", ChainFiner, STOP_BY, "", Kind::Choice(STOPS), Usual, "usual";
    HangerDrop: "hanger-drop", "hd", ChainFiner, HANGER_DROP, "mm", Kind::Number, Usual, "";
    HangerSetback: "hanger-setback", "hb", ChainFiner, HANGER_SETBACK, "mm", Kind::Number, Usual, "";
    FrontMadeFor: "front-ring", "mf", ChainFiner, FRONT_MADE_FOR, TEETH, Kind::Number, Usual, "";
    GearA: "gear-a", "ga", GearsShown, GEAR_A, "", Kind::Slider(1.0, 42.0, 1.0), Usual, "0";
    GearB: "gear-b", "gb", GearsShown, GEAR_B, "", Kind::Slider(1.0, 42.0, 1.0), Usual, "0";
    BodyMass: "body-mass", "bm", Ride, BODY_MASS, "kg", Kind::Number, Demo, "62";
    KitMass: "kit-mass", "km", Ride, KIT_MASS, "kg", Kind::Number, Usual, "2";
    BikeMass: "bike-mass", "bi", Ride, BIKE_MASS, "kg", Kind::Number, Demo, "8.9";
    Power: "power", "pw", Ride, POWER, "W", Kind::Number, Demo, "220";
    Level: "level", "lv", Ride, LEVEL, "", Kind::Choice(LEVELS), Demo, "club";
    Ground: "ground", "gr", Ride, GROUND, "", Kind::Choice(GROUNDS), Demo, "wet-grass";
    Slope: "slope", "sl", Ride, SLOPE, "%", Kind::Number, Demo, "9";
    ClimbLength: "climb-length", "le", Ride, CLIMB_LENGTH, "m", Kind::Number, Demo, "60";
    Headwind: "headwind", "wi", Ride, HEADWIND, "m/s", Kind::Number, Usual, "0";
    SecondsLost: "seconds-lost", "lt", Ride, SECONDS_LOST, "s", Kind::Number, Usual, "3";
    Efficiency: "efficiency", "ef", RideRider, EFFICIENCY, "", Kind::Number, Usual, "0.23";
    Standing: "standing", "sn", RideRider, STANDING, "W/kg", Kind::Number, Usual, "1.5";
    FootCost: "foot-cost", "ft", RideRider, FOOT_COST, "×", Kind::Number, Usual, "1";
    OnFoot: "on-foot", "of", RideRider, ON_FOOT, "", Kind::Choice(GAITS), Usual, "run-or-walk";
    FootBike: "foot-bike", "fb", RideRider, FOOT_BIKE, "", Kind::Choice(FOOT_BIKES), Usual, "carried";
    Carry: "carry", "ld", RideRider, CARRY, "×", Kind::Number, Usual, "1.2";
    DrivetrainShare: "drivetrain", "dt", RideRider, DRIVETRAIN_SHARE, "", Kind::Number, Usual, "0.96";
    Rolling: "rolling", "rl", RideGround, ROLLING, "", Kind::Number, Usual, "";
    FootGround: "foot-ground", "fg", RideGround, FOOT_GROUND, "×", Kind::Number, Usual, "";
    Friction: "friction", "mu", RideGround, FRICTION, "", Kind::Number, Usual, "";
    SlopeShare: "ground-on-slopes", "gs", RideGround, SLOPE_SHARE, "", Kind::Number, Usual, "0";
    DragArea: "drag-area", "da", RideGround, DRAG_AREA, "m²", Kind::Number, Usual, "0.40";
    AirDensity: "air-density", "ad", RideGround, AIR_DENSITY, "kg/m³", Kind::Number, Usual, "1.20";
    Balance: "balance", "bs", RideLimits, BALANCE, "m/s", Kind::Number, Usual, "1.2";
    GripCounts: "grip-limit", "gc", RideLimits, GRIP_COUNTS, "", Kind::Choice(COUNTS), Usual, "on";
    RearWeight: "rear-weight", "rw", RideLimits, REAR_WEIGHT, "", Kind::Number, Usual, "0.55";
    Legs: "leg-limit", "lg", RideLimits, LEGS, "", Kind::Choice(LEGS), Usual, "minutes";
    PeakPower: "peak-power", "pk", RideLimits, PEAK_POWER, "W", Kind::Number, Usual, "";
    Reserve: "reserve", "rv", RideEffort, RESERVE, "kJ", Kind::Number, Usual, "18";
    ReserveShare: "reserve-share", "rh", RideEffort, RESERVE_SHARE, "", Kind::Number, Usual, "0.2";
    Repaid: "repaid", "rq", RideEffort, REPAID, "", Kind::Number, Usual, "0.5";
    SlopeSpeed: "slope-speed", "os", RideProbe, SLOPE_SPEED, "km/h", Kind::Slider(2.0, 40.0, 0.5), Usual, "9";
    EntrySpeed: "entry-speed", "es", RideEffort, ENTRY_SPEED, "km/h", Kind::Number, Usual, "20";
    Course: "course", "co", Lap, COURSE, "", Kind::Choice(COURSES), Demo, "meadow";
    LapModel: "lap-model", "ly", Lap, LAP_MODEL, "", Kind::Choice(LAP_MODELS), Usual, "reserve";
    LapBudget: "lap-budget", "lb", LapHabits, LAP_BUDGET, "kJ", Kind::Number, Usual, "0";
    LapWind: "lap-wind", "lw", LapHabits, LAP_WIND, "m/s", Kind::Number, Usual, "0";
    LapWindFrom: "lap-wind-from", "lf", LapHabits, LAP_WIND_FROM, "°", Kind::Number, Usual, "270";
    Smoothing: "smoothing", "sg", LapFile, SMOOTHING, "m", Kind::Number, Usual, "40";
    TrackGround: "track-ground", "gd", LapFile, TRACK_GROUND, "", Kind::Choice(GROUNDS), Usual, "firm-grass";
    TrackFrom: "track-from", "t1", LapFile, TRACK_FROM, "m", Kind::Number, Usual, "";
    TrackTo: "track-to", "t2", LapFile, TRACK_TO, "m", Kind::Number, Usual, "";
    Sketch: "sketch", "sk", LapSketch, SKETCH, "", Kind::Lines(8), Demo, SKETCH;
    Paint: "paint", "pa", LapSketch, PAINT, "", Kind::Lines(3), Usual, "";
    ShiftRear: "shift-rear", "hr", LapHabits, SHIFT_REAR, "s", Kind::Number, Usual, "0.2";
    ShiftFront: "shift-front", "hf", LapHabits, SHIFT_FRONT, "s", Kind::Number, Usual, "0.6";
    CadenceSpread: "cadence-spread", "cw", LapHabits, CADENCE_SPREAD, "", Kind::Number, Usual, "0.15";
    Braking: "braking", "br", LapHabits, BRAKING, "m/s²", Kind::Number, Usual, "3";
    SearchSmall: "search-small", "r1", LapSearch, SEARCH_SMALL, TEETH, Kind::Number, Usual, "28";
    SearchLarge: "search-large", "r2", LapSearch, SEARCH_LARGE, TEETH, Kind::Number, Usual, "50";
    SearchPairs: "search-rings", "rk", LapSearch, SEARCH_PAIRS, "", Kind::Choice(RINGS), Usual, "both";
    SearchSprockets: "search-sprockets", "sp", LapSearch, SEARCH_SPROCKETS, "", Kind::Choice(SPROCKETS), Usual, "bench";
    FrameRing: "frame-ring", "fl", LapSearch, FRAME_RING, TEETH, Kind::Number, Usual, "";
    MoreCassettes: "more-cassettes", "mc", LapSearch, MORE_CASSETTES, "", Kind::Lines(2), Usual, "";
    BoxParts: "box-parts", "bx", Box, BOX_PARTS, "", Kind::Lines(3), Usual, "";
    BoxBudget: "box-budget", "bp", BoxFiner, BOX_BUDGET, "", Kind::Choice(BUDGETS), Usual, "1";
    Construction: "tyre-kind", "tk", Tyre, CONSTRUCTION, "", Kind::Choice(CONSTRUCTIONS), Demo, "tubeless";
    Rim: "rim", "rim", Tyre, RIM, "mm", Kind::Number, Demo, "21";
    TyreMark: "tyre-mark", "tm", Tyre, TYRE_MARK, "bar", Kind::Number, Usual, "";
    RimMark: "rim-mark", "rm", Tyre, RIM_MARK, "bar", Kind::Number, Usual, "";
    LeastMark: "least-mark", "lm", Tyre, LEAST_MARK, "bar", Kind::Number, Usual, "";
    WidthLimit: "width-limit", "wl", Tyre, WIDTH_LIMIT, "", Kind::Choice(WIDTH_LIMITS), Usual, "33";
    TyreGround: "tyre-ground", "tg", Tyre, TYRE_GROUND, "", Kind::Choice(TYRE_GROUNDS), Demo, "soft";
    WheelStyle: "wheel-style", "ws", Tyre, WHEEL_STYLE, "", Kind::Choice(WHEEL_STYLES), Usual, "normal";
    OtherTyre: "other-tyre", "ot", Tyre, OTHER_TYRE, "mm", Kind::Number, Usual, "38";
    Hookless: "hooks", "ho", TyreFiner, HOOKLESS, "", Kind::Choice(HOOKS), Usual, "hooked";
    TyreWidthMeasured: "tyre-width", "tw", TyreFiner, TYRE_WIDTH_MEASURED, "mm", Kind::Number, Usual, "";
    LabelEdition: "label-rule", "lr", TyreFiner, LABEL_EDITION, "", Kind::Choice(LABEL_EDITIONS), Usual, "2020";
    MeasuringRim: "measuring-rim", "mr", TyreFiner, MEASURING_RIM, "mm", Kind::Number, Usual, "";
    SaddleHeight: "saddle-height", "sh", RoadBike, SADDLE_HEIGHT, "mm", Kind::Number, Demo, "728";
    Setback: "setback", "sb", RoadBike, SETBACK, "mm", Kind::Number, Demo, "56";
    TipToBar: "tip-to-bar", "tb", RoadBike, TIP_TO_BAR, "mm", Kind::Number, Demo, "545";
    BarDrop: "bar-drop", "bd", RoadBike, BAR_DROP, "mm", Kind::Number, Demo, "72";
    SeatAngle: "seat-angle", "sa", RoadBike, SEAT_ANGLE, "°", Kind::Number, Demo, "73.5";
    RoadCrank: "road-crank", "rc", RoadBike, ROAD_CRANK, "mm", Kind::Number, Demo, "172.5";
    RoadStack: "road-sole", "rs", RoadBike, ROAD_STACK, "mm", Kind::Number, Demo, "15";
    CrossSeatAngle: "cross-seat-angle", "xa", CrossBike, CROSS_SEAT_ANGLE, "°", Kind::Number, Demo, "73";
    CrossCrank: "cross-crank", "xc", CrossBike, CROSS_CRANK, "mm", Kind::Number, Demo, "172.5";
    CrossStack: "cross-sole", "xs", CrossBike, CROSS_STACK, "mm", Kind::Number, Demo, "21";
    LowerBy: "lower", "lo", CrossBike, LOWER_BY, "mm", Kind::Number, Usual, "0";
    BarUpBy: "bar-up", "bu", CrossBike, BAR_UP_BY, "mm", Kind::Number, Usual, "15";
    BarCloserBy: "bar-closer", "bc", CrossBike, BAR_CLOSER_BY, "mm", Kind::Number, Usual, "10";
    Stack: "stack", "st", CrossFrame, STACK, "mm", Kind::Number, Demo, "578";
    Reach: "reach", "re", CrossFrame, REACH, "mm", Kind::Number, Demo, "383";
    HeadAngle: "head-angle", "ha", CrossFrame, HEAD_ANGLE, "°", Kind::Number, Demo, "72";
    Headset: "headset", "hs", CrossFrame, HEADSET, "mm", Kind::Number, Demo, "12";
    ClampHeight: "clamp", "cp", PositionFiner, CLAMP_HEIGHT, "mm", Kind::Number, Usual, "40";
    BarWithin: "bar-within", "bw", PositionFiner, BAR_WITHIN, "mm", Kind::Number, Usual, "5";
    SpacersMost: "spacers-most", "sm", PositionFiner, SPACERS_MOST, "mm", Kind::Number, Usual, "30";
    Knee: "knee", "kn", PositionFiner, KNEE, "", Kind::Choice(KNEES), Usual, "saddle";
    RoadBarReach: "road-bar-reach", "rr", PositionFiner, ROAD_BAR_REACH, "mm", Kind::Number, Usual, "";
    RoadBarDepth: "road-bar-drop", "rp", PositionFiner, ROAD_BAR_DEPTH, "mm", Kind::Number, Usual, "";
    CrossBarReach: "cross-bar-reach", "xr", PositionFiner, CROSS_BAR_REACH, "mm", Kind::Number, Usual, "";
    CrossBarDepth: "cross-bar-drop", "xp", PositionFiner, CROSS_BAR_DEPTH, "mm", Kind::Number, Usual, "";
    FrontCentre: "front-centre", "fc", PositionFiner, FRONT_CENTRE, "mm", Kind::Number, Usual, "";
    ForkRake: "rake", "fr", PositionFiner, FORK_RAKE, "mm", Kind::Number, Usual, "47";
    PedalOffset: "pedal-offset", "po", PositionFiner, PEDAL_OFFSET, "mm", Kind::Number, Usual, "125";
    SheetFor: "sheet-for", "sf", Sheet, SHEET_FOR, "", Kind::Choice(SHEETS), Usual, "both";
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

    /// Whose the value is that the field starts with.
    #[must_use]
    pub fn start_owner(self) -> Owner {
        self.spec().start_owner
    }

    /// Longest text the field keeps, far beyond anything a parser accepts but a sketch or what is painted.
    #[must_use]
    pub fn longest(self) -> usize {
        if matches!(self.spec().kind, Kind::Lines(_)) { 4000 } else { 400 }
    }

    /// Whether it only says what is shown and how, which makes no bench the rider's own.
    #[must_use]
    pub fn is_setting(self) -> bool {
        use Group::{GearsShown, Probes, RideProbe, Sheet, Units};
        self == Self::Inches || matches!(self.spec().group, GearsShown | Probes | RideProbe | Sheet | Units)
    }

    /// The field of A that this one of B is as while it is empty; none of a field without such a model.
    #[must_use]
    pub fn as_on_a(self) -> Option<Field> {
        (self.spec().group == Group::BikeB).then(|| self.twin())
    }

    /// The field of B that stands for this one of A on B, if B may have its own.
    #[must_use]
    pub fn own_of_b(self) -> Option<Field> {
        Some(self.twin()).filter(|twin| twin.spec().group == Group::BikeB)
    }

    /// Of a measure of B's part the field that says which part it is: where that is B's own, A's measure says nothing of it.
    #[must_use]
    pub fn measures(self) -> Option<Field> {
        match self {
            Self::RollOutB | Self::TyreWidthB => Some(Self::TyreB),
            Self::PulleyCentresB => Some(Self::CapacityB),
            _ => None,
        }
    }

    /// A's fields that make up a bike.
    pub fn of_bike() -> impl Iterator<Item = Field> {
        TWINS.iter().map(|pair| pair[0]).filter(|field| !field.is_look())
    }

    /// Whether it holds a pressure.
    #[must_use]
    pub fn is_pressure(self) -> bool {
        matches!(self, Self::TyreMark | Self::RimMark | Self::LeastMark)
    }

    /// Whether it only says what is looked at, so that it is nothing to undo and no reason to write a new link.
    #[must_use]
    pub fn is_look(self) -> bool {
        self.spec().group == Group::GearsShown
    }

    /// The same field of the other set-up; a shared field is its own twin.
    #[must_use]
    pub fn twin(self) -> Field {
        let pair = TWINS.iter().find(|pair| pair.contains(&self));
        pair.map_or(self, |&[a, b]| if self == a { b } else { a })
    }
}

/// What A and B each have.
const TWINS: [[Field; 2]; 16] = [
    [Field::RingsA, Field::RingsB],
    [Field::CassetteA, Field::CassetteB],
    [Field::GearsOffA, Field::GearsOffB],
    [Field::GearA, Field::GearB],
    [Field::Tyre, Field::TyreB],
    [Field::RollOut, Field::RollOutB],
    [Field::Rim, Field::RimB],
    [Field::Construction, Field::ConstructionB],
    [Field::TyreWidthMeasured, Field::TyreWidthB],
    [Field::Capacity, Field::CapacityB],
    [Field::LargestSprocket, Field::LargestSprocketB],
    [Field::SmallestSprocket, Field::SmallestSprocketB],
    [Field::RingDifference, Field::RingDifferenceB],
    [Field::PulleyCentres, Field::PulleyCentresB],
    [Field::ChainLinks, Field::ChainLinksB],
    [Field::BikeMass, Field::BikeMassB],
];

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
    fn pressures_are_told_in_bar() {
        for field in Field::ALL {
            assert_eq!(field.is_pressure(), field.spec().unit == "bar", "{field:?}");
        }
    }

    #[test]
    fn twins_come_in_pairs() {
        for field in Field::ALL {
            assert_eq!(field.twin().twin(), *field);
        }
    }
}
