//! What lies in the box, as typed.

use crate::bench::field::Field;
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
}

impl BoxInputs {
    /// What is not understood is told piece by piece; all else lies in the box.
    pub(crate) fn read(reader: &mut Reader<'_>, lap: &LapInputs, bench: &[Drivetrain; 2]) -> Self {
        let counts = lap.search.sprockets.counts(bench);
        let sprockets = counts.filter(|[a, b]| a == b).map(|[count, _]| count);
        let read = PartsBox::read(reader.text(Field::BoxParts), sprockets);
        if !read.not_understood.is_empty() {
            let said = words::pieces(&read.not_understood);
            reader.complain_once(Field::BoxParts, said, words::OTHER_PARTS.to_owned());
        }
        Self { typed: read.parts, sprockets }
    }
}
