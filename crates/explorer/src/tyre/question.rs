//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::layout::folded::Folded;
use crate::layout::form::with_finer;
use crate::layout::question::{Question, is_among, no_acts};
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
    decision: |report| Some(view::decision::decision(report)),
    answer: ("tyre-answer", view::answer::answer),
    decided_by: &[Field::Construction, Field::Rim, Field::TyreGround, Field::BodyMass],
    marks_itself: false,
    nobodys: |_| None,
    fragments: &[],
    acts: no_acts,
    folds: &[
        (Folded::Why, &[("tyre-why", view::answer::why)]),
        (Folded::Numbers, &[("tyre-tables", view::tables::tables)]),
        (Folded::Settings, &[]),
        (Folded::Working, &[("tyre-working", view::answer::working)]),
    ],
    block: |report, _| Some(view::sheet::block(report)),
    pictures: &[picture::CROSS_SECTION.hung()],
    leads: "cross-section",
    body: body::body,
    panel: body::panel,
    forms: &[("tyre", || with_finer(&[("", Group::Tyre)], Group::TyreFiner))],
};
