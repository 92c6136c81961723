//! “1 gear”, “2 gears”, in every sentence, table and picture.

use crate::page::Page;
use explorer::page::pictures::Picture;

/// Nouns that are counted, one and many.
const NOUNS: [(&str, &str); 21] = [
    ("gear", "gears"),
    ("tooth", "teeth"),
    ("link", "links"),
    ("sprocket", "sprockets"),
    ("ring", "rings"),
    ("chainring", "chainrings"),
    ("step", "steps"),
    ("shift", "shifts"),
    ("place", "places"),
    ("pair", "pairs"),
    ("measure", "measures"),
    ("point", "points"),
    ("stretch", "stretches"),
    ("stem", "stems"),
    ("spacer", "spacers"),
    ("second", "seconds"),
    ("time", "times"),
    ("lap", "laps"),
    ("track", "tracks"),
    ("set-up", "set-ups"),
    ("case", "cases"),
];

/// What is called by its size: “a 34 sprocket”.
const SIZED: [&str; 3] = ["sprocket", "ring", "chainring"];

/// Words that may stand between a number and its noun.
const BETWEEN: [&str; 8] = ["useful", "more", "double", "other", "whole", "further", "near", "rear"];

pub(crate) fn check(page: &Page) {
    for (id, text) in page.all() {
        // A link, and a remark on handbooks of some years, are no counts.
        check_text(id, text.split("This set-up again").next().unwrap());
    }
    for picture in Picture::all() {
        check_text(&format!("{picture:?}"), &picture.label(&page.report).replace('\u{a0}', " "));
    }
}

fn check_text(id: &str, text: &str) {
    let words: Vec<&str> = text.split(' ').collect();
    for (at, word) in words.iter().enumerate() {
        let Ok(count) = word.parse::<u32>() else { continue };
        let after = words[at + 1..].iter().find(|it| !BETWEEN.contains(it)).copied().unwrap_or_default();
        let noun = after.trim_end_matches(|it: char| !it.is_alphabetic());
        let is_size = SIZED.contains(&noun);
        let wrong = NOUNS.iter().any(|(one, many)| noun == if count == 1 { *many } else { *one } && !is_size);
        assert!(!wrong, "{id}: “{}”", words[at.saturating_sub(6)..(at + 6).min(words.len())].join(" "));
    }
}
