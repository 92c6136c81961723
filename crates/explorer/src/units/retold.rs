//! Sentences of gear-math, which are in metric units with points, in those in force.

use crate::units::chosen::{Units, signed_so};
use crate::units::told::{Told, pressures};

/// A sentence with its numbers in the units in force in the place of those of `units`: of “30 mm”, “28 to 45 mm” and the
/// like. Where psi come first, “2.4 bar or 35 psi” changes its order.
pub(crate) fn retold(sentence: String, units: &[Told]) -> String {
    if Units::now() == Units::METRIC {
        return sentence;
    }
    let words: Vec<&str> = sentence.split(' ').collect();
    let mut told: Vec<String> = words.iter().map(|word| marked(word)).collect();
    for at in 1..words.len() {
        if let Some(unit) =
            units.iter().find(|unit| unit.is_other() && unit.own().symbol() == core(words[at]))
        {
            told[at] = words[at].replace(unit.own().symbol(), unit.symbol());
            let is_range = at > 2 && matches!(words[at - 2], "to" | "and");
            for place in [at - 1].into_iter().chain(is_range.then(|| at - 3)) {
                if let Ok(value) = core(words[place]).parse() {
                    told[place] = words[place].replace(core(words[place]), &unit.number(value, 0));
                }
            }
        }
        if pressures().is_other() && core(words[at]) == "bar" {
            swap(&words, &mut told, at);
        }
    }
    told.join(" ")
}

/// Puts the psi that stand behind a pressure in bar before it.
fn swap(words: &[&str], told: &mut [String], bar: usize) {
    let behind = (bar + 2..words.len().min(bar + 4)).find(|&at| core(words[at]) == "psi");
    for (one, other) in behind.into_iter().flat_map(|psi| [(bar, psi), (bar - 1, psi - 1)]) {
        told[one] = words[one].replace(core(words[one]), &marked(core(words[other])));
        told[other] = words[other].replace(core(words[other]), &marked(core(words[one])));
    }
}

/// A word without what stands round it.
fn core(word: &str) -> &str {
    word.trim_matches(|letter: char| !letter.is_alphanumeric())
}

/// A word with the decimal sign in force if it is a number: what is counted in paragraphs is none.
fn marked(word: &str) -> String {
    let number = core(word);
    if number.parse::<f64>().is_ok() {
        word.replace(number, &signed_so(number.to_owned()))
    } else {
        word.to_owned()
    }
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
