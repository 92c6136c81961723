//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::bench::rests::is_ridden;
use crate::lap::inputs::GROUPS;
use crate::lap::section::LapSection;
use crate::lap::{body, form, pictures, view, words};
use crate::layout::folded::Folded;
use crate::layout::form::section;
use crate::layout::question::{Question, is_among, no_acts};

/// “Round the lap”
pub(crate) const QUESTION: Question<LapSection> = Question {
    id: "lap",
    name: words::question::NAME,
    title: words::question::TITLE,
    rests_on: |field| {
        let is_climb = matches!(field, Field::Ground | Field::Slope | Field::ClimbLength);
        is_ridden(field)
            || match field.spec().group {
                Group::Ride => !is_climb,
                group => matches!(group, Group::Derailleur | Group::Lap | Group::LapSketch),
            }
    },
    asks: |field| {
        is_among(field, crate::ride::inputs::GROUPS) || is_among(field, GROUPS) || field == Field::CrossCrank
    },
    decision: |report| Some(view::decision::decision(report)),
    answer: ("lap-answer", view::answer::answer),
    decided_by: &[],
    marks_itself: false,
    nobodys: |report| report.is_on_invented_course().then(words::course::invented),
    fragments: &[("lap-loaded", view::course::loaded), ("lap-course", view::course::course)],
    acts: no_acts,
    folds: &[
        (Folded::Why, &[("lap-why", view::answer::why)]),
        (Folded::Pictures, &[]),
        (
            Folded::Numbers,
            &[
                ("lap-places", view::places::places),
                ("lap-numbers", view::tables::numbers),
                ("lap-gears", view::tables::gears),
            ],
        ),
        (Folded::Course, &[]),
        (Folded::Search, &[("lap-found", view::found::found)]),
        (Folded::Working, &[("lap-working", view::tables::working)]),
    ],
    block: view::sheet::block,
    pictures: pictures::PICTURES,
    leads: "profile",
    body: body::body,
    panel: body::panel,
    forms: &[("lap", form::lap), ("search", || section(Group::LapSearch))],
};
