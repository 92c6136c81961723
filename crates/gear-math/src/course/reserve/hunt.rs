//! The hunt for the price at which a lap takes its budget from the reserve.

/// Change of the logarithm of the price for a charge off by all that is sustained over the lap, until two prices are known:
/// 3 to 5 on the courses of the tests.
const USUAL_SLOPE: f64 = 4.0;
/// The furthest step of the logarithm.
const FURTHEST: f64 = 0.5;
/// Prices nearer than this share stand on both sides of a jump.
const JUMP: f64 = 1e-3;
/// How near the ends of the bracket a price is tried, as a share of it.
const MARGIN: f64 = 0.1;

/// The hunt for the price at which a lap takes its budget. What it takes falls as the price rises, with jumps where getting off
/// begins to pay.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hunt {
    /// Logarithm of a price and what it takes beyond the budget: the nearest above, and below.
    over: Option<(f64, f64)>,
    under: Option<(f64, f64)>,
    /// All that is sustained over the lap, J.
    scale: f64,
    highest: f64,
}

impl Hunt {
    pub(super) fn new(highest: f64) -> Self {
        Self { over: None, under: None, scale: 1.0, highest }
    }

    /// Takes a price and what it takes beyond the budget, and says which to try next; none at a jump.
    pub(super) fn next(&mut self, price: f64, beyond: f64, scale: f64) -> Option<f64> {
        let here = (price.ln(), beyond);
        self.scale = scale;
        if beyond > 0.0 {
            self.over = Some(here)
        } else {
            self.under = Some(here)
        }
        let next = match self.over.zip(self.under) {
            Some((over, under)) => between(over, under)?,
            None => here.0 + (USUAL_SLOPE * beyond / scale).clamp(-FURTHEST, FURTHEST),
        };
        Some(next.exp().min(self.highest))
    }
}

fn between(over: (f64, f64), under: (f64, f64)) -> Option<f64> {
    let width = under.0 - over.0;
    let share = over.1 / (over.1 - under.1);
    (width.abs() >= JUMP).then(|| over.0 + width * share.clamp(MARGIN, 1.0 - MARGIN))
}
