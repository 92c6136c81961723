//! The table for the bench: every gear of a set-up with its chain.

use crate::chain::report::{ChainReport, Station};
use crate::chain::words::names::{links, state};

/// Its heads; words stand under the last one.
pub(crate) const HEADS: [&str; 6] =
    ["Gear", "Cage angle", "Links left before too tight", "Links left before slack", "Chain angle", "State"];
/// How it is to be read.
pub(crate) const REMARK: &str = "Cage angle: forward of straight down. Links left: that could come off before the cage reaches its forward limit, or be added before it reaches its stop pin.";

/// Over the table.
pub(crate) fn title(chain: &ChainReport) -> String {
    let drivetrain = &chain.setup.drivetrain;
    format!(
        "{} on the bench: {} with {}-{}, {}",
        chain.side,
        drivetrain.chainset,
        drivetrain.cassette.smallest(),
        drivetrain.cassette.largest(),
        links(chain.advice.fit.links.count())
    )
}

/// How a gear runs, and what speaks against it.
pub(crate) fn station(station: &Station) -> String {
    let against = [
        (station.to_try, ", check for slack"),
        (station.crossed, ", cross-chained"),
        (station.beyond_maker > 0, ", beyond maker’s capacity"),
        (station.avoid, ", never use"),
    ];
    against
        .iter()
        .filter(|(holds, _)| *holds)
        .fold(state(station.fit.state).to_owned(), |text, (_, words)| text + words)
}
