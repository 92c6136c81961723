//! Lists of usual parts to put into the box.

use crate::layout::words::picks::LAST;
use crate::parts::section::BoxSection;
use crate::parts::words::body as words;
use crate::parts::words::named::rear;
use gear_math::parts::PartsBox;
use gear_math::{Cassette, Chainset};
use maud::{Markup, html};

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
    let mut all: Vec<Cassette> = Cassette::common().filter(|it| it.sprockets().len() > 7).collect();
    all.sort_by_key(|it| {
        let count = it.sprockets().len();
        (count.abs_diff(of_a), std::cmp::Reverse(count))
    });
    all.iter().filter_map(Cassette::everyday_name).collect()
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
