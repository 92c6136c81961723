//! Where the course comes from, what a file held, and what is not done about it.

use crate::bench::field::Field;
use crate::lap::own_course::{Origin, OwnCourse};
use crate::lap::refusal::Refusal;
use crate::lap::sketched::Sketched;
use crate::lap::words::not_taken::not_taken;
use crate::layout::line::{Line, link_to, strong};
use crate::number::{duration, percent, plain};
use crate::units;
use crate::words::{counted, listed};
use gear_math::course::{Demo, TrackElevation, TrackFault, TrackOptions, TrackPlace, TrackReport};
use gear_math::{Course, Gradient};

/// The rider's sketch.
pub(crate) const SKETCH: &str = "Your sketch";

/// A sketch that is not the rider's.
pub(crate) const DEMO_SKETCH: &str = "The sketch";

/// The name that a sketch is kept under.
pub(crate) const MINE: &str = "My course";

/// What is ridden: its name, length and climb, where it comes from, and how many changes are made on its stretches.
pub(crate) fn loaded(name: &str, course: &Course, origin: Origin<'_>, changes: usize) -> Line {
    let (length, climb) = (
        units::long_distances().print(course.length_m() / 1e3, 2),
        units::distances().print(course.climb_m(), 0),
    );
    let origin = match origin {
        Origin::Invented => ", invented".to_owned(),
        Origin::File(file) => format!(", from the file “{file}”"),
        Origin::Kept => ", kept in this browser".to_owned(),
        Origin::Sketch => String::new(),
    };
    let name = strong(name);
    let changed = match changes {
        0 => String::new(),
        changes => format!(", with {} on it", counted(changes, "change", "changes")),
    };
    format!("{name}: {length} with {climb} of climbing{origin}{changed}.").into()
}

/// While the file is still to be chosen.
pub(crate) const CHOOSE: &str = "Choose a file or a kept course. Your changes on stretches wait for it.";

/// On the button that rides all of a track.
pub(crate) const WHOLE_TRACK: &str = "Use the whole track";

/// On the button that rides its first lap.
pub(crate) const FIRST_LAP: &str = "Use the first lap";

/// An invented course.
pub(crate) const fn demo(demo: Demo) -> &'static str {
    match demo {
        Demo::Meadow => "Autumn meadow",
        Demo::SandPit => "Sand pit",
    }
}

/// Below the answer on a lap whose course is nobody's.
pub(crate) fn invented() -> Line {
    format!("The course is {}.", link_to(Field::Course, "an invented one")).into()
}

/// What is not done, and why.
pub(crate) fn refused(refusal: &Refusal) -> String {
    match refusal {
        Refusal::File(name, why) => {
            let why = not_taken(why);
            format!("“{name}” is not taken: {why}. The course stays as it was.")
        }
        Refusal::Part(why) => format!("That part of the track is not used: {}.", not_taken(why)),
        Refusal::Sketch => {
            "The sketch cannot hold this course: it has too many stretches. Keep it or save it as a file."
                .to_owned()
        }
        Refusal::Gone(name) => {
            format!(
                "“{name}” is no longer at hand: so many large files are not kept for undo. Choose it again."
            )
        }
    }
}

/// Why a track is no course.
pub(crate) fn no_course(name: &str, fault: &TrackFault) -> String {
    format!("{name} cannot be used for a lap: {fault}.")
}

/// What joining stretches did to a course.
pub(crate) fn sketched(sketched: &Sketched) -> String {
    let (now, before) = (sketched.joined.course.segments().len(), sketched.stretches);
    let error = units::distances().print(sketched.joined.height_error_m, 1);
    let [climb_now, climb_before] =
        [sketched.joined.course.climb_m(), sketched.climb_m].map(|m| units::distances().print(m, 0));
    let advice = if sketched.is_same() {
        "Short ramps are evened out, so look at the lap of both before you choose by one."
    } else {
        "That is another course: sketch one lap of it, or keep the file."
    };
    format!(
        "Put into the sketch as {now} stretches in place of {before}: no height is off by more than {error}, and it climbs {climb_now} in place of {climb_before}. {advice}"
    )
}

/// A course that was kept.
pub(crate) fn kept(own: &OwnCourse) -> String {
    let (name, stretches) = (&own.name, counted(own.course.segments().len(), "stretch", "stretches"));
    own.smoothing_m.map_or_else(
        || format!("{name}: {stretches}."),
        |m| {
            let length = units::distances().print(m, 0);
            format!("{name}: {stretches}, smoothed over {length} when it was read.")
        },
    )
}

/// A recorded track, and what was found in it.
pub(crate) fn track(name: &str, options: &TrackOptions, found: &TrackReport) -> String {
    let (length, part) = (units::long_distances().print(found.length_m / 1e3, 2), part_of(options));
    let (climbing, remarks, ends) = (climbing(found), remarks(found), ends(found));
    format!("{name}: {length} long{part}, {climbing}. Found: {remarks}. {ends}")
}

/// The climb as recorded, and what each step on the way to the course made of it.
fn climbing(found: &TrackReport) -> String {
    let elevation = &found.elevation;
    let mut words = vec![as_recorded(elevation), as_smoothed(elevation)];
    if changed(elevation.climb_smoothed_m, found.climb_m) {
        let taken = metres(found.climb_m);
        let steepest = percent(Gradient::LIMITS.max, 0);
        words.push(format!("{taken} with what is steeper than {steepest} taken as {steepest}"));
    }
    listed(&words)
}

