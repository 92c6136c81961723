//! The section as the page knows it.

use crate::bench::field::Field;
use crate::layout::question::Question;
use crate::position::inputs::GROUPS;
use crate::position::section::{PositionSection, rests_on};
use crate::position::{body, form, picture, view, words};

/// “Does it sit like the road bike?”
pub(crate) const QUESTION: Question<PositionSection> = Question {
    id: "position",
    name: words::body::NAME,
    title: words::body::TITLE,
    rests_on,
    asks: |field| {
        GROUPS.contains(&field.spec().group)
            || [Field::BottomBracketDrop, Field::Tyre, Field::TyreB].contains(&field)
    },
    answer: ("position-answer", view::answer::answer),
    marks_itself: true,
    nobodys: |_| None,
    working: (words::body::WORKING, ("position-working", view::working::working)),
    fragments: &[("position-tables", view::tables::tables)],
    block: |report, _| Some(view::sheet::block(report)),
    pictures: &[picture::POSITION.hung()],
    body: body::body,
    forms: &[("position", form::position)],
};
