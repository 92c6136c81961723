//! What stands in a field, as it is shown and typed in the units in force.
//!
//! On the bench, and so in links and files, a bare number always means the field's metric unit, whatever is shown; a number
//! that was typed bare beside another unit is kept with that unit behind it. So nothing is lost by choosing units to and fro.

use crate::bench::field::{Field, Group, Kind};
use crate::bench::words::complaints as words;
use crate::number::trimmed;
use crate::units::{self, Told, Units, chosen::signed_so};
use gear_math::Limits;
use gear_math::typed::{decimal, decimal_in};
use std::borrow::Cow;

/// Between a number and the unit that it was typed beside.
const BETWEEN: char = ' ';

impl Field {
    /// The unit in force in the place of its own, if its quantity has another.
    fn told_in(self) -> Option<Told> {
        use Group::{CrossBike, CrossFrame, PositionFiner, RoadBike};
        let spec = self.spec();
        match (spec.unit, spec.kind) {
            (_, Kind::Slider(..)) => None,
            ("kg", _) => Some(units::masses()),
            ("km/h", _) => Some(units::speeds()),
            ("m/s", _) => Some(units::winds()),
            ("m", _) => Some(units::distances()),
            ("bar", _) => Some(units::pressures()),
            ("mm", _) if matches!(self, Self::RoadCrank | Self::CrossCrank) => None,
            ("mm", _) if matches!(spec.group, RoadBike | CrossBike | CrossFrame | PositionFiner) => {
                Some(units::lengths())
            }
            _ => None,
        }
    }

    /// Whether its unit can be chosen.
    #[must_use]
    pub fn has_other_unit(self) -> bool {
        self.told_in().is_some()
    }

    /// The unit beside it; empty when the value says it itself.
    #[must_use]
    pub fn unit(self) -> &'static str {
        self.told_in().map_or(self.spec().unit, Told::symbol)
    }

    /// A text of the bench as it is shown in the field.
    #[must_use]
    pub fn shown<'t>(self, text: &'t str) -> Cow<'t, str> {
        let told = self.told_in().and_then(|unit| in_unit(text, unit));
        told.unwrap_or_else(|| if self.is_number() { marked(text) } else { text.into() })
    }

    /// The same where it stands alone, with the unit behind a bare number.
    #[must_use]
    pub fn told(self, text: &str) -> String {
        let shown = self.shown(self.spec().words_for(text.trim()));
        if is_bare(&shown) {
            format!("{shown}\u{a0}{}", self.unit()).trim_end().to_owned()
        } else {
            shown.into()
        }
    }

    /// What was typed into the field as a text of the bench.
    #[must_use]
    pub fn kept<'t>(self, typed: &'t str) -> Cow<'t, str> {
        match self.told_in() {
            Some(unit) if unit.is_other() && is_bare(typed) => {
                format!("{}{BETWEEN}{}", typed.trim(), unit.symbol()).into()
            }
            _ => typed.into(),
        }
    }

    /// The number of a text typed beside another unit, where it lies within the limits of the metric one: it was perhaps meant
    /// so.
    pub(crate) fn meant_metric(self, text: &str, limits: &'static Limits) -> Option<String> {
        let unit = self.told_in()?;
        let number = text.trim().strip_suffix(unit.other().symbol()).filter(|_| unit.is_other())?.trim();
        limits.check(decimal(&dotted(number))?).ok()?;
        Some(number.to_owned())
    }

    /// What may be typed into it, in the unit in force: no further than the limits when it is rounded.
    pub(crate) fn range(self, limits: &Limits) -> String {
        match self.told_in().filter(|unit| unit.is_other() && unit.own().symbol() == limits.unit) {
            Some(unit) => {
                let [min, max] = [unit.value(limits.min), unit.value(limits.max)];
                words::range(&inward(min, f64::ceil), &inward(max, f64::floor), unit.symbol())
            }
            None => signed_so(limits.range()),
        }
    }

    /// Its line of help, with the numbers that stand in braces told in the unit in force.
    #[must_use]
    pub fn help(self) -> Cow<'static, str> {
        let help = self.spec().help;
        let Some(unit) = self.told_in().filter(|_| help.contains('{')) else { return numbers_marked(help) };
        let mut parts = help.split(['{', '}']);
        let mut said = parts.next().unwrap_or_default().to_owned();
        while let (Some(number), Some(words)) = (parts.next(), parts.next()) {
            let told = decimal(number).map_or(number.to_owned(), |number| unit.rough(number));
            said.push_str(&told);
            said.push_str(words);
        }
        numbers_marked(&said).into_owned().into()
    }

    fn is_number(self) -> bool {
        matches!(self.spec().kind, Kind::Number)
    }
}

/// A text of the bench told in a unit, where it would be another: a number typed beside this unit without it, any other that
/// can be understood turned into it. Beside the metric unit only what was typed beside the other is turned.
fn in_unit(text: &str, unit: Told) -> Option<Cow<'_, str>> {
    let (number, said) = split(text.trim());
    if unit.is_other() && said == unit.symbol() {
        return Some(marked(number));
    }
    if !unit.is_other() && said != unit.other().symbol() {
        return None;
    }
    let metric = decimal_in(&format!("{}{said}", dotted(number)), unit.own().symbol())?;
    Some(units::converted(unit.value(metric)).into())
}

