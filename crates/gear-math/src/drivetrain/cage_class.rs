//! What cages of each length usually take.

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

    /// The classes of which at least some derailleurs have this capacity, shortest first.
    pub fn with_capacity(teeth: u16) -> impl Iterator<Item = Self> {
        Self::ALL.into_iter().filter(move |class| class.total_capacity.1 >= teeth)
    }
}
