//! The stem note, and what to heed before the lap is ridden.

use crate::lap::report::LapReport;
use crate::lap::stem_note::FootPart;
use crate::layout::line::{Line, name, strong};
use crate::number::{brief, percent, plain, with_unit};
use crate::ride::words::terms::surface_name;
use crate::side::Side;
use crate::units;
use crate::words::listed;
use crate::words::ways_in;
use gear_math::course::{PlanPart, WhyOnFoot};
use gear_math::rider::Reason;

/// Over the stem note.
pub(crate) const STEM_NOTE: &str = "Stem note: where to dismount and remount";

/// Over what to heed.
pub(crate) const HEED: &str = "Before you ride it";

/// Where there is nothing to dismount for.
pub(crate) const RIDE_ALL: &str = "ride it all";

/// Where there is nothing to ride.
pub(crate) const ALL_ON_FOOT: &str = "on foot all the way";

/// Over the list of both set-ups.
pub(crate) fn of_both() -> Line {
    format!("{} and {}, {} from the line", name(Side::A), name(Side::B), ways_in()).into()
}

/// Over the list of one set-up.
pub(crate) fn of_one(side: Side) -> Line {
    format!("{}, {} from the line", name(side), ways_in()).into()
}

/// Where to dismount and remount.
pub(crate) fn dismount(part: &PlanPart, length_m: f64) -> Line {
    let [from, to] = [part.from_m, part.to_m].map(|at| strong(&units::distances().print(at, 0)));
    match FootPart::of(part, length_m) {
        FootPart::Spot => format!("on foot at {from}"),
        FootPart::FromLine => format!("on foot over the line, remount {to}"),
        FootPart::ToLine => format!("dismount {from}, on foot to the line"),
        FootPart::AcrossLine => format!("dismount {from}, remount {to} beyond the line"),
        FootPart::Within => format!("dismount {from}, remount {to}"),
    }
    .into()
}

/// Why a part is gone on foot, what it looks like, and how long it takes.
pub(crate) fn remark(laps: &LapReport, part: &PlanPart) -> String {
    let (surface, gradient) = laps.looks_of(part);
    let (why, gradient, time) = (why(part.why), percent(gradient, 0), brief(part.time_s));
    format!("{why}, {gradient}, {}, {time}", surface.name())
}

const fn why(why: Option<WhyOnFoot>) -> &'static str {
    match why {
        Some(WhyOnFoot::Obstacle) => "obstacle",
        Some(WhyOnFoot::Because(Reason::Gear)) => "no gear low enough",
        Some(WhyOnFoot::Because(Reason::Force)) => "legs not strong enough",
        Some(WhyOnFoot::Because(Reason::Balance)) => "too slow to balance",
        Some(WhyOnFoot::Because(Reason::Grip)) => "rear wheel slips",
        Some(WhyOnFoot::Because(Reason::Energy)) => "running is quicker",
        None => "",
    }
}

/// What the plan does not know.
pub(crate) const WALK_IT_FIRST: &str =
    "Walk the course before you ride it: the plan knows neither ruts and lines nor other riders.";

/// Of descents, which are assumed and not judged.
pub(crate) const DOWNHILL: &str = "Ride down only what you can see and stop on.";

/// When to ride it.
pub(crate) const WHILE_OPEN: &str = "Ride a course only while it is open to you.";

/// Of others on the way.
pub(crate) const RIGHT_OF_WAY: &str =
    "Where you record or ride a lap on public paths, others have the right of way.";

/// That descents and braking are assumed, and what the braking takes.
pub(crate) fn descents(laps: &LapReport) -> String {
    let braking = laps.question.setups[0].mounting.braking;
    let (needed, braking) = (plain(braking.friction_needed(), 2), with_unit(braking.m_per_s2(), 1, "m/s²"));
    let slippery: Vec<&str> = laps.slippery_grounds().into_iter().map(surface_name).collect();
    let descents = laps.steepest_descent().map_or_else(
        || "Descents".to_owned(),
        |steepest| format!("Descents, down to {},", percent(steepest, 0)),
    );
    let grip = if slippery.is_empty() {
        format!("takes a grip of {needed}")
    } else {
        let grounds = listed(&slippery);
        format!("takes a grip of {needed}, which {grounds} may not give when it is slippery")
    };
    format!("{descents} and braking are assumed, not judged: {braking} into bends {grip}.")
}
