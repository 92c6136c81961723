//! Reading typed lists of tooth counts.

/// An entry that is not made of digits, by its place in the list (1 for the first).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct NotACount {
    pub(super) place: usize,
}

/// The tooth counts in `text`. Hyphens, dashes, slashes, commas, semicolons and white space separate them, in
/// any number; `46T` and `46 teeth` are counts too. A count too large to store comes out as the largest that can be, which no limit allows.
pub(super) fn tooth_counts(text: &str) -> impl Iterator<Item = Result<u16, NotACount>> + '_ {
    text.split(is_separator)
        .filter(|entry| !entry.is_empty() && *entry != "teeth")
        .enumerate()
        .map(|(index, entry)| count(entry).ok_or(NotACount { place: index + 1 }))
}

pub(super) fn is_separator(c: char) -> bool {
    c.is_whitespace() || matches!(c, '.' | '-' | '‐' | '‑' | '–' | '—' | '/' | ',' | ';')
}

fn count(entry: &str) -> Option<u16> {
    let entry = entry.strip_suffix(['t', 'T']).unwrap_or(entry);
    let is_count = !entry.is_empty() && entry.bytes().all(|b| b.is_ascii_digit());
    is_count.then(|| entry.parse().unwrap_or(u16::MAX))
}
