//! Which set-up is quicker, and how far that is known.

use crate::lap::report::LapReport;
use crate::lap::settled::{Settled, Verdict};
use crate::layout::line::{Line, name, strong};
use crate::number::{clock, is_level, seconds_in, with_unit};
use crate::side::Side;
use crate::units;
use crate::words::{about_clock, counted, likely_share};
use gear_math::Lap;
use gear_math::course::{BandedLap, GainPart, Precision, TimeBand, TrackFault};

/// Until the lap is worked out.
pub(crate) const SOON: &str = "The lap is worked out as soon as you come here.";

/// Where the course is from a file that is not at hand.
pub(crate) const LACKS_FILE: &str = "This is about a course from a file, which a link does not carry: choose it below. Until then this is the Autumn meadow.";

/// Why a track gets no times.
pub(crate) fn no_times(course: &str, fault: &TrackFault) -> String {
    format!(
        "{course} cannot be used for a lap: {fault}. No times are given. Use another part of the track, smooth it over a longer length, or sketch the course."
    )
}

/// Where A and B are one bike.
pub(crate) fn alike() -> Line {
    format!("{} and {} are the same, so the lap is too.", name(Side::A), name(Side::B)).into()
}

/// Both laps in coarse steps.
pub(crate) fn first_look([a, b]: &[Lap; 2]) -> Line {
    let [time_a, time_b] = [a, b].map(|lap| clock(lap.time_s, Precision::WITHOUT_BAND));
    let (a, b) = (name(Side::A), name(Side::B));
    format!("Looking closer: at first sight {a} takes {time_a} and {b} {time_b}.").into()
}

/// Who is quicker, and by how much.
pub(crate) fn verdict(settled: &Settled) -> Line {
    let (gained, precision) = (settled.lead(), settled.gained.precision());
    let (ahead, behind) = (name(settled.ahead()), name(settled.ahead().other()));
    let seconds = |s: f64| format!("{}\u{a0}s", seconds_in(s, precision));
    let (gain, high) = (strong(&seconds(gained.time_s)), seconds(gained.high_s));
    let anything = if gained.low_s > 0.0 || is_level(gained.low_s, precision) {
        format!("anything from as quick as {behind} to {high} quicker")
    } else {
        format!("anything from {} slower to {high} quicker than {behind}", seconds(-gained.low_s))
    };
    let low = seconds_in(gained.low_s, precision);
    match settled.verdict() {
        _ if !settled.is_final => {
            format!("Being worked out: so far {ahead} gains {gain} a lap, and may be {anything}.")
        }
        Verdict::Alike => {
            let (a, b) = (name(Side::A), name(Side::B));
            format!("Between {a} and {b} this lap makes no difference.")
        }
        Verdict::HardlyApart => {
            let (a, b) = (name(Side::A), name(Side::B));
            format!(
                "Between {a} and {b} this lap makes hardly a difference: by the best guess {ahead} gains {gain}, and is likely {anything}."
            )
        }
        Verdict::Level => format!(
            "Too close to call: by the best guess neither is quicker, but {ahead} may be {anything}."
        ),
        Verdict::TooClose => format!(
            "Too close to call: by the best guess {ahead} gains {gain} a lap, but it may be {anything}."
        ),
        Verdict::OpenToForcing => format!(
            "Too close to call while forcing a gear is left out: at an even power {ahead} gains {gain} a lap, likely {low} to {high}."
        ),
        Verdict::OnlyJust => format!(
            "{ahead} is quicker here: it gains {gain} a lap, likely {low} to {high}, which is only just more than the uncertainty."
        ),
        Verdict::Quicker => format!(
            "{ahead} is quicker here: it gains {gain} a lap, likely {low} to {high}, which is more than the uncertainty."
        ),
    }
    .into()
}

