//! What cages of each length usually take.

use crate::gears::Sprocket;

/// Usual figures of rear derailleurs by cage length, to be offered only until the maker's own are known.
///
/// Source: common practice. The capacities of short to long cages were seen in print, in mixed years; the largest
/// sprockets and the last class are from workshop memory.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CageClass {
    /// How the trade calls it.
    pub name: &'static str,
    /// Distance between the pulley centres, shortest to longest, in millimetres.
    pub pulley_centres_mm: (f64, f64),
    /// Total capacity, least to most, in teeth.
    pub total_capacity: (u16, u16),
    /// Largest sprocket, least to most, in teeth; without a most where it depends on the cassette it was made for.
    pub largest_sprocket: (u16, Option<u16>),
}

impl CageClass {
    /// The classes, shortest cage first.
    pub const ALL: [Self; 4] = [
        Self {
            name: "short",
            pulley_centres_mm: (50.0, 55.0),
            total_capacity: (28, 35),
            largest_sprocket: (28, Some(30)),
        },
        Self {
            name: "medium",
            pulley_centres_mm: (72.5, 74.0),
            total_capacity: (33, 39),
            largest_sprocket: (32, Some(36)),
        },
        Self {
            name: "long",
            pulley_centres_mm: (86.0, 89.0),
            total_capacity: (38, 45),
            largest_sprocket: (36, None),
        },
        Self {
            name: "long, wide-range",
            pulley_centres_mm: (93.0, 100.0),
            total_capacity: (45, 47),
            largest_sprocket: (36, None),
        },
    ];

    /// The shortest pulley centres that are made, in millimetres (common practice, see [`CageClass::ALL`]).
    pub const SHORTEST_MM: f64 = Self::ALL[0].pulley_centres_mm.0;
    /// The longest, in millimetres (from workshop memory, as the class).
    pub const LONGEST_MM: f64 = Self::ALL[Self::ALL.len() - 1].pulley_centres_mm.1;

    /// The shortest class that usually takes this capacity with a tooth to spare, and this largest sprocket.
    #[must_use]
    pub fn for_needs(capacity: u16, largest_sprocket: Sprocket) -> Option<Self> {
        Self::ALL.into_iter().find(|class| {
            let takes_sprocket = class.largest_sprocket.1.is_none_or(|most| largest_sprocket.teeth() <= most);
            class.total_capacity.1 > capacity && takes_sprocket
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(capacity: u16, largest_sprocket: u16) -> Option<&'static str> {
        CageClass::for_needs(capacity, Sprocket::new(largest_sprocket).unwrap()).map(|class| class.name)
    }

    #[test]
    fn both_needs_are_met() {
        assert_eq!(named(33, 28), Some("short"));
        assert_eq!(named(33, 32), Some("medium"));
        assert_eq!(named(35, 28), Some("medium"));
        assert_eq!(named(91, 60), None);
    }
}
