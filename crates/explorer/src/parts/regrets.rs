//! What of a box stands up to another day.

use gear_math::parts::Condition;

/// How many conditions there are.
const CONDITIONS: usize = Condition::ALL.len();

/// What of the best stands up to another day, by the numbers of laps.
#[derive(Debug, Clone, PartialEq)]
pub struct Regrets {
    /// Which is least regretted.
    pub least: usize,
    /// By how much at most it and the quickest are, s.
    pub worst_s: [f64; 2],
    /// Which is quickest under each condition but as entered, and how far the quickest as entered is behind it then, s.
    pub ahead: Vec<(Condition, usize, f64)>,
}

impl Regrets {
    /// Of laps by their numbers, the quickest in front, with what each is behind under every condition; none of nothing.
    #[must_use]
    pub fn of(numbers: &[usize], behind_s: &[f64]) -> Option<Self> {
        let rows: Vec<&[f64]> = behind_s.chunks_exact(CONDITIONS).collect();
        let worst = |row: &[f64]| row.iter().copied().fold(0.0, f64::max);
        let least = |figure: &dyn Fn(&[f64]) -> f64| {
            let figures = numbers.iter().zip(rows.iter().map(|row| figure(row)));
            figures.min_by(|a, b| a.1.total_cmp(&b.1))
        };
        let first = *rows.first()?;
        let (&number, worst_s) = least(&worst)?;
        let ahead = |(at, condition): (usize, Condition)| {
            let (&quickest, _) = least(&|row| row[at])?;
            Some((condition, quickest, first[at]))
        };
        let ahead = Condition::ALL.into_iter().enumerate().skip(1).filter_map(ahead).collect();
        Some(Self { least: number, worst_s: [worst_s, worst(first)], ahead })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_least_regretted_and_those_ahead_are_found() {
        let behind = [[0.0, 3.0, 0.0, 0.0, 0.0, 0.0], [1.0, 0.0, 1.5, 0.5, 0.2, 0.1]];
        let regrets = Regrets::of(&[7, 4], behind.as_flattened()).unwrap();
        assert_eq!((regrets.least, regrets.worst_s), (4, [1.5, 3.0]));
        let ahead: Vec<_> = regrets.ahead.iter().map(|it| (it.1, it.2)).collect();
        assert_eq!(ahead, [(4, 3.0), (7, 0.0), (7, 0.0), (7, 0.0), (7, 0.0)]);
        assert_eq!(Regrets::of(&[], &[]), None);
    }
}
