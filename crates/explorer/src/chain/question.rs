//! The section as the page knows it.

use crate::bench::field::{Field, Group};
use crate::chain::inputs::GROUPS;
use crate::chain::section::{ChainSection, rests_on};
use crate::chain::{body, pictures, view, words};
use crate::layout::folded::Folded;
use crate::layout::form::{section, with_finer};
use crate::layout::question::{Question, is_among, no_acts};

/// “Will the cage take it?”
pub(crate) const QUESTION: Question<ChainSection> = Question {
    id: "cage",
    name: words::body::NAME,
    title: words::body::TITLE,
    rests_on,
    asks: |field| is_among(field, GROUPS),
    decision: |report| Some(view::decision::decision(report)),
    answer: ("cage-answer", view::answer::answer),
    decided_by: &[
        Field::Capacity,
        Field::CapacityB,
        Field::LargestSprocket,
        Field::LargestSprocketB,
        Field::PulleyCentres,
        Field::PulleyCentresB,
        Field::ChainLinks,
        Field::ChainLinksB,
    ],
    marks_itself: false,
    nobodys: |_| None,
    fragments: &[],
    acts: no_acts,
    folds: &[
        (Folded::Why, &[("cage-why", view::answer::why)]),
        (Folded::Pictures, &[]),
        (
            Folded::Numbers,
            &[
                ("chain-bench", view::path::bench),
                ("chain-remedies", view::remedies::remedies),
                ("chain-lengths", view::path::lengths),
                ("cage-tables", view::tables::tables),
                ("cage-loose", view::tables::loose_gears),
            ],
        ),
        (Folded::Settings, &[]),
        (Folded::Working, &[("cage-working", view::working::working)]),
    ],
    block: |report, _| Some(view::sheet::block(report)),
    pictures: pictures::PICTURES,
    leads: "drivetrain",
    body: body::body,
    panel: body::panel,
    forms: &[
        ("chain", || with_finer(&[("", Group::Chain)], Group::ChainFiner)),
        ("gears-shown", || section(Group::GearsShown)),
    ],
};
