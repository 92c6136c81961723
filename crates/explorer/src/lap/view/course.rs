//! “Round the lap”: where the course comes from, and what was found in a file.

use crate::lap::inputs::CourseChoice;
use crate::lap::report::OwnCourse;
use crate::lap::section::LapSection;
use crate::number::{counted, duration, listed, plain, with_unit};
use gear_math::Course;
use gear_math::course::{TrackElevation, TrackOptions, TrackPlace, TrackReport};
use maud::{Markup, html};

/// Where the course comes from, and what a file held.
#[must_use]
pub(crate) fn course(report: &LapSection) -> Markup {
    let of_this_sketch = |it: &&(Course, String)| it.0 == *report.lap_inputs.sketch;
    let sketched = report.lap.sketched.as_ref().filter(of_this_sketch).map(|it| &*it.1);
    html! {
        @if let Some(why) = &report.lap.refused { p.stop { (why) } }
        @match (report.lap_inputs.choice, &report.lap.own) {
            (CourseChoice::Own, None) => p { "Choose a file or a kept course. Your changes on stretches wait for it." },
            (CourseChoice::Own, Some(own)) => {
                @if let Some(fault) = own.fault() { p.care { (own.name) " cannot be used for a lap: " (fault) "." } }
                p { (own_course(own)) }
                (laps_of(own))
            }
            (CourseChoice::Sketch, _) if sketched.is_some() => p { (sketched.unwrap_or_default()) },
            (_, Some(own)) => p { (own.name) " is at hand under “my own, from a file”." },
            _ => {}
        }
    }
}

fn own_course(own: &OwnCourse) -> String {
    let Some((_, options, found)) = &own.track else {
        let smoothed =
            own.smoothing_m.map(|m| format!(", smoothed over {} when it was read", with_unit(m, 0, "m")));
        let stretches = counted(own.course.segments().len(), "stretch", "stretches");
        return format!("{}: {stretches}{}.", own.name, smoothed.unwrap_or_default());
    };
    format!(
        "{}: {} long{}, {}.{}",
        own.name,
        with_unit(found.length_m / 1e3, 2, "km"),
        part_of(options),
        climbing(found),
        remarks(found)
    )
}

/// The climb as recorded, and what each step on the way to the course made of it.
fn climbing(found: &TrackReport) -> String {
    let metres = |m: f64| with_unit(m, 0, "m");
    let changed = |before: f64, after: f64| plain(before, 0) != plain(after, 0);
    let mut words = vec![format!("{} of climbing as recorded", metres(found.elevation.climb_recorded_m))];
    if changed(found.elevation.climb_written_m, found.elevation.climb_recorded_m) {
        let written = metres(found.elevation.climb_written_m);
        words[0] += &format!(" ({written} with the points and elevations that are left out)");
    }
    let closed = if found.elevation.levelled { " and closing the loop" } else { "" };
    words.push(format!(
        "{} after smoothing over {}{closed}",
        metres(found.elevation.climb_smoothed_m),
        metres(found.elevation.smoothing_m)
    ));
    if changed(found.elevation.climb_smoothed_m, found.climb_m) {
        words.push(format!(
            "{} with what is steeper than 45\u{a0}% taken as 45\u{a0}%",
            metres(found.climb_m)
        ));
    }
    listed(&words)
}

/// Which part of the track is used, where it is not all of it.
fn part_of(options: &TrackOptions) -> String {
    let at = |place: TrackPlace| with_unit(place.m(), 0, "m");
    match (options.from, options.to) {
        (None, None) => String::new(),
        (from, None) => format!(" from {} of the track on", from.map_or_else(String::new, at)),
        (from, Some(to)) => {
            format!(" from {} to {} of the track", from.map_or_else(|| "the start".to_owned(), at), at(to))
        }
    }
}

/// Where a track holds several laps: what it looks like, and the choice between one and all.
fn laps_of(own: &OwnCourse) -> Markup {
    let Some((_, _, found)) = own.track.as_ref().filter(|(_, _, found)| found.laps.count > 1) else {
        return html! {};
    };
    let laps = format!("{} laps of {}", found.laps.count, with_unit(found.laps.median_m / 1e3, 2, "km"));
    let warm_up = if found.laps.from_m > 0.0 {
        format!(" behind a warm-up of {}", with_unit(found.laps.from_m, 0, "m"))
    } else {
        String::new()
    };
    html! {
        p {
            @if found.laps.is_first_alone {
                "This is the first of " (laps) (warm_up) ", from where it begins until it comes by there again. "
                button type="button" id="laps-of-track" data-act="all-laps" { "Use the whole track" }
            } @else {
                span.care { "This looks like " (laps) (warm_up) "." } " Ridden as it is, all of it is one lap. "
                button type="button" id="laps-of-track" data-act="first-lap" { "Use the first lap" }
            }
        }
    }
}

fn remarks(found: &TrackReport) -> String {
    let mut words = vec![counted(found.cleaning.points, "point", "points")];
    let counts = [
        (found.cleaning.tracks.saturating_sub(1), "other track not used", "other tracks not used"),
        (
            found.cleaning.segments.saturating_sub(1),
            "gap bridged by a straight line",
            "gaps bridged by straight lines",
        ),
        (found.cleaning.unusable_points, "impossible position, left out", "impossible positions, left out"),
        (found.cleaning.duplicate_points, "repeated point, left out", "repeated points, left out"),
        (found.cleaning.stray_points, "stray point, left out", "stray points, left out"),
        (
            found.cleaning.close_points,
            "point too near the one before or in a pause, left out",
            "points too near the one before or in a pause, left out",
        ),
        (found.elevation.missing, "point without elevation", "points without elevation"),
        (found.elevation.absurd, "absurd elevation, left out", "absurd elevations, left out"),
        (
            found.elevation.clipped_gradients,
            "stretch steeper than 45\u{a0}%, taken as that",
            "stretches steeper than 45\u{a0}%, taken as that",
        ),
    ];
    let told = counts.iter().filter(|(count, ..)| *count > 0);
    words.extend(told.map(|(count, one, many)| counted(*count, one, many)));
    if found.pauses.count > 0 {
        let pauses = counted(found.pauses.count, "pause", "pauses");
        words.push(format!("{pauses} of {} in all, left out", duration(found.pauses.total_s, 0)));
    }
    let ends = match (found.out_and_back, found.is_loop) {
        (true, _) => "Out and back the same way.",
        (false, true) => "It ends where it starts.",
        (false, false) => "It does not end where it starts; it is ridden as if it did.",
    };
    format!(" Found: {}. {ends}{}{}", words.join(", "), mismatch(found), jitter(found))
}

/// Heights that do not meet where a loop closes, and what was done about it.
fn mismatch(found: &TrackReport) -> String {
    if found.elevation.mismatch_m.abs() < TrackElevation::CLOSED_M {
        return String::new();
    }
    let (gap, which) = (
        with_unit(found.elevation.mismatch_m.abs(), 0, "m"),
        if found.elevation.mismatch_m > 0.0 { "higher" } else { "lower" },
    );
    let done = if found.elevation.levelled {
        "that was taken away evenly along the way"
    } else {
        "too much to be spread, so the heights stand as recorded: look at them with doubt"
    };
    format!(" Its end was recorded {gap} {which} than its start; {done}.")
}

fn jitter(found: &TrackReport) -> String {
    if !found.is_lengthened() {
        return String::new();
    }
    let spacing = with_unit(found.cleaning.usual_spacing_m, 1, "m");
    format!(
        " Its points are usually {spacing} apart: so close, a wandering position makes the way longer than it is."
    )
}
