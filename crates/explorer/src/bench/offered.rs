//! What can be chosen in a field: keys of the link, each with the words for it.

use crate::bench::words::choices;
use gear_math::Surface;
use gear_math::rider::{FootBike, Gaits, Level};
use gear_math::wheel::{Construction, LabelEdition, TyreGround, WheelStyle};

/// Keys and words, in the order of the list.
type Offered = &'static [(&'static str, &'static str)];

/// The course that is sketched by hand.
pub(crate) const SKETCH_COURSE: &str = "sketch";
/// The course from a file, or the one that was kept.
pub(crate) const OWN_COURSE: &str = "own";
pub(crate) const COURSES: Offered = &[
    ("meadow", choices::MEADOW),
    ("sand-pit", choices::SAND_PIT),
    (SKETCH_COURSE, choices::SKETCH),
    (OWN_COURSE, choices::OWN),
];
pub(crate) const LAP_MODELS: Offered =
    &[("reserve", choices::LAP_ON_RESERVE), ("steady", choices::LAP_STEADY)];
pub(crate) const RINGS: Offered =
    &[("both", choices::RINGS_BOTH), ("single", choices::RINGS_SINGLE), ("pair", choices::RINGS_PAIRS)];
pub(crate) const BUDGETS: Offered =
    &[("1", choices::ONE_PART), ("2", choices::TWO_PARTS), ("3", choices::THREE_PARTS)];
pub(crate) const SPROCKETS: Offered = &[
    ("bench", choices::SPROCKETS_OF_BOTH),
    ("a", choices::SPROCKETS_OF_A),
    ("b", choices::SPROCKETS_OF_B),
    ("any", choices::SPROCKETS_ANY),
];
pub(crate) const INCHES: Offered = &[("real", choices::INCHES_REAL), ("nominal", choices::INCHES_NOMINAL)];
pub(crate) const STOPS: Offered = &[("usual", choices::STOP_USUAL), ("capacity", choices::STOP_CAPACITY)];
pub(crate) const SPEED_UNITS: Offered = &[("kmh", "km/h"), ("mph", "mph")];
pub(crate) const MASS_UNITS: Offered = &[("kg", "kg"), ("lb", "lb")];
pub(crate) const DISTANCE_UNITS: Offered = &[("m", choices::METRES), ("ft", choices::FEET)];
pub(crate) const LENGTH_UNITS: Offered = &[("mm", "mm"), ("in", "in")];
pub(crate) const PRESSURE_UNITS: Offered = &[("bar", choices::BAR_FIRST), ("psi", choices::PSI_FIRST)];
pub(crate) const GEAR_SCALES: Offered =
    &[("development", choices::BY_DEVELOPMENT), ("inches", choices::BY_INCHES), ("ratio", choices::BY_RATIO)];
pub(crate) const DECIMAL_MARKS: Offered = &[("point", choices::POINT), ("comma", choices::COMMA)];
pub(crate) const LEVELS: Offered = &[
    ("occasional", choices::level(Level::Occasional)),
    ("club", choices::level(Level::Club)),
    ("racing", choices::level(Level::Racing)),
    ("national", choices::level(Level::National)),
];
pub(crate) const GROUNDS: Offered = &[
    ("tarmac", choices::ground(Surface::Tarmac)),
    ("gravel", choices::ground(Surface::PackedGravel)),
    ("firm-grass", choices::ground(Surface::FirmGrass)),
    ("wet-grass", choices::ground(Surface::WetSoftGrass)),
    ("mud", choices::ground(Surface::Mud)),
    ("deep-mud", choices::ground(Surface::DeepMud)),
    ("wet-sand", choices::ground(Surface::WetPackedSand)),
    ("loose-sand", choices::ground(Surface::LooseSand)),
];
pub(crate) const GAITS: Offered =
    &[("run-or-walk", choices::gaits(Gaits::RunOrWalk)), ("run", choices::gaits(Gaits::RunOnly))];
pub(crate) const FOOT_BIKES: Offered = &[
    ("carried", choices::foot_bike(FootBike::Carried)),
    ("pushed", choices::foot_bike(FootBike::Pushed)),
    ("quicker", choices::foot_bike(FootBike::Quicker)),
];
pub(crate) const COUNTS: Offered = &[("on", choices::COUNTS), ("off", choices::LEFT_OUT)];
pub(crate) const LEGS: Offered = &[
    ("minutes", choices::LEGS_MINUTES),
    ("30s", choices::LEGS_30_S),
    ("15s", choices::LEGS_15_S),
    ("5s", choices::LEGS_5_S),
    ("off", choices::LEFT_OUT),
];
pub(crate) const CONSTRUCTIONS: Offered = &[
    ("tubular", choices::construction(Construction::Tubular)),
    ("clincher", choices::construction(Construction::Clincher)),
    ("tubeless", choices::construction(Construction::Tubeless)),
];
pub(crate) const CONSTRUCTIONS_OF_B: Offered = &[
    ("", choices::AS_ON_A),
    ("tubular", choices::construction(Construction::Tubular)),
    ("clincher", choices::construction(Construction::Clincher)),
    ("tubeless", choices::construction(Construction::Tubeless)),
];
pub(crate) const WIDTH_LIMITS: Offered =
    &[("33", "33 mm"), ("35", "35 mm"), ("38", "38 mm"), ("none", choices::NO_LIMIT)];
pub(crate) const TYRE_GROUNDS: Offered = &[
    ("soft", choices::tyre_ground(TyreGround::Soft)),
    ("mixed", choices::tyre_ground(TyreGround::Mixed)),
    ("rocky", choices::tyre_ground(TyreGround::Rocky)),
];
pub(crate) const WHEEL_STYLES: Offered = &[
    ("smooth", choices::wheel_style(WheelStyle::Smooth)),
    ("normal", choices::wheel_style(WheelStyle::Normal)),
    ("hard", choices::wheel_style(WheelStyle::Hard)),
];
pub(crate) const HOOKS: Offered = &[("hooked", choices::HOOKED), ("hookless", choices::HOOKLESS)];
pub(crate) const LABEL_EDITIONS: Offered = &[
    ("2020", choices::label_edition(LabelEdition::Etrto2020)),
    ("older", choices::label_edition(LabelEdition::OlderIso)),
];
pub(crate) const KNEES: Offered = &[("saddle", choices::KEEP_SADDLE), ("knee", choices::KEEP_KNEE)];
pub(crate) const SHEETS: Offered =
    &[("both", choices::SHEET_BOTH), ("a", choices::SHEET_A), ("b", choices::SHEET_B)];
