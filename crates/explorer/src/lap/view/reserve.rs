//! “Round the lap”: what it makes of the rider's reserve, and where forcing pays.

use crate::lap::report::{LapReport, Spread};
use crate::lap::words::reserve as words;
use maud::{Markup, html};

/// Where to force it, how hard the laps are ridden, and what that takes; nothing of laps at an even power.
#[must_use]
pub(crate) fn reserve(laps: &LapReport) -> Markup {
    let Spread::Reserve { account, budget, .. } = laps.question.spread else { return html! {} };
    let [Some(a), Some(b)] = laps.laps.each_ref().map(|lap| lap.reserve.as_ref()) else { return html! {} };
    let power_w = account.effort.sustainable().watts();
    let reserve = account.effort.reserve();
    let deepest = a.deepest_j().max(b.deepest_j());
    let (places, more) = laps.forced_places();
    html! {
        p.more { @if places.is_empty() { (words::NO_FORCING) } @else { (words::forcing(&places, more)) } }
        p.more {
            (words::effort(power_w, [a.highest_power_w, b.highest_power_w], deepest, reserve))
            @if a.is_deep(reserve) || b.is_deep(reserve) { " " (words::DEEP) } " "
            (words::price(budget.j(), [a.price_s_per_j, b.price_s_per_j]))
        }
    }
}
