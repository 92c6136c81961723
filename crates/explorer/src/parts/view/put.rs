//! Lists of usual parts to put into the box.

use crate::layout::words::picks::LAST;
use crate::parts::section::BoxSection;
use crate::parts::words::body as words;
use crate::parts::words::named::rear;
use gear_math::parts::PartsBox;
use gear_math::{Cassette, Chainset};
use maud::{Markup, html};

/// Fewer sprockets than that are not listed but for A's.
const FEWEST: usize = 8;

/// Every list; the cassettes begin with those of as many sprockets as A has.
pub(crate) fn lists(section: &BoxSection) -> Markup {
    html! {
        (list(words::RINGS, &rings())) (list(words::CASSETTES, &cassettes(section.of_a))) (list(words::DERAILLEURS, &derailleurs()))
    }
}

/// A list of parts and the button that puts one into the box behind the word that heads its kind there.
fn list([label, head]: [&str; 2], parts: &[String]) -> Markup {
    let id = format!("box-put-{head}");
    html! {
        p {
            label for=(id) { (label) }
            " "
            select id=(id) data-last=(LAST) { @for part in parts { option value=(part) { (part) } } }
            " "
            button type="button" data-puts=(id) data-head=(head) { (words::PUT_IN) }
        }
    }
}

fn rings() -> Vec<String> {
    Chainset::common().map(|it| it.to_string()).collect()
}

fn cassettes(of_a: usize) -> Vec<String> {
    let others = (FEWEST..=Cassette::MOST_SPROCKETS).rev().filter(|count| *count != of_a);
    let of = |count: usize| Cassette::common().filter(move |it| it.sprockets().len() == count);
    std::iter::once(of_a).chain(others).flat_map(of).filter_map(|it| it.everyday_name()).collect()
}

/// As capacity and largest sprocket.
fn derailleurs() -> Vec<String> {
    PartsBox::default().usual_beside(None).derailleurs.iter().map(rear).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cassettes_begin_with_those_of_a() {
        for count in [8, 10, 12] {
            assert!(cassettes(count)[0].ends_with(&format!(" {count}s")), "{:?}", &cassettes(count)[..2]);
        }
    }
}
