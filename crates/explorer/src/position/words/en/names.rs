//! What places, stems and cautions are called.

use crate::number::{mm, signed};
use crate::units::{lengths, retold, whole_length as whole};
use gear_math::position::{MissingPiece, PositionCaution, StemLength, StemSetup};

/// A measure that is not known.
pub(crate) const NOT_KNOWN: &str = "not known";

/// “12 mm behind the bottom bracket”, whichever side it is on.
pub(crate) fn setback(setback_mm: f64) -> String {
    let mm = whole(setback_mm.abs());
    if setback_mm < 0.0 {
        format!("{mm} ahead of the bottom bracket")
    } else {
        format!("{mm} behind the bottom bracket")
    }
}

/// “57 mm below the saddle”, whichever is the higher.
pub(crate) fn below(drop_mm: f64) -> String {
    let mm = whole(drop_mm.abs());
    if drop_mm < 0.0 { format!("{mm} above the saddle") } else { format!("{mm} below the saddle") }
}

/// “100 mm at −6° on 15 mm of spacers”.
pub(crate) fn stem(setup: &StemSetup) -> String {
    let length = stem_length(setup.length);
    let angle = angle(setup.angle.degrees());
    if setup.spacers.mm() < 0.5 {
        format!("{length} at {angle} without spacers")
    } else {
        format!("{length} at {angle} on {} of spacers", whole(setup.spacers.mm()))
    }
}

/// A stem's length, in inches with the millimetres that it is sold by.
pub(crate) fn stem_length(length: StemLength) -> String {
    let told = whole(length.mm());
    if lengths().is_other() { format!("{told} ({})", mm(length.mm())) } else { told }
}

/// A stem's angle.
pub(crate) fn angle(degrees: f64) -> String {
    format!("{}°", signed(degrees, 0))
}

/// What to look at before riding.
pub(crate) fn caution(caution: PositionCaution) -> String {
    retold(caution.to_string(), &[lengths()])
}

/// Several of them.
pub(crate) fn cautions(cautions: &[PositionCaution]) -> String {
    cautions.iter().map(|&it| caution(it)).collect::<Vec<_>>().join(" ")
}

/// Where a caution is from.
pub(crate) const fn source(caution: PositionCaution) -> &'static str {
    caution.source()
}

/// Why a stem cannot be built.
pub(crate) fn missing_piece(piece: MissingPiece) -> String {
    retold(piece.to_string(), &[lengths()])
}
