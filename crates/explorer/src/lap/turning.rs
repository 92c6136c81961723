//! What would turn who is quicker, as far as it is told.

use crate::lap::settled::{Settled, Verdict};
use gear_math::course::Turner;

/// What may be said of that.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Turning<'s> {
    /// Nothing, because draws are to come, or there is no difference worth one.
    Untold,
    /// It turns on nothing that is unsure.
    Nothing,
    /// It is too close to call, and no single thing decides it.
    NoSingle,
    /// It turns on these, the one that matters most first.
    By(&'s [Turner]),
}

/// More than these are not named: a third is hardly beyond chance.
const MOST_NAMED: usize = 2;

impl Settled {
    /// What would turn who is quicker.
    #[must_use]
    pub fn turning(&self) -> Turning<'_> {
        let Some(turners) = &self.turners else { return Turning::Untold };
        match (self.verdict(), turners.len()) {
            (Verdict::Alike | Verdict::HardlyApart | Verdict::OpenToForcing, _) => Turning::Untold,
            (Verdict::OnlyJust | Verdict::Quicker, 0) => Turning::Nothing,
            (Verdict::Level | Verdict::TooClose, 0) => Turning::NoSingle,
            (_, count) => Turning::By(&turners[..count.min(MOST_NAMED)]),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lap::drawn::Drawn;
    use crate::lap::report::LapReport;
    use crate::lap::view::answer::tests::plain_text;
    use crate::lap::words::turning::turning;
    use crate::page::desk::Desk;
    use gear_math::course::{Draws, LapDraw};
    use maud::html;

    /// The laps of the demo with all draws in, B gaining what is said of each.
    fn drawn(gain: impl Fn(usize) -> f64) -> LapReport {
        let mut desk = Desk::default();
        desk.lap(false);
        let laps = LapReport::clone(desk.report().lap.laps.as_ref().unwrap());
        let draw = |number: usize| {
            let time_s = [400.0 + gain(number), 400.0];
            Drawn { number, draw: LapDraw { time_s, on_foot_m: [Vec::new(), Vec::new()] } }
        };
        laps.with((0..Draws::COUNT).map(draw).collect())
    }

    fn told(settled: &Settled) -> Option<String> {
        turning(settled).map(|line| plain_text(&html! { (line) }))
    }

    fn rolling(number: usize) -> f64 {
        Draws::usual().draw(number).rolling
    }

    #[test]
    fn what_turns_it_is_told_with_where_it_does() {
        let laps = drawn(|number| 20.0 * (rolling(number) - 1.1));
        let settled = laps.settled.as_ref().unwrap();
        assert_eq!(settled.verdict(), Verdict::TooClose);
        assert_eq!(
            told(settled).unwrap(),
            "Who is ahead turns with rolling resistance: above about 1.1 times what is usual it is B, below that A."
        );
        let other = drawn(|number| 20.0 * (1.1 - rolling(number)));
        assert!(told(other.settled.as_ref().unwrap()).unwrap().ends_with("it is A, below that B."));
    }

    /// Won by B in four of five draws below the upper third and in all of it.
    #[test]
    fn how_sure_it_is_is_told() {
        let laps = drawn(|number| {
            1.5 + 3.0 * (rolling(number) - 1.0) - if number.is_multiple_of(4) { 1.7 } else { 0.0 }
        });
        let words = told(laps.settled.as_ref().unwrap()).unwrap();
        assert!(
            words.starts_with(
                "B is quicker in nearly all cases with rolling resistance above about 1.1 times"
            ) && words.ends_with("; below that it is open."),
            "{words}"
        );
    }

    #[test]
    fn it_is_said_where_nothing_turns_it() {
        let mut settled = drawn(|number| 3.0 + rolling(number)).settled.unwrap();
        settled.gained.time_s = 4.0;
        assert_eq!(settled.verdict(), Verdict::Quicker);
        assert_eq!(
            told(&settled).unwrap(),
            "Nothing among what is unsure turns that by itself: B stays ahead from end to end of every likely range."
        );
        let by_chance = drawn(|number| if number * 37 % 64 < 32 { 4.0 } else { -4.0 });
        assert_eq!(
            told(by_chance.settled.as_ref().unwrap()).unwrap(),
            "Nothing among what is unsure decides it by itself."
        );
        assert_eq!(
            told(drawn(|number| if number % 2 == 0 { 0.2 } else { -0.2 }).settled.as_ref().unwrap()),
            None,
            "hardly apart"
        );
    }

    #[test]
    fn nothing_is_told_while_draws_are_to_come() {
        let laps = drawn(|number| 20.0 * (rolling(number) - 1.1));
        let most = laps.draws[..Draws::COUNT - 1].to_vec();
        let before = LapReport { draws: Vec::new(), ..laps }.with(most);
        assert_eq!(told(before.settled.as_ref().unwrap()), None);
    }
}
