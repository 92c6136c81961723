//! Labels and help of frame, cage and chain.

use crate::bench::field_words::{FieldWords, said};

pub(crate) const CHAINSTAY: FieldWords =
    said("Chainstay", "Middle of the crank axle to middle of the rear axle; empty: 425, as is usual");
pub(crate) const PULLEY_CENTRES: FieldWords =
    said("Pulley centres", "From one pulley’s bolt to the other’s; empty: by the total capacity, else 75");
pub(crate) const BOTTOM_BRACKET_DROP: FieldWords =
    said("Bottom-bracket drop", "How far the crank axle lies below the rear axle; empty: 65, as is usual");
pub(crate) const CHAIN_LINKS: FieldWords =
    said("Links in the chain fitted", "Inner and outer ones counted alike; empty: the chain to fit");
pub(crate) const GUIDE_TEETH: FieldWords = said("Guide pulley", "The upper one; empty: 11");
pub(crate) const TENSION_TEETH: FieldWords = said("Tension pulley", "The lower one; empty: 11");
pub(crate) const PULLEY_GAP: FieldWords =
    said("Pulley gap", "Guide pulley to sprocket between tooth tips, plus 6.5; empty: 12.5");
pub(crate) const GUIDE_ANGLE: FieldWords = said(
    "Guide pulley forward of the axle",
    "Seen from the rear axle, from straight down; empty: 10, an estimate",
);
pub(crate) const REAR_STOP: FieldWords = said(
    "Rest position",
    "Cage furthest back, at its stop pin; negative behind straight down; empty: −75, fitted to published capacities",
);
pub(crate) const FORE_STOP: FieldWords =
    said("Forward limit", "Furthest forward you would pull the cage; empty: 65, an estimate");
pub(crate) const STOP_BY: FieldWords =
    said("Rest position from", "The maker’s capacity makes our slack end agree with the maker’s");
pub(crate) const HANGER_DROP: FieldWords =
    said("Hanger drop", "Derailleur bolt below the rear axle; empty: 28, as frame builders give it");
pub(crate) const HANGER_SETBACK: FieldWords =
    said("Hanger setback", "Derailleur bolt behind the rear axle; empty: 9, as frame builders give it");
pub(crate) const FRONT_MADE_FOR: FieldWords =
    said("Front derailleur’s largest ring", "The ring its plates are curved for; empty: not checked");
const LEAST_TO_SPARE: &str = "Until one is chosen: the gear with least to spare";
pub(crate) const GEAR_A: FieldWords = said("Gear of A", LEAST_TO_SPARE);
pub(crate) const GEAR_B: FieldWords = said("Gear of B", LEAST_TO_SPARE);
