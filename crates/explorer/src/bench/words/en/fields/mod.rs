//! Labels and help of every field, named after it.

mod chain;
mod lap;
mod position;
mod ride;
mod rings;
mod sheet;
mod tyre;

pub(crate) use {chain::*, lap::*, position::*, ride::*, rings::*, sheet::*, tyre::*};

#[cfg(test)]
mod tests {
    use crate::bench::field::Field;
    use gear_math::chain::ChainDefaults;
    use gear_math::position::{BarCloser, BarTolerance, Spacers};
    use gear_math::rider::{
        DragArea, DrivetrainEfficiency, FootCostFactor, GrossEfficiency, LoadFactor, SecondsLost, Stance,
        WorkReserve,
    };
    use gear_math::wheel::RaceLimit;

    /// Fields, and the numbers of gear-math that their help repeats.
    fn repeated() -> Vec<(Field, f64)> {
        let (frame, cage, hanger) = (ChainDefaults::FRAME, ChainDefaults::CAGE, ChainDefaults::HANGER);
        vec![
            (Field::Chainstay, frame.chainstay.mm()),
            (Field::BottomBracketDrop, frame.bottom_bracket_drop.mm()),
            (Field::PulleyCentres, cage.pulley_centres.mm()),
            (Field::GuideTeeth, f64::from(cage.guide.teeth())),
            (Field::TensionTeeth, f64::from(cage.tension.teeth())),
            (Field::PulleyGap, cage.gap.mm()),
            (Field::GuideAngle, cage.guide_angle.degrees()),
            (Field::RearStop, cage.rear_stop.degrees()),
            (Field::ForeStop, cage.fore_stop.degrees()),
            (Field::HangerDrop, hanger.drop.mm()),
            (Field::HangerSetback, hanger.setback.mm()),
            (Field::SecondsLost, SecondsLost::PRACTISED.s()),
            (Field::Efficiency, GrossEfficiency::TRAINED.share()),
            (Field::FootCost, FootCostFactor::MEAN.value()),
            (Field::Carry, LoadFactor::SHOULDERED.value()),
            (Field::DrivetrainShare, DrivetrainEfficiency::CLEAN.share()),
            (Field::DrivetrainShare, DrivetrainEfficiency::OFF_ROAD.share()),
            (Field::DragArea, DragArea::HOODS.m2()),
            (Field::RearWeight, Stance::SEATED.rear.value()),
            (Field::Reserve, WorkReserve::USUAL.kj()),
            (Field::WidthLimit, RaceLimit::UCI.mm()),
            (Field::BarCloserBy, BarCloser::USUAL.mm()),
            (Field::SpacersMost, Spacers::CARBON_STEERER.mm()),
            (Field::SpacersMost, Spacers::METAL_STEERER.mm()),
        ]
    }

    #[test]
    fn help_repeats_the_numbers_of_gear_math() {
        for (field, number) in repeated() {
            let help = field.spec().help.replace('−', "-");
            let is_it = |word: &str| word.parse::<f64>().is_ok_and(|said| (said - number).abs() < 1e-9);
            let numbers = |letter: char| !(letter.is_ascii_digit() || ".-".contains(letter));
            let said = help.split(numbers).any(|word| is_it(word.trim_end_matches('.')));
            assert!(said, "{field:?}: {number} is not in “{help}”");
        }
    }

    #[test]
    fn starts_are_what_gear_math_calls_usual() {
        let usual = [
            (Field::SecondsLost, SecondsLost::PRACTISED.s()),
            (Field::Efficiency, GrossEfficiency::TRAINED.share()),
            (Field::DrivetrainShare, DrivetrainEfficiency::OFF_ROAD.share()),
            (Field::Reserve, WorkReserve::USUAL.kj()),
            (Field::BarWithin, BarTolerance::USUAL.mm()),
            (Field::SpacersMost, Spacers::CARBON_STEERER.mm()),
        ];
        for (field, number) in usual {
            let start: f64 = field.spec().start.parse().unwrap();
            assert!((start - number).abs() < 1e-9, "{field:?}");
        }
    }
}
