//! The rack as it lies on the desk: its bikes, what the browser keeps of them, and what was last done.

use crate::bench::bench::Bench;
use crate::bench::whole_bike::WholeBike;
use crate::rack::file::{FiledBike, RackFile};
use crate::rack::from_scripts::RackFileFault;
use crate::rack::rack::{KeptBike, Rack, RackFault, tidy};
use crate::rack::said::Said;
use crate::side::Side;

/// The rack, and what is being done about it.
#[derive(Debug, Clone, Default)]
pub struct RackRoom {
    pub(crate) rack: Rack,
    /// The bikes that the browser keeps.
    stored: Rack,
    /// Names under which the browser keeps what is no bike.
    pub(crate) unread: Vec<String>,
    /// The bike that has a new name typed for it.
    pub(crate) renaming: Option<String>,
    /// The bike that was last forgotten, as long as that can be taken back.
    pub(crate) forgotten: Option<KeptBike>,
    pub(crate) said: Said,
    /// The bike that would be lost if another were kept under its name, which was asked about.
    asked: Option<KeptBike>,
}

impl RackRoom {
    /// The bikes.
    #[must_use]
    pub const fn rack(&self) -> &Rack {
        &self.rack
    }

    /// Takes what the browser keeps: for each name a bike, or none where what is kept there is none.
    pub fn read(&mut self, kept: Vec<(String, Option<FiledBike>)>) {
        (self.rack, self.unread) = (Rack::default(), Vec::new());
        for (name, filed) in kept {
            let bike = filed.map(|filed| KeptBike {
                name: name.clone(),
                order: filed.order,
                bike: filed.bike(&mut Vec::new(), &mut Vec::new()),
            });
            if !bike.is_some_and(|bike| self.rack.take(bike)) {
                self.unread.push(name);
            }
        }
        self.unread.sort_unstable();
        self.stored = self.rack.clone();
        let is_there = |name: &String| self.rack.bike(name).is_some();
        self.renaming = self.renaming.take().filter(is_there);
    }

    /// What the browser is to keep or, where there is no bike of the name any more, to forget.
    #[must_use]
    pub fn changes(&self) -> Vec<(String, Option<FiledBike>)> {
        let is_new = |kept: &&KeptBike| self.stored.bike(&kept.name) != Some(kept);
        let new = self.rack.bikes().iter().filter(is_new);
        let is_gone = |kept: &&KeptBike| self.rack.bike(&kept.name).is_none();
        let gone = self.stored.bikes().iter().filter(is_gone).map(|kept| (kept.name.clone(), None));
        new.map(|kept| (kept.name.clone(), Some(FiledBike::of(kept)))).chain(gone).collect()
    }

    /// Does what a button of the rack says about a bike, with a name typed for it; false where there is no such button.
    pub fn act(&mut self, name: &str, bike: &str, typed: &str, bench: &Bench) -> bool {
        let asked = self.asked.take();
        let forgotten = self.forgotten.take();
        self.renaming = None;
        self.said = match name {
            "keep-a" => self.keep(typed, bench.bike(Side::A), asked.as_ref()),
            "keep-b" => self.keep(typed, bench.bike(Side::B), asked.as_ref()),
            "rename" => {
                self.renaming = Some(bike.to_owned());
                Said::Nothing
            }
            "rename-to" => self.rename(bike, typed),
            "leave" => Said::Left(bike.to_owned()),
            "copy" => self.copy(bike),
            "forget" => self.forget(bike),
            "undo" => self.put_back(forgotten),
            _ => return false,
        };
        true
    }

    /// Puts the bikes of a file on the rack.
    pub fn open(&mut self, file_name: &str, mut file: RackFile) {
        let (unread, mut refused) = (self.unread.clone(), Vec::new());
        file.bikes.retain(|bike| {
            let is_free = !unread.contains(&tidy(&bike.name));
            if !is_free {
                refused.push((tidy(&bike.name), RackFault::Taken));
            }
            is_free
        });
        let mut opened = self.rack.open(file);
        opened.refused.extend(refused);
        self.say(Said::Opened(file_name.to_owned(), Box::new(opened)));
    }

