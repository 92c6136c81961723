//! The hunt for the price at which a lap takes its budget from the reserve.

/// Change of the logarithm of the price for a charge off by all that is sustained over the lap, until a lap on either side is
/// known: 3 to 5 on the courses of the tests.
const USUAL_SLOPE: f64 = 4.0;
/// The furthest step of the logarithm.
const FURTHEST: f64 = 0.5;
/// Prices nearer than this share are one.
const SAME_PRICE: f64 = 2e-4;
/// Laps that cost within this of one another at a price are as good there, s.
const SAME_S: f64 = 0.005;

/// A lap at a price.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tried {
    pub(super) price: f64,
    pub(super) time: f64,
    /// What it takes beyond the budget, J.
    pub(super) beyond: f64,
}

impl Tried {
    /// What the lap costs at a price, s.
    pub(super) fn cost(&self, price: f64) -> f64 {
        self.time + price * self.beyond
    }
}

/// The hunt for the price at which a lap takes its budget. What it takes falls as the price rises, with jumps where getting off
/// begins to pay.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hunt {
    /// The laps nearest to the budget above and below.
    over: Option<Tried>,
    under: Option<Tried>,
    highest: f64,
}

impl Hunt {
    pub(super) fn new(highest: f64) -> Self {
        Self { over: None, under: None, highest }
    }

    /// Takes a lap, on which `scale` joules are sustained, and says which price to try next; none where it would be the same, or
    /// where nothing lies between the laps on both sides.
    ///
    /// # Formula
    /// λ = −ΔT/ΔN between a lap that takes too much and one that takes too little: at that price both cost the same, which at a
    /// jump is the price of the jump itself.
    pub(super) fn next(&mut self, lap: Tried, scale: f64) -> Option<f64> {
        let both = self.over.zip(self.under);
        let settled = both.is_some_and(|(over, _)| over.cost(lap.price) - lap.cost(lap.price) < SAME_S);
        if lap.beyond > 0.0 {
            self.over = Some(lap);
        } else {
            self.under = Some(lap);
        }
        let usual = lap.price * (USUAL_SLOPE * lap.beyond / scale).clamp(-FURTHEST, FURTHEST).exp();
        let price = self.even().unwrap_or(usual).min(self.highest);
        (!settled && (price / lap.price - 1.0).abs() > SAME_PRICE).then_some(price)
    }

    /// The price at which the laps on both sides cost the same.
    pub(super) fn even(&self) -> Option<f64> {
        let (over, under) = self.over.zip(self.under)?;
        let price = (under.time - over.time) / (over.beyond - under.beyond);
        Some(price.clamp(over.price.min(under.price), over.price.max(under.price)))
    }
}
