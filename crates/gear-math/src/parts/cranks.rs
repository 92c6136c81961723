//! Single rings by the cranks that they go on.

use crate::gears::{Chainring, Chainset};

/// Single rings by the crank that each goes on, with its label: those of one crank make pairs.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Cranks(Vec<(String, Vec<Chainring>)>);

/// What a label stands behind and what ends it: “crank 2: 46 42”.
const CRANK: &str = "crank";
const END: char = ':';

impl Cranks {
    /// Whether words begin with the label of a crank.
    pub(super) fn is_labelled(words: &[&str]) -> bool {
        matches!(words, [crank, label, ..] if Self::is_crank(crank) && Self::label(label).is_some())
    }

    pub(super) const fn is_crank(word: &str) -> bool {
        word.eq_ignore_ascii_case(CRANK)
    }

    /// A label by the piece that ends it.
    pub(super) fn label(piece: &str) -> Option<&str> {
        piece.strip_suffix(END).filter(|label| !label.is_empty())
    }

    /// Takes a ring that goes on the crank of a label, or of none.
    pub(super) fn take(&mut self, label: &str, ring: Chainring) {
        match self.0.iter_mut().find(|it| it.0 == label) {
            Some((_, rings)) => rings.push(ring),
            None => self.0.push((label.to_owned(), vec![ring])),
        }
    }

    /// How many rings there are.
    pub(super) fn rings(&self) -> usize {
        self.0.iter().map(|it| it.1.len()).sum()
    }

    /// Every two different rings of one crank, each pair once.
    pub(super) fn pairs(&self) -> Vec<Chainset> {
        let mut pairs = Vec::new();
        for (_, rings) in &self.0 {
            for (at, one) in rings.iter().enumerate() {
                pairs.extend(rings[at + 1..].iter().filter_map(|other| pair(*one, *other)));
            }
        }
        let mut seen = Vec::new();
        pairs.retain(|pair| {
            !seen.contains(pair) && {
                seen.push(*pair);
                true
            }
        });
        pairs
    }

    /// Single rings of a box on as few cranks as leave no pair that it has not.
    fn of(chainsets: &[Chainset]) -> Self {
        let mut cranks = Self::default();
        for ring in chainsets.iter().filter_map(alone) {
            let goes_on = |(_, rings): &(String, Vec<Chainring>)| {
                rings.iter().filter_map(|it| pair(ring, *it)).all(|it| chainsets.contains(&it))
            };
            let label = cranks.0.iter().find(|it| goes_on(it)).map(|it| it.0.clone());
            let next = (cranks.0.len() + 1).to_string();
            cranks.take(&label.unwrap_or(next), ring);
        }
        cranks
    }

    fn label_of(&self, ring: Chainring) -> &str {
        self.0.iter().find(|it| it.1.contains(&ring)).map_or("", |it| &it.0)
    }
}

/// Chainsets as text that [`Cranks`] makes them of: pairs that come of single rings are not told.
pub(super) fn told(chainsets: &[Chainset]) -> String {
    let cranks = Cranks::of(chainsets);
    let made = cranks.pairs();
    let (mut told, mut last) = (Vec::new(), "");
    for chainset in chainsets.iter().filter(|it| !made.contains(it)) {
        let label = alone(chainset).map_or(last, |ring| cranks.label_of(ring));
        if label != last && cranks.0.len() > 1 {
            told.push(format!("{CRANK} {label}{END}"));
        }
        last = label;
        told.push(chainset.to_string());
    }
    told.join(" ")
}

fn alone(chainset: &Chainset) -> Option<Chainring> {
    if let [ring] = chainset.rings() { Some(*ring) } else { None }
}

fn pair(one: Chainring, other: Chainring) -> Option<Chainset> {
    Chainset::new([one.teeth(), other.teeth()]).ok()
}
