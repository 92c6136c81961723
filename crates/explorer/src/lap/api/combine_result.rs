//! What `combine` gives.

use crate::lap::api::fitting_row::FittingRow;
use crate::lap::api::not_fitting_row::NotFittingRow;
use crate::lap::api::purchase_row::PurchaseRow;
use crate::lap::api::robust_result::RobustResult;
use gear_math::Circumference;
use gear_math::course::TimeBand;
use gear_math::parts::Combining;
use serde::Serialize;
use tsify::Tsify;

/// What `combine` gives. Chainset, cassette and derailleur are places in the box, counted from 0; the derailleur is null where the
/// box has none.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct CombineResult {
    /// What goes together, the quickest first.
    fitting: Vec<FittingRow>,
    /// What does not.
    not_fitting: Vec<NotFittingRow>,
    /// What the first of `fitting` gains over the next that rides another lap; null where there is none.
    lead: Option<GainRow>,
    /// What it gains over the bike as it stands, whether that is in the box or not.
    over_bike: Option<GainRow>,
    /// What is worth buying, the quickest first: up to three that gain anything over the first of `fitting`. None where that was
    /// not asked for. Where no `gainLowS` is above zero, nothing is worth more than the doubt.
    pub(super) purchases: Vec<PurchaseRow>,
    /// How the best stand up to another day; null where that was not asked for, or nothing fits.
    pub(super) robust: Option<RobustResult>,
}

impl CombineResult {
    pub(super) fn of(combining: &Combining, wheel: Circumference, is_done: bool) -> Self {
        let order = combining.quickest();
        let not_fitting =
            combining.sorted().not_fitting.iter().map(|(parts, lack)| NotFittingRow::of(*parts, *lack));
        let [lead, over_bike] = if is_done { combining.leads() } else { [None, None] };
        Self {
            fitting: order.iter().map(|it| FittingRow::of(it, wheel)).collect(),
            not_fitting: not_fitting.collect(),
            lead: lead.map(GainRow::of),
            over_bike: over_bike.map(GainRow::of),
            purchases: Vec::new(),
            robust: None,
        }
    }
}

/// What one lap gains over another, with its likely edges: a tie where they lie on either side of zero.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GainRow {
    gain_s: f64,
    gain_low_s: f64,
    gain_high_s: f64,
}

impl GainRow {
    const fn of(TimeBand { low_s, time_s, high_s }: TimeBand) -> Self {
        Self { gain_s: time_s, gain_low_s: low_s, gain_high_s: high_s }
    }
}
