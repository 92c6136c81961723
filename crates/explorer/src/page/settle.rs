//! What to find out next: the values that would settle an open decision, the most decisive first.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::page::report::Report;
use crate::page::words::settle as words;
use crate::side::Side;
use crate::tyre::report::TyreReport;
use gear_math::cage::DerailleurFigure;
use gear_math::chain::{CageDoubt, CageOutcome, ChainMeasure};
use maud::{Markup, html};

/// So many are told at once.
const TOLD: usize = 2;

/// A list of links to fields, each with what it decides.
pub(crate) fn settle(report: &Report) -> Markup {
    let mut told: Vec<(Field, String)> = Vec::new();
    let wanted = cages(report).chain(tyres(report)).chain(riders(report));
    for (field, what) in wanted {
        if !told.iter().any(|(known, _)| *known == field) {
            told.push((field, what));
        }
    }
    html! {
        @if !told.is_empty() {
            p { b { (words::TITLE) } }
            ul { @for (field, what) in told.iter().take(TOLD) { li { (words::link(*field, what)) } } }
        }
    }
}

fn cages(report: &Report) -> impl Iterator<Item = (Field, String)> {
    Side::BOTH.into_iter().filter_map(|side| {
        let doubt = match &report.rings.setup(side).cage.outcome {
            CageOutcome::NotKnown(doubt) | CageOutcome::OtherChain { doubt: Some(doubt), .. } => doubt,
            _ => return None,
        };
        let field = report.owners.standing_for(Some(side), deciding(doubt));
        Some((field, words::cage(side)))
    })
}

fn deciding(doubt: &CageDoubt) -> Field {
    match doubt {
        CageDoubt::CageLength(_) => Field::Capacity,
        CageDoubt::Figure(figure) => match figure {
            DerailleurFigure::TotalCapacity => Field::Capacity,
            DerailleurFigure::LargestSprocket => Field::LargestSprocket,
            DerailleurFigure::SmallestSprocket => Field::SmallestSprocket,
            DerailleurFigure::RingDifference => Field::RingDifference,
        },
        CageDoubt::Measures(open) => open.first().map_or(Field::PulleyCentres, |&measure| asked(measure)),
        CageDoubt::Disagree { .. } => Field::PulleyCentres,
        CageDoubt::Path(_) => Field::Chainstay,
    }
}

const fn asked(measure: ChainMeasure) -> Field {
    match measure {
        ChainMeasure::Chainstay => Field::Chainstay,
        ChainMeasure::BottomBracketDrop => Field::BottomBracketDrop,
        ChainMeasure::PulleyCentres => Field::PulleyCentres,
        ChainMeasure::PulleyTeeth => Field::GuideTeeth,
        ChainMeasure::PulleyGap => Field::PulleyGap,
        ChainMeasure::GuideAngle => Field::GuideAngle,
        ChainMeasure::RearStop => Field::RearStop,
        ChainMeasure::ForeStop => Field::ForeStop,
    }
}

fn tyres(report: &Report) -> impl Iterator<Item = (Field, String)> {
    let asks = |tyre: &TyreReport| {
        let fit = tyre.fit.as_ref().ok();
        fit.and_then(|fit| fit.gauge).is_some_and(crate::tyre::report::Gauge::asks_for_a_calliper)
    };
    let of_b = report.tyre_of_b.as_ref().is_some_and(|of_b| asks(of_b));
    let sides = [(asks(&report.tyre), Side::A), (of_b, Side::B)];
    let field = |side| report.owners.standing_for(Some(side), Field::TyreWidthMeasured);
    sides.into_iter().filter(|(asks, _)| *asks).map(move |(_, side)| (field(side), words::tyre()))
}

/// What the lap turns on most and only the rider can know.
fn riders(report: &Report) -> impl Iterator<Item = (Field, String)> {
    const DECISIVE: [Field; 4] = [Field::Power, Field::BodyMass, Field::Course, Field::SaddleHeight];
    let lacking = |field: &Field| report.owners.get(*field) >= Owner::Demo;
    DECISIVE.into_iter().filter(lacking).map(|field| (field, words::rider(field)))
}
