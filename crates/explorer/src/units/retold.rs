//! Sentences of gear-math, which are in metric units with points, in those in force.

use crate::units::chosen::{Units, signed_so};
use crate::units::told::{Told, pressures};
use gear_math::typed::decimal;

/// A sentence with its numbers in the units in force in the place of those of `units`: of “30 mm”, “28 to 45 mm” and the
/// like. Where psi come first, “2.4 bar or 35 psi” changes its order.
pub(crate) fn retold(sentence: String, units: &[Told]) -> String {
    if Units::now() == Units::METRIC {
        return sentence;
    }
    let mut words: Vec<[&str; 3]> = sentence.split(' ').map(parts).collect();
    let mut numbers: Vec<(usize, String)> = Vec::new();
    for at in 1..words.len() {
        if let Some(unit) = units.iter().find(|unit| unit.is_other() && unit.own().symbol() == words[at][1]) {
            words[at][1] = unit.symbol();
            let is_range = at > 2 && matches!(words[at - 2][1], "to" | "and");
            for place in [at - 1].into_iter().chain(is_range.then(|| at - 3)) {
                let number = decimal(words[place][1]);
                numbers.extend(number.map(|value| (place, unit.number(value, 0))));
            }
        }
        if pressures().is_other() && words[at][1] == "bar" {
            swap(&mut words, at);
        }
    }
    let mut told: Vec<String> = words.iter().map(|word| marked(*word)).collect();
    for (place, number) in numbers {
        let [before, _, behind] = words[place];
        told[place] = [before, &number, behind].concat();
    }
    told.join(" ")
}

/// Puts the psi that stand behind a pressure in bar before it.
fn swap(words: &mut [[&str; 3]], bar: usize) {
    let psi = (bar + 2..words.len().min(bar + 4)).find(|&at| words[at][1] == "psi");
    for (one, other) in psi.into_iter().flat_map(|psi| [(bar, psi), (bar - 1, psi - 1)]) {
        (words[one][1], words[other][1]) = (words[other][1], words[one][1]);
    }
}

/// A word, and what stands round it before and behind.
fn parts(word: &str) -> [&str; 3] {
    let is_round = |letter: char| !letter.is_alphanumeric();
    let rest = word.trim_start_matches(is_round);
    let (before, _) = word.split_at(word.len() - rest.len());
    let (core, behind) = rest.split_at(rest.trim_end_matches(is_round).len());
    [before, core, behind]
}

/// A word with the decimal sign in force if it is a number: what is counted in paragraphs is none.
fn marked([before, core, behind]: [&str; 3]) -> String {
    let is_number = decimal(core).is_some();
    let core = if is_number { signed_so(core.to_owned()) } else { core.to_owned() };
    [before, &core, behind].concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{lengths, masses};

    #[test]
    fn a_sentence_is_told_in_the_units_in_force() {
        let told = |sentence: &str| retold(sentence.to_owned(), &[lengths(), masses()]);
        let sentences = [
            "Between 89 and 100 mm from pedal to tyre.",
            "More than 30 mm of spacers, about 3 mm; 240 to 300 mm long.",
            "For 40 to 130 kg, 0.4 to 1.2 m (UCI 1.3.013, 9°).",
            "The mark is 2.42 bar or 35 psi, but less than 5.0 bar (72 psi).",
            "Gauges differ by several psi.",
        ];
        assert_eq!(sentences.map(told), sentences);
        let _in_force = Units { comma: true, ..Units::IMPERIAL }.enter();
        assert_eq!(
            sentences.map(told),
            [
                "Between 3,50 and 3,94 in from pedal to tyre.",
                "More than 1,18 in of spacers, about 0,12 in; 9,45 to 11,81 in long.",
                "For 88 to 287 lb, 0,4 to 1,2 m (UCI 1.3.013, 9°).",
                "The mark is 35 psi or 2,42 bar, but less than 72 psi (5,0 bar).",
                "Gauges differ by several psi.",
            ]
        );
    }
}
