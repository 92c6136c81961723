//! Reads who looks at whom from the `use` lines and paths of a crate, for the tests that keep its rooms apart.

pub mod literals;
mod paths;

pub use paths::named;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// Each file as a path of modules, with the paths within this crate that its code names, tests left aside.
pub type Files = BTreeMap<String, BTreeSet<String>>;

fn read(folder: &Path, room: &str, files: &mut Files) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        let module = if room.is_empty() { name.clone() } else { format!("{room}::{name}") };
        if path.is_dir() {
            read(&path, &module, files);
        } else if name != "lib" {
            let named = named(&module, &fs::read_to_string(&path).unwrap_or_default());
            files.insert(module, named);
        }
    }
}

/// The files of a crate, by the path of its folder from the top of the project.
#[must_use]
pub fn files(folder: &str) -> Files {
    let mut files = Files::new();
    read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(folder), "", &mut files);
    files
}

/// The room that a file lies in.
#[must_use]
pub fn room(file: &str) -> &str {
    file.rsplit_once("::").map_or("", |(room, _)| room)
}

/// The module that a file holds.
fn module(file: &str) -> &str {
    file.strip_suffix("::mod").unwrap_or(file)
}

/// The file that a path leads into, or the room it names when it takes what the room shows to others. What words show is
/// that of their language.
#[must_use]
pub fn target<'a>(files: &'a Files, path: &'a str) -> (&'a str, Option<&'a str>) {
    let in_english = format!("{path}::").replacen("words::", "words::en::", 1);
    let leads_into = |file: &&String| {
        let start = format!("{}::", module(file));
        format!("{path}::").starts_with(&start) || in_english.starts_with(&start)
    };
    let file = files.keys().filter(leads_into).max_by_key(|file| module(file).len());
    match file {
        Some(file) => (room(file), Some(file)),
        None => (path.split("::").next().unwrap_or_default(), None),
    }
}

/// The files that use themselves by way of others.
#[must_use]
pub fn circles(uses: &BTreeMap<&str, BTreeSet<&str>>) -> Vec<String> {
    let circles = uses.keys().filter(|file| reached(uses, file).contains(*file));
    circles.map(|file| (*file).to_owned()).collect()
}

/// What a file uses, and what that uses, and so on.
fn reached<'f>(uses: &BTreeMap<&'f str, BTreeSet<&'f str>>, from: &'f str) -> BTreeSet<&'f str> {
    let (mut reached, mut next) = (BTreeSet::new(), vec![from]);
    while let Some(file) = next.pop() {
        let used = uses.get(file).into_iter().flatten();
        next.extend(used.copied().filter(|it| reached.insert(*it)));
    }
    reached
}

/// Who uses whom among the files, each itself left aside.
#[must_use]
pub fn uses(files: &Files) -> BTreeMap<&str, BTreeSet<&str>> {
    let mut uses = BTreeMap::new();
    for (file, paths) in files {
        let used = paths.iter().filter_map(|path| target(files, path).1);
        uses.insert(file.as_str(), used.filter(|used| *used != file.as_str()).collect());
    }
    uses
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_planted_circle_is_found() {
        let uses = [("a", vec!["b"]), ("b", vec!["c"]), ("c", vec!["a"]), ("d", vec!["e"]), ("e", vec![])];
        let uses = uses.map(|(file, used)| (file, used.into_iter().collect()));
        assert_eq!(circles(&uses.into()), ["a", "b", "c"]);
    }

    #[test]
    fn words_are_found_behind_what_shows_them() {
        let names = ["a::mod", "a::words::mod", "a::words::en::mod", "a::words::en::b", "words::en"];
        let files: Files = names.map(|name| (name.to_owned(), BTreeSet::new())).into();
        let led = |path| target(&files, path).1;
        assert_eq!(led("a::words::b::SAID"), Some("a::words::en::b"));
        assert_eq!(led("a::words::A"), Some("a::words::en::mod"));
        assert_eq!([led("words::listed"), led("a::Type")], [Some("words::en"), Some("a::mod")]);
        assert_eq!(led("c::Type"), None);
    }
}
