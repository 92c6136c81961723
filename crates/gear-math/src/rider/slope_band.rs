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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rider::Uncertain;

    fn bar(at_low: f64, at_high: Option<f64>) -> TornadoBar {
        let slope = |percent: f64| Slope::new(percent / 100.0);
        TornadoBar {
            input: Uncertain::Rolling,
            values: (0.0, 1.0),
            at_low: Some(slope(at_low)),
            at_high: at_high.map(slope),
            swing_points: 0.0,
        }
    }

    fn edges(best: Option<f64>, bars: &[TornadoBar]) -> (f64, Option<f64>) {
        let band = SlopeBand::of(best.map(|percent| Slope::new(percent / 100.0)), bars);
        let rounded = |slope: Slope| (1e6 * slope.percent()).round() / 1e6;
        (rounded(band.low), band.high.map(rounded))
    }

    /// Down 3 and 4 points, up 5 and 12: by Pythagoras 5 and 13.
    #[test]
    fn doubts_add_in_quadrature_by_direction() {
        assert_eq!(edges(Some(10.0), &[bar(7.0, Some(15.0)), bar(22.0, Some(6.0))]), (5.0, Some(23.0)));
        assert_eq!(edges(Some(10.0), &[bar(13.0, Some(14.0))]), (10.0, Some(15.0)), "both ends above");
        assert_eq!(edges(Some(10.0), &[]), (10.0, Some(10.0)));
    }

    #[test]
    fn nothing_lies_beyond_the_level_or_the_steepest() {
        assert_eq!(edges(Some(2.0), &[bar(0.0, Some(2.0)), bar(0.0, Some(5.0))]), (0.0, Some(5.0)));
        assert_eq!(edges(Some(33.0), &[bar(33.0, None)]), (33.0, None));
        assert_eq!(edges(None, &[bar(42.0, None), bar(41.0, None)]), (40.0, None));
        assert_eq!(edges(Some(44.0), &[bar(44.0, Some(44.9))]), (44.0, Some(44.9)));
    }
}