    /// Says why a file is not taken.
    pub fn refuse(&mut self, file_name: &str, why: RackFileFault) {
        self.say(Said::Refused(file_name.to_owned(), why));
    }

    /// Says something else than what was last said. What was asked or could be taken back is over.
    pub fn say(&mut self, said: Said) {
        (self.asked, self.forgotten, self.renaming) = (None, None, None);
        self.said = said;
    }

    /// The browser did not keep what it was to keep: that is said before anything else.
    pub fn unkept(&mut self) {
        self.said = Said::Unkept;
    }

    /// The bench with a bike of the rack on a side.
    #[must_use]
    pub fn on_bench(&mut self, name: &str, side: Side, bench: &Bench) -> Bench {
        match self.rack.bike(name).map(|kept| bench.with_bike(side, &kept.bike)) {
            Some(bench) => {
                self.say(Said::On(side, name.to_owned()));
                bench
            }
            None => {
                self.say(Said::Fault(RackFault::Gone));
                bench.clone()
            }
        }
    }

    fn keep(&mut self, typed: &str, bike: WholeBike, asked: Option<&KeptBike>) -> Said {
        let name = tidy(typed);
        if self.unread.contains(&name) {
            return Said::Fault(RackFault::Taken);
        }
        match self.rack.bike(&name) {
            None => self.rack.keep(&name, bike).map_or_else(Said::Fault, Said::Kept),
            Some(kept) if kept.bike == bike => Said::Same(name),
            Some(kept) if asked == Some(kept) => {
                let replaced = self.rack.replace(&name, bike);
                replaced.map_or_else(Said::Fault, |()| Said::Replaced(name))
            }
            Some(kept) => {
                self.asked = Some(kept.clone());
                Said::OfAnother(name)
            }
        }
    }

    fn rename(&mut self, from: &str, typed: &str) -> Said {
        let renamed = if self.unread.contains(&tidy(typed)) {
            Err(RackFault::Taken)
        } else {
            self.rack.rename(from, typed)
        };
        match renamed {
            Ok(name) if name == from => Said::Left(name),
            Ok(name) => Said::Renamed(from.to_owned(), name),
            Err(why) => {
                self.renaming = Some(from.to_owned()).filter(|_| why != RackFault::Gone);
                Said::Fault(why)
            }
        }
    }

    fn copy(&mut self, name: &str) -> Said {
        let copied = self.rack.copy(name);
        copied.map_or_else(Said::Fault, |copy| Said::Copied(name.to_owned(), copy))
    }

    fn forget(&mut self, name: &str) -> Said {
        self.forgotten = self.rack.forget(name);
        if self.forgotten.is_some() { Said::Forgotten(name.to_owned()) } else { Said::Fault(RackFault::Gone) }
    }

