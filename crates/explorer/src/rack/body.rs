//! What of the rack never changes.

use crate::rack::file::RackFile;
use crate::rack::rack::Rack;
use crate::rack::words::body as words;
use crate::side::Side;
use maud::{Markup, html};

/// The fold with everything about the rack.
#[must_use]
pub fn body() -> Markup {
    html! {
        details id="rack" {
            summary { (words::RACK) }
            p.quiet { (words::ABOUT) }
            @for side in Side::BOTH { (keep(side)) }
            div id="rack-says" role="status" {}
            div id="rack-list" {}
            p.rack-file {
                button type="button" id="save-rack" { (words::SAVE) }
                button type="button" id="save-all" { (words::SAVE_ALL) }
                label for="rack-file" { (words::OPEN) }
                input type="file" id="rack-file" accept=".json" data-largest=(RackFile::LARGEST_BYTES);
            }
        }
    }
}

fn keep(side: Side) -> Markup {
    let (id, act) = match side {
        Side::A => ("rack-name-a", "keep-a"),
        Side::B => ("rack-name-b", "keep-b"),
    };
    html! {
        p.rack-name {
            label for=(id) { (words::keep_as(side)) }
            input id=(id) type="text" maxlength=(Rack::LONGEST_NAME) autocomplete="off";
            button type="button" data-rack=(act) data-typed=(id) aria-label=(words::keep(side)) { (words::KEEP) }
        }
    }
}
