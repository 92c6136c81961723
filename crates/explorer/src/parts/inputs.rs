//! What lies in the box, as typed.

use crate::bench::field::Field;
use crate::bench::link::LONGEST;
use crate::bench::reader::Reader;
use crate::lap::inputs::LapInputs;
use crate::parts::words::not_understood as words;
use gear_math::Drivetrain;
use gear_math::parts::PartsBox;

/// What lies in the box beside the parts of A and B.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BoxInputs {
    /// What was understood.
    pub typed: PartsBox,
    /// For how many sprockets the shifter is made, where that is to be kept.
    pub sprockets: Option<usize>,
    /// What its text came to.
    pub read: BoxText,
    /// How many parts may be bought together.
    pub budget: usize,
}

/// What the text of a box came to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct BoxText {
    /// Single rings.
    pub rings: usize,
    /// Pairs made of them.
    pub pairs: usize,
    /// Whether it makes a link longer than some messages take.
    pub is_long: bool,
}

/// Characters of a box that leave room in a link for all else that is usually changed. Estimate.
const IN_A_LINK: usize = LONGEST / 2;

impl BoxInputs {
    /// What is not understood is told piece by piece; all else lies in the box.
    pub(crate) fn read(reader: &mut Reader<'_>, lap: &LapInputs, bench: &[Drivetrain; 2]) -> Self {
        let counts = lap.search.sprockets.counts(bench);
        let sprockets = counts.filter(|[a, b]| a == b).map(|[count, _]| count);
        let text = reader.text(Field::BoxParts);
        let (read, is_long) = (PartsBox::read(text, sprockets), text.len() > IN_A_LINK);
        if !read.not_understood.is_empty() {
            let said = words::pieces(&read.not_understood);
            reader.complain_once(Field::BoxParts, said, words::OTHER_PARTS.to_owned());
        }
        let text = BoxText { rings: read.single_rings, pairs: read.pairs, is_long };
        let budget = reader.pick(Field::BoxBudget, &[1, 2, 3]);
        Self { typed: read.parts, sprockets, read: text, budget }
    }
}
