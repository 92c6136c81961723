//! Where a rising function reaches a value.

/// The point in `low..=high` where `rising` reaches `target`; the nearer end when it does not do so in between.
pub(crate) fn point_reaching(target: f64, low: f64, high: f64, rising: impl Fn(f64) -> f64) -> f64 {
    /// More than the bits of a double's mantissa.
    const HALVINGS: u32 = 60;
    let (mut low, mut high) = (low, high);
    for _ in 0..HALVINGS {
        let middle = low.midpoint(high);
        if rising(middle) < target {
            low = middle;
        } else {
            high = middle;
        }
    }
    low.midpoint(high)
}
