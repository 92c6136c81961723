//! What stands under the tables: the toes, cautions, and what the workshop adds.

use crate::bench::field::Field;
use crate::layout::line::{Line, link_to, name, strong};
use crate::number::mm;
use crate::side::Side;
use crate::units::rounded_length;
use gear_math::chain::BottomBracketDrop;
use gear_math::position::ToeClearance;

/// Room between toes and tyre, of one side where the tyres differ.
pub(crate) fn toe_room(side: Option<Side>, toes: &ToeClearance) -> Line {
    let room = strong(&room(toes));
    let whose = side.map(|side| format!(" with {}’s tyre", name(side))).unwrap_or_default();
    format!("Toe overlap{whose}: {room} from pedal axle to tyre with the wheel turned into it.").into()
}

/// Rounded down, so that it does not read like the limit that it misses.
pub(crate) fn room(toes: &ToeClearance) -> String {
    rounded_length(toes.swept_mm, f64::floor)
}

/// Where the bottom bracket was taken to be: the chain has it too.
pub(crate) fn bracket(drop: BottomBracketDrop) -> Line {
    let drop = format!("{} below the axles", mm(drop.mm()));
    format!("Worked out with the bottom bracket {}.", link_to(Field::BottomBracketDrop, &drop)).into()
}

/// Over the cautions.
pub(crate) const BEFORE_RIDING: &str = "Before riding";

/// Over what the workshop adds from experience.
pub(crate) fn practice_title() -> Line {
    format!("{} (experience, no source)", strong("Workshop practice")).into()
}

/// What the workshop adds from experience.
pub(crate) fn practice() -> [Line; 4] {
    PRACTICE.map(|(what, words)| format!("{}{words}", strong(&format!("{what}. "))).into())
}

const PRACTICE: [(&str, &str); 4] = [
    (
        "Bottle",
        "One cage at most, on the seat tube: the arm goes through the main triangle and the down tube lies in the hand when the bike is shouldered.",
    ),
    (
        "Hoods",
        "Set them a touch higher than on the road, so that the hands stay put over ruts and the levers are in reach from behind the saddle. Check the reach of both from the drops.",
    ),
    (
        "Pedals",
        "Release tension low for mud, so that a clogged cleat still lets go; higher on rough, dry ground, so that the foot is not shaken out. Try both feet standing still.",
    ),
    (
        "Rear derailleur",
        "In mud shift one sprocket at a time, ease off while it moves, and do not backpedal with grass in the pulleys: a clogged cage twists the hanger. Look at the hanger after every fall.",
    ),
];
