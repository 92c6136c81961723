//! The rooms of gear-math.

use room_rules::{circles, files, room, target, uses};

const SOURCES: &str = "crates/gear-math/src";

/// The rooms, each of which may use those before it. What lies in none of them is the ground, and may use no room.
const ROOMS: &[&str] = &[
    "",
    "typed",
    "gears",
    "cage",
    "chain",
    "wheel",
    "rider",
    "course",
    "course::track",
    "course::lap",
    "course::reserve",
    "course::doubt",
    "course::search",
    "position",
    "parts",
];

#[test]
fn a_room_uses_only_rooms_before_it() {
    let files = files(SOURCES);
    let rank = |room: &str| ROOMS.iter().position(|it| *it == room).unwrap_or_else(|| panic!("room {room}?"));
    let mut between = 0;
    for (file, paths) in &files {
        // A room shows what lies in it, rooms within it included.
        let shown = |path: &str| file.strip_suffix("mod").is_some_and(|within| path.starts_with(within));
        for path in paths.iter().filter(|path| !shown(path)) {
            let (used, named) = target(&files, path);
            assert!(rank(used) <= rank(room(file)), "{file} looks up at {path}");
            let own = file.split("::").next() == path.split("::").next();
            let names_a_file = named.is_some_and(|it| !it.ends_with("::mod"));
            assert!(names_a_file || !own, "{file} takes {path} from its own room: name the file");
            between += usize::from(used != room(file));
        }
    }
    assert!(between > 150, "only {between} uses were read");
}

#[test]
fn files_use_one_another_without_a_circle() {
    let files = files(SOURCES);
    let uses = uses(&files);
    assert!(uses.values().map(std::collections::BTreeSet::len).sum::<usize>() > 200);
    assert_eq!(circles(&uses), Vec::<String>::new());
}
