//! What is best of the box, in sentences.

use crate::lap::found::Standing;
use crate::parts::found::BoxFound;
use crate::parts::section::BoxSection;
use crate::parts::words::{answer as words, offer};
use crate::side::Side;
use maud::{Markup, html};

/// What lies in the box, or what is best of it.
pub(crate) fn answer(section: &BoxSection) -> Markup {
    match &section.found {
        None => html! { p { (words::lies_in(&section.parts, section.is_bench_only)) } },
        Some(found) => html! {
            @if found.is_stale { p.care { (words::STALE) } }
            div.stale[found.is_stale] { (best(found)) }
        },
    }
}

fn best(found: &BoxFound) -> Markup {
    match (found.is_done, found.order.is_empty()) {
        (false, _) => html! { p { (words::so_far(found)) } },
        (true, true) => html! { p { (words::none(found)) } (not_fitting(found)) },
        (true, false) => html! {
            p { (words::quickest(found)) @if let Some(said) = words::lead(found) { " " (said) } }
            p.more {
                @for side in Side::BOTH { (words::standing(found, side)) " " }
                @if is_good_as_it_stands(found) { b { (words::NOTHING_TO_CHANGE) } }
            }
            p.more {
                (words::chains(found))
                @if let Some(said) = words::regret(found) { " " (said) }
            }
            @if let Some(said) = words::tyres(found) { p.more { (said) } }
            @if let Some(offers) = &found.offers { p.more { (offer::worth(offers, found.asked.budget)) } }
            (not_fitting(found))
        },
    }
}

/// What teeth and millimetres tell of shifter and cassette, and what is the mechanic's question.
pub(crate) fn mechanic(section: &BoxSection) -> Markup {
    html! { (words::sprockets(section.sprockets)) " " (words::MECHANIC) }
}

fn is_good_as_it_stands(found: &BoxFound) -> bool {
    Side::BOTH.into_iter().any(|side| matches!(found.standing(side), Standing::First | Standing::Tie(_)))
}

fn not_fitting(found: &BoxFound) -> Markup {
    html! { @if let Some(said) = words::not_fitting(found) { p.more { (said) } } }
}
