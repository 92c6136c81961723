//! Everything under the picture.

use crate::position::report::PositionReport;
use crate::position::section::PositionSection;
use crate::position::view::measures::measures;
use crate::position::view::stems::stems;
use crate::position::words::names::{caution, source};
use crate::position::words::tables as words;
use crate::side::Side;
use gear_math::position::ToeClearance;
use maud::{Markup, html};

/// Measures, stems, room for the toes, cautions and practice.
#[must_use]
pub(crate) fn tables(report: &PositionSection) -> Markup {
    let position = &report.position;
    html! {
        (measures(position))
        @if position.knows_stem() { (stems(position)) }
        @if let Some(toes) = position.toes {
            p.prose {
                (toe_room(position.toes_of_b.map(|_| Side::A), &toes)) " "
                @if let Some(of_b) = position.toes_of_b { (toe_room(Some(Side::B), &of_b)) " " }
                (words::bracket(position.bracket_drop))
            }
        }
        (cautions(position))
        (practice())
    }
}

fn toe_room(side: Option<Side>, toes: &ToeClearance) -> Markup {
    html! {
        (words::toe_room(side, toes))
        @if let Some(it) = toes.verdict.caution() { " " span.care { (caution(it)) } }
    }
}

fn cautions(position: &PositionReport) -> Markup {
    html! {
        div.prose {
            p { b { (words::BEFORE_RIDING) } }
            ul { @for &it in &position.cautions { li { (caution(it)) " " small.quiet { "(" (source(it)) ")" } } } }
        }
    }
}

fn practice() -> Markup {
    html! {
        div.prose {
            p { (words::practice_title()) }
            ul { @for line in words::practice() { li { (line) } } }
        }
    }
}
