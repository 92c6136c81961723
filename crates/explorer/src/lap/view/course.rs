//! “Round the lap”: where the course comes from, and what was found in a file.

use crate::lap::inputs::CourseChoice;
use crate::lap::own_course::OwnCourse;
use crate::lap::section::LapSection;
use crate::lap::sketched::Sketched;
use crate::lap::view::answer::course_name;
use crate::lap::words::course as words;
use crate::layout::line::Line;
use maud::{Markup, html};
use std::rc::Rc;

/// Where the course comes from, and what a file held.
#[must_use]
pub(crate) fn course(report: &LapSection) -> Markup {
    let of_this_sketch = |it: &&Rc<Sketched>| it.joined.course == *report.lap_inputs.sketch;
    let sketched = report.lap.sketched.as_ref().filter(of_this_sketch);
    html! {
        @if let Some(refusal) = &report.lap.refused { p.stop { (words::refused(refusal)) } }
        @match (report.lap_inputs.choice, &report.lap.own, sketched) {
            (CourseChoice::Own, None, _) => p { (words::CHOOSE) },
            (CourseChoice::Own, Some(own), _) => {
                @if let Some(fault) = own.fault() { p.care { (words::no_course(&own.name, &fault)) } }
                p { (own_course(own)) }
                (laps_of(own))
            }
            (CourseChoice::Sketch, _, Some(sketched)) => p { (words::sketched(sketched)) },
            _ => {}
        }
    }
}

/// What is ridden, and where it comes from; nothing while its file is still to be chosen.
#[must_use]
pub(crate) fn loaded(report: &LapSection) -> Markup {
    let (inputs, own) = (&report.lap_inputs, report.lap.own.as_deref());
    let told = |course| words::loaded(&course_name(report), &course, inputs.origin(own), inputs.changes());
    html! { (inputs.course(own).map_or_else(Line::default, told)) }
}

fn own_course(own: &OwnCourse) -> Markup {
    let Some((_, options, found)) = &own.track else { return html! { (words::kept(own)) } };
    html! {
        (words::track(&own.name, options, found))
        @if let Some(gap_m) = own.gap_m() { " " (words::gap(gap_m, found.elevation.levelled)) }
        @if found.is_lengthened() { " " (words::lengthened(found.cleaning.usual_spacing_m)) }
    }
}

/// Where a track holds several laps: what it looks like, and the choice between one and all.
fn laps_of(own: &OwnCourse) -> Markup {
    let Some((_, _, found)) = own.track.as_ref().filter(|(_, _, found)| found.laps.count > 1) else {
        return html! {};
    };
    html! {
        p {
            @if found.laps.is_first_alone {
                (words::is_first(found)) " "
                button type="button" id="laps-of-track" data-act="all-laps" { (words::WHOLE_TRACK) }
            } @else {
                span.care { (words::looks_like(found)) } " " (words::AS_ONE) " "
                button type="button" id="laps-of-track" data-act="first-lap" { (words::FIRST_LAP) }
            }
        }
    }
}
