//! The report on the desk, which for the bench that the page begins with is worked out only if somebody looks at it.

use crate::page::report::Report;
use std::cell::OnceCell;
use std::ops::{Deref, DerefMut};
use std::rc::Rc;

/// A report, or the default one once it is looked at.
#[derive(Debug, Default)]
pub(crate) struct Reported(OnceCell<Rc<Report>>);

impl Reported {
    /// The report if there is one by now.
    pub(crate) fn so_far(&self) -> Option<&Report> {
        self.0.get().map(|report| &**report)
    }
}

impl From<Report> for Reported {
    fn from(report: Report) -> Self {
        Self(OnceCell::from(Rc::new(report)))
    }
}

impl Deref for Reported {
    type Target = Rc<Report>;

    fn deref(&self) -> &Self::Target {
        self.0.get_or_init(Rc::default)
    }
}

impl DerefMut for Reported {
    #[expect(clippy::expect_used, reason = "it was made by the line before")]
    fn deref_mut(&mut self) -> &mut Self::Target {
        self.0.get_or_init(Rc::default);
        self.0.get_mut().expect("a report")
    }
}
