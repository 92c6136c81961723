//! A shorter way to write a sketch or paint, for the link.

use gear_math::Surface;

/// Grounds in the short notation, in the order of [`Surface::ALL`].
const GROUNDS: [&str; 8] = ["ta", "pg", "fg", "wg", "mu", "dm", "ps", "ls"];
/// What stands between lines and cells and what words before a number: as typed.
const TYPED: Notation =
    Notation { line: "\n", cell: "; ", words: ["foot ", "corner ", "heading "], is_short: false };
/// The same with characters that an address need not escape.
const SHORT: Notation = Notation { line: "*", cell: "_", words: ["f", "c", "h"], is_short: true };

struct Notation {
    line: &'static str,
    cell: &'static str,
    words: [&'static str; 3],
    is_short: bool,
}

impl Notation {
    /// A ground by its place in [`Surface::ALL`].
    fn ground(&self, place: usize) -> &'static str {
        if self.is_short { GROUNDS[place] } else { Surface::ALL[place].name() }
    }

    fn translate(&self, text: &str, into: &Self) -> String {
        let line = |line: &str| {
            let cells = line.split(self.cell).map(|cell| self.translate_cell(cell, into));
            cells.collect::<Vec<_>>().join(into.cell)
        };
        text.split(self.line).map(line).collect::<Vec<_>>().join(into.line)
    }

    fn translate_cell(&self, cell: &str, into: &Self) -> String {
        if let Some(place) = (0..GROUNDS.len()).find(|&place| self.ground(place) == cell) {
            return into.ground(place).to_owned();
        }
        let is_number = |rest: &&str| rest.starts_with(|first: char| first.is_ascii_digit());
        let mut words = self.words.iter().zip(into.words);
        words
            .find_map(|(word, other)| Some(format!("{other}{}", cell.strip_prefix(word).filter(is_number)?)))
            .unwrap_or_else(|| cell.to_owned())
    }
}

/// The lines in the short notation; `None` where [`unpacked`] would not give back every letter.
#[must_use]
pub(crate) fn packed(text: &str) -> Option<String> {
    let short = TYPED.translate(text, &SHORT);
    (unpacked(&short) == text).then_some(short)
}

/// What was typed.
#[must_use]
pub(crate) fn unpacked(short: &str) -> String {
    SHORT.translate(short, &TYPED)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn lines_as_the_page_writes_them_become_short() {
        let text = "120; 1.5; firm grass\n8; 0; mud; foot 2\n300; 420; corner 15; heading 90";
        assert_eq!(packed(text).as_deref(), Some("120_1.5_fg*8_0_mu_f2*300_420_c15_h90"));
    }

    #[test]
    fn what_would_not_come_back_is_left_as_it_is() {
        assert_eq!(packed("100; 0; fg"), None);
        assert_eq!(packed("100_0"), None);
    }

    proptest! {
        #[test]
        fn nothing_is_lost(text in "[0-9;. \\n_*a-z]{0,60}") {
            prop_assert!(packed(&text).is_none_or(|short| unpacked(&short) == text));
        }
    }
}
