//! Texts between quotes in Rust code, and whether they read as English.

/// A text between quotes.
#[derive(Debug, PartialEq, Eq)]
pub struct Literal {
    /// Its line, counted from 1.
    pub line: usize,
    /// The code before it on that line.
    pub before: String,
    /// What stands between the quotes, escapes as they are.
    pub text: String,
}

/// The texts in the code of a file, comments and tests left aside.
#[must_use]
pub fn literals(file: &str) -> Vec<Literal> {
    let code = file.split("#[cfg(test)]").next().unwrap_or_default();
    let is_comment = |line: &&str| line.trim_start().starts_with("//");
    let code: Vec<&str> = code.lines().map(|line| if is_comment(&line) { "" } else { line }).collect();
    let code = code.join("\n");
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(quote) = next_quote(&code, at) {
        let end = closing(&code, quote);
        let before = code[..quote].rsplit('\n').next().unwrap_or_default();
        let line = code[..quote].matches('\n').count() + 1;
        found.push(Literal { line, before: before.to_owned(), text: code[quote + 1..end].to_owned() });
        at = end + 1;
    }
    found
}

/// The next quote that opens a text; one between apostrophes is a letter.
fn next_quote(code: &str, from: usize) -> Option<usize> {
    let quotes = code.get(from..)?.match_indices('"').map(|(at, _)| from + at);
    quotes.into_iter().find(|&at| !code[..at].ends_with('\'') && !code[..at].ends_with("'\\"))
}

/// The quote that closes what another one opens; a text behind `r#` closes with `"#`.
fn closing(code: &str, open: usize) -> usize {
    if code[..open].ends_with("r#") {
        return code[open + 1..].find("\"#").map_or(code.len(), |at| open + 1 + at);
    }
    let mut is_escaped = false;
    for (at, letter) in code[open + 1..].char_indices() {
        match letter {
            '"' if !is_escaped => return open + 1 + at,
            _ => is_escaped = letter == '\\' && !is_escaped,
        }
    }
    code.len()
}

/// Whether a text reads as English rather than as a key or a formula: two words, a long one beside a space, or one in capital.
#[must_use]
pub fn is_english(text: &str) -> bool {
    let plain = without(&without(&text.replace("\\u{a0}", " "), '{', '}'), '<', '>');
    let words: Vec<&str> =
        plain.split(|letter: char| !letter.is_alphabetic()).filter(|word| word.len() > 1).collect();
    let is_capital = |word: &str| word.starts_with(char::is_uppercase) && word.ends_with(char::is_lowercase);
    match words.as_slice() {
        [] => false,
        [word] => (word.len() > 3 && plain.contains(' ')) || (word.len() > 2 && is_capital(word)),
        _ => plain.contains(' '),
    }
}

/// A text without what stands between two signs.
fn without(text: &str, open: char, close: char) -> String {
    let mut is_inside = false;
    let outside = |letter: &char| {
        is_inside = *letter == open || (is_inside && *letter != close);
        !is_inside && *letter != close
    };
    text.chars().filter(outside).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_found_with_what_stands_before_them() {
        let code = "let a = f('\"', \"one \\\"two\\\"\");\n// \"no\"\nlet b = r#\"x \"y\" z\"#;\n#[cfg(test)] \"no\"";
        let found = literals(code);
        let found: Vec<_> = found.iter().map(|it| (it.line, it.before.trim(), &*it.text)).collect();
        assert_eq!(found, [(1, "let a = f('\"',", "one \\\"two\\\""), (3, "let b = r#", "x \"y\" z")]);
    }

    #[test]
    fn words_are_told_from_keys_and_formulas() {
        for words in ["Type a number.", "about ", "the part before", "Gear", "{a} and {b} more", "a ring"] {
            assert!(is_english(words), "{words}");
        }
        for other in [
            "ride-ends",
            "{} ÷ {} × 27 in",
            "<b class=\"good\">",
            "km/h",
            "A",
            "{low:.0}:{high}",
            "says-{key}",
        ] {
            assert!(!is_english(other), "{other}");
        }
    }
}
