//! The rooms of the explorer: a question uses reports and words of the questions before it, never what shows them.

use room_rules::{circles, files, room, uses};

const SOURCES: &str = "crates/explorer/src";

/// The rooms, each of which may use those before it. What lies in none of them is the ground, and may use no room.
const ROOMS: &[&str] = &[
    "", "words", "api", "bench", "drawing", "layout", "rings", "chain", "position", "tyre", "ride", "lap",
    "parts", "rack", "page",
];

/// Folders that lie on the ground.
const GROUND: [&str; 1] = ["units"];

/// The parts of a question's room that only the room itself and the page may use.
const OWN: [&str; 6] = ["view", "pictures", "picture", "body", "form", "question"];

fn outer(path: &str) -> &str {
    path.split("::").next().unwrap_or_default()
}

fn rank(room: &str) -> usize {
    let room = if GROUND.contains(&room) { "" } else { room };
    let known = ROOMS.iter().position(|it| *it == room);
    assert!(known.is_some(), "{room} is no room");
    known.unwrap_or_default()
}

#[test]
fn a_room_uses_only_rooms_before_it() {
    let mut between = 0;
    for (file, paths) in &files(SOURCES) {
        let here = outer(room(file));
        for path in paths {
            let there = if ROOMS.contains(&outer(path)) { outer(path) } else { "" };
            assert!(rank(there) <= rank(here), "{file} looks up at {path}");
            between += usize::from(there != here);
        }
    }
    assert!(between > 300, "only {between} uses were read");
}

#[test]
fn what_shows_a_question_is_its_own() {
    for (file, paths) in &files(SOURCES) {
        let here = outer(room(file));
        for path in paths.iter().filter(|path| {
            !["page", "layout"].contains(&here) && outer(path) != here && outer(path) != "layout"
        }) {
            let part = path.split("::").nth(1).unwrap_or_default();
            assert!(!OWN.contains(&part), "{file} uses {path}");
        }
    }
}

#[test]
fn files_use_one_another_without_a_circle() {
    let files = files(SOURCES);
    let uses = uses(&files);
    assert!(uses.values().map(std::collections::BTreeSet::len).sum::<usize>() > 400);
    assert_eq!(circles(&uses), Vec::<String>::new());
}
