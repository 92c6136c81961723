//! What to look at before riding.

use crate::position::quantity::Spacers;
use core::fmt;

/// What to look at in a position or a stem set-up, in words for the rider or mechanic.
///
/// [`PositionCaution::ALWAYS`] holds for every bike; the others are given where the figures call for them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum PositionCaution {
    /// Saddle tip less than 50 mm behind the bottom bracket.
    UnderRaceSetback,
    /// The same saddle would have to slide further than rails usually allow.
    RailsMayRunOut,
    /// Stem shorter than 70 mm.
    ShortStem,
    /// Stem longer than 130 mm.
    LongStem,
    /// More spacers than usual on a carbon steerer.
    SpacersOnCarbonSteerer,
    /// More spacers than usual on any steerer.
    SpacersOnMetalSteerer,
    /// Toe clearance under the figure for pedals without foot retention.
    ToeClearanceWithoutRetention,
    /// Toe clearance under every published figure.
    ToeClearanceShort,
    /// Insertion marks of seat post and stem.
    InsertionMarks,
    /// Where the steerer must end.
    SteererEnd,
    /// A carbon steerer is clamped over its plug only.
    CarbonSteererPlug,
    /// Turn the bar through once after a change.
    TurnBar,
    /// Lever reach and brakes after a change.
    Brakes,
    /// Bolts by the part's own marking, or by its maker's sheet.
    BoltTorque,
    /// What races under the UCI ask of saddle and bar.
    RaceMeasures,
    /// Ride and check again; what a formula cannot say.
    RideAndRecheck,
}

use PositionCaution::*;

impl PositionCaution {
    /// The cautions that belong to every change of position.
    pub const ALWAYS: [Self; 8] = [
        InsertionMarks,
        SteererEnd,
        CarbonSteererPlug,
        BoltTorque,
        TurnBar,
        Brakes,
        RaceMeasures,
        RideAndRecheck,
    ];

    /// What is looked at by hand after any change, what belongs together in one list; what can break first stands first.
    pub const BY_HAND: [&[Self]; 4] =
        [&[InsertionMarks], &[SteererEnd, CarbonSteererPlug], &[BoltTorque], &[TurnBar, Brakes]];

    /// What is good to know and nothing to check by hand.
    pub const NOTES: [Self; 2] = [RaceMeasures, RideAndRecheck];

    /// Where the figure in the caution comes from.
    #[must_use]
    pub const fn source(self) -> &'static str {
        match self {
            UnderRaceSetback => {
                "UCI 1.3.013, text of 2014; it has exceptions, later changes were not checked"
            }
            ShortStem
            | LongStem
            | SpacersOnCarbonSteerer
            | SpacersOnMetalSteerer
            | CarbonSteererPlug
            | TurnBar
            | Brakes
            | BoltTorque
            | RideAndRecheck => "common practice",
            RailsMayRunOut => "estimate",
            ToeClearanceWithoutRetention | ToeClearanceShort => "16 CFR 1512.17(d) and ISO 4210-2",
            InsertionMarks => "ISO 4210-2, 4.7.3 and 4.16.2, and 16 CFR 1512.15(b)",
            SteererEnd => "ISO 4210-2:2014, 4.7.4",
            RaceMeasures => {
                "UCI 1.3.013 and 1.3.014, text of 2014, later changes not checked; bars: press on the rule for 2026"
            }
        }
    }
}

