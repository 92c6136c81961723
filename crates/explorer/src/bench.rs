//! The bench as typed: one text per field, right or wrong.

use crate::field::{Field, Group};

/// What stands in every field, exactly as typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bench(Vec<String>);

impl Default for Bench {
    /// The demo: a road-minded bike and the parts that might make it a cyclo-cross bike.
    fn default() -> Self {
        Self(Field::ALL.iter().map(|field| field.spec().start.to_owned()).collect())
    }
}

impl Bench {
    /// What stands in `field`.
    #[must_use]
    pub fn text(&self, field: Field) -> &str {
        &self.0[field as usize]
    }

    /// Writes `text` into `field`. Of one too long just so much is kept that its reader sees that it is.
    pub fn write(&mut self, field: Field, text: &str) {
        self.0[field as usize] = text.chars().take(field.longest() + 1).collect();
    }

    /// Whether it is the demo's, whatever is being looked at.
    #[must_use]
    pub fn is_demo(&self) -> bool {
        Field::ALL.iter().all(|&field| field.is_look() || self.text(field) == field.spec().start)
    }

    /// Exchanges set-up A and set-up B.
    #[must_use]
    pub fn swapped(&self) -> Self {
        Self(Field::ALL.iter().map(|field| self.text(field.twin()).to_owned()).collect())
    }

    /// Gives set-up B what set-up A has.
    #[must_use]
    pub fn with_a_copied_to_b(&self) -> Self {
        let source = |field: &Field| if field.spec().group == Group::SetupB { field.twin() } else { *field };
        Self(Field::ALL.iter().map(|field| self.text(source(field)).to_owned()).collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn swapping_twice_changes_nothing() {
        let bench = Bench::default();
        assert_ne!(bench.swapped(), bench);
        assert_eq!(bench.swapped().swapped(), bench);
    }

    #[test]
    fn a_copied_to_b_makes_both_alike() {
        let bench = Bench::default().with_a_copied_to_b();
        assert_eq!(bench, bench.swapped());
        assert_eq!(bench.text(Field::RingsB), Field::RingsA.spec().start);
    }
}
