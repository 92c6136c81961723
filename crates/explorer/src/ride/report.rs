//! Riding against going on foot, for both set-ups.

use crate::number::plain;
use crate::ride::ground_row::{GroundRow, map};
use crate::ride::inputs::RideInputs;
use crate::ride::side::{Common, LEVEL, RideSide};
use crate::ride::spun_out::SpunOut;
use crate::ride::swing::{STILL, Swing, swings};
use crate::side::Side;
use gear_math::rider::{
    Climb, ClimbLength, Distance, Reason, RunningWins, Slope, SpeedBand, TornadoBar, Uncertain, Watched,
};
use gear_math::{Gear, Surface};
use std::cell::OnceCell;

/// Gradients of curves, tables and map: every half per cent.
const STEPS: u32 = 90;
/// Round lengths at which the picture of a climb may end, metres.
const LENGTHS: [f64; 14] =
    [10.0, 20.0, 40.0, 60.0, 80.0, 100.0, 150.0, 200.0, 300.0, 500.0, 1000.0, 2000.0, 3000.0, 5000.0];

/// A lower gear is worth a word where it helps over this many points of gradient.
const WORTH: f64 = 1.0;

/// The question of riding or running, worked out.
#[derive(Debug, Clone)]
pub struct RideReport {
    /// What it was worked out from.
    pub inputs: RideInputs,
    /// A and B.
    pub sides: [RideSide; 2],
    map: OnceCell<Vec<GroundRow>>,
    pays_up_to: [OnceCell<Option<Slope>>; 2],
    bars: [Vec<TornadoBar>; 2],
    /// What moves the end of riding, the widest first.
    pub swings: Vec<Swing>,
    /// How far the picture of the climb goes.
    pub far: ClimbLength,
}

impl RideReport {
    /// Works it out, with the lowest gears of A and B that may be used.
    pub(crate) fn of(inputs: &RideInputs, lowest: [Gear; 2]) -> Self {
        Self::beside(None, inputs, lowest)
    }

    /// The same, with what this report already knows of it.
    pub(crate) fn after(&self, inputs: &RideInputs, lowest: [Gear; 2]) -> Self {
        self.at_price_of(inputs).unwrap_or_else(|| Self::beside(Some(self), inputs, lowest))
    }

    fn beside(before: Option<&Self>, inputs: &RideInputs, lowest: [Gear; 2]) -> Self {
        let (inputs, gradients, far) = (inputs.clone(), gradients(), extent(inputs));
        let known = |side: Side| before.filter(|it| it.knows(side, &inputs, lowest[side as usize], far));
        let bars = Side::BOTH.map(|side| {
            known(side).map_or_else(|| tornado(&inputs, side), |it| it.bars[side as usize].clone())
        });
        let common = Common { inputs: &inputs, far, gradients: &gradients };
        let new = |side: Side| RideSide::new(side, lowest[side as usize], &common, &bars[side as usize]);
        let sides = Side::BOTH
            .map(|side| known(side).map_or_else(|| new(side), |it| it.sides[side as usize].clone()));
        let swings = swings(&bars);
        Self { map: OnceCell::new(), pays_up_to: Default::default(), swings, bars, sides, far, inputs }
    }

    /// Whether what it says of a side holds for these inputs as well.
    fn knows(&self, side: Side, inputs: &RideInputs, lowest: Gear, far: ClimbLength) -> bool {
        self.far == far && self.sides[side as usize].lowest == lowest && self.inputs.is_alike_on(side, inputs)
    }

    /// The same with these inputs, as far as it is known; nothing where more than the price of a joule is another.
    fn at_price_of(&self, inputs: &RideInputs) -> Option<Self> {
        let known = RideInputs { lap_price: self.inputs.lap_price, ..inputs.clone() };
        let sides = || self.sides.clone().map(|side| side.at_price_of(inputs));
        let fresh = || Self {
            sides: sides(),
            inputs: inputs.clone(),
            pays_up_to: Default::default(),
            ..self.clone()
        };
        (known == self.inputs).then(fresh)
    }

    /// Up to which slope riding a climb as long as this one pays.
    #[must_use]
    pub fn pays_up_to(&self, side: Side) -> Option<Slope> {
        let inputs = &self.inputs;
        *self.pays_up_to[side as usize].get_or_init(|| {
            let (ground, spending) = (inputs.ground(side), inputs.spending(side));
            let question = inputs.question(side);
            question.paced_crossover_at(&inputs.account(), ground, inputs.length, &spending, inputs.lost)
        })
    }

    /// Every ground on every slope.
    pub fn map(&self) -> &[GroundRow] {
        self.map.get_or_init(|| map(&self.inputs, &gradients()))
    }

