//! Two laps compared, and what may be said of it.

use crate::number::is_level;
use crate::side::Side;
use gear_math::course::{
    DrawnBand, DrawnVerdict, ForcedPlace, GainPart, LapGains, Precision, Quicker, Span, TimeBand, Turner,
};
use std::rc::Rc;

/// Two laps compared, with their likely edges.
#[derive(Debug, Clone, PartialEq)]
pub struct Settled {
    /// Times of A and B.
    pub bands: [TimeBand; 2],
    /// Where riding or not is too close to call.
    pub too_close: [Vec<Span>; 2],
    /// Seconds B gains.
    pub gained: TimeBand,
    /// Places on foot that A and B would be quicker over by forcing a gear, those that pay best first.
    pub forced: [Vec<ForcedPlace>; 2],
    /// Where the difference arises.
    pub gains: Rc<LapGains>,
    /// What the draws say, where the bands are of draws.
    pub drawn: Option<DrawnBand>,
    /// By what of all that is doubtful it turns; none as long as not every draw is in.
    pub turners: Option<Vec<Turner>>,
    /// Whether no more draws will come, which could still turn it.
    pub is_final: bool,
}

/// What may be said of who is quicker.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Neither, whichever edge holds.
    Alike,
    /// Hardly: in nearly all draws they are less than a second apart.
    HardlyApart,
    /// Too close to call, and neither by the best guess.
    Level,
    /// Too close to call.
    TooClose,
    /// Forcing a gear, which is left out of the times, could turn it.
    OpenToForcing,
    /// The one ahead, by hardly more than the uncertainty.
    OnlyJust,
    /// The one ahead, by more than the uncertainty.
    Quicker,
}

/// What forcing makes of who is ahead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Forcing {
    /// Neither is then ahead by the best guess.
    Level,
    /// The other one is.
    Turns,
    /// The same one gains.
    Gains,
    /// The quicker one stays so.
    Stays,
}

/// Longer than this share of the lap is no place that can be walked to and looked at. Estimate.
const PLACE_SHARE: f64 = 0.25;

impl Settled {
    /// Who is quicker; the first is A. Nobody, as long as forcing a gear, where that is left out of the times, or draws to come
    /// could turn it, or draws and the laps themselves say otherwise.
    #[must_use]
    pub fn quicker(&self) -> Quicker {
        let quicker = match &self.drawn {
            Some(drawn) => quicker(&self.gained, drawn),
            None if self.with_forcing().quicker() == self.gained.quicker() => self.gained.quicker(),
            None => Quicker::TooClose,
        };
        if self.is_final { quicker } else { Quicker::TooClose }
    }

