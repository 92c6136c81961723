//! What the board said before the last change.

use crate::layout::decision::Decision;
use crate::page::questions;
use crate::page::report::Report;

/// The verdicts on A and B, by question, as they stood before what is being typed now was begun.
#[derive(Debug, Clone, Default)]
pub(crate) struct Was(Vec<(&'static str, [String; 2])>);

impl Was {
    /// What the board says now.
    pub(crate) fn now(report: &Report) -> Self {
        let words = |decision: Decision| decision.bikes.map(|verdict| verdict.words);
        let settled = |decision: &Decision| !decision.is_before;
        let all = questions::all().filter_map(|question| {
            let decision = question.decision(report).filter(settled)?;
            Some((question.id(), words(decision)))
        });
        Self(all.collect())
    }

    /// The same, with what it does not know taken from what was known before.
    pub(crate) fn or(mut self, before: &Self) -> Self {
        let missing = before.0.iter().filter(|(id, _)| self.of(id).is_none()).cloned().collect::<Vec<_>>();
        self.0.extend(missing);
        self
    }

    /// What was said to a question; none where it was not known.
    pub(crate) fn of(&self, id: &str) -> Option<&[String; 2]> {
        self.0.iter().find(|(known, _)| *known == id).map(|(_, words)| words)
    }
}
