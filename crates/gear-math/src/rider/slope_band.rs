//! A gradient with all its doubts taken together.

use crate::rider::quantity::Slope;
use crate::rider::sensitivity::TornadoBar;

/// Steepest gradient of the model, per cent; one that is not met counts as this.
const STEEPEST: f64 = 45.0;

/// A gradient with its likely edges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlopeBand {
    /// Flat edge.
    pub low: Slope,
    /// Best guess; `None` for "not up to 45 %".
    pub best: Option<Slope>,
    /// Steep edge; `None` for "not up to 45 %".
    pub high: Option<Slope>,
}

impl SlopeBand {
    /// Takes the doubts of a [tornado](crate::rider::ride_or_run::RideOrRun::tornado) together: changes in one direction are added in
    /// quadrature, as in [`Band`](crate::rider::energy::Band).
    #[must_use]
    pub fn of(best: Option<Slope>, bars: &[TornadoBar]) -> Self {
        let middle = points(best);
        let changes = bars.iter().flat_map(|bar| [bar.at_low, bar.at_high]).map(|end| points(end) - middle);
        let (down, up) = changes.fold((0.0, 0.0), |(down, up), change| {
            let square = change * change;
            if change > 0.0 { (down, up + square) } else { (down + square, up) }
        });
        let high = middle + f64::sqrt(up);
        Self {
            low: Slope::new((middle - f64::sqrt(down)).max(0.0) / 100.0),
            best,
            high: (high < STEEPEST).then(|| Slope::new(high / 100.0)),
        }
    }
}

fn points(slope: Option<Slope>) -> f64 {
    slope.map_or(STEEPEST, Slope::percent)
}
