//! Labels and help of the course, how it is ridden and what is searched.

use crate::bench::field_words::{FieldWords, said};

pub(crate) const COURSE: FieldWords = said("Course", "");
pub(crate) const LAP_MODEL: FieldWords = said(
    "Effort",
    "Above your power you draw on your reserve, below it some comes back (a choice of this model)",
);
pub(crate) const LAP_BUDGET: FieldWords = said(
    "What one lap may take from your reserve",
    "0: a lap you can repeat for ever. For the last one, or a race of few: your reserve over the laps left",
);
pub(crate) const LAP_WIND: FieldWords = said(
    "Wind round the lap",
    "At your height, which is half to four fifths of a forecast (estimate). On the bike only",
);
pub(crate) const LAP_WIND_FROM: FieldWords =
    said("Wind from", "Clockwise from north: 90 east, 180 south, 270 west");
pub(crate) const SMOOTHING: FieldWords = said(
    "Smoothing length",
    "Hills this long keep half their height, longer ones more: evens out the noise of the recorder (estimate)",
);
pub(crate) const TRACK_GROUND: FieldWords =
    said("Ground of the track", "A file does not know it; change it by stretches below");
pub(crate) const TRACK_FROM: FieldWords =
    said("Use the track from", "Of a GPX track: to leave out a warm-up; empty: from its start");
pub(crate) const TRACK_TO: FieldWords = said("Use the track to", "Of a GPX track; empty: to its end");
pub(crate) const SKETCH: FieldWords = said(
    "Sketch",
    "One stretch a line: length in m; gradient in %; ground; then, if need be, foot and the seconds an obstacle costs, corner and its km/h, heading and which way it leads in degrees. A # begins a remark",
);
pub(crate) const PAINT: FieldWords = said(
    "Changes on a stretch",
    "Painted on the picture, or typed: from m; to m; then a ground, foot and the seconds an obstacle costs, none for no obstacle, corner and its km/h, or heading and degrees. Such as 310; 355; deep mud",
);
pub(crate) const SHIFT_REAR: FieldWords = said("Drive lost in a rear shift", "Estimate");
pub(crate) const SHIFT_FRONT: FieldWords = said("Drive lost in a front shift", "Estimate");
pub(crate) const CADENCE_SPREAD: FieldWords =
    said("Shift when cadence is off by", "Share of your usual cadence (estimate)");
pub(crate) const BRAKING: FieldWords = said("Braking into bends", "On grass (estimate)");
pub(crate) const SEARCH_SMALL: FieldWords = said("Smallest ring tried", "Of those that are made");
pub(crate) const SEARCH_LARGE: FieldWords = said("Largest ring tried", "");
pub(crate) const SEARCH_PAIRS: FieldWords =
    said("Rings", "Pairs that are made, 8 to 16 teeth apart, as far as the front derailleur takes them");
pub(crate) const SEARCH_SPROCKETS: FieldWords =
    said("Sprockets", "As many as the bike has; further cassettes are tried whatever they have");
pub(crate) const FRAME_RING: FieldWords =
    said("Largest ring the frame clears", "Of A and B too; empty: not limited");
pub(crate) const MORE_CASSETTES: FieldWords =
    said("Further cassettes", "One a line, tried beside the usual ones");
pub(crate) const BOX_PARTS: FieldWords = said(
    "What lies in the box",
    "Rings / cassettes / rear derailleurs by capacity and largest sprocket / links of chains / front derailleurs by largest ring and difference / tyres, such as 36 38 44/31 / 11-32 11s, 11-34 11s / 35/32, 39/36 / 110 / 44/13 / 33-622 tubeless; or a line for each kind. The parts of A and B are always in it",
);
pub(crate) const BOX_BUDGET: FieldWords = said("To buy", "Of the parts in common use");