/// A limit to three figures, by `rounding`.
fn inward(limit: f64, rounding: fn(f64) -> f64) -> String {
    let parts = match limit.abs() {
        100.0.. => 1.0,
        10.0.. => 10.0,
        _ => 100.0,
    };
    trimmed(rounding(limit * parts) / parts)
}

/// A number and what stands behind it.
fn split(text: &str) -> (&str, &str) {
    let end =
        text.find(|letter: char| !letter.is_ascii_digit() && !matches!(letter, '.' | ',' | '-' | '+' | '−'));
    let (number, said) = text.split_at(end.unwrap_or(text.len()));
    (number, said.trim_start())
}

/// Whether a text is a number and nothing else.
pub(crate) fn is_bare(text: &str) -> bool {
    let (number, said) = split(text.trim());
    said.is_empty() && decimal(&dotted(number)).is_some()
}

/// A number typed with a point, with the decimal sign in force; one typed with a comma keeps it.
fn marked(text: &str) -> Cow<'_, str> {
    if Units::now().comma && !text.contains(',') { signed_so(text.to_owned()).into() } else { text.into() }
}

/// Words with the decimal sign in force in the numbers among them.
fn numbers_marked(words: &str) -> Cow<'_, str> {
    if Units::now().comma { units::retold(words.to_owned(), &[]).into() } else { words.into() }
}

/// A typed number as it is read: a decimal comma and a true minus sign are understood.
pub(crate) fn dotted(text: &str) -> String {
    let text = text.replace('−', "-");
    if text.contains('.') { text } else { text.replacen(',', ".", 1) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_text_means_the_same_whatever_is_shown() {
        for (text, metric, imperial) in [
            ("62", "62", "136.7"),
            ("137 lb", "62.14", "137"),
            ("137,5 lb", "62.37", "137,5"),
            ("62 kg", "62 kg", "136.7"),
            ("9 st", "9 st", "9 st"),
            ("", "", ""),
            ("?", "?", "?"),
        ] {
            assert_eq!(Field::BodyMass.shown(text), metric);
            let _in_force = Units::IMPERIAL.enter();
            assert_eq!(Field::BodyMass.shown(text), imperial);
        }
        assert_eq!(Field::BodyMass.told("62"), "62\u{a0}kg");
        let _in_force = Units { comma: true, ..Units::IMPERIAL }.enter();
        assert_eq!(Field::BodyMass.told("62"), "136,7\u{a0}lb");
        assert_eq!([Field::Chainstay, Field::RoadCrank].map(|field| field.shown("172.5")), ["172,5"; 2]);
        assert_eq!([Field::Tyre.shown("33-622"), Field::Slope.shown("1.5")], ["33-622", "1,5"]);
    }

    #[test]
    fn help_is_told_in_the_unit_in_force() {
        let told = || [Field::KitMass, Field::BarUpBy].map(|field| field.help().into_owned());
        assert_eq!(
            told(),
            [
                "Clothes, shoes, helmet, bottle; about 2 (estimate)",
                "10 to 20 by common practice; against the saddle"
            ]
        );
        let _in_force = Units::IMPERIAL.enter();
        assert_eq!(
            told(),
            [
                "Clothes, shoes, helmet, bottle; about 4.4 (estimate)",
                "0.39 to 0.79 by common practice; against the saddle"
            ]
        );
    }

    proptest! {
        #[test]
        fn what_is_typed_comes_back_as_typed(
            typed in "-?[0-9]{1,4}([.,][0-9]{0,3})?|\\PC{0,8}",
            imperial in any::<bool>(),
        ) {
            for &field in Field::ALL.iter().filter(|field| field.has_other_unit()) {
                let _in_force = if imperial { Units::IMPERIAL } else { Units::METRIC }.enter();
                let kept = field.kept(&typed).into_owned();
                let back = field.shown(&kept).into_owned();
                let other = split(typed.trim()).1;
                if other.is_empty() && is_bare(&typed) {
                    prop_assert_eq!(&back, if imperial { typed.trim() } else { &*typed });
                }
                // Whatever is shown in between, the bench still holds the same.
                let _then = if imperial { Units::METRIC } else { Units::IMPERIAL }.enter();
                let shown = field.shown(&kept).into_owned();
                prop_assert_eq!(field.shown(&kept), shown);
            }
        }

        #[test]
        fn what_is_shown_means_what_is_kept(thousandths in 1_u32..2_000_000) {
            let number = f64::from(thousandths) / 1000.0;
            for &field in Field::ALL.iter().filter(|field| field.has_other_unit()) {
                let _in_force = Units::IMPERIAL.enter();
                let kept = field.kept(&field.shown(&number.to_string())).into_owned();
                let again = decimal_in(&kept, field.spec().unit).unwrap();
                prop_assert!((again - number).abs() <= 0.0006 * number + 0.013, "{field:?}: {number} {kept}");
            }
        }
    }
}
