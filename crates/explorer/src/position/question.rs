//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::layout::question::Question;
use crate::position::section::PositionSection;
use crate::position::{body, picture, view};

/// “Does it sit like the road bike?”
pub(crate) const QUESTION: Question<PositionSection> = Question {
    id: "position",
    name: "Position",
    title: "Does it sit like the road bike?",
    rests_on: |field| matches!(field.spec().group, Group::RoadBike | Group::CrossBike | Group::CrossFrame),
    asks: |field| {
        Group::POSITION.contains(&field.spec().group)
            || [Field::BottomBracketDrop, Field::Tyre].contains(&field)
    },
    answer: ("position-answer", view::answer),
    marks_itself: true,
    working: ("How this was worked out", ("position-working", view::working)),
    fragments: &[("position-tables", view::tables)],
    block: |report, _| Some(view::block(report)),
    pictures: &[picture::POSITION.hung()],
    body: body::body,
};
