//! How wide text comes out before anything is drawn.

/// Type size of all labels but a few larger ones, CSS pixels. Nothing is set smaller: common practice for text on screens.
pub const SMALLEST: f64 = 12.0;

/// What the widest of usual system faces takes above Arial: DejaVu Sans, by the published advance widths of both.
const WIDER: f64 = 1.13;

/// What bold type takes above plain; estimate, from the same letters in Arial and Arial Bold.
const BOLD: f64 = 1.07;

/// Width of text set in `size`, CSS pixels: the advance widths of Arial by groups of letters, and what wider faces take.
#[must_use]
pub fn width(text: &str, size: f64, bold: bool) -> f64 {
    let ems: f64 = text.chars().map(advance).sum();
    ems * size * WIDER * if bold { BOLD } else { 1.0 }
}

/// Width of plain text in the smallest type, CSS pixels.
#[must_use]
pub(crate) fn plain_width(text: &str) -> f64 {
    width(text, SMALLEST, false)
}

/// Text broken between words into lines of at most that width in the smallest type, CSS pixels; a longer word has a line of its own.
#[must_use]
pub(crate) fn lines(text: &str, room: f64) -> Vec<String> {
    set_lines(text, room, SMALLEST, false)
}

/// The same in type of another size, CSS pixels.
pub(crate) fn set_lines(text: &str, room: f64, size: f64, bold: bool) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ') {
        match lines.last_mut().filter(|line| width(&format!("{line} {word}"), size, bold) <= room) {
            Some(line) => {
                line.push(' ');
                line.push_str(word);
            }
            None => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Text broken anywhere into lines of at most that width in the smallest type, CSS pixels, such as an address.
#[must_use]
pub(crate) fn broken(text: &str, room: f64) -> Vec<String> {
    let mut lines = vec![String::new()];
    for letter in text.chars() {
        let last = lines.len() - 1;
        if plain_width(&format!("{}{letter}", lines[last])) > room {
            lines.push(letter.into());
        } else {
            lines[last].push(letter);
        }
    }
    lines
}

/// Advance width in ems.
const fn advance(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | '\'' | '’' | '|' => 0.23,
        ' ' | '\u{a0}' | '.' | ',' | ':' | ';' | '!' | 'I' | 'f' | 't' | '/' | '·' => 0.28,
        'r' | '(' | ')' | '-' | '“' | '”' | '°' => 0.35,
        'c' | 'k' | 's' | 'v' | 'x' | 'y' | 'z' | 'J' => 0.5,
        'w' | 'A'..='H' | 'K'..='L' | 'N'..='Z' => 0.72,
        'm' | 'M' => 0.83,
        '−' | '+' | '×' => 0.7,
        '%' => 0.89,
        '←'..='↓' | '◆' | '●' | '—' | '✓' | '✗' => 1.0,
        _ => 0.56,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Widths of whole words in Arial at 1000 units to the em, from its published metrics.
    #[test]
    fn words_are_no_narrower_than_in_arial() {
        for (word, units) in [("walking", 3334.0), ("50×34", 2808.0), ("behind the best", 6838.0)] {
            let wide = width(word, 1000.0, false);
            assert!(wide >= units && wide < 1.25 * units, "{word}: {wide} against {units}");
        }
    }
}
