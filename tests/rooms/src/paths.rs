//! Which paths of its crate a file names.

use std::collections::{BTreeMap, BTreeSet};

/// Names that a file gives to paths of its crate.
type Known = BTreeMap<String, String>;

/// The paths within its crate that the code of a module names, tests left aside.
#[must_use]
pub fn named(module: &str, text: &str) -> BTreeSet<String> {
    let code = code(text);
    let (uses, rest) = parted(&code);
    let mut known = children(module, &rest);
    let mut named = BTreeSet::new();
    for (path, name) in uses.iter().flat_map(|tree| leaves(tree)) {
        if let Some(path) = within(module, &known, &path) {
            known.insert(name, path.clone());
            named.insert(path);
        }
    }
    let paths = rest.split(|letter: char| !is_of_path(letter)).filter(|path| path.contains("::"));
    named.extend(paths.filter_map(|path| within(module, &known, path.trim_matches(':'))));
    named
}

fn is_of_path(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '_' || letter == ':'
}

/// What is compiled into the program, without visibilities and macros' own paths, which use nothing.
fn code(text: &str) -> String {
    let lines = text.lines().take_while(|line| !line.ends_with("mod tests {"));
    let lines = lines.filter(|line| !line.trim_start().starts_with("//"));
    lines.map(|line| line.replace("$crate::", "").replace("(in crate::", "(") + "\n").collect()
}

/// What the `use` lines name, each as it stands between `use` and its semicolon, and the code without them.
fn parted(code: &str) -> (Vec<String>, String) {
    let (mut uses, mut rest) = (Vec::new(), String::new());
    let mut lines = code.lines();
    while let Some(line) = lines.next() {
        let Some(start) = used(line) else {
            rest += line;
            rest.push('\n');
            continue;
        };
        let mut tree = start.to_owned();
        while !tree.contains(';') {
            let Some(more) = lines.next() else { break };
            tree += more;
        }
        uses.push(tree.split(';').next().unwrap_or_default().to_owned());
    }
    (uses, rest)
}

fn used(line: &str) -> Option<&str> {
    let line = line.trim_start();
    let bare = line.strip_prefix("pub").map_or(line, |rest| match rest.split_once(") ") {
        Some((visibility, rest)) if visibility.starts_with('(') => rest,
        _ => rest.trim_start(),
    });
    bare.strip_prefix("use ")
}

/// The files below a module, by the names that its code calls them.
fn children(module: &str, code: &str) -> Known {
    let above = crate::module(module);
    let declared = code.lines().filter_map(|line| line.strip_suffix(';')?.rsplit_once("mod "));
    declared.map(|(_, name)| (name.to_owned(), format!("{above}::{name}"))).collect()
}

/// Every path of a tree of them, with the name that it is known by.
fn leaves(tree: &str) -> Vec<(String, String)> {
    let tree = tree.trim();
    let Some((front, inner)) = tree.split_once('{') else {
        let (path, name) = tree.split_once(" as ").unwrap_or((tree, tree));
        let path = path.trim_end_matches("::self").trim_end_matches("::*");
        let name = name.trim_end_matches("::self").rsplit("::").next().unwrap_or_default();
        return vec![(path.to_owned(), name.to_owned())];
    };
    let inner = inner.rsplit_once('}').map_or(inner, |(inner, _)| inner);
    items(inner).iter().flat_map(|item| leaves(&format!("{front}{}", item.trim()))).collect()
}

/// The items between braces, apart at those commas that lie in no further braces.
fn items(text: &str) -> Vec<String> {
    let (mut items, mut depth) = (vec![String::new()], 0);
    for letter in text.chars() {
        depth += i32::from(letter == '{') - i32::from(letter == '}');
        match items.last_mut() {
            Some(last) if letter != ',' || depth > 0 => last.push(letter),
            _ => items.push(String::new()),
        }
    }
    items.retain(|item| !item.trim().is_empty());
    items
}

/// A path as it goes from the top of the crate; none where it leads out of the crate.
fn within(module: &str, known: &Known, path: &str) -> Option<String> {
    let (first, rest) = path.split_once("::").unwrap_or((path, ""));
    let here = crate::module(module);
    match first {
        "crate" => Some(rest.to_owned()),
        "self" => Some(joined(here, rest)),
        "super" => Some(above(here, rest)),
        _ => known.get(first).map(|at| joined(at, rest)),
    }
}

/// A path that begins in the module above.
fn above(module: &str, path: &str) -> String {
    let outer = module.rsplit_once("::").map_or("", |(outer, _)| outer);
    path.strip_prefix("super::").map_or_else(|| joined(outer, path), |path| above(outer, path))
}

fn joined(at: &str, path: &str) -> String {
    format!("{at}::{path}").trim_matches(':').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(module: &str, text: &str) -> Vec<String> {
        named(module, text).into_iter().collect()
    }

    #[test]
    fn paths_are_read_from_code_alone() {
        let text = "use crate::cage::{A, B};\n// crate::no\nlet x = crate::solve::halved(1);\n#[cfg(test)]\nmod tests {\ncrate::no }";
        assert_eq!(read("a", text), ["cage::A", "cage::B", "solve::halved"]);
    }

    #[test]
    fn braces_are_opened() {
        let text = "pub(crate) use crate::{\n    a::{b, c::{self, D}},\n    e,\n};\nuse std::fmt;";
        assert_eq!(read("m", text), ["a::b", "a::c", "a::c::D", "e"]);
    }

    #[test]
    fn names_stand_for_what_they_were_given_to() {
        let text = "use crate::lap::words;\nuse crate::ride::words::terms as of;\nlet x = words::course::MINE + of::verb(&fmt::x);";
        assert_eq!(
            read("m", text),
            ["lap::words", "lap::words::course::MINE", "ride::words::terms", "ride::words::terms::verb"]
        );
    }

    #[test]
    fn what_lies_above_and_below_is_found() {
        assert_eq!(read("a::b::c", "use super::super::X;\nuse super::d::Y;"), ["a::X", "a::b::d::Y"]);
        assert_eq!(
            read("a::b::mod", "mod c;\npub use c::*;\nuse super::d;\nc::e();"),
            ["a::b::c", "a::b::c::e", "a::d"]
        );
    }
}
