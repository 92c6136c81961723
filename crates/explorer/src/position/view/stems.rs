//! Stems that get there, or the nearest one.

use crate::layout::head::Head;
use crate::layout::pieces::plain_table;
use crate::number::signed;
use crate::position::report::PositionReport;
use crate::position::words::names::{angle, cautions, stem_length};
use crate::position::words::stems as words;
use crate::units::{length, lengths, whole_length as whole};
use gear_math::StemSearch;
use gear_math::position::StemFit;
use maud::{Markup, html};

/// Stems that are listed; a frame that fits well has dozens.
const STEMS_LISTED: usize = 12;

/// The table of stems, and what is missing where none fits.
pub(crate) fn stems(position: &PositionReport) -> Markup {
    let search = &position.search;
    let (shown, more): (&[StemFit], usize) = match search {
        StemSearch::Found(fits) => {
            (&fits[..fits.len().min(STEMS_LISTED)], fits.len().saturating_sub(STEMS_LISTED))
        }
        StemSearch::NoneFits(shortfall) => (std::slice::from_ref(&shortfall.nearest), 0),
    };
    let remark = words::remark(&position.inputs.limits, more);
    let rows: Vec<Vec<String>> = shown.iter().map(row).collect();
    let mut heads = words::HEADS.map(Head::Figures).to_vec();
    heads.push(Head::Words(words::REMARK));
    html! {
        (plain_table(words::title(search), &remark, &heads, &rows))
        @if let StemSearch::NoneFits(shortfall) = search {
            div.prose { p { (words::exact(shortfall)) } }
        }
    }
}

fn row(fit: &StemFit) -> Vec<String> {
    let (setup, unit) = (&fit.setup, lengths());
    let off = |mm| signed(unit.value(mm), unit.decimals(0));
    vec![
        stem_length(setup.length),
        angle(setup.angle.degrees()),
        length(setup.spacers.mm()),
        whole(fit.miss_mm),
        off(fit.dx_mm),
        off(fit.dy_mm),
        cautions(&setup.cautions()),
    ]
}
