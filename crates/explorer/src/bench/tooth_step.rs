//! A number within a text, a tooth up or down.

/// A text with one of its numbers changed, and where that number stands in it, in characters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stepped {
    /// The text.
    pub text: String,
    /// Where the number begins and ends.
    pub place: (usize, usize),
}

/// The number in which the place `at` lies, or the next one before it, with `by` added; none where there is none, or it would
/// not be one of 1 to 999 any more.
///
/// # Example
/// ```
/// use explorer::bench::tooth_step::step;
/// let stepped = step("50/34", 4, -1).unwrap();
/// assert_eq!((stepped.text.as_str(), stepped.place), ("50/33", (3, 5)));
/// ```
#[must_use]
pub fn step(text: &str, at: usize, by: i32) -> Option<Stepped> {
    let (from, to) = place_of(text, at)?;
    let number = text.get(from..to)?.parse::<i32>().ok()?.checked_add(by)?;
    let number = (1..=999).contains(&number).then(|| number.to_string())?;
    let place = (from, from + number.len());
    Some(Stepped { text: format!("{}{number}{}", &text[..from], &text[to..]), place })
}

/// Where the number before or after the one at `at` stands.
#[must_use]
pub fn next(text: &str, at: usize, along: i32) -> Option<(usize, usize)> {
    let all = numbers(text);
    let here = all.iter().rposition(|&(from, _)| from <= at).unwrap_or(0);
    let there = here.checked_add_signed(along.signum() as isize)?;
    all.get(there).copied()
}

fn place_of(text: &str, at: usize) -> Option<(usize, usize)> {
    let all = numbers(text);
    all.iter().rfind(|&&(from, _)| from <= at).or(all.first()).copied()
}

/// Where each number stands. Only texts of plain characters are looked at, in which a place is a place for a browser too.
fn numbers(text: &str) -> Vec<(usize, usize)> {
    if !text.is_ascii() {
        return Vec::new();
    }
    let mut all: Vec<(usize, usize)> = Vec::new();
    for (at, _) in text.bytes().enumerate().filter(|(_, byte)| byte.is_ascii_digit()) {
        match all.last_mut() {
            Some((_, to)) if *to == at => *to = at + 1,
            _ => all.push((at, at + 1)),
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_number_under_the_caret_changes() {
        assert_eq!(step("50/34", 0, 1).unwrap().text, "51/34");
        assert_eq!(step("50/34", 2, 1).unwrap().text, "51/34");
        assert_eq!(step("11-13-15", 8, 1), Some(Stepped { text: "11-13-16".into(), place: (6, 8) }));
        assert_eq!(step("9", 0, 1), Some(Stepped { text: "10".into(), place: (0, 2) }));
        assert_eq!((step("", 0, 1), step("1", 0, -1), step("no", 1, 1)), (None, None, None));
        assert_eq!(step("11–34", 0, 1), None);
    }

    #[test]
    fn numbers_are_gone_through_one_by_one() {
        assert_eq!(next("50/34", 0, 1), Some((3, 5)));
        assert_eq!(next("50/34", 3, -1), Some((0, 2)));
        assert_eq!(next("50/34", 3, 1), None);
        assert_eq!(next("50/34", 0, -1), None);
    }
}
