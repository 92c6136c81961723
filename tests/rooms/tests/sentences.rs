//! What the page says to its readers stands in the `words` of its rooms, where another language would find it.

use room_rules::literals::{Literal, is_english, literals};
use std::fs;
use std::path::{Path, PathBuf};

fn top() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Code that comes before a text which no reader of the page sees.
const FOR_PROGRAMMERS: [&str; 6] = [".expect(", "JsError::new(", "assert!(", "reason = ", "class=", "#["];

/// Texts that read like English and are none of its sentences: in which file, how they begin, and what they are.
const NO_SENTENCES: [(&str, &str, &str); 12] = [
    (
        "bench/field.rs",
        "150; 0; firm grass",
        "the sketch that the demo starts with, in the notation of sketches",
    ),
    ("bench/sketch.rs", "foot ", "notation of sketches"),
    ("bench/sketch.rs", "corner ", "notation of sketches"),
    ("bench/sketch.rs", "heading ", "notation of sketches"),
    ("chain/inputs.rs", "place of the gear", "the name of a limit, which only errors for programmers give"),
    ("drawing/plate.rs", "system-ui", "a family of fonts"),
    ("drawing/spot.rs", "", "names of keys, as browsers give them"),
    ("page/entry.rs", "\n/** What changed on the page. */", "types for the scripts"),
    ("layout/form.rs", "field ", "classes of a field"),
    ("page/prerendered.rs", "input id=", "the beginning of a field"),
    ("page/skeleton.rs", "Remount", "the page's name"),
    ("ride/inputs.rs", "within its limits", "what an expectation says"),
];

/// All files with this ending in a folder and the folders in it, by their paths from there.
fn files(folder: &Path, ending: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(next) = folders.pop() {
        for path in fs::read_dir(next).into_iter().flatten().flatten().map(|entry| entry.path()) {
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|it| it == ending) {
                let name = path.strip_prefix(folder).unwrap_or(&path).to_string_lossy().replace('\\', "/");
                found.push((name, fs::read_to_string(&path).unwrap_or_default()));
            }
        }
    }
    found
}

fn is_words(file: &str) -> bool {
    file.starts_with("words/") || file.contains("/words/")
}

/// The JavaScript module speaks to programmers, in English as its names are.
fn is_api(file: &str) -> bool {
    file.split(['/', '.']).any(|part| part == "api")
}

fn is_sentence(file: &str, literal: &Literal) -> bool {
    let known = NO_SENTENCES.iter().any(|(at, start, _)| *at == file && literal.text.starts_with(start));
    let before = &literal.before;
    is_english(&literal.text) && !known && !FOR_PROGRAMMERS.iter().any(|sign| before.contains(sign))
}

#[test]
fn sentences_stand_in_words() {
    let mut in_words = 0;
    for (file, text) in files(&top().join("crates/explorer/src"), "rs") {
        let of_tests = text.contains("#[test]") && !text.contains("#[cfg(test)]");
        for literal in literals(&text).iter().filter(|it| !of_tests && is_sentence(&file, it)) {
            in_words += usize::from(is_words(&file));
            assert!(is_words(&file) || is_api(&file), "{file}:{}: {:?}", literal.line, literal.text);
        }
    }
    assert!(in_words > 1000, "only {in_words} sentences were read");
}

#[test]
fn no_exception_is_idle() {
    let files = files(&top().join("crates/explorer/src"), "rs");
    for (at, start, why) in NO_SENTENCES {
        let text =
            files.iter().find(|(file, _)| file == at).map(|(_, text)| literals(text)).unwrap_or_default();
        let is_used = text.iter().any(|it| it.text.starts_with(start) && is_english(&it.text));
        assert!(is_used, "{at}: {why} is no longer there");
    }
}

/// gear-math's errors have English words; who shows them asks the words of a room.
#[test]
fn errors_are_put_into_words_by_words() {
    for (file, text) in files(&top().join("crates/explorer/src"), "rs") {
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        for line in
            code.lines().filter(|line| ["error.to_string()", "{error}"].iter().any(|it| line.contains(it)))
        {
            assert!(is_words(&file) || is_api(&file) || line.contains("JsError::new("), "{file}: {line}");
        }
    }
}

/// Whether a text between quotes of a script is prose: three words or more, and nothing but words and stops.
fn is_prose(text: &str) -> bool {
    let is_plain = |letter: char| letter.is_alphabetic() || " ,.:;!?’“”…".contains(letter);
    text.split(' ').filter(|word| word.len() > 1).count() > 2 && text.chars().all(is_plain)
}

/// What scripts say comes from the engine or stands in the page already; the engine's own script speaks before it starts.
#[test]
fn scripts_say_nothing_by_themselves() {
    let mut read = 0;
    for (file, text) in files(&top().join("www"), "js") {
        let code =
            text.lines().filter(|line| !["//", "*", "/*"].iter().any(|it| line.trim_start().starts_with(it)));
        for (line, part) in
            code.flat_map(|line| line.split(['\'', '"', '`']).skip(1).step_by(2).map(move |it| (line, it)))
        {
            assert!(!is_prose(part) || file == "engine.js", "{file}: {line}");
            read += 1;
        }
    }
    assert!(read > 200, "only {read} texts were read");
}
