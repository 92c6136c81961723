//! The short message is short whatever is on the bench, and says what the page says.

use crate::page::Page;
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::bench::link;
use explorer::page::message::{MOST, message};

pub(crate) fn check(bench: &Bench, page: &Page) {
    let address = format!("https://example.org/#{}", link::write(bench));
    for address in ["", &address, &"x".repeat(4000)] {
        let said = message(&page.report, address);
        assert!(said.encode_utf16().count() <= MOST, "{said}");
        assert!(!said.contains(|mark| ('\u{E000}'..'\u{F8FF}').contains(&mark)), "a mark is left in {said}");
        assert!(said.lines().count() >= 4 && said.starts_with("Workshop sheet, Set-up"), "{said}");
        assert!(said.contains("come before any number here."), "{said}");
        let ends = if address.is_empty() || address.len() > 300 { "number here." } else { address };
        assert!(said.ends_with(ends), "{said}");
        for line in said.lines().filter(|line| line.contains(" Rings: ")) {
            let (_, rings) = line.split_once(": ").unwrap();
            let fields = [Field::RingsA, Field::RingsB].map(|field| bench.text(field).replace(' ', ""));
            assert!(fields.iter().any(|field| field.contains(rings.trim())), "{line}: {fields:?}");
        }
    }
}
