//! Lengths by geometry, the front derailleur, and what was assumed.

use crate::layout::line::{Line, name};
use crate::number::{plain, trimmed};
use crate::side::Side;
use crate::units::retold;
use crate::words::counted;
use gear_math::cage::FrontConcern;
use gear_math::chain::{Assumption, ChainMeasure, ChainWindow};

/// Chain and cage.
pub(crate) const LENGTHS: &str = "Chain and cage by geometry";
/// How links are counted.
pub(crate) const LENGTHS_REMARK: &str = "Inner and outer links counted alike; only an even number closes.";
/// The chain to fit.
pub(crate) const LINKS_TO_FIT: &str = "Links to fit";
/// The shortest chain.
pub(crate) const FEWEST: &str = "Fewest that keep big-big behind the forward limit";
/// The longest chain.
pub(crate) const MOST: &str = "Most that small-small takes up";
/// The workshop's rule.
pub(crate) const WORKSHOP_RULE: &str = "Workshop rule: big-big + 2 links";
/// What the cage takes up.
pub(crate) const CAPACITY: &str = "Capacity of the cage by geometry, teeth";
/// How far the derailleur reaches.
pub(crate) const REACH: &str = "Hanger to guide pulley under the largest sprocket";
/// The slope of the cassette.
pub(crate) const SLOPE: &str = "Slope that the guide pulley climbs";

/// Whole links and the exact number behind them.
pub(crate) fn exactly(links: u16, exact: f64) -> String {
    format!("{links}, exactly {}", plain(exact, 2))
}

/// What only the bike can tell.
pub(crate) const CLEARANCES: &str =
    "Whether the rings clear the chainstay, and the tyre leaves room for the chain, only the bike can tell.";

/// What speaks against the rings on a front derailleur.
pub(crate) fn front(side: Side, concerns: &[FrontConcern]) -> Line {
    let concerns: Vec<String> = concerns.iter().map(concern).collect();
    format!("{} on a front derailleur: {}.", name(side), concerns.join("; ")).into()
}

fn concern(concern: &FrontConcern) -> String {
    match concern {
        FrontConcern::DifferenceTooLarge { teeth, most } => {
            format!("{teeth} teeth between the rings are more than the {most} it spans")
        }
        FrontConcern::DifferenceTooSmall { teeth, least } => format!(
            "only {} between neighbouring rings, where {least} are usual: its inner plate may meet the larger one",
            counted(usize::from(*teeth), "tooth", "teeth")
        ),
        FrontConcern::CurveDiffers { ring, made_for } => format!(
            "its plates are curved for a ring of {made_for}, too far from {ring} to follow it closely"
        ),
    }
}

/// What opens the table of what was assumed.
pub(crate) const ASSUMED_OPEN: &str = "What was assumed, and what it costs in certainty";
/// What was assumed.
pub(crate) const ASSUMED: &str = "Measures that were left empty";
/// How it is to be read.
pub(crate) const ASSUMED_REMARK: &str =
    "Exact links, fewest and most that suit every gear, if the measure lay at either end of what is usual.";
/// Its first heads.
pub(crate) const ASSUMED_HEADS: [&str; 3] = ["Left empty", "Taken", "Usual"];
/// Its last head.
pub(crate) const SOURCE: &str = "Where from";

/// The heads over a set-up's chains with a measure at either end of what is usual.
pub(crate) fn ends(side: Side) -> [Line; 2] {
    let name = name(side);
    [format!("{name} at the least").into(), format!("{name} at the most").into()]
}

/// The value that was taken, and the range that is usual.
pub(crate) fn taken_and_usual(assumed: &Assumption) -> [String; 2] {
    let [value, low, high] = [assumed.value, assumed.low, assumed.high].map(trimmed);
    let unit = unit(assumed.measure);
    [format!("{value}{unit}"), format!("{low} to {high}{unit}")]
}

/// The unit of a measure, as it stands behind a number.
fn unit(measure: ChainMeasure) -> String {
    match measure {
        ChainMeasure::GuideAngle | ChainMeasure::RearStop | ChainMeasure::ForeStop => "°".to_owned(),
        _ => format!("\u{a0}{}", measure.limits().unit),
    }
}

/// Where a value was taken from.
pub(crate) fn source(assumed: &Assumption) -> String {
    retold(assumed.source.to_owned(), &[])
}

/// The chains that suit.
pub(crate) fn window(window: Option<&ChainWindow>) -> String {
    window.map_or("no path".to_owned(), |window| {
        format!("{} to {}", plain(window.shortest_exact, 1), plain(window.longest_exact, 1))
    })
}
