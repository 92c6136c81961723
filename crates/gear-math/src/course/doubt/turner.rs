//! What would turn who is quicker.

use crate::course::doubt::doubt::Doubt;
use crate::course::doubt::draw::{DOUBTS, Draw};
use crate::course::doubt::drawn_band::DrawnVerdict;
use crate::course::doubt::percentile::{band, share, sorted};
use crate::course::doubt::rank::rank_correlation;
use crate::course::lap::time_band::NOTHING_S;
use crate::course::reserve::setup::ReserveSetup;
use crate::order::{ascending, places};

/// Beyond chance is what chance alone would show in less than 1 of 100 comparisons of two bikes, two-sided and shared out evenly
/// among all doubts (Bonferroni; how sure is a choice): so many standard deviations of a rank correlation.
const BEYOND_CHANCE: f64 = 3.384;
const _: () = assert!(DOUBTS == 14, "1 % is shared out among fourteen");

/// What turns on a doubt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Turn {
    /// Who is ahead: one on the one side, the other on the other.
    Lead,
    /// Whether somebody is quicker in nearly all draws, which is so on one side alone.
    Surety,
}

/// The draws on one side of a value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TurnedSide {
    /// How many they are.
    pub count: usize,
    /// Median of what the second gains on the first, in seconds.
    pub gained_s: f64,
    /// Share of them in which the second is quicker.
    pub second_share: f64,
    /// How the two compare over them.
    pub verdict: DrawnVerdict,
}

/// A doubt by which it turns who is quicker.
///
/// # Formula
/// Spearman's rank correlation ρ over the draws of the doubt with what the second gains. Where neither has to do with the other, ρ
/// has the mean 0 and the variance 1 ∕ (n − 1) and is nearly normal (documentation of `spearman` in GNU Octave); a doubt counts
/// from |ρ| √(n − 1) = 3.38 on. It turns the lead where the medians of the lower and the upper third of its values lie on either
/// side of zero, at the value which parts the draws best into those won by the one and by the other. Otherwise it turns the
/// surety where the verdict over all draws and that over one of these thirds are not alike in whether somebody is quicker, at the
/// edge of the third.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turner {
    /// What is doubtful.
    pub doubt: Doubt,
    /// What turns on it.
    pub turn: Turn,
    /// Spearman's rank correlation with what the second gains.
    pub correlation: f64,
    /// Where it turns, as [`Doubt::value`] has it.
    pub at: f64,
    /// Below that.
    pub below: TurnedSide,
    /// Above that.
    pub above: TurnedSide,
}

impl Turner {
    /// All of a pair at draws, each with what the second gains in it, in seconds: what turns the lead first, then what goes most
    /// closely with the difference. `step_error_s` is as in [`DrawnBand::of`](crate::course::DrawnBand::of).
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Drivetrain, LapSetup, Power, Rider};
    /// use gear_math::course::{Doubt, Draws, ReserveSetup, Turn, Turner};
    /// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve};
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
    /// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    /// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
    /// let given = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
    /// let done: Vec<_> = Draws::usual().all().map(|draw| (draw, 10.0 * (draw.rolling - 1.1))).collect();
    /// let turners = Turner::all(&given, &done, 0.0);
    /// assert_eq!((turners.len(), turners[0].doubt, turners[0].turn), (1, Doubt::Rolling, Turn::Lead));
    /// assert!((turners[0].at - 1.1).abs() < 0.01 && turners[0].above.gained_s > 0.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn all(given: &ReserveSetup, done: &[(Draw, f64)], step_error_s: f64) -> Vec<Self> {
        let gains: Vec<f64> = done.iter().map(|it| it.1).collect();
        let of = |doubt: Doubt| {
            let values: Vec<f64> = done.iter().map(|(draw, _)| doubt.value(draw, given)).collect();
            Self::of(doubt, &values, &gains, step_error_s)
        };
        let mut all: Vec<Self> = Doubt::ALL.into_iter().filter_map(of).collect();
        let after = |it: &Self| f64::from(u8::from(it.turn == Turn::Surety)) - it.correlation.abs();
        ascending(&mut all, after);
        all
    }

    fn of(doubt: Doubt, values: &[f64], gains: &[f64], step_error_s: f64) -> Option<Self> {
        let correlation = rank_correlation(values, gains);
        if correlation.abs() * (gains.len() as f64 - 1.0).max(0.0).sqrt() < BEYOND_CHANCE {
            return None;
        }
        let order = places(values);
        let ordered = Ordered {
            values: order.iter().map(|at| values[*at]).collect(),
            gains: order.iter().map(|at| gains[*at]).collect(),
            step_error_s,
        };
        let (turn, cut) = ordered.turn()?;
        let [below, above] = [&ordered.gains[..cut], &ordered.gains[cut..]].map(|it| ordered.side(it));
        let at = ordered.values[cut - 1].midpoint(ordered.values[cut]);
        Some(Self { doubt, turn, correlation, at, below, above })
    }
}

