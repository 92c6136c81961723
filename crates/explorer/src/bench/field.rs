//! The fields of the bench: one table row each, read by the form, the link, the messages and the tests.

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
    ($($name:ident: $key:literal, $group:ident, $label:literal, $unit:literal, $kind:expr, $start:expr, $help:literal;)+) => {
        /// A field of the bench.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Field {
            $(#[doc = $label] $name,)+
        }

        impl Field {
            /// Every field, in the order of the bench.
            pub const ALL: &'static [Field] = &[$(Field::$name,)+];

            /// The field's row of the table.
            #[must_use]
            pub fn spec(self) -> &'static Spec {
                const SPECS: &[Spec] = &[$(Spec {
                    key: $key, group: Group::$group, label: $label, unit: $unit, kind: $kind, start: $start, help: $help,
                },)+];
                &SPECS[self as usize]
            }
        }
    };
}

fields! {
    RingsA: "rings-a", SetupA, "Chainrings", "", Kind::Text, "50/34", "";
    CassetteA: "cassette-a", SetupA, "Cassette", "", Kind::Text, "11-12-13-14-15-17-19-21-24-27-30", "";
    GearsOffA: "gears-off-a", SetupA, "Gears you never use", "", Kind::Text, "", "Such as 34×11, 34×12";
    RingsB: "rings-b", SetupB, "Chainrings", "", Kind::Text, "44/32", "";
    CassetteB: "cassette-b", SetupB, "Cassette", "", Kind::Text, "11-12-13-14-16-18-20-22-25-28-32", "";
    GearsOffB: "gears-off-b", SetupB, "Gears you never use", "", Kind::Text, "", "Such as 34×11, 34×12";
    Tyre: "tyre", Wheel, "Tyre", "", Kind::Text, "33-622", "ISO 5775 size as on the sidewall, width first";
    RollOut: "roll-out", Wheel, "Roll-out measured", "mm", Kind::Number, "", "One turn of the wheel, rider aboard; it wins over the estimate";
    CadenceLow: "cadence-low", Rider, "Lowest cadence", "rpm", Kind::Number, "55", "Slowest you still turn the crank on a climb";
    CadenceUsual: "cadence-usual", Rider, "Usual cadence", "rpm", Kind::Number, "85", "";
    CadenceHigh: "cadence-high", Rider, "Highest cadence", "rpm", Kind::Number, "110", "";
    Capacity: "capacity", Derailleur, "Total capacity", "teeth", Kind::Number, "33", "As its maker states it; may be left empty";
    LargestSprocket: "largest-sprocket", Derailleur, "Largest sprocket", "teeth", Kind::Number, "34", "";
    SmallestSprocket: "smallest-sprocket", Derailleur, "Smallest sprocket", "teeth", Kind::Number, "11", "";
    RingDifference: "ring-difference", Derailleur, "Chainring difference", "teeth", Kind::Number, "16", "The smaller of what front and rear derailleur allow";
    Tolerance: "same-within", Reckoning, "Same gear within", "%", Kind::Number, "2", "Gears closer than this count as one";
    Inches: "inches", Reckoning, "Gear inches on", "", Kind::Choice(INCHES), "real", "";
    SpeedUnit: "speed-unit", Reckoning, "Speeds in", "", Kind::Choice(SPEED_UNITS), "kmh", "";
    RollOutLimit: "limit", Reckoning, "Roll-out limit", "m", Kind::Number, "", "Of your race, if it has one";
    ProbeCadence: "at-cadence", Probes, "At a cadence of", "rpm", Kind::Slider(30.0, 130.0, 1.0), "85", "";
    ProbeSpeed: "at-speed", Probes, "At a speed of", "km/h", Kind::Slider(4.0, 80.0, 0.5), "15", "";
    Chainstay: "chainstay", Chain, "Chainstay", "mm", Kind::Number, "", "Middle of the crank axle to middle of the rear axle; empty: 425, as is usual";
    PulleyCentres: "pulley-centres", Chain, "Pulley centres", "mm", Kind::Number, "", "From one pulley’s bolt to the other’s; empty: by the total capacity, else 75";
    BottomBracketDrop: "bracket-drop", Chain, "Bottom-bracket drop", "mm", Kind::Number, "", "How far the crank axle lies below the rear axle; empty: 65, as is usual";
    ChainLinks: "links", Chain, "Links in the chain fitted", "", Kind::Number, "", "Inner and outer ones counted alike; empty: the chain to fit";
    GuideTeeth: "guide-teeth", ChainFiner, "Guide pulley", "teeth", Kind::Number, "", "The upper one; empty: 11";
    TensionTeeth: "tension-teeth", ChainFiner, "Tension pulley", "teeth", Kind::Number, "", "The lower one; empty: 11";
    PulleyGap: "pulley-gap", ChainFiner, "Pulley gap", "mm", Kind::Number, "", "Guide pulley to sprocket between tooth tips, plus 6.5; empty: 12.5";
    GuideAngle: "guide-angle", ChainFiner, "Guide pulley forward of the axle", "°", Kind::Number, "", "Seen from the rear axle, from straight down; empty: 10, an estimate";
    RearStop: "rear-stop", ChainFiner, "Rest position", "°", Kind::Number, "", "Cage furthest back, at its stop pin; negative behind straight down; empty: −75, fitted to published capacities";
    ForeStop: "fore-stop", ChainFiner, "Forward limit", "°", Kind::Number, "", "Furthest forward you would pull the cage; empty: 65, an estimate";
    StopBy: "stop-by", ChainFiner, "Rest position from", "", Kind::Choice(STOPS), "usual", "The maker’s capacity makes our slack end agree with the maker’s";
    HangerDrop: "hanger-drop", ChainFiner, "Hanger drop", "mm", Kind::Number, "", "Derailleur bolt below the rear axle; empty: 28, as frame builders give it";
    HangerSetback: "hanger-setback", ChainFiner, "Hanger setback", "mm", Kind::Number, "", "Derailleur bolt behind the rear axle; empty: 9, as frame builders give it";
    FrontMadeFor: "front-ring", ChainFiner, "Front derailleur’s largest ring", "teeth", Kind::Number, "", "The ring its plates are curved for; empty: not checked";
    GearA: "gear-a", GearsShown, "Gear of A", "", Kind::Slider(1.0, 42.0, 1.0), "1", "";
    GearB: "gear-b", GearsShown, "Gear of B", "", Kind::Slider(1.0, 42.0, 1.0), "1", "";
    BodyMass: "body-mass", Ride, "Body mass", "kg", Kind::Number, "62", "Undressed";
    KitMass: "kit-mass", Ride, "Kit", "kg", Kind::Number, "2", "Clothes, shoes, helmet, bottle; about 2 kg (estimate)";
    BikeMass: "bike-mass", Ride, "Bike", "kg", Kind::Number, "8.9", "As it stands, mud included";
    Power: "power", Ride, "Power", "W", Kind::Number, "220", "At the crank, for this effort; leave it empty to estimate it from your level";
    Level: "level", Ride, "Level", "", Kind::Choice(LEVELS), "club", "Counts only while the power is empty; the reserve then follows it";
    Ground: "ground", Ride, "Ground of the slope", "", Kind::Choice(GROUNDS), "wet-grass", "";
    Slope: "slope", Ride, "Slope", "%", Kind::Number, "9", "Metres up for 100 m forward";
    ClimbLength: "climb-length", Ride, "Length of the climb", "m", Kind::Number, "60", "Along the slope";
    Headwind: "headwind", Ride, "Wind against you", "m/s", Kind::Number, "0", "Minus when it pushes";
    SecondsLost: "seconds-lost", Ride, "Time for dismount and remount", "s", Kind::Number, "3", "Skilled 1 to 2 s, practised 3 to 4, beginner 6 to 10; one more to shoulder the bike (common practice)";
    Efficiency: "efficiency", RideRider, "Gross efficiency", "", Kind::Number, "0.23", "Power at the crank over power burnt: 0.20 to 0.25; 0.23 for a trained rider at race power, 0.22 a fair guess uphill";
    Standing: "standing", RideRider, "Standing metabolic rate", "W/kg", Kind::Number, "1.5", "1.2 to 1.7";
    FootCost: "foot-cost", RideRider, "Your cost on foot", "×", Kind::Number, "1", "1 is the mean of the runners measured; 0.92 if you run much, 1.08 if you never do";
    OnFoot: "on-foot", RideRider, "On foot", "", Kind::Choice(GAITS), "run-or-walk", "Whichever is quicker, or running at any price";
    Carry: "carry", RideRider, "Cost of carrying the bike", "×", Kind::Number, "1.2", "A kilogram of bike against one of body: 1.0 at the trunk, 1.2 shouldered, 1.5 in the hands (estimate)";
    DrivetrainShare: "drivetrain", RideRider, "Drivetrain efficiency", "", Kind::Number, "0.96", "0.976 clean, 0.96 off-road, 0.92 muddy (estimates but the first)";
    Rolling: "rolling", RideGround, "Rolling resistance", "", Kind::Number, "", "";
    FootGround: "foot-ground", RideGround, "Cost of the ground on foot", "×", Kind::Number, "", "";
    Friction: "friction", RideGround, "Friction of the tyre", "", Kind::Number, "", "";
    SlopeShare: "ground-on-slopes", RideGround, "Cost of the ground on slopes", "", Kind::Number, "0", "0: the same extra for every metre; 1: grows with the whole cost. Nobody has measured it";
    DragArea: "drag-area", RideGround, "Drag area", "m²", Kind::Number, "0.40", "0.32 low in the drops, 0.40 on the hoods, 0.50 upright in winter clothes";
    AirDensity: "air-density", RideGround, "Air", "kg/m³", Kind::Number, "1.20", "1.17 on a mild day, 1.27 in frost, less high up";
    Balance: "balance", RideLimits, "Slowest speed you can balance", "m/s", Kind::Number, "1.2", "1.0 skilled on smooth ground, 1.8 in ruts (estimate); empty leaves it out";
    GripCounts: "grip-limit", RideLimits, "Grip of the rear wheel", "", Kind::Choice(COUNTS), "on", "";
    RearWeight: "rear-weight", RideLimits, "Weight on the rear wheel", "", Kind::Number, "0.55", "Seated on the level: 0.55 by the scales of recreational riders, up to 0.60, less leaning forward; the tyres’ pressures too";
    Legs: "leg-limit", RideLimits, "Leg strength that lasts", "", Kind::Choice(LEGS), "minutes", "";
    PeakPower: "peak-power", RideLimits, "Peak power", "W", Kind::Number, "", "Of one pedal turn in a sprint; empty for an estimate";
    Reserve: "reserve", RideEffort, "Work in reserve", "kJ", Kind::Number, "18", "Above the power you can hold (W′): 10 to 25 kJ, 18 for a trained man; empty for an estimate from your body and power";
    ReserveShare: "reserve-share", RideEffort, "Share of the reserve for this climb", "", Kind::Number, "0.2", "One fifth, so that every lap can afford it (estimate)";
    SlopeSpeed: "slope-speed", RideProbe, "At a speed of", "km/h", Kind::Slider(2.0, 40.0, 0.5), "9", "";
    EntrySpeed: "entry-speed", RideEffort, "Speed into the climb", "km/h", Kind::Number, "20", "As you reach its foot";
    Course: "course", Lap, "Course", "", Kind::Choice(COURSES), "meadow", "The first two are invented, to try things on";
    Smoothing: "smoothing", LapFile, "Smoothing length", "m", Kind::Number, "40", "Hills this long keep half their height, longer ones more: evens out the noise of the recorder (estimate)";
    TrackGround: "track-ground", LapFile, "Ground of the track", "", Kind::Choice(GROUNDS), "firm-grass", "A file does not know it; change it by stretches below";
    TrackFrom: "track-from", LapFile, "Use the track from", "m", Kind::Number, "", "Of a GPX track: to leave out a warm-up; empty: from its start";
    TrackTo: "track-to", LapFile, "Use the track to", "m", Kind::Number, "", "Of a GPX track; empty: to its end";
    Sketch: "sketch", LapSketch, "Sketch", "", Kind::Lines(8), SKETCH, "One stretch a line: length in m; gradient in %; ground; then, if need be, foot and the seconds an obstacle costs, corner and its km/h. A # begins a remark";
    Paint: "paint", LapSketch, "Changes on a stretch", "", Kind::Lines(3), "", "Other ground, an obstacle or a corner over any course. From m; to m; then a ground, foot and the seconds an obstacle costs, or corner and its km/h. Such as 310; 355; deep mud";
    ShiftRear: "shift-rear", LapHabits, "Drive lost in a rear shift", "s", Kind::Number, "0.2", "Estimate";
    ShiftFront: "shift-front", LapHabits, "Drive lost in a front shift", "s", Kind::Number, "0.6", "Estimate";
    CadenceSpread: "cadence-spread", LapHabits, "Shift when cadence is off by", "", Kind::Number, "0.15", "Share of your usual cadence (estimate)";
    Braking: "braking", LapHabits, "Braking into bends", "m/s²", Kind::Number, "3", "On grass (estimate)";
    SearchSmall: "search-small", LapSearch, "Smallest ring tried", "teeth", Kind::Number, "28", "Of those that are made";
    SearchLarge: "search-large", LapSearch, "Largest ring tried", "teeth", Kind::Number, "50", "";
    SearchPairs: "search-rings", LapSearch, "Rings", "", Kind::Choice(RINGS), "both", "Pairs that are made, 8 to 16 teeth apart, as far as the front derailleur takes them";
    SearchSprockets: "search-sprockets", LapSearch, "Sprockets", "", Kind::Choice(SPROCKETS), "bench", "As many as the bike has; further cassettes are tried whatever they have";
    FrameRing: "frame-ring", LapSearch, "Largest ring the frame clears", "teeth", Kind::Number, "", "Of A and B too; empty: not limited";
    MoreCassettes: "more-cassettes", LapSearch, "Further cassettes", "", Kind::Lines(2), "", "One a line, tried beside the usual ones";
    Construction: "tyre-kind", Tyre, "Kind of tyre", "", Kind::Choice(CONSTRUCTIONS), "tubeless", "";
    Rim: "rim", Tyre, "Rim, inner width", "mm", Kind::Number, "21", "Between the side walls; of a tubular rim, its bed";
    TyreMark: "tyre-mark", Tyre, "Tyre’s marked maximum", "bar", Kind::Number, "", "On the sidewall; type psi behind it if it is in psi";
    RimMark: "rim-mark", Tyre, "Rim’s marked maximum", "bar", Kind::Number, "", "On the rim or in its papers";
    LeastMark: "least-mark", Tyre, "Marked minimum", "bar", Kind::Number, "", "On tyre or rim, if there is one";
    WidthLimit: "width-limit", Tyre, "Race limit", "", Kind::Choice(WIDTH_LIMITS), "33", "33 mm: UCI 1.3.018. Others: ask your organiser";
    TyreGround: "tyre-ground", Tyre, "Ground of the course", "", Kind::Choice(TYRE_GROUNDS), "soft", "Of all of it, as a tyre meets it";
    WheelStyle: "wheel-style", Tyre, "Riding style", "", Kind::Choice(WHEEL_STYLES), "normal", "";
    OtherTyre: "other-tyre", Tyre, "Compare with a width of", "mm", Kind::Number, "38", "What it would do to every gear; may be left empty";
    Hookless: "hooks", TyreFiner, "Rim type", "", Kind::Choice(HOOKS), "hooked", "";
    TyreWidthMeasured: "tyre-width", TyreFiner, "Tyre’s width measured", "mm", Kind::Number, "", "Inflated on this rim; it wins over the estimate";
    LabelEdition: "label-rule", TyreFiner, "Label follows", "", Kind::Choice(LABEL_EDITIONS), "2020", "";
    MeasuringRim: "measuring-rim", TyreFiner, "Measuring rim", "mm", Kind::Number, "", "If the sidewall names one; else it follows from the label";
    SaddleHeight: "saddle-height", RoadBike, "Saddle height", "mm", Kind::Number, "728", "Bottom bracket centre to saddle top, along the seat tube";
    Setback: "setback", RoadBike, "Saddle setback", "mm", Kind::Number, "56", "Saddle tip behind the bottom bracket centre, by a plumb line";
    TipToBar: "tip-to-bar", RoadBike, "Saddle tip to bar", "mm", Kind::Number, "545", "Straight to the bar’s centre at the stem";
    BarDrop: "bar-drop", RoadBike, "Saddle-to-bar drop", "mm", Kind::Number, "72", "Saddle top down to the bar’s centre; minus if it is higher";
    SeatAngle: "seat-angle", RoadBike, "Seat angle", "°", Kind::Number, "73.5", "From the frame’s table";
    RoadCrank: "road-crank", RoadBike, "Crank", "mm", Kind::Number, "172.5", "";
    RoadStack: "road-sole", RoadBike, "Pedal axle to sole", "mm", Kind::Number, "15", "Pedal, cleat and shoe sole: only the difference counts";
    CrossSeatAngle: "cross-seat-angle", CrossBike, "Seat angle", "°", Kind::Number, "73", "From the frame’s table";
    CrossCrank: "cross-crank", CrossBike, "Crank", "mm", Kind::Number, "172.5", "For riding or running too";
    CrossStack: "cross-sole", CrossBike, "Pedal axle to sole", "mm", Kind::Number, "21", "With the shoes worn for cross";
    LowerBy: "lower", CrossBike, "Saddle lower by", "mm", Kind::Number, "0", "0 by common practice; some take 5 for mounting";
    BarUpBy: "bar-up", CrossBike, "Bar higher by", "mm", Kind::Number, "15", "10 to 20 by common practice; against the saddle";
    BarCloserBy: "bar-closer", CrossBike, "Bar closer by", "mm", Kind::Number, "10", "10 by common practice; from saddle tip to bar";
    Stack: "stack", CrossFrame, "Frame stack", "mm", Kind::Number, "578", "Bottom bracket up to the top of the head tube";
    Reach: "reach", CrossFrame, "Frame reach", "mm", Kind::Number, "383", "Bottom bracket forward to the top of the head tube";
    HeadAngle: "head-angle", CrossFrame, "Head angle", "°", Kind::Number, "72", "";
    Headset: "headset", CrossFrame, "Headset top cap height", "mm", Kind::Number, "12", "Head tube up to the first spacer";
    ClampHeight: "clamp", PositionFiner, "Stem’s clamp height", "mm", Kind::Number, "40", "40 by common practice";
    BarWithin: "bar-within", PositionFiner, "Bar may be off by", "mm", Kind::Number, "5", "No tape measure is better than that: our estimate";
    SpacersMost: "spacers-most", PositionFiner, "Spacers at most", "mm", Kind::Number, "30", "About 30 on carbon, 40 on metal by common practice; the fork’s maker decides";
    Knee: "knee", PositionFiner, "With another crank", "", Kind::Choice(KNEES), "saddle", "";
    RoadBarReach: "road-bar-reach", PositionFiner, "Road handlebar’s reach", "mm", Kind::Number, "", "Only if the two handlebars differ; then give all four";
    RoadBarDepth: "road-bar-drop", PositionFiner, "Road handlebar’s drop", "mm", Kind::Number, "", "";
    CrossBarReach: "cross-bar-reach", PositionFiner, "Cross handlebar’s reach", "mm", Kind::Number, "", "";
    CrossBarDepth: "cross-bar-drop", PositionFiner, "Cross handlebar’s drop", "mm", Kind::Number, "", "";
    FrontCentre: "front-centre", PositionFiner, "Front centre", "mm", Kind::Number, "", "Bottom bracket to front axle; give it to check toe overlap";
    ForkRake: "rake", PositionFiner, "Fork rake", "mm", Kind::Number, "47", "";
    PedalOffset: "pedal-offset", PositionFiner, "Pedal centre from the bike’s centre line", "mm", Kind::Number, "125", "About 125: our estimate";
    SheetFor: "sheet-for", Sheet, "Sheet for", "", Kind::Choice(SHEETS), "both", "";
}