/// Where the difference arises, when it is one place.
pub(crate) fn mainly(place: &GainPart) -> String {
    let (from, to) =
        (units::distances().number(place.span.from_m, 0), units::distances().print(place.span.to_m, 0));
    let whose = if place.gained_s < 0.0 { Side::A } else { Side::B };
    format!("Nearly all of what {whose} gains, it gains at {from} to {to}.")
}

/// The course, and the time of both where it is known.
pub(crate) fn course_and_times(course: &str, laps: &LapReport) -> Line {
    let length = units::long_distances().print(laps.length_m() / 1e3, 2);
    let climb = units::distances().print(laps.question.course.climb_m(), 0);
    let Some(settled) = &laps.settled else {
        return format!("{course}, {length} with {climb} of climbing:").into();
    };
    let [a, b] = Side::BOTH.map(|side| time(side, settled));
    format!("{course}, {length} with {climb} of climbing: {a}, {b}.").into()
}

fn time(side: Side, settled: &Settled) -> String {
    let (TimeBand { low_s, time_s, high_s }, precision) =
        (&settled.bands[side as usize], settled.precision());
    let (low, high) = (clock(*low_s, precision), clock(*high_s, precision));
    format!("{} {} (likely {low} to {high})", name(side), strong(&about_clock(*time_s, precision)))
}

/// How often to dismount.
pub(crate) fn dismounts([a, b]: &[Lap; 2]) -> Line {
    let [of_a, of_b] = [a, b].map(|lap| lap.dismounts().len());
    let [times_a, times_b] = [of_a, of_b].map(|count| strong(&times(count)));
    let (name_a, name_b) = (name(Side::A), name(Side::B));
    match (of_a, of_b) {
        _ if a.is_all_on_foot() && b.is_all_on_foot() => "You are on foot all the way.".to_owned(),
        _ if a.is_all_on_foot() || b.is_all_on_foot() => {
            format!("With {name_a} you {}, with {name_b} you {}.", often(a), often(b))
        }
        (0, 0) => "You never dismount.".to_owned(),
        (0, _) => format!("With {name_a} you never dismount, with {name_b} {times_b}."),
        (_, 0) => format!("With {name_b} you never dismount, with {name_a} {times_a}."),
        (of_a, of_b) if of_a == of_b => format!("With both you dismount {times_a}."),
        _ => format!("You dismount {times_a} with {name_a}, {times_b} with {name_b}."),
    }
    .into()
}

fn often(lap: &Lap) -> String {
    match lap.dismounts().len() {
        _ if lap.is_all_on_foot() => "are on foot all the way".to_owned(),
        0 => "never dismount".to_owned(),
        often => format!("dismount {}", times(often)),
    }
}

fn times(count: usize) -> String {
    match count {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        count => format!("{count} times"),
    }
}

/// What “likely” covers.
pub(crate) fn doubt() -> String {
    let (share, cadence, mounting) = (
        likely_share(),
        with_unit(BandedLap::CADENCE_RPM, 0, "rpm"),
        with_unit(BandedLap::MOUNTING_S, 0, "s"),
    );
    format!(
        "Likely means {share} cases, if the rider, the ground and the cost of running are off as far as published averages \
         usually are, the lowest cadence by {cadence}, and dismount and remount together by {mounting}. They move both laps \
         alike, so the difference is surer than either time. The power you hold is taken as given."
    )
}

/// That riding or running is open at so many places.
pub(crate) fn too_close(places: usize) -> String {
    let places = counted(places, "place", "places");
    format!("At {places} the choice between riding and running turns within that.")
}

/// Wind that was typed for the climb: from ahead above zero.
pub(crate) fn wind(headwind_m_per_s: f64) -> String {
    let which = if headwind_m_per_s > 0.0 { "against you" } else { "behind you" };
    let wind = units::winds().print(headwind_m_per_s.abs(), 1);
    format!(
        "The wind of {wind} {which} typed for “Ride or run?” is not in the lap, which goes round and meets it from every side."
    )
}
