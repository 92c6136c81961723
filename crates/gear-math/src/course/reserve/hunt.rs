//! The hunt for the price at which a lap takes its budget from the reserve.

/// Change of the logarithm of the price for a charge off by all that is sustained over the lap, until a lap on either side is
/// known: 3 to 5 on the courses of the tests.
pub(super) const USUAL_SLOPE: f64 = 4.0;
/// Slopes between laps that are taken for one: a jump between them looks flat, two laps much alike steep.
const SLOPES: [f64; 2] = [1.0, 6.0];
/// The furthest step of the logarithm.
const FURTHEST: f64 = 0.5;
/// Prices nearer than this share are one.
const SAME_PRICE: f64 = 2e-4;
/// Laps that cost within this of one another at a price are as good there, s.
pub(super) const SAME_S: f64 = 0.005;

/// A lap at a price.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tried {
    pub(super) price: f64,
    pub(super) time: f64,
    /// What it takes beyond the budget, J.
    pub(super) beyond: f64,
    /// What its gears count for beside that, J.
    pub(super) reluctance: f64,
}

impl Tried {
    /// What the lap costs at a price, s.
    pub(super) fn cost(&self, price: f64) -> f64 {
        self.time + price * self.counted()
    }

    fn counted(&self) -> f64 {
        self.beyond + self.reluctance
    }
}

/// The hunt for the price at which a lap takes its budget. What it takes falls as the price rises, with jumps where getting off
/// begins to pay.
#[derive(Debug, Clone)]
pub(super) struct Hunt {
    laps: Vec<Tried>,
    highest: f64,
    /// How far from the budget a lap may stay, J.
    near: f64,
    /// What is sustained over a lap, J.
    scale: f64,
    /// Slope until a lap on either side is known.
    slope: f64,
}

impl Hunt {
    pub(super) fn new(highest: f64, near: f64, scale: f64, slope: f64) -> Self {
        Self { laps: Vec::new(), highest, near, scale, slope }
    }

    /// Takes a lap and says which price to try next; none where a lap is known to be as good at it. A lap that is poorer at its
    /// own price than one before it was looked for from values that had not settled, so that the search goes on from them.
    pub(super) fn next(&mut self, lap: Tried) -> Option<f64> {
        let gain = self.cost(lap.price) - lap.cost(lap.price);
        self.laps.push(lap);
        let price = self.price();
        let same = (price / lap.price - 1.0).abs() <= SAME_PRICE || lap.beyond.abs() < self.near;
        let settled = if gain < 0.0 { gain > -SAME_S } else { same || gain < SAME_S };
        (!settled).then_some(price)
    }

    /// The price at which a lap should take the budget, by those that are known.
    pub(super) fn price(&self) -> f64 {
        let usual =
            |lap: &Tried| lap.price * (self.slope * lap.beyond / self.scale).clamp(-FURTHEST, FURTHEST).exp();
        self.even().or_else(|| self.laps.last().map(usual)).unwrap_or(self.highest).min(self.highest)
    }

    /// Change of the logarithm of the price for a charge off by all that is sustained, from the first lap to the last.
    pub(super) fn slope(&self) -> f64 {
        let ends = self.laps.first().zip(self.laps.last());
        let slope = ends.map_or(f64::NAN, |(first, last)| {
            (last.price / first.price).ln() * self.scale / (first.beyond - last.beyond)
        });
        if slope.is_finite() { slope.clamp(SLOPES[0], SLOPES[1]) } else { self.slope }
    }

    /// What the best lap costs at a price, s.
    pub(super) fn cost(&self, price: f64) -> f64 {
        self.laps.iter().map(|lap| lap.cost(price)).fold(f64::INFINITY, f64::min)
    }

    /// The price at which the best lap costs most: there one that takes too much and one that takes too little cost the same.
    ///
    /// # Formula
    /// λ = −ΔT/ΔN between the two, which at a jump is the price of the jump itself; it lies between the prices at which they were
    /// found, or one of them is not the best there is.
    pub(super) fn even(&self) -> Option<f64> {
        let (over, under) = self.sides();
        let between = |over: &Tried, under: &Tried| {
            let price = (under.time - over.time) / (over.counted() - under.counted());
            price.clamp(over.price.min(under.price), over.price.max(under.price))
        };
        let prices = over.iter().flat_map(|over| under.iter().map(move |under| between(over, under)));
        prices.max_by(|a, b| self.cost(*a).total_cmp(&self.cost(*b)))
    }

    /// The laps that take more than the budget, and those that do not.
    fn sides(&self) -> (Vec<Tried>, Vec<Tried>) {
        self.laps.iter().partition(|lap| lap.beyond > 0.0)
    }

    /// The price halfway between the laps nearest to the budget on either side; none where one side is unknown.
    pub(super) fn halfway(&self) -> Option<f64> {
        let (over, under) = self.sides();
        let nearest =
            |laps: &[Tried]| laps.iter().copied().min_by(|a, b| a.beyond.abs().total_cmp(&b.beyond.abs()));
        let [over, under] = [nearest(&over)?, nearest(&under)?];
        Some(0.5 * (over.price + under.price))
    }
}