fn as_recorded(elevation: &TrackElevation) -> String {
    let (recorded, written) = (metres(elevation.climb_recorded_m), metres(elevation.climb_written_m));
    if changed(elevation.climb_written_m, elevation.climb_recorded_m) {
        format!(
            "{recorded} of climbing as recorded ({written} with the points and elevations that are left out)"
        )
    } else {
        format!("{recorded} of climbing as recorded")
    }
}

fn as_smoothed(elevation: &TrackElevation) -> String {
    let (smoothed, length) = (metres(elevation.climb_smoothed_m), metres(elevation.smoothing_m));
    if elevation.levelled {
        format!("{smoothed} after smoothing over {length} and closing the loop")
    } else {
        format!("{smoothed} after smoothing over {length}")
    }
}

fn metres(m: f64) -> String {
    units::distances().print(m, 0)
}

/// Whether two climbs are told apart.
fn changed(before_m: f64, after_m: f64) -> bool {
    plain(before_m, 0) != plain(after_m, 0)
}

/// Which part of the track is used, where it is not all of it.
fn part_of(options: &TrackOptions) -> String {
    let at = |place: TrackPlace| units::distances().print(place.m(), 0);
    match (options.from.map(at), options.to.map(at)) {
        (None, None) => String::new(),
        (Some(from), None) => format!(" from {from} of the track on"),
        (None, Some(to)) => format!(" from the start to {to} of the track"),
        (Some(from), Some(to)) => format!(" from {from} to {to} of the track"),
    }
}

fn remarks(found: &TrackReport) -> String {
    let (cleaning, elevation) = (&found.cleaning, &found.elevation);
    let mut words = vec![counted(cleaning.points, "point", "points")];
    let counts = [
        (cleaning.tracks.saturating_sub(1), "other track not used", "other tracks not used"),
        (
            cleaning.segments.saturating_sub(1),
            "gap bridged by a straight line",
            "gaps bridged by straight lines",
        ),
        (cleaning.unusable_points, "impossible position, left out", "impossible positions, left out"),
        (cleaning.duplicate_points, "repeated point, left out", "repeated points, left out"),
        (cleaning.stray_points, "stray point, left out", "stray points, left out"),
        (
            cleaning.close_points,
            "point too near the one before or in a pause, left out",
            "points too near the one before or in a pause, left out",
        ),
        (elevation.missing, "point without elevation", "points without elevation"),
        (elevation.absurd, "absurd elevation, left out", "absurd elevations, left out"),
    ];
    let told = counts.iter().filter(|(count, ..)| *count > 0);
    words.extend(told.map(|(count, one, many)| counted(*count, one, many)));
    if elevation.clipped_gradients > 0 {
        let stretches = counted(elevation.clipped_gradients, "stretch", "stretches");
        words.push(format!("{stretches} steeper than {}, taken as that", percent(Gradient::LIMITS.max, 0)));
    }
    if found.pauses.count > 0 {
        let pauses = counted(found.pauses.count, "pause", "pauses");
        words.push(format!("{pauses} of {} in all, left out", duration(found.pauses.total_s, 0)));
    }
    words.join(", ")
}

const fn ends(found: &TrackReport) -> &'static str {
    match (found.out_and_back, found.is_loop) {
        (true, _) => "Out and back the same way.",
        (false, true) => "It ends where it starts.",
        (false, false) => "It does not end where it starts; it is ridden as if it did.",
    }
}

/// Heights that do not meet where a loop closes, and what was done about it.
pub(crate) fn gap(gap_m: f64, levelled: bool) -> String {
    let gap = units::distances().print(gap_m.abs(), 0);
    let which = if gap_m > 0.0 { "higher" } else { "lower" };
    if levelled {
        format!(
            "Its end was recorded {gap} {which} than its start; that was taken away evenly along the way."
        )
    } else {
        format!(
            "Its end was recorded {gap} {which} than its start; too much to be spread, so the heights stand as recorded: look at them with doubt."
        )
    }
}

/// Points so close that their wandering makes a way longer.
pub(crate) fn lengthened(spacing_m: f64) -> String {
    let spacing = units::distances().print(spacing_m, 1);
    format!(
        "Its points are usually {spacing} apart: so close, a wandering position makes the way longer than it is."
    )
}

/// That the first of a track's laps is ridden.
pub(crate) fn is_first(found: &TrackReport) -> String {
    let laps = laps(found);
    format!("This is the first of {laps}, from where it begins until it comes by there again.")
}

/// That a track holds several laps.
pub(crate) fn looks_like(found: &TrackReport) -> String {
    format!("This looks like {}.", laps(found))
}

/// That they are ridden as one.
pub(crate) const AS_ONE: &str = "Ridden as it is, all of it is one lap.";

fn laps(found: &TrackReport) -> String {
    let (count, length) = (found.laps.count, units::long_distances().print(found.laps.median_m / 1e3, 2));
    if found.laps.from_m > 0.0 {
        let from = units::distances().print(found.laps.from_m, 0);
        format!("{count} laps of {length} behind a warm-up of {from}")
    } else {
        format!("{count} laps of {length}")
    }
}