    /// What may be said of who is quicker.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        match (self.quicker(), self.gained.quicker()) {
            (Quicker::TooClose, _) if self.gained.is_nothing() => Verdict::Alike,
            (Quicker::TooClose, _) if self.is_hardly_apart() => Verdict::HardlyApart,
            _ if self.drawn.is_some() => self.verdict_of_draws(),
            (_, Quicker::TooClose) if self.gained.is_nothing_at_best() => Verdict::Level,
            (_, Quicker::TooClose) => Verdict::TooClose,
            (Quicker::TooClose, _) => Verdict::OpenToForcing,
            _ if self.gained.only_just() => Verdict::OnlyJust,
            _ => Verdict::Quicker,
        }
    }

    fn is_hardly_apart(&self) -> bool {
        self.drawn.as_ref().is_some_and(|drawn| drawn.verdict == DrawnVerdict::Alike)
    }

    fn verdict_of_draws(&self) -> Verdict {
        match self.quicker() {
            Quicker::TooClose if self.gained.is_nothing_at_best() => Verdict::Level,
            Quicker::TooClose => Verdict::TooClose,
            _ if self.gained.only_just() => Verdict::OnlyJust,
            _ => Verdict::Quicker,
        }
    }

    /// Who is ahead by the best guess.
    #[must_use]
    pub fn ahead(&self) -> Side {
        ahead(&self.gained)
    }

    /// Seconds that the one ahead gains.
    #[must_use]
    pub fn lead(&self) -> TimeBand {
        self.gain_of(self.ahead())
    }

    /// Seconds that one side gains on the other.
    #[must_use]
    pub fn gain_of(&self, side: Side) -> TimeBand {
        let TimeBand { low_s, time_s, high_s } = self.gained;
        match side {
            Side::A => TimeBand { low_s: -high_s, time_s: -time_s, high_s: -low_s },
            Side::B => self.gained,
        }
    }

    /// Who is ahead by the best guess with every place forced that may be.
    #[must_use]
    pub fn ahead_forced(&self) -> Side {
        ahead(&self.with_forcing())
    }

    /// What forcing makes of who is ahead.
    #[must_use]
    pub fn forcing(&self) -> Forcing {
        let forced = self.with_forcing();
        let is_firm = [self.gained.quicker(), self.quicker()].iter().all(|it| *it != Quicker::TooClose);
        match self.gained.time_s * forced.time_s {
            _ if forced.is_nothing_at_best() => Forcing::Level,
            opposed if opposed < 0.0 => Forcing::Turns,
            _ if is_firm => Forcing::Stays,
            _ => Forcing::Gains,
        }
    }

    /// Seconds B would gain with every place forced that may be.
    #[must_use]
    pub fn with_forcing(&self) -> TimeBand {
        let [a, b] = &self.forced;
        self.gained.moved(saved_s(b) - saved_s(a))
    }

    /// The one place where nearly all of the difference arises, on a lap of this length; none where that is no place.
    #[must_use]
    pub fn place(&self, length_m: f64) -> Option<&GainPart> {
        self.gains.main.as_ref().filter(|main| main.span.to_m - main.span.from_m <= PLACE_SHARE * length_m)
    }

    /// Where the one ahead gains most: nearly all of the difference, or else the largest part of it. None as long as more draws will
    /// come, or where nothing is left of the difference as it is told.
    #[must_use]
    pub fn stretch(&self) -> Option<&GainPart> {
        let is_told = self.is_final && !is_level(self.gained.time_s, self.gained.precision());
        let gains = |part: &&GainPart| part.gained_s * self.gained.time_s > 0.0;
        let largest = || {
            let parts = self.gains.parts.iter().filter(gains);
            parts.max_by(|a, b| a.gained_s.abs().total_cmp(&b.gained_s.abs()))
        };
        self.gains.main.as_ref().or_else(largest).filter(|_| is_told)
    }

    /// How finely both times are told.
    #[must_use]
    pub fn precision(&self) -> Precision {
        let [a, b] = &self.bands;
        a.precision().max(b.precision())
    }
}

/// Who is quicker by what the second gains and by the draws which that is from: nobody, where they say otherwise.
#[must_use]
pub fn quicker(gained: &TimeBand, drawn: &DrawnBand) -> Quicker {
    let quicker = gained.quicker();
    if quicker_in_draws(drawn) == quicker { quicker } else { Quicker::TooClose }
}

fn quicker_in_draws(drawn: &DrawnBand) -> Quicker {
    match drawn.verdict {
        DrawnVerdict::First => Quicker::First,
        DrawnVerdict::Second => Quicker::Second,
        DrawnVerdict::Alike | DrawnVerdict::TooClose => Quicker::TooClose,
    }
}

fn ahead(gained: &TimeBand) -> Side {
    if gained.time_s < 0.0 { Side::A } else { Side::B }
}

/// Seconds that forcing saves at these places.
#[must_use]
pub fn saved_s(places: &[ForcedPlace]) -> f64 {
    places.iter().map(ForcedPlace::saved_s).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lap::view::answer::tests::settled;
    use gear_math::course::LapDraw;

    /// B gains 2 s by every draw; what the laps themselves say is given.
    fn drawn(own_s: f64) -> Settled {
        let draw = |at: u8| LapDraw {
            time_s: [120.0 + f64::from(at), 118.0 + f64::from(at)],
            on_foot_m: [Vec::new(), Vec::new()],
        };
        let drawn = DrawnBand::of(&(0..20).map(draw).collect::<Vec<_>>(), 0.0).unwrap();
        Settled { drawn: Some(drawn), ..settled(drawn.gained.with_best(own_s)) }
    }

    #[test]
    fn nobody_is_quicker_while_draws_are_to_come_or_disagree_with_the_laps() {
        assert_eq!(drawn(2.0).verdict(), Verdict::Quicker);
        assert_eq!(drawn(-0.4).verdict(), Verdict::TooClose);
        assert_eq!(drawn(-0.4).ahead(), Side::A);
        assert_eq!(Settled { is_final: false, ..drawn(2.0) }.verdict(), Verdict::TooClose);
    }
}
