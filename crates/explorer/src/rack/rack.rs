//! The rack: bikes under names of their own, in the order in which they were kept.

use crate::bench::whole_bike::WholeBike;

/// A bike on the rack.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptBike {
    /// Its name, which no other has.
    pub name: String,
    /// Its place: bikes stand in the order of these numbers, those of one number by name.
    pub order: u32,
    /// The bike.
    pub bike: WholeBike,
}

/// Bikes kept under names.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Rack(Vec<KeptBike>);

/// Why a bike is not kept or named so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RackFault {
    /// The rack is full.
    Full,
    /// The name is empty.
    NoName,
    /// The name is too long.
    LongName,
    /// Something else is kept under the name.
    Taken,
    /// No bike of the name is kept any more.
    Gone,
}

/// A name as it is kept: without spaces around it or in a row, and without signs that nobody sees.
#[must_use]
pub fn tidy(name: &str) -> String {
    let seen: String = name.chars().map(|sign| if sign.is_control() { ' ' } else { sign }).collect();
    seen.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The name, if a bike may have it.
fn allowed(name: &str) -> Result<String, RackFault> {
    match tidy(name) {
        name if name.is_empty() => Err(RackFault::NoName),
        name if name.chars().count() > Rack::LONGEST_NAME => Err(RackFault::LongName),
        name => Ok(name),
    }
}

impl Rack {
    /// Bikes at most: more than anybody compares (estimate).
    pub const MOST: usize = 40;
    /// Characters of a name at most, as of a course (common practice).
    pub const LONGEST_NAME: usize = 60;

    /// All bikes, in their order.
    #[must_use]
    pub fn bikes(&self) -> &[KeptBike] {
        &self.0
    }

    /// The bike of a name.
    #[must_use]
    pub fn bike(&self, name: &str) -> Option<&KeptBike> {
        self.0.iter().find(|kept| kept.name == name)
    }

    /// Keeps a bike under a name that is free, behind all others; gives the name as it is kept.
    ///
    /// # Errors
    /// When the rack is full or the name is not to be had.
    pub fn keep(&mut self, name: &str, bike: WholeBike) -> Result<String, RackFault> {
        let name = self.free(name)?;
        if self.0.len() >= Self::MOST {
            return Err(RackFault::Full);
        }
        let order = self.0.iter().map(|kept| kept.order).max().map_or(0, |last| last.saturating_add(1));
        self.put(KeptBike { name: name.clone(), order, bike });
        Ok(name)
    }

    /// Keeps a bike in the place and under the name of another.
    ///
    /// # Errors
    /// When none of that name is kept.
    pub fn replace(&mut self, name: &str, bike: WholeBike) -> Result<(), RackFault> {
        let kept = self.0.iter_mut().find(|kept| kept.name == name).ok_or(RackFault::Gone)?;
        kept.bike = bike;
        Ok(())
    }

    /// Gives a bike another name, in the same place; gives the name as it is kept.
    ///
    /// # Errors
    /// When it is gone or the name is not to be had.
    pub fn rename(&mut self, from: &str, to: &str) -> Result<String, RackFault> {
        let place = self.0.iter().position(|kept| kept.name == from).ok_or(RackFault::Gone)?;
        if tidy(to) == from {
            return Ok(from.to_owned());
        }
        let name = self.free(to)?;
        name.clone_into(&mut self.0[place].name);
        self.sort();
        Ok(name)
    }

    /// Keeps the same bike once more, under the next free name; gives that name.
    ///
    /// # Errors
    /// When it is gone or the rack is full.
    pub fn copy(&mut self, name: &str) -> Result<String, RackFault> {
        let bike = self.bike(name).ok_or(RackFault::Gone)?.bike.clone();
        self.keep(&self.next_name(name), bike)
    }

    /// Takes a bike off the rack.
    pub fn forget(&mut self, name: &str) -> Option<KeptBike> {
        let place = self.0.iter().position(|kept| kept.name == name)?;
        Some(self.0.remove(place))
    }

    /// Puts a bike that was forgotten back into its place.
    ///
    /// # Errors
    /// When the rack is full or its name was given away.
    pub fn put_back(&mut self, bike: KeptBike) -> Result<(), RackFault> {
        self.free(&bike.name)?;
        if self.0.len() >= Self::MOST {
            return Err(RackFault::Full);
        }
        self.put(bike);
        Ok(())
    }

    /// Puts a bike that is kept elsewhere into its place, whatever else is there; false where its name is none for a bike.
    pub fn take(&mut self, bike: KeptBike) -> bool {
        let is_named = allowed(&bike.name).as_deref() == Ok(&bike.name);
        if is_named {
            self.forget(&bike.name);
            self.put(bike);
        }
        is_named
    }

    /// The first name after this one with a number behind it that is free, cut where it would be too long.
    #[must_use]
    pub fn next_name(&self, name: &str) -> String {
        let numbered = |number: usize| {
            let number = format!(" {number}");
            let kept: String = name.chars().take(Self::LONGEST_NAME - number.len()).collect();
            tidy(&(kept + &number))
        };
        (2..).map(numbered).find(|name| self.bike(name).is_none()).unwrap_or_default()
    }

    /// The name, if no bike has it.
    fn free(&self, name: &str) -> Result<String, RackFault> {
        let name = allowed(name)?;
        if self.bike(&name).is_some() { Err(RackFault::Taken) } else { Ok(name) }
    }

    fn put(&mut self, bike: KeptBike) {
        self.0.push(bike);
        self.sort();
    }

    fn sort(&mut self) {
        self.0.sort_by(|a, b| (a.order, &a.name).cmp(&(b.order, &b.name)));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn rack(names: &[&str]) -> Rack {
        let mut rack = Rack::default();
        names.iter().for_each(|name| assert_eq!(rack.keep(name, WholeBike::default()).as_deref(), Ok(*name)));
        rack
    }

    fn names(rack: &Rack) -> Vec<&str> {
        rack.bikes().iter().map(|kept| kept.name.as_str()).collect()
    }

    #[test]
    fn bikes_stay_in_their_places() {
        let mut rack = rack(&["road", "cross", "mud"]);
        assert_eq!(rack.rename("road", " Zed  is\tlast ").as_deref(), Ok("Zed is last"));
        let forgotten = rack.forget("cross").unwrap();
        assert_eq!(names(&rack), ["Zed is last", "mud"]);
        rack.put_back(forgotten).unwrap();
        assert_eq!(rack.copy("cross").as_deref(), Ok("cross 2"));
        assert_eq!(names(&rack), ["Zed is last", "cross", "mud", "cross 2"]);
    }

    #[test]
    fn what_cannot_be_kept_says_why() {
        let mut rack = rack(&["road"]);
        let bike = WholeBike::default();
        assert_eq!(rack.keep(" \u{7} ", bike.clone()), Err(RackFault::NoName));
        assert_eq!(rack.keep(&"é".repeat(61), bike.clone()), Err(RackFault::LongName));
        assert_eq!(rack.keep("road ", bike.clone()), Err(RackFault::Taken));
        assert_eq!(rack.rename("mud", "bog"), Err(RackFault::Gone));
        (1..Rack::MOST).for_each(|number| assert!(rack.keep(&number.to_string(), bike.clone()).is_ok()));
        assert_eq!(rack.copy("road"), Err(RackFault::Full));
        assert_eq!(rack.keep(&"é".repeat(60), bike.clone()), Err(RackFault::Full));
        assert_eq!(rack.replace("road", bike), Ok(()));
        assert_eq!(rack.rename("1", "road"), Err(RackFault::Taken));
        let forgotten = rack.forget("road").unwrap();
        assert!(rack.rename("1", "road").is_ok());
        assert_eq!(rack.put_back(forgotten), Err(RackFault::Taken));
    }

    #[test]
    fn a_copy_of_a_long_name_has_a_name_that_is_allowed() {
        let long = "é".repeat(60);
        let mut rack = rack(&[&long]);
        let copy = rack.copy(&long).unwrap();
        assert_eq!((copy.chars().count(), copy.ends_with(" 2")), (60, true));
    }

    proptest! {
        #[test]
        fn names_stay_unique_and_bikes_few(acts in prop::collection::vec((0..5_usize, "[ab ]{0,3}", "[ab]{1,2}"), 0..120)) {
            let mut rack = Rack::default();
            let mut forgotten = None;
            for (act, name, other) in acts {
                match act {
                    0 => drop(rack.keep(&name, WholeBike::default())),
                    1 => drop(rack.rename(&other, &name)),
                    2 => drop(rack.copy(&other)),
                    3 => forgotten = rack.forget(&other),
                    _ => drop(forgotten.take().map(|bike| rack.put_back(bike))),
                }
                let mut all = names(&rack);
                prop_assert!(all.len() <= Rack::MOST && all.iter().all(|name| allowed(name).as_deref() == Ok(*name)));
                prop_assert!(rack.bikes().is_sorted_by_key(|kept| (kept.order, &kept.name)));
                all.sort_unstable();
                all.dedup();
                prop_assert_eq!(all.len(), rack.bikes().len());
            }
        }
    }
}
