//! The bench in the address: `#remount=1&rings-a=50/34&…`, readable, versioned, only what differs from the demo.

use crate::bench::{Bench, LONGEST_TEXT};
use crate::field::{Field, Group};

/// Name and number of the format. Raised when a field's starting value or meaning changes.
const MARK: (&str, &str) = ("remount", "1");
/// Longest link that is read at all.
const LONGEST_LINK: usize = 20_000;

/// A bench read from a link, and what in the link could not be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Opened {
    /// The bench: the demo, overwritten by every part of the link that was understood.
    pub bench: Bench,
    /// One plain sentence for each part that was not.
    pub complaints: Vec<String>,
}

/// Writes the bench as the part of an address behind `#`.
#[must_use]
pub fn write(bench: &Bench) -> String {
    let mut link = format!("{}={}", MARK.0, MARK.1);
    for &field in Field::ALL {
        let spec = field.spec();
        let always = matches!(spec.group, Group::SetupA | Group::SetupB);
        if always || bench.text(field) != spec.start {
            link.push('&');
            link.push_str(spec.key);
            link.push('=');
            escape(bench.text(field), &mut link);
        }
    }
    link
}

/// Reads the part of an address behind `#`; an empty one is the demo.
#[must_use]
pub fn read(link: &str) -> Opened {
    let mut opened = Opened { bench: Bench::default(), complaints: Vec::new() };
    let link = link.strip_prefix('#').unwrap_or(link);
    if link.len() > LONGEST_LINK {
        opened.complaints.push("The link is far too long to be one of ours, so it was not read.".to_owned());
        return opened;
    }
    let mut marked = link.is_empty();
    for (key, text) in form_urlencoded::parse(link.as_bytes()) {
        if key == MARK.0 {
            marked = true;
            if text != MARK.1 {
                opened.complaints.push(format!(
                    "The link is of version “{}”, this page knows version {}; what it could read was kept.",
                    shorten(&text),
                    MARK.1
                ));
            }
        } else if let Some(field) = Field::by_key(&key) {
            if text.chars().count() > LONGEST_TEXT {
                opened
                    .complaints
                    .push(format!("“{}” in the link was too long and was cut.", field.spec().label));
            }
            opened.bench.write(field, &text);
        } else {
            opened
                .complaints
                .push(format!("“{}” in the link is not known here and was left out.", shorten(&key)));
        }
    }
    if !marked {
        opened.complaints.push("The link has no version mark, so some of it may have been lost.".to_owned());
    }
    opened.complaints.truncate(8);
    opened
}

/// Form encoding, but with the characters that set-ups are written in left readable.
fn escape(text: &str, link: &mut String) {
    for part in form_urlencoded::byte_serialize(text.as_bytes()) {
        match part {
            "%2F" => link.push('/'),
            "%2C" => link.push(','),
            "%3A" => link.push(':'),
            other => link.push_str(other),
        }
    }
}

fn shorten(text: &str) -> String {
    text.chars().take(24).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_demo_is_short_and_readable() {
        let link = write(&Bench::default());
        assert!(link.starts_with("remount=1&rings-a=50/34&cassette-a=11-12-"), "{link}");
        assert!(link.len() < 200, "{link}");
    }

    #[test]
    fn a_mangled_part_is_named_and_the_rest_kept() {
        let opened = read("#remount=9&rings-a=42&colour=red&<script>=1");
        assert_eq!(opened.bench.text(Field::RingsA), "42");
        assert_eq!(opened.complaints.len(), 3, "{:?}", opened.complaints);
    }

    proptest! {
        #[test]
        fn a_link_round_trips(texts in prop::collection::vec("\\PC{0,60}", Field::ALL.len())) {
            let mut bench = Bench::default();
            for (field, text) in Field::ALL.iter().zip(&texts) {
                bench.write(*field, text);
            }
            let opened = read(&write(&bench));
            prop_assert_eq!(opened.bench, bench);
            prop_assert!(opened.complaints.is_empty());
        }

        #[test]
        fn no_link_makes_the_reader_panic(link in "\\PC{0,400}") {
            let _ = read(&link);
        }
    }
}
