//! What makes a section of the page: each is one of these, in a file of its own.

use crate::bench::field::{Field, Group};
use crate::drawing::drawing::Drawing;
use crate::layout::decision::Decision;
#[cfg(not(target_arch = "wasm32"))]
use crate::layout::fold::{bar, panel};
use crate::layout::folded::Folded;
use crate::layout::line::Line;
use crate::layout::sheet_block::Block;
#[cfg(not(target_arch = "wasm32"))]
use crate::layout::words::fold as words;
use crate::side::Side;
use maud::Markup;
#[cfg(not(target_arch = "wasm32"))]
use maud::html;

/// A piece of text by the id of the element that holds it.
pub(crate) type Fragment<S> = (&'static str, fn(&S) -> Markup);

/// A part of a section that is folded away until it is asked for: what is in it, and its text that changes, which is not
/// written before it is opened.
pub(crate) type Fold<S> = (Folded, &'static [Fragment<S>]);

/// A form by the name under which the body leaves room for it.
pub(crate) type Form = (&'static str, fn() -> Markup);

/// A question that a section of the page answers, `S` being what it is written and drawn from.
#[cfg_attr(
    target_arch = "wasm32",
    expect(dead_code, reason = "the engine leaves out what stands in the page already")
)]
pub(crate) struct Question<S: 'static> {
    /// The id of its section.
    pub(crate) id: &'static str,
    /// Its name among the sections.
    pub(crate) name: &'static str,
    /// The question.
    pub(crate) title: &'static str,
    /// Whether the answer rests on a field.
    pub(crate) rests_on: fn(Field) -> bool,
    /// Whether the answer is put in doubt by a field that could not be understood.
    pub(crate) asks: fn(Field) -> bool,
    /// The answer in a few words for each bike; none where there is nothing to decide.
    pub(crate) decision: fn(&S) -> Option<Decision>,
    /// The answer.
    pub(crate) answer: Fragment<S>,
    /// The few fields that move it most, which are changed beside it.
    pub(crate) decided_by: &'static [Field],
    /// Whether the answer marks by itself which of its sentences rest on the demo's values.
    pub(crate) marks_itself: bool,
    /// What of it is nobody's though the rider chose it, under the answer.
    pub(crate) nobodys: fn(&S) -> Option<Line>,
    /// All other text that changes and is always in sight.
    pub(crate) fragments: &'static [Fragment<S>],
    /// Buttons in front of those that unfold.
    pub(crate) acts: fn() -> Markup,
    /// What unfolds below, in this order.
    pub(crate) folds: &'static [Fold<S>],
    /// What it gives to the workshop sheet for a set-up, or for both.
    pub(crate) block: fn(&S, Option<Side>) -> Option<Block>,
    /// Its pictures, in the order of the page.
    pub(crate) pictures: &'static [Drawing<S>],
    /// The picture that carries the answer.
    pub(crate) leads: &'static str,
    /// What stands below the answer and is always in sight: room for a picture and text, and what never changes.
    pub(crate) body: fn() -> Markup,
    /// What stands in those of its folds that hold more than room for their text.
    pub(crate) panel: fn(Folded) -> Option<Markup>,
    /// Its forms, by the names under which the body leaves room for them.
    pub(crate) forms: &'static [Form],
}

impl<S> Clone for Question<S> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<S> Copy for Question<S> {}

impl<S> Question<S> {
    /// The same in the engine without what stands in the page already.
    pub(crate) const fn asked(self) -> Self {
        if cfg!(target_arch = "wasm32") {
            Self { title: "", acts: no_acts, body: no_acts, panel: |_| None, ..self }
        } else {
            self
        }
    }

    /// Its section with nothing worked out yet.
    #[cfg(not(target_arch = "wasm32"))]
    pub(crate) fn skeleton(&self) -> Markup {
        let title = format!("{}-title", self.id);
        let folds: Vec<Folded> = self.folds.iter().map(|(fold, _)| *fold).collect();
        let held =
            |(fold, fragments): &Fold<S>| (self.panel)(*fold).unwrap_or_else(|| rooms(*fold, fragments));
        html! {
            section id=(self.id) aria-labelledby=(title) hidden {
                h2 id=(title) { (self.title) }
                @if !self.decided_by.is_empty() {
                    div id=(decided_by_id(self.id)) class="decided-by" role="toolbar" aria-label=(words::decided_by(self.name)) {}
                }
                div id=(self.answer.0) class="answer" {}
                div class="body" { ((self.body)()) }
                (bar(self.id, self.name, self.leads, &(self.acts)(), &folds))
                @for fold in self.folds { (panel(self.id, fold.0, &held(fold))) }
            }
        }
    }
}

/// The id of the row of fields that decide a section.
pub(crate) fn decided_by_id(section: &str) -> String {
    format!("by-{section}")
}

/// Room for the text of a fold; what is behind the answer reads like it.
#[cfg(not(target_arch = "wasm32"))]
fn rooms<S>(fold: Folded, fragments: &[Fragment<S>]) -> Markup {
    html! { @for (id, _) in fragments { div id=(id) class=[(fold == Folded::Why).then_some("answer")] {} } }
}

/// No buttons.
pub(crate) const fn no_acts() -> Markup {
    maud::PreEscaped(String::new())
}

/// Whether a field stands on the bench or in one of `groups`.
pub(crate) fn is_among(field: Field, groups: &[Group]) -> bool {
    let group = field.spec().group;
    group.on_bench() || groups.contains(&group)
}
