//! Places of a lap on a reserve that pay to be forced, of both bikes together.

use crate::lap::report::LapReport;
use crate::side::Side;
use gear_math::course::ReserveForcing;
use gear_math::order::ascending;

/// Places told one by one: the next ones gain less than a band is wide.
const TOLD: usize = 3;

/// A place that pays to be forced.
#[derive(Debug)]
pub struct ForcedPlace<'l> {
    /// From here, metres from the line.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
    /// With which bikes, and what it is worth with each; no side where there is one bike only.
    pub by: Vec<(Option<Side>, &'l ReserveForcing)>,
}

impl<'l> ForcedPlace<'l> {
    fn with(side: Option<Side>, it: &'l ReserveForcing) -> Self {
        Self { from_m: it.from_m, to_m: it.to_m, by: vec![(side, it)] }
    }

    fn most_saved_s(&self) -> f64 {
        self.by.iter().map(|(_, forcing)| forcing.saved_s).fold(0.0, f64::max)
    }
}

impl LapReport {
    /// The places that pay best, in the order they come, and how many more there are.
    #[must_use]
    pub fn forced_places(&self) -> (Vec<ForcedPlace<'_>>, usize) {
        let mut places = self.all_forced();
        ascending(&mut places, |place| -place.most_saved_s());
        let more = places.len().saturating_sub(TOLD);
        places.truncate(TOLD);
        ascending(&mut places, |place| place.from_m);
        (places, more)
    }

    /// All of them. A place of B that overlaps one of A is the same place.
    fn all_forced(&self) -> Vec<ForcedPlace<'_>> {
        let of_a = if self.is_of_one_bike() { None } else { Some(Side::A) };

        let [a, b] = &self.forcings;
        let mut places: Vec<ForcedPlace<'_>> = a.iter().map(|it| ForcedPlace::with(of_a, it)).collect();
        for it in b.iter().filter(|_| of_a.is_some()) {
            let overlaps = |place: &&mut ForcedPlace<'_>| place.from_m < it.to_m && it.from_m < place.to_m;
            match places.iter_mut().find(overlaps) {
                Some(place) => {
                    place.by.push((Some(Side::B), it));
                    place.from_m = place.from_m.min(it.from_m);
                    place.to_m = place.to_m.max(it.to_m);
                }
                None => places.push(ForcedPlace::with(Some(Side::B), it)),
            }
        }
        places
    }
}
