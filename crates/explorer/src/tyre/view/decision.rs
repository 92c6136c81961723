//! “Which tyre, how hard?” on the board.

use crate::layout::decision::{Decision, Standing, Verdict};
use crate::side::Side;
use crate::tyre::report::{Gauge, TyreFit, TyreReport};
use crate::tyre::section::TyreSection;
use crate::tyre::words::decision as words;
use gear_math::wheel::{CalliperVerdict, WidthVerdict};

/// How wide each tyre comes out, what the race's gauge says to that, and the pressures to start from.
pub(crate) fn decision(report: &TyreSection) -> Decision {
    let tyre = |side| match side {
        Side::B => report.of_b.as_ref().unwrap_or(&report.tyre),
        Side::A => &report.tyre,
    };
    let difference = if report.of_b.is_none() { words::ALIKE.to_owned() } else { String::new() };
    Decision::of(|side| verdict(tyre(side)), difference)
}

fn verdict(tyre: &TyreReport) -> Verdict {
    let said = |standing, words: String, detail: String| Verdict { standing, words, detail };
    match &tyre.fit {
        Err(_) => said(Standing::Stop, words::NO_FIT.to_owned(), String::new()),
        Ok(_) if tyre.danger().is_some() => said(Standing::Stop, words::DANGER.to_owned(), String::new()),
        Ok(fit) => match &fit.advice.start {
            Err(_) => said(Standing::Stop, words::NO_PRESSURE.to_owned(), words::width(fit)),
            Ok(start) => {
                said(standing(tyre, fit), words::width(fit), words::start(&start.front, &start.rear))
            }
        },
    }
}

fn standing(tyre: &TyreReport, fit: &TyreFit) -> Standing {
    match fit.gauge {
        Some(Gauge::Expected(WidthVerdict::LikelyOver) | Gauge::Measured(CalliperVerdict::Over)) => {
            Standing::Stop
        }
        Some(gauge) if gauge.asks_for_a_calliper() => Standing::Care,
        _ if tyre.first_of_all().is_some() => Standing::Care,
        Some(_) => Standing::Well,
        None => Standing::Told,
    }
}
