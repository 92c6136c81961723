//! What riding and running, their limits and their doubts are called.

use crate::number::{plain, with_unit};
use crate::units::{self, Told};
use gear_math::Surface;
use gear_math::rider::{
    Advice, Answer, Basis, Gait, LimitsHeld, MarkKind, Reason, RollingCoefficient, Uncertain, Verdict,
};

/// The advice on a climb, as a verb.
pub(crate) const fn verb(advice: Advice) -> &'static str {
    match advice {
        Advice::Ride => "ride",
        Advice::Carry => "carry your speed",
        Advice::Force => "force it",
        Advice::TooClose => "too close to call",
        Advice::Run => "run",
    }
}

/// The limit that ends riding.
pub(crate) const fn limit(reason: Reason) -> &'static str {
    match reason {
        Reason::Gear => "no gear low enough",
        Reason::Force => "too little strength",
        Reason::Balance => "too slow to balance",
        Reason::Grip => "too little grip",
        Reason::Energy => "running is as quick",
    }
}

/// The same as a reason.
pub(crate) const fn because(reason: Reason) -> &'static str {
    match reason {
        Reason::Gear => "no gear is low enough",
        Reason::Force => "your strength does not last",
        Reason::Balance => "it is too slow to balance",
        Reason::Grip => "the rear wheel slips",
        Reason::Energy => "running is quicker",
    }
}

/// The verdict in a word or two.
pub(crate) const fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Ride => "ride",
        Verdict::Foot | Verdict::FootForced => "run",
        Verdict::TooClose => "too close to call",
    }
}

/// The verdict with the limits behind it.
pub(crate) fn judged(judgement: Verdict, limits: LimitsHeld) -> String {
    if !limits.any() {
        return verdict(judgement).to_owned();
    }
    let words: Vec<&str> = limits.reasons().map(limit).collect();
    format!("run: {}", words.join(", "))
}

/// The cadence that the full power asks for: in brackets where it is too slow to be turned, a word where it is too fast.
pub(crate) fn cadence(answer: &Answer) -> String {
    let rpm = plain(answer.riding.cadence.rpm(), 0);
    match answer.riding.held {
        None => format!("({rpm})"),
        Some(_) if answer.spins_out() => "spun out".to_owned(),
        Some(_) => rpm,
    }
}

/// How the rider moves on foot.
pub(crate) const fn gait(gait: Gait) -> &'static str {
    match gait {
        Gait::Run => "run",
        Gait::Walk => "walk",
    }
}

/// A mark on the axis of gradients, short enough to stand beside it on a phone.
pub(crate) const fn mark(kind: MarkKind) -> &'static str {
    match kind {
        MarkKind::Ends(Reason::Gear) => "gear too tall",
        MarkKind::Ends(Reason::Force) => "too little strength",
        MarkKind::Ends(Reason::Balance) => "too slow to balance",
        MarkKind::Ends(Reason::Grip) => "rear wheel slips",
        MarkKind::Ends(Reason::Energy) => "running as fast",
        MarkKind::TooCloseFrom => "too close to call",
        MarkKind::FootFrom => "running likely faster",
        MarkKind::BodyWeight => "over body weight",
        MarkKind::SlipsInJerks => "choppy: rear slips",
        MarkKind::FrontLifts => "choppy: front lifts",
    }
}

/// What a value rests on.
pub(crate) const fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Published => "published",
        Basis::Bracketed => "between published values",
        Basis::Estimate => "estimate",
    }
}

/// An uncertain input, its unit, and how many decimals its values need.
const fn uncertain(input: Uncertain) -> (&'static str, &'static str, usize) {
    match input {
        Uncertain::GrossEfficiency => ("gross efficiency", "", 2),
        Uncertain::Rolling => ("rolling resistance", "", 3),
        Uncertain::Load => ("cost of carrying the bike", "", 1),
        Uncertain::FootGround => ("cost of the ground on foot", "", 2),
        Uncertain::SlopeShare => ("cost of the ground on slopes", "", 0),
        Uncertain::FootCost => ("your cost on foot", "", 2),
        Uncertain::Standing => ("standing metabolic rate", "W/kg", 1),
        Uncertain::Drivetrain => ("drivetrain efficiency", "", 3),
        Uncertain::Power => ("power", "W", 0),
        Uncertain::BikeMass => ("bike mass", "", 1),
        Uncertain::LowestCadence => ("lowest cadence", "rpm", 0),
        Uncertain::Balance => ("slowest speed you can balance", "", 1),
        Uncertain::Friction => ("friction of the tyre", "", 2),
    }
}

/// The name of an uncertain input.
pub(crate) const fn doubtful(input: Uncertain) -> &'static str {
    uncertain(input).0
}

/// What it is told in, where that can be chosen.
fn told(input: Uncertain) -> Option<Told> {
    match input {
        Uncertain::BikeMass => Some(units::masses()),
        Uncertain::Balance => Some(units::winds()),
        _ => None,
    }
}

/// One value of an uncertain input, with its unit.
pub(crate) fn valued(input: Uncertain, value: f64) -> String {
    let (_, unit, decimals) = uncertain(input);
    told(input).map_or_else(
        || with_unit(value, decimals, unit).trim_end().to_owned(),
        |told| told.print(value, decimals),
    )
}

/// The two values an input is moved between.
pub(crate) fn moved(input: Uncertain, (low, high): (f64, f64)) -> String {
    let decimals = uncertain(input).2;
    let low = told(input).map_or_else(|| plain(low, decimals), |told| told.number(low, decimals));
    let high = valued(input, high);
    format!("{low} to {high}")
}

/// What every number of a ground off the road may be off by.
pub(crate) fn off_road() -> String {
    format!("±{} %", plain(100.0 * RollingCoefficient::OFF_BY, 0))
}

/// A surface as the form calls it.
pub(crate) use crate::bench::words::choices::ground as surface_name;

/// A ground, which has no surface where its values are the rider's own.
pub(crate) fn ground_name(surface: Option<Surface>) -> &'static str {
    surface.map_or("your own ground", surface_name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_form_names_the_surfaces_in_their_order() {
        assert_eq!(surface_name(Surface::Tarmac), "tarmac");
        assert_eq!(surface_name(Surface::Mud), "mud");
        assert_eq!(surface_name(Surface::LooseSand), "loose, dry sand");
    }
}
