//! Which set-up has the wider steps, as far as the printed figures tell them apart.

use crate::side::Side;
use gear_math::gears::StepSpread;

/// Mean and largest step in whole per cent, as they are printed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WholeSteps {
    /// Of all shifts on the way up.
    pub mean: f64,
    /// The largest of them.
    pub largest: f64,
}

/// Whose steps are wider in whole per cent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StepVerdict {
    /// Neither's: both figures are printed alike.
    Alike,
    /// On average; the largest are printed alike.
    OnAverage(Side),
    /// At most; the averages are printed alike.
    AtMost(Side),
    /// On average and at most.
    Both(Side),
    /// On average this one's; the other's largest step is wider.
    OnAverageOnly(Side),
}

impl From<StepSpread> for WholeSteps {
    fn from(steps: StepSpread) -> Self {
        let whole = f64::round_ties_even;
        Self { mean: whole(steps.mean.percent()), largest: whole(steps.largest.percent()) }
    }
}

/// The side with more, unless both have as much.
pub(crate) fn more([a, b]: [f64; 2]) -> Option<Side> {
    if a > b { Some(Side::A) } else { (b > a).then_some(Side::B) }
}

impl StepVerdict {
    /// Whose of two are wider.
    #[must_use]
    pub fn of(steps: [WholeSteps; 2]) -> Self {
        match (more(steps.map(|it| it.mean)), more(steps.map(|it| it.largest))) {
            (None, None) => Self::Alike,
            (None, Some(side)) => Self::AtMost(side),
            (Some(side), None) => Self::OnAverage(side),
            (Some(mean), Some(largest)) if mean == largest => Self::Both(mean),
            (Some(mean), Some(_)) => Self::OnAverageOnly(mean),
        }
    }

    /// The side with wider steps: on average where the two figures contradict each other.
    pub(crate) const fn wider(self) -> Option<Side> {
        match self {
            Self::Alike => None,
            Self::OnAverage(side) | Self::AtMost(side) | Self::Both(side) | Self::OnAverageOnly(side) => {
                Some(side)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::Field;
    use crate::page::report::Report;
    use crate::page::scenario::Scenario;
    use crate::rings::report::RingsReport;
    use gear_math::{Cassette, Chainset};
    use proptest::prelude::*;
    use std::rc::Rc;

    fn report(rings: [usize; 2], cassettes: [usize; 2]) -> Rc<RingsReport> {
        let mut bench = Bench::default();
        let rings = rings.map(|it| Chainset::common().nth(it).map(|it| it.to_string()));
        let cassettes = cassettes.map(|it| Cassette::common().nth(it).map(|it| it.to_string()));
        let texts = rings.into_iter().chain(cassettes);
        for (field, text) in
            [Field::RingsA, Field::RingsB, Field::CassetteA, Field::CassetteB].iter().zip(texts)
        {
            bench.write(*field, &text.unwrap_or_default());
        }
        Report::of(&Scenario::read(&bench, &Scenario::default()).scenario).rings
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn no_words_contradict_the_figures(rings in prop::array::uniform2(0..Chainset::common().count()), cassettes in prop::array::uniform2(0..Cassette::common().count())) {
            let report = report(rings, cassettes);
            let ([a, b], verdict) = report.steps().unwrap();
            let exact = report.setups.each_ref().map(|it| it.steps.unwrap());
            for (whole, exact) in [a, b].iter().zip(exact) {
                prop_assert_eq!(format!("{:.0}", exact.mean.percent()), format!("{}", whole.mean));
                prop_assert_eq!(format!("{:.0}", exact.largest.percent()), format!("{}", whole.largest));
            }
            let wider = |side: Side, [a, b]: [f64; 2]| if side == Side::A { a > b } else { b > a };
            let (mean, largest) = ([a.mean, b.mean], [a.largest, b.largest]);
            let same = |[a, b]: [f64; 2]| a.total_cmp(&b).is_eq();
            let is_told = match verdict {
                StepVerdict::Alike => same(mean) && same(largest),
                StepVerdict::OnAverage(side) => wider(side, mean) && same(largest),
                StepVerdict::AtMost(side) => same(mean) && wider(side, largest),
                StepVerdict::Both(side) => wider(side, mean) && wider(side, largest),
                StepVerdict::OnAverageOnly(side) => wider(side, mean) && wider(side.other(), largest),
            };
            prop_assert!(is_told, "{verdict:?} {a:?} {b:?}");
        }
    }
}
