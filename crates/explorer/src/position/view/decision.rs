//! “Does it sit like the road bike?” on the board.

use crate::layout::decision::{Decision, Standing, Verdict};
use crate::position::report::SADDLE;
use crate::position::section::PositionSection;
use crate::position::words::decision as words;
use gear_math::StemSearch;

/// Whether a stem brings the bar to its place, and where the saddle goes.
pub(crate) fn decision(report: &PositionSection) -> Decision {
    let position = &report.position;
    let saddle = || if position.knows(SADDLE) { words::saddle(position) } else { String::new() };
    let (standing, words) = match &position.search {
        _ if !position.knows_stem() => (Standing::Open, words::NOT_KNOWN.to_owned()),
        StemSearch::NoneFits(_) => (Standing::Stop, words::none(position)),
        StemSearch::Found(_) if position.is_plain_sailing() => (Standing::Well, words::stem(position)),
        StemSearch::Found(_) => (Standing::Care, words::stem(position)),
    };
    Decision::of(|_| Verdict { standing, words: words.clone(), detail: saddle() }, words::ONE.to_owned())
}
