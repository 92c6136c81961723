//! What of the section never changes: the box, its buttons and room for what is found.

use crate::layout::figure::figure;
use crate::layout::folded::Folded;
use crate::parts::picture::RIDDEN;
use crate::parts::words::body as words;
use crate::parts::words::named::rear;
use gear_math::parts::PartsBox;
use gear_math::{Cassette, Chainset};
use maud::{Markup, html};

/// What is always in sight.
pub(crate) fn body() -> Markup {
    html! {
        div data-form="box" class="room" {}
        div class="seek" {
            progress id="box-bar" aria-label=(words::TITLE) value="0" hidden {}
            span id="box-left" class="quiet" {}
        }
        p.quiet { (words::MECHANIC) }
        (figure(&RIDDEN))
    }
}

/// What begins and ends the riding.
pub(crate) fn acts() -> Markup {
    html! {
        button type="button" id="box-start" { (words::START) }
        button type="button" id="box-stop" tabindex="-1" hidden { (words::STOP) }
    }
}

/// What stands in the folds that hold more than text.
pub(crate) fn panel(fold: Folded) -> Option<Markup> {
    Some(match fold {
        Folded::Numbers => html! {
            div id="box-table" {}
            p { button type="button" id="save-box" { (words::SAVE) } }
        },
        Folded::Parts => html! {
            div id="box-put" class="files" { (put_in(words::RINGS, &rings())) (put_in(words::CASSETTES, &cassettes())) (put_in(words::DERAILLEURS, &derailleurs())) }
        },
        _ => return None,
    })
}

/// A list of parts and the button that puts one into the box, each with the word that heads its kind there.
fn put_in([label, head]: [&str; 2], parts: &[String]) -> Markup {
    let id = format!("box-put-{head}");
    html! {
        p {
            label for=(id) { (label) }
            " "
            select id=(id) { @for part in parts { option value={ (head) " " (part) } { (part) } } }
            " "
            button type="button" data-puts=(id) { (words::PUT_IN) }
        }
    }
}

fn rings() -> Vec<String> {
    Chainset::common().map(|it| it.to_string()).collect()
}

fn cassettes() -> Vec<String> {
    let mut all: Vec<Cassette> = Cassette::common().filter(|it| it.sprockets().len() > 7).collect();
    all.sort_by_key(|it| std::cmp::Reverse(it.sprockets().len()));
    all.iter().filter_map(Cassette::everyday_name).collect()
}

/// As capacity and largest sprocket.
fn derailleurs() -> Vec<String> {
    PartsBox::default().usual_beside(None).derailleurs.iter().map(rear).collect()
}
