//! What of a box was not understood.

use crate::bench::words::complaints::sentence;
use crate::words::listed;
use gear_math::parts::{NotUnderstood, PartFault, PartKind};

/// What the page goes on with.
pub(crate) const OTHER_PARTS: &str = "the other parts";

/// Every piece that was not understood, with what is wrong.
pub(crate) fn pieces(pieces: &[NotUnderstood]) -> String {
    let said: Vec<String> = pieces.iter().map(piece).collect();
    said.join(" ")
}

fn piece(NotUnderstood { piece, kind, why }: &NotUnderstood) -> String {
    let why = match why {
        PartFault::Chainset(error) => error.to_string(),
        PartFault::Cassette(error) => error.to_string(),
        PartFault::Name(error) => error.to_string(),
        PartFault::Chain(error) => error.to_string(),
        PartFault::Tyre(error) => error.to_string(),
        PartFault::Figure(error) => error.to_string(),
        _ => format!("write it like {}", example(*kind)),
    };
    sentence(&format!("“{piece}” is not understood as {}: {why}", kind_of(*kind)))
}

const fn kind_of(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Chainset => "rings",
        PartKind::Cassette => "a cassette",
        PartKind::Derailleur => "a rear derailleur",
        PartKind::Chain => "a chain",
        PartKind::Front => "a front derailleur",
        PartKind::Tyre => "a tyre",
    }
}

fn example(kind: PartKind) -> String {
    match kind {
        PartKind::Chainset => listed(&["40", "44/31"]),
        PartKind::Cassette => "11-34 11s".to_owned(),
        PartKind::Derailleur => "39/36, its total capacity and its largest sprocket".to_owned(),
        PartKind::Chain => "110, its links".to_owned(),
        PartKind::Tyre => "33-622 tubeless".to_owned(),
        PartKind::Front => "44/13, its largest ring and the teeth it spans".to_owned(),
    }
}
