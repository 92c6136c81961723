//! Labels and help of rings, sprockets, wheel, cadences and derailleur.

use crate::bench::field_words::{FieldWords, said};

pub(crate) const RINGS: FieldWords = said("Chainrings", "");
pub(crate) const CASSETTE: FieldWords = said("Cassette", "");
pub(crate) const GEARS_OFF: FieldWords = said("Gears you never use", "Such as 34×11, 34×12");
pub(crate) const TYRE: FieldWords = said("Tyre", "ISO 5775 size as on the sidewall, width first");
pub(crate) const ROLL_OUT: FieldWords =
    said("Roll-out measured", "One turn of the wheel, rider aboard; it wins over the estimate");
pub(crate) const CADENCE_LOW: FieldWords =
    said("Lowest cadence", "Slowest you still turn the crank on a climb");
pub(crate) const CADENCE_USUAL: FieldWords = said("Usual cadence", "");
pub(crate) const CADENCE_HIGH: FieldWords = said("Highest cadence", "");
pub(crate) const CAPACITY: FieldWords = said("Total capacity", "As its maker states it; may be left empty");
pub(crate) const LARGEST_SPROCKET: FieldWords = said("Largest sprocket", "");
pub(crate) const SMALLEST_SPROCKET: FieldWords = said("Smallest sprocket", "");
pub(crate) const RING_DIFFERENCE: FieldWords =
    said("Chainring difference", "The smaller of what front and rear derailleur allow");
pub(crate) const TOLERANCE: FieldWords = said("Same gear within", "Gears closer than this count as one");
pub(crate) const INCHES: FieldWords = said("Gear inches on", "");
pub(crate) const SPEED_UNIT: FieldWords = said("Speeds in", "");
pub(crate) const MASS_UNIT: FieldWords = said("Masses in", "");
pub(crate) const DISTANCE_UNIT: FieldWords = said("Distances and climbing in", "");
pub(crate) const LENGTH_UNIT: FieldWords = said("Position in", "");
pub(crate) const PRESSURE_UNIT: FieldWords = said("Pressures in", "");
pub(crate) const GEAR_SCALE: FieldWords = said("Gears by", "");
pub(crate) const DECIMAL_MARK: FieldWords = said("Decimals as", "");
pub(crate) const ROLL_OUT_LIMIT: FieldWords = said("Roll-out limit", "Of your race, if it has one");
pub(crate) const PROBE_CADENCE: FieldWords = said("At a cadence of", "");
pub(crate) const PROBE_SPEED: FieldWords = said("At a speed of", "");