impl fmt::Display for PositionCaution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            UnderRaceSetback => {
                "The saddle tip is less than 50 mm behind the bottom bracket: ask your commissaire before a UCI race."
            }
            RailsMayRunOut => {
                "The saddle slides a long way on its rails: look for their end marks, or take a seat post with another \
                 setback."
            }
            ShortStem => "A stem under 70 mm makes the steering quick: try it on open ground first.",
            LongStem => "A stem over 130 mm makes the steering slow: try it on open ground first.",
            SpacersOnCarbonSteerer => {
                "More than 30 mm of spacers under the stem is usually too much for a carbon steerer: the fork maker's \
                 figure decides."
            }
            SpacersOnMetalSteerer => {
                "More than 40 mm of spacers under the stem is usually too much for any steerer: the fork maker's figure \
                 decides."
            }
            ToeClearanceWithoutRetention => {
                "Between 89 and 100 mm from pedal to tyre: a roadworthy bike needs pedals that hold the foot."
            }
            ToeClearanceShort => {
                "Less than 89 mm from pedal to tyre: the toe can touch the turned wheel. Small racing frames often miss \
                 this figure; know it before a slow, tight turn."
            }
            InsertionMarks => {
                "Pull neither seat post nor quill stem past its mark. Without a mark keep two diameters of the seat \
                 post, and two and a half of the quill, inside. Some frames ask for more."
            }
            SteererEnd => {
                "The steerer ends at most 5 mm below the top of the stem or spacer it is clamped in, and the top cap \
                 presses on the spacer, about 3 mm clear of the steerer."
            }
            CarbonSteererPlug => "Clamp a carbon steerer only where its plug supports it from within.",
            TurnBar => "Turn the bar fully left and right and look at hoses, cables and toes.",
            BoltTorque => "Tighten every bolt to the figure marked on its part, or by its maker’s sheet where none is.",
            Brakes => "Are both levers in reach from hoods and drops? Try both brakes before you ride.",
            RaceMeasures => {
                "For UCI races: saddle tip at least 50 mm behind the bottom bracket, saddle 240 to 300 mm long and within \
                 9° of level; from 2026 bars at least 400 mm wide, 280 mm between the hoods, and flared at most 65 mm a \
                 side. Ask your commissaire."
            }
            RideAndRecheck => {
                "Ride it, then measure it again. A new position can take weeks; pain is a reason to see a fitter or a \
                 doctor, not to trust a formula."
            }
        })
    }
}

/// UCI 1.3.013 (text of 2014): least distance of the saddle tip behind the bottom bracket.
const RACE_SETBACK_MM: f64 = 50.0;
/// How far a saddle can usually slide from where it stands (estimate).
const RAIL_TRAVEL_MM: f64 = 20.0;
/// Stems outside 70 to 130 mm change how the bike steers (common practice).
const USUAL_STEM_MM: core::ops::RangeInclusive<f64> = 70.0..=130.0;

pub(crate) fn saddle_cautions(setback_mm: f64, rail_shift_mm: f64) -> Vec<PositionCaution> {
    let mut cautions = Vec::new();
    if setback_mm < RACE_SETBACK_MM {
        cautions.push(UnderRaceSetback);
    }
    if rail_shift_mm.abs() > RAIL_TRAVEL_MM {
        cautions.push(RailsMayRunOut);
    }
    cautions
}

pub(crate) fn stem_cautions(length_mm: f64, spacers_mm: f64) -> Vec<PositionCaution> {
    let mut cautions = Vec::new();
    if length_mm < *USUAL_STEM_MM.start() {
        cautions.push(ShortStem);
    }
    if length_mm > *USUAL_STEM_MM.end() {
        cautions.push(LongStem);
    }
    if spacers_mm > Spacers::METAL_STEERER.mm() {
        cautions.push(SpacersOnMetalSteerer);
    } else if spacers_mm > Spacers::CARBON_STEERER.mm() {
        cautions.push(SpacersOnCarbonSteerer);
    }
    cautions
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_always_holds_is_looked_at_by_hand_or_good_to_know() {
        let by_hand = PositionCaution::BY_HAND.concat();
        for caution in PositionCaution::ALWAYS {
            assert!(by_hand.contains(&caution) != PositionCaution::NOTES.contains(&caution), "{caution}");
        }
        assert_eq!(by_hand.len() + PositionCaution::NOTES.len(), PositionCaution::ALWAYS.len());
    }
}
