//! Stems that get there, or what is missing.

use crate::layout::line::{Line, strong};
use crate::number::plain;
use crate::position::words::names::{angle, missing_piece};
use crate::units::{LengthNumber, length, whole_length as whole};
use crate::words::{counted, listed};
use gear_math::StemSearch;
use gear_math::position::{StemAngle, StemLack, StemLength, StemSearchLimits, StemShortfall};

/// Over the table.
pub(crate) const fn title(search: &StemSearch) -> &'static str {
    match search {
        StemSearch::Found(_) => "Stems and spacers that get there, nearest first",
        StemSearch::NoneFits(_) => "The nearest stem, though it does not get there",
    }
}

/// Its columns of figures.
pub(crate) const HEADS: [&str; 6] = ["Stem", "Angle", "Spacers", "Off by", "Bar forward", "Bar up"];
/// Over what is to be heeded.
pub(crate) const REMARK: &str = "Remark";

/// What was searched, and how many more there are than are listed.
pub(crate) fn remark(limits: &StemSearchLimits, more: usize) -> String {
    let [short, .., long] = StemLength::SOLD.map(StemLength::mm);
    let (short, long) = (LengthNumber(short), whole(long));
    let [.., flat, _, _, _, steep] = StemAngle::SOLD.map(|angle| plain(angle.degrees(), 0));
    let (spacers, within) = (whole(limits.max_spacers.mm()), length(limits.tolerance.mm()));
    let searched = format!(
        "Sold lengths {short} to {long} and angles {flat}° to {steep}°, either way up; spacers up to {spacers}; forward and up each within {within}. A stem’s angle is 0° square to the steerer."
    );
    if more == 0 {
        return searched;
    }
    format!("{searched} {} more get there too.", counted(more, "combination", "combinations"))
}

/// “at −6° it would take 16 mm more spacers than you allow, and at +6° …”.
pub(crate) fn missing(shortfall: &StemShortfall) -> String {
    let lacks = std::iter::once(&shortfall.lack).chain(&shortfall.other);
    lacks.map(lacking).collect::<Vec<_>>().join(", and ")
}

fn lacking(lack: &StemLack) -> String {
    let pieces: Vec<String> = lack.missing.iter().map(|&piece| missing_piece(piece)).collect();
    format!("at {} {}", angle(lack.exact.angle.degrees()), listed(&pieces))
}

/// What is missing, and the stem that would be exactly right.
pub(crate) fn exact(shortfall: &StemShortfall) -> Line {
    let (what, missing, exact) = (strong("What is missing"), missing(shortfall), &shortfall.lack.exact);
    if !exact.is_a_stem() {
        return format!("{what}: {missing}.").into();
    }
    let (length, spacers) = (length(exact.length_mm), length(exact.spacers_mm));
    let angle = angle(exact.angle.degrees());
    format!("{what}: {missing}. Exactly right would be {length} at {angle} on {spacers} of spacers.").into()
}
