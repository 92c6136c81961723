//! The section as the page knows it.

use crate::bench::field::Field;
use crate::layout::folded::Folded;
use crate::layout::question::{Question, no_acts};
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
    decision: |report| Some(view::decision::decision(report)),
    answer: ("position-answer", view::answer::answer),
    decided_by: &[Field::SaddleHeight, Field::Stack, Field::Reach, Field::BarUpBy],
    marks_itself: true,
    nobodys: |_| None,
    fragments: &[],
    acts: no_acts,
    folds: &[
        (Folded::Why, &[("position-why", view::answer::why)]),
        (Folded::Numbers, &[("position-tables", view::tables::tables)]),
        (Folded::Settings, &[]),
        (Folded::Working, &[("position-working", view::working::working)]),
    ],
    block: |report, _| Some(view::sheet::block(report)),
    pictures: &[picture::POSITION.hung()],
    leads: "position",
    body: body::body,
    panel: body::panel,
    forms: &[("position", form::position)],
};
