//! Reading typed lists of tooth counts.

/// An entry that is not made of digits, by its place in the list (1 for the first).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct NotACount {
    pub(super) place: usize,
}

/// The tooth counts in `text`. Hyphens, dashes, slashes, commas, semicolons, white space and points separate them, in
/// any number; `46T` and `46 teeth` are counts too. A count too large to store comes out as the largest that can be, which no limit allows.
pub(super) fn tooth_counts(text: &str) -> impl Iterator<Item = Result<u16, NotACount>> + '_ {
    entries(text)
        .filter(|entry| *entry != "teeth")
        .enumerate()
        .map(|(index, entry)| count(entry).ok_or(NotACount { place: index + 1 }))
}

/// What stands between separators. A point is one as well where it stands for the dash that a phone's number keyboard lacks.
pub(super) fn entries(text: &str) -> impl Iterator<Item = &str> {
    let parts_by_point = !has_decimals(text);
    text.split(move |c| is_separator(c) || parts_by_point && c == '.').filter(|entry| !entry.is_empty())
}

fn is_separator(c: char) -> bool {
    c.is_whitespace() || matches!(c, '-' | '‐' | '‑' | '–' | '—' | '/' | ',' | ';')
}

/// Whether a point stands in a number rather than, as on a phone's number keyboard, for a dash: what follows a dash has two digits.
fn has_decimals(text: &str) -> bool {
    text.split('.').skip(1).any(|after| after.bytes().take_while(u8::is_ascii_digit).count() < 2)
}

fn count(entry: &str) -> Option<u16> {
    let entry = entry.strip_suffix(['t', 'T']).unwrap_or(entry);
    let is_count = !entry.is_empty() && entry.bytes().all(|b| b.is_ascii_digit());
    is_count.then(|| entry.parse().unwrap_or(u16::MAX))
}
