//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::chain::pictures::{capacity, drivetrain, wrap};
use crate::chain::words::body as words;
use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use maud::{Markup, html};

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        (figure(&drivetrain::DRIVETRAIN))
    }
}

/// What stands in the folds that hold more than text.
pub(crate) fn panel(fold: Folded) -> Option<Markup> {
    Some(match fold {
        Folded::Settings => html! {
            div data-form="chain" class="fields" {}
        },
        Folded::Pictures => html! {
            (figure(&capacity::CAPACITY))
            (figure(&wrap::WRAP))
        },
        Folded::Numbers => html! {
            div data-form="gears-shown" class="steppers" {}
            div id="chain-bench" class="pair" {}
            button type="button" data-prints="chain-bench" { (words::PRINT) }
            div id="chain-remedies" {}
            div id="chain-lengths" {}
            div id="cage-tables" {}
            h3 { (words::SUM) }
            div id="cage-loose" {}
        },
        _ => return None,
    })
}