/// Values of a doubt from the lowest, with what the second gains at each.
struct Ordered {
    values: Vec<f64>,
    gains: Vec<f64>,
    step_error_s: f64,
}

impl Ordered {
    /// What turns, and how many draws lie below where it does.
    fn turn(&self) -> Option<(Turn, usize)> {
        let (count, third) = (self.gains.len(), self.gains.len() / 3);
        let (lower, upper) = self.gains.split_at(count - third);
        let [lower, upper] = [&lower[..third], upper].map(|it| self.side(it));
        if lower.gained_s.abs().min(upper.gained_s.abs()) >= NOTHING_S
            && lower.gained_s * upper.gained_s < 0.0
        {
            return Some((Turn::Lead, self.parted(upper.gained_s)?));
        }
        let is_firm = self.side(&self.gains).is_firm();
        let cut = match (lower.is_firm() != is_firm, upper.is_firm() != is_firm) {
            (true, false) => third,
            (false, true) => count - third,
            _ => return None,
        };
        self.is_edge(&cut).then_some((Turn::Surety, cut))
    }

    /// How many draws lie below the value that parts those won by the one from those won by the other best; the middle one of
    /// several.
    fn parted(&self, above: f64) -> Option<usize> {
        let is_won_above = |gain: &f64| gain * above > 0.0;
        let right = |cut: usize| {
            let below = self.gains[..cut].iter().filter(|gain| !is_won_above(gain)).count();
            below + self.gains[cut..].iter().filter(|gain| is_won_above(gain)).count()
        };
        let edges = || (1..self.values.len()).filter(|cut| self.is_edge(cut));
        let most = edges().map(right).max()?;
        let best: Vec<usize> = edges().filter(|cut| right(*cut) == most).collect();
        best.get(best.len() / 2).copied()
    }

    fn is_edge(&self, cut: &usize) -> bool {
        self.values[cut - 1] < self.values[*cut]
    }

    fn side(&self, gains: &[f64]) -> TurnedSide {
        let gains = sorted(gains.iter().copied());
        let gained = band(&gains);
        TurnedSide {
            count: gains.len(),
            gained_s: gained.time_s,
            second_share: share(&gains, |gain| gain > 0.0),
            verdict: DrawnVerdict::of(&gains, self.step_error_s),
        }
    }
}

