//! The page's words, for tests that read them.

use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::page::sections::fragments;

/// The words of one fragment of the page, when all that stands on the bench is the rider's.
pub(crate) fn said(fragment: &str, edits: &[(Field, &str)]) -> String {
    let mut bench = Bench::default();
    Field::ALL.iter().for_each(|&field| bench.claim(field));
    words(&shown(fragment, bench, edits))
}

/// One fragment of the page, after `edits` of a bench.
pub(crate) fn shown(fragment: &str, mut bench: Bench, edits: &[(Field, &str)]) -> String {
    for (field, text) in edits {
        bench.write(*field, text);
    }
    let read = Scenario::read(&bench, &Scenario::default());
    assert_eq!(read.complaints, []);
    let fragments = in_full(fragments(&Report::of(&read.scenario), &[], &[], &bench, "r=3"));
    let found = fragments.into_iter().find(|(id, _)| id == fragment);
    found.map(|(_, html)| html).unwrap_or_default()
}

/// The fragments, every answer followed by what is behind it.
pub(crate) fn in_full(mut fragments: Vec<(String, String)>) -> Vec<(String, String)> {
    let why: Vec<(String, String)> = fragments
        .iter()
        .filter_map(|(id, html)| Some((format!("{}-answer", id.strip_suffix("-why")?), html.clone())))
        .collect();
    for (answer, why) in why {
        fragments.iter_mut().filter(|(id, _)| *id == answer).for_each(|(_, html)| html.push_str(&why));
    }
    fragments
}

/// A fragment without its tags.
pub(crate) fn words(html: &str) -> String {
    let mut words = String::new();
    let mut in_tag = false;
    for letter in html.chars() {
        match letter {
            '<' => in_tag = true,
            '>' => in_tag = false,
            _ if !in_tag => words.push(if letter == '\u{a0}' { ' ' } else { letter }),
            _ => {}
        }
    }
    words
}

/// A question's row of decisions on a bench, as text.
pub(crate) fn decided(question: &str, link: &str) -> String {
    let mut desk = explorer::page::desk::Desk::default();
    let id = format!("decide-{question}");
    let row = desk.open(link).html.into_iter().find(|(row, _)| *row == id);
    words(&row.map(|(_, html)| html).unwrap_or_default())
}
