//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::chain::pictures::{capacity, drivetrain, wrap};
use crate::chain::words::body as words;
use crate::layout::figure::figure;
use maud::{Markup, html};

/// What stands between the answer and how it was worked out.
pub(crate) fn body() -> Markup {
    html! {
    div data-form="chain" class="fields" { }
    div class="stand" {
    (figure(&drivetrain::DRIVETRAIN))
    div data-form="gears-shown" class="steppers" { }
    div id="chain-bench" class="pair" { }
    button type="button" data-act="print-bench" { (words::PRINT) }
    }
    div id="chain-remedies" { }
    div id="chain-lengths" { }
    (figure(&capacity::CAPACITY))
    div id="cage-tables" { }
    details {
    summary { (words::SUM) }
    (figure(&wrap::WRAP))
    div id="cage-loose" { }
    }
        }
}
