//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::layout::form::with_finer;
use crate::layout::question::{Question, is_among};
use crate::tyre::inputs::GROUPS;
use crate::tyre::section::{TyreSection, rests_on};
use crate::tyre::{body, picture, view, words};

/// What loads the tyres stands in the section on riding or running; a power that cannot be takes its rider along.
const WEIGHING: [Field; 5] =
    [Field::BodyMass, Field::KitMass, Field::BikeMass, Field::RearWeight, Field::Power];

/// “Which tyre, how hard?”
pub(crate) const QUESTION: Question<TyreSection> = Question {
    id: "tyre-section",
    name: words::question::NAME,
    title: words::question::TITLE,
    rests_on,
    asks: |field| is_among(field, GROUPS) || WEIGHING.contains(&field),
    answer: ("tyre-answer", view::answer::answer),
    marks_itself: false,
    nobodys: |_| None,
    working: (words::question::WORKING, ("tyre-working", view::answer::working)),
    fragments: &[("tyre-tables", view::tables::tables)],
    block: |report, _| Some(view::sheet::block(report)),
    pictures: &[picture::CROSS_SECTION.hung()],
    body: body::body,
    forms: &[("tyre", || with_finer(&[("", Group::Tyre)], Group::TyreFiner))],
};
