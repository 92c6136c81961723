//! What would turn who is quicker.

use crate::lap::settled::Settled;
use crate::lap::turning::Turning;
use crate::layout::line::{Line, name};
use crate::number::plain;
use crate::side::Side;
use gear_math::chain::PinFriction;
use gear_math::course::{Doubt, DrawnVerdict, Turn, TurnedSide, Turner};
use gear_math::rider::CadenceCost;

/// What would turn it; none where that is not told.
pub(crate) fn turning(settled: &Settled) -> Option<Line> {
    let ahead = name(settled.ahead());
    let told = match settled.turning() {
        Turning::Untold => return None,
        Turning::Nothing => format!(
            "Nothing among what is unsure turns that by itself: {ahead} stays ahead from end to end of every likely range."
        ),
        Turning::NoSingle => "Nothing among what is unsure decides it by itself.".to_owned(),
        Turning::By(turners) => turners.iter().map(turns).collect::<Vec<_>>().join(" "),
    };
    Some(told.into())
}

fn turns(it: &Turner) -> String {
    let (noun, value) = (noun(it.doubt), value(it.doubt, it.at));
    match it.turn {
        Turn::Lead => {
            let [above, below] = [&it.above, &it.below].map(|side| name(ahead(side)));
            format!("Who is ahead turns with {noun}: above about {value} it is {above}, below that {below}.")
        }
        Turn::Surety => {
            let is_above = is_firm(&it.above);
            let firm = name(ahead(if is_above { &it.above } else { &it.below }));
            let (sure, open) = if is_above { ("above", "below") } else { ("below", "above") };
            format!(
                "{firm} is quicker in nearly all cases with {noun} {sure} about {value}; {open} that it is open."
            )
        }
    }
}

fn ahead(side: &TurnedSide) -> Side {
    if side.gained_s < 0.0 { Side::A } else { Side::B }
}

fn is_firm(side: &TurnedSide) -> bool {
    matches!(side.verdict, DrawnVerdict::First | DrawnVerdict::Second)
}

const fn noun(doubt: Doubt) -> &'static str {
    match doubt {
        Doubt::Efficiency => "gross efficiency",
        Doubt::Rolling => "rolling resistance",
        Doubt::FootGround => "what the ground costs on foot",
        Doubt::Load => "how much the carried bike weighs on you",
        Doubt::FootCost => "your cost on foot",
        Doubt::Drivetrain => "drivetrain efficiency",
        Doubt::Peak => "your peak power",
        Doubt::CadenceCost => "what an unwanted cadence costs",
        Doubt::Repaid => "what comes back to your reserve",
        Doubt::Lasting => "how much of your strength lasts",
        Doubt::Mounting => "the time for dismount and remount",
        Doubt::Grip => "grip",
        Doubt::Sustained => "your power",
        Doubt::Pins => "friction in the chain",
    }
}

/// A value, told no finer than to some tenth of its likely range.
fn value(doubt: Doubt, at: f64) -> String {
    let to = |step: f64, decimals: usize, after: &str| {
        format!("{}{after}", plain((at / step).round() * step, decimals))
    };
    let percent = |step: f64, decimals: usize| {
        format!("{}\u{a0}%", plain((100.0 * at / step).round() * step, decimals))
    };
    let usual = |times: f64| format!("{} times what is usual", plain(times, 1));
    match doubt {
        Doubt::Efficiency | Doubt::Drivetrain => percent(0.5, 1),
        Doubt::Repaid => percent(5.0, 0),
        Doubt::Lasting => percent(2.0, 0),
        Doubt::Rolling | Doubt::FootGround | Doubt::Grip => usual(at),
        Doubt::Load => to(0.1, 1, " times its weight"),
        Doubt::CadenceCost => usual(at / CadenceCost::USUAL.value()),
        Doubt::Pins => usual(at / PinFriction::USUAL.mm()),
        Doubt::FootCost => to(0.02, 2, " times the average"),
        Doubt::Peak => to(50.0, 0, "\u{a0}W"),
        Doubt::Sustained => to(2.0, 0, "\u{a0}W"),
        Doubt::Mounting => to(0.5, 1, "\u{a0}s"),
    }
}
