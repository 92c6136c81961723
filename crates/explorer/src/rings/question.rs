//! The section as the page knows it.

use crate::bench::field::Group;
use crate::bench::rests::is_drivetrain;
use crate::layout::form::section;
use crate::layout::question::{Question, is_among};
use crate::rings::section::RingsSection;
use crate::rings::{body, pictures, view, words};

/// “Which rings?”
pub(crate) const QUESTION: Question<RingsSection> = Question {
    id: "rings",
    name: words::question::NAME,
    title: words::question::TITLE,
    rests_on: |field| is_drivetrain(field) || field.spec().group == Group::Wheel,
    asks: |field| is_among(field, &[]),
    answer: ("rings-answer", view::answer::answer),
    marks_itself: false,
    nobodys: |_| None,
    working: (words::question::WORKING, ("rings-working", view::answer::working)),
    fragments: &[
        ("rings-summary", view::answer::summary),
        ("probes-answer", view::probes::answer),
        ("rings-steps", view::steps::tables),
        ("rings-overlap", view::overlap::tables),
        ("rings-limit", view::limit::table_of),
        ("rings-gears", view::gears::tables),
    ],
    block: |report, _| Some(view::answer::block(report)),
    pictures: pictures::PICTURES,
    body: body::body,
    forms: &[("probes", || section(Group::Probes))],
};
