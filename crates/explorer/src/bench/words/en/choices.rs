//! What can be chosen in a field.

use gear_math::Surface;
use gear_math::rider::{FootBike, Gaits, Level};
use gear_math::wheel::{Construction, LabelEdition, TyreGround, WheelStyle};

pub(crate) const AS_ON_A: &str = "as on A";

pub(crate) const INCHES_REAL: &str = "this wheel’s diameter";
pub(crate) const INCHES_NOMINAL: &str = "nominal 27 in, as in track tables";

pub(crate) const METRES: &str = "m and km";
pub(crate) const FEET: &str = "ft and miles";
pub(crate) const BAR_FIRST: &str = "bar, then psi";
pub(crate) const PSI_FIRST: &str = "psi, then bar";
pub(crate) const BY_DEVELOPMENT: &str = "development";
pub(crate) const BY_INCHES: &str = "gear inches";
pub(crate) const BY_RATIO: &str = "ratio";
pub(crate) const POINT: &str = "1.5";
pub(crate) const COMMA: &str = "1,5";

pub(crate) const STOP_USUAL: &str = "the angle, as typed or usual";
pub(crate) const STOP_CAPACITY: &str = "the maker’s total capacity";

/// The rider's standard.
pub(crate) const fn level(level: Level) -> &'static str {
    match level {
        Level::Occasional => "ride now and then",
        Level::Club => "train with a club",
        Level::Racing => "race regularly",
        Level::National => "among the best of a country",
    }
}

/// A ground to ride on.
pub(crate) const fn ground(surface: Surface) -> &'static str {
    match surface {
        Surface::Tarmac => "tarmac",
        Surface::PackedGravel => "packed gravel",
        Surface::FirmGrass => "firm grass",
        Surface::WetSoftGrass => "wet, soft grass",
        Surface::Mud => "mud",
        Surface::DeepMud => "deep, sticky mud",
        Surface::WetPackedSand => "wet, packed sand",
        Surface::LooseSand => "loose, dry sand",
    }
}

/// How the rider goes on foot.
pub(crate) const fn gaits(gaits: Gaits) -> &'static str {
    match gaits {
        Gaits::RunOrWalk => "run or walk",
        Gaits::RunOnly => "run only",
    }
}

/// How the bike goes along on foot.
pub(crate) const fn foot_bike(foot_bike: FootBike) -> &'static str {
    match foot_bike {
        FootBike::Carried => "carried",
        FootBike::Pushed => "pushed",
        FootBike::Quicker => "whichever is quicker",
    }
}

pub(crate) const COUNTS: &str = "counts";
pub(crate) const LEFT_OUT: &str = "left out";

pub(crate) const LEGS_MINUTES: &str = "minutes: half of it";
pub(crate) const LEGS_30_S: &str = "30 s: 0.65 of it";
pub(crate) const LEGS_15_S: &str = "15 s: 0.8 of it";
pub(crate) const LEGS_5_S: &str = "5 s: all of it";

pub(crate) const MEADOW: &str = "Autumn meadow";
pub(crate) const SAND_PIT: &str = "Sand pit";
pub(crate) const SKETCH: &str = "the sketch below";
pub(crate) const LAP_ON_RESERVE: &str = "as you ride: harder uphill, easier down";
pub(crate) const LAP_STEADY: &str = "at a steady power";
pub(crate) const OWN: &str = "my own, from a file";

pub(crate) const RINGS_BOTH: &str = "single rings and pairs";
pub(crate) const RINGS_SINGLE: &str = "single rings";
pub(crate) const RINGS_PAIRS: &str = "pairs";

pub(crate) const ONE_PART: &str = "one part";
pub(crate) const TWO_PARTS: &str = "up to two parts together";
pub(crate) const THREE_PARTS: &str = "up to three parts together";

pub(crate) const SPROCKETS_OF_BOTH: &str = "as many as on A or B";
pub(crate) const SPROCKETS_OF_A: &str = "as many as on A";
pub(crate) const SPROCKETS_OF_B: &str = "as many as on B";
pub(crate) const SPROCKETS_ANY: &str = "any number";

/// How a tyre holds its air.
pub(crate) const fn construction(construction: Construction) -> &'static str {
    match construction {
        Construction::Tubular => "tubular",
        Construction::Clincher => "clincher with tube",
        Construction::Tubeless => "tubeless",
    }
}

pub(crate) const NO_LIMIT: &str = "none";

/// The ground of a course, as a tyre meets it.
pub(crate) const fn tyre_ground(ground: TyreGround) -> &'static str {
    match ground {
        TyreGround::Soft => "soft or muddy",
        TyreGround::Mixed => "mixed",
        TyreGround::Rocky => "rocks, roots, fast and bumpy",
    }
}

/// The rider's way with wheels.
pub(crate) const fn wheel_style(style: WheelStyle) -> &'static str {
    match style {
        WheelStyle::Smooth => "light on the bike",
        WheelStyle::Normal => "normal",
        WheelStyle::Hard => "rough, hits edges",
    }
}

pub(crate) const HOOKED: &str = "hooked";
pub(crate) const HOOKLESS: &str = "hookless";

/// The rules that a label follows.
pub(crate) const fn label_edition(edition: LabelEdition) -> &'static str {
    match edition {
        LabelEdition::Etrto2020 => "ETRTO from 2020",
        LabelEdition::OlderIso => "older ISO rule",
    }
}

pub(crate) const KEEP_SADDLE: &str = "keep the saddle in place";
pub(crate) const KEEP_KNEE: &str = "keep the knee over the pedal";

pub(crate) const SHEET_BOTH: &str = "A and B";
pub(crate) const SHEET_A: &str = "A only";
pub(crate) const SHEET_B: &str = "B only";

#[cfg(test)]
mod tests {
    use super::*;
    use gear_math::Ratio;
    use gear_math::course::Demo;
    use gear_math::rider::StrengthShare;

    #[test]
    fn choices_repeat_the_numbers_of_gear_math() {
        assert!(INCHES_NOMINAL.contains(&format!(" {} in", Ratio::NOMINAL_WHEEL_INCHES)));
        for (choice, share) in
            [(LEGS_30_S, StrengthShare::SECONDS_30), (LEGS_15_S, StrengthShare::SECONDS_15)]
        {
            assert!(choice.contains(&format!(": {} of it", share.share())), "{choice}");
        }
        for (choice, demo) in [(MEADOW, Demo::Meadow), (SAND_PIT, Demo::SandPit)] {
            assert_eq!(choice, demo.name());
        }
    }
}