    /// Whether what to do may still turn with the price that the lap on its way will have.
    #[must_use]
    pub fn may_turn(&self) -> bool {
        self.sides.iter().any(|side| side.may_turn)
    }

    /// The ground that was asked about; `None` for one with values of the rider's own.
    #[must_use]
    pub fn ground(&self) -> Option<Surface> {
        (!self.inputs.own.any()).then_some(self.inputs.surface)
    }

    /// The speed below which running this climb wins, on what it may take from the reserve at each side's price.
    #[must_use]
    pub fn running_wins_below(&self) -> [SpeedBand; 2] {
        self.sides.each_ref().map(|side| side.ascent.running_wins_below(self.inputs.length))
    }

    /// Whether running this climb wins only at speeds at which no gear is low enough any more.
    #[must_use]
    pub fn running_wins_below_the_gears(&self) -> bool {
        let below = |(wins, side): (SpeedBand, &RideSide)| wins.best < side.crossover.lowest_gear_speed;
        self.running_wins_below().into_iter().zip(&self.sides).all(below)
    }

    /// Where the legs cannot spin fast enough, told once where it is the same with both.
    pub fn spun_out(&self) -> impl Iterator<Item = SpunOut> + use<> {
        let [a, b] = [&self.sides[0], &self.sides[1]].map(|side| side.spun_out);
        a.into_iter().chain(b.filter(|_| a != b))
    }

    /// The input that moves the end of riding most.
    #[must_use]
    pub fn most_in_doubt(&self) -> Option<Uncertain> {
        let most = self.swings.first()?;
        Side::BOTH.iter().any(|&side| most.moves(side)).then_some(most.input)
    }

    /// What B changes against A.
    #[must_use]
    pub fn difference(&self) -> Difference {
        let [a, b] = &self.sides;
        let [of_a, of_b] = [a, b].map(|side| side.limited_to().unwrap_or(f64::INFINITY));
        let points = of_b - of_a;
        // With no limit on either side the difference is no number.
        if points.is_nan() || points.abs() < STILL {
            return self.beside_the_end();
        }
        let lower = if points > 0.0 { Side::B } else { Side::A };
        match points.abs() {
            points if points.is_finite() => Difference::Further { lower, points },
            _ if self.sides.iter().any(|it| it.running.earliest.is_some()) => Difference::UntilRunning(lower),
            _ => Difference::AllTheWay(lower),
        }
    }

    /// What differs where no end of riding tells the two apart.
    fn beside_the_end(&self) -> Difference {
        let [a, b] = &self.sides;
        let gears = [a, b].map(|side| side.crossover.lowest_gear_speed.km_per_h());
        if a.ascent == b.ascent && a.paced == b.paced && (gears[0] - gears[1]).abs() < STILL {
            Difference::Nothing
        } else if a.limited_to().is_some() {
            Difference::SameEnd
        } else {
            Difference::Elsewhere
        }
    }

    /// Whether riding ends at the same slope, also as it is told, and for the same reason with both.
    #[must_use]
    pub fn ends_alike(&self) -> bool {
        let [a, b] = &self.sides;
        let told = [a, b].map(|side| side.limited_to().map(|percent| plain(percent, 0)));
        let apart = matches!(self.difference(), Difference::Further { .. });
        let levels = [a, b].map(RideSide::fails_on_the_level);
        a.reason() == b.reason() && told[0] == told[1] && levels[0] == levels[1] && !apart
    }

    /// Where running wins on a slope that is held for long, as far as can be told.
    #[must_use]
    pub fn running_from(&self, side: Side) -> RunningFrom {
        let RunningWins { earliest, gradient, latest } = self.sides[side as usize].running;
        match (earliest.map(Slope::percent), gradient.zip(latest)) {
            (None, _) => RunningFrom::Nowhere,
            (_, Some((_, latest))) if latest.percent() < LEVEL => RunningFrom::TheLevel,
            (Some(low), Some((best, high))) => {
                RunningFrom::Slope { low, best: best.percent(), high: high.percent() }
            }
            (Some(from), None) => RunningFrom::TooClose { from },
        }
    }

    /// Up to which slope a lower gear than a side's lowest would be quicker than running, where that is worth a word.
    #[must_use]
    pub fn lower_gear_helps(&self) -> Option<LowerGearHelps> {
        let most = Climb::LIMITS.max;
        let limits = self.sides.iter().filter_map(RideSide::next_limit);
        let next = limits.min_by(|a, b| a.1.rise_over_run().total_cmp(&b.1.rise_over_run()));
        let running = self.sides.iter().filter_map(|side| side.running.earliest);
        let until = running.map(Slope::percent).fold(most, f64::min);
        let until = next.map_or(most, |(_, at)| at.percent()).min(until);
        let helped: Vec<Side> = self
            .sides
            .iter()
            .filter(|side| side.geared_to().is_some_and(|end| end + WORTH < until))
            .map(|it| it.side)
            .collect();
        let then = next.filter(|(_, at)| at.percent() <= until).map(|(limit, _)| limit);
        (!helped.is_empty()).then_some(LowerGearHelps { sides: helped, until, then })
    }
}

