//! Labels and help of road bike and cross bike.

use crate::bench::field_words::{FieldWords, said};

pub(crate) const SADDLE_HEIGHT: FieldWords =
    said("Saddle height", "Bottom bracket centre to saddle top, along the seat tube");
pub(crate) const SETBACK: FieldWords =
    said("Saddle setback", "Saddle tip behind the bottom bracket centre, by a plumb line");
pub(crate) const TIP_TO_BAR: FieldWords =
    said("Saddle tip to bar", "Straight to the bar’s centre at the stem");
pub(crate) const BAR_DROP: FieldWords =
    said("Saddle-to-bar drop", "Saddle top down to the bar’s centre; minus if it is higher");
pub(crate) const SEAT_ANGLE: FieldWords = said("Seat angle", "From the frame’s table");
pub(crate) const ROAD_CRANK: FieldWords = said("Crank", "");
pub(crate) const ROAD_STACK: FieldWords =
    said("Pedal axle to sole", "Pedal, cleat and shoe sole: only the difference counts");
pub(crate) const CROSS_SEAT_ANGLE: FieldWords = said("Seat angle", "From the frame’s table");
pub(crate) const CROSS_CRANK: FieldWords = said("Crank", "For riding or running too");
pub(crate) const CROSS_STACK: FieldWords = said("Pedal axle to sole", "With the shoes worn for cross");
pub(crate) const LOWER_BY: FieldWords =
    said("Saddle lower by", "0 by common practice; some take {5} for mounting");
pub(crate) const BAR_UP_BY: FieldWords =
    said("Bar higher by", "{10} to {20} by common practice; against the saddle");
pub(crate) const BAR_CLOSER_BY: FieldWords =
    said("Bar closer by", "{10} by common practice; from saddle tip to bar");
pub(crate) const STACK: FieldWords = said("Frame stack", "Bottom bracket up to the top of the head tube");
pub(crate) const REACH: FieldWords =
    said("Frame reach", "Bottom bracket forward to the top of the head tube");
pub(crate) const HEAD_ANGLE: FieldWords = said("Head angle", "");
pub(crate) const HEADSET: FieldWords = said("Headset top cap height", "Head tube up to the first spacer");
pub(crate) const CLAMP_HEIGHT: FieldWords = said("Stem’s clamp height", "{40} by common practice");
pub(crate) const BAR_WITHIN: FieldWords =
    said("Bar may be off by", "No tape measure is better than that: our estimate");
pub(crate) const SPACERS_MOST: FieldWords = said(
    "Spacers at most",
    "About {30} on carbon, {40} on metal by common practice; the fork’s maker decides",
);
pub(crate) const KNEE: FieldWords = said("With another crank", "");
pub(crate) const ROAD_BAR_REACH: FieldWords =
    said("Road handlebar’s reach", "Only if the two handlebars differ; then give all four");
pub(crate) const ROAD_BAR_DEPTH: FieldWords = said("Road handlebar’s drop", "");
pub(crate) const CROSS_BAR_REACH: FieldWords = said("Cross handlebar’s reach", "");
pub(crate) const CROSS_BAR_DEPTH: FieldWords = said("Cross handlebar’s drop", "");
pub(crate) const FRONT_CENTRE: FieldWords =
    said("Front centre", "Bottom bracket to front axle; give it to check toe overlap");
pub(crate) const FORK_RAKE: FieldWords = said("Fork rake", "");
pub(crate) const PEDAL_OFFSET: FieldWords =
    said("Pedal centre from the bike’s centre line", "About {125}: our estimate");
