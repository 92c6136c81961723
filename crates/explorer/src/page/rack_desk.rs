//! What the desk does about the rack.

use crate::bench::field::Field;
use crate::page::desk::{Desk, Update};
use crate::rack::file::{FiledBike, RackFile};
use crate::rack::from_scripts::RackFileFault;
use crate::rack::rack::Rack;
use crate::rack::said::Said;
use crate::side::Side;

impl Desk {
    /// The bikes that are kept.
    #[must_use]
    pub const fn rack(&self) -> &Rack {
        self.rack.rack()
    }

    /// Takes the bikes that the browser keeps, or none for a name under which it keeps something else.
    pub fn read_rack(&mut self, kept: Vec<(String, Option<FiledBike>)>) -> Update {
        self.rack.read(kept);
        self.refresh(Vec::new(), false)
    }

    /// Does what a button of the rack says; `None` when there is no such button.
    pub fn act_on_rack(&mut self, name: &str, bike: &str, typed: &str) -> Option<Update> {
        let done = match name {
            "keep-box" => {
                let (bench, name) = (self.with_combination(bike, Side::A)?, self.combination_name(bike)?);
                self.rack.act("keep-a", "", &name, &bench)
            }
            _ => self.rack.act(name, bike, typed, &self.bench),
        };
        done.then(|| self.refresh(Vec::new(), false))
    }

    /// Puts the bikes of a file on the rack.
    pub fn open_rack(&mut self, name: &str, file: RackFile) -> Update {
        self.rack.open(name, file);
        self.refresh(Vec::new(), false)
    }

    /// Says why a file is not taken as a rack.
    pub fn refuse_rack(&mut self, name: &str, why: RackFileFault) -> Update {
        self.rack.refuse(name, why);
        self.refresh(Vec::new(), false)
    }

    /// Says that the rack was saved under this name, if there is anything to save.
    pub fn rack_saved(&mut self, name: &str) -> Update {
        let is_empty = self.rack().bikes().is_empty() && self.bench.text(Field::BoxParts).is_empty();
        self.rack.say(if is_empty { Said::Empty } else { Said::Saved(name.to_owned()) });
        self.refresh(Vec::new(), false)
    }

    /// Says that the browser did not keep what it was given.
    pub fn rack_unkept(&mut self) -> Update {
        self.rack.unkept();
        self.refresh(Vec::new(), false)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bike_of_the_rack_comes_onto_the_bench_and_undo_takes_it_off() {
        let mut desk = Desk::default();
        desk.open("#r=3&ra=46/30&tyb=40-622");
        desk.act_on_rack("keep-b", "", "Mud: deep").unwrap();
        assert_eq!(desk.rack().bikes()[0].bike.text(Field::Tyre), "40-622");
        desk.act("reset").unwrap();
        let before = desk.link();
        let update = desk.act("bike-a:Mud: deep").unwrap();
        assert_eq!((desk.bench.text(Field::Tyre), desk.bench.text(Field::TyreB)), ("40-622", "33-622"));
        assert!(
            update.html.iter().any(|(id, html)| id == "rack-says" && html.contains("A is now “Mud: deep”."))
        );
        desk.act("undo").unwrap();
        assert_eq!(desk.link(), before);
        assert_eq!(desk.act("bike-b:gone").unwrap().link, Some(before));
    }

    #[test]
    fn names_are_only_ever_text() {
        let mut desk = Desk::default();
        let update = desk.act_on_rack("keep-a", "", "<b>\"&").unwrap();
        let (_, list) = update.html.iter().find(|(id, _)| id == "rack-list").unwrap();
        assert!(list.contains("&lt;b&gt;&quot;&amp;") && !list.contains("<b>"), "{list}");
    }
}
