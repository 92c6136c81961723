//! How fast cranks turn in all gears there are.

/// Turns of the crank a minute at 1 m/s in the lowest and the highest gear looked at: 12 m and 1.2 m to a turn.
const RANGE: [f64; 2] = [5.0, 50.0];

/// Gears in equal ratios from the highest to the lowest there are.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cranks;

/// A place among them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    below: usize,
    part: f64,
}

impl Cranks {
    /// Four per cent from one to the next.
    pub(super) const COUNT: usize = 60;

    pub(super) fn all() -> impl Iterator<Item = f64> {
        let ratio = (RANGE[1] / RANGE[0]).powf(1.0 / (Self::COUNT - 1) as f64);
        core::iter::successors(Some(RANGE[0]), move |turns| Some(turns * ratio)).take(Self::COUNT)
    }

    /// The place of a gear of so many metres to a turn of the crank.
    pub(super) fn of_development(m: f64) -> Place {
        Self::place(60.0 / m)
    }

    fn place(turns: f64) -> Place {
        let share = (turns / RANGE[0]).ln() / (RANGE[1] / RANGE[0]).ln();
        let place = (share * (Self::COUNT - 1) as f64).clamp(0.0, (Self::COUNT - 1) as f64);
        let below = (place as usize).min(Self::COUNT - 2);
        Place { below, part: place - below as f64 }
    }
}

impl Place {
    /// The value there, straight between the two beside it.
    #[inline]
    pub(super) fn of(self, values: &[f64]) -> f64 {
        let (below, above) = (values[self.below], values[self.below + 1]);
        below + self.part * (above - below)
    }
}
