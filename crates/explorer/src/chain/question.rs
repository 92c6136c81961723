//! The section as the page knows it.

use crate::bench::field::Group;
use crate::bench::rests::is_drivetrain;
use crate::chain::section::ChainSection;
use crate::chain::{body, pictures, view};
use crate::layout::question::{Question, is_among};

/// “Will the cage take it?”
pub(crate) const QUESTION: Question<ChainSection> = Question {
    id: "cage",
    name: "Cage",
    title: "Will the cage take it?",
    rests_on: |field| is_drivetrain(field) || matches!(field.spec().group, Group::Derailleur | Group::Chain),
    asks: |field| is_among(field, &Group::CHAIN),
    answer: ("cage-answer", view::cage::answer),
    marks_itself: false,
    working: ("How this was worked out", ("cage-working", view::cage::working)),
    fragments: &[
        ("cage-tables", view::cage::tables),
        ("cage-loose", view::cage::loose_gears),
        ("chain-bench", view::path::bench),
        ("chain-remedies", view::remedies::remedies),
        ("chain-lengths", view::path::lengths),
    ],
    block: |report, _| Some(view::cage::block(report)),
    pictures: pictures::PICTURES,
    body: body::body,
};