impl TurnedSide {
    fn is_firm(&self) -> bool {
        matches!(self.verdict, DrawnVerdict::First | DrawnVerdict::Second)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::doubt::draws::Draws;
    use crate::course::lap::setup::LapSetup;
    use crate::rider::{
        Air, Bike, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, Power, Rider,
        WorkReserve,
    };
    use crate::{Circumference, Drivetrain};

    fn given() -> ReserveSetup {
        let rider =
            Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(230.0).unwrap());
        let drivetrain = Drivetrain {
            chainset: "40".parse().unwrap(),
            cassette: "11-13-15-17-20-23-27-32".parse().unwrap(),
        };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2100.0).unwrap());
        let effort =
            CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body)).unwrap();
        ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
    }

    fn turners(gain: impl Fn(usize, &Draw) -> f64) -> Vec<Turner> {
        let done: Vec<_> =
            Draws::usual().all().enumerate().map(|(at, draw)| (draw, gain(at, &draw))).collect();
        Turner::all(&given(), &done, 0.0)
    }

    #[test]
    fn nothing_turns_two_alike() {
        assert!(turners(|_, _| 0.0).is_empty());
        assert!(turners(|_, _| 2.0).is_empty(), "always as far apart");
        assert!(Turner::all(&given(), &[], 0.0).is_empty());
    }

    #[test]
    fn what_alone_makes_the_difference_is_named_alone() {
        for doubt in Doubt::ALL {
            let given = given();
            let values = sorted(Draws::usual().all().map(|draw| doubt.value(&draw, &given)));
            for (place, sign) in [(20, 1.0), (32, -1.0), (45, 1.0)] {
                let at = values[place].midpoint(values[place + 1]);
                let span = values[63] - values[0];
                let named = turners(|_, draw| sign * 30.0 * (doubt.value(draw, &given) - at) / span);
                let [turner] = named[..] else { panic!("{doubt:?} alone: {named:?}") };
                assert_eq!((turner.doubt, turner.turn), (doubt, Turn::Lead));
                assert!((turner.at - at).abs() < 1e-9, "{doubt:?}: {} for {at}", turner.at);
                assert!(turner.above.gained_s * sign > 0.0 && turner.below.gained_s * sign < 0.0);
                assert_eq!([turner.below.count, turner.above.count], [place + 1, 63 - place]);
                let won = turner.above.second_share - turner.below.second_share;
                assert!((won - sign).abs() < 1e-12, "all of one side, none of the other");
            }
        }
    }

    #[test]
    fn what_never_turns_the_verdict_is_not_named() {
        assert!(turners(|_, draw| 2.0 + draw.rolling).is_empty(), "second throughout");
        let unsure = turners(|_, draw| 5.0 * (draw.grip - 0.9));
        let [lead] = unsure[..] else { panic!("one") };
        assert_eq!((lead.doubt, lead.turn), (Doubt::Grip, Turn::Lead));
    }

    /// Ahead for the better part of grip, and surely so above its upper third alone.
    #[test]
    fn a_lead_that_is_sure_on_one_side_is_told() {
        let named = turners(|at, draw| 1.0 + 3.0 * (draw.grip - 1.0) + if at % 4 == 0 { -1.1 } else { 0.0 });
        let [turner] = named[..] else { panic!("{named:?}") };
        assert_eq!((turner.doubt, turner.turn), (Doubt::Grip, Turn::Surety));
        assert_eq!(turner.above.verdict, DrawnVerdict::Second);
        assert_eq!(turner.below.verdict, DrawnVerdict::TooClose);
        assert!((turner.at - 1.067).abs() < 0.005, "{}", turner.at);
    }

    #[test]
    fn two_that_turn_it_are_named_strongest_first() {
        let named = turners(|_, draw| 20.0 * (draw.rolling - 1.0) - 5.0 * (draw.mounting - 1.17));
        let doubts: Vec<Doubt> = named.iter().map(|it| it.doubt).collect();
        assert_eq!(doubts, [Doubt::Rolling, Doubt::Mounting]);
        assert!(named[0].correlation > 0.0 && named[1].correlation < 0.0);
    }

    /// What has to do with none of them is said to turn on one in no more than 2 of 100 cases.
    #[test]
    fn chance_turns_nothing() {
        let mut state = 7_u64;
        let mut next = || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) as f64 / f64::from(1_u32 << 31) - 0.5
        };
        let given = given();
        let values = Doubt::ALL.map(|doubt| {
            (doubt, Draws::usual().all().map(|draw| doubt.value(&draw, &given)).collect::<Vec<f64>>())
        });
        let named = (0..2000).filter(|_| {
            let gains: Vec<f64> = (0..Draws::COUNT).map(|_| next()).collect();
            values.iter().any(|(doubt, values)| Turner::of(*doubt, values, &gains, 0.0).is_some())
        });
        let named = named.count();
        assert!((1..=40).contains(&named), "{named}");
    }
}
