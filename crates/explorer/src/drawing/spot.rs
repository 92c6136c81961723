//! Places in a picture that can be looked at, by pointer, finger or key.

use crate::bench::field::Field;
use crate::drawing::pen::Point;

/// A rectangle of a picture and what it says.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// Upper left corner, CSS pixels.
    pub from: Point,
    /// Lower right corner, CSS pixels.
    pub to: Point,
    /// What is there, in words and numbers; empty where it is put into words only once it is looked at.
    pub text: String,
    /// A field that is set by looking there, with its value.
    pub puts: Option<(Field, String)>,
}

impl Spot {
    /// A spot around a rectangle, grown by `by` on every side so that its frame does not hide what it holds.
    #[must_use]
    pub fn around(from: Point, to: Point, by: f64, text: String) -> Self {
        Self { from: (from.0 - by, from.1 - by), to: (to.0 + by, to.1 + by), text, puts: None }
    }

    /// What it says, where that is known from the start.
    pub(crate) fn own_words<S>(_: &S, spot: &Self, _: usize) -> String {
        spot.text.clone()
    }

    /// The same spot, setting `field` when it is looked at.
    #[must_use]
    pub fn putting(self, field: Field, value: usize) -> Self {
        Self { puts: Some((field, value.to_string())), ..self }
    }

    fn distance(&self, (x, y): Point) -> f64 {
        let dx = (self.from.0 - x).max(x - self.to.0).max(0.0);
        let dy = (self.from.1 - y).max(y - self.to.1).max(0.0);
        dx.hypot(dy)
    }

    fn to_middle(&self, (x, y): Point) -> f64 {
        ((self.from.0 + self.to.0) / 2.0 - x).hypot((self.from.1 + self.to.1) / 2.0 - y)
    }
}

/// The spot nearest to a point; between several under it, the one whose middle is nearest.
#[must_use]
pub fn nearest(spots: &[Spot], point: Point) -> Option<usize> {
    let rank = |spot: &Spot| (spot.distance(point), spot.to_middle(point));
    (0..spots.len()).min_by(|&a, &b| {
        let (a, b) = (rank(&spots[a]), rank(&spots[b]));
        a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
    })
}

/// Spots that an arrow key passes over with Shift.
const LEAP: usize = 10;

/// Where a key leads from the spot being looked at.
#[must_use]
pub fn by_key(spots: &[Spot], from: Option<usize>, key: &str) -> Option<usize> {
    let last = spots.len().checked_sub(1)?;
    let here = from.filter(|&index| index <= last);
    match (key, here) {
        ("Home", _) => Some(0),
        ("End", _) => Some(last),
        ("ArrowRight" | "ArrowDown" | "ArrowLeft" | "ArrowUp", None) => Some(0),
        ("ArrowRight" | "ArrowDown", Some(index)) => Some((index + 1).min(last)),
        ("ArrowLeft" | "ArrowUp", Some(index)) => Some(index.saturating_sub(1)),
        ("Shift+ArrowRight" | "Shift+ArrowDown", _) => Some((here.unwrap_or(0) + LEAP).min(last)),
        ("Shift+ArrowLeft" | "Shift+ArrowUp", _) => Some(here.unwrap_or(0).saturating_sub(LEAP)),
        ("PageDown", Some(index)) => Some((index + last / 10 + 1).min(last)),
        ("PageUp", Some(index)) => Some(index.saturating_sub(last / 10 + 1)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spots() -> Vec<Spot> {
        (0..3)
            .map(|i| {
                Spot::around((f64::from(i) * 10.0, 0.0), (f64::from(i) * 10.0 + 8.0, 8.0), 0.0, i.to_string())
            })
            .collect()
    }

    #[test]
    fn the_pointer_finds_the_nearest() {
        assert_eq!(nearest(&spots(), (12.0, 4.0)), Some(1));
        assert_eq!(nearest(&spots(), (500.0, 500.0)), Some(2));
        assert_eq!(nearest(&[], (0.0, 0.0)), None);
    }

    #[test]
    fn keys_stop_at_the_ends() {
        assert_eq!(by_key(&spots(), None, "ArrowRight"), Some(0));
        assert_eq!(by_key(&spots(), Some(2), "ArrowRight"), Some(2));
        assert_eq!(by_key(&spots(), Some(7), "End"), Some(2));
        assert_eq!(by_key(&spots(), Some(1), "Tab"), None);
        assert_eq!(
            ["Shift+ArrowRight", "Shift+ArrowLeft"].map(|key| by_key(&spots(), Some(1), key)),
            [Some(2), Some(0)]
        );
        assert_eq!(by_key(&[], None, "Home"), None);
    }
}
