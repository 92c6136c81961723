//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::bench::rests::is_drivetrain;
use crate::layout::folded::Folded;
use crate::layout::form::section;
use crate::layout::question::{Question, is_among, no_acts};
use crate::rings::section::RingsSection;
use crate::rings::{body, pictures, view, words};

/// “Which rings?”
pub(crate) const QUESTION: Question<RingsSection> = Question {
    id: "rings",
    name: words::question::NAME,
    title: words::question::TITLE,
    rests_on: |field| is_drivetrain(field) || field.spec().group == Group::Wheel,
    asks: |field| is_among(field, &[]),
    decision: |report| Some(view::decision::decision(report)),
    answer: ("rings-answer", view::answer::answer),
    decided_by: &[Field::RingsA, Field::CassetteA, Field::RingsB, Field::CassetteB],
    marks_itself: false,
    nobodys: |_| None,
    fragments: &[],
    acts: no_acts,
    folds: &[
        (Folded::Why, &[("rings-why", view::answer::why)]),
        (Folded::Pictures, &[("probes-answer", view::probes::answer)]),
        (
            Folded::Numbers,
            &[
                ("rings-summary", view::answer::summary),
                ("rings-steps", view::steps::tables),
                ("rings-overlap", view::overlap::tables),
                ("rings-limit", view::limit::table_of),
                ("rings-gears", view::gears::tables),
            ],
        ),
        (Folded::Settings, &[]),
        (Folded::Working, &[("rings-working", view::answer::working)]),
    ],
    block: |report, _| Some(view::answer::block(report)),
    pictures: pictures::PICTURES,
    leads: "ladder",
    body: body::body,
    panel: body::panel,
    forms: &[("probes", || section(Group::Probes)), ("reckoning", || section(Group::Reckoning))],
};