/// Where a gear lower than the lowest would be quicker than running.
#[derive(Debug, Clone, PartialEq)]
pub struct LowerGearHelps {
    /// The sides it helps.
    pub sides: Vec<Side>,
    /// Up to this slope, per cent.
    pub until: f64,
    /// The limit that no gear moves, where it is that which ends it.
    pub then: Option<Reason>,
}

/// What B changes against A.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Difference {
    /// Nothing that is looked at here.
    Nothing,
    /// A limit ends riding at the same slope with both, but not all else is alike.
    SameEnd,
    /// No limit ends riding with either before running wins, but not all else is alike.
    Elsewhere,
    /// One is ridden on steeper slopes than the other.
    Further {
        /// Which one.
        lower: Side,
        /// By so many points of gradient.
        points: f64,
    },
    /// No limit ends riding with this one before running wins, but one does with the other.
    UntilRunning(Side),
    /// This one is ridden all the way to 45 %, the other is not.
    AllTheWay(Side),
}

/// Where running wins; gradients in per cent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RunningFrom {
    /// Not up to 45 %.
    Nowhere,
    /// From here on it is too close to call.
    TooClose {
        /// The gradient.
        from: f64,
    },
    /// From here on, with the likely edges.
    Slope {
        /// Flat edge.
        low: f64,
        /// Best guess.
        best: f64,
        /// Steep edge.
        high: f64,
    },
    /// Everywhere.
    TheLevel,
}

fn tornado(inputs: &RideInputs, side: Side) -> Vec<TornadoBar> {
    let (question, ground) = (inputs.question(side), inputs.ground(side));
    question.tornado(ground, Watched::behind(question.flip(ground).as_ref()))
}

fn gradients() -> Vec<Climb> {
    (0..=STEPS).filter_map(|step| Climb::new(f64::from(step) / 2.0).ok()).collect()
}

/// How far the picture of the climb goes: past the climb, and past every break-even that is not far off.
fn extent(inputs: &RideInputs) -> ClimbLength {
    let length = inputs.length.m();
    let break_even = |side: &Side| {
        let question = inputs.question(*side);
        question
            .climb(inputs.ground(*side), inputs.climb, inputs.length, inputs.lost)
            .break_even
            .map(Distance::m)
    };
    let near = Side::BOTH.iter().filter_map(break_even).filter(|&pays| pays < 5.0 * length);
    let wanted = near.fold(length, f64::max);
    let round = LENGTHS.into_iter().find(|&round| round >= 1.25 * wanted);
    ClimbLength::new(round.unwrap_or(ClimbLength::LIMITS.max)).unwrap_or(inputs.length)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;
    use crate::page::scenario::Scenario;
    use gear_math::rider::Verdict;

    fn report(scenario: &Scenario) -> RideReport {
        RideReport::of(&scenario.ride, scenario.cages.lowest())
    }

    #[test]
    fn stretches_cover_the_map_without_a_gap() {
        let report = report(&Scenario::default());
        for row in report.map() {
            for stretches in &row.stretches {
                assert_eq!((stretches[0].from, stretches[stretches.len() - 1].to), (0.0, 45.0));
                assert!(stretches.windows(2).all(|pair| (pair[0].to - pair[1].from).abs() < 1e-9));
            }
        }
    }

    #[test]
    fn a_lower_gear_runs_out_later() {
        let report = report(&Scenario::default());
        for side in &report.sides {
            let gradients: Vec<_> =
                side.others.iter().map(|other| other.gradient.unwrap().percent()).collect();
            assert!(gradients[1..].iter().all(|&gradient| gradient > gradients[0]), "{gradients:?}");
        }
    }

    #[test]
    fn a_gear_that_fails_on_the_level_runs_out_there_and_the_map_ends_where_the_answer_does() {
        let mut bench = crate::bench::bench::Bench::default();
        for (field, text) in [(Field::RingsA, "42"), (Field::CassetteA, "16")] {
            bench.write(field, text);
        }
        let read = Scenario::read(&bench, &Scenario::default());
        let report = report(&read.scenario);
        assert_eq!(report.sides[0].others[0].gradient.map(Slope::percent), Some(0.0));
        let here = report.map().iter().find(|row| row.here).unwrap();
        let end = report.sides[1].flip().unwrap().gradient.percent();
        let forced = here.stretches[1].iter().find(|it| it.verdict == Verdict::FootForced).unwrap().from;
        assert!((forced - end).abs() < 0.02, "{forced} for {end}");
    }
}
