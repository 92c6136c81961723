//! Reads who looks at whom from the `use` lines and paths of a crate, for the tests that keep its rooms apart.

pub mod literals;

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
        } else if name != "mod" && name != "lib" {
            files.insert(module, named(&fs::read_to_string(&path).unwrap_or_default()));
        }
    }
}

/// The paths within its crate that the code of a file names, tests left aside.
#[must_use]
pub fn named(text: &str) -> BTreeSet<String> {
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    let code = code.lines().filter(|line| !line.trim_start().starts_with("//"));
    code.flat_map(|line| {
        line.replace("$crate::", "")
            .replace("(in crate::", "")
            .split("crate::")
            .skip(1)
            .map(path)
            .collect::<Vec<_>>()
    })
    .collect()
}

/// The path at the start of `text`, without what is picked from it in braces.
fn path(text: &str) -> String {
    let end = text.find(|letter: char| !letter.is_alphanumeric() && letter != '_' && letter != ':');
    text[..end.unwrap_or(text.len())].trim_end_matches(':').to_owned()
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

/// The file that a path leads into, or the room it names when it takes what the room shows to others.
#[must_use]
pub fn target<'a>(files: &'a Files, path: &'a str) -> (&'a str, Option<&'a str>) {
    let leads_into = |file: &&String| format!("{path}::").starts_with(&format!("{file}::"));
    let file = files.keys().filter(leads_into).max_by_key(|file| file.len());
    match file {
        Some(file) => (room(file), Some(file)),
        None => (path.split("::").next().unwrap_or_default(), None),
    }
}

/// What can be reached only by going round: files of which each uses another of them, and those that use them.
#[must_use]
pub fn circles(mut uses: BTreeMap<&str, BTreeSet<&str>>) -> Vec<String> {
    loop {
        let left: Vec<&str> = uses.keys().copied().collect();
        uses.retain(|_, used| used.iter().any(|it| left.contains(it)));
        if uses.len() == left.len() {
            return left.into_iter().map(str::to_owned).collect();
        }
    }
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
        assert_eq!(circles(uses.into()), ["a", "b", "c"]);
    }

    #[test]
    fn paths_are_read_from_code_alone() {
        let text = "use crate::cage::{A, B};\n// crate::no\nlet x = crate::solve::halved(1);\n#[cfg(test)] crate::no";
        assert_eq!(named(text).into_iter().collect::<Vec<_>>(), ["cage", "solve::halved"]);
    }
}