const SKETCH: &str = "150; 0; firm grass
12; 0; firm grass; corner 15
60; -4; firm grass
1; 0; firm grass; foot 1
90; 1; wet soft grass
24; 22; mud
160; -2; packed gravel
";
const COURSES: &[(&str, &str)] = &[
    ("meadow", "Autumn meadow, 3 km"),
    ("sand-pit", "Sand pit, 2.4 km"),
    ("sketch", "the sketch below"),
    ("own", "my own, from a file"),
];
const RINGS: &[(&str, &str)] =
    &[("both", "single rings and pairs"), ("single", "single rings"), ("pair", "pairs")];

const SPROCKETS: &[(&str, &str)] = &[
    ("bench", "as many as on A or B"),
    ("a", "as many as on A"),
    ("b", "as many as on B"),
    ("any", "any number"),
];
const INCHES: &[(&str, &str)] =
    &[("real", "this wheel’s diameter"), ("nominal", "nominal 27 in, as in track tables")];
const STOPS: &[(&str, &str)] =
    &[("usual", "the angle, as typed or usual"), ("capacity", "the maker’s total capacity")];
const SPEED_UNITS: &[(&str, &str)] = &[("kmh", "km/h"), ("mph", "mph")];
const LEVELS: &[(&str, &str)] = &[
    ("occasional", "ride now and then"),
    ("club", "train with a club"),
    ("racing", "race regularly"),
    ("national", "among the best of a country"),
];
const GROUNDS: &[(&str, &str)] = &[
    ("tarmac", "tarmac"),
    ("gravel", "packed gravel"),
    ("firm-grass", "firm grass"),
    ("wet-grass", "wet, soft grass"),
    ("mud", "mud"),
    ("deep-mud", "deep, sticky mud"),
    ("wet-sand", "wet, packed sand"),
    ("loose-sand", "loose, dry sand"),
];
const GAITS: &[(&str, &str)] = &[("run-or-walk", "run or walk"), ("run", "run only")];
const COUNTS: &[(&str, &str)] = &[("on", "counts"), ("off", "left out")];
const LEGS: &[(&str, &str)] = &[
    ("minutes", "minutes: half of it"),
    ("30s", "30 s: 0.65 of it"),
    ("15s", "15 s: 0.8 of it"),
    ("5s", "5 s: all of it"),
    ("off", "left out"),
];
const CONSTRUCTIONS: &[(&str, &str)] =
    &[("tubular", "tubular"), ("clincher", "clincher with tube"), ("tubeless", "tubeless")];
const WIDTH_LIMITS: &[(&str, &str)] = &[("33", "33 mm"), ("35", "35 mm"), ("38", "38 mm"), ("none", "none")];
const TYRE_GROUNDS: &[(&str, &str)] =
    &[("soft", "soft or muddy"), ("mixed", "mixed"), ("rocky", "rocks, roots, fast and bumpy")];
const WHEEL_STYLES: &[(&str, &str)] =
    &[("smooth", "light on the bike"), ("normal", "normal"), ("hard", "rough, hits edges")];
const HOOKS: &[(&str, &str)] = &[("hooked", "hooked"), ("hookless", "hookless")];
const LABEL_EDITIONS: &[(&str, &str)] = &[("2020", "ETRTO from 2020"), ("older", "older ISO rule")];
const KNEES: &[(&str, &str)] =
    &[("saddle", "keep the saddle in place"), ("knee", "keep the knee over the pedal")];
const SHEETS: &[(&str, &str)] = &[("both", "A and B"), ("a", "A only"), ("b", "B only")];

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
