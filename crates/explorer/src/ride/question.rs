//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::bench::rests::is_ridden;
use crate::layout::form::section;
use crate::layout::question::{Question, is_among};
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
    answer: ("ride-answer", view::answer::answer),
    marks_itself: false,
    nobodys: |_| None,
    working: (words::WORKING, ("ride-working", view::notes::working)),
    fragments: &[
        ("ride-ends", view::tables::ends),
        ("ride-at-speed", view::tables::at_speed),
        ("ride-speeds", view::tables::speeds),
        ("ride-map", view::tables::map),
        ("ride-climb", view::tables::climb),
        ("ride-swings", view::tables::swings),
    ],
    block: |report, _| Some(view::sheet::block(report)),
    pictures: pictures::PICTURES,
    body: body::body,
    forms: &[("ride", form::ride), ("slope-speed", || section(Group::RideProbe))],
};