    fn put_back(&mut self, forgotten: Option<KeptBike>) -> Said {
        let Some(bike) = forgotten else { return Said::Nothing };
        let name = bike.name.clone();
        match self.rack.put_back(bike.clone()) {
            Ok(()) => Said::Back(name),
            Err(why) => {
                self.forgotten = Some(bike);
                Said::Fault(why)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;

    /// Does something and lets the browser keep it.
    fn act(room: &mut RackRoom, browser: &mut Vec<(String, FiledBike)>, act: [&str; 3], bench: &Bench) {
        assert!(room.act(act[0], act[1], act[2], bench), "{act:?}");
        for (name, filed) in room.changes() {
            browser.retain(|(kept, _)| *kept != name);
            browser.extend(filed.map(|filed| (name, filed)));
        }
        read(room, browser);
        assert_eq!(room.changes(), []);
    }

    fn read(room: &mut RackRoom, browser: &[(String, FiledBike)]) {
        room.read(browser.iter().cloned().map(|(name, filed)| (name, Some(filed))).collect());
    }

    fn names(room: &RackRoom) -> Vec<&str> {
        room.rack().bikes().iter().map(|kept| kept.name.as_str()).collect()
    }

    #[test]
    fn a_bike_is_kept_renamed_copied_forgotten_and_put_back() {
        let (mut room, mut browser, bench) = (RackRoom::default(), Vec::new(), Bench::default());
        for (acted, said, there) in [
            (["keep-a", "", "Road"], Said::Kept("Road".into()), "Road"),
            (["keep-b", "", " Cross "], Said::Kept("Cross".into()), "Road,Cross"),
            (["rename", "Road", ""], Said::Nothing, "Road,Cross"),
            (["rename-to", "Road", "Cross"], Said::Fault(RackFault::Taken), "Road,Cross"),
            (["rename-to", "Road", "Summer"], Said::Renamed("Road".into(), "Summer".into()), "Summer,Cross"),
            (
                ["copy", "Summer", ""],
                Said::Copied("Summer".into(), "Summer 2".into()),
                "Summer,Cross,Summer 2",
            ),
            (["forget", "Summer", ""], Said::Forgotten("Summer".into()), "Cross,Summer 2"),
            (["undo", "", ""], Said::Back("Summer".into()), "Summer,Cross,Summer 2"),
            (["forget", "Gone", ""], Said::Fault(RackFault::Gone), "Summer,Cross,Summer 2"),
        ] {
            act(&mut room, &mut browser, acted, &bench);
            assert_eq!((&room.said, names(&room).join(",").as_str()), (&said, there), "{acted:?}");
        }
        assert!(!room.act("no such button", "", "", &bench));
        assert_eq!(room.on_bench("Summer", Side::B, &bench).bike(Side::B), bench.bike(Side::A));
    }

    #[test]
    fn another_bike_of_the_name_is_asked_about_once_and_again_when_it_has_changed() {
        let (mut room, mut browser, mut bench) = (RackRoom::default(), Vec::new(), Bench::default());
        let keep = ["keep-a", "", "Road"];
        act(&mut room, &mut browser, keep, &bench);
        act(&mut room, &mut browser, keep, &bench);
        assert_eq!(room.said, Said::Same("Road".into()));
        bench.write(Field::RingsA, "46/30");
        act(&mut room, &mut browser, keep, &bench);
        assert_eq!(room.said, Said::OfAnother("Road".into()));
        browser[0].1.parts.push(("rings".into(), "52/36".into()));
        read(&mut room, &browser);
        act(&mut room, &mut browser, keep, &bench);
        assert_eq!(room.said, Said::OfAnother("Road".into()));
        assert_eq!(room.rack().bikes()[0].bike.text(Field::RingsA), "52/36");
        act(&mut room, &mut browser, keep, &bench);
        assert_eq!(room.said, Said::Replaced("Road".into()));
        assert_eq!(room.rack().bikes()[0].bike.text(Field::RingsA), "46/30");
    }

    #[test]
    fn what_is_no_bike_is_left_alone() {
        let (mut room, bench) = (RackRoom::default(), Bench::default());
        room.read(vec![("Odd".into(), None), (" Untidy".into(), Some(FiledBike::default()))]);
        assert_eq!(
            (room.unread.as_slice(), names(&room).len()),
            ([" Untidy".to_owned(), "Odd".to_owned()].as_slice(), 0)
        );
        assert!(room.act("keep-a", "", "Odd", &bench));
        assert_eq!((&room.said, room.changes()), (&Said::Fault(RackFault::Taken), Vec::new()));
        let bikes = vec![FiledBike { name: "Odd".into(), ..FiledBike::default() }];
        room.open("rack.json", RackFile { bikes, strange: Vec::new() });
        assert_eq!(room.changes(), Vec::new());
    }
}
