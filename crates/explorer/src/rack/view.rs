//! What of the rack changes: its bikes, and what was last done about them.

use crate::rack::rack::{KeptBike, Rack};
use crate::rack::room::RackRoom;
use crate::rack::summary::gears;
use crate::rack::words::{said as words, view};
use maud::{Markup, html};

/// Its fragments, as pairs of element id and content.
#[must_use]
pub fn fragments(room: &RackRoom) -> [(String, String); 2] {
    [("rack-says", says(room)), ("rack-list", list(room))]
        .map(|(id, html)| (id.to_owned(), html.into_string()))
}

fn says(room: &RackRoom) -> Markup {
    let said = words::said(&room.said);
    html! {
        @if !said.is_empty() {
            p {
                (said)
                @if room.forgotten.is_some() { " " button type="button" data-rack="undo" data-next { (view::UNDO) } }
            }
        }
        @if !room.unread.is_empty() { p { (words::unread(&room.unread)) } }
    }
}

fn list(room: &RackRoom) -> Markup {
    let bikes = room.rack.bikes();
    html! {
        @if !bikes.is_empty() {
            ul { @for kept in bikes { li { (row(room, kept)) } } }
        }
    }
}

/// The buttons that put a bike on A and on B.
pub(crate) fn onto_bench(name: &str) -> Markup {
    html! {
        button type="button" data-act={ "bike-a:" (name) } aria-label=(view::on_a(name)) { (view::AS_A) }
        button type="button" data-act={ "bike-b:" (name) } aria-label=(view::on_b(name)) { (view::AS_B) }
    }
}

fn row(room: &RackRoom, kept: &KeptBike) -> Markup {
    let name = &kept.name;
    let is_next = room.said.goes_on_with() == Some(name);
    html! {
        @if room.renaming.as_ref() == Some(name) {
            div.rack-name {
                label for="rack-new-name" { (view::new_name(name)) }
                input id="rack-new-name" type="text" value=(name) maxlength=(Rack::LONGEST_NAME) autocomplete="off" data-next;
                button type="button" data-rack="rename-to" data-bike=(name) data-typed="rack-new-name" { (view::RENAME) }
                button type="button" data-rack="leave" data-bike=(name) { (view::LEAVE) }
            }
        } @else {
            @let [rings, cassette] = gears(&kept.bike);
            p { strong { (name) } " " span.quiet { (view::gears(&rings, &cassette)) } }
            div.rack-acts {
                (onto_bench(name))
                @for (act, label) in [("rename", view::RENAME), ("copy", view::COPY), ("forget", view::FORGET)] {
                    button type="button" data-rack=(act) data-bike=(name) aria-label=(view::about(label, name))
                        data-next[is_next && act == "rename"] { (label) }
                }
            }
        }
    }
}
