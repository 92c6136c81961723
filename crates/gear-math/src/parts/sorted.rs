//! A box sorted into what goes together and what does not.

use crate::gears::{Drivetrain, GearSet};
use crate::parts::bare_bike::BareBike;
use crate::parts::combination::Combination;
use crate::parts::fit::Fit;
use crate::parts::lack::Lack;
use crate::parts::parts_box::PartsBox;

/// What of a box goes together and what does not, found a few combinations at a time.
///
/// # Example
/// ```
/// use gear_math::Cassette;
/// use gear_math::parts::{BareBike, PartsBox, SortedBox};
/// let parts = PartsBox {
///     chainsets: vec!["44/31".parse()?],
///     cassettes: Cassette::common().take(4).collect(),
///     ..PartsBox::default()
/// };
/// let mut sorted = SortedBox::default();
/// while sorted.advance(&BareBike::usual(), &parts, 3) {}
/// assert_eq!(sorted.fitting.len() + sorted.not_fitting.len(), 4);
/// # Ok::<(), gear_math::gears::ChainsetError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SortedBox {
    /// What goes together.
    pub fitting: Vec<(Combination, Fit)>,
    /// What does not, and why.
    pub not_fitting: Vec<(Combination, Lack)>,
}

impl SortedBox {
    /// All of a box at once.
    #[must_use]
    pub fn of(bike: &BareBike, parts: &PartsBox) -> Self {
        let mut sorted = Self::default();
        sorted.advance(bike, parts, parts.count());
        sorted
    }

    /// Tries the next `count` combinations; whether there are more.
    pub fn advance(&mut self, bike: &BareBike, parts: &PartsBox, count: usize) -> bool {
        let from = self.done();
        let to = from.saturating_add(count).min(parts.count());
        for combination in (from..to).map(|number| parts.combination(number)) {
            match bike.fit(parts, combination) {
                Ok(fit) => self.fitting.push((combination, fit)),
                Err(lack) => self.not_fitting.push((combination, lack)),
            }
        }
        to < parts.count()
    }

    /// How many combinations were tried.
    #[must_use]
    pub fn done(&self) -> usize {
        self.fitting.len() + self.not_fitting.len()
    }

    /// How many do not go together for each reason there is.
    #[must_use]
    pub fn lacking(&self) -> Vec<(Lack, usize)> {
        let count = |lack| self.not_fitting.iter().filter(|it| it.1 == lack).count();
        Lack::ALL.into_iter().map(|lack| (lack, count(lack))).filter(|it| it.1 > 0).collect()
    }

    /// The laps to ride: the same rings and sprockets without the same gears are one lap, whichever derailleur shifts them. Their
    /// order does not depend on that of the box. The second list says which lap each of [`Self::fitting`] rides.
    #[must_use]
    pub fn laps(&self) -> (Vec<(Drivetrain, GearSet)>, Vec<usize>) {
        let mut all: Vec<_> = self.fitting.iter().map(|(_, fit)| (key(fit), fit.ridden())).collect();
        all.sort_unstable_by(|a, b| a.0.cmp(&b.0));
        all.dedup_by(|a, b| a.0 == b.0);
        let place = |fit: &Fit| all.partition_point(|it| it.0 < key(fit));
        let places = self.fitting.iter().map(|(_, fit)| place(fit)).collect();
        (all.into_iter().map(|it| it.1).collect(), places)
    }
}

/// What tells laps apart, in an order that depends on nothing else.
fn key(fit: &Fit) -> (Vec<u16>, u64) {
    let (Drivetrain { chainset, cassette }, avoid) = fit.ridden();
    let rings = chainset.rings().iter().map(|ring| ring.teeth());
    let sprockets = cassette.sprockets().iter().map(|sprocket| sprocket.teeth());
    (rings.chain([0]).chain(sprockets).collect(), avoid.bits())
}
