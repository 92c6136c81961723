//! How much the rings of one drivetrain repeat each other.

use crate::gears::drivetrain::Drivetrain;
use crate::gears::gear::Gear;
use crate::gears::gear_set::GearSet;
use crate::gears::quantity::{DuplicateTolerance, GearStep};
use crate::gears::toothed::Chainring;

/// Gears that more than one ring reaches, and pairs that are the same gear twice.
#[derive(Debug, Clone, PartialEq)]
pub struct RingOverlap {
    /// Gears within the reach of another ring too.
    pub inside: usize,
    /// Gears that only their own ring reaches.
    pub outside: usize,
    /// Pairs within the tolerance, one gear on each ring; from the highest ring and smallest sprocket down.
    pub duplicates: Vec<DuplicatePair>,
}

/// Two gears that are nearly the same on different rings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DuplicatePair {
    /// The gear on the larger ring.
    pub on_larger: Gear,
    /// The gear on the smaller ring.
    pub on_smaller: Gear,
    /// How far they are apart.
    pub step: GearStep,
}

impl Drivetrain {
    /// Counts the overlap of its rings.
    ///
    /// A ring reaches every ratio from its own largest to its own smallest sprocket. A gear is inside when at least
    /// one other ring reaches its ratio, ends included: for two rings this is the interval that both can reach. Three
    /// rings are compared pair by pair. A single ring has nothing inside and no duplicates.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Drivetrain, DuplicateTolerance};
    /// let bike = Drivetrain { chainset: "48/32".parse()?, cassette: "12-14-16-18-21-24".parse()? };
    /// let overlap = bike.overlap(DuplicateTolerance::new(0.0)?);
    /// assert_eq!((overlap.inside, overlap.outside), (6, 6));
    /// let pair = overlap.duplicates[0];
    /// assert_eq!(format!("{} = {}", pair.on_larger, pair.on_smaller), "48×18 = 32×12");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn overlap(&self, tolerance: DuplicateTolerance) -> RingOverlap {
        self.overlap_without(GearSet::NONE, tolerance)
    }

    /// The same of the gears that are left without those to avoid.
    #[must_use]
    pub fn overlap_without(&self, avoid: GearSet, tolerance: DuplicateTolerance) -> RingOverlap {
        let gears: Vec<Gear> = avoid.rest(self).collect();
        let inside = gears.iter().filter(|gear| is_reached_twice(&gears, **gear)).count();
        let is_left =
            |pair: &DuplicatePair| [pair.on_larger, pair.on_smaller].iter().all(|it| gears.contains(it));
        let pairs = self.ring_pairs().flat_map(|rings| self.duplicates(rings, tolerance));
        RingOverlap { inside, outside: gears.len() - inside, duplicates: pairs.filter(is_left).collect() }
    }

    /// Every two rings, the larger first.
    fn ring_pairs(&self) -> impl Iterator<Item = (Chainring, Chainring)> + '_ {
        let rings = self.chainset.rings();
        rings
            .iter()
            .enumerate()
            .flat_map(|(at, &larger)| rings[at + 1..].iter().map(move |&smaller| (larger, smaller)))
    }

    fn duplicates(
        &self,
        (larger, smaller): (Chainring, Chainring),
        tolerance: DuplicateTolerance,
    ) -> impl Iterator<Item = DuplicatePair> + '_ {
        let on = |ring| self.cassette.sprockets().iter().map(move |&sprocket| Gear { ring, sprocket });
        on(larger).flat_map(move |on_larger| {
            on(smaller)
                .map(move |on_smaller| DuplicatePair {
                    on_larger,
                    on_smaller,
                    step: on_larger.step_to(on_smaller),
                })
                .filter(move |pair| pair.step.is_within(tolerance))
        })
    }
}

/// Whether another ring has a gear that is no taller and one that is no lower.
fn is_reached_twice(gears: &[Gear], gear: Gear) -> bool {
    let from = |low: &Gear| low.ring != gear.ring && gear.cmp_ratio(*low).is_ge();
    let to = |low: &Gear| gears.iter().any(|high| high.ring == low.ring && gear.cmp_ratio(*high).is_le());
    gears.iter().any(|low| from(low) && to(low))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn overlap(chainset: &str, cassette: &str) -> RingOverlap {
        let bike = Drivetrain { chainset: chainset.parse().unwrap(), cassette: cassette.parse().unwrap() };
        bike.overlap(DuplicateTolerance::default())
    }

    #[test]
    fn a_single_ring_has_none() {
        assert_eq!(overlap("42", "11-13-15"), RingOverlap { inside: 0, outside: 3, duplicates: vec![] });
    }

    #[test]
    fn gears_to_avoid_count_nowhere() {
        let bike =
            Drivetrain { chainset: "48/32".parse().unwrap(), cassette: "12-14-16-18-21-24".parse().unwrap() };
        let avoid = GearSet::parse("32×12 32×14", &bike).unwrap();
        let left = bike.overlap_without(avoid, DuplicateTolerance::new(0.0).unwrap());
        assert_eq!((left.inside, left.outside), (2, 8));
        let named: Vec<String> =
            left.duplicates.iter().map(|it| format!("{} {}", it.on_larger, it.on_smaller)).collect();
        assert_eq!(named, ["48×24 32×16"]);
    }

    #[test]
    fn rings_too_far_apart_have_none() {
        assert_eq!(overlap("50/30", "18-19-20"), RingOverlap { inside: 0, outside: 6, duplicates: vec![] });
    }

    #[test]
    fn three_rings_count_a_gear_once() {
        assert_eq!(overlap("48/40/32", "12-36").inside, 4);
    }
}
