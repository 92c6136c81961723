//! One draw of what is doubtful, as workers hand it over.

use gear_math::Course;
use gear_math::course::{Draws, LapDraw, ReserveSetup};

/// Both laps at one draw, and which draw that is.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawn {
    /// Its number.
    pub number: usize,
    /// What came of it.
    pub draw: LapDraw,
}

impl Drawn {
    /// Rides both.
    #[must_use]
    pub fn of(course: &Course, setups: &[ReserveSetup; 2], number: usize) -> Self {
        Self { number, draw: LapDraw::of(course, setups, &Draws::usual().draw(number)) }
    }

    /// All of it as numbers: which draw, both times, and both lists of ends of parts on foot behind their lengths.
    #[must_use]
    pub fn numbers(&self) -> Vec<f64> {
        let LapDraw { time_s: [a, b], on_foot_m } = &self.draw;
        let mut numbers = vec![self.number as f64, *a, *b];
        for spans in on_foot_m {
            numbers.push(spans.len() as f64);
            numbers.extend(spans.iter().flatten());
        }
        numbers
    }

    /// Those that stand one after another in these numbers, up to what makes none.
    #[must_use]
    pub fn all(mut numbers: &[f64]) -> Vec<Self> {
        core::iter::from_fn(|| {
            let (drawn, rest) = Self::first(numbers)?;
            numbers = rest;
            Some(drawn)
        })
        .collect()
    }

    fn first(numbers: &[f64]) -> Option<(Self, &[f64])> {
        let (&[number, a, b], rest) = numbers.split_first_chunk()?;
        let (of_a, rest) = spans(rest)?;
        let (of_b, rest) = spans(rest)?;
        let draw = LapDraw { time_s: [a, b], on_foot_m: [of_a, of_b] };
        Some((Self { number: number as usize, draw }, rest))
    }
}

fn spans(numbers: &[f64]) -> Option<(Vec<[f64; 2]>, &[f64])> {
    let (count, rest) = numbers.split_first()?;
    let (ends, rest) = rest.split_at_checked(2 * *count as usize)?;
    Some((ends.chunks_exact(2).map(|it| [it[0], it[1]]).collect(), rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn draws_come_back_as_they_went() {
        let drawn = |number: usize, on_foot_m| Drawn {
            number,
            draw: LapDraw { time_s: [100.0 + number as f64, 99.5], on_foot_m },
        };
        let sent = [drawn(3, [vec![], vec![[4.0, 9.0], [20.0, 31.5]]]), drawn(0, [vec![[1.0, 2.0]], vec![]])];
        let numbers: Vec<f64> = sent.iter().flat_map(Drawn::numbers).collect();
        assert_eq!(Drawn::all(&numbers), sent);
        assert_eq!(Drawn::all(&numbers[..numbers.len() - 1]), sent[..1], "a part of one is none");
        assert!(Drawn::all(&[]).is_empty());
    }
}
