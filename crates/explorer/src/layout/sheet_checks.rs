//! What to check by hand before riding, by what can break or throw first.

use crate::layout::concern::Concern;
use crate::layout::words::sheet as words;
use maud::{Markup, html};

/// Something to check by hand, or how to measure it.
#[derive(Debug)]
pub(crate) struct Check {
    concern: Concern,
    words: String,
}

impl Check {
    pub(crate) fn new(concern: Concern, words: impl Into<String>) -> Self {
        Self { concern, words: words.into() }
    }
}

/// All checks under the head of what they are about, each once.
pub(crate) fn checks(all: &[&Check]) -> Markup {
    html! {
        @for concern in Concern::ALL {
            @let of_it = once(all, concern);
            @if !of_it.is_empty() {
                div.concern {
                    h4 { (words::concern(concern)) }
                    ul.ticked[concern.is_ticked()] { @for words in of_it { li { (words) } } }
                }
            }
        }
    }
}

fn once<'c>(all: &[&'c Check], concern: Concern) -> Vec<&'c str> {
    let mut once: Vec<&str> = Vec::new();
    for check in all.iter().filter(|check| check.concern == concern) {
        if !once.contains(&check.words.as_str()) {
            once.push(&check.words);
        }
    }
    once
}
