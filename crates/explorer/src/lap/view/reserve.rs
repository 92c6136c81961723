//! “Round the lap”: what it makes of the rider's reserve, and where forcing pays.

use crate::lap::report::{LapReport, Spread};
use crate::lap::words::reserve as words;
use crate::layout::line::Line;
use crate::side::Side;
use gear_math::course::{ReserveForcing, ReserveUse};
use gear_math::order::ascending;
use maud::{Markup, html};

/// Places told one by one; of more than these only the number is.
const TOLD: usize = 3;

/// Where to force it, how hard the laps are ridden, and what that takes; nothing of laps at an even power.
#[must_use]
pub(crate) fn reserve(laps: &LapReport) -> Markup {
    let Spread::Reserve { account, budget, .. } = laps.question.spread else { return html! {} };
    let power_w = account.effort.sustainable().watts();
    let used = laps.laps.each_ref().map(|lap| lap.reserve.as_ref());
    let [Some(a), Some(b)] = used else { return html! {} };
    let reserve_j = account.effort.reserve().kj() * 1e3;
    let deepest = a.deepest_j().max(b.deepest_j());
    html! {
        p.more { @for line in forcings(laps) { (line) " " } }
        p.more {
            (words::effort(power_w, &sides(laps, a, b))) " "
            (words::price(budget.j(), [a.price_s_per_j, b.price_s_per_j]))
        }
        @if 3.0 * deepest > reserve_j { p.more { (words::deep(deepest, reserve_j)) } }
    }
}

fn sides<'l>(laps: &LapReport, a: &'l ReserveUse, b: &'l ReserveUse) -> Vec<(Option<Side>, &'l ReserveUse)> {
    if laps.is_of_one_bike() { vec![(None, a)] } else { vec![(Some(Side::A), a), (Some(Side::B), b)] }
}

fn forcings(laps: &LapReport) -> Vec<Line> {
    if laps.forcings.iter().all(Vec::is_empty) {
        return vec![words::NO_FORCING.to_owned().into()];
    }
    if laps.is_of_one_bike() {
        return vec![forcing(None, &laps.forcings[0])];
    }
    let some = Side::BOTH.into_iter().filter(|&side| !laps.forcings[side as usize].is_empty());
    some.map(|side| forcing(Some(side), &laps.forcings[side as usize])).collect()
}

/// Those that pay best, in the order they come.
fn forcing(side: Option<Side>, places: &[ReserveForcing]) -> Line {
    let mut told: Vec<&ReserveForcing> = places.iter().collect();
    ascending(&mut told, |place| -place.saved_s);
    told.truncate(TOLD);
    ascending(&mut told, |place| place.from_m);
    words::forcing(side, &told, places.len())
}
