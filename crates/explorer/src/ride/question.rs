//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::bench::rests::is_ridden;
use crate::layout::folded::Folded;
use crate::layout::form::section;
use crate::layout::question::{Question, is_among, no_acts};
use crate::ride::inputs::GROUPS;
use crate::ride::section::RideSection;
use crate::ride::words::body as words;
use crate::ride::{body, form, pictures, view};

/// “Ride or run?”
pub(crate) const QUESTION: Question<RideSection> = Question {
    id: "ride",
    name: words::NAME,
    title: words::TITLE,
    rests_on: |field| is_ridden(field) || field.spec().group == Group::Ride,
    asks: |field| is_among(field, GROUPS) || field == Field::CrossCrank,
    decision: |report| Some(view::decision::decision(report)),
    answer: ("ride-answer", view::answer::answer),
    decided_by: &[Field::Slope, Field::ClimbLength, Field::Ground, Field::Power],
    marks_itself: false,
    nobodys: |_| None,
    fragments: &[],
    acts: no_acts,
    folds: &[
        (Folded::Why, &[("ride-why", view::answer::why)]),
        (Folded::Pictures, &[("ride-at-speed", view::tables::at_speed)]),
        (
            Folded::Numbers,
            &[
                ("ride-ends", view::tables::ends),
                ("ride-speeds", view::tables::speeds),
                ("ride-map", view::tables::map),
                ("ride-climb", view::tables::climb),
                ("ride-swings", view::tables::swings),
            ],
        ),
        (Folded::Settings, &[]),
        (Folded::Working, &[("ride-working", view::notes::working)]),
    ],
    block: |report, _| Some(view::sheet::block(report)),
    pictures: pictures::PICTURES,
    leads: "slopes",
    body: body::body,
    panel: body::panel,
    forms: &[("ride", form::ride), ("slope-speed", || section(Group::RideProbe))],
};
