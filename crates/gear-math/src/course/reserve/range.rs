//! The speeds looked at in a place.

/// Part of the speeds looked at that lie outside of the likely ones, where there is room for more.
const OUTSIDE: f64 = 0.3;
/// Speeds nearer than this share are one.
const SAME: f64 = 1e-9;

/// The speeds looked at in a place: all that are possible, and closer together those that are likely.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Range {
    /// Slowest and fastest, m/s.
    pub(super) possible: [f64; 2],
    /// The same of the likely ones.
    pub(super) likely: [f64; 2],
}

impl Range {
    pub(super) const fn even(possible: [f64; 2]) -> Self {
        Self { possible, likely: possible }
    }

    /// So many speeds from the slowest to the fastest, in equal ratios in each part.
    pub(super) fn nodes(&self, count: usize) -> impl Iterator<Item = f64> {
        let ([slowest, fastest], [low, high]) = (self.possible, self.likely);
        let [below, above] = [low / slowest, fastest / high].map(f64::ln);
        let (outside, room) = ((OUTSIDE * count as f64).round(), below + above);
        let part =
            |length: f64| if length > SAME { (outside * length / room).round().max(1.0) as usize } else { 0 };
        let [below, above] = [below, above].map(part);
        let inside = count - 1 - below - above;
        ratios(slowest, low, below)
            .chain(ratios(low, high, inside))
            .chain(ratios(high, fastest, above))
            .chain([fastest])
    }
}

/// So many speeds from a slow one until before a fast one.
fn ratios(slow: f64, fast: f64, count: usize) -> impl Iterator<Item = f64> {
    let ratio = (fast / slow).powf(1.0 / count.max(1) as f64);
    core::iter::successors(Some(slow), move |speed| Some(speed * ratio)).take(count)
}
