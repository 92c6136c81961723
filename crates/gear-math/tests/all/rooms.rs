//! Who looks at whom: rooms only at rooms before them, and files of one room never in a circle.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// The rooms, each of which may use those before it. What lies in none of them is the ground, and may use no room.
const ROOMS: [&str; 11] = [
    "",
    "gears",
    "cage",
    "chain",
    "wheel",
    "rider",
    "course",
    "course::track",
    "course::lap",
    "course::search",
    "position",
];

/// Each file as a path of modules, with the paths within this crate that its code names, tests left aside.
type Files = BTreeMap<String, BTreeSet<String>>;

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

fn named(text: &str) -> BTreeSet<String> {
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

fn files() -> Files {
    let mut files = Files::new();
    read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), "", &mut files);
    files
}

fn room(file: &str) -> &str {
    file.rsplit_once("::").map_or("", |(room, _)| room)
}

/// The file that a path leads into, or the room it names when it takes what the room shows to others.
fn target<'a>(files: &'a Files, path: &'a str) -> (&'a str, Option<&'a str>) {
    let leads_into = |file: &&String| format!("{path}::").starts_with(&format!("{file}::"));
    let file = files.keys().filter(leads_into).max_by_key(|file| file.len());
    match file {
        Some(file) => (room(file), Some(file)),
        None => (path.split("::").next().unwrap_or_default(), None),
    }
}

/// What can be reached only by going round: files of which each uses another of them, and those that use them.
fn circles(mut uses: BTreeMap<&str, BTreeSet<&str>>) -> Vec<String> {
    loop {
        let left: Vec<&str> = uses.keys().copied().collect();
        uses.retain(|_, used| used.iter().any(|it| left.contains(it)));
        if uses.len() == left.len() {
            return left.into_iter().map(str::to_owned).collect();
        }
    }
}

#[test]
fn a_room_uses_only_rooms_before_it() {
    let files = files();
    let rank = |room: &str| ROOMS.iter().position(|it| *it == room).unwrap_or_else(|| panic!("room {room}?"));
    let mut between = 0;
    for (file, paths) in &files {
        for path in paths {
            let (used, named) = target(&files, path);
            assert!(rank(used) <= rank(room(file)), "{file} looks up at {path}");
            let own = file.split("::").next() == path.split("::").next();
            assert!(named.is_some() || !own, "{file} takes {path} from its own room: name the file");
            between += usize::from(used != room(file));
        }
    }
    assert!(between > 150, "only {between} uses were read");
}

#[test]
fn files_of_a_room_use_one_another_without_a_circle() {
    let files = files();
    let mut uses: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for (file, paths) in &files {
        let used = paths.iter().filter_map(|path| target(&files, path).1).filter(|used| used != file);
        uses.insert(file, used.collect());
    }
    assert!(uses.values().map(BTreeSet::len).sum::<usize>() > 200);
    assert_eq!(circles(uses), Vec::<String>::new());
}

#[test]
fn a_planted_circle_is_found() {
    let uses = [("a", vec!["b"]), ("b", vec!["c"]), ("c", vec!["a"]), ("d", vec!["e"]), ("e", vec![])];
    let uses = uses.map(|(file, used)| (file, used.into_iter().collect()));
    assert_eq!(circles(uses.into()), ["a", "b", "c"]);
    let text =
        "use crate::cage::{A, B};\n// crate::no\nlet x = crate::solve::halved(1);\n#[cfg(test)] crate::no";
    assert_eq!(named(text).into_iter().collect::<Vec<_>>(), ["cage", "solve::halved"]);
}
