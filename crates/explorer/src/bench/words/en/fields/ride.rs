//! Labels and help of rider, bike, ground and climb.

use crate::bench::field_words::{FieldWords, said};

pub(crate) const BODY_MASS: FieldWords = said("Body mass", "Undressed");
pub(crate) const KIT_MASS: FieldWords = said("Kit", "Clothes, shoes, helmet, bottle; about {2} (estimate)");
pub(crate) const BIKE_MASS: FieldWords = said("Bike", "As it stands, mud included");
pub(crate) const POWER: FieldWords =
    said("Power", "At the crank, for this effort; leave it empty to estimate it from your level");
pub(crate) const LEVEL: FieldWords =
    said("Level", "Counts only while the power is empty; the reserve then follows it");
pub(crate) const GROUND: FieldWords = said("Ground of the slope", "");
pub(crate) const SLOPE: FieldWords = said("Slope", "So far up for 100 forward");
pub(crate) const CLIMB_LENGTH: FieldWords = said("Length of the climb", "Along the slope");
pub(crate) const HEADWIND: FieldWords = said("Wind against you", "Minus when it pushes");
pub(crate) const SECONDS_LOST: FieldWords = said(
    "Time for dismount and remount",
    "Skilled 1 to 2 s, practised 3 to 4, beginner 6 to 10; one more to shoulder the bike (common practice)",
);
pub(crate) const EFFICIENCY: FieldWords = said(
    "Gross efficiency",
    "Power at the crank over power burnt: 0.20 to 0.25; 0.23 for a trained rider at race power, 0.22 a fair guess uphill",
);
pub(crate) const STANDING: FieldWords = said("Standing metabolic rate", "1.2 to 1.7");
pub(crate) const FOOT_COST: FieldWords = said(
    "Your cost on foot",
    "1 is the mean of the runners measured; 0.92 if you run much, 1.08 if you never do",
);
pub(crate) const ON_FOOT: FieldWords = said("On foot", "Whichever is quicker, or running at any price");
pub(crate) const FOOT_BIKE: FieldWords = said(
    "On foot the bike is",
    "Pushed, your arms roll it up as dearly as your legs would (estimate); which is quicker in mud nobody has measured. Over obstacles it is always carried",
);
pub(crate) const CARRY: FieldWords = said(
    "Cost of carrying the bike",
    "Mass of bike against mass of body: 1.0 at the trunk, 1.2 shouldered, 1.5 in the hands (estimate)",
);
pub(crate) const DRIVETRAIN_SHARE: FieldWords =
    said("Drivetrain efficiency", "0.976 clean, 0.96 off-road, 0.92 muddy (estimates but the first)");
pub(crate) const ROLLING: FieldWords = said("Rolling resistance", "");
pub(crate) const FOOT_GROUND: FieldWords = said("Cost of the ground on foot", "");
pub(crate) const FRICTION: FieldWords = said("Friction of the tyre", "");
pub(crate) const SLOPE_SHARE: FieldWords = said(
    "Cost of the ground on slopes",
    "0: the same extra all the way; 1: grows with the whole cost. Nobody has measured it",
);
pub(crate) const DRAG_AREA: FieldWords =
    said("Drag area", "0.32 low in the drops, 0.40 on the hoods, 0.50 upright in winter clothes");
pub(crate) const AIR_DENSITY: FieldWords = said("Air", "1.17 on a mild day, 1.27 in frost, less high up");
pub(crate) const BALANCE: FieldWords = said(
    "Slowest speed you can balance",
    "{1.0} skilled on smooth ground, {1.8} in ruts (estimate); empty leaves it out",
);
pub(crate) const GRIP_COUNTS: FieldWords = said("Grip of the rear wheel", "");
pub(crate) const REAR_WEIGHT: FieldWords = said(
    "Weight on the rear wheel",
    "Seated on the level: 0.55 by the scales of recreational riders, up to 0.60, less leaning forward; the tyres’ pressures too",
);
pub(crate) const LEGS: FieldWords = said("Leg strength that lasts", "");
pub(crate) const PEAK_POWER: FieldWords =
    said("Peak power", "Of one pedal turn in a sprint; empty for an estimate");
pub(crate) const RESERVE: FieldWords = said(
    "Work in reserve",
    "Above the power you can hold (W′): 10 to 25 kJ, 18 for a trained man; empty for an estimate from your body and power",
);
pub(crate) const RESERVE_SHARE: FieldWords =
    said("Share of the reserve for this climb", "One fifth, so that every lap can afford it (estimate)");
pub(crate) const REPAID: FieldWords = said(
    "What comes back below your power",
    "Of the power you leave unused, the share that refills the reserve, on the lap: 0.3 to 0.7 (estimate)",
);
pub(crate) const SLOPE_SPEED: FieldWords = said("At a speed of", "");
pub(crate) const ENTRY_SPEED: FieldWords = said("Speed into the climb", "As you reach its foot");
