//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::bench::rests::is_ridden;
use crate::layout::folded::Folded;
use crate::layout::form::section;
use crate::layout::question::Question;
use crate::parts::section::BoxSection;
use crate::parts::words::body as words;
use crate::parts::{body, picture, view};

/// “What is best of the box?”
pub(crate) const QUESTION: Question<BoxSection> = Question {
    id: "box",
    name: words::NAME,
    title: words::TITLE,
    rests_on,
    asks: |field| field.spec().group.on_bench() || rests_on(field),
    decision: |_| None,
    answer: ("box-answer", view::answer::answer),
    decided_by: &[],
    marks_itself: false,
    nobodys: |_| None,
    fragments: &[("box-mechanic", view::answer::mechanic)],
    acts: body::acts,
    folds: &[
        (Folded::Numbers, &[("box-table", view::table::rows)]),
        (Folded::Parts, &[("box-put", view::put::lists)]),
    ],
    block: |_, _| None,
    pictures: &[picture::RIDDEN.hung()],
    leads: "box-laps",
    body: body::body,
    panel: body::panel,
    forms: &[("box", || section(Group::Box)), ("box-finer", || section(Group::BoxFiner))],
};

fn rests_on(field: Field) -> bool {
    let is_climb = matches!(field, Field::Slope | Field::ClimbLength | Field::Ground);
    is_ridden(field)
        || match field.spec().group {
            Group::Ride => !is_climb,
            group => matches!(
                group,
                Group::Derailleur | Group::Lap | Group::LapSketch | Group::Box | Group::BoxFiner
            ),
        }
}
